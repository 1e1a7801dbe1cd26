"""Links in the pages' text open their calculator filled in, and it answers as the text says."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable
from pathlib import Path
from urllib.parse import unquote

import pytest
from playwright.sync_api import Page, expect

from browser.waiting import until
from saltline.__main__ import read
from saltline.errors import Refused
from saltline.forms import all_forms

pytestmark = pytest.mark.browser

# Whether every output shows what was worked out here.
SHOWS = """([name, wanted]) => Object.entries(wanted).every(([result, value]) => {
  const shown = document.querySelector(`salt-calc[name="${name}"] output[name="${result}"]`);
  const text = shown.dataset.value;
  if (typeof value !== "number") return text === (value ?? "");
  return text !== "" && Math.abs(text - value) <= 1e-9 * Math.abs(value);
})"""


def links(site: Path) -> dict[str, set[str]]:
    """The fragments of all such links, by the page that they open."""
    found = defaultdict(set)
    for file in site.rglob("*.html"):
        text = file.read_text(encoding="utf-8")
        for href in re.findall(r'class="salt-open" href="([^"]+)"', text):
            path, _, fragment = href.partition("#")
            page = (file.parent / path).resolve().relative_to(site.resolve())
            found[f"{page.as_posix()}/"].add(fragment)
    return found


def wanted(name: str, pairs: list[str]) -> dict[str, float | str | None] | None:
    """The answer worked out here: numbers and words by result; None for a refusal."""
    form = all_forms()[name]
    given = {}
    for pair in pairs:
        item, _, text = pair.partition("=")
        given[item] = read(form.input(item), unquote(text.replace("~", "%")))
    try:
        answer = form.run(given)
    except Refused:
        return None
    return {item.name: getattr(answer, item.name) for item in form.results if item.kind != "list"}


def test_each_link_opens_its_answer(open_page: Callable[..., Page], site: Path) -> None:
    found = links(site)
    assert found
    for path, fragments in found.items():
        page = open_page(path)
        for fragment in sorted(fragments):
            head, *pairs = fragment.split(";")
            name = head.partition("=")[0]
            page.evaluate("hash => { location.hash = hash; }", fragment)
            answer = wanted(name, pairs)
            if answer is None:
                page.wait_for_selector(f'salt-calc[name="{name}"][data-state="refused"]')
            else:
                until(page, SHOWS, [name, answer])
            note = page.locator(f'salt-calc[name="{name}"] .salt-note')
            assert not note.is_visible() or "link" not in note.inner_text(), fragment


def test_a_link_brings_its_calculator_into_sight(open_page: Callable[..., Page]) -> None:
    page = open_page("stories/")
    page.get_by_role("link", name="Which mesh parts beads").click()
    sieve = page.locator('salt-calc[name="sieve"]')
    expect(sieve.locator("h2")).to_be_in_viewport()
    # On its own page too, from one calculator to the next.
    page.goto(page.url.partition("care/")[0] + "care/fertilizer-strength/")
    page.get_by_role("link", name="How often with this feed?").first.click()
    expect(page.locator('salt-calc[name="feed-often"] h2')).to_be_in_viewport()
