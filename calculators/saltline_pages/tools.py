"""Where the tools are that the set-up found (`scripts/setup_tools.py` writes the file)."""

from __future__ import annotations

import json
from pathlib import Path

FOUND = Path(__file__).resolve().parent.parent.parent / "build" / "tools.json"


def browser() -> str:
    """The path of Chromium, or nothing on a machine without one."""
    return _found().get("chromium", "")


def tool(name: str) -> str:
    """The path of `node`, `npm` or `chromium`."""
    found = _found()
    if name not in found:
        raise FileNotFoundError(f"{name} is not set up: run python3 scripts/test.py once")
    return found[name]


def _found() -> dict[str, str]:
    found: dict[str, str] = json.loads(FOUND.read_text("utf-8")) if FOUND.exists() else {}
    return found
