"""axe finds nothing in any calculator in any state, nor on any page, in light, dark and print."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from browser.matrix import FOUND
from browser.states import bring, element, homes, saving_data

pytestmark = pytest.mark.browser

ROOT = Path(__file__).resolve().parent.parent.parent
AXE = (ROOT / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# Another look changes colours and sizes, and nothing else that axe can see; nobody touches paper.
COLOURS = ["color-contrast", "link-in-text-block"]
LOOKS: dict[str, tuple[dict[str, Any], list[str]]] = {
    "dark": ({"color_scheme": "dark"}, [*COLOURS, "target-size"]),
    "print": ({"media": "print"}, COLOURS),
}
USUAL: dict[str, Any] = {"color_scheme": "light", "media": "screen"}
STATES = ("static", "live", "stale", "error", "refused", "warning")
HOMES = homes()


# Before its first answer a page lays out what is in sight; axe would take the rest as small.
ALL_DRAWN = """() => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync("* { content-visibility: visible !important }");
  document.adoptedStyleSheets.push(sheet);
}"""


def trouble(page: Page, within: str, look: str = "") -> list[str]:
    """What axe finds, as readable lines."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE)
        page.evaluate(ALL_DRAWN)
    # The theme hangs its menu and search on two boxes that must stand before every landmark.
    scope = {"include": [within]} if within else {"exclude": ["#__drawer", "#__search"]}
    wanted = {"type": "rule", "values": LOOKS[look][1]} if look else {"type": "tag", "values": TAGS}
    found = page.evaluate(
        """async ([scope, options]) => {
          for (const each of document.getAnimations()) each.finish();  // colours fade over
          const { violations } = await axe.run(scope, options);
          return violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.html).join(' | '));
        }""",
        [scope, {"runOnly": wanted, "resultTypes": ["violations"]}],
    )
    return [line[:300] for line in found]


def in_looks(page: Page, within: str) -> dict[str, list[str]]:
    """What axe finds in the dark and on paper."""
    found = {}
    for look, (media, _) in LOOKS.items():
        page.emulate_media(**media)
        found[look] = trouble(page, within, look)
        page.emulate_media(**USUAL)
    return found


def unfold(page: Page) -> None:
    page.evaluate("document.querySelectorAll('main details').forEach((d) => { d.open = true; })")


@pytest.mark.parametrize("path", HOMES)
def test_axe_finds_nothing_in_any_calculator(
    open_page: Callable[..., Page], record_property: Callable[..., None], path: str
) -> None:
    page = saving_data(open_page, path)
    unfold(page)
    names = HOMES[path]
    found: dict[str, dict[str, list[str]]] = {name: {} for name in names}
    counts = {name: dict.fromkeys([*STATES, *LOOKS], "-") for name in names}
    for name in names:
        assert element(page, name).get_attribute("data-state") == "static"
        record_property(FOUND, (name, counts[name]))
    for name in names:
        within = f'salt-calc[name="{name}"]'
        for state in STATES:
            if state == "static" or bring(page, name, state):
                found[name][state] = trouble(page, within)
        bring(page, name, "live")
        found[name] |= in_looks(page, within)
        counts[name] |= {state: str(len(lines)) for state, lines in found[name].items()}
    worst = {name: {s: lines for s, lines in row.items() if lines} for name, row in found.items()}
    assert not any(worst.values()), worst


PAGES = sorted({*HOMES, "", "sources/", "tables/", "trust/", "clubs/", "glossary/", "newsletter/"})


@pytest.mark.parametrize("path", PAGES)
def test_axe_finds_nothing_on_whole_pages(open_page: Callable[..., Page], path: str) -> None:
    page = open_page(path, reduced_motion="reduce")
    found = {"light": trouble(page, "")} | in_looks(page, "")
    assert not any(found.values()), found
