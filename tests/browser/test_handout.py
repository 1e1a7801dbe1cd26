"""The reader's sheet: answers are added, ordered, taken off and printed, on the device."""

from __future__ import annotations

import io
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Page, expect

from browser.test_access import trouble

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


@pytest.mark.parametrize(("size", "points"), [("A4", "594.96 x 841.92"), ("A5", "420 x 594.96")])
def test_the_sheet_prints_with_name_date_and_codes(
    open_page: Opener, tmp_path: Path, size: str, points: str
) -> None:
    page = collected(open_page)
    page.evaluate("window.print = () => {}")
    page.get_by_label("Name of the club").fill("Tarn Valley Orchid Circle")
    page.get_by_label(size).check()
    page.get_by_role("button", name="Print the sheet").click()
    links = {
        each.get_attribute("href") for each in page.locator("body > .salt-collected footer a").all()
    }
    assert len(links) == 2
    file = tmp_path / "sheet.pdf"
    page.pdf(path=file, prefer_css_page_size=True)
    info = subprocess.run(["pdfinfo", str(file)], capture_output=True, text=True, check=True).stdout
    width, height = map(float, re.findall(r"Page size: +([\d.]+) x ([\d.]+)", info)[0])
    wanted = [float(each) for each in points.split(" x ")]
    assert [width, height] == pytest.approx(wanted, abs=1.5)
    words = ["pdftotext", str(file), "-"]
    text = subprocess.run(words, capture_output=True, text=True, check=True).stdout
    for part in (*QUESTIONS, "Tarn Valley Orchid Circle", "Method version"):
        assert part in text
    assert re.search(r"\d{1,2} [A-Z][a-z]+ 20\d\d", text)
    assert "Take all off" not in text
    subprocess.run(["pdftoppm", "-r", "300", "-png", str(file), str(tmp_path / "p")], check=True)
    read = {
        found.text
        for shot in tmp_path.glob("p*.png")
        for found in zxingcpp.read_barcodes(Image.open(io.BytesIO(shot.read_bytes())))
    }
    assert read == links


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
