"""Short addresses for print lead on at once, with their fragment, and for every browser."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

LEADS = {
    "high": "care/is-it-high/",
    "flush": "flush-day/",
    "black-roots": "care/next-ten-minutes/",
    "pen": "care/salt-units/",
    "beads": "care/slow-release/",
}
LINK = "#meter-reading=1;reading=1413;scale=us_cm;sample_c=12"


@pytest.mark.parametrize("name", LEADS)
@pytest.mark.parametrize("script", [True, False])
def test_a_short_address_leads_on(open_page: Callable[..., Page], name: str, script: bool) -> None:
    page = open_page(f"{name}/", java_script_enabled=script)
    page.wait_for_url(f"**/club/site/{LEADS[name]}")


def test_the_fragment_goes_along_and_back_leaves(open_page: Callable[..., Page]) -> None:
    page = open_page("sources/")
    page.goto(page.url.replace("sources/", f"pen/{LINK}"))
    page.wait_for_url(f"**/care/salt-units/{LINK}*")
    expect(page.get_by_label("Reading on the pen").first).to_have_value("1413")
    page.go_back()
    page.wait_for_url("**/sources/")


def test_the_link_stands_there_for_everyone(open_page: Callable[..., Page]) -> None:
    page = open_page("sources/")
    text = page.evaluate("fetch('../high/').then((reply) => reply.text())")
    assert '<a class="salt-lead" href="../care/is-it-high/">' in text
    index = page.evaluate("fetch('../search/search_index.json').then((reply) => reply.text())")
    assert '"location":"high/' not in index
    assert '"location":"care/is-it-high/' in index
