"""The science as a wheel of bytecode for the full engine (Pyodide)."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
# CPython's own options for small bytecode: docstrings and the columns of errors go, lines stay. The
# fixed day makes the same bytes of the same sources, so that readers fetch only what changed.
LEAN = {"PYTHONOPTIMIZE": "2", "PYTHONNODEBUGRANGES": "1", "SOURCE_DATE_EPOCH": "315532800"}


def build_wheel(folder: Path) -> Path:
    """Build the pure wheel, compile it with `pyodide py-compile`, and return its path."""
    with tempfile.TemporaryDirectory() as scratch:
        # A copy, so that setuptools leaves nothing behind in the checkout.
        copy = Path(scratch) / "project"
        copy.mkdir()
        for name in ("pyproject.toml", "README.md"):
            shutil.copy(ROOT / name, copy)
        skip = shutil.ignore_patterns("__pycache__", "*.egg-info")
        shutil.copytree(ROOT / "calculators", copy / "calculators", ignore=skip)
        build = (
            "from setuptools.build_meta import build_wheel; import sys; build_wheel(sys.argv[1])"
        )
        _run([sys.executable, "-c", build, str(folder)], copy)
    compile_archive(next(folder.glob("saltline-*.whl")))
    return next(folder.glob("saltline-*.whl"))


def compile_archive(archive: Path) -> None:
    """Put bytecode in the place of the sources in a wheel or zip file (`pyodide py-compile`)."""
    pyodide = Path(sys.executable).with_name("pyodide")
    _run([str(pyodide), "py-compile", "--silent", str(archive)], archive.parent)


def _run(command: list[str], folder: Path) -> None:
    done = subprocess.run(
        command, cwd=folder, capture_output=True, text=True, env=os.environ | LEAN, check=False
    )
    if done.returncode != 0:
        raise RuntimeError(f"{' '.join(command)} failed:\n{done.stdout}{done.stderr}")
