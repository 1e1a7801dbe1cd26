"""Where each source is used: tables, calculators, pages, check rows and the science's modules."""

from __future__ import annotations

import csv
import re
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

from saltline.forms import all_forms
from saltline_pages.cite import CITATION, Use
from saltline_pages.tables import load_all

_KEY = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)+")


def find_uses(checkout: Path) -> dict[str, list[Use]]:
    """Every use of every key, in a fixed order and without repetition."""
    found: defaultdict[str, dict[Use, None]] = defaultdict(dict)
    for key, use in _all(checkout):
        found[key][use] = None
    return {key: list(uses) for key, uses in found.items()}


def _all(checkout: Path) -> Iterator[tuple[str, Use]]:
    docs = checkout / "docs"
    pages = read_pages(docs)
    yield from _in_tables(docs / "tables")
    yield from _in_calculators(docs, pages)
    yield from _in_pages(docs, pages)
    yield from _in_checks(checkout / "tests")
    yield from _in_modules(checkout / "calculators" / "saltline")


def _in_tables(folder: Path) -> Iterator[tuple[str, Use]]:
    for table in load_all(folder).values():
        for key in table.source_keys():
            yield key, Use("table", table.title, f"tables/#table-{table.name}")


def _in_calculators(docs: Path, pages: dict[Path, str]) -> Iterator[tuple[str, Use]]:
    for form in all_forms().values():
        use = Use("calculator", form.question, calculator_home(form.id, docs, pages))
        for key in (*form.sources, *(item.source for item in form.inputs if item.source)):
            yield key, use


def _in_pages(docs: Path, pages: dict[Path, str]) -> Iterator[tuple[str, Use]]:
    for path, text in pages.items():
        for match in CITATION.finditer(text):
            yield match[1], Use("page", _title(path, text), page_address(docs, path))


def _in_checks(tests: Path) -> Iterator[tuple[str, Use]]:
    """Check rows: every CSV table of the tests that has a column `source`."""
    for path in sorted(tests.glob("*/*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                if row.get("source"):
                    yield row["source"], Use("check", path.stem, "trust/")


def _in_modules(package: Path) -> Iterator[tuple[str, Use]]:
    """Keys named in docstrings ("Sources:") and beside constants ("docs/sources.json: key")."""
    for path in sorted(package.rglob("*.py")):
        name = ".".join(path.relative_to(package.parent).with_suffix("").parts)
        for key in named_keys(path.read_text(encoding="utf-8")):
            yield key, Use("module", name, "")


def named_keys(code: str) -> list[str]:
    """The keys that a module's docstrings and comments name as sources."""
    keys = re.findall(rf"docs/sources\.json:[\s#]*({_KEY.pattern})", code)
    for section in re.findall(r"^ +Sources:\n((?:^ {8,}[^\s\"].*\n)+)", code, re.MULTILINE):
        for item in " ".join(section.split()).rstrip(".").split(";"):
            if named := re.match(rf"\s*({_KEY.pattern})(?![\w-])", item):
                keys.append(named[1])
    return keys


def read_pages(docs: Path) -> dict[Path, str]:
    """The Markdown of every page, in a fixed order."""
    return {path: path.read_text(encoding="utf-8") for path in sorted(docs.rglob("*.md"))}


def calculator_home(name: str, docs: Path, pages: dict[Path, str]) -> str:
    """The address of the first page that holds a calculator, or an empty string."""
    mark = f"[[calculator {name}]]"
    return next((page_address(docs, path) for path, text in pages.items() if mark in text), "")


def table_homes(docs: Path) -> dict[str, tuple[str, str]]:
    """Title and address of the first page that shows each table, by the table's name."""
    homes: dict[str, tuple[str, str]] = {}
    for path, text in read_pages(docs).items():
        for name in re.findall(r"^\[\[table ([a-z0-9-]+)\]\]$", text, re.MULTILINE):
            homes.setdefault(name, (_title(path, text), page_address(docs, path)))
    return homes


def _title(path: Path, text: str) -> str:
    heading = re.search(r"^# (.+)$", text, re.MULTILINE)
    return heading[1].strip() if heading else path.stem


def page_address(docs: Path, page: Path) -> str:
    """The address of a Markdown page relative to the site's root."""
    path = page.relative_to(docs).with_suffix("")
    parts = path.parts[:-1] if path.name in ("index", "README") else path.parts
    return "".join(part + "/" for part in parts)
