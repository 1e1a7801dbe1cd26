"""axe finds nothing in any calculator in any state, in light, dark and print."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from saltline.declare import Choice, Number
from saltline.forms import all_forms

pytestmark = pytest.mark.browser

ROOT = Path(__file__).resolve().parent.parent.parent
AXE = (ROOT / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
STATES = ("live", "stale", "error", "refused", "dark", "print")


def homes() -> dict[str, str]:
    """The page that holds each calculator, by calculator."""
    found: dict[str, str] = {}
    for page in sorted((ROOT / "docs").rglob("*.md")):
        path = page.relative_to(ROOT / "docs").with_suffix("").as_posix()
        address = "" if path == "index" else path.removesuffix("/index") + "/"
        for name in re.findall(r"^\[\[calculator ([a-z0-9-]+)\]\]", page.read_text("utf-8"), re.M):
            found.setdefault(name, address)
    return found


HOMES = homes()


def trouble(page: Page, within: str, paper: bool = False) -> list[str]:
    """What axe finds, as readable lines; nobody touches paper, so there it has no targets."""
    page.evaluate(AXE)
    # The theme hangs its menu and search on two boxes that must stand before every landmark.
    scope = {"include": [within]} if within else {"exclude": ["#__drawer", "#__search"]}
    options: dict[str, Any] = {"runOnly": {"type": "tag", "values": TAGS}}
    options["rules"] = {"target-size": {"enabled": not paper}}
    found = page.evaluate(
        "([scope, options]) => axe.run(scope, options).then("
        "(r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.html).join(' | ')))",
        [scope, options],
    )
    return [line[:300] for line in found]


def into_state(page: Page, name: str, state: str) -> None:
    """Bring a calculator from live into another state, as a reader would."""
    form = all_forms()[name]
    element = page.locator(f'salt-calc[name="{name}"]')
    numbers = [item for item in form.inputs if isinstance(item, Number) and not item.more]
    if state in ("stale", "error") and numbers:
        element.locator(f'input[name="{numbers[0].name}"]').fill("about 5")
        expect(element).to_have_attribute("data-state", "stale")
        if state == "error":
            page.keyboard.press("Enter")
            expect(element).to_have_attribute("data-state", "error")
    elif state == "refused":
        empty = [i for i in form.inputs if i.default is None and not i.optional]
        if any(isinstance(item, Number | Choice) for item in empty):
            page.evaluate(f"location.hash = '{name}={form.version}'")
            expect(element).to_have_attribute("data-state", "refused")
    elif state == "dark":
        page.emulate_media(color_scheme="dark")
    elif state == "print":
        page.emulate_media(media="print")
    page.wait_for_timeout(250)  # colours fade over


@pytest.mark.parametrize("name", sorted(HOMES))
def test_axe_finds_nothing(open_page: Callable[..., Page], name: str) -> None:
    within = f'salt-calc[name="{name}"]'
    found: dict[str, list[str]] = {}
    page = open_page(HOMES[name])
    for state in STATES:
        expect(page.locator(within)).to_have_attribute("data-state", "live", timeout=15_000)
        page.locator(within).evaluate(
            "e => e.querySelectorAll('details').forEach((d) => { d.open = true; })"
        )
        into_state(page, name, state)
        found[state] = trouble(page, within, paper=state == "print")
        page.emulate_media(media="screen", color_scheme="light")
        page.goto(page.url.partition("#")[0].partition("?")[0] + f"?{state}")
    print(name, {state: len(lines) for state, lines in found.items()})
    assert not any(found.values()), found


@pytest.mark.parametrize("path", sorted({*HOMES.values(), "", "sources/", "tables/", "trust/"}))
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_on_whole_pages(
    open_page: Callable[..., Page], path: str, scheme: str
) -> None:
    page = open_page(path, color_scheme=scheme)
    page.wait_for_timeout(400)
    assert not trouble(page, "")
