"""What a wet finger touches is large enough, and what tired eyes read."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

MAIN, OTHER, BODY = 64, 48, 18  # CSS pixels: main controls, all others, body text
# All that is in sight in a calculator and too small, as "what it is: how high".
SMALL = """([main, other, body]) => {
  const found = [];
  const told = (one, size) => {
    const where = one.closest("salt-calc")?.getAttribute("name") ?? "page";
    const words = one.textContent.trim().slice(0, 30);
    found.push(`${where} ${one.localName}.${one.className} “${words}”: ${size}`);
  };
  const seen = (one) => one.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  const high = (one, least) => {
    const { height } = one.getBoundingClientRect();
    if (seen(one) && height < least - 0.5) told(one, height);
  };
  for (const one of document.querySelectorAll("salt-calc .salt-actions > button")) high(one, main);
  const controls =
    ".salt-box, .salt-chip span, select, button, summary, .salt-actions a, a.salt-next";
  for (const one of document.querySelectorAll("salt-calc")) {
    for (const control of one.querySelectorAll(controls)) high(control, other);
  }
  const text =
    "article > p, .salt-say, .salt-number, .salt-why, .salt-warnings li, .salt-field label";
  for (const one of document.querySelectorAll(text)) {
    const size = parseFloat(getComputedStyle(one).fontSize);
    if (seen(one) && size < body) told(one, `${size} px of type`);
  }
  return found;
}"""


def test_controls_and_type_are_large_enough(
    open_page: Callable[..., Page], calculating: list[str]
) -> None:
    page = open_page("care/salt-units/")
    home = page.url.removesuffix("care/salt-units/")
    small = []
    for path in calculating:
        page.goto(f"{home}{path}/")
        page.wait_for_selector("salt-calc[data-state=live]")
        small += [f"{path}: {one}" for one in page.evaluate(SMALL, [MAIN, OTHER, BODY])]
    assert not small, "\n".join(small)
