"""Scripts and styles as the site serves them: bundled and minified by esbuild."""

from __future__ import annotations

import hashlib
import json
import re
import subprocess
import tempfile
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from saltline_pages.runtimes import runtime
from saltline_pages.tools import tool

PROJECT = Path(__file__).resolve().parent.parent.parent
ASSETS = PROJECT / "docs" / "assets"
MICROPYTHON = "@micropython/micropython-webassembly-pyscript"
LATER = (
    "./share-panel.js",
    "./club.js",
    "./offline.js",
    "./salt-events.js",
)  # which our scripts import when they are wanted
TARGET = "es2021"  # what the light engine needs too: Chrome 85, Firefox 79, Safari 15

# The loader takes no compiled module; one option more lets the page compile while the worker loads.
LOADER_BEFORE = "let Module={locateFile:(path,scriptDirectory)=>url||scriptDirectory+path};"
LOADER_AFTER = (
    "let Module={instantiateWasm:options.instantiateWasm,"
    "locateFile:(path,scriptDirectory)=>url||scriptDirectory+path};"
)
# The tail that runs a file given to Node is of no use in a page.
NODE_TAIL = 'if(globalThis.loadMicroPython=loadMicroPython,"object"==typeof process'
NODE_TAIL_AFTER = 'if(globalThis.loadMicroPython=loadMicroPython,false&&"object"==typeof process'
# Where we run it, so that what is for other places falls away.
PLACES = {
    "ENVIRONMENT_IS_NODE": "false",
    "ENVIRONMENT_IS_WEB": "false",
    "ENVIRONMENT_IS_WORKER": "true",
}


def light_engine_wasm() -> Path:
    """The file of the light engine, optimised once more: smaller, and a tenth quicker.

    It is made once for each engine and optimiser, and kept among what the tools make.
    """
    shipped = runtime(f"{MICROPYTHON}/micropython.wasm")
    optimiser = PROJECT / "node_modules" / "binaryen"
    kind = hashlib.sha256(shipped + (optimiser / "package.json").read_bytes()).hexdigest()[:16]
    made = PROJECT / "build" / f"engine-{kind}.wasm"
    if not made.exists():
        made.parent.mkdir(exist_ok=True)
        with tempfile.TemporaryDirectory(dir=made.parent) as scratch:
            before, after = Path(scratch) / "shipped.wasm", Path(scratch) / "made.wasm"
            before.write_bytes(shipped)
            command = [tool("node"), str(optimiser / "bin" / "wasm-opt"), "-O3"]
            subprocess.run([*command, str(before), "-o", str(after)], check=True)
            after.rename(made)  # whole or not at all, whoever builds beside us
    return made


def scripts(sets: Iterable[tuple[str, ...]]) -> dict[tuple[str, ...], str]:
    """Each set of our scripts as one minified script; what they share stands in it once."""
    options = ["--bundle", "--minify", "--charset=utf8", "--format=iife", f"--target={TARGET}"]
    options += [f"--external:{name}" for name in LATER]
    made = {}
    for names in sets:
        lines = "".join(f"import {json.dumps(str(ASSETS / 'js' / name))};" for name in names)
        made[names] = _esbuild(options, lines).decode()
    return dict(zip(made, _shortened(list(made.values())), strict=True))


@cache
def module(name: str) -> bytes:
    """One of our scripts as a module of its own, which others import when they need it."""
    options = ["--bundle", "--minify", "--charset=utf8", "--format=esm", f"--target={TARGET}"]
    return _esbuild([str(ASSETS / "js" / name), *options])


def write_hashed(out: Path, name: str, content: bytes) -> str:
    """Write `content` under `assets/` with its hash in the name; the path from the root."""
    stem, dot, ending = name.rpartition(".")
    digest = hashlib.sha256(content).hexdigest()[:10]
    path = f"assets/{stem}.{digest}{dot}{ending}"
    (out / "assets").mkdir(exist_ok=True)
    (out / path).write_bytes(content)
    return path


def used_rules(css: str, pages: list[str], never: tuple[str, ...] = (), first: bool = False) -> str:
    """The rules of a style sheet that some of these pages use, minified.

    Selectors that match one of the patterns `never` stay out, and with `first` what a page can do
    without until its first answer.
    """
    command = [tool("node"), str(Path(__file__).with_name("purge.mjs"))]
    job = json.dumps({"css": css, "pages": pages, "never": never, "first": first})
    done = subprocess.run(command, input=job, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        raise RuntimeError(f"the theme's styles could not be read: {done.stderr[-2000:]}")
    return _esbuild(["--loader=css", "--minify"], done.stdout).decode()


@cache
def script(name: str) -> bytes:
    """One of our scripts with all it imports, minified, as a classic script for old browsers."""
    with tempfile.TemporaryDirectory() as scratch:
        loader = Path(scratch) / "micropython.mjs"
        loader.write_text(_loader(), encoding="utf-8")
        options = [
            str(ASSETS / "js" / name),
            "--bundle",
            "--minify",
            "--charset=utf8",
            "--format=iife",
            "--target=" + ("es5" if name == "first.js" else TARGET),
            "--platform=browser",
            "--define:import.meta.url=location.href",
            f"--alias:micropython={loader}",
            *(f"--external:{builtin}" for builtin in ("module", "path", "url", "fs", "crypto")),
        ]
        made = _esbuild(options)
        if name == "worker.js":
            made = _shortened([made.decode()])[0].encode()
        return made.strip()


def style(name: str) -> bytes:
    """One of our style sheets with all it imports, minified."""
    return _esbuild([str(ASSETS / "css" / name), "--bundle", "--minify", f"--target={TARGET}"])


def _loader() -> str:
    text = runtime(f"{MICROPYTHON}/micropython.mjs").decode()
    for before, after in ((LOADER_BEFORE, LOADER_AFTER), (NODE_TAIL, NODE_TAIL_AFTER)):
        if text.count(before) != 1:
            raise RuntimeError("the light engine's loader has changed: adapt bundling.py to it")
        text = text.replace(before, after)
    for place, here in PLACES.items():
        text = re.sub(rf"\b{place}\b(?!=[^=])", here, text)
    return text


def _shortened(texts: list[str]) -> list[str]:
    """Scripts without what nothing in them uses, inside functions too, which esbuild leaves."""
    command = [tool("node"), str(Path(__file__).with_name("shorten.mjs"))]
    made: list[str] = json.loads(_run(command, json.dumps(texts).encode()))
    return made


def _esbuild(options: list[str], text: str | None = None) -> bytes:
    esbuild = PROJECT / "node_modules" / "esbuild" / "bin" / "esbuild"
    command = [tool("node"), str(esbuild), *options, "--log-level=error"]
    return _run(command, text.encode() if text else None)


def _run(command: list[str], text: bytes | None) -> bytes:
    done = subprocess.run(command, input=text, capture_output=True, cwd=PROJECT, check=False)
    if done.returncode != 0:
        raise RuntimeError(f"{done.stderr.decode()} {json.dumps(command)}")
    made: bytes = done.stdout
    return made
