"""Every check, run in the reader's browser, in both engines."""

from __future__ import annotations

import hashlib
import json
import re
from base64 import b64encode
from collections.abc import Callable
from pathlib import Path
from urllib.parse import quote

import pytest
from playwright.sync_api import Page, expect

from browser.waiting import until
from saltline_pages.checks import rows
from slow_link import GZIPPED, gzipped
from static_server import type_of

pytestmark = pytest.mark.browser

FULL_BYTES = 4_000_000  # what the page says that a press fetches
FETCHING = "saltline: fetching"  # the lock that keeps the service worker waiting
HELD = "navigator.locks.query().then(({ held }) => held.map(({ name }) => name))"
KEPT = (
    "(keys) => Promise.all(keys.map((key) => caches.match(key))).then((all) => all.every(Boolean))"
)


def run_all(page: Page, button: str, engine: str) -> None:
    """Every check agrees in this engine."""
    page.locator(f"[data-do={button}]").click()
    line = page.locator(f'salt-trust tr[data-engine="{engine}"]')
    expect(line).to_be_visible(timeout=90_000)
    cells = [cell.inner_text() for cell in line.locator("td").all()]
    assert cells[1:4] == [str(len(rows()))] * 3


def test_every_check_agrees_in_the_light_engine(open_page: Callable[..., Page]) -> None:
    page = open_page("trust/")
    run_all(page, "light", "light engine")
    with page.expect_download() as taken:
        page.locator("[data-do=export]").click()
    text = taken.value.path().read_text(encoding="utf-8")
    assert len(text.strip().splitlines()) == len(rows()) + 1


def fetched(page: Page, site: Path) -> list[Path]:
    """What a press on the button for CPython fetches."""
    parts = json.loads(page.locator("salt-trust").get_attribute("data-parts") or "")
    full = [parts["full"]["base"] + name for name, _ in parts["full"]["files"]]
    return [site / "trust" / path for path in (parts["checks"], parts["fullWorker"], *full)]


def key(file: Path, site: Path) -> str:
    """Where the copy on the device keeps a file: its own name, where that holds its hash."""
    if re.search(r"\.[0-9a-f]{10}\.\w+$", file.name):
        return file.resolve().relative_to(site.resolve()).as_posix()
    digest = hashlib.sha256(file.read_bytes()).digest()
    return f"?sha256={quote(b64encode(digest).decode(), safe='')}"


def test_every_check_agrees_in_cpython_and_again_without_a_network(
    open_page: Callable[..., Page], address: str, site: Path
) -> None:
    page = open_page("trust/")
    run_all(page, "full", "CPython")
    keys = [address + key(file, site) for file in fetched(page, site)]
    until(page, KEPT, keys)
    until(page, "!!navigator.serviceWorker.controller")
    page.context.set_offline(True)
    page.reload()
    run_all(page, "full", "CPython")


def test_a_press_fetches_no_more_than_the_page_says(
    open_page: Callable[..., Page], site: Path
) -> None:
    page = open_page("trust/")
    expect(page.locator("salt-trust")).to_contain_text("CPython is about 4 MB to fetch")
    sizes = {
        file.name: len(gzipped(body) if type_of(file).startswith(GZIPPED) else body)
        for file in fetched(page, site)
        for body in [file.read_bytes()]
    }
    assert sum(sizes.values()) <= FULL_BYTES, sizes


def test_loading_can_be_stopped_and_holds_nothing_up_then(open_page: Callable[..., Page]) -> None:
    page = open_page("trust/")
    page.locator("[data-do=full]").click()
    until(page, f"{HELD}.then((names) => names.includes('{FETCHING}'))")
    page.locator("[data-do=cancel]").click()
    expect(page.locator("salt-trust .salt-note")).to_have_text("Stopped. Nothing is kept.")
    page.wait_for_timeout(300)
    expect(page.locator("salt-trust table")).to_be_hidden()
    until(page, f"{HELD}.then((names) => !names.includes('{FETCHING}'))")
