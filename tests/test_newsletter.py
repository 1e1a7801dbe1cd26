"""Texts for clubs: as long as they say, for every month, with drawings and short addresses."""

from __future__ import annotations

import calendar
import csv
import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from saltline.forms import all_forms
from saltline.pictures.articles import DRAWINGS
from saltline_pages.cite import CITATION
from saltline_pages.print_drawing import drawing_html

DOCS = Path(__file__).resolve().parent.parent / "docs"
PAGE = (DOCS / "newsletter.md").read_text(encoding="utf-8")
ARTICLES = re.findall(r"<salt-article markdown>\n(.*?)</salt-article>", PAGE, re.S)
WORDS = re.compile(r'data-words="(\w+)" markdown>\n(.*?)\n</div>', re.S)
LENGTHS = {"150": (145, 155), "300": (290, 310), "month": (30, 60)}
MONTHS = list(calendar.month_name)[1:]


def length(text: str) -> int:
    """The words of a text as it is printed, without its marks for sources."""
    return sum(bool(re.search(r"\w", word)) for word in CITATION.sub("", text).split())


def lengths() -> list[tuple[str, int]]:
    return [(kind, length(text)) for kind, text in WORDS.findall(PAGE)]


def test_there_are_enough_articles_and_each_has_both_forms() -> None:
    kinds = [[kind for kind, _ in WORDS.findall(article)] for article in ARTICLES]
    assert kinds[:-1] == [["150", "300"]] * 5
    assert kinds[-1] == ["month"] * 12


@pytest.mark.parametrize(("kind", "words"), lengths())
def test_a_text_is_as_long_as_it_says(kind: str, words: int) -> None:
    least, most = LENGTHS[kind]
    assert least <= words <= most


def test_every_month_is_there_for_both_halves_of_the_world() -> None:
    found = re.findall(r"<summary>(\w+) in the north, (\w+) in the south</summary>", PAGE)
    assert found == [(month, MONTHS[(at + 6) % 12]) for at, month in enumerate(MONTHS)]


def test_every_article_names_the_licence_and_an_address_that_is_short_or_a_page() -> None:
    targets = []
    for article in ARTICLES:
        (credit,) = re.findall(r'<p class="salt-credit" markdown>(.*)</p>', article)
        assert "Saltline, CC BY 4.0" in credit
        (shown, target) = re.findall(r"\[([\w/-]+)/\]\(([\w/-]+)\.md\)", credit)[0]
        assert shown == target
        targets.append(target)
    assert targets == ["pen", "high", "flush", "black-roots", "beads", "care/stages"]
    for target in targets[:5]:
        assert "{ .salt-lead }" in (DOCS / f"{target}.md").read_text(encoding="utf-8")


def test_every_drawing_is_used_once() -> None:
    assert sorted(re.findall(r"\[\[drawing (\w+)\]\]", PAGE)) == sorted(DRAWINGS)


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_drawing_stands_on_its_own_in_black_on_white(name: str) -> None:
    html = drawing_html(name)
    svg = ET.fromstring(html).find("{http://www.w3.org/2000/svg}svg")
    assert svg is not None
    assert svg.get("aria-label")
    assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', html)) <= {
        "none", "#000", "#fff", *(f"url(#{name}-{p})" for p in ("water", "granules", "band")),
    }  # fmt: skip
    inside = [each for each in svg.iter() if each is not svg]
    assert not any("class" in each.attrib or "style" in each.attrib for each in inside)
    width, height = (float(part) for part in svg.attrib["viewBox"].split()[2:])
    for word in svg.iter("{http://www.w3.org/2000/svg}text"):
        assert 0 < float(word.attrib["x"]) < width
        assert 0 < float(word.attrib["y"]) < height


def test_an_unknown_drawing_stops_the_build() -> None:
    with pytest.raises(ValueError, match="'none'"):
        drawing_html("none")


def test_the_members_waters_are_safe_in_a_spreadsheet_and_convert_as_they_say() -> None:
    with (DOCS / "sheets" / "member-waters.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    clubs = (DOCS / "clubs.md").read_text(encoding="utf-8")
    for column in rows[0]:
        assert f"**{column}**" in clubs, column
    scales = {"mS/cm": "ms_cm", "µS/cm": "us_cm"}
    form = all_forms()["meter-reading"]
    for row in rows:
        assert not any(cell.startswith(("=", "+", "-", "@", "\t")) for cell in row.values())
        assert "invented example" in row["note"]
        scale = scales.get(row["scale"], row["scale"])
        for shown, wanted in (("reading", float(row["ec_ms_cm"])), ("standard_reading", 1.413)):
            answer = form.run(form.complete({"reading": float(row[shown]), "scale": scale}))
            assert answer.ec_ms_cm == pytest.approx(wanted, rel=0.01), row
