"""Check rows: published tables and worked examples as data, one CSV a table or example.

Columns of `tests/published/*.csv`:
    function   dotted path (saltline.meter.factor_iso_7888), or calc:ID for a whole calculator
    arguments  JSON object of keyword arguments
    pick       field of the NamedTuple, or an index into a list, or a.0 for both; empty for a number
    expected   the published value (a number, or words)
    rel, abs   tolerances, relative and absolute; exactly one is filled in for a number
    source     key of docs/sources.json
    locator    table, equation or page in that source
    level      read, opening only, second-hand, memory, common practice, computed
    remark     why the tolerance is above 1 %, or anything a sceptic should know
"""

from __future__ import annotations

import csv
import importlib
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from saltline.forms import all_forms

PUBLISHED = Path(__file__).resolve().parent.parent.parent / "tests" / "published"
LEVELS = ("read", "opening only", "second-hand", "memory", "common practice", "computed")


@dataclass(frozen=True)
class Row:
    table: str
    line: int
    function: str
    arguments: dict[str, Any]
    pick: str
    expected: float | str
    rel: float | None
    abs: float | None
    source: str
    locator: str
    level: str
    remark: str

    def question(self) -> dict[str, Any]:
        """What any engine is asked: a calculator's defaults are filled in first."""
        if self.function.startswith("calc:"):
            form = all_forms()[self.function.removeprefix("calc:")]
            path = f"{form.function.__module__}.{form.function.__name__}"
            return {"function": path, "arguments": form.complete(self.arguments)}
        return {"function": self.function, "arguments": self.arguments}

    def place(self, answer: Any) -> list[int]:
        """Where the picked value stands in the lists that an answer becomes (see `answering`)."""
        steps = []
        for step in filter(None, self.pick.split(".")):
            at = int(step) if step.isdigit() else list(answer._fields).index(step)
            steps.append(at)
            answer = answer[at]
        return steps

    def tolerance(self) -> float:
        """The largest difference allowed, in the unit of the value."""
        if self.abs is not None:
            return self.abs
        assert self.rel is not None
        return self.rel * abs(float(self.expected))


def called(row: Row) -> Any:
    """The native answer to a row's question, as the function returns it."""
    asked = row.question()
    module, name = asked["function"].rsplit(".", 1)
    return getattr(importlib.import_module(module), name)(**asked["arguments"])


def rows() -> list[Row]:
    """Every check row of every table."""
    return [row for path in sorted(PUBLISHED.glob("*.csv")) for row in _table(path)]


def _table(path: Path) -> list[Row]:
    with path.open(encoding="utf-8", newline="") as file:
        found = []
        for line, cells in enumerate(csv.DictReader(file), start=2):
            expected: float | str = cells["expected"]
            rel, abs_ = (float(cells[k]) if cells[k] else None for k in ("rel", "abs"))
            if rel is not None or abs_ is not None:
                expected = float(expected)
            found.append(
                Row(
                    table=path.stem,
                    line=line,
                    function=cells["function"],
                    arguments=json.loads(cells["arguments"]),
                    pick=cells["pick"],
                    expected=expected,
                    rel=rel,
                    abs=abs_,
                    source=cells["source"],
                    locator=cells["locator"],
                    level=cells["level"],
                    remark=cells["remark"],
                )
            )
        return found
