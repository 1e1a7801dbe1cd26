"""How long each calculator's answers take in the browser's worker, beside their budget."""

from __future__ import annotations

import itertools
import json
import sys
from collections.abc import Iterator
from pathlib import Path
from statistics import median, quantiles

from playwright.sync_api import Browser, sync_playwright

from measuring import QUIET, answer_budget
from start import ROOT
from static_server import Site, listen, running

sys.path.append(str(ROOT / "calculators"))
from saltline.declare import Form
from saltline.forms import all_forms
from saltline_pages.tools import tool

RUNS = 60
# A worker of our own, asked one question after the other; the first one also loads the science.
ASK = """async (questions) => {
  const worker = document[Symbol.for("saltline")].start();
  const times = [];
  for (const [at, question] of questions.entries()) {
    times.push(await new Promise((done, failed) => {
      let begun = 0;
      worker.onmessage = ({ data }) => {
        if (data.begun) begun = performance.now();
        else if (data.reply) done(performance.now() - begun);
        else failed(new Error(data.failure ?? data.lost));
      };
      worker.postMessage({ id: at + 1, question });
    }));
  }
  worker.terminate();
  return times;
}"""


def questions(form: Form) -> list[str]:
    """The example and the worked cases, as the page asks them, over and over."""
    parts = {
        name: f"{part.__module__}.{part.__name__}"
        for name in ("function", "words", "picture", "table")
        if (part := getattr(form, name))
    }
    asked = [form.complete({**form.example, **case}) for case in ({}, *form.cases)]
    texts = [json.dumps(parts | {"arguments": inputs}) for inputs in asked]
    return list(itertools.islice(itertools.cycle(texts), RUNS + 1))


def pages(site: Path) -> dict[str, str]:
    """A page on which each calculator stands, as a path from the site's root."""
    found: dict[str, str] = {}
    for page in sorted(site.glob("**/index.html")):
        text = page.read_text(encoding="utf-8")
        for name in all_forms():
            if f'<salt-calc name="{name}"' in text:
                found.setdefault(name, page.parent.relative_to(site).as_posix() + "/")
    return found


def answer_times(browser: Browser, site: Path) -> Iterator[str]:
    """A line a calculator: half and 95 % of its answers are as quick as this."""
    there = pages(site)
    with running(listen(Site(site), 0)) as server:
        for name, form in all_forms().items():
            page = browser.new_page(service_workers="block")
            page.goto(server.address + there[name], wait_until="networkidle")
            first, *rest = page.evaluate(ASK, questions(form))
            page.close()
            most, budget = quantiles(rest, n=20)[-1], answer_budget(name)
            over = "  OVER" if most > budget else ""
            yield f"  {name:16}{median(rest):9.1f}{most:9.1f}{first:9.0f}   {budget:5} ms{over}"


def report_answers(site: Path) -> None:
    """Print all of them."""
    print(f"\nAnswers in the worker, {RUNS} runs each, this processor as it is [ms]")
    print(f"  {'':16}{'half':>9}{'95 %':>9}{'first':>9}   budget of 95 %")
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=tool("chromium"), args=QUIET)
        for line in answer_times(browser, site):
            print(line, flush=True)
