"""The house keeps its rooms: arrows point down, docstrings are whole, no machine leaks in."""

from __future__ import annotations

import ast
import importlib
import inspect
import re
from pathlib import Path

import pytest

from saltline.forms import all_forms
from saltline_pages.lower import SCIENCE, bundle, imports, lower

CALCULATORS = SCIENCE.parent
ROOT = CALCULATORS.parent
# Who may import whom; a room that is not named imports nothing of ours.
ALLOWED = {
    "science": {"science"},
    "words": {"science", "words"},
    "pictures": {"science", "pictures"},
    "forms": {"science", "words", "pictures", "forms", "declare"},
    "declare": {"science", "declare"},
    "command": {"science", "forms", "declare", "bench"},
    "bench": {"science", "forms", "declare", "bench"},
}
# Rooms that hold no physics need no equation.
PLAIN = {"saying", "units", "errors", "answering", "draws", "declare", "__main__", "__init__"}
SECTIONS = ("Equation:", "Arguments:", "Returns:", "Valid for:", "Error:", "Raises:", "Sources:")


def room(module: str) -> str:
    parts = module.split(".")[1:]
    if parts[:1] in (["words"], ["pictures"], ["forms"], ["bench"]):
        return parts[0]
    if parts in (["declare"], ["asking"]):
        return "declare"
    return "command" if parts == ["__main__"] else "science"


def modules() -> list[str]:
    found = []
    for path in SCIENCE.rglob("*.py"):
        parts = path.relative_to(CALCULATORS).with_suffix("").parts
        found.append(".".join(parts[:-1] if parts[-1] == "__init__" else parts))
    return sorted(found)


def source(module: str) -> str:
    return Path(inspect.getsourcefile(importlib.import_module(module)) or "").read_text()


MODULES = modules()
SCIENCE_MODULES = [
    name
    for name in MODULES
    if room(name) == "science" and name.rpartition(".")[2] not in PLAIN and name != "saltline"
]


@pytest.mark.parametrize("module", MODULES)
def test_arrows_point_down(module: str) -> None:
    for target in imports(source(module)) - {"saltline"}:
        assert room(target) in ALLOWED[room(module)], f"{module} must not import {target}"


@pytest.mark.parametrize("module", MODULES)
def test_science_knows_no_page_and_no_other_library(module: str) -> None:
    standard = {"__future__", "typing", "collections", "math", "json", "saltline"}
    if room(module) in ("forms", "declare", "command", "bench"):
        standard |= {"re", "dataclasses", "sys", "importlib", "pkgutil", "datetime", "csv", "io"}
        standard |= {"pathlib", "uuid", "argparse", "random"}
    for node in ast.walk(ast.parse(source(module))):
        names = []
        if isinstance(node, ast.Import):
            names = [name.name for name in node.names]
        elif isinstance(node, ast.ImportFrom):
            names = [node.module or ""]
        for name in names:
            assert name.partition(".")[0] in standard, f"{module} imports {name}"


def test_no_cycles() -> None:
    edges = {module: imports(source(module)) & set(MODULES) - {module} for module in MODULES}
    order: list[str] = []
    while len(order) < len(MODULES):
        free = [m for m in MODULES if m not in order and edges[m] <= {*order, "saltline"}]
        assert free, f"a cycle among {sorted(set(MODULES) - set(order))}"
        order += free


@pytest.mark.parametrize("module", SCIENCE_MODULES)
def test_docstrings_are_whole(module: str) -> None:
    made = importlib.import_module(module)
    for name, function in inspect.getmembers(made, inspect.isfunction):
        if name.startswith("_") or function.__module__ != module:
            continue
        text = inspect.getdoc(function) or ""
        found = re.findall(rf"^({'|'.join(SECTIONS)})$", text, re.M)
        assert tuple(found) == SECTIONS, f"{module}.{name}: {found}"


@pytest.mark.parametrize("module", MODULES)
def test_one_topic_a_module(module: str) -> None:
    assert len(source(module).splitlines()) <= 300


@pytest.mark.parametrize("name", list(all_forms()))
def test_form_matches_its_function(name: str) -> None:
    form = all_forms()[name]
    takes = inspect.signature(form.function).parameters
    assert list(takes) == [item.name for item in form.inputs]
    answer = form.run(form.example)
    assert [item.name for item in form.results] == list(answer._fields)[:-1]
    assert answer._fields[-1] == "warnings"
    assert len(form.words(form.complete(form.example), answer)) == 3


def test_lowering_leaves_what_computes() -> None:
    text = lower(
        '"""Prose."""\nfrom __future__ import annotations\nfrom typing import NamedTuple\n'
        "class A(NamedTuple):\n    '''Prose.'''\n    x: float\n    y: float\n"
        "LIMIT: float = 2.0\ndef f(*, x: float) -> A:\n    '''Prose.'''\n    z: float\n"
        "    return A(x, LIMIT)\n"
    )
    assert text == (
        "from collections import namedtuple\nA=namedtuple('A',('x','y'))\nLIMIT=2.0\n\n"
        "def f(*,x):\n return A(x,LIMIT)\n"
    )


def test_bundle_holds_all_that_is_imported() -> None:
    texts = bundle({"saltline.words.meter"})
    assert "saltline/meter.py" in texts
    assert "saltline/words/__init__.py" in texts
    assert not any("declare" in path for path in texts)


FORBIDDEN = re.compile(
    r"(?<![A-Za-z0-9.])/(work|root|home|tmp)/|registry\.npmjs|pypi\.org|files\.python"
)


def test_no_machine_and_no_registry_in_any_file() -> None:
    kept = {".md", ".py", ".js", ".mjs", ".json", ".toml", ".txt", ".yml", ".css", ".csv", ""}
    for path in ROOT.rglob("*"):
        inside = path.relative_to(ROOT).parts
        if not path.is_file() or inside[0] in SKIPPED or "__pycache__" in inside:
            continue
        if path.suffix in kept and path != Path(__file__):
            assert not FORBIDDEN.search(path.read_text(encoding="utf-8")), path


SKIPPED = {
    ".git", ".venv", "node_modules", ".browser", "site", "build",
    ".hypothesis", ".mypy_cache", ".ruff_cache", ".pytest_cache",
}  # fmt: skip
