"""The states of a calculator in the page, and how a reader brings one about."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

from playwright.sync_api import Locator, Page, expect

from saltline.errors import Refused
from saltline.forms import all_forms
from saltline_pages.links import fragment
from test_pictures import sampled

DOCS = Path(__file__).resolve().parent.parent.parent / "docs"
PATIENCE = 15_000  # milliseconds
WARNED = {  # where few inputs bring the warning about, and each takes long
    "flush-learn": {
        "log": [
            "soak:400:10",
            "pour:150:0.9",
            "soak:400:10:0.6",
            "rest:1",
            "rest:12",
            "soak:400:10",
            "rest:12",
        ],
        "rinse_ms_cm": 0.0,
        "pot_l": 12.6,
        "grain_mm": 1.0,
    }
}


def homes() -> dict[str, list[str]]:
    """The calculators on each page that holds some, each where it first stands."""
    seen: set[str] = set()
    found: dict[str, list[str]] = {}
    for page in sorted(DOCS.rglob("*.md")):
        path = page.relative_to(DOCS).with_suffix("").as_posix()
        names = re.findall(r"^\[\[calculator ([a-z0-9-]+)\]\]", page.read_text("utf-8"), re.M)
        if new := [name for name in names if name not in seen]:
            seen.update(new)
            found["" if path == "index" else path.removesuffix("/index") + "/"] = new
    return found


def saving_data(open_page: Callable[..., Page], path: str) -> Page:
    """A page for a reader who saves data: the built answers stand until a touch."""
    page = open_page("sources/", reduced_motion="reduce")
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', {value: {saveData: true}})"
    )
    page.goto(page.url.replace("sources/", path))
    return page


def element(page: Page, name: str) -> Locator:
    return page.locator(f'salt-calc[name="{name}"]')


def reaches(page: Page, name: str, state: str) -> None:
    expect(element(page, name)).to_have_attribute("data-state", state, timeout=PATIENCE)


def open_link(page: Page, name: str, inputs: dict[str, Any]) -> None:
    """Open a link to a calculator in the page that holds it, as a tap on one does."""
    element(page, name).evaluate("(e) => { e.dataset.state = 'opening'; }")
    link = fragment(all_forms()[name], inputs)
    page.evaluate("(hash) => { location.hash = ''; location.hash = hash; }", link)


def bring(page: Page, name: str, state: str) -> bool:
    """Bring a calculator into a state; False where it cannot be in it."""
    form = all_forms()[name]
    if state in ("stale", "error"):
        typed = element(page, name).locator('input[type="text"]:visible')
        if not typed.count():
            return False
        typed.first.fill("about 5")
        if state == "error":
            typed.first.press("Enter")
    elif state == "refused":
        if all(item.default is not None or item.optional for item in form.inputs):
            return False
        open_link(page, name, {})
    elif state == "warning":
        if (inputs := warned(name)) is None:
            return False
        open_link(page, name, inputs)
    else:
        open_link(page, name, form.complete(form.example))
    reaches(page, name, "live" if state == "warning" else state)
    return True


@cache
def warned(name: str) -> dict[str, Any] | None:
    """Inputs whose answer carries a warning, where some are soon found."""
    form = all_forms()[name]
    for given in [WARNED[name]] if name in WARNED else sampled(form, 60):
        try:
            inputs = form.complete(given)
            if form.function(**inputs).warnings:
                return inputs
        except (Refused, ValueError):
            continue
    return None
