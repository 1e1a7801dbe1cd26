"""A club's link sets the site for a reader, and can be taken back; a name is only a name."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from typing import Any

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Page, expect

from browser.test_access import trouble
from saltline_pages.links import escaped

pytestmark = pytest.mark.browser

Opener = Callable[..., Page]
LINK = "#club=1;name=Tarn~20Valley;tap_ms_cm=0.35;scale=ppm700;units=us;hemisphere=south"
HOSTILE = (
    '<img src=x onerror="document.title=1">',
    "</p><script>document.title='2'</script>",
    "javascript:alert(1)",
    "\u202eevil\u0000\ufeff name",
    "=HYPERLINK(1)",
    "x" * 5000,
)


def kept(page: Page) -> dict[str, Any]:
    text = page.evaluate("localStorage.getItem('saltline')")
    found: dict[str, Any] = json.loads(text or "{}")
    return found


def opened(open_page: Opener, path: str, fragment: str) -> Page:
    """A page opened with a fragment, once it has told what the link did."""
    page = open_page("404.html")  # of the same site, so that storage may be read
    page.goto(page.url.replace("404.html", path + fragment))
    expect(page.locator(".salt-club")).to_be_visible()
    return page


@pytest.mark.parametrize("path", ["", "care/build-up/", "sources/"])
def test_a_link_sets_the_site_on_any_page_and_is_taken_back(open_page: Opener, path: str) -> None:
    page = open_page("sources/")
    before = {"facts": {"tap_ms_cm": 0.1, "pot_l": 2}, "units": {"g": 1}}
    page.evaluate("(text) => localStorage.setItem('saltline', text)", json.dumps(before))
    page.goto(page.url.replace("sources/", path + LINK))
    bar = page.locator(".salt-club")
    expect(bar).to_contain_text("Set for Tarn Valley: tap 0.35 mS/cm")
    expect(bar).to_contain_text("southern hemisphere")
    assert "#" not in page.url
    facts = {"tap_ms_cm": 0.35, "pot_l": 2, "scale": "ppm700", "hemisphere": "south"}
    assert kept(page)["facts"] == facts
    assert kept(page)["units"] == {"g": 1, "c": 1, "ml": 2, "l": 2, "mm": 2, "ms_cm": 4}
    assert not trouble(page, ".salt-club")
    bar.get_by_role("button", name="Undo").click()
    expect(bar).to_contain_text("as it was before")
    assert {name: kept(page)[name] for name in before} == before
    page.reload()
    expect(page.locator(".salt-club")).to_have_count(0)


def test_calculators_wear_the_settings(open_page: Opener) -> None:
    page = opened(open_page, "care/build-up/", LINK)
    unit = page.locator("input[name=feed_ms_cm] + select option:checked")
    expect(unit).to_have_text("ppm (700)")
    page.goto(page.url.partition("#")[0].replace("build-up", "salt-units"))
    calculator = page.locator("salt-calc[name=meter-reading]")
    calculator.get_by_role("button", name="Use my").click()
    expect(calculator.get_by_label("ppm, 700 scale")).to_be_checked()


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_is_only_a_name(open_page: Opener, name: str) -> None:
    page = opened(open_page, "clubs/", f"#club=1;name={escaped(name)};scale=nothing;tap_ms_cm=1e9")
    assert page.locator(".salt-club img, .salt-club script").count() == 0
    expect(page.locator(".salt-now")).to_contain_text("This device is set for")
    assert page.locator(".salt-now img, .salt-now script").count() == 0
    settings = kept(page)["club"]["settings"]
    assert list(settings) == ["name"]
    assert len(settings["name"]) <= 60
    assert not {"\u202e", "\0", "\ufeff"} & set(settings["name"])
    page.goto(page.url.replace("clubs/", "sheet/"))
    expect(page.get_by_label("Name of the club")).to_have_value(settings["name"])
    assert page.title() not in ("1", "2")
    assert page.locator("img[src=x]").count() == 0


def test_a_link_without_a_setting_says_so(open_page: Opener) -> None:
    page = opened(open_page, "sources/", "#club=1;hemisphere=east;units=;tap_ms_cm=salty")
    expect(page.locator(".salt-club")).to_contain_text("no settings that can be used")
    assert "club" not in kept(page)


def test_the_form_makes_the_link_and_its_code(open_page: Opener) -> None:
    page = open_page("clubs/")
    form = page.locator("salt-club")
    form.get_by_role("button", name="Make the link").click()
    expect(form.get_by_role("status")).to_contain_text("at least one")
    form.get_by_label("Name of the club").fill("Tarn Valley Orchid Circle; Ines & Bo <3")
    form.get_by_label("Tap water").fill("a lot")
    form.get_by_role("button", name="Make the link").click()
    expect(form.get_by_role("status")).to_contain_text("must be a number")
    form.get_by_label("Tap water").fill("245")
    form.get_by_label("Unit", exact=True).select_option(label="ppm (700)")
    form.get_by_label("What most pens show").select_option(label="ppm, 700 scale")
    form.get_by_label("Hemisphere").select_option(label="southern")
    form.get_by_role("button", name="Make the link").click()
    link = form.locator(".salt-made a").get_attribute("href") or ""
    home = page.url.removesuffix("clubs/")
    assert link == (
        f"{home}#club=1;name=Tarn~20Valley~20Orchid~20Circle~3B~20Ines~20~26~20Bo~20~3C3;"
        "tap_ms_cm=0.35;scale=ppm700;hemisphere=south"
    )
    shot = form.locator("svg.salt-code").screenshot()
    codes = zxingcpp.read_barcodes(
        Image.open(io.BytesIO(shot)), formats=zxingcpp.BarcodeFormat.QRCode
    )
    assert [code.text for code in codes] == [link]
    assert not trouble(page, "salt-club")
    other = open_page(link.removeprefix(home))
    expect(other.locator(".salt-club")).to_contain_text("Tarn Valley Orchid Circle; Ines & Bo <3")


@pytest.mark.parametrize("path", ["clubs/", "sheet/"])
def test_narrow_screens_do_not_scroll_sideways(open_page: Opener, path: str) -> None:
    page = open_page(path, viewport={"width": 320, "height": 700})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
