"""What the browser tests found out beside passing, told at the end of the run."""

from __future__ import annotations

from pathlib import Path

import pytest

Matrix = dict[str, dict[str, str]]
MATRIX = pytest.StashKey[Matrix]()
KEPT = Path(__file__).resolve().parent.parent.parent / "build" / "access.txt"


def pytest_configure(config: pytest.Config) -> None:
    config.stash[MATRIX] = {}


@pytest.fixture
def matrix(request: pytest.FixtureRequest) -> Matrix:
    """Calculators, and what axe found in each of their states."""
    return request.config.stash[MATRIX]


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    found = terminalreporter.config.stash[MATRIX]
    if not found:
        return
    states = next(iter(found.values()))
    lines = ["Violations that axe found, - where a calculator has no such state:"]
    lines.append(f"{'':16}" + "".join(f"{state:>9}" for state in states))
    lines += [
        f"{name:16}" + "".join(f"{row[state]:>9}" for state in states)
        for name, row in sorted(found.items())
    ]
    terminalreporter.write_line("\n".join(lines))
    KEPT.parent.mkdir(exist_ok=True)
    KEPT.write_text("\n".join(lines) + "\n", encoding="utf-8")
