"""How a link looks in a messenger: words and a picture, on a site that knows its address."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

from PIL import Image

from saltline_pages.papers import print_all
from saltline_pages.previews import pictures, previewed
from saltline_pages.tools import tool

HOME = "https://club.example/salt/"
PAGE = (
    "<html><head><title>Why &amp; how? - Saltline</title>"
    '<meta name="description" content="Salt &quot;in&quot; pots.">{canonical}</head></html>'
)
OWN = PAGE.format(canonical=f'<link rel="canonical" href="{HOME}care/salt-units/">')


def told(html: str) -> dict[str, str]:
    return dict(
        re.findall(r'<meta (?:property|name)="((?:og|twitter):[^"]+)" content="([^"]*)">', html)
    )


def test_a_page_with_an_address_tells_messengers_its_question_and_its_picture() -> None:
    tags = told(previewed(OWN, "care/salt-units/", drawn=True))
    for kind in ("og", "twitter"):
        assert tags[f"{kind}:title"] == "Why &amp; how?"
        assert tags[f"{kind}:description"] == "Salt &quot;in&quot; pots."
        assert tags[f"{kind}:image"] == HOME + "assets/previews/care-salt-units.png"
    assert tags["og:url"] == HOME + "care/salt-units/"
    assert (tags["og:image:width"], tags["og:image:height"]) == ("1200", "630")


def test_without_an_address_or_a_browser_no_picture_is_named() -> None:
    nowhere = PAGE.format(canonical="")
    assert previewed(nowhere, "care/salt-units/", drawn=True) == nowhere
    tags = told(previewed(OWN, "care/salt-units/", drawn=False))
    assert tags["twitter:card"] == "summary"
    assert not [name for name in tags if "image" in name]
    assert not pictures({"": nowhere, "care/salt-units/": previewed(OWN, "x/", drawn=False)})


def test_a_site_without_an_address_names_none(site: Path) -> None:
    assert not [page for page in site.rglob("*.html") if told(page.read_text(encoding="utf-8"))]
    assert not (site / "assets" / "previews").exists()


def test_a_picture_is_drawn_with_ink_on_both_halves(tmp_path: Path) -> None:
    address = "care/salt-units/"
    drawn = pictures({address: previewed(OWN, address, drawn=True)})
    print_all(tmp_path, tool("chromium"), [], drawn, date(2026, 1, 31))
    (file,) = (tmp_path / "assets" / "previews").iterdir()
    assert file.name == "care-salt-units.png"
    picture = Image.open(file).convert("L")
    assert picture.size == (1200, 630)
    for left in (60, 700):  # the question, the drawing
        half = picture.crop((left, 60, left + 440, 500))
        assert 0.01 < sum(half.histogram()[:128]) / (440 * 440) < 0.4
