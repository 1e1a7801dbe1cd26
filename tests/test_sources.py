"""The bibliography: complete records, every key known, every record used, no address of a copy."""

from __future__ import annotations

import csv
import re
from pathlib import Path
from urllib.parse import urlsplit

import html5lib
import pytest

from saltline.forms import all_forms
from saltline_pages import cite, tables, uses

CHECKOUT = Path(__file__).parent.parent
DOCS = CHECKOUT / "docs"
SOURCES = cite.load(DOCS / "sources.json")
USES = uses.find_uses(CHECKOUT)

# Hosts that keep copies of other people's works, and archives of the web.
COPIES = (
    *("archive.org", "archive.is", "archive.ph", "webcache", "scribd", "docslib", "docplayer"),
    *("studylib", "fdocument", "researcher.life", "acemap", "globalauthorid", "vdocuments"),
    *("documentine", "what-when-how", "semanticscholar", "huggingface", "taygeta", "1library"),
    *("academia.edu", "researchgate", "hotlib", "wikisum", "scite.ai", "paperzz", "issuhub"),
    *("peeref", "bohrium", "datapdf", "studfile", "ilovetranslation", "eprints-hosting", "owiki"),
)
RECORD_WORDS = ("id", "type", "title", "level")

every_source = pytest.mark.parametrize("source", SOURCES.values(), ids=SOURCES)


@every_source
def test_record_is_complete(source: cite.Source) -> None:
    assert all(source.get(word) for word in RECORD_WORDS)
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", source["id"])
    assert source["level"] in cite.LEVELS
    assert source.get("author"), "an author or a body"
    assert all(author.get("family") or author.get("literal") for author in source["author"])
    assert any(source.get(key) for key in ("publisher", "container-title", "URL", "DOI"))
    assert re.fullmatch(r"(1[6-9]|20)\d\d|no date", cite.year(source))
    if source["level"] == "second-hand":
        assert source.get("via"), "second-hand: which work quotes it?"


@every_source
def test_address_is_that_of_the_work(source: cite.Source) -> None:
    host = urlsplit(cite.address(source)).netloc.lower()
    assert bool(host) == bool(cite.address(source))
    assert not any(copy in host for copy in COPIES)
    assert not any(copy in str(source.get("via", "")) for copy in COPIES)
    if "DOI" in source:
        assert re.fullmatch(r"10\.\d{4,9}/\S+", source["DOI"])


def test_keys_are_unique_and_in_order() -> None:
    keys = re.findall(
        r'^  "id": "(.+)",$', (DOCS / "sources.json").read_text("utf-8"), re.MULTILINE
    )
    assert keys == sorted(SOURCES)


@every_source
def test_record_is_used(source: cite.Source) -> None:
    assert USES.get(source["id"]), "in no table, calculator, page, check row or docstring"


def test_every_key_exists() -> None:
    unknown = {key: found for key, found in USES.items() if key not in SOURCES}
    assert not unknown


def test_uses_are_found_everywhere() -> None:
    """What the sources page says is compared with the files, counted another way."""
    kinds = {use.kind for found in USES.values() for use in found}
    assert kinds == {"table", "calculator", "page", "check", "module"}
    for form in all_forms().values():
        for key in form.sources:
            assert form.question in [use.label for use in USES[key] if use.kind == "calculator"]
    for path in (CHECKOUT / "tests" / "published").glob("*.csv"):
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                assert uses.Use("check", path.stem, "trust/") in USES[row["source"]]
    for table in tables.load_all(DOCS / "tables").values():
        for reference in table.references():
            assert table.title in [use.label for use in USES[reference.source]]


def test_named_keys_are_read_from_docstrings_and_comments() -> None:
    code = '''
X = 1.0  # docs/sources.json: usda-60, for extracts
# (docs/sources.json:
# saltline-notes)
def f():
    """What.

    Sources:
        iso-7888, table of f25; park-miller-1988; the multiplier from their reply;
        crc-kcl, p. 5-73; hortsci-42-661 for plain readings.
    """
'''
    expected = ["usda-60", "saltline-notes", "iso-7888", "park-miller-1988", "crc-kcl"]
    expected.append("hortsci-42-661")
    assert uses.named_keys(code) == expected


def test_sources_page() -> None:
    page = html5lib.parse(cite.sources_list(SOURCES, USES, "../"), namespaceHTMLElements=False)
    meanings = ["".join(term.itertext()) for term in page.findall(".//dl//dt")]
    assert meanings == list(cite.LEVELS)
    entries = page.findall(".//ul[@class='salt-sources']/li")
    assert sorted(entry.get("id") for entry in entries) == sorted(SOURCES)
    for entry in entries:
        source = SOURCES[entry.get("id")]
        said = "".join(entry.itertext())
        assert source["title"].rstrip(".") in said
        assert "".join(entry.find(".//span[@class='tag']").itertext()) == source["level"]
        assert str(source.get("via", "")) in said
        links = [link.get("href") for link in entry.findall(".//a")]
        if cite.address(source):
            assert cite.address(source) in links
        used = [f"../{use.href}" for use in USES.get(source["id"], ()) if use.href]
        assert links[len(links) - len(used) :] == used


@pytest.mark.parametrize(
    ("authors", "name"),
    [
        ([{"family": "Wang"}], "Wang 1998"),
        ([{"family": "Wang"}, {"family": "Gregg"}], "Wang & Gregg 1998"),
        ([{"family": "Du"}, {"family": "Zhou"}, {"family": "Shaviv"}], "Du et al. 1998"),
        ([{"literal": "A body"}], "A body 1998"),
    ],
)
def test_short_names(authors: list[dict[str, str]], name: str) -> None:
    source = {"title": "T", "author": authors, "issued": {"date-parts": [[1998]]}}
    assert cite.short_name(source) == name


def test_citation_shows_the_weaker_level_of_one_figure() -> None:
    source = {"id": "x-1", "title": "T", "title-short": "A < B", "level": "read"}
    assert cite.cite(source, "table 2", "../", "memory") == (
        '<a class="salt-cite" href="../sources/#x-1">A &lt; B, table 2 '
        '<span class="tag">memory</span></a>'
    )
    assert cite.cite(source, "", "").startswith(
        '<a class="salt-cite" href="sources/#x-1">A &lt; B <'
    )


def test_reference_in_plain_text() -> None:
    assert cite.plain(SOURCES["park-miller-1988"]) == (
        "Park, S. K.; Miller, K. W. (1988). Random number generators: good ones are hard to find. "
        "Communications of the ACM 31, p. 1192-1201."
    )
