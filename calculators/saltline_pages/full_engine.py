"""The full engine (Pyodide) as the site serves it: its own host, only the modules it reads.

Large files are gzipped here and unpacked by `full-worker.js`, so that they weigh the same on every
host: CPython itself, and one archive of bytecode that holds what it imports.
"""

from __future__ import annotations

import gzip
import hashlib
import io
import json
import subprocess
import tempfile
import zipfile
from functools import cache
from pathlib import Path

from saltline_pages.lower import bundle
from saltline_pages.runtimes import runtime
from saltline_pages.tools import tool
from saltline_pages.wheel import build_wheel, compile_archive

PROJECT = Path(__file__).resolve().parent.parent.parent
LIBRARY = "python_stdlib.zip"

# Which files of the standard library the engine reads until all of our modules are imported.
READ = """
import { readFileSync } from "node:fs";
import { loadPyodide } from "pyodide";
const engine = await loadPyodide();
engine.FS.writeFile("/ours.zip", new Uint8Array(readFileSync(process.env.OURS)));
engine.globals.set("wanted", process.env.WANTED);
const files = engine.runPython(`
import importlib, json, sys
sys.path.append("/ours.zip")
for name in wanted.split():
    importlib.import_module(name)
json.dumps([str(module.__spec__.origin) for module in sys.modules.values() if module.__spec__])
`);
process.stdout.write(files);
"""
INSIDE = "/lib/python313.zip/"  # where the engine holds its library


def write_full_engine(out: Path, asked: set[str]) -> dict[str, object]:
    """Write the engine, for these functions, below `out/assets/`: what its worker must know."""
    modules = {path.rpartition(".")[0] for path in asked}
    files = _files(frozenset(modules | {"saltline.answering"}))
    digest = hashlib.sha256(b"".join(files[name] for name in sorted(files))).hexdigest()[:10]
    folder = out / "assets" / f"full.{digest}"
    folder.mkdir(parents=True)
    for name, content in files.items():
        (folder / name).write_bytes(content)
    lock = json.loads(runtime("pyodide/pyodide-lock.json"))
    return {
        "base": f"assets/{folder.name}/",
        "files": [[name, len(_packed(files[name]))] for name in files],
        # No packages are loaded, so the lock names none.
        "lock": {**lock, "packages": {}},
    }


@cache
def _files(modules: frozenset[str]) -> dict[str, bytes]:
    return {
        "pyodide.mjs": runtime("pyodide/pyodide.mjs"),
        "pyodide.asm.js": runtime("pyodide/pyodide.asm.js"),
        "pyodide.asm.bin": _packed(runtime("pyodide/pyodide.asm.wasm")),
        "library.bin": _packed(_library(modules)),
    }


def _packed(content: bytes) -> bytes:
    return gzip.compress(content, 9, mtime=0)


def _library(modules: frozenset[str]) -> bytes:
    """One archive of bytecode: the science that these modules need, and all that it imports.

    Nothing in it is compressed by itself, since the whole is smaller when packed at once.
    """
    ours = [Path(path).with_suffix(".pyc") for path in bundle(set(modules))]
    with tempfile.TemporaryDirectory() as scratch:
        wheel = build_wheel(Path(scratch))
        library = Path(scratch) / LIBRARY
        _trim(library, _read(wheel, " ".join(map(_module, ours))))
        compile_archive(library)
        made = io.BytesIO()
        with zipfile.ZipFile(made, "w") as whole:
            for archive, names in ((library, None), (wheel, [path.as_posix() for path in ours])):
                with zipfile.ZipFile(archive) as part:
                    for name in names or part.namelist():
                        whole.writestr(zipfile.ZipInfo(name), part.read(name))
    return made.getvalue()


def _module(file: Path) -> str:
    """`saltline.meter` for `saltline/meter.pyc`."""
    return ".".join(file.with_suffix("").parts).removesuffix(".__init__")


def _read(wheel: Path, wanted: str) -> set[str]:
    """The files of the standard library that are read for these modules of the wheel."""
    done = subprocess.run(
        [tool("node"), "--input-type=module", "-e", READ],
        capture_output=True,
        text=True,
        cwd=PROJECT,
        env={"OURS": str(wheel), "WANTED": wanted},
        check=False,
    )
    if done.returncode != 0:
        raise RuntimeError(f"Pyodide did not start under Node: {done.stderr[-1000:]}")
    origins: list[str] = json.loads(done.stdout)
    return {path.removeprefix(INSIDE) for path in origins if path.startswith(INSIDE)}


def _trim(library: Path, read: set[str]) -> None:
    """Write the standard library, cut to the files that are read."""
    with (
        zipfile.ZipFile(io.BytesIO(runtime(f"pyodide/{LIBRARY}"))) as whole,
        zipfile.ZipFile(library, "w") as part,
    ):
        kept = [entry for entry in whole.infolist() if entry.filename in read]
        if len(kept) < 50:
            raise RuntimeError("the standard library's paths have changed: adapt full_engine.py")
        for entry in kept:
            part.writestr(zipfile.ZipInfo(entry.filename), whole.read(entry))
