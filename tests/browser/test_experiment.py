"""One measured pot beside the model, as a grower fills it in."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
HOSTILE = "<img src=x onerror=alert(1)>"


@pytest.fixture
def pot(open_page: Opener) -> Page:
    page = open_page("experiment/")
    expect(page.locator("salt-experiment")).to_have_attribute("data-state", "live")
    return page


def test_the_example_answers_as_built(open_page: Opener, pot: Page) -> None:
    built = open_page("experiment/", java_script_enabled=False)
    for part in (".salt-say", ".salt-number", ".salt-why", ".salt-plain", ".salt-picture"):
        text = built.locator(f"salt-experiment .salt-answer {part}").text_content()
        assert text
        assert pot.locator(f"salt-experiment .salt-answer {part}").text_content() == text


def test_lines_that_cannot_be_taken_are_named_and_kept(pot: Page) -> None:
    sheet = pot.get_by_label("Lines of your sheet")
    text = sheet.input_value() + f"2026-11-30,drip,,,{HOSTILE},,,,,\n2026-11-30,=1+1,,,,,,,,\n"
    sheet.fill(text)
    refused = pot.locator("salt-experiment .salt-refused li")
    expect(refused).to_have_count(2)
    expect(refused.first).to_contain_text(HOSTILE)
    assert pot.locator("salt-experiment img").count() == 0
    assert sheet.input_value() == text
    pot.reload()
    expect(pot.get_by_label("Lines of your sheet")).to_have_value(text)
    with pot.expect_download() as saved:
        pot.get_by_role("button", name="Save as a file").click()
    assert ",'=1+1," in saved.value.path().read_text(encoding="utf-8")


def test_a_sheet_is_built_line_by_line_and_can_be_put_back(pot: Page) -> None:
    sheet = pot.get_by_label("Lines of your sheet")
    before = sheet.input_value()
    pot.get_by_role("button", name="Start an empty sheet").click()
    expect(pot.locator("salt-experiment .salt-say")).to_have_text(
        "Not enough lines yet to compare."
    )
    pot.get_by_text("Add a line").click()
    pot.get_by_label("What you did or read").select_option("rinse")
    pot.get_by_label("Reading", exact=True).fill("wet")
    pot.get_by_role("button", name="Add this line").click()
    expect(pot.get_by_label("Reading", exact=True)).to_be_focused()
    pot.get_by_label("Reading", exact=True).fill("0,03")
    pot.get_by_role("button", name="Add this line").click()
    assert ",rinse,,,0.03,mS/cm," in sheet.input_value()
    pot.get_by_role("button", name="Start an empty sheet").click()
    pot.get_by_role("button", name="Put it back").click()
    assert ",rinse,,,0.03," in sheet.input_value()
    assert sheet.input_value() != before
