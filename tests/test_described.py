"""What search engines are told, and that each question of growers has its answer right beneath."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from saltline_pages.described import described, sections
from saltline_pages.leads import led_on
from saltline_pages.site import build_site

QUESTIONS = json.loads(
    (Path(__file__).parent / "vectors" / "questions.json").read_text(encoding="utf-8")
)
ADDRESS = "https://club.example/care/water/"
PAGE = (
    "<html><head><title>Water - Saltline</title>"
    '<meta name="description" content="Tap &amp; rain.">{canonical}</head><body>'
    '<h1 id="all-right">Is it <em>all</em> right?<a class="headerlink" href="#all-right">¶</a></h1>'
    '\n<p>Read it &lt;first&gt;\n<a class="salt-cite" href="#x">Wang 1998 <b>read</b></a>.</p>'
    '<salt-calc><h2 id="blend">How much rain?</h2><p>An example</p></salt-calc>'
    '<h2 id="care">Take care<a class="headerlink" href="#care">¶</a></h2><p>Mind the hose.</p>'
    '<h2 id="why">Why?<a class="headerlink" href="#why">¶</a></h2><ul><li>So</li></ul>'
    "</body></html>"
)


def data(html: str) -> dict[str, object]:
    found = re.findall(r'<script type="application/ld\+json">(.*?)</script>', html)
    assert len(found) == 1
    assert "<" not in found[0]
    told: dict[str, object] = json.loads(found[0])
    return told


def test_the_question_is_the_title_and_data_need_an_address() -> None:
    html = described(PAGE.format(canonical=""))
    assert "<title>Is it all right? - Saltline</title>" in html
    assert "ld+json" not in html


def test_questions_with_an_answer_are_told_with_their_place() -> None:
    told = data(described(PAGE.format(canonical=f'<link rel="canonical" href="{ADDRESS}">')))
    assert told["@type"] == "FAQPage"
    assert told["url"] == ADDRESS
    assert told["description"] == "Tap & rain."
    assert told["mainEntity"] == [
        {
            "@type": "Question",
            "name": "Is it all right?",
            "url": f"{ADDRESS}#all-right",
            "acceptedAnswer": {"@type": "Answer", "text": "Read it <first>."},
        }
    ]


def test_search_engines_pass_by_short_addresses() -> None:
    html = PAGE.format(canonical=f'<link rel="canonical" href="{ADDRESS}">')
    html = html.replace("Mind the hose.", '<a class="salt-lead" href="../care/x/">Go on</a>')
    html = described(led_on(html))
    assert "noindex" in html
    assert "canonical" not in html
    assert "ld+json" not in html


def test_every_page_has_a_title_and_a_description_of_its_own(site: Path) -> None:
    titles, descriptions = [], []
    for file in sorted(site.rglob("index.html")):
        html = file.read_text(encoding="utf-8")
        if "noindex" not in html:
            titles += re.findall(r"<head>.*?<title>(.+?)</title>", html, re.S)
            descriptions += re.findall(r'<meta name="description" content="(.+?)">', html)
    assert len(titles) == len(descriptions) > 20
    assert len(set(titles)) == len(titles)
    assert len(set(descriptions)) == len(descriptions)


def test_without_an_address_there_is_no_sitemap(site: Path) -> None:
    assert not list(site.glob("sitemap*"))


@pytest.mark.long
def test_a_site_with_an_address_lists_its_pages_and_tells_them(tmp_path: Path) -> None:
    out, address = tmp_path / "site", "https://club.example/salt/"
    build_site(out, address)
    listed = re.findall(r"<loc>(.+?)</loc>", (out / "sitemap.xml").read_text(encoding="utf-8"))
    pages = {file.parent.relative_to(out).as_posix() for file in out.rglob("index.html")}
    assert {page.removeprefix(address).strip("/") or "." for page in listed} == pages
    for page in ("care/water", "stories", "glossary"):
        told = data((out / page / "index.html").read_text(encoding="utf-8"))
        assert told["url"] == f"{address}{page}/"
    # One picture for each page that messengers are told of.
    named = {
        name.removeprefix(address)
        for file in out.rglob("index.html")
        for name in re.findall(r'og:image" content="(.+?)"', file.read_text(encoding="utf-8"))
    }
    drawn = {file.relative_to(out).as_posix() for file in out.glob("assets/previews/*.png")}
    assert named == drawn
    assert len(drawn) > 20


@pytest.mark.parametrize(("words", "place"), QUESTIONS, ids=[words for words, _ in QUESTIONS])
def test_a_question_is_answered_right_beneath_it(site: Path, words: str, place: str) -> None:
    page, _, anchor = place.partition("#")
    html = (site / "care" / page / "index.html").read_text(encoding="utf-8")
    (section,) = (one for one in sections(html) if one.anchor == anchor)
    assert section.heading.endswith("?")
    # Two sentences, or a little more: what a reader takes in at a glance.
    assert 60 <= len(section.answer) <= 300, section.answer


def test_a_page_of_many_questions_lists_them_at_its_top(site: Path) -> None:
    html = (site / "care" / "stages" / "index.html").read_text(encoding="utf-8")
    (fold,) = re.findall(r'<details class="salt-fold salt-here".*?</details>', html, re.S)
    asked = [one for one in sections(html)[1:] if one.heading.endswith("?")]
    assert re.findall(r'href="#([^"]+)">([^<]+)', fold) == [one[:2] for one in asked]
    assert html.index("<h1") < html.index(fold) < html.index("<salt-calc")
