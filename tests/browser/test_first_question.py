"""The first calculator's example is asked while the page is still on its way, and only once."""

from __future__ import annotations

import json

from playwright.sync_api import Browser, Page, expect

from saltline.forms import all_forms
from saltline_pages.links import fragment

FIRST_LIVE = "salt-calc[data-state=live]"
# What every worker is asked, as it is asked; where the page is kept, the first by its name. The
# last of each says whether an answer was shown by then.
WATCH = """globalThis.asked = [], globalThis.names = [];
globalThis.Worker = class extends Worker {
  constructor(address, { name } = {}) {
    super(address, { name });
    if (name) names.push(name);
    const first = name && JSON.parse(name).asked;
    if (first) asked.push([first.id, first.question, false]);
  }
  postMessage(data, ...rest) {
    if (data.question) asked.push([data.id, data.question, !!document.querySelector("LIVE")]);
    super.postMessage(data, ...rest);
  }
};""".replace("LIVE", FIRST_LIVE)


def asked(page: Page, address: str) -> list[tuple[int, str, bool]]:
    page.goto(address)
    expect(page.locator("salt-calc:not([data-state=live])")).to_have_count(0)
    found: list[tuple[int, str, bool]] = page.evaluate("asked")
    return found


def test_the_first_example_is_asked_at_once_and_not_again(
    browser: Browser, address: str, calculating: list[str]
) -> None:
    with browser.new_context(service_workers="block") as context:
        page = context.new_page()
        page.add_init_script(WATCH)
        for path in calculating:
            (early, question, _), *others = asked(page, f"{address}{path}/")
            assert early < 0, path
            assert question not in [other for _, other, _ in others], path
            # Nor does any other question hold its answer back.
            assert all(shown for _, _, shown in others), path


def test_a_page_that_is_kept_tells_its_worker_all_when_it_makes_it(
    browser: Browser, address: str
) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(f"{address}care/is-it-high/")
        ready = "Ready for use without a network."
        expect(page.locator(".salt-copy")).to_contain_text(ready, timeout=30_000)
        page.add_init_script(WATCH)
        (early, question, _), *others = asked(page, f"{address}care/is-it-high/")
        assert early < 0
        assert question not in [other for _, other, _ in others]
        assert page.evaluate("names.length") == 1
        told = json.loads(page.evaluate("names[0]"))
        context.set_offline(True)
        assert asked(page, f"{address}care/is-it-high/")[0][:2] == [early, question]
    assert told["wasm"].endswith(".wasm")
    assert told["asked"]["question"] == question


def test_the_numbers_of_a_link_come_first(browser: Browser, address: str) -> None:
    with browser.new_context(service_workers="block") as context:
        page = context.new_page()
        page.add_init_script(WATCH)
        form = all_forms()["meter-reading"]
        link = fragment(form, form.complete({**form.example, "reading": 900.0}))
        (number, question, _), *_ = asked(page, f"{address}care/salt-units/{link}")
    assert number > 0
    assert '"reading":900.0' in question
