"""What holds for every calculator in the page: its answer, its fields, and the room it takes."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest
from playwright.sync_api import Page

from browser.states import homes, reaches, saving_data

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
HOMES = homes()
PHONE, NARROW = 390, 320

# The answer as it was built is taken out of the page, and the engine has to bring it back.
EMPTIED = """(name) => {
  const answer = document.querySelector(`salt-calc[name="${name}"] .salt-answer`);
  const parts = ".salt-say, .salt-number, .salt-why, .salt-picture, .salt-warnings, .salt-moves,"
    + " [data-list], [data-template], output, .salt-twin :is(thead, tbody)";
  for (const part of answer.querySelectorAll(parts)) part.replaceChildren();
  for (const output of answer.querySelectorAll("output")) output.dataset.value = "";
  answer.closest("form").requestSubmit();
}"""
COMPARED = """async (name) => {
  document.built ??= new DOMParser().parseFromString(
    await (await fetch(location.pathname)).text(), "text/html");
  const [built, live] = [document.built, document].map((page) =>
    page.querySelector(`salt-calc[name="${name}"] .salt-answer`).innerHTML
      .replace(/ data-value="[^"]*"/g, ""));  // all their figures: the engines write them apart
  const at = [...built].findIndex((sign, place) => sign !== live[place]);
  return built === live ? null : [built.slice(at - 40, at + 80), live.slice(at - 40, at + 80)];
}"""


@pytest.mark.parametrize("path", HOMES)
def test_the_engine_gives_the_answer_that_stands_without_script(
    open_page: Opener, path: str
) -> None:
    page = saving_data(open_page, path)
    for name in HOMES[path]:
        page.evaluate(EMPTIED, name)
        reaches(page, name, "live")
        for _ in range(75):  # what would change the answer comes after it
            if (different := page.evaluate(COMPARED, name)) is None:
                break
            page.wait_for_timeout(200)
        assert different is None, (name, different)


def nasty() -> list[str]:
    """What people type by mistake or on purpose, and what nobody would."""
    written = (
        "", " ", "-", ",", ".", "1,2,3", "1.2.3", "1e999", "-1e-999", "NaN", "Infinity", "0x10",
        "1,234", "1.234,5", "−5", "5 mS/cm ppm", "500 µS", "½", "٣٫٥", "１２", "1\u00a0000",
        "<b>1</b>", "<img src=x onerror=alert(1)>", "'\"`;--", "${1}", "{in:x}", "{a..b}",
        "\\u0000", "__proto__", "constructor", "#a=1;b=2", "%", "~", "9" * 400, "🪴🪴", "\u202e12",
        "a" * 2000, "drip:", "drip:1.9, soak", "rest:9:9:9:9",
    )  # fmt: skip
    chance = random.Random("typed")
    signs = "0123456789.,-+eE:;'<>&{}%µ²→\u2212\u00a0\u0301 \U0001f33f"
    return [*written, *("".join(chance.choices(signs, k=chance.randint(1, 9))) for _ in range(20))]


TYPED = """([name, texts]) => {
  const calculator = document.querySelector(`salt-calc[name="${name}"]`);
  const lost = [];
  for (const field of calculator.querySelectorAll("input[type=text]")) {
    const before = field.value;
    for (const text of texts) {
      field.value = text;
      const typed = field.value;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      if (field.value !== typed) lost.push([field.name, text, field.value]);
    }
    calculator.querySelector("form").requestSubmit();
    if (field.value !== texts.at(-1)) lost.push([field.name, "on Enter", field.value]);
    field.value = before;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
  return lost;
}"""


@pytest.mark.parametrize("path", HOMES)
def test_any_text_in_any_field_is_kept_and_breaks_nothing(open_page: Opener, path: str) -> None:
    page = open_page(path)  # which fails on errors in the script
    for name in HOMES[path]:
        assert page.evaluate(TYPED, [name, nasty()]) == []
        reaches(page, name, "live")


SHIFTS = """
document.shift = 0;
new PerformanceObserver((list) => {
  for (const each of list.getEntries()) document.shift += each.value;
}).observe({ type: "layout-shift", buffered: true });
"""
DOUBLED = """() => {
  const all = [...document.querySelectorAll("body *:not(svg *)")];
  const sizes = all.map((each) => parseFloat(getComputedStyle(each).fontSize));
  all.forEach((each, at) => each.style.setProperty("font-size", 2 * sizes[at] + "px", "important"));
}"""
TOO_WIDE = """() => [...document.querySelectorAll("main *")].filter((each) => {
  const { right, width } = each.getBoundingClientRect();
  return width && right > document.documentElement.clientWidth + 1;
}).slice(0, 5).map((each) => each.outerHTML.slice(0, 120))"""


@pytest.mark.parametrize("path", HOMES)
def test_nothing_moves_and_nothing_is_wider_than_the_phone(open_page: Opener, path: str) -> None:
    page = open_page("sources/", viewport={"width": PHONE, "height": 844})
    page.add_init_script(SHIFTS)
    page.goto(page.url.replace("sources/", path))
    for name in HOMES[path]:
        reaches(page, name, "live")
    page.wait_for_timeout(300)
    assert page.evaluate("document.shift") < 0.001
    page.set_viewport_size({"width": NARROW, "height": 700})
    wide = "document.documentElement.scrollWidth"
    assert page.evaluate(wide) <= NARROW, page.evaluate(TOO_WIDE)
    page.set_viewport_size({"width": PHONE, "height": 844})
    page.evaluate(DOUBLED)
    assert page.evaluate(wide) <= PHONE, page.evaluate(TOO_WIDE)
