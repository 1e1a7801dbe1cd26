"""The pages of the sheets on a screen, and the club's name on them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from browser.test_access import trouble
from saltline_pages.sheets import names

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
DOCS = Path(__file__).resolve().parent.parent.parent / "docs"


def test_sheets_fit_a_small_screen_and_axe_finds_nothing(open_page: Opener) -> None:
    page = open_page("clubs/", viewport={"width": 320, "height": 700})
    home = page.url.removesuffix("clubs/")
    for name in names(DOCS):
        page.goto(f"{home}sheets/{name}/")
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, name
        assert not trouble(page, ""), name


def test_a_clubs_link_puts_its_name_on_the_sheets(open_page: Opener) -> None:
    page = open_page("sheets/log-sheet/#club=1;name=Tarn~20Valley~20Orchid~20Circle")
    expect(page.locator("salt-head .salt-blank").first).to_have_text("Tarn Valley Orchid Circle")
    expect(page.locator("salt-head .salt-blank").last).to_have_text("")
