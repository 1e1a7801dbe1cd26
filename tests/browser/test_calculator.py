"""A calculator in the page, as a reader meets it."""

from __future__ import annotations

import json
import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from browser.waiting import until
from saltline.forms import all_forms

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]


def live(page: Page, name: str) -> None:
    expect(page.locator(f'salt-calc[name="{name}"]')).to_have_attribute("data-state", "live")


def value(page: Page, name: str) -> float:
    return float(page.locator(f'output[name="{name}"]').first.get_attribute("data-value") or "nan")


def test_page_answers_without_a_touch(open_page: Opener) -> None:
    page = open_page("care/salt-units/")
    live(page, "meter-reading")
    assert value(page, "ec_ms_cm") == pytest.approx(0.558, rel=1e-12)


def test_live_answer_equals_the_built_one(open_page: Opener) -> None:
    for path, name in (("care/salt-units/", "meter-reading"), ("care/flush-maths/", "full-mixing")):
        quiet = open_page(path, java_script_enabled=False)
        element = quiet.locator(f'salt-calc[name="{name}"]')
        expect(element).to_have_attribute("data-state", "static")
        page = open_page(path)
        live(page, name)
        for part in (".salt-say", ".salt-number", ".salt-why", ".salt-moves", ".salt-figures"):
            built = quiet.locator(f'salt-calc[name="{name}"] {part}').text_content()
            shown = page.locator(f'salt-calc[name="{name}"] {part}')
            expect(shown).to_have_text(built or "", use_inner_text=False)


def test_typing_changes_the_answer_and_comma_counts(open_page: Opener) -> None:
    page = open_page("care/salt-units/")
    live(page, "meter-reading")
    page.get_by_label("Reading on the pen").first.fill("1 000,0")
    page.get_by_role("radio", name="ppm, 500 scale").first.check()
    page.get_by_label("Temperature of the water").first.fill("25 °C")
    expect(page.locator('output[name="ec_ms_cm"]').first).to_have_attribute("data-value", "2")
    assert page.get_by_label("Reading on the pen").first.input_value() == "1 000,0"


def test_half_typed_field_keeps_the_last_answer(open_page: Opener) -> None:
    page = open_page("care/salt-units/")
    live(page, "meter-reading")
    page.get_by_label("Reading on the pen").first.fill("5o0")
    element = page.locator("salt-calc").first
    expect(element).to_have_attribute("data-state", "stale")
    assert value(page, "ec_ms_cm") == pytest.approx(0.558)
    expect(page.locator(".salt-summary").first).to_be_hidden()
    page.keyboard.press("Enter")
    expect(element).to_have_attribute("data-state", "error")
    expect(page.locator(".salt-summary").first).to_be_focused()
    words = "Reading on the pen must be a number, like 500"
    expect(page.locator(".salt-summary a").first).to_have_text(words)
    expect(page.locator("#meter-reading-reading-error")).to_have_text(words)
    assert page.get_by_label("Reading on the pen").first.input_value() == "5o0"
    page.locator(".salt-summary a").first.click()
    expect(page.get_by_label("Reading on the pen").first).to_be_focused()
    page.get_by_label("Reading on the pen").first.fill("500")
    expect(element).to_have_attribute("data-state", "live")
    expect(page.locator(".salt-summary").first).to_be_hidden()


def test_a_refusal_stands_alone_and_an_empty_link_asks(open_page: Opener) -> None:
    page = open_page("", service_workers="block")
    page.route("**/style.*.css", lambda route: None)  # nor for a moment before all styles are there
    page.goto(
        page.url + "care/flush-maths/#flush-plan=1;stage=rotting;rinse_ms_cm=0.2;pot_l=1;grain_mm=8"
    )
    calculator = page.locator('salt-calc[name="flush-plan"]')
    expect(calculator).to_have_attribute("data-state", "refused")
    shown = calculator.locator(".salt-answer").inner_text()
    assert shown.startswith("A rotting plant is not flushed")
    assert not re.search(r"What would change|working|figures|table", shown)
    expect(calculator.locator(".salt-next:visible")).to_have_count(0)
    page.evaluate("location.hash = '#flush-plan=1'")
    asked = "Not worked out yet. Answer: What is the plant doing?"
    expect(calculator.locator(".salt-say")).to_have_text(asked)


def test_the_button_leads_to_the_answer_and_an_old_one_is_greyed(open_page: Opener) -> None:
    page = open_page("care/flush-maths/")
    live(page, "flush-plan")
    calculator = page.locator('salt-calc[name="flush-plan"]')
    field = calculator.locator("input[name=pot_l]")
    field.fill("2")
    calculator.get_by_role("button", name="Work it out").click()
    say = calculator.locator(".salt-say").element_handle()
    until(
        page,
        "(say) => { const { top } = say.getBoundingClientRect();"
        " return top >= 0 && top < innerHeight / 2; }",
        say,
    )
    field.fill("two")
    field.press("Enter")
    expect(calculator).to_have_attribute("data-state", "error")
    expect(calculator.locator(".salt-answer")).to_have_css("filter", "grayscale(1)")
    expect(calculator.locator(".salt-note")).to_contain_text("still the one from before")


def test_a_link_opens_the_same_answer_elsewhere(open_page: Opener) -> None:
    page = open_page("care/salt-units/")
    live(page, "meter-reading")
    depth = page.evaluate("history.length")
    page.get_by_label("Reading on the pen").first.fill("1413")
    page.get_by_label("Temperature of the water").first.fill("12")
    page.wait_for_url("**sample_c=12**")
    assert page.evaluate("history.length") == depth
    other = open_page(page.url.partition("/club/site/")[2])
    live(other, "meter-reading")
    assert value(other, "ec_ms_cm") == value(page, "ec_ms_cm")
    assert other.get_by_label("Reading on the pen").first.input_value() == "1413"


def test_a_broken_link_opens_and_says_what_was_dropped(open_page: Opener) -> None:
    page = open_page(
        "care/salt-units/#meter-reading=9;reading=%3Cb%3E;scale=us_cm;colour=red;sample_c=900"
    )
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "refused")
    note = page.locator(".salt-note").first
    for words in ("another version", "colour", "Temperature of the water"):
        expect(note).to_contain_text(words)
    assert page.get_by_label("Reading on the pen").first.input_value() == ""
    assert page.get_by_label("Temperature of the water").first.input_value() == "25"


def test_units_are_switched_and_remembered(open_page: Opener) -> None:
    page = open_page("care/salt-units/")
    live(page, "meter-reading")
    field = page.get_by_label("Temperature of the water").first
    page.locator("input[name=sample_c] + select").select_option(label="°F")
    assert field.input_value() == "68"
    assert value(page, "ec_ms_cm") == pytest.approx(0.558, rel=1e-12)
    field.fill("10 °C")
    expect(page.locator(".salt-say").first).to_contain_text("25 °C")
    expect(page.locator('output[name="ec_ms_cm"]').first).to_have_attribute("data-value", "0.714")
    page.goto(page.url.partition("#")[0].replace("salt-units", "flush-maths"))
    page.locator('salt-calc[name="full-mixing"] input[name=water_held_ml] + select').select_option(
        label="L"
    )
    expect(
        page.locator('salt-calc[name="full-mixing"]').get_by_label("Water the drained pot keeps")
    ).to_have_value("0.2")
    page.goto(page.url.partition("#")[0].replace("flush-maths", "salt-units"))
    expect(page.get_by_label("Temperature of the water").first).to_have_value("68")


def test_facts_are_offered_on_the_next_visit_and_forgotten(open_page: Opener) -> None:
    page = open_page("care/flush-maths/")
    live(page, "full-mixing")
    page.locator('salt-calc[name="full-mixing"]').get_by_label("Water the drained pot keeps").fill(
        "340"
    )
    page.wait_for_url("**water_held_ml=340**")
    page.goto(page.url.partition("#")[0] + "?again")
    live(page, "full-mixing")
    page.locator('salt-calc[name="full-mixing"]').get_by_role("button", name="Use my").click()
    expect(
        page.locator('salt-calc[name="full-mixing"]').get_by_label("Water the drained pot keeps")
    ).to_have_value("340")
    expect(page.locator('salt-calc[name="full-mixing"] .salt-note')).to_contain_text("340 mL")
    page.goto(page.url.partition("?")[0] + "?third")
    page.get_by_role("button", name="Forget").first.click()
    page.goto(page.url.partition("?")[0] + "?fourth")
    live(page, "full-mixing")
    expect(page.get_by_role("button", name="Use my")).to_have_count(0)


def test_events_and_no_globals(open_page: Opener) -> None:
    page = open_page("care/flush-maths/")
    live(page, "full-mixing")
    page.evaluate(
        "document.addEventListener('salt:answer', (e) => document.title = JSON.stringify(e.detail))"
    )
    page.get_by_label("Number of equal rinses").fill("1")
    expect(page).to_have_title(re.compile('"rinses":1'))
    detail = json.loads(page.title())
    assert detail["id"] == "full-mixing"
    assert detail["results"]["water_ml"] == pytest.approx(600.0)
    bare = open_page("sources/")
    extra = page.evaluate("Object.keys(window)")
    assert set(extra) - set(bare.evaluate("Object.keys(window)")) <= {"0"}


def test_a_reader_who_saves_data_loads_nothing_before_a_touch(open_page: Opener) -> None:
    page = open_page("sources/")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', {value: {saveData: true}})"
    )
    page.goto(page.url.replace("sources/", "care/salt-units/"))
    page.wait_for_timeout(500)
    assert not [url for url in asked if url.endswith(".wasm")]
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "static")
    page.get_by_label("Reading on the pen").first.fill("700")
    live(page, "meter-reading")
    assert [url for url in asked if url.endswith(".wasm")]


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_no_sideways_scroll(open_page: Opener, width: int) -> None:
    for path in ("", "care/salt-units/", "care/flush-maths/"):
        page = open_page(path, viewport={"width": width, "height": 700})
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_upgrade_moves_nothing(open_page: Opener) -> None:
    page = open_page("sources/")
    page.add_init_script(
        "document.shift = 0; new PerformanceObserver((list) => { for (const e of list.getEntries())"
        " document.shift += e.value; }).observe({type: 'layout-shift', buffered: true})"
    )
    page.goto(page.url.replace("sources/", "care/salt-units/"))
    live(page, "meter-reading")
    page.wait_for_timeout(300)
    assert page.evaluate("document.shift") < 0.001


def test_every_calculator_on_the_site_is_declared(open_page: Opener) -> None:
    names = set()
    for path in ("care/salt-units/", "care/flush-maths/"):
        page = open_page(path)
        names |= {e.get_attribute("name") for e in page.locator("salt-calc").all()}
    assert names <= set(all_forms())
