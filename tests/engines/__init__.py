"""The engines the science must agree on."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path
from typing import Any

from saltline.answering import answer
from saltline_pages.bundling import light_engine_wasm
from saltline_pages.lower import SCIENCE, bundle
from saltline_pages.tools import tool

ROOT = Path(__file__).resolve().parent.parent.parent

Question = dict[str, Any]
Reply = dict[str, Any]

# Questions cross to Node as text, so that 25.0 stays a float.


def science_modules() -> set[str]:
    """Every module that the light engine may be asked for."""
    skipped = {"__init__", "__main__", "declare", "asking"}
    return {
        "saltline." + ".".join(path.relative_to(SCIENCE).with_suffix("").parts)
        for path in SCIENCE.rglob("*.py")
        if path.stem not in skipped and "forms" not in path.parts and "bench" not in path.parts
    }


def native(questions: list[Question]) -> list[Reply]:
    """Replies of the CPython that runs the tests."""
    return [json.loads(answer(json.dumps(question))) for question in questions]


def light(questions: list[Question]) -> list[Reply]:
    """Replies of the light engine, under Node."""
    return light_with([bundle(science_modules())], questions)


def light_with(parts: list[dict[str, str]], questions: list[Question]) -> list[Reply]:
    """The same with this science, whose later parts arrive after its first question."""
    texts = [json.dumps(question) for question in questions]
    job = {"wasm": str(light_engine_wasm()), "parts": parts, "questions": texts}
    return _node("light.mjs", job)


def full(questions: list[Question], wheel: Path) -> list[Reply]:
    """Replies of Pyodide, under Node, from the compiled wheel."""
    texts = [json.dumps(question) for question in questions]
    return _node("full.mjs", {"wheel": str(wheel), "questions": texts})


def _node(script: str, job: dict[str, Any]) -> list[Reply]:
    done = subprocess.run(
        [tool("node"), str(Path(__file__).parent / script)],
        input=json.dumps(job),
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=False,
    )
    if done.returncode != 0:
        raise RuntimeError(f"{script} did not run: {done.stderr[-2000:]}")
    replies: list[Reply] = json.loads(done.stdout)
    return replies
