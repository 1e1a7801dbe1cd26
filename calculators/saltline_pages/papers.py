"""What Chromium draws at the build: each sheet as a PDF, and a picture of each page for messengers.

Nothing is served for it: the browser asks for the finished site's files under an address that
exists nowhere, and gets them from the folder.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from pathlib import Path

from playwright.sync_api import Browser, Route, sync_playwright

NOWHERE = "http://site.invalid/"
SIZE = {"width": 1200, "height": 630}  # what messengers ask of a preview's picture
ARGUMENTS = ["--no-sandbox", "--disable-gpu"]
# The moment of printing, which would make each build's PDFs others than the last one's.
MOMENT = re.compile(rb"\((D:)\d{14}([^)]*)\)")


def print_all(
    out: Path, chromium: str, sheets: Iterable[str], pictures: Mapping[str, str], built: date
) -> None:
    """Print the sheets of a finished site, and draw each picture's HTML into its file."""
    # In a thread of its own: the caller's may have a loop of Playwright's already.
    with ThreadPoolExecutor(max_workers=1) as one:
        one.submit(_print_all, out, chromium, sheets, pictures, built).result()


def _print_all(
    out: Path, chromium: str, sheets: Iterable[str], pictures: Mapping[str, str], built: date
) -> None:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=ARGUMENTS)
        _print_sheets(browser, out, sheets, built)
        _draw(browser, out, pictures)
        browser.close()


def _print_sheets(browser: Browser, out: Path, sheets: Iterable[str], built: date) -> None:
    def answer(route: Route) -> None:
        file = out / route.request.url.removeprefix(NOWHERE).partition("?")[0]
        route.fulfill(path=file / "index.html" if file.is_dir() else file)

    page = browser.new_page(java_script_enabled=False)
    page.route("**/*", answer)
    day = rb"(\g<1>" + f"{built:%Y%m%d}000000".encode() + rb"\g<2>)"
    for name in sheets:
        page.goto(f"{NOWHERE}sheets/{name}/")
        made = page.pdf(prefer_css_page_size=True)
        (out / "sheets" / f"{name}.pdf").write_bytes(MOMENT.sub(day, made))


def _draw(browser: Browser, out: Path, pictures: Mapping[str, str]) -> None:
    page = browser.new_page(viewport=SIZE, java_script_enabled=False)  # type: ignore[arg-type]
    for name, html in pictures.items():
        page.set_content(html)
        page.screenshot(path=out / name)
