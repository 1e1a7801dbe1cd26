"""The log of a flush as a list: add, change, move, remove, take back; the text is the truth."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from browser.states import element, open_link, reaches
from saltline.forms import all_forms

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
PATH, NAME = "care/flush-maths/", "flush-learn"
EXAMPLE = all_forms()[NAME].example
LOG = EXAMPLE["log"]


@pytest.fixture
def page(open_page: Opener) -> Page:
    opened = open_page(PATH, reduced_motion="reduce")
    reaches(opened, NAME, "live")
    expect(events(opened).locator("button.salt-event")).to_have_count(len(LOG))
    return opened


def events(page: Page) -> Locator:
    return element(page, NAME).locator("salt-events")


def press(page: Page, name: str) -> None:
    events(page).get_by_role("button", name=name, exact=True).click()


def text(page: Page) -> list[str]:
    value: str = events(page).locator('input[name="log"]').input_value()
    return value.split(", ")


def focused(page: Page) -> str:
    told: str = page.evaluate("document.activeElement.textContent")
    return told


def test_an_event_is_added_with_its_errors_in_sentences(page: Page) -> None:
    log = events(page)
    press(page, "Poured")
    expect(log.get_by_label("How much water")).to_be_focused()
    press(page, "Add it")
    expect(log.locator(".salt-editing .salt-error:visible")).to_have_text("Enter how much water")
    log.get_by_label("How much water").fill("0,2 L")
    log.get_by_label("What the pen read").press("Enter")
    assert text(page) == [*LOG, "pour:200"]
    assert focused(page) == "Poured 200\u00a0mL"
    press(page, "Poured")
    press(page, "Leave it")
    assert text(page) == [*LOG, "pour:200"]
    assert focused(page) == "Poured"


def test_an_event_is_changed_moved_removed_and_taken_back(page: Page) -> None:
    log = events(page)
    lines = log.locator("button.salt-event")
    lines.nth(1).click()
    log.get_by_label("What the pen read").fill("0,7")
    press(page, "Later")
    assert text(page) == [LOG[0], LOG[2], "soak:400:10:0.7", *LOG[3:]]
    assert focused(page) == "Later"
    press(page, "Earlier")
    press(page, "Done")
    assert text(page) == [LOG[0], "soak:400:10:0.7", *LOG[2:]]
    lines.nth(3).click()
    press(page, "Remove")
    assert text(page) == [LOG[0], "soak:400:10:0.7", LOG[2], LOG[4]]
    expect(log.get_by_role("status")).to_contain_text("Removed: Stood drained for 12")
    assert focused(page) == "Undo"
    press(page, "Undo")
    assert text(page) == [LOG[0], "soak:400:10:0.7", *LOG[2:]]
    assert focused(page) == "Stood drained for 12\u00a0h"
    reaches(page, NAME, "live")
    expect(page).to_have_url(re.compile("soak~3A400~3A10~3A0\\.7"))


def test_what_is_typed_or_opened_is_listed(page: Page) -> None:
    log = events(page)
    log.locator("summary").click()
    log.locator('input[name="log"]').fill("drip:2, pour:x, rest:8")
    lines = log.locator("button.salt-event")
    expect(lines).to_have_text(
        [
            "Drips read 2\u00a0mS/cm",
            "“pour:x” says nothing here: mend it as text",
            "Stood drained for 8\u00a0h",
        ]
    )
    open_link(page, NAME, {**EXAMPLE, "log": ["drip:1.5", "pour:150"]})
    reaches(page, NAME, "live")
    expect(lines).to_have_text(["Drips read 1.5\u00a0mS/cm", "Poured 150\u00a0mL"])


def test_a_reading_follows_the_reader_s_unit(page: Page) -> None:
    log = events(page)
    lines = log.locator("button.salt-event")
    lines.first.click()
    log.get_by_label("Unit").first.select_option(label="µS/cm")
    expect(log.get_by_label("What the pen read")).to_have_value("1900")
    log.get_by_label("What the pen read").fill("2000")
    press(page, "Done")
    assert text(page)[0] == "drip:2"
    expect(lines.first).to_have_text("Drips read 2000\u00a0µS/cm")


def test_without_script_the_sentences_and_the_text_stand(open_page: Opener) -> None:
    page = open_page(PATH, java_script_enabled=False)
    log = events(page)
    expect(log.locator(".salt-event")).to_have_count(len(LOG))
    expect(log.locator("button:visible")).to_have_count(0)
    log.locator("summary").click()
    expect(log.locator('input[name="log"]')).to_be_visible()
