"""The theme as our pages wear it.

A page needs few of the theme's styles and, but for the search, none of its script. So each page
links one sheet that holds what the pages show, with our own styles; the rest comes when the reader
opens the search.
"""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Mapping
from pathlib import Path

from saltline_pages import bundling

STYLE = re.compile(r'\s*<link rel="stylesheet" href="([^"]*assets/stylesheets/[^"]+)">')
SCRIPT = re.compile(r'\s*<script src="([^"]*assets/javascripts/bundle[^"]+)"></script>')
TOGGLE = re.compile(r'(<input [^>]*id="__(drawer|search)") autocomplete="off">')
SEARCH = 'data-md-component="search" role="dialog"'
NAMES = {"drawer": "Menu", "search": "Search"}


def shown_styles(pages: Mapping[Path, str]) -> str:
    """The rules of the theme's sheets that some page uses, and our own after them."""
    home = next(page for page in pages if page.name == "index.html")
    sheets = [(home.parent / path).resolve() for path in STYLE.findall(pages[home])]
    css = "".join(sheet.read_text(encoding="utf-8") for sheet in sheets)
    css = re.sub(r"/\*# sourceMapping.*?\*/|@charset [^;]*;", "", css)
    used = bundling.used_rules(css, list(pages.values()))
    return used + bundling.style("saltline.css").decode() + bundling.style("frame.css").decode()


def undressed(html: str) -> str:
    """A page without the theme's sheets and script, which `page.js` fetches for the search."""
    rest = {"styles": STYLE.findall(html), "script": SCRIPT.findall(html)[0]}
    html = SCRIPT.sub("", STYLE.sub("", html))
    # The theme hides the boxes that its menu and search hang on; named, and reached by the keyboard
    # (frame.css), they are the buttons.
    html = TOGGLE.sub(lambda found: f'{found[1]} aria-label="{NAMES[found[2]]}">', html)
    html = html.replace(SEARCH, f'{SEARCH} aria-label="Search"')
    later = f'<script type="application/json" id="salt-theme">{json.dumps(rest)}</script>'
    return html.replace("</body>", f"{later}</body>")


def drop_unused(out: Path) -> None:
    """Take away what no page asks for: maps for debuggers, search in other languages."""
    for file in out.rglob("*.map"):
        file.unlink()
    shutil.rmtree(out / "assets" / "javascripts" / "lunr", ignore_errors=True)
    for name in ("js", "css"):  # their bundles stand in assets/
        shutil.rmtree(out / "assets" / name, ignore_errors=True)
