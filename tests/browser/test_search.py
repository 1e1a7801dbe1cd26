"""A grower's own words, typed into the search, bring the right page among the first three."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

QUESTIONS = json.loads(
    (Path(__file__).parent.parent / "vectors" / "questions.json").read_text(encoding="utf-8")
)


@pytest.mark.long
def test_growers_words_find_the_page(open_page: Callable[..., Page]) -> None:
    page = open_page("", viewport={"width": 1280, "height": 900})
    box = page.locator("input.md-search__input")
    box.focus()
    missed = []
    for words, wanted in QUESTIONS:
        box.fill("")
        box.fill(words)
        results = page.locator(".md-search-result__link")
        expect(results.first).to_be_attached(timeout=10_000)
        page.wait_for_timeout(250)
        found: list[str] = []
        for link in results.all():
            name = (link.get_attribute("href") or "").partition("?")[0].partition("#")[0]
            name = name.rstrip("/").rpartition("/")[2]
            if name not in found:
                found.append(name)
        if not set(found[:3]) & set(wanted):
            missed.append((words, wanted, found[:5]))
    assert not missed, "\n".join(map(str, missed))
