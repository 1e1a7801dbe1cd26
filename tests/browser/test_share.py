"""Handing an answer on: link, text, QR code, sheet and paper, all on the device."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import BrowserContext, Locator, Page, expect

from browser.test_access import trouble
from browser.waiting import until
from papers import Paper
from saltline.forms import all_forms
from saltline_pages.uses import calculator_home, read_pages

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
DOCS = Path(__file__).resolve().parent.parent.parent / "docs"
PAGES = read_pages(DOCS)
HOMES = {name: calculator_home(name, DOCS, PAGES) for name in all_forms()}
COPY = {"permissions": ["clipboard-read", "clipboard-write"]}


def live(page: Page, name: str) -> Locator:
    calculator = page.locator(f'salt-calc[name="{name}"]')
    expect(calculator).to_have_attribute("data-state", "live", timeout=15_000)
    return calculator


def panel(calculator: Locator) -> Locator:
    calculator.get_by_role("button", name="Share or keep").click()
    found = calculator.locator(".salt-share")
    expect(found).to_be_visible(timeout=15_000)  # fetched at the first press
    return found


def opened(open_page: Opener, path: str, name: str, **options: object) -> tuple[Page, Locator]:
    page = open_page(path, **options)
    page.add_init_script("window.print = () => { document.body.dataset.printed = 'yes'; }")
    page.reload()
    return page, panel(live(page, name))


def clipboard(page: Page) -> str:
    text: str = page.evaluate("navigator.clipboard.readText()")
    return text


def decoded(shot: bytes) -> list[str]:
    return [found.text for found in zxingcpp.read_barcodes(Image.open(io.BytesIO(shot)))]


def test_the_panel_opens_closes_and_gives_the_focus_back(open_page: Opener) -> None:
    page, found = opened(open_page, "care/salt-units/", "meter-reading")
    opener = page.locator("salt-calc[name=meter-reading] [data-do=share]")
    expect(opener).to_have_attribute("aria-expanded", "true")
    assert not trouble(page, 'salt-calc[name="meter-reading"]')
    page.keyboard.press("Tab")
    expect(found.get_by_role("button").first).to_be_focused()
    page.keyboard.press("Escape")
    expect(found).to_be_hidden()
    expect(opener).to_be_focused()
    expect(opener).to_have_attribute("aria-expanded", "false")


def test_link_and_text_are_copied(open_page: Opener) -> None:
    page, found = opened(open_page, "care/salt-units/", "meter-reading", **COPY)
    page.get_by_label("Reading on the pen").first.fill("1413")
    live(page, "meter-reading")
    found.get_by_role("button", name="Copy the link").click()
    expect(found.get_by_role("status")).to_contain_text("copied")
    link = clipboard(page)
    assert link.startswith(page.url.partition("#")[0] + "#meter-reading=1;reading=1413;")
    found.get_by_role("button", name="Copy as text").click()
    expect(found.get_by_role("status")).to_contain_text("as text")
    text = clipboard(page)
    assert text.isascii()
    for part in (
        "What does my pen mean?",
        "- Reading on the pen: 1413 uS/cm",
        "mS/cm, likely",
        link,
    ):
        assert part in text, text
    mail = found.get_by_role("link", name="Write an email")
    mail.evaluate("e => e.addEventListener('click', (event) => event.preventDefault())")
    mail.click()
    href = mail.get_attribute("href") or ""
    assert href.startswith("mailto:?subject=What%20does")
    assert "%0D%0A" in href
    assert "%0A%0A" not in href


def test_the_code_on_the_screen_is_read_back(open_page: Opener) -> None:
    page, found = opened(open_page, "care/build-up/", "build-up", color_scheme="dark")
    page.set_viewport_size({"width": 320, "height": 700})
    found.get_by_role("button", name="Show a QR code").click()
    code = found.locator("svg.salt-code")
    expect(code).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    link = page.evaluate("document.querySelector('salt-calc').link()")
    assert decoded(code.screenshot()) == [link]


def test_a_half_typed_form_is_not_handed_on(open_page: Opener) -> None:
    page, found = opened(open_page, "care/salt-units/", "meter-reading")
    page.get_by_label("Reading on the pen").first.fill("5o0")
    found.get_by_role("button", name="Add to my sheet").click()
    expect(found.get_by_role("status")).to_contain_text("not worked out yet")


def test_the_device_s_own_sheet_is_offered_where_there_is_one(open_page: Opener) -> None:
    page = open_page("sources/")
    page.add_init_script("navigator.share = async (what) => { document.shared = what; };")
    page.goto(page.url.replace("sources/", "care/build-up/"))
    panel(live(page, "build-up")).get_by_role("button", name="Share", exact=True).click()
    until(page, "document.shared")
    shared = page.evaluate("document.shared")
    assert shared["title"] == "When is it salty again?"
    assert "#build-up=" in shared["url"]
    assert "days" in shared["text"]


def test_where_copying_is_not_allowed_the_text_stands_in_a_box(open_page: Opener) -> None:
    page = open_page("sources/")
    refusing = "{value: {writeText: () => Promise.reject()}}"
    page.add_init_script(f"Object.defineProperty(navigator, 'clipboard', {refusing})")
    page.goto(page.url.replace("sources/", "care/build-up/"))
    found = panel(live(page, "build-up"))
    found.get_by_role("button", name="Copy as text").click()
    box = found.get_by_label("Text to copy")
    expect(box).to_be_focused()
    assert "When is it salty again?" in box.input_value()
    assert not trouble(page, ".salt-share")


def printed(open_page: Opener, name: str) -> Page:
    page, found = opened(open_page, HOMES[name], name)
    found.get_by_role("button", name="Print this answer").click()
    expect(page.locator("body")).to_have_attribute("data-printed", "yes", timeout=15_000)
    return page


def pdf(page: Page, size: str, folder: Path) -> Paper:
    """The page as Chromium prints it."""
    file = folder / "answer.pdf"
    page.pdf(path=file, format=size)
    return Paper(file)


ON_A5 = ["meter-reading", "flush-today", "flush-plan", "damage-key", "feed-recipe"]


@pytest.mark.parametrize("name", ON_A5)
def test_an_answer_prints_alone_on_one_a5_page(
    open_page: Opener, name: str, tmp_path: Path
) -> None:
    page = printed(open_page, name)
    link = page.locator(".salt-paper footer a").get_attribute("href") or ""
    paper = pdf(page, "A5", tmp_path)
    text = paper.text
    assert len(paper.sizes) == 1
    assert paper.codes() == {link}
    question = page.locator(f'salt-calc[name="{name}"] form > h2').text_content() or ""
    for part in (question, "Cannot see", "Method version", "Sources"):
        assert part in text, (part, text)
    assert re.sub(r"\s", "", link.partition("#")[2]) in re.sub(r"\s", "", text)
    assert "Worked-out cases" not in text
    assert "Share or keep" not in text
    expect(page.locator("body > .salt-paper")).to_have_count(0)  # gone once it is printed


@pytest.mark.long
@pytest.mark.parametrize("name", sorted(HOMES))
def test_every_answer_prints_on_one_a4_page(open_page: Opener, name: str, tmp_path: Path) -> None:
    assert len(pdf(printed(open_page, name), "A4", tmp_path).sizes) == 1


def test_all_of_it_works_without_a_network(open_page: Opener) -> None:
    page = open_page("care/build-up/", **COPY)
    live(page, "build-up")
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.reload()
    context: BrowserContext = page.context
    context.set_offline(True)
    found = panel(live(page, "build-up"))
    found.get_by_role("button", name="Show a QR code").click()
    expect(found.locator("svg.salt-code")).to_be_visible()
    found.get_by_role("button", name="Copy the link").click()
    assert "#build-up=" in clipboard(page)
    found.get_by_role("button", name="Add to my sheet").click()
    expect(found.get_by_role("link", name="Look at the sheet")).to_be_visible()


def test_a_page_on_paper_is_black_on_white_with_its_values(
    open_page: Opener, tmp_path: Path
) -> None:
    page = open_page("care/salt-units/", color_scheme="dark")
    live(page, "meter-reading")
    text = pdf(page, "A4", tmp_path).text
    for part in ("Reading on the pen 500", "All the figures", "Method version", "Show the working"):
        assert part in text, part
    assert "cF" not in text.partition("Temperature of the water")[0]  # a scale not chosen
    page.emulate_media(media="print", color_scheme="dark")
    colours = page.locator(".salt-say").first.evaluate(
        "(e) => [getComputedStyle(e).color, getComputedStyle(document.body).backgroundColor]"
    )
    assert colours == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    assert page.locator("salt-calc details[open]").count() == 0
