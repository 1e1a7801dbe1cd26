"""No fragment does more in a page than fill in a form: nothing throws, no markup appears."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page

from test_links import fragments

pytestmark = pytest.mark.browser

# Opens each fragment in every calculator and by the address; the engine is left out of it.
OPEN = """(texts) => {
  const calculators = [...document.querySelectorAll('salt-calc')];
  const strange = 'img, script, iframe, object, embed, base, meta, style, [onerror], [onload]';
  const count = () => document.querySelectorAll(strange).length;
  const before = count();
  for (const each of calculators) each.settle = async () => {};
  const thrown = [];
  addEventListener('error', ({ message }) => thrown.push(message));
  for (const text of texts) {
    const id = text.slice(1).split('=')[0];
    for (const each of calculators) {
      try {
        each.open(text);
        each.open(text.replace(`#${id}=`, `#${each.declared.id}=`)); // speaks of this one
        each.link();
      } catch (failure) {
        thrown.push(`${text}: ${failure}`);
      }
    }
  }
  return { thrown, added: count() - before };
}"""


@pytest.mark.parametrize("path", ["care/salt-units/", "care/root-damage/", "care/many-pots/"])
@pytest.mark.parametrize(
    "count", [300, pytest.param(20_000, marks=pytest.mark.long)], ids=["some", "many"]
)
def test_fragments_are_only_data(open_page: Callable[..., Page], path: str, count: int) -> None:
    page = open_page(path)
    page.wait_for_selector("salt-calc[data-state=live]")
    for at in range(0, count, 500):
        texts = fragments(min(500, count), count + at)
        found = page.evaluate(OPEN, texts)
        assert found == {"thrown": [], "added": 0}


def test_fragments_in_the_address_are_only_data(open_page: Callable[..., Page]) -> None:
    page = open_page("flush-day/")
    page.wait_for_selector("salt-calc[data-state=live]")
    before = page.evaluate("document.querySelectorAll('img, script, iframe').length")
    for text in fragments(60, 7):
        page.evaluate("(text) => { location.hash = text; }", text)
    page.wait_for_timeout(300)
    page.wait_for_load_state()
    assert page.evaluate("document.querySelectorAll('img, script, iframe').length") == before
    assert page.title().endswith("Saltline")
