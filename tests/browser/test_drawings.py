"""Pictures in the page: the live one is the built one, and follows what is typed and its unit."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
PAGES = (("care/build-up/", "build-up"), ("care/salt-line/", "salt-band"))
DRAWN = """(svg) => [
  svg.getAttribute('viewBox'), svg.getAttribute('role'), svg.getAttribute('aria-label'),
  ...[...svg.querySelectorAll('*')].map((each) =>
    [each.localName, each.namespaceURI, each.children.length ? '' : each.textContent,
     ...[...each.attributes].map((a) => a.name + '=' + a.value).sort()].join(' ')),
]"""


def picture(page: Page, name: str) -> list[str]:
    svg = page.locator(f'salt-calc[name="{name}"] .salt-picture svg')
    found: list[str] = svg.evaluate(DRAWN)
    return found


def live(page: Page, name: str) -> None:
    expect(page.locator(f'salt-calc[name="{name}"]')).to_have_attribute("data-state", "live")


@pytest.mark.parametrize(("path", "name"), PAGES)
def test_live_picture_and_table_equal_the_built_ones(
    open_page: Opener, path: str, name: str
) -> None:
    quiet = open_page(path, java_script_enabled=False)
    page = open_page(path)
    live(page, name)
    built, shown = picture(quiet, name), picture(page, name)
    assert len(built) > 20
    assert shown == built
    if name == "build-up":
        table = f'salt-calc[name="{name}"] .salt-curve'
        assert page.locator(table).inner_html() == quiet.locator(table).inner_html()


def test_picture_and_table_follow_what_is_typed_and_its_unit(open_page: Opener) -> None:
    page = open_page("care/build-up/")
    live(page, "build-up")
    before = picture(page, "build-up")
    page.get_by_label("Your own limit").fill("2")
    expect(page.locator(".salt-picture svg")).to_contain_text("your limit, 2 mS/cm")
    assert picture(page, "build-up") != before
    page.locator("input[name=limit_ms_cm] + select").select_option(label="ppm (500)")
    expect(page.locator(".salt-picture svg")).to_contain_text("your limit, 1000 ppm (500)")
    expect(page.locator(".salt-curve tbody tr").first.locator("td")).to_have_text("250 ppm (500)")


def test_pictures_fill_the_phone_and_stop_growing(open_page: Opener) -> None:
    for width, least, most in ((320, 250, 310), (390, 310, 380), (1280, 380, 425)):
        page = open_page("care/salt-line/", viewport={"width": width, "height": 800})
        live(page, "salt-band")  # the live picture takes the built one's place
        box = page.locator(".salt-picture svg").bounding_box()
        assert box is not None
        assert least <= box["width"] <= most
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= width
