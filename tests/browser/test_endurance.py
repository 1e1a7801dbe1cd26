"""Hours of use in minutes: memory stays where it was, and no page breaks on the twentieth visit."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = [pytest.mark.browser, pytest.mark.long]

Opener = Callable[..., Page]
ROUNDS = 20
# Change the field so many times, each time waiting for the answer.
RECOMPUTES = """async (count) => {
  const field = document.querySelector("salt-calc input[inputmode=decimal]");
  for (let turn = 1; turn <= count; turn++) {
    const answered = new Promise((done) =>
      document.addEventListener("salt:answer", done, { once: true }));
    field.value = String(400 + (turn % 100));
    field.dispatchEvent(new Event("input", { bubbles: true }));
    await answered;
  }
}"""


def renderers_mb() -> float:
    """Memory of the browser's pages: of this process's descendants, those that draw."""
    parents, sizes = {}, {}
    for status in Path("/proc").glob("[0-9]*/status"):
        try:
            lines = dict(
                line.split(":", 1) for line in status.read_text(encoding="utf-8").splitlines()
            )
            drawing = b"--type=renderer" in (status.parent / "cmdline").read_bytes()
        except OSError:
            continue  # it ended meanwhile
        pid = int(status.parent.name)
        parents[pid] = int(lines["PPid"])
        if drawing:
            sizes[pid] = int(lines["VmRSS"].split()[0]) / 1000

    def ours(pid: int) -> bool:
        return pid == os.getpid() or (pid in parents and ours(parents[pid]))

    found = [size for pid, size in sizes.items() if ours(pid)]
    assert found
    return sum(found)


def heap_mb(page: Page) -> float:
    """What the page's own scripts hold after their waste is collected."""
    session = page.context.new_cdp_session(page)
    session.send("HeapProfiler.collectGarbage")
    return float(session.send("Runtime.getHeapUsage")["usedSize"]) / 1e6


def test_a_thousand_answers_leave_no_waste(open_page: Opener) -> None:
    page = open_page("care/salt-units/")
    expect(page.locator("salt-calc").first).to_have_attribute("data-state", "live")
    page.evaluate(RECOMPUTES, 100)
    heap, all_of_it = heap_mb(page), renderers_mb()
    began = time.monotonic()
    page.evaluate(RECOMPUTES, 1000)
    took = time.monotonic() - began
    more_heap, more = heap_mb(page) - heap, renderers_mb() - all_of_it
    print(f"\n1000 answers in {took:.0f} s: heap {more_heap:+.2f} MB, browser {more:+.0f} MB")
    assert more_heap < 1.0
    assert more < 40.0


def test_twenty_visits_to_every_page(open_page: Opener, site: Path, address: str) -> None:
    page = open_page("sources/")
    paths = sorted(
        file.parent.relative_to(site).as_posix() + "/"
        for file in site.rglob("index.html")
        if 'http-equiv="refresh"' not in file.read_text(encoding="utf-8")
    )
    heaps = []
    for _ in range(ROUNDS):
        for path in paths:
            page.goto(address + path, wait_until="domcontentloaded")
            if page.locator("salt-calc").count():
                live = page.locator("salt-calc[data-state=live], salt-key[data-state=live]")
                expect(live.first).to_be_attached(timeout=20_000)
        heaps.append(heap_mb(page))
    print(f"\n{len(paths)} pages, heap on the last: {heaps[0]:.1f} MB, then {heaps[-1]:.1f} MB")
    assert heaps[-1] < heaps[1] + 2.0
