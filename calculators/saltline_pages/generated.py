"""Files in the checkout that are made from others, and which of them are out of date."""

from __future__ import annotations

import json
import re
from pathlib import Path

from saltline.forms import all_forms
from saltline_pages import computed_tables
from saltline_pages.calculator import calculator
from saltline_pages.schema import schema

DOCS = Path(__file__).resolve().parent.parent.parent / "docs"
SNAPSHOTS = DOCS.parent / "tests" / "snapshots"
REPAIR = "python3 scripts/generate.py"
# A calculator of each kind: fields and units, a curve, steps, a list, ticks, words alone.
KINDS = ("meter-reading", "build-up", "flush-plan", "batch", "feed-recipe", "stage-action")


def generated() -> dict[Path, str]:
    """Every derived file with the text it should hold."""
    files = {
        DOCS / "schemas" / f"{form.id}.json": json.dumps(schema(form), ensure_ascii=False, indent=1)
        + "\n"
        for form in all_forms().values()
    }
    return files | computed_tables.files() | snapshots()


def snapshots() -> dict[Path, str]:
    """Calculators as their pages hold them, a tag a line, so that a change of any is seen.

    Without the unrounded values, whose last figures are the machine's.
    """
    forms = all_forms()
    made = {name: re.sub(r' data-value="[^"]*"', "", calculator(forms[name])) for name in KINDS}
    return {
        SNAPSHOTS / f"{name}.html": html.replace("><", ">\n<") + "\n" for name, html in made.items()
    }


def stale() -> list[Path]:
    """Derived files that are missing, differ, or whose origin is gone."""
    wanted = generated()
    found = {*(DOCS / "schemas").glob("*.json"), *SNAPSHOTS.glob("*.html")}
    differ = [
        path
        for path, text in wanted.items()
        if not path.exists() or path.read_text(encoding="utf-8") != text
    ]
    return sorted({*differ, *(found - set(wanted))})


def write() -> list[Path]:
    """Write what is stale; the paths that changed."""
    wanted, changed = generated(), stale()
    for path in changed:
        if path in wanted:
            path.parent.mkdir(exist_ok=True)
            path.write_text(wanted[path], encoding="utf-8", newline="")
        else:
            path.unlink()
    return changed
