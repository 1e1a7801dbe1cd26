"""What axe found in each state of each calculator, told at the end of the run.

The tests run in several processes: what they find goes along with their reports.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

FOUND = "axe"  # marks a calculator's name and what was found in each of its states
KEPT = Path(__file__).resolve().parent.parent.parent / "build" / "access.txt"


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    reports: list[Any] = [
        *terminalreporter.getreports("passed"),
        *terminalreporter.getreports("failed"),
    ]
    told = [told for report in reports for mark, told in report.user_properties if mark == FOUND]
    if not told:
        return
    lines = ["Violations that axe found, - where a calculator has no such state:"]
    lines.append(f"{'':16}" + "".join(f"{state:>9}" for state in told[0][1]))
    lines += [
        f"{name:16}" + "".join(f"{count:>9}" for count in row.values())
        for name, row in sorted(told)
    ]
    terminalreporter.write_line("\n".join(lines))
    KEPT.parent.mkdir(exist_ok=True)
    KEPT.write_text("\n".join(lines) + "\n", encoding="utf-8")
