"""A grower's own words, put into the search, bring the right page among the first three."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

QUESTIONS = json.loads(
    (Path(__file__).parent.parent / "vectors" / "questions.json").read_text(encoding="utf-8")
)
FIELD = "input.md-search__input"
LINKS = ".md-search-result__link"
# Words of the questions that the search leaves out of its index.
STOPPED = {"after", "often", "should", "these", "where", "which"}

# Puts each question into the field as a paste does, without a key, and gives back the pages found.
# The list is emptied in between, so that no answer belongs to the question before.
ASK = """async ([questions, field, links]) => {
  const list = () => [...document.querySelectorAll(links)].map((link) => link.href);
  const until = async (done) => {
    for (const begun = Date.now(); !done(); ) {
      if (Date.now() - begun > 5000) throw new Error(`no answer to: ${box.value}`);
      await new Promise((go) => setTimeout(go, 15));
    }
  };
  const box = document.querySelector(field);
  const put = (text) => {
    box.value = text;
    box.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const found = [];
  for (const words of questions) {
    put("");
    await until(() => list().length === 0);
    put(words);
    await until(() => list().length > 0);
    found.push(list());
  }
  return found;
}"""


@pytest.fixture
def page(open_page: Callable[..., Page]) -> Page:
    """The home page, with a search that was typed before it was there, and is answered."""
    page = open_page("", viewport={"width": 1280, "height": 900})
    page.locator(FIELD).fill("white crust")
    expect(page.locator(LINKS).first).to_be_attached(timeout=10_000)
    return page


def test_no_word_stops_the_search(page: Page) -> None:
    words = {word for asked, _ in QUESTIONS for word in re.findall(r"[a-z]{5,}", asked.lower())}
    page.evaluate(ASK, [sorted(words - STOPPED), FIELD, LINKS])


def test_growers_words_find_the_page(page: Page) -> None:
    answers = page.evaluate(ASK, [[words for words, _ in QUESTIONS], FIELD, LINKS])
    missed = []
    for (words, answer), links in zip(QUESTIONS, answers, strict=True):
        names = (link.partition("?")[0].partition("#")[0].rstrip("/") for link in links)
        found = list(dict.fromkeys(name.rpartition("/")[2] for name in names))
        if answer.partition("#")[0] not in found[:3]:
            missed.append((words, answer, found[:5]))
    assert not missed, "\n".join(map(str, missed))
