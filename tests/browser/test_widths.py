"""No page is wider than the narrowest phone, with everything on it unfolded."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

NARROW = 320
WIDTH = """() => {
  for (const fold of document.querySelectorAll("details")) fold.open = true;
  return document.documentElement.scrollWidth;
}"""


def test_no_page_is_too_wide(open_page: Callable[..., Page], site: Path, address: str) -> None:
    page = open_page("", viewport={"width": NARROW, "height": 700})
    wide = {}
    for file in sorted(site.rglob("index.html")):
        # A short address leads on to a page that is looked at anyway.
        if "salt-lead" in (text := file.read_text(encoding="utf-8")) and "noindex" in text:
            continue
        path = file.parent.relative_to(site).as_posix()
        page.goto(f"{address}{path}/", wait_until="domcontentloaded")
        if (width := page.evaluate(WIDTH)) > NARROW:
            wide[path] = width
    assert not wide
