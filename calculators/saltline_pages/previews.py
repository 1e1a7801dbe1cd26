"""How a link to a page looks in a messenger: its question, what it answers, and a drawing of ours.

Only on pages that know their own address (of a site built with `--site-url`).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape, unescape

from saltline_pages.described import CANONICAL, DESCRIPTION, SITE, TITLE
from saltline_pages.print_drawing import drawing_html

FOLDER = "assets/previews"
# The drawing of the ring on a root, but for pages with a drawing nearer to what they ask.
DRAWING = "roots"
DRAWN = {
    "care/salt-units/": "pens",
    "care/is-it-high/": "night",
    "care/slow-release/": "beads",
    "care/flush-maths/": "pours",
    "flush-day/": "pours",
    "sheets/flush-day/": "pours",
    "sheets/meter-scales/": "pens",
}
LOOK = (
    "body{margin:0;width:1200px;height:630px;box-sizing:border-box;padding:56px 64px;"
    "display:grid;grid-template-columns:1fr 440px;gap:0 48px;align-items:center;"
    "background:#fff;color:#000;border:12px solid #000}"
    "h1{font:700 64px/1.15 Georgia,'Times New Roman',serif;margin:0}"
    "p{font:36px sans-serif;margin:0;grid-column:1/3;align-self:end}"
    "figure{margin:0}svg{display:block;width:100%;height:auto}"
)


def picture_name(address: str) -> str:
    """The file of a page's picture, from the site's root; `address` is the page's, from there."""
    return f"{FOLDER}/{address.strip('/').replace('/', '-') or 'home'}.png"


def previewed(html: str, address: str, drawn: bool) -> str:
    """The page with its tags for messengers; `drawn`: whether a picture can be made."""
    canonical, description = CANONICAL.search(html), DESCRIPTION.search(html)
    if not canonical or not description:
        return html
    told = {
        "og:site_name": SITE,
        "og:type": "website",
        "og:url": canonical[1],
        "og:title": escape(_question(html)),
        "og:description": description[1],
    }
    card = {
        "twitter:card": "summary_large_image" if drawn else "summary",
        "twitter:title": told["og:title"],
        "twitter:description": told["og:description"],
    }
    if drawn:
        picture = canonical[1].removesuffix(address) + picture_name(address)
        told |= {"og:image": picture, "og:image:width": "1200", "og:image:height": "630"}
        told |= {"og:image:alt": f"A drawing of ours, and the question: {told['og:title']}"}
        card["twitter:image"] = picture
    tags = "".join(f'<meta property="{name}" content="{text}">' for name, text in told.items())
    tags += "".join(f'<meta name="{name}" content="{text}">' for name, text in card.items())
    return html.replace("</head>", f"{tags}</head>", 1)


def pictures(pages: Mapping[str, str]) -> dict[str, str]:
    """The picture's file, and what it is drawn from, of each page that names one."""
    return {
        picture_name(address): _picture_html(html, address)
        for address, html in pages.items()
        if 'property="og:image"' in html
    }


def _picture_html(html: str, address: str) -> str:
    """What a page's picture is drawn from."""
    drawing = drawing_html(DRAWN.get(address, DRAWING))
    return (
        f'<!doctype html><meta charset="utf-8"><style>{LOOK}</style>'
        f"<h1>{escape(_question(html))}</h1>{drawing}<p>{SITE}</p>"
    )


def _question(html: str) -> str:
    """What a page asks: its title without the site's name."""
    title = TITLE.search(html)
    words = re.sub(r"<[^>]+>", "", title[0]) if title else SITE
    return unescape(words).removesuffix(f" - {SITE}")
