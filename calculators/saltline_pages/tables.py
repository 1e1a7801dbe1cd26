"""Tables with a source: docs/tables/NAME.csv with its schema NAME.json -> HTML.

The schema holds `title`, `caption`, `columns`, and optionally `note` (which may hold citations) and
`computed`. A column has `name` (the CSV header), `label`, and either a `unit` or `"words": true`;
the unit "row" means that each row names its own in the CSV column `unit`. What a figure rests on
stands either with its column (`source`, `locator`, `level`) or with its row (CSV columns of the
same names); a row's source also covers the columns that name none.
"""

from __future__ import annotations

import csv
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from html import escape
from itertools import groupby
from pathlib import Path
from typing import Any, NamedTuple

from saltline_pages.cite import CITATION, Source, cite, tag


class Reference(NamedTuple):
    """What a figure rests on."""

    source: str
    locator: str
    level: str


@dataclass(frozen=True, kw_only=True)
class Column:
    name: str
    label: str
    unit: str = ""
    words: bool = False
    decimals: int | None = None  # of a computed column: how its numbers are written in the CSV
    reference: Reference | None = None

    @property
    def has_unit(self) -> bool:
        """Whether the heading carries the unit (else it stands in the cells, or there is none)."""
        return self.unit not in ("", "row")


@dataclass(frozen=True, kw_only=True)
class Table:
    name: str
    title: str
    caption: str
    columns: tuple[Column, ...]
    rows: tuple[Mapping[str, str], ...]
    note: str = ""
    computed: str = ""  # dotted names of what works it out, by computed_tables.py

    @property
    def levels_differ(self) -> bool:
        """Whether the level must stand with each column: one line below cannot speak for all."""
        return len({reference.level for reference in self.references()}) > 1

    @property
    def narrow(self) -> bool:
        """Whether it stays a table on a phone: three columns, words only in the first."""
        return len(self.columns) <= 3 and not any(column.words for column in self.columns[1:])

    def references(self) -> list[Reference]:
        """Every reference of the table once, columns first, then rows in their order."""
        found = [column.reference for column in self.columns if column.reference]
        for row in self.rows:
            if row.get("source"):
                found.append(Reference(row["source"], row["locator"], row["level"]))
        return list(dict.fromkeys(found))

    def source_keys(self) -> list[str]:
        """The key of every source of the table, its note included."""
        noted = [mark[1] for mark in CITATION.finditer(self.note)]
        return list(dict.fromkeys([*(one.source for one in self.references()), *noted]))


def load(path: Path) -> Table:
    """The table whose schema is at `path`; its rows are in the CSV beside it."""
    schema = json.loads(path.read_text(encoding="utf-8"))
    with path.with_suffix(".csv").open(encoding="utf-8", newline="") as file:
        rows = tuple(csv.DictReader(file))
    columns = tuple(_column(entry) for entry in schema.pop("columns"))
    return Table(name=path.stem, columns=columns, rows=rows, **schema)


def load_all(folder: Path) -> dict[str, Table]:
    """Every table of a folder, by name."""
    return {path.stem: load(path) for path in sorted(folder.glob("*.json"))}


def _column(entry: dict[str, Any]) -> Column:
    parts = [entry.pop(key, "") for key in ("source", "locator", "level")]
    return Column(reference=Reference(*parts) if parts[0] else None, **entry)


def shown(text: str) -> str:
    """A cell's number or range as it is printed: a true minus, an en dash in a range."""
    text = re.sub(r"(?<![\w.)])-(?=\d)", "−", text)
    return re.sub(r"(?<=\d)-(?=[\d−])", "–", text)


def table_html(table: Table, sources: Mapping[str, Source], root: str) -> str:
    """The whole figure: caption, table, footer with sources, levels and the CSV."""
    by_row = any(row.get("source") for row in table.rows)
    head = "".join(_head(table, column) for column in table.columns)
    head += '<th scope="col">Source</th>' if by_row else ""
    body = ""
    for row in table.rows:
        cells = "".join(_cell(table, column, row) for column in table.columns)
        if by_row:
            own = cite(sources[row["source"]], row["locator"], root, row["level"])
            cells += f'<td data-label="Source">{own}</td>'
        body += f"<tr>{cells}</tr>"
    said = CITATION.sub(
        lambda mark: cite(sources[mark[1]], mark[2] or "", root), escape(table.note)
    )
    note = f"<p>{said}</p>" if said else ""
    narrow = " data-narrow" if table.narrow and not by_row else ""
    return (
        f'<figure class="salt-table" id="table-{table.name}">'
        f"<figcaption><strong>{escape(table.title)}.</strong> {escape(table.caption)}</figcaption>"
        f"<table{narrow}><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
        f"<footer>{note}{_footer(table, sources, root)}</footer></figure>"
    )


def _level(table: Table, column: Column) -> str:
    return column.reference.level if table.levels_differ and column.reference else ""


def _head(table: Table, column: Column) -> str:
    unit = f' <span class="unit">{escape(column.unit)}</span>' if column.has_unit else ""
    level = _level(table, column)
    return f'<th scope="col">{escape(column.label)}{unit}{f" {tag(level)}" if level else ""}</th>'


def _cell(table: Table, column: Column, row: Mapping[str, str]) -> str:
    """A cell, with what its heading says for where the heading is out of sight."""
    text, kind = row[column.name], ""
    if not column.words:
        unit = f" {row['unit']}" if column.unit == "row" and text else ""
        text, kind = shown(text) + unit, ' class="number"'
    unit = f" [{column.unit}]" if column.has_unit else ""
    label = ", ".join(filter(None, (column.label + unit, _level(table, column))))
    return f'<td{kind} data-label="{escape(label)}">{escape(text) or "–"}</td>'


def _footer(table: Table, sources: Mapping[str, Source], root: str) -> str:
    places: dict[tuple[str, str], list[str]] = {}
    for one in table.references():
        places.setdefault((one.source, one.level), []).append(one.locator)
    cited = "; ".join(
        cite(sources[key], found[0] if len(found) == 1 else "", root, level)
        for (key, level), found in places.items()
    )
    made = f" Worked out by {table.computed}." if table.computed else ""
    file = f"{root}tables/{table.name}.csv"
    return (
        f"<p>Sources: {cited}.{escape(made)}</p>"
        f'<p><a href="{escape(file)}" download>This table as CSV</a></p>'
    )


def tables_index(
    tables: Mapping[str, Table],
    sources: Mapping[str, Source],
    root: str,
    homes: Mapping[str, tuple[str, str]],
) -> str:
    """Every table, folded under its title, by the page that shows it (its title and address)."""
    parts = []
    for page, names in groupby(sorted(tables, key=lambda name: (homes[name], name)), homes.get):
        assert page is not None
        title, address = page
        anchor = "tables-" + address.strip("/").rpartition("/")[2]
        parts.append(f'<h2 id="{anchor}"><a href="{root}{address}">{escape(title)}</a></h2>')
        parts += [
            f'<details class="salt-fold"><summary>{escape(tables[name].title)}</summary>'
            # The page that shows it has its words for the search.
            f"<div data-search-exclude>{table_html(tables[name], sources, root)}</div></details>"
            for name in names
        ]
    return "".join(parts)
