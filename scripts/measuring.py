"""What a reader's phone waits for and fetches, measured in a real browser."""

from __future__ import annotations

import os
import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import NamedTuple

from playwright.sync_api import Browser, BrowserContext, Page, TimeoutError, sync_playwright

from slow_link import LINKS, Sent, SlowServer
from start import ROOT
from static_server import Site, running

sys.path.append(str(ROOT / "calculators"))
from saltline_pages.tools import tool

COLD_RUNS, LATER_RUNS = 3, 5
FIRST = f"first live answer, cold (median of {COLD_RUNS})"
LATER = f"later visit (median of {LATER_RUNS})"
SLOWER = 4  # times slower than this processor
PATIENCE = 60_000  # milliseconds
OPEN_MS = 2000  # a new window of the browser draws itself for half a second on a busy machine
SHORT_MS, LONG_MS = 50, 300
# These draw many pots or roots, or follow one for weeks.
LONG = {
    *("flush-today", "flush-plan", "flush-learn", "is-it-high", "pore-water"),
    *("salt-band", "prill-pot", "prill-dose"),
}
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
IS_LIVE = "salt-calc[data-state=live]"
STOPPED = "salt-calc[data-state=error]"
# Marks the moment in the page's own clock, from the start of the navigation, and tells it in the
# console: asking the page would cost it time.
MARK_LIVE = """new MutationObserver((changes, observer) => {
  if (!document.querySelector("IS_LIVE, STOPPED")) return;
  performance.mark("live");
  observer.disconnect();
  console.debug("saltline:", document.querySelector("IS_LIVE") ? "live" : "stopped");
}).observe(document, { subtree: true, childList: true, attributeFilter: ["data-state"] });"""
MARK_LIVE = MARK_LIVE.replace("IS_LIVE", IS_LIVE).replace("STOPPED", STOPPED)
TOLD = ("saltline: live", "saltline: stopped")
LIVE = "performance.getEntriesByName('live')[0]?.startTime"
SHIFT = """new Promise((done) => {
  let sum = 0;
  new PerformanceObserver((list) => {
    for (const shift of list.getEntries()) sum += shift.value;
  }).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => done(sum), 300);
})"""
KEPT = """async () => {
  if (!(await navigator.serviceWorker.getRegistration())) return false;
  await navigator.serviceWorker.ready;
  return true;
}"""
# From a changed field to the answer, five times, and whose it is; null where no answer comes.
RECOMPUTE = """async () => {
  const fields = [...document.querySelectorAll("salt-calc input[inputmode=decimal]")];
  const field = fields.find((one) => one.checkVisibility() && Number(one.value));
  const buttons = document.querySelectorAll("salt-calc input[type=radio]");
  const first = Number(field?.value);
  const times = [];
  for (let turn = 1; turn <= 5; turn++) {
    const begun = performance.now();
    const answered = new Promise((done) => {
      document.addEventListener("salt:answer", () => done(true), { once: true });
      setTimeout(done, 5000, false);
    });
    if (field) field.value = String(Number.isInteger(first) ? first + turn : first + turn / 100);
    else buttons[turn % 2].checked = true;
    (field ?? buttons[turn % 2]).dispatchEvent(new Event("input", { bubbles: true }));
    if (!(await answered)) return null;
    times.push(performance.now() - begun);
  }
  const name = (field ?? buttons[0]).closest("salt-calc").getAttribute("name");
  return [name, times.sort((a, b) => a - b)[2]];
}"""


def answer_budget(name: str) -> int:
    """What an answer of this calculator may take [ms]."""
    return LONG_MS if name in LONG else SHORT_MS


class Line(NamedTuple):
    """One measured figure beside its budget (nothing where it could not be measured)."""

    what: str
    value: float | None
    budget: float
    unit: str

    def __str__(self) -> str:
        if self.value is None:
            return f"  {self.what:44}         -   {self.budget:7g} {self.unit}  NOT MEASURED"
        over = "  OVER" if self.value > self.budget else ""
        return f"  {self.what:44} {self.value:9.4g}   {self.budget:7g} {self.unit}{over}"


def pages_that_calculate(site: Path) -> list[str]:
    """The care pages with a calculator, as paths from the site's root."""
    return [
        page.parent.relative_to(site).as_posix() + "/"
        for page in sorted(site.glob("care/*/index.html"))
        if "<salt-calc" in page.read_text(encoding="utf-8")
    ]


def report(site: Path, pages: list[str], link: str, build_s: float) -> dict[str, list[float]]:
    """Print every page's figures as they come; the answers of all, cold and later [s]."""
    kbit_s, delay_s = LINKS[link]
    print(f"{kbit_s} kbit/s, {delay_s * 1000:.0f} ms a request, processor {SLOWER} times slower.")
    print("kB are 1000 bytes as they cross the link, gzipped.")
    load, cores = os.getloadavg()[0], os.cpu_count() or 1
    if load > cores / 2:
        print(f"Other work is running ({load:.1f} on {cores} cores): times are upper bounds.")
    print(f"{'':46}{'measured':>9}   {'budget':>7}")
    print(Line("building the site", build_s, 30, "s"), flush=True)
    answers: dict[str, list[float]] = {FIRST: [], LATER: []}
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=tool("chromium"), args=QUIET)
        for path in pages:
            print(f"\n{path}")
            for line in measured(browser, site, path, link):
                print(line, flush=True)
                if isinstance(line, Line) and line.what in answers and line.value:
                    answers[line.what].append(line.value)
    return answers


def measured(browser: Browser, site: Path, path: str, link: str) -> Iterator[Line | str]:
    """All figures of one page."""
    host = Site(site, cache="max-age=600")  # what plain web hosts say
    cold = []
    for _ in range(COLD_RUNS):  # what an earlier visitor's copy still fetches must not count
        with running(SlowServer(host, LINKS[link])) as server:
            cold.append(first_visit(browser, server, path))
    with running(SlowServer(host, LINKS[link])) as server:
        yield Line(FIRST, median(c.live_s for c in cold), 2, "s")
        yield Line("fetched before it", median(c.before_kb for c in cold), 270, "kB")
        yield Line("layout shift", max(c.shift for c in cold), 0, "")
        yield Line("requests to other hosts", max(c.foreign for c in cold), 0, "")
        yield from later_visits(browser, server, path)
        yield from weights(browser, server, path)


class Visit(NamedTuple):
    live_s: float
    before_kb: float
    shift: float
    foreign: int


def first_visit(browser: Browser, server: SlowServer, path: str) -> Visit:
    with fresh(browser, server) as context:
        page = phone(context)
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        live_s = open_live(page, server.address + path)
        at: float = page.evaluate(f"performance.timeOrigin + {LIVE}")
        before = sum(sent.size for sent in server.sent if sent.begun <= at / 1000)
        shift: float = page.evaluate(SHIFT)
    own = (server.address, "data:", f"blob:{server.address}")
    foreign = sum(not url.startswith(own) for url in asked)
    return Visit(live_s, before / 1000, shift, foreign)


def later_visits(browser: Browser, server: SlowServer, path: str) -> Iterator[Line]:
    """Later visits, then some without network, once the page is kept for later."""
    with fresh(browser, server) as context:
        page = phone(context)
        open_live(page, server.address + path)
        link, server.link = server.link, None
        page.wait_for_timeout(3000)
        kept: bool = page.evaluate(KEPT)
        name, recompute = page.evaluate(RECOMPUTE) or ("", None)
        page.close()
        fetched = sum(sent.size for sent in server.sent) / 1e6
        server.link = link
        later = visits(context, server.address + path)
        offline = None
        if kept:
            context.set_offline(True)
            server.sent.clear()
            offline = visits(context, server.address + path)
            # The browser itself looks for a newer service worker, past the emulated network.
            if any(not sent.path.endswith("/sw.js") for sent in server.sent):
                raise RuntimeError("the visit without network reached the server")
    yield Line(LATER, later, 0.5, "s")
    yield Line(f"without network (median of {LATER_RUNS})", offline, 0.5, "s")
    yield Line("all that the first visit fetches and keeps", fetched if kept else None, 4, "MB")
    yield Line("recomputing after a change", recompute, answer_budget(name), "ms")


def visits(context: BrowserContext, address: str) -> float:
    """The middle one of some visits [s], each in a page of its own."""
    times = []
    for _ in range(LATER_RUNS):
        page = phone(context)
        times.append(open_live(page, address))
        page.close()
    return median(times)


def weights(browser: Browser, server: SlowServer, path: str) -> Iterator[Line | str]:
    """The page's own weight, without what is fetched only to be kept for later."""
    with fresh(browser, server, keeping=False) as context:
        page = phone(context)
        open_live(page, server.address + path)
        page.wait_for_load_state("networkidle")
        by_kind = Counter[str]()
        for sent in server.sent:
            by_kind[kind(sent, path)] += sent.size
    without = sum(size for name, size in by_kind.items() if not name.startswith("engine"))
    yield Line("page with the theme, without the engine", without / 1000, 130, "kB")
    yield Line("our own scripts", by_kind["our scripts"] / 1000, 14, "kB")
    for name, size in sorted(by_kind.items(), key=lambda item: -item[1]):
        yield f"    {name:42} {size / 1000:9.4g}             kB"


def kind(sent: Sent, page: str) -> str:
    """What a fetched file is, by where the build puts it."""
    file = Path(sent.path)
    if sent.path == "/" + page:
        return "HTML"
    if file.suffix == ".wasm":
        return "engine: wasm"
    if file.name.startswith("worker."):
        return "engine: worker with loader"
    if file.name.startswith("science."):
        return "engine: this page's science"
    if file.suffix == ".css":
        return "styles"
    if file.suffix in (".js", ".mjs"):
        theme = file.parent.name in ("javascripts", "workers")
        return "theme scripts" if theme else "our scripts"
    return f"other ({file.suffix or file.name})"


@contextmanager
def fresh(browser: Browser, server: SlowServer, keeping: bool = True) -> Iterator[BrowserContext]:
    """A browser that has never been here."""
    server.sent.clear()
    context = browser.new_context(
        viewport={"width": 390, "height": 844}, service_workers="allow" if keeping else "block"
    )
    context.add_init_script(MARK_LIVE)
    try:
        yield context
    finally:
        context.close()


def phone(context: BrowserContext) -> Page:
    """A new page on a slow processor, in a browser that is open already."""
    page = context.new_page()
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    page.wait_for_timeout(OPEN_MS)  # the reader's tab does not start with the visit
    return page


def open_live(page: Page, address: str) -> float:
    """Open a page; seconds from the start of the navigation to the first live answer."""
    try:
        with page.expect_console_message(
            lambda message: message.text in TOLD, timeout=PATIENCE
        ) as told:
            page.goto(address, wait_until="commit")
        said = told.value.text
    except TimeoutError:
        raise SystemExit(f"No live answer within {PATIENCE / 1000:.0f} s on {address}") from None
    if said != TOLD[0]:
        raise SystemExit(f"The calculator stopped with an error on {address}")
    seconds: float = page.evaluate(f"{LIVE} / 1000")
    return seconds
