"""The theme as our pages wear it.

A page needs few of the theme's styles and, but for the search, none of its script. So each page
links one sheet that holds what the pages show, with our own styles; the script, and the styles of
what it adds, come when the reader opens the search. A page that calculates begins with a part of
the sheet, what it shows before its first answer, and takes the whole after it (`first.js`).
"""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from saltline_pages import bundling, precache
from saltline_pages.trimmed import trimmed

NEIGHBOUR = re.compile(r'<link rel="(prev|next)"[^>]*>')  # some browsers fetch it unasked
STYLE = re.compile(r'\s*<link rel="stylesheet" href="([^"]*assets/stylesheets/[^"]+)">')
SCRIPT = re.compile(r'\s*<script src="([^"]*assets/javascripts/bundle[^"]+)"></script>')
TOGGLE = re.compile(r'(<input [^>]*id="__(drawer|search)") autocomplete="off">')
# What cuts off names in the menu that are too long; ours break, and 40 in each page weigh much.
ELLIPSIS = re.compile(r'(md-nav__link[^>]*>\s*)<span class="md-ellipsis">\s*([^<]*?)\s*</span>')
# A page that is not in the menu has no box for the label of its own contents.
CONTENTS = re.compile(r'<label (class="md-nav__title") for="__toc">(.*?)</label>', re.S)
ADDED = re.compile(r"md-(?:search|typeset__)[a-z_-]*")  # classes of what the script adds
# The search of the theme joins parts of its tree of words by what they look like, written one after
# the other: "1" before 23 looks like "12" before 3. So it met words that stand nowhere, and failed.
LOOKS, LOOKS_MENDED = "e=e+s+o.id}return e}", 'e=e+s+o.id+";"}return e}'
# Colours and boxes that no page of ours has, though they are named like things it has.
NEVER = (
    r"data-md-color-(primary|accent)=(?!indigo)",
    r"\.md-dialog",
    r"#(gh|only)-",
    r"\.md-typeset \.(abstract|bug|danger|example|failure|info|note|question|quote|success|tip)\b",
    r"\.md-typeset \.warning\b",
)
SEARCH = 'data-md-component="search" role="dialog"'
NAMES = {"drawer": "Menu", "search": "Search"}

# What a link may make of a calculator before the rest of the styles is there.
OPENED = '<p class="stale error refused">'


@dataclass(frozen=True)
class Dress:
    """Paths from the site's root: the sheet of every page, its part, and what the search needs."""

    style: str
    first_style: str
    search_style: str
    search_script: str


def dress(out: Path, pages: Mapping[Path, str]) -> Dress:
    """Write our sheets from the theme's and our own."""
    home = pages[out / "index.html"]
    sheets = [out / path for path in STYLE.findall(home)]
    css = "".join(sheet.read_text(encoding="utf-8") for sheet in sheets)
    css = re.sub(r"/\*# sourceMapping.*?\*/|@charset [^;]*;", "", css)
    script = SCRIPT.findall(home)[0]
    names = sorted(set(ADDED.findall((out / script).read_text(encoding="utf-8"))))
    added = "".join(f'<p class="{name}">' for name in names)
    own = (bundling.style("saltline.css") + bundling.style("frame.css")).decode()
    whole = bundling.used_rules(css, list(pages.values()), NEVER) + own
    live = [page for page in pages.values() if "<salt-calc" in page]
    feet = precache.foot("", 0, date.today())  # which the pages get last
    first = bundling.used_rules(whole, [*live, feet, OPENED], first=True)
    first += bundling.style("waiting.css").decode()
    return Dress(
        style=bundling.write_hashed(out, "style.css", whole.encode()),
        first_style=bundling.write_hashed(out, "first.css", first.encode()),
        search_style=bundling.write_hashed(
            out, "search.css", bundling.used_rules(css, [added]).encode()
        ),
        search_script=script,
    )


def undressed(html: str, root: str, dress: Dress) -> str:
    """A page without the theme's sheets and script; `page.js` fetches what the search needs."""
    search = {"style": root + dress.search_style, "script": root + dress.search_script}
    for needless in (NEIGHBOUR, SCRIPT, STYLE):
        html = needless.sub("", html)
    html = ELLIPSIS.sub(r"\1\2", html)
    if 'id="__toc"' not in html:
        html = CONTENTS.sub(r"<span \1>\2</span>", html)
    # The theme hides the boxes that its menu and search hang on; named, and reached by the keyboard
    # (frame.css), they are the buttons.
    html = TOGGLE.sub(lambda found: f'{found[1]} aria-label="{NAMES[found[2]]}">', html)
    html = html.replace(SEARCH, f'{SEARCH} aria-label="Search"')
    found = json.dumps(search, separators=(",", ":"))
    later = f'<script type="application/json" id="salt-search">{found}</script>'
    html = html.replace("</body>", f"{later}</body>")
    return trimmed(html)


def sheet(html: str, root: str, dress: Dress) -> str:
    """The link to a page's sheet, or to its part where there is a first answer to wait for."""
    whole = f'<link rel="stylesheet" href="{root}{dress.style}">'
    if "<salt-calc" not in html:
        return whole
    return (
        f'<link rel="stylesheet" href="{root}{dress.first_style}" data-whole="{root}{dress.style}">'
        f"<noscript>{whole}</noscript>"
    )


def mend_search(out: Path) -> None:
    """Let the search find every word."""
    (worker,) = (out / "assets" / "javascripts" / "workers").glob("search.*.js")
    text = worker.read_text(encoding="utf-8")
    if text.count(LOOKS) != 1:
        raise RuntimeError("the theme's search has changed: adapt theme.py to it")
    worker.write_text(text.replace(LOOKS, LOOKS_MENDED), encoding="utf-8")


def drop_unused(out: Path) -> None:
    """Take away what no page asks for: whole sheets, maps, search in other languages."""
    for file in out.rglob("*.map"):
        file.unlink()
    # The bundles of our own stand in assets/.
    for name in ("stylesheets", "javascripts/lunr", "js", "css"):
        shutil.rmtree(out / "assets" / name, ignore_errors=True)
