"""The damage key one question a screen, as growers with three different plants walk it."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from browser.test_access import trouble
from saltline.damage_signs import CAUSES, SIGNS

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
PATH = "care/root-damage/"
GROWING = "In growth, with working roots"
LABELS = {sign.id: sign.label for sign in SIGNS}


def walk(page: Page) -> Locator:
    expect(page.locator('salt-calc[name="damage-key"]')).to_have_attribute("data-state", "live")
    return page.locator("salt-key")


def tap(key: Locator, name: str) -> None:
    key.get_by_role("button", name=name, exact=True).click()


def begin(key: Locator, stage: str, kinds: tuple[str, ...], sign: str) -> None:
    """Stage, kind (one or two screens) and the sign that strikes most."""
    for words in (stage, *kinds):
        tap(key, words)
    expect(key.locator("h2")).to_have_text("What strikes you most?")
    tap(key, LABELS.get(sign, sign))


def answer(key: Locator, seen: tuple[str, ...], most: int = 12) -> list[str]:
    """Answer Yes to what was seen and Not looked to the rest, until the key answers."""
    asked: list[str] = []
    while key.locator(".salt-three").count():
        title = key.locator("h2").text_content() or ""
        sign = next(name for name, label in LABELS.items() if f"{label}?" == title)
        assert sign not in asked, "asked twice"
        asked.append(sign)
        assert len(asked) <= most
        tap(key, "Yes" if sign in seen else "Not looked")
        expect(key.locator("h2")).not_to_have_text(title)
    return asked


def value(page: Page, name: str) -> str:
    return page.locator(f'output[name="{name}"]').get_attribute("data-value") or ""


def test_ring_above_the_granules_ends_early_and_firm(open_page: Opener) -> None:
    page = open_page(PATH)
    key = walk(page)
    expect(key.locator(".salt-count")).to_have_text("Question 1 of about 7")
    begin(key, GROWING, ("Yes, it drops them all",), "dark_band_above_medium")
    expect(key.locator(".salt-count")).to_have_text("Question 4 of about 7")
    expect(key.locator("h2")).to_be_focused()
    # Firm after one test; a flush is only named once rot was asked for.
    asked = answer(key, ("crust_dissolves",))
    assert asked == ["crust_dissolves", "sour_smell", "soft_skin_slides"]
    expect(key.locator("h2")).to_have_text("Salt at the drying line fits best.")
    expect(key).to_contain_text("wet tissue")
    expect(key).to_contain_text("a good reading of the pot does not clear the ring")
    expect(page.locator('salt-calc[name="damage-key"]')).to_have_attribute("data-state", "live")
    assert (value(page, "fits_best"), value(page, "firm")) == ("salt_line", "yes")
    link = key.locator("a.salt-next").get_attribute("href") or ""
    assert link.endswith("care/stages/#stage-action=1;kind=deciduous;stage=growing;cause=salt_line")
    assert not trouble(page, "salt-key")


def test_soft_and_sour_at_rest_is_looked_into(open_page: Opener) -> None:
    page = open_page(PATH, viewport={"width": 320, "height": 700}, color_scheme="dark")
    key = walk(page)
    begin(key, "At rest", ("No", "Sideways, shoot after shoot"), "soft_skin_slides")
    assert not trouble(page, "salt-key")
    answer(key, ("sour_smell",))
    expect(key.locator("h2")).to_have_text("Wet rot (roots without air) fits best.")
    expect(key).to_contain_text("cut soft roots back")
    assert value(page, "action") == "look_inside"
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_bitten_tips_back_skip_and_the_test_to_do_next(open_page: Opener) -> None:
    page = open_page(PATH)
    key = walk(page)
    begin(key, GROWING, ("I do not know",), "leaf_tips_dry")
    first = key.locator("h2").text_content() or ""
    tap(key, "Back")
    expect(key.locator("h2")).to_have_text("What strikes you most?")
    tap(key, LABELS["tips_bitten"])
    expect(key.locator(".salt-three")).to_be_visible()
    assert page.locator("input[name=leaf_tips_dry]:checked").get_attribute("value") == "not_looked"
    skipped = key.locator("h2").text_content() or ""
    tap(key, "Skip")
    expect(key.locator("h2")).not_to_have_text(skipped)
    tap(key, "What fits so far?")
    expect(key.locator("h2")).to_have_text("A chewing pest fits best, but this is not firm yet.")
    test = key.locator("h3", has_text="The test to do next")
    expect(test).to_be_visible()
    tap(key, "I have looked: answer it")
    tap(key, "No")
    expect(key.locator(".salt-count")).to_have_text("What your answers say")
    tap(key, "Ask me more")
    answer(key, ("one_pot_only",))
    assert value(page, "fits_best") == "chewing_pest"
    assert first
    tap(key, "Start again")
    expect(key.locator("h2")).to_have_text("What is the plant doing?")


LATE = """globalThis.Worker = class extends Worker {
  postMessage(data, ...rest) {
    setTimeout(() => super.postMessage(data, ...rest), data.question?.includes("passed") ? 700 : 0);
  }
};"""


def test_a_question_that_comes_late_does_not_undo_a_step_back(open_page: Opener) -> None:
    page = open_page("")
    page.add_init_script(LATE)
    page.goto(page.url + PATH)
    key = walk(page)
    begin(key, GROWING, ("I do not know",), "leaf_tips_dry")
    tap(key, "Back")
    page.wait_for_timeout(1000)
    expect(key.locator("h2")).to_have_text("What strikes you most?")
    assert page.locator("input[name=leaf_tips_dry]:checked").get_attribute("value") == "not_looked"
    tap(key, LABELS["tips_bitten"])
    expect(key.locator(".salt-three")).to_be_visible()


def test_no_id_is_shown_and_drawings_stand_beside_the_words(open_page: Opener) -> None:
    page = open_page(PATH)
    key = walk(page)
    begin(key, GROWING, ("I do not know",), "tips_dead")
    expect(key.locator(".salt-drawing svg title")).to_have_count(1)
    answer(key, ())
    page.locator("details").evaluate_all("all => all.forEach((d) => { d.open = true; })")
    shown = page.locator("main").inner_text()
    for name in (*LABELS, *(cause for cause, _ in CAUSES), "look_inside", "not_looked"):
        assert "_" not in name or name not in shown, name


def test_a_link_opens_at_the_answer(open_page: Opener) -> None:
    page = open_page(PATH + "#damage-key=1;stage=resting;kind=deciduous;tips_dead=yes")
    key = walk(page)
    expect(key.locator(".salt-count")).to_have_text("What your answers say")
    tap(key, "Ask me more")
    expect(key.locator(".salt-three")).to_be_visible()


def test_without_script_the_form_and_the_paper_key_are_whole(open_page: Opener) -> None:
    page = open_page(PATH, java_script_enabled=False)
    expect(page.locator("salt-key")).to_be_hidden()
    expect(page.locator("salt-case")).to_be_hidden()
    form = page.locator('salt-calc[name="damage-key"]')
    expect(form).to_have_attribute("data-state", "static")
    assert form.locator("fieldset .salt-sketch").count() == len(SIGNS)
    page.goto(page.url.replace("care/root-damage", "sheets/damage-key"))
    for label in LABELS.values():
        expect(page.locator(".salt-signs li", has_text=label).first).to_be_visible()


def test_case_card_travels_by_link_and_forgets(open_page: Opener) -> None:
    page = open_page(PATH)
    key = walk(page)
    begin(key, GROWING, ("I do not know",), "tips_dead")
    tap(key, "What fits so far?")
    case = page.locator("salt-case")
    case.get_by_label("Medium and pot").fill("clay <b>granules</b>, 0.5 L")
    case.get_by_label("The pot reads").fill("900")
    case.get_by_label("What the pen shows").select_option(label="ppm (500)")
    card = case.locator(".salt-card")
    reading = "1.8 mS/cm, which is 900 ppm (500)"
    for words in ("only the root tips dead", reading, "<b>", "the whole pot too salty"):
        expect(card).to_contain_text(words)
    assert not trouble(page, "salt-case")
    link = case.evaluate("element => element.link")
    assert "not_looked" not in link
    other = open_page(link.partition("/club/site/")[2])
    walk(other)
    expect(other.locator(".salt-card")).to_contain_text(reading)
    expect(other.locator("salt-calc .salt-note")).to_be_hidden()
    assert "granules" not in (other.evaluate("localStorage.getItem('saltline')") or "")
    other.emulate_media(media="print")
    other.evaluate("window.print = () => {}")
    other.locator("[data-do=print]").evaluate("button => button.click()")
    expect(other.locator("body > .salt-card")).to_be_visible()
    expect(other.locator("main")).to_be_hidden()
    tap(case, "Forget it")
    expect(case.get_by_label("The pot reads")).to_have_value("")


def test_the_engine_lost_leaves_the_list(open_page: Opener) -> None:
    page = open_page(PATH, java_script_enabled=True)
    key = walk(page)
    page.evaluate(
        """() => {
          const engine = document[Symbol.for('saltline')];
          engine.worker.terminate();
          engine.worker = null;
          engine.start = () => { throw new Error('gone'); };
        }"""
    )
    begin(key, "At rest", ("I do not know",), "None of these")
    expect(key.locator("h2")).to_have_text("The questions have stopped.")
    expect(key).to_contain_text("Every sign stands in the list below.")
