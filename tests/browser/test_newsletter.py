"""The newsletter's page: a tap copies a text with its sources, codes lead to short addresses."""

from __future__ import annotations

import io
import re
from collections.abc import Callable

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Page, Route, expect

from browser.test_access import trouble

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
COPY = {"permissions": ["clipboard-read", "clipboard-write"]}
ADDRESSES = ("pen/", "high/", "flush/", "black-roots/", "beads/", "care/stages/")


def copied(page: Page) -> str:
    text: str = page.evaluate("navigator.clipboard.readText()")
    return text


def test_a_tap_copies_a_text_with_its_credit_and_sources(open_page: Opener) -> None:
    page = open_page("newsletter/", **COPY)
    article = page.locator("salt-article").first
    article.get_by_role("button", name="Copy the text").first.click()
    expect(article.get_by_role("status")).to_contain_text("is copied")
    title, *paragraphs, credit, sources = copied(page).split("\n\n")
    assert title == "Is your ppm my ppm?"
    words = sum(bool(re.search(r"\w", word)) for word in " ".join(paragraphs).split())
    assert 145 <= words <= 155
    home = page.url.removesuffix("newsletter/")
    assert credit == f"Text and drawing: Saltline, CC BY 4.0. More at {home}pen/"
    assert sources == (
        "Sources, in brackets how each was read: Saltline notes, salts 2 (computed)."
    )
    assert not any(mark in copied(page) for mark in (" .", "¶", "Copy the text", "[@"))
    month = page.locator(".salt-month").nth(9)
    month.locator("summary").click()
    month.get_by_role("button", name="Copy the text").click()
    expect(month.get_by_role("status")).to_contain_text("is copied")
    assert copied(page).startswith("October in the north, April in the south\n\n")
    assert not trouble(page, "")


@pytest.mark.parametrize("what", ["drawing", "code"])
def test_a_picture_is_saved_for_print(open_page: Opener, what: str) -> None:
    page = open_page("newsletter/", color_scheme="dark")
    with page.expect_download() as found:
        page.get_by_role("button", name=f"Save the {what}").first.click()
    name = "saltline-pen.png" if what == "drawing" else "saltline-pen-code.png"
    assert found.value.suggested_filename == name
    picture = Image.open(found.value.path()).convert("L")
    assert picture.width == 945
    low, high = picture.getextrema()
    assert (low, high) == (0, 255)
    if what == "code":
        home = page.url.removesuffix("newsletter/")
        assert [code.text for code in zxingcpp.read_barcodes(picture)] == [home + "pen/"]


def test_the_codes_are_read_from_the_page_as_it_prints(open_page: Opener) -> None:
    page = open_page("newsletter/")
    expect(page.locator("svg.salt-code")).to_have_count(len(ADDRESSES))
    page.emulate_media(media="print")
    shot = Image.open(io.BytesIO(page.screenshot(full_page=True)))
    read = {code.text for code in zxingcpp.read_barcodes(shot)}
    home = page.url.removesuffix("newsletter/")
    assert read == {home + address for address in ADDRESSES}


def test_a_known_address_goes_into_credit_and_code(open_page: Opener) -> None:
    page = open_page("404.html")
    known = "https://orchids.example/care-pages/"

    def with_address(route: Route) -> None:
        mark = f'<head><link rel="canonical" href="{known}newsletter/">'
        route.fulfill(body=route.fetch().text().replace("<head>", mark), content_type="text/html")

    page.route("**/newsletter/", with_address)
    page.goto(page.url.replace("404.html", "newsletter/"))
    article = page.locator("salt-article").nth(1)
    expect(article.locator(".salt-credit a")).to_have_text(f"{known}high/")
    shot = Image.open(io.BytesIO(article.locator("svg.salt-code").screenshot()))
    assert [code.text for code in zxingcpp.read_barcodes(shot)] == [f"{known}high/"]


def test_a_narrow_screen_does_not_scroll_sideways(open_page: Opener) -> None:
    page = open_page("newsletter/", viewport={"width": 320, "height": 700})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
