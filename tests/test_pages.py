"""The built pages, parsed as a browser parses them."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest

from saltline_pages.site import finish, generate


def parsed(file: Path) -> Element:
    tree: Element = html5lib.parse(
        file.read_text(encoding="utf-8"), treebuilder="etree", namespaceHTMLElements=False
    )
    return tree


def calculators_are_whole(out: Path) -> None:
    for path, name in (("salt-units", "meter-reading"), ("build-up", "build-up")):
        tree = parsed(out / "care" / path / "index.html")
        elements = tree.findall(".//salt-calc")
        assert elements[0].get("name") == name
        assert elements[0].find("./form") is not None, "the form was thrown out of its element"
        assert elements[0].find(".//output") is not None
        assert elements[0].get("data-state") == "static"


def test_forms_stand_inside_their_elements_and_ids_are_unique(site: Path) -> None:
    calculators_are_whole(site)
    for file in site.rglob("*.html"):
        ids = [element.get("id") for element in parsed(file).iter() if element.get("id")]
        assert len(ids) == len(set(ids)), (file, sorted(i for i in ids if ids.count(i) > 1))


def test_no_mark_is_left_over(site: Path) -> None:
    for file in site.rglob("*.html"):
        # Templates that the element fills in live stand in an attribute of their own.
        text = re.sub(r'data-template="[^"]*"', "", file.read_text(encoding="utf-8"))
        assert not re.search(r"salt-root:|\[\[[a-z]|\[@|__ENGINE__|\{in:|\{[a-z_]+\.\.", text), file


def test_internal_links_lead_somewhere(site: Path) -> None:
    for file in site.rglob("*.html"):
        if file.name == "404.html":
            continue
        for element in parsed(file).iter():
            target = element.get("href") or element.get("src")
            if not target or target.startswith(("http", "data:", "mailto:", "#")):
                continue
            path, _, anchor = target.partition("#")
            found = (file.parent / path).resolve()
            found = found / "index.html" if found.is_dir() else found
            assert found.is_file(), (file, target)
            if anchor and "=" not in anchor and found.suffix == ".html":
                ids = [each.get("id") for each in parsed(found).iter()]
                assert anchor in ids, (file, target)


def test_no_page_asks_another_host(site: Path) -> None:
    for file in site.rglob("*.html"):
        for element in parsed(file).iter():
            for name in ("src", "srcset", "data", "poster"):
                assert not (element.get(name) or "").startswith(("http:", "https:", "//")), file
            if element.tag == "link" and element.get("rel") not in ("canonical", "alternate"):
                assert not (element.get("href") or "").startswith(("http", "//")), file


@pytest.mark.parametrize("generator", ["properdocs"])
def test_a_successor_builds_the_same_pages(generator: str, tmp_path: Path) -> None:
    out = tmp_path / "site"
    generate(out, None, generator)
    finish(out, date(2026, 1, 31))
    calculators_are_whole(out)
