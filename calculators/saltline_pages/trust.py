"""How far to trust this: the page's figures, made from the same rows as the tests."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable
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


class Check(NamedTuple):
    """A row with what we answer."""

    row: Row
    place: list[int]
    ours: Any

    @property
    def off(self) -> float | None:
        """The difference as a share of the tolerance; None for words."""
        if isinstance(self.row.expected, str):
            return None
        return abs(float(self.ours) - self.row.expected) / (self.row.tolerance() or 1e-300)


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
    offs = [check.off for check in checks() if check.off is not None]
    by_level = "; ".join(f"{level}: {levels[level]}" for level in LEVELS if levels[level])
    return (
        '<p class="salt-counts"><strong>'
        f"Sums checked: {len(checks())}. Pots measured: {POTS_MEASURED}.</strong></p>"
        f"<p>Within their tolerance: {sum(off <= 1 for off in offs)} of {len(offs)} numbers, and "
        f"{len(checks()) - len(offs)} answers in words. By how the outside value was read: "
        f"{by_level}.</p>"
    )


def checks_html(cite: Callable[[str, str, str], str]) -> str:
    """Every check by topic; `cite` makes a citation of key, locator and level."""
    parts = []
    for table, group in groupby(checks(), key=lambda check: check.row.table):
        listed = list(group)
        body = "".join(_row(check, cite) for check in listed)
        heads = ("What is worked out", "Published", "Ours", "May differ by", "Source", "Remark")
        head = "".join(f'<th scope="col">{text}</th>' for text in heads)
        parts.append(
            f'<details class="salt-plain salt-checks"><summary>{escape(table.replace("_", " "))}: '
            f"{len(listed)} checks</summary><table><thead><tr>{head}</tr></thead>"
            f"<tbody>{body}</tbody></table></details>"
        )
    return "".join(parts)


def _row(check: Check, cite: Callable[[str, str, str], str]) -> str:
    row = check.row
    name = row.function.removeprefix("saltline.").removeprefix("calc:")
    said = ", ".join(f"{key} {_plain(value)}" for key, value in row.arguments.items())
    asked = f"{name}({said})" + (f" → {row.pick}" if row.pick else "")
    cells = (
        f"<code>{escape(asked)}</code>",
        escape(_plain(row.expected)),
        escape(_plain(check.ours)),
        "-" if check.off is None else number(row.tolerance(), 2),
        cite(row.source, row.locator, row.level),
        escape(row.remark),
    )
    return "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells) + "</tr>"


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
                "tolerance": None if check.off is None else check.row.tolerance(),
                "ours": check.ours,
            }
            for check in checks()
        ],
        separators=(",", ":"),
    )
