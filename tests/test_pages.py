"""The built pages, parsed as a browser parses them."""

from __future__ import annotations

import re
from datetime import date
from html.parser import HTMLParser
from pathlib import Path
from typing import override
from xml.etree.ElementTree import Element

import html5lib
import pytest
from markdown import Markdown

from saltline_pages.extension import SaltlineExtension
from saltline_pages.shown import LOOSE
from saltline_pages.site import finish, generate


def parsed(file: Path) -> Element:
    """The page as a browser builds it; slow, so only for what depends on it."""
    tree: Element = html5lib.parse(
        file.read_text(encoding="utf-8"), treebuilder="etree", namespaceHTMLElements=False
    )
    return tree


class Scan(HTMLParser):
    """The ids, addresses and tags of a page."""

    def __init__(self, file: Path) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.feed(file.read_text(encoding="utf-8"))
        self.ids = [found["id"] for _, found in self.tags if "id" in found]

    @override
    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))


@pytest.fixture(scope="module")
def scans(site: Path) -> dict[Path, Scan]:
    return {file: Scan(file) for file in sorted(site.rglob("*.html"))}


def calculators_are_whole(out: Path) -> None:
    for path, name in (("salt-units", "meter-reading"), ("build-up", "build-up")):
        tree = parsed(out / "care" / path / "index.html")
        elements = tree.findall(".//salt-calc")
        assert elements[0].get("name") == name
        assert elements[0].find("./form") is not None, "the form was thrown out of its element"
        assert elements[0].find(".//output") is not None
        assert elements[0].get("data-state") == "static"


def test_forms_stand_inside_their_elements_and_ids_are_unique(
    site: Path, scans: dict[Path, Scan]
) -> None:
    calculators_are_whole(site)
    for file, scan in scans.items():
        twice = sorted({name for name in scan.ids if scan.ids.count(name) > 1})
        assert not twice, (file, twice)


def test_no_mark_is_left_over(site: Path) -> None:
    for file in site.rglob("*.html"):
        # Templates that an element fills in live stand in an attribute or a tag of their own, or
        # in what the element knows from its declaration.
        declared = r'<script type="application/json".*?</script>'
        live = rf'data-template="[^"]*"|<template.*?</template>|{declared}'
        text = re.sub(live, "", file.read_text(encoding="utf-8"), flags=re.S)
        assert not re.search(r"salt-root:|\[\[[a-z]|\[@|__ENGINE__|\{in:|\{[a-z_]+\.\.", text), file


def test_every_figure_stays_with_its_unit(site: Path) -> None:
    for file in site.rglob("*.html"):
        text = file.read_text(encoding="utf-8")
        text = re.sub(r"<(script|style|svg|code|template|textarea)\b.*?</\1>", "", text, flags=re.S)
        said = re.findall(r">([^<]+)<", text)
        assert not [part for part in said if LOOSE.search(part)], file


def test_what_stands_in_a_field_stays_as_it_is() -> None:
    pages = Markdown(extensions=["toc", SaltlineExtension()])
    shown = pages.convert("5 g <textarea>5 g</textarea>")
    assert shown == "<p>5\u00a0g <textarea>5 g</textarea></p>"


def test_internal_links_lead_somewhere(scans: dict[Path, Scan]) -> None:
    for file, scan in scans.items():
        if file.name == "404.html":
            continue
        for _, found in scan.tags:
            target = found.get("href") or found.get("src")
            if not target or target.startswith(("http", "data:", "mailto:", "#")):
                continue
            path, _, anchor = target.partition("#")
            file_there = (file.parent / path).resolve()
            if file_there.is_dir():
                file_there /= "index.html"
            assert file_there.is_file(), (file, target)
            if anchor and "=" not in anchor and file_there in scans:
                assert anchor in scans[file_there].ids, (file, target)


def test_no_page_asks_another_host(scans: dict[Path, Scan]) -> None:
    for file, scan in scans.items():
        for tag, found in scan.tags:
            for name in ("src", "srcset", "data", "poster"):
                assert not found.get(name, "").startswith(("http:", "https:", "//")), file
            if tag == "link" and found.get("rel") not in ("canonical", "alternate"):
                assert not found.get("href", "").startswith(("http", "//")), file


@pytest.mark.parametrize("generator", ["properdocs"])
def test_a_successor_builds_the_same_pages_and_without_a_browser_too(
    generator: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr("saltline_pages.site.browser", lambda: "")
    out = tmp_path / "site"
    generate(out, None, generator)
    finish(out, date(2026, 1, 31))
    calculators_are_whole(out)
    assert capsys.readouterr().out == (
        "No Chromium was found, so the sheets are not made as PDFs.\n"
    )
    assert not list(out.rglob("*.pdf"))
    assert not [page for page in out.rglob("*.html") if ".pdf" in page.read_text("utf-8")]
