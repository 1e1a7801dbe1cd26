"""The recipe, one question at a time: touch and keys, errors, links, paper, no script."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from browser.states import element, open_link, reaches
from papers import Paper
from saltline.forms import all_forms

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
PATH, NAME = "care/fertilizer-strength/", "feed-recipe"
FORM = all_forms()[NAME]
QUESTIONS = [screen.question for screen in FORM.screens]
PHONE = {"width": 390, "height": 844}


@pytest.fixture
def page(open_page: Opener) -> Page:
    opened = open_page(PATH, viewport=PHONE, reduced_motion="reduce")
    reaches(opened, NAME, "live")
    return opened


def asks(recipe: Locator, at: int) -> None:
    """Only this question is in sight, and the focus is on it."""
    shown = recipe.locator("salt-screens h3:visible")
    expect(shown).to_have_count(1)
    expect(shown).to_have_text(f"{at + 1} of {len(QUESTIONS)} {QUESTIONS[at]}")
    expect(shown).to_be_focused()


def press(recipe: Locator, name: str) -> None:
    recipe.get_by_role("button", name=name, exact=True).click()


def grams(recipe: Locator) -> list[float]:
    found = recipe.locator('output[name="dose_g"]').get_attribute("data-value")
    return [float(each) for each in json.loads(found or "")]


def test_one_question_at_a_time_for_one_jug(page: Page) -> None:
    recipe = element(page, NAME)
    expect(recipe.locator("salt-screens h3:visible")).to_have_text(f"1 of 3 {QUESTIONS[0]}")
    expect(recipe.get_by_role("button", name="Work it out")).to_be_hidden()
    recipe.get_by_label("Few roots").check()
    press(recipe, "Next")
    asks(recipe, 1)
    for product in FORM.example["products"]:
        recipe.locator(f'input[value="{product}"]').uncheck()
    recipe.get_by_label("20-10-20", exact=True).check()
    press(recipe, "Next")
    asks(recipe, 2)
    recipe.get_by_label("Feed to mix").fill("8")
    press(recipe, "Work it out")
    gentle = {**FORM.screens[0].ways[1].values, "products": ["grade_20_10_20"], "batch_l": 8.0}
    (wanted,) = FORM.run(gentle | {"water_ms_cm": 0.05}).dose_g
    expect(recipe.locator(".salt-say")).to_have_text("For 8 L of feed weigh:")
    assert grams(recipe) == [pytest.approx(wanted, rel=1e-9)]
    # Back keeps what was typed, and so does forward again.
    press(recipe, "Back")
    asks(recipe, 1)
    expect(recipe.get_by_label("20-10-20", exact=True)).to_be_checked()
    press(recipe, "Back")
    asks(recipe, 0)
    expect(recipe.get_by_label("Few roots")).to_be_checked()
    expect(recipe.get_by_role("button", name="Back")).to_be_hidden()
    press(recipe, "Next")
    press(recipe, "Next")
    expect(recipe.get_by_label("Feed to mix")).to_have_value("8")


def test_own_numbers_and_the_enter_key(page: Page) -> None:
    recipe = element(page, NAME)
    recipe.locator("salt-screens summary:visible").click()
    nitrogen = recipe.get_by_label("Nitrogen wanted")
    nitrogen.fill("about 60")
    nitrogen.press("Enter")  # goes no further than what cannot be read
    expect(recipe.locator(".salt-summary")).to_be_focused()
    expect(recipe.locator(".salt-summary")).to_contain_text("Nitrogen wanted must be a number")
    nitrogen.fill("60,5")
    expect(recipe.get_by_role("radio", checked=True)).to_have_count(0)
    nitrogen.press("Enter")
    asks(recipe, 1)
    expect(recipe.locator(".salt-summary")).to_be_hidden()
    press(recipe, "Back")
    expect(nitrogen).to_have_value("60,5")
    recipe.get_by_label("Leaves and roots").check()
    expect(nitrogen).to_have_value("105")
    # What the reader had typed is not lost.
    nitrogen.fill("about 60")
    recipe.get_by_label("Magnesium wanted").fill("7,5")
    recipe.get_by_label("Few roots").check()
    expect(nitrogen).to_have_value("50")
    recipe.get_by_label("Leaves and roots").check()
    press(recipe, "Undo")
    expect(nitrogen).to_be_focused()
    expect(nitrogen).to_have_value("about 60")
    expect(recipe.get_by_label("Magnesium wanted")).to_have_value("7.5")
    expect(recipe.get_by_role("radio", checked=True)).to_have_count(0)
    expect(recipe.get_by_role("button", name="Undo")).to_have_count(0)


def test_an_error_leads_back_to_its_question(page: Page) -> None:
    recipe = element(page, NAME)
    recipe.locator("salt-screens summary:visible").click()
    for name in ("Nitrogen", "Phosphorus", "Potassium", "Calcium", "Magnesium"):
        recipe.get_by_label(f"{name} wanted").fill("0")
    press(recipe, "Next")
    press(recipe, "Next")
    press(recipe, "Work it out")
    recipe.locator(".salt-summary a").click()
    expect(recipe.get_by_label("Nitrogen wanted")).to_be_focused()
    expect(recipe.locator("salt-screens h3:visible")).to_contain_text(QUESTIONS[0])


def test_a_link_chooses_the_needs_that_it_carries(page: Page) -> None:
    shelf = {"products": ["grade_20_10_20"], "water_ms_cm": 0.1}
    recipe = element(page, NAME)
    for way in (1, 0):
        open_link(page, NAME, shelf | dict(FORM.screens[0].ways[way].values))
        reaches(page, NAME, "live")
        expect(recipe.get_by_role("radio").nth(way)).to_be_checked()
        expect(recipe.get_by_role("radio", checked=True)).to_have_count(1)
    open_link(page, NAME, shelf | {"n_ppm": 90.0})
    reaches(page, NAME, "live")
    expect(recipe.get_by_role("radio", checked=True)).to_have_count(0)
    expect(recipe.get_by_label("Nitrogen wanted")).to_be_visible()


def test_all_questions_print_with_the_answer(page: Page, tmp_path: Path) -> None:
    page.pdf(path=tmp_path / "recipe.pdf", format="A4")
    text = Paper(tmp_path / "recipe.pdf").text
    for part in (*QUESTIONS, "Nitrogen wanted", "urea", "For greenhouses", "For 5 L of feed weigh"):
        assert part in text, part


def test_without_script_all_questions_stand_one_under_the_other(open_page: Opener) -> None:
    page = open_page(PATH, java_script_enabled=False)
    recipe = element(page, NAME)
    assert recipe.locator("salt-screens h3:visible").count() == len(QUESTIONS)
    for name in ("Next", "Back", "Work it out"):
        assert recipe.get_by_role("button", name=name).count() == 0, name
    expect(recipe.locator(".salt-say")).to_have_text("For 5 L of feed weigh:")
