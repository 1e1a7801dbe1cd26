"""An engine that fails in any way ends in a sentence, and the built answers stay."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route, expect

from browser.waiting import until
from conftest import PHONE
from static_server import Handler, Server, Site, running

pytestmark = pytest.mark.browser

PAGE = "care/salt-units/"
STANDS = "The example and the worked-out cases still stand."
# In the place of the worker's own script.
CRASHES = "self.onmessage = () => { throw new Error('gone'); };"
NEVER_ENDS = (
    "self.onmessage = ({ data }) => { if (data.id) { postMessage({ id: data.id, begun: true });"
    " for (;;) {} } };"
)
# More than the engine's memory holds, ahead of each question.
TOO_MUCH = """WebAssembly.Memory.prototype.grow = () => { throw new RangeError("full"); };
addEventListener("message", ({ data }) => {
  if (data.id) data.question = " ".repeat(3e7) + data.question;
});
"""
NO_WEBASSEMBLY = "delete window.WebAssembly;"
NO_WORKER = "window.Worker = class { constructor() { throw new Error('blocked'); } };"
NO_ELEMENTS = "Object.defineProperty(window, 'customElements', { value: undefined });"
NO_STORAGE = """
for (const name of ["localStorage", "sessionStorage", "indexedDB", "caches"])
  Object.defineProperty(window, name, { get() { throw new DOMException("no", "SecurityError"); } });
Object.defineProperty(navigator, "serviceWorker", { value: {
  register: () => Promise.reject(new DOMException("no", "SecurityError")) } });
"""


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page that may fail, without a service worker, which would answer in its place."""
    context = browser.new_context(viewport=PHONE, service_workers="block")  # type: ignore[arg-type]
    yield context.new_page()
    context.close()


def answers(page: Page) -> tuple[str, str]:
    """The verdict and the reading in mS/cm, as they stand."""
    say = page.locator(".salt-say").first.text_content() or ""
    value = page.locator('output[name="ec_ms_cm"]').first.get_attribute("data-value") or ""
    return say, value


def stopped(page: Page, sentence: str) -> None:
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "error")
    expect(page.locator(".salt-note").first).to_have_text(f"{sentence} {STANDS}")
    say, value = answers(page)
    assert say
    assert float(value) == pytest.approx(0.558, rel=1e-12)


def changed_worker(page: Page, script: str) -> None:
    page.route(
        "**/assets/worker.*.js",
        lambda route: route.fulfill(body=script, content_type="text/javascript"),
    )


def test_a_worker_that_crashes(page: Page, address: str) -> None:
    changed_worker(page, CRASHES)
    page.goto(address + PAGE)
    stopped(page, "The calculator did not arrive. Press “Work it out” when there is a network.")
    page.unroute_all()
    page.get_by_role("button", name="Work it out").first.click()
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "live")


def test_an_engine_out_of_memory(page: Page, address: str, site: Path) -> None:
    (worker,) = site.glob("assets/worker.*.js")
    changed_worker(page, TOO_MUCH + worker.read_text(encoding="utf-8"))
    page.goto(address + PAGE)
    stopped(page, "The calculator stopped on these numbers.")


def test_an_answer_that_never_ends_can_be_stopped_and_is_stopped(page: Page, address: str) -> None:
    changed_worker(page, NEVER_ENDS)
    page.clock.install()
    page.goto(address + PAGE)
    page.wait_for_load_state("networkidle")
    page.clock.run_for(2500)
    note = page.locator(".salt-note").first
    expect(note).to_contain_text("Still working it out.")
    page.get_by_role("button", name="Stop", exact=True).first.click()
    expect(note).to_contain_text("Stopped. The figures below are from before.")
    page.get_by_label("Reading on the pen").first.fill("500")
    # The stopped one is given up after a moment; the page's other calculators waited before ours.
    for _ in range(len(page.locator("salt-calc").all()) + 1):
        page.clock.run_for(21_000)
        page.wait_for_timeout(500)
    stopped(page, "These numbers took too long, so the calculator was stopped.")


@pytest.mark.parametrize("fault", [NO_WEBASSEMBLY, NO_WORKER], ids=["WebAssembly", "workers"])
def test_a_browser_that_blocks_the_engine(page: Page, address: str, fault: str) -> None:
    page.add_init_script(fault)
    page.goto(address + PAGE)
    stopped(page, "This browser cannot run the calculator.")


def test_an_engine_that_is_not_there(page: Page, address: str) -> None:
    page.route("**/*.wasm", lambda route: route.abort())
    page.goto(address + PAGE)
    stopped(page, "The calculator did not arrive. Press “Work it out” when there is a network.")


@pytest.mark.parametrize("file", ["*.wasm", "science.*.json", "worker.*.js", "page.*.js"])
def test_a_file_that_is_not_what_it_should_be(page: Page, address: str, file: str) -> None:
    page.route(f"**/assets/{file}", lambda route: route.fulfill(status=200, body="<!doctype html>"))
    page.goto(address + PAGE)
    if file == "page.*.js":
        expect(page.locator("html")).to_have_class("no-js")
    else:
        expect(page.locator("salt-calc").first).to_have_attribute("data-state", "error")
    assert float(answers(page)[1]) == pytest.approx(0.558, rel=1e-12)


def test_a_very_old_browser_keeps_the_built_answer(page: Page, address: str) -> None:
    page.add_init_script(NO_ELEMENTS)
    page.goto(address + PAGE)
    expect(page.locator("html")).to_have_class("no-js")
    expect(page.locator(".salt-still").first).to_be_visible()
    expect(page.get_by_role("button", name="Work it out").first).to_be_hidden()
    assert float(answers(page)[1]) == pytest.approx(0.558, rel=1e-12)


@pytest.mark.parametrize("path", [PAGE, "flush-day/", "sheet/", "care/root-damage/"])
def test_a_browser_that_keeps_nothing(page: Page, address: str, path: str) -> None:
    trouble: list[str] = []
    page.on("pageerror", lambda error: trouble.append(str(error)))
    page.add_init_script(NO_STORAGE)
    page.goto(address + path)
    if path != "sheet/":
        live = "salt-calc[data-state=live], salt-key[data-state=live]"
        expect(page.locator(live).first).to_be_attached()
    expect(page.locator(".salt-copy")).to_contain_text("it needs the network")
    assert not trouble


def test_a_worker_that_crashes_before_our_scripts_arrive(page: Page, address: str) -> None:
    late: list[Route] = []

    def keep(route: Route) -> None:
        late.append(route)

    changed_worker(page, CRASHES)
    page.route("**/assets/page.*.js", keep)
    page.goto(address + PAGE, wait_until="commit")
    page.wait_for_timeout(1000)
    late[0].continue_()
    stopped(page, "The calculator did not arrive. Press “Work it out” when there is a network.")
    expect(page.locator("html")).to_have_class("js")
    expect(page.get_by_role("button", name="Work it out").first).to_be_visible()


@pytest.mark.parametrize("name", ["pyodide.asm.bin", "library.bin"])
def test_cpython_that_breaks_off_on_the_way_says_so(page: Page, address: str, name: str) -> None:
    def cut(route: Route) -> None:
        reply = route.fetch()
        route.fulfill(response=reply, body=reply.body()[:100_000])

    page.route(f"**/{name}", cut)
    page.goto(address + "trust/")
    page.locator("[data-do=full]").click()
    expect(page.locator("salt-trust .salt-note")).to_contain_text("The CPython could not run here")
    expect(page.locator("salt-trust table")).to_be_hidden()
    expect(page.locator("salt-trust progress")).to_be_hidden()


class Stalls(Handler):
    """A host that stops in the middle of the first calculator, until the test is over."""

    over = threading.Event()

    def deliver(self, body: bytes) -> None:
        end = body.find(b"<salt-calc") + 3000
        if not self.path.endswith(PAGE) or end < 3000:
            return super().deliver(body)
        self.wfile.write(body[:end])
        self.wfile.flush()
        self.over.wait(20)


def test_a_page_that_stops_half_way_is_shown_as_far_as_it_came(
    browser: Browser, site: Path
) -> None:
    with running(Server(Site(site), 0, Stalls)) as server, browser.new_context() as context:
        page = context.new_page()
        page.goto(server.address + PAGE, wait_until="commit")
        until(page, "performance.getEntriesByName('first-contentful-paint').length", seconds=5)
        expect(page.locator("h1")).to_be_visible()
        Stalls.over.set()
