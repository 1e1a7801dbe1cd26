"""How far to trust this: the page's figures, made from the same rows as the tests."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Iterable
from functools import cache
from html import escape
from itertools import groupby
from typing import Any, NamedTuple

from saltline_pages.checks import LEVELS, Row, called, rows
from saltline_pages.shown import number

# The element's own HTML; the build puts the addresses of the engines in PARTS' place.
PARTS = "salt-parts:"
RUN = (
    f'<salt-trust data-parts="{PARTS}">'
    '<p class="salt-actions"><button type="button" class="salt-main" data-do="light">'
    "Run every check now</button>"
    '<button type="button" data-do="full">Load CPython and run them there too</button></p>'
    "<p>CPython is about 4 MB to fetch, once; it stays for use without a network.</p>"
    '<p class="salt-note" role="status"></p><progress hidden aria-label="Progress"></progress>'
    '<p><button type="button" class="salt-plain-button" data-do="cancel" hidden>Stop</button>'
    '<button type="button" class="salt-plain-button" data-do="export" hidden>'
    "Take the result away as CSV</button></p>"
    '<div class="salt-plain"><table hidden><thead><tr><th scope="col">Engine</th>'
    '<th scope="col">Checks</th><th scope="col">Within tolerance</th>'
    '<th scope="col">Same as the build to 1e-12</th><th scope="col">Seconds</th></tr></thead>'
    "<tbody></tbody></table></div></salt-trust>"
)
POTS_MEASURED = 0  # no measured flush of a pot has been sent to us or found in print
FURTHEST = 10  # checks shown as those that differ most
# On a phone docs/assets/css/trust.css repeats them before each cell.
HEADS = (
    "What is worked out",
    "Published",
    "Ours",
    "Differs by",
    "May differ by",
    "Place",
    "Remark",
)


class Check(NamedTuple):
    """A row with what we answer."""

    row: Row
    place: list[int]
    ours: Any

    @property
    def difference(self) -> float | None:
        """How far ours is from the published number; None for words."""
        if isinstance(self.row.expected, str):
            return None
        return abs(float(self.ours) - self.row.expected)

    @property
    def holds(self) -> bool:
        """Whether a number is within its tolerance, and words are those published."""
        if self.difference is None:
            return bool(self.ours == self.row.expected)
        return self.difference <= self.row.tolerance()

    @property
    def share(self) -> float:
        """The difference as a share of the published number; 0 for words and beside zero."""
        if self.difference is None or not self.row.expected:
            return 0.0
        return self.difference / abs(float(self.row.expected))


@cache
def checks() -> tuple[Check, ...]:
    """Every row, answered by this Python."""
    made = []
    for row in rows():
        answer = called(row)
        place = row.place(answer)
        value = answer
        for step in place:
            value = value[step]
        made.append(Check(row, place, value))
    return tuple(made)


def summary_html() -> str:
    """The counts, first and apart: sums checked, pots measured."""
    levels = Counter(check.row.level for check in checks())
    numbers = [check for check in checks() if check.difference is not None]
    within = sum(check.holds for check in numbers)
    words = len(checks()) - len(numbers)
    same = sum(check.holds for check in checks()) - within
    off = [sum(check.share > share for check in numbers) for share in (0.01, 0.1)]
    by_level = "; ".join(f"{level}: {levels[level]}" for level in LEVELS if levels[level])
    return (
        '<p class="salt-counts"><strong>'
        f"Sums checked: {len(checks())}. Pots measured: {POTS_MEASURED}.</strong></p>"
        f"<p>Within their tolerance: {within} of {len(numbers)} numbers. The same as published: "
        f"{same} of {words} answers in words. More than 1 % from what is published: "
        f"{off[0]} numbers; more than 10 %: {off[1]}. By how the outside value was read: "
        f"{by_level}.</p>"
    )


def furthest_html(cite: Callable[[str, str, str], str]) -> str:
    """The checks that differ most from what is published, with the reason for each."""
    most = sorted(checks(), key=lambda check: -check.share)[:FURTHEST]
    return f'<div class="salt-plain salt-checks">{_table(most, cite)}</div>'


def checks_html(cite: Callable[[str, str, str], str]) -> str:
    """Every check by topic; `cite` makes a citation of key, locator and level."""
    parts = []
    for table, group in groupby(checks(), key=lambda check: check.row.table):
        listed = list(group)
        parts.append(
            f'<details class="salt-plain salt-checks"><summary>{escape(table.replace("_", " "))}: '
            f"{len(listed)} checks</summary>{_table(listed, cite)}</details>"
        )
    return "".join(parts)


def _table(listed: Iterable[Check], cite: Callable[[str, str, str], str]) -> str:
    """The checks by source, in the order in which each source first comes."""
    head = "".join(f'<th scope="col">{text}</th>' for text in HEADS)
    by_source: dict[tuple[str, str], list[Check]] = {}
    for check in listed:
        by_source.setdefault((check.row.source, check.row.level), []).append(check)
    bodies = "".join(
        f'<tbody><tr><th scope="rowgroup" colspan="{len(HEADS)}">{cite(key, "", level)}</th></tr>'
        f"{''.join(map(_row, group))}</tbody>"
        for (key, level), group in by_source.items()
    )
    return f"<table><thead><tr>{head}</tr></thead>{bodies}</table>"


def _row(check: Check) -> str:
    row = check.row
    name = row.function.removeprefix("saltline.").removeprefix("calc:")
    said = ", ".join(f"{key} {_plain(value)}" for key, value in row.arguments.items())
    asked = f"{name}({said})" + (f" → {row.pick}" if row.pick else "")
    cells = (
        f"<code>{escape(asked)}</code>",
        escape(_plain(row.expected)),
        escape(_plain(check.ours)),
        "-" if check.difference is None else _apart(check.difference),
        "-" if check.difference is None else _apart(row.tolerance()),
        escape(row.locator),
        escape(row.remark),
    )
    return "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells) + "</tr>"


def _apart(value: float) -> str:
    """A difference; a very small one by its power of ten, for nobody counts its zeros."""
    if not 0 < value < 1e-4:
        return number(value, 2)
    digits, power = f"{value:.1e}".split("e")
    raised = str(int(power)).translate(str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"))
    return f"{digits.removesuffix('.0')}&nbsp;×&nbsp;10{raised}"


def _plain(value: Any) -> str:
    if isinstance(value, float | int) and not isinstance(value, bool):
        return number(float(value), 6)
    return ", ".join(map(_plain, value)) if isinstance(value, list) else str(value)


def device_checks() -> str:
    """The same checks as JSON, for the reader's own device."""
    return json.dumps(
        [
            {
                "table": check.row.table,
                "line": check.row.line,
                "question": json.dumps(check.row.question()),
                "place": check.place,
                "expected": check.row.expected,
                "tolerance": None if check.difference is None else check.row.tolerance(),
                "ours": check.ours,
            }
            for check in checks()
        ],
        separators=(",", ":"),
    )
