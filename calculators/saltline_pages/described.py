"""What search engines are told of a page: its question as title, and schema.org data.

A heading that asks, and the paragraph right beneath it, are a question with its answer. The data
stand only on pages that know their own address (of a site built with `--site-url`).
"""

from __future__ import annotations

import json
import re
from html import escape, unescape
from typing import Any, NamedTuple

SITE = "Saltline"
LICENCE = "https://creativecommons.org/licenses/by/4.0/"
TITLE = re.compile(r"<title>[^<]*</title>")
CANONICAL = re.compile(r'<link rel="canonical" href="([^"]+)"')
DESCRIPTION = re.compile(r'<meta name="description" content="([^"]*)"')
# A heading of the text has a link to itself, which a calculator's has not.
SECTION = re.compile(
    r'<h[12] id="([^"]+)">((?:(?!</h).)*?)<a class="headerlink".*?</h[12]>\s*(?:<p>(.*?)</p>)?',
    re.S,
)
CITED = re.compile(r'\s*<a class="salt-cite".*?</a>', re.S)


class Section(NamedTuple):
    """A heading of the text with the paragraph right beneath it; empty where there is none."""

    anchor: str
    heading: str
    answer: str


def sections(html: str) -> list[Section]:
    """The sections of a built page, in order."""
    return [Section(*map(_plain, parts)) for parts in SECTION.findall(html)]


def described(html: str) -> str:
    """The page with its question as title, and with its data where it knows its address."""
    found = sections(html)
    if not found:
        return html
    title = f"<title>{escape(found[0].heading)} - {SITE}</title>"
    html = TITLE.sub(lambda _: title, html, count=1)
    canonical = CANONICAL.search(html)
    if canonical is None:
        return html
    data = json.dumps(_data(html, canonical[1], found), ensure_ascii=False, separators=(",", ":"))
    script = f'<script type="application/ld+json">{data.replace("<", "\\u003c")}</script>'
    return html.replace("</head>", f"{script}</head>", 1)


def _plain(html: str) -> str:
    """The words alone, without the sources."""
    return " ".join(unescape(re.sub(r"<[^>]+>", "", CITED.sub("", html))).split())


def _data(html: str, address: str, found: list[Section]) -> dict[str, Any]:
    description = DESCRIPTION.search(html)
    asked = [
        {
            "@type": "Question",
            "name": one.heading,
            "url": f"{address}#{one.anchor}",
            "acceptedAnswer": {"@type": "Answer", "text": one.answer},
        }
        for one in found
        if one.heading.endswith("?") and one.answer
    ]
    page = {
        "@context": "https://schema.org",
        "@type": "FAQPage" if asked else "WebPage",
        "url": address,
        "name": found[0].heading,
        "description": unescape(description[1]) if description else "",
        "inLanguage": "en",
        "license": LICENCE,
    }
    return page | {"mainEntity": asked} if asked else page
