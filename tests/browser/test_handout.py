"""The reader's sheet: answers are added, ordered, taken off and printed, on the device."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from browser.test_access import trouble
from papers import Paper

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
QUESTIONS = ("When is it salty again?", "What does my pen mean?")


def collected(open_page: Opener) -> Page:
    """The sheet with two answers on it."""
    page = open_page("sources/")
    home = page.url.removesuffix("sources/")
    for path, name in (("care/build-up/", "build-up"), ("care/salt-units/", "meter-reading")):
        page.goto(home + path)
        calculator = page.locator(f'salt-calc[name="{name}"]')
        expect(calculator).to_have_attribute("data-state", "live", timeout=15_000)
        calculator.get_by_role("button", name="Share or keep").click()
        calculator.get_by_role("button", name="Add to my sheet").click()
        calculator.get_by_role("link", name="Look at the sheet").click()
        page.wait_for_url("**/sheet/")
    return page


def titles(page: Page) -> list[str]:
    return page.locator(".salt-collected h2").all_text_contents()


def test_answers_are_kept_ordered_and_taken_off(open_page: Opener) -> None:
    page = collected(open_page)
    assert tuple(titles(page)) == QUESTIONS
    assert not trouble(page, "")
    page.get_by_role("button", name=f"Down: {QUESTIONS[0]}").click()
    assert tuple(titles(page)) == QUESTIONS[::-1]
    expect(page.get_by_role("button", name=f"Up: {QUESTIONS[0]}")).to_be_focused()
    page.reload()
    assert tuple(titles(page)) == QUESTIONS[::-1]
    page.get_by_role("button", name=f"Take off: {QUESTIONS[1]}").click()
    assert titles(page) == [QUESTIONS[0]]
    page.get_by_role("button", name="Take all off").click()
    assert titles(page) == []
    expect(page.get_by_role("button", name="Print the sheet")).to_be_disabled()
    page.get_by_role("button", name="Put them back").click()
    assert titles(page) == [QUESTIONS[0]]


@pytest.mark.parametrize(("size", "points"), [("A4", (595, 842)), ("A5", (420, 595))])
def test_the_sheet_prints_with_name_date_and_codes(
    open_page: Opener, tmp_path: Path, size: str, points: tuple[int, int]
) -> None:
    page = collected(open_page)
    page.evaluate("window.print = () => {}")
    page.get_by_label("Name of the club").fill("Tarn Valley Orchid Circle")
    page.get_by_label(size).check()
    page.get_by_role("button", name="Print the sheet").click()
    answers = {
        each.locator("footer a").get_attribute("href") or "": each.locator(".salt-say").inner_text()
        for each in page.locator("body > .salt-collected .salt-paper").all()
    }
    assert len(answers) == 2
    file = tmp_path / "sheet.pdf"
    page.pdf(path=file, prefer_css_page_size=True)
    paper = Paper(file)
    assert paper.sizes[0] == pytest.approx(points, abs=1)
    for part in (*QUESTIONS, "Tarn Valley Orchid Circle", "Method version"):
        assert part in paper.text
    assert re.search(r"\d{1,2} [A-Z][a-z]+ 20\d\d", paper.text)
    assert "Take all off" not in paper.text
    assert paper.codes() == set(answers)
    if size == "A5":
        return
    # What a phone reads from the paper opens the same answer for somebody who was never here.
    for link, verdict in answers.items():
        other = open_page(link.partition("/club/site/")[2])
        calculator = other.locator(f'salt-calc[name="{link.partition("#")[2].partition("=")[0]}"]')
        expect(calculator).to_have_attribute("data-state", "live", timeout=15_000)
        expect(calculator.locator(".salt-say")).to_have_text(verdict)


def test_what_is_kept_is_data_and_never_markup(open_page: Opener) -> None:
    page = collected(open_page)
    page.evaluate(
        """() => {
          const kept = JSON.parse(localStorage.getItem('saltline'));
          kept.sheet[0].question = '<img src=x onerror="document.title=1">';
          kept.sheet[0].picture = '<svg xmlns="http://www.w3.org/2000/svg">'
            + '<script>document.title=1</script><a href="javascript:1"><text>words</text></a>'
            + '<foreignObject><b>b</b></foreignObject><path d="M0 0" data-x="1"/></svg>';
          localStorage.setItem('saltline', JSON.stringify(kept));
        }"""
    )
    page.reload()
    first = page.locator(".salt-collected section").first
    expect(first.locator("h2")).to_have_text('<img src=x onerror="document.title=1">')
    assert first.locator("img, script, svg a, foreignObject").count() == 0
    assert first.locator(".salt-picture path").evaluate("e => e.getAttributeNames()") == ["d"]
    assert page.title() != "1"
