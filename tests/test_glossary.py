"""The glossary: complete terms, one meaning a name, and links only where they help."""

from __future__ import annotations

import re
from pathlib import Path

import html5lib
import pytest

from saltline_pages import glossary
from saltline_pages.glossary import Term, link_terms

TERMS = glossary.load(Path(__file__).parent.parent / "docs" / "glossary.json")
SALT = (Term("salt", "What is left."), Term("salt line", "Where.", also=("drying line",)))
LINE = '<a class="salt-term" href="../glossary/#salt-line">{}</a>'


def test_terms_are_complete_and_unambiguous() -> None:
    names = [name.lower() for term in TERMS for name in (term.term, *term.also)]
    assert len(names) == len(set(names))
    assert len({term.anchor for term in TERMS}) == len(TERMS)
    for term in TERMS:
        assert term.plain.endswith(".")
        assert term.plain[0].isupper()
        assert not re.search(r"\bclean\b|!", term.plain)


def test_page_lists_every_term_with_its_anchor() -> None:
    page = html5lib.parse(glossary.glossary_html(TERMS), namespaceHTMLElements=False)
    entries = page.findall(".//dl/div")
    assert [entry.get("id") for entry in entries] == [term.anchor for term in TERMS]
    for entry, term in zip(entries, TERMS, strict=True):
        assert term.term in "".join(entry.find("dt").itertext())
        said = "".join(entry.find("dd").itertext())
        assert term.plain in said
        assert all(name in said for name in term.also)


def test_first_use_only_and_longest_name_first() -> None:
    html = "<p>The Salt line and the salt line.</p><p>The drying line.</p>"
    linked = link_terms(html, SALT, "../")
    assert linked == html.replace("Salt line", LINE.format("Salt line"), 1)


@pytest.mark.parametrize(
    "html",
    [
        "<h2>The salt line</h2>",
        '<a href="#x">The <em>salt line</em></a>',
        "<pre><code>salt line</code></pre>",
        '<salt-calc name="x"><form><label>Salt line<br></label><p>salt line</p></form></salt-calc>',
        "<svg><text>salt line</text></svg>",
        "<table><thead><tr><th>salt line</th></tr></thead></table>",
        "<p>salt lines, salt-line, unsalt</p><!-- salt line -->",
        '<p title="salt line">x &amp; y &#8211; z<br/><img alt="salt line"></p>',
    ],
)
def test_left_alone(html: str) -> None:
    terms = tuple(term for term in SALT if term.term == "salt line")
    assert link_terms(html, terms, "../") == html


def test_links_resume_after_what_is_left_alone() -> None:
    html = "<h1>Salt line<img src='a.png'></h1><p>Salt line.</p>"
    assert link_terms(html, SALT, "../").endswith(f"<p>{LINE.format('Salt line')}.</p>")


def test_words_of_common_speech_are_not_linked() -> None:
    rest = (Term("rest", "The season without growth.", link=False), *SALT)
    assert link_terms("<p>The rest of it.</p>", rest, "") == "<p>The rest of it.</p>"


def test_a_linked_page_parses_to_the_same_text() -> None:
    html = "<p>The velamen&nbsp;holds EC &lt; 1 mS/cm; <b>velamen</b>.</p><ul><li>EC</ul>"
    plain, linked = (
        "".join(html5lib.parse(text, namespaceHTMLElements=False).itertext())
        for text in (html, link_terms(html, TERMS, "./"))
    )
    assert plain == linked
    assert link_terms(html, TERMS, "./").count("salt-term") == 3
