"""The first calculator's example is asked while the page is still on its way, and only once."""

from __future__ import annotations

from playwright.sync_api import Browser, Page

from saltline.forms import all_forms
from saltline_pages.links import fragment

# What every worker is asked, as it is asked.
WATCH = """globalThis.asked = [];
globalThis.Worker = class extends Worker {
  postMessage(data, ...rest) {
    if (data.question) asked.push([data.id, data.question]);
    super.postMessage(data, ...rest);
  }
};"""
FIRST_LIVE = "salt-calc[data-state=live]"


def asked(page: Page, address: str) -> list[tuple[int, str]]:
    page.goto(address)
    page.wait_for_selector(FIRST_LIVE, state="attached")
    found: list[tuple[int, str]] = page.evaluate("asked")
    return found


def test_the_first_example_is_asked_at_once_and_not_again(
    browser: Browser, address: str, calculating: list[str]
) -> None:
    with browser.new_context(service_workers="block") as context:
        page = context.new_page()
        page.add_init_script(WATCH)
        for path in calculating:
            (early, question), *others = asked(page, f"{address}{path}/")
            assert early < 0, path
            assert question not in [other for _, other in others], path


def test_the_numbers_of_a_link_come_first(browser: Browser, address: str) -> None:
    with browser.new_context(service_workers="block") as context:
        page = context.new_page()
        page.add_init_script(WATCH)
        form = all_forms()["meter-reading"]
        link = fragment(form, form.complete({**form.example, "reading": 900.0}))
        (number, question), *_ = asked(page, f"{address}care/salt-units/{link}")
    assert number > 0
    assert '"reading":900.0' in question
