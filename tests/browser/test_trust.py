"""Every check, run in the reader's browser, in both engines."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from saltline_pages.checks import rows

pytestmark = pytest.mark.browser


@pytest.mark.parametrize(("button", "engine"), [("light", "light engine"), ("full", "CPython")])
def test_every_check_agrees_on_this_device(
    open_page: Callable[..., Page], button: str, engine: str
) -> None:
    page = open_page("trust/")
    page.locator(f"[data-do={button}]").click()
    line = page.locator(f'salt-trust tr[data-engine="{engine}"]')
    expect(line).to_be_visible(timeout=90_000)
    cells = [cell.inner_text() for cell in line.locator("td").all()]
    assert cells[1:4] == [str(len(rows()))] * 3
    with page.expect_download() as taken:
        page.locator("[data-do=export]").click()
    text = taken.value.path().read_text(encoding="utf-8")
    assert len(text.strip().splitlines()) == len(rows()) + 1


def test_loading_can_be_stopped(open_page: Callable[..., Page]) -> None:
    page = open_page("trust/")
    page.locator("[data-do=full]").click()
    page.locator("[data-do=cancel]").click()
    expect(page.locator("salt-trust .salt-note")).to_have_text("Stopped. Nothing is kept.")
    page.wait_for_timeout(300)
    expect(page.locator("salt-trust table")).to_be_hidden()
