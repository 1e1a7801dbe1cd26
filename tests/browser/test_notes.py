"""This pot's notes: kept on the device, at most ten, and nothing typed is lost."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


def test_readings_are_kept_and_forgotten(open_page: Callable[..., Page]) -> None:
    page = open_page("care/is-it-high/")
    notes = page.locator("salt-notes")
    notes.get_by_label("Name of the pot").fill("Bench 2, left <b>")
    for step in range(12):
        notes.get_by_label("Reading", exact=True).fill(f"1,{step:02d}")
        notes.get_by_role("button", name="Keep this reading").click()
    expect(notes.locator("tbody tr")).to_have_count(10)
    notes.get_by_label("Reading", exact=True).fill("a lot")
    notes.get_by_role("button", name="Keep this reading").click()
    expect(notes.locator(".salt-note")).to_contain_text("must be a number")
    assert notes.get_by_label("Reading", exact=True).input_value() == "a lot"
    notes.get_by_label("Look again on").fill("2020-01-01")
    page.reload()
    expect(notes.locator("tbody tr")).to_have_count(10)
    expect(notes.locator("tbody tr").last).to_contain_text("1.11 mS/cm")
    expect(notes.locator(".salt-due")).to_contain_text("Bench 2, left <b>")
    notes.get_by_role("button", name="Forget this pot").click()
    expect(notes.locator("tbody tr")).to_have_count(0)
