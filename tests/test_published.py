"""Every published value, on every engine."""

from __future__ import annotations

import ast
import json
import re
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from engines import Reply, full, light, native, science_modules
from saltline.forms import all_forms
from saltline_pages.checks import LEVELS, Row, called, rows
from saltline_pages.lower import bundle
from saltline_pages.shake import needed, parsed
from saltline_pages.trust import checks_html

ROWS = rows()
RELATIVE = 1e-12  # how far two engines may differ
SOURCES = {
    source["id"]
    for source in json.loads(
        (Path(__file__).parent.parent / "docs" / "sources.json").read_text(encoding="utf-8")
    )
}

OUR_OWN = {"saltline-notes", "common-practice"}  # sources that are not outside ones
# A row asks for a number, so a class of the science is checked through what runs it.
RUNS = {"saltline.flush_log.known_pot": "saltline.pot.Pot"}


@cache
def native_replies() -> list[Reply]:
    return native([row.question() for row in ROWS])


def picked(row: Row, reply: Reply) -> Any:
    assert "value" in reply, f"no value: {reply}"
    value = reply["value"]
    for step in row.place(called(row)):
        value = value[step]
    return value


@pytest.mark.parametrize("at", range(len(ROWS)), ids=lambda at: f"{ROWS[at].table}:{ROWS[at].line}")
def test_published_value(at: int) -> None:
    row = ROWS[at]
    value = picked(row, native_replies()[at])
    if isinstance(row.expected, str):
        assert value == row.expected
    else:
        assert abs(float(value) - row.expected) <= row.tolerance()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.table}:{row.line}")
def test_row_is_cited(row: Row) -> None:
    assert row.source in SOURCES
    assert row.locator
    assert row.level in LEVELS
    if row.rel is not None and row.rel > 0.01:
        assert row.remark, "a tolerance above 1 % needs its reason"


@cache
def science() -> dict[str, ast.Module]:
    return parsed(bundle(science_modules()))


def reached(name: str) -> set[str]:
    """A calculator and every function and class that its answer can come from."""
    function = all_forms()[name].function
    names = needed(science(), [f"{function.__module__}.{function.__name__}"])
    return {f"calc:{name}", *map(".".join, names)}


def test_every_calculator_is_held_to_something_outside(capsys: pytest.CaptureFixture[str]) -> None:
    """To a published value, or to a referee library that knows nothing of us."""
    lines = []
    for name in all_forms():
        parts = reached(name)
        held = [row for row in ROWS if {row.function, RUNS.get(row.function)} & parts]
        outside = [row.level for row in held if row.source not in OUR_OWN]
        assert outside, name
        levels = Counter(outside)
        counts = ", ".join(f"{level} {levels[level]}" for level in LEVELS if levels[level])
        lines.append(f"{name:16} rows {len(held):4}, outside {len(outside):4}: {counts}")
    all_levels = Counter(row.level for row in ROWS)
    lines.append("all: " + ", ".join(f"{level} {all_levels[level]}" for level in LEVELS))
    with capsys.disabled():
        print("", *lines, sep="\n")


def agree(ours: Any, theirs: Any) -> bool:
    if isinstance(ours, list):
        return (
            isinstance(theirs, list)
            and len(ours) == len(theirs)
            and all(agree(a, b) for a, b in zip(ours, theirs, strict=True))
        )
    if isinstance(ours, float):
        return abs(ours - float(theirs)) <= RELATIVE * max(abs(ours), 1e-300)
    return bool(ours == theirs)


def test_light_engine_agrees() -> None:
    replies = light([row.question() for row in ROWS])
    differ = [
        (row.table, row.line, ours, theirs)
        for row, ours, theirs in zip(ROWS, native_replies(), replies, strict=True)
        if "value" not in theirs or not agree(ours["value"], theirs["value"])
    ]
    assert not differ


def test_full_engine_agrees(compiled_wheel: Path) -> None:
    replies = full([row.question() for row in ROWS], compiled_wheel)
    differ = [
        (row.table, row.line, ours, theirs)
        for row, ours, theirs in zip(ROWS, native_replies(), replies, strict=True)
        if "value" not in theirs or not agree(ours["value"], theirs["value"])
    ]
    assert not differ


def test_nobody_counts_the_zeros_of_a_difference() -> None:
    shown = checks_html(lambda source, locator, level: source)
    assert "<td>2.2&nbsp;×&nbsp;10⁻⁸</td>" in shown  # a tolerance
    assert not re.search(r"<td>0\.0{5}", shown)
