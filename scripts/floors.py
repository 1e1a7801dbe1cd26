"""Bare pages beside ours: what the link and each engine cost before a page does anything."""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from statistics import median
from urllib.parse import urlsplit

from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from measuring import (
    COLD_RUNS,
    FIRST,
    KEPT,
    LATER,
    QUIET,
    Line,
    first_visit,
    fresh,
    open_live,
    phone,
    visits,
)
from slow_link import LINKS, SlowServer
from start import ROOT
from static_server import Site, running

sys.path.append(str(ROOT / "calculators"))
from saltline_pages.tools import tool

PACKAGES = ROOT / "node_modules"
MICROPYTHON = PACKAGES / "@micropython" / "micropython-webassembly-pyscript"
PYODIDE = PACKAGES / "pyodide"
PAGE = (
    '<!doctype html><html lang="en"><meta charset="utf-8"><title>Bare</title>'
    '<salt-calc data-state="static"></salt-calc><script type="module">{script}'
    'document.querySelector("salt-calc").textContent = answer;'
    'document.querySelector("salt-calc").dataset.state = "live";</script></html>'
)
SUM = "500 * 1.116 / 1000"
# What a page must fetch and run before it can work out one sum.
BARE = {
    "bare page, JavaScript": ((), f"const answer = {SUM};"),
    "bare page, light engine": (
        (MICROPYTHON / "micropython.mjs", MICROPYTHON / "micropython.wasm"),
        'import { loadMicroPython } from "./micropython.mjs";'
        "const engine = await loadMicroPython();"
        f'engine.runPython("answer = {SUM}"); const answer = engine.globals.get("answer");',
    ),
    "bare page, full engine as shipped": (
        tuple(
            PYODIDE / name
            for name in (
                "pyodide.mjs",
                "pyodide.asm.js",
                "pyodide.asm.wasm",
                "python_stdlib.zip",
                "pyodide-lock.json",
            )
        ),
        'import { loadPyodide } from "./pyodide.mjs";'
        f'const answer = (await loadPyodide()).runPython("{SUM}");',
    ),
}
# The least that a kept page with the light engine does: its worker starts, and nothing is drawn.
BARE_KEPT = {
    "index.html": PAGE.format(
        script='const worker = new Worker("./worker.js", { type: "module" });'
        "const answer = await new Promise((done) => "
        "{ worker.onmessage = ({ data }) => done(data); });"
        'navigator.serviceWorker.register("./sw.js");'
    ),
    "worker.js": 'import { loadMicroPython } from "./micropython.mjs";'
    "const engine = await loadMicroPython();"
    f'engine.runPython("answer = {SUM}"); postMessage(engine.globals.get("answer"));',
    "sw.js": 'const files = ["./", "worker.js", "micropython.mjs", "micropython.wasm"];'
    "const kept = (event) => caches.match(event.request).then((found) => "
    "found ?? fetch(event.request));"
    'addEventListener("install", (event) => event.waitUntil('
    'caches.open("bare").then((store) => store.addAll(files))));'
    'addEventListener("activate", (event) => event.waitUntil(clients.claim()));'
    'addEventListener("fetch", (event) => event.respondWith(kept(event)));',
}
FULL_COLD_S, FULL_LATER_S = 25, 3
# From the press to the first reply of CPython, when the bar begins to count checks, not bytes.
FULL_START = """() => new Promise((done) => {
  const element = document.querySelector("salt-trust");
  const bar = element.querySelector("progress");
  const begun = performance.now();
  new MutationObserver(() => {
    if (bar.hidden || bar.max > 100_000) return;
    done((performance.now() - begun) / 1000);
  }).observe(bar, { attributes: true });
  element.querySelector("[data-do=full]").click();
})"""


def bare_pages(browser: Browser, link: str) -> Iterator[tuple[str, float]]:
    """The first answer of each bare page, cold [s]."""
    for name, (files, script) in BARE.items():
        with tempfile.TemporaryDirectory() as folder:
            for file in files:
                shutil.copy(file, folder)
            page = PAGE.format(script=script)
            (Path(folder) / "index.html").write_text(page, encoding="utf-8")
            visits = []
            for _ in range(COLD_RUNS):
                with running(SlowServer(Site(Path(folder)), LINKS[link])) as server:
                    visits.append(first_visit(browser, server, ""))
        yield name, median(visit.live_s for visit in visits)


def bare_kept(browser: Browser, link: str) -> float:
    """A later visit to a bare page with the light engine in a worker, all of it kept [s]."""
    with tempfile.TemporaryDirectory() as folder:
        for file in (MICROPYTHON / "micropython.mjs", MICROPYTHON / "micropython.wasm"):
            shutil.copy(file, folder)
        for name, text in BARE_KEPT.items():
            (Path(folder) / name).write_text(text, encoding="utf-8")
        with (
            running(SlowServer(Site(Path(folder), cache="max-age=600"), None)) as server,
            fresh(browser, server) as context,
        ):
            page = phone(context)
            open_live(page, server.address)
            page.evaluate(KEPT)
            page.wait_for_timeout(1000)
            page.close()
            server.link = LINKS[link]
            return visits(context, server.address)


def full_engine(browser: Browser, site: Path, link: str) -> Iterator[Line]:
    """How long CPython takes to start on the page about trust, and once it is kept."""
    with (
        running(SlowServer(Site(site, cache="max-age=600"), LINKS[link])) as server,
        fresh(browser, server) as context,
    ):
        page = open_trust(context, server)
        asked: set[str] = set()  # by the page and its worker, not by the copy for later
        page.on("request", lambda request: asked.add(urlsplit(request.url).path))
        server.sent.clear()
        cold: float = page.evaluate(FULL_START)
        weight = sum(sent.size for sent in server.sent if sent.path in asked) / 1e6
        server.link = None
        page.wait_for_selector("tr[data-engine=CPython]")
        page.evaluate(KEPT)
        page.wait_for_timeout(3000)  # what came before the service worker is kept after the checks
        page.close()
        server.link = LINKS[link]
        later: float = open_trust(context, server).evaluate(FULL_START)
    yield Line("full engine, from the press, cold", cold, FULL_COLD_S, "s")
    yield Line("full engine, what it fetches", weight, 4, "MB")
    yield Line("full engine, from the press, once kept", later, FULL_LATER_S, "s")


def open_trust(context: BrowserContext, server: SlowServer) -> Page:
    """The page about trust, quiet and ready for a press."""
    page = phone(context)
    page.goto(server.address + "trust/", wait_until="networkidle")
    page.evaluate("customElements.whenDefined('salt-trust').then(() => {})")
    return page


def compare(site: Path, link: str, ours: dict[str, list[float]]) -> None:
    """Print the bare pages, and how our answers [s], by the kind of visit, compare with them."""
    print("\nBeside bare pages in the same run, first answer, cold")
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=tool("chromium"), args=QUIET)
        beside(median(ours[FIRST]), bare_pages(browser, link))
        print("\nA later visit, all kept")
        beside(median(ours[LATER]), [("bare page, light engine", bare_kept(browser, link))])
        print("\ntrust/")
        for line in full_engine(browser, site, link):
            print(line, flush=True)


def beside(ours: float, bare: Iterable[tuple[str, float]]) -> None:
    """Print our pages and some bare ones [s]."""
    print(f"  {'our pages (median)':44} {ours:9.4g}             s")
    for name, seconds in bare:
        print(f"  {name:44} {seconds:9.4g}             s   ours: x {ours / seconds:.2f}")
