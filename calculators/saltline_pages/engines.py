"""The engines' parts as a page asks for them: light on every care page, full where checks run."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from html import escape
from pathlib import Path

from saltline.forms import all_forms
from saltline_pages import bundling, trust
from saltline_pages.calculator import answering, example, functions
from saltline_pages.checks import rows
from saltline_pages.full_engine import write_full_engine
from saltline_pages.lower import bundle
from saltline_pages.shake import beside, shaken

# What a page calculates: its calculators, and those that another element asks.
CALCULATOR = re.compile(r'<salt-calc name="([a-z0-9-]+)"|data-needs="([a-z0-9 -]+)"')
ASKED = re.compile(r'data-asks="([a-z0-9_. ]+)"')  # and which functions besides
ANSWER = "saltline.answering.answer"
PARTS = "__ENGINE__"  # in start.js, where the addresses go


@dataclass(frozen=True)
class Engine:
    """The light engine's files, from the site's root."""

    out: Path
    wasm: str
    worker: str


def write_light_engine(out: Path) -> Engine:
    """Write the light engine's files below `out/assets/`."""
    return Engine(
        out,
        wasm=bundling.write_hashed(out, "engine.wasm", bundling.light_engine_wasm().read_bytes()),
        worker=bundling.write_hashed(out, "worker.js", bundling.script("worker.js")),
    )


def early_start(html: str, root: str, engine: Engine) -> str:
    """The inline script that begins to load the engine with this page's science only."""
    ids = [name for found in CALCULATOR.findall(html) for name in " ".join(found).split()]
    forms = all_forms()
    asked = {path for name in ids for path in functions(forms[name])}
    asked |= {path for found in ASKED.findall(html) for path in found.split()}
    if not asked:
        return ""
    parts = {"wasm": root + engine.wasm, "worker": root + engine.worker}
    if ids:
        form = forms[ids[0]]
        parts |= {"first": example(form), "last": f"#{form.id}-declared"}
        science = _parted(set(answering(form)), asked, engine.out)
        parts |= {name: root + path for name, path in science.items()}
    else:
        parts["science"] = root + _science(asked, engine.out)
    script = (
        bundling.script("start.js")
        .decode()
        .replace(PARTS, json.dumps(parts, separators=(",", ":")), 1)
    )
    return f"<script>{script}</script>"


def with_trust_parts(html: str, root: str, engine: Engine) -> str:
    """A page whose checks know where both engines, all the science and the rows are."""
    if trust.PARTS not in html:
        return html
    asked = {row.question()["function"] for row in rows()}
    full = write_full_engine(engine.out, asked)
    checks = bundling.write_hashed(engine.out, "checks.json", trust.device_checks().encode())
    worker = bundling.script("full-worker.js")
    parts = {
        "wasm": root + engine.wasm,
        "worker": root + engine.worker,
        "science": root + _science(asked, engine.out, "checks-science.json"),
        "checks": root + checks,
        "fullWorker": root + bundling.write_hashed(engine.out, "full-worker.js", worker),
        "full": full | {"base": f"{root}{full['base']}"},
    }
    return html.replace(trust.PARTS, escape(json.dumps(parts)))


def _science(asked: set[str], out: Path, name: str = "science.json") -> str:
    """What these functions need of the lowered science, as one file; its path from the root."""
    return _written(shaken(_texts(asked), sorted(asked | {ANSWER})), out, name)


def _parted(first: set[str], asked: set[str], out: Path) -> dict[str, str]:
    """The same as two files: what the first answer needs, and what the others need beside it."""
    parts = {"science": _science(first, out)}
    if asked > first:
        begun, roots = first | {ANSWER}, asked | {ANSWER}
        more = beside(_texts(asked), sorted(roots), _texts(first), sorted(begun))
        parts["more"] = _written(more, out, "science.json")
    return parts


def _texts(asked: set[str]) -> dict[str, str]:
    return bundle({path.rpartition(".")[0] for path in asked | {ANSWER}})


def _written(files: dict[str, str], out: Path, name: str) -> str:
    text = json.dumps(files, separators=(",", ":"), ensure_ascii=False)
    return bundling.write_hashed(out, name, text.encode())
