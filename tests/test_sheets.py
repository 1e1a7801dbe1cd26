"""The sheets for paper: what they take from the pages, and the PDFs as Chromium printed them."""

from __future__ import annotations

import re
import shutil
from datetime import date
from pathlib import Path

import pytest

from papers import POINTS_OF_A4, Paper
from saltline_pages import sheets
from saltline_pages.cite import load
from saltline_pages.papers import print_all
from saltline_pages.tools import tool

DOCS = Path(__file__).resolve().parent.parent / "docs"
SMALLEST = 14  # points
# Pages of A4, and a source that must be named on them.
PRINTED = {
    "bulk-feed-label": (1, "City of Marion, page (opening only)"),
    "damage-key": (4, "Opening only: AOS, Fertilizer Burn; AOS, black rot"),
    "flush-day": (2, "EPA Method 120.1 (read) United States Environmental Protection Agency"),
    "log-sheet": (1, "EPA Method 120.1 (read) United States Environmental Protection Agency"),
    "meter-scales": (2, "ISO 7888:1985 (second-hand) International Organization"),
    "pot-tags": (1, ""),
    "repot-day": (2, "Clarke 2012 (opening only) Clarke, F."),
    "seasonal-plant": (2, "Clarke 2012 (opening only) Clarke, F."),
}


def test_every_sheet_is_looked_at() -> None:
    assert sheets.names(DOCS) == list(PRINTED)


@pytest.mark.parametrize("name", PRINTED)
def test_a_sheet_is_printed_large_on_a4_with_pages_and_sources(site: Path, name: str) -> None:
    pages, source = PRINTED[name]
    paper = Paper(site / "sheets" / f"{name}.pdf")
    assert len(paper.document) == pages
    assert {tuple(sorted(size)) for size in paper.sizes} == {POINTS_OF_A4}
    assert min(paper.types()) >= SMALLEST - 0.01
    for number, text in enumerate(paper.texts, 1):
        assert f"Page {number} of {pages}" in text
    assert source in paper.text
    assert "This sheet as a PDF" not in paper.text
    assert "Home" not in paper.text  # the menu


def test_sheets_say_what_the_pages_say(site: Path) -> None:
    paper = Paper(site / "sheets" / "flush-day.pdf")
    text = sheets.section((DOCS / "flush-day.md").read_text("utf-8"), "The morning")
    for sentence in re.findall(r"^\d\. (.+?\.)", text, re.S | re.M):
        assert " ".join(sentence.split()).replace("'", "’") in paper.text.replace("'", "’")
    scales = Paper(site / "sheets" / "meter-scales.pdf").text
    for line in (DOCS / "tables" / "scale-conversions.csv").read_text("utf-8").splitlines()[1:]:
        assert line.replace(",", " ") in scales


def test_a_section_that_is_gone_stops_the_build(tmp_path: Path) -> None:
    (tmp_path / "page.md").write_text(
        "# Page\n\nOne.\n\n## Two?\n\nThree\n[here](x.md).\n\nFour.\n"
    )
    lines = ["[[lead page: Two?]]", "[[part page: Page]]", "Five."]
    assert list(sheets.with_parts(lines, tmp_path)) == ["Three", "here.", "One.", "Five."]
    with pytest.raises(ValueError, match="the section 'Two', which is not on its page"):
        list(sheets.with_parts(["[[part page: Two]]"], tmp_path))


def test_the_works_are_named_in_full_with_their_level() -> None:
    sources = load(DOCS / "sources.json")
    told = sheets.works(
        ["So [@clarke-2012, p. 167].", "[[table full-mixing]]"], DOCS / "tables", sources
    )
    assert "<b>Clarke 2012</b>" in told
    assert "opening only" in told
    assert "Saltline notes" in told


def test_words_to_write_beside_are_no_markup() -> None:
    assert sheets.fields("A < B ___ mL") == (
        '<p class="salt-fields"><span>A &lt; B</span><span class="salt-blank"></span>'
        "<span>mL</span></p>"
    )


def test_the_list_offers_each_page_and_each_pdf_that_there_is(site: Path) -> None:
    html = (site / "clubs" / "index.html").read_text(encoding="utf-8")
    for name in PRINTED:
        assert f'href="../sheets/{name}/"' in html
        assert f'href="../sheets/{name}.pdf"' in html
    assert ".pdf" not in sheets.without_pdfs(html)


def test_the_same_sheet_is_printed_the_same_again(site: Path, tmp_path: Path) -> None:
    out = tmp_path / "site"
    shutil.copytree(site, out)
    printed = []
    for _ in range(2):
        print_all(out, tool("chromium"), ["pot-tags"], {}, date(2026, 1, 31))
        printed.append((out / "sheets" / "pot-tags.pdf").read_bytes())
    assert printed[0] == printed[1]
    assert b"(D:20260131000000" in printed[0]
