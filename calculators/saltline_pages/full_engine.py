"""The full engine (Pyodide) as the site serves it: its own host, only the modules it reads."""

from __future__ import annotations

import hashlib
import io
import json
import re
import subprocess
import tempfile
import zipfile
from functools import cache
from pathlib import Path

from saltline_pages.runtimes import runtime
from saltline_pages.tools import tool
from saltline_pages.wheel import build_wheel

PROJECT = Path(__file__).resolve().parent.parent.parent
LIBRARY = "python_stdlib.zip"

# Which files of the standard library are read when the engine starts and answers a question.
READ = """
import { readFileSync } from "node:fs";
import { loadPyodide } from "pyodide";
const engine = await loadPyodide();
engine.unpackArchive(new Uint8Array(readFileSync(process.env.WHEEL)), "wheel");
engine.pyimport("saltline.answering");
const files = engine.runPython(`
import json, sys
json.dumps([m.__file__ for m in list(sys.modules.values()) if getattr(m, "__file__", None)])
`);
process.stdout.write(files);
"""


def write_full_engine(out: Path) -> dict[str, object]:
    """Write the engine below `out/assets/`; its folder, files with sizes, and the wheel's name."""
    files = _files()
    digest = hashlib.sha256(b"".join(files[name] for name in sorted(files))).hexdigest()[:10]
    folder = out / "assets" / f"full.{digest}"
    folder.mkdir(parents=True)
    for name, content in files.items():
        (folder / name).write_bytes(content)
    return {
        "base": f"assets/{folder.name}/",
        "files": [[name, len(content)] for name, content in files.items()],
        "wheel": next(name for name in files if name.endswith(".whl")),
    }


@cache
def _files() -> dict[str, bytes]:
    with tempfile.TemporaryDirectory() as scratch:
        wheel = build_wheel(Path(scratch))
        lock = json.loads(runtime("pyodide/pyodide-lock.json"))
        return {
            "pyodide.mjs": runtime("pyodide/pyodide.mjs"),
            "pyodide.asm.js": runtime("pyodide/pyodide.asm.js"),
            "pyodide.asm.wasm": runtime("pyodide/pyodide.asm.wasm"),
            # No packages are loaded, so the lock names none.
            "pyodide-lock.json": json.dumps({**lock, "packages": {}}).encode(),
            LIBRARY: _trimmed(wheel),
            wheel.name: wheel.read_bytes(),
        }


def _trimmed(wheel: Path) -> bytes:
    """The standard library, cut to the modules that are read."""
    done = subprocess.run(
        [tool("node"), "--input-type=module", "-e", READ],
        capture_output=True,
        text=True,
        cwd=PROJECT,
        env={"WHEEL": str(wheel)},
        check=False,
    )
    if done.returncode != 0:
        raise RuntimeError(f"Pyodide did not start under Node: {done.stderr[-1000:]}")
    read = {re.sub(r"^/lib/python3\.?13(\.zip)?/", "", path) for path in json.loads(done.stdout)}
    made = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(runtime(f"pyodide/{LIBRARY}"))) as whole,
        zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as part,
    ):
        kept = [entry for entry in whole.infolist() if entry.filename in read]
        if len(kept) < 50:
            raise RuntimeError("the standard library's paths have changed: adapt full_engine.py")
        for entry in kept:
            part.writestr(zipfile.ZipInfo(entry.filename), whole.read(entry), zipfile.ZIP_DEFLATED)
    return made.getvalue()
