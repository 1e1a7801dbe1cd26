"""Print how far our answers lie from every published value, the worst first.

    .venv/bin/python scripts/differences.py

Twice: as a share of what a row allows, and as a share of the value itself; then the counts by
level, and a hundred made-up feeds beside PHREEQC.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT / "calculators"), str(ROOT / "tests")]

import feeds  # noqa: E402
from saltline_pages.checks import LEVELS  # noqa: E402
from saltline_pages.trust import Check, checks  # noqa: E402

HEAD = f"{'allowed':>8} {'value':>8}  {'level':15} {'published':>12} {'ours':>12}  what"


def of_allowed(check: Check) -> float:
    """The difference as a share of the tolerance."""
    return (check.difference or 0.0) / (check.row.tolerance() or 1e-300)


def line(check: Check) -> str:
    row = check.row
    what = f"{row.table}:{row.line} {row.function.removeprefix('saltline.')} {row.pick}"
    return (
        f"{of_allowed(check):8.1%} {check.share:8.2%}  {row.level:15} {row.expected:12.6g} "
        f"{check.ours:12.6g}  {what} ({row.source}, {row.locator})"
    )


def main() -> None:
    """Two tables and the counts."""
    numbers = [check for check in checks() if check.difference is not None]
    for title, key in (
        ("Worst first, as a share of what the row allows", of_allowed),
        ("Worst first, as a share of the published value", lambda check: check.share),
    ):
        print(title, HEAD, sep="\n")
        print(*map(line, sorted(numbers, key=key, reverse=True)), sep="\n", end="\n\n")
    words = [check for check in checks() if check.difference is None]
    missed = [check for check in checks() if not check.holds]
    print(f"{len(numbers)} numbers, {len(words)} answers in words, {len(missed)} do not hold")
    levels = Counter(check.row.level for check in checks())
    print(*(f"{level:16}{levels[level]:5}" for level in LEVELS), sep="\n")
    print(feeds.hundred_feeds())


if __name__ == "__main__":
    main()
