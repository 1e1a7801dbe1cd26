"""Print how long each calculator's example takes in the light engine, under Node, on this machine.

    .venv/bin/python scripts/time_light.py

Processor time of the quicker of two runs. A telephone takes some four times as long.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT / "calculators"), str(ROOT / "tests")]

from engines import science_modules  # noqa: E402
from saltline.forms import all_forms  # noqa: E402
from saltline_pages.lower import bundle  # noqa: E402
from saltline_pages.tools import tool  # noqa: E402


def main() -> None:
    """One line a calculator, the slowest first."""
    forms = all_forms()
    questions = [
        json.dumps(
            {
                "function": f"{form.function.__module__}.{form.function.__name__}",
                "arguments": form.complete(form.example),
            }
        )
        for form in forms.values()
    ]
    done = subprocess.run(
        [tool("node"), str(ROOT / "tests" / "engines" / "times.mjs")],
        input=json.dumps({"files": bundle(science_modules()), "questions": questions}),
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=True,
    )
    for time, name in sorted(zip(json.loads(done.stdout), forms, strict=True), reverse=True):
        print(f"{time:8.0f} ms  {name}")


if __name__ == "__main__":
    main()
