"""Every kind of page can be walked with the Tab key: in reading order, all in sight, no trap."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

PAGES = (
    "",
    "care/salt-units/",
    "care/root-damage/",
    "care/is-it-high/",
    "flush-day/",
    "clubs/",
    "newsletter/",
    "trust/",
    "tables/",
)
MOST = 400

# Where the focus is, and what is wrong with it there. Elements are held against each other and not
# counted: a page may add one elsewhere while it is walked, such as the state of the offline copy.
AT = """() => {
  const at = document.activeElement;
  if (!at || at === document.body) return null;
  const seen = at.matches(".salt-chip input") ? at.nextElementSibling
    : at.matches(".salt-box *") ? at.closest(".salt-box") : at;
  const box = seen.getBoundingClientRect();
  const style = getComputedStyle(seen);
  const wrong = [];
  if (!box.width || box.bottom <= 0 || box.top >= innerHeight) wrong.push("out of sight");
  if (style.outlineStyle === "none" && style.boxShadow === "none") wrong.push("no sign of focus");
  const before = window.walked;
  if (before && before.compareDocumentPosition(at) & Node.DOCUMENT_POSITION_PRECEDING) {
    wrong.push("before the one before it");
  }
  window.walked = at;
  return { wrong, html: at.outerHTML.slice(0, 120) };
}"""


@pytest.mark.parametrize("path", PAGES)
def test_tab_walks_the_page(open_page: Callable[..., Page], path: str) -> None:
    page = open_page(path, viewport={"width": 390, "height": 844}, reduced_motion="reduce")
    troubles = []
    for _ in range(MOST):
        page.keyboard.press("Tab")
        if (at := page.evaluate(AT)) is None:
            break
        if at["wrong"]:
            troubles.append(at)
    else:
        pytest.fail(f"{path} has no end: {at}")
    last = page.evaluate(
        "[...document.querySelectorAll('a[href], button, input, select, summary')].filter((e) =>"
        " e.checkVisibility() && !e.matches(':disabled, [tabindex=\"-1\"]')).at(-1) === walked"
    )
    assert not troubles, troubles[:5]
    assert last, "the walk ended before the last control"
