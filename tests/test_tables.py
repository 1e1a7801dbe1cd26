"""The tables: complete schemas, no figure without a source, honest levels, and their HTML."""

from __future__ import annotations

import importlib
import json
import re
from pathlib import Path
from typing import Any

import html5lib
import pytest
from phreeqpython import PhreeqPython

from saltline import conductance, standards
from saltline_pages import cite, computed_tables, tables, uses

FOLDER = Path(__file__).parent.parent / "docs" / "tables"
TABLES = tables.load_all(FOLDER)
SOURCES = cite.load(FOLDER.parent / "sources.json")
ROOT = "../"

NUMBER = r"-?\d+(?:\.\d+)?"
CELL = re.compile(rf"|[<>]?{NUMBER}|{NUMBER}-{NUMBER}|{NUMBER}(?:, {NUMBER})+")
# How closely a work was read, weakest first: no figure may claim more than its source's record.
READING = ("memory", "second-hand", "opening only", "read")

every_table = pytest.mark.parametrize("table", TABLES.values(), ids=TABLES)


def test_each_table_has_both_files() -> None:
    assert TABLES
    assert {path.stem for path in FOLDER.glob("*.csv")} == set(TABLES)
    assert {path.suffix for path in FOLDER.iterdir()} == {".csv", ".json"}


@every_table
def test_schema_is_complete(table: tables.Table) -> None:
    assert table.title
    assert table.caption.endswith(".")
    assert table.rows
    units = {column.unit for column in table.columns}
    references = {"source", "locator", "level"} & set(table.rows[0])
    assert references in (set(), {"source", "locator", "level"})
    expected = [column.name for column in table.columns]
    expected += ["unit"] if "row" in units else []
    expected += ["source", "locator", "level"] if references else []
    assert list(table.rows[0]) == expected
    for column in table.columns:
        assert column.label
        assert column.words != bool(column.unit), "a column has a unit or holds words"


@every_table
def test_cells_fit_their_columns(table: tables.Table) -> None:
    for row in table.rows:
        assert None not in row, "a row is longer than the header"
        assert any(row[column.name] for column in table.columns)
        for column in table.columns:
            if not column.words:
                assert CELL.fullmatch(row[column.name]), (column.name, row[column.name])
            if column.unit == "row":
                assert row["unit"]
        assert row.get("source", "-"), "a row without a source"


@every_table
def test_no_figure_stands_without_its_source(table: tables.Table) -> None:
    by_row = "source" in table.rows[0]
    for column in table.columns:
        if column.reference is None and not by_row:
            digits = [row[column.name] for row in table.rows if re.search(r"\d", row[column.name])]
            assert not digits, f"{column.name} shows figures and names no source"
    for sentence in re.split(r"(?<=[.:]) ", cite.CITATION.sub("@", table.note)):
        assert "@" in sentence or not re.search(r"\d", sentence), sentence


@every_table
def test_references_are_complete_and_honest(table: tables.Table) -> None:
    for source, locator, level in table.references():
        assert source in SOURCES
        assert locator, f"{source}: no place in the work"
        assert level in cite.LEVELS
        record = SOURCES[source]["level"]
        if level in READING and record in READING:
            assert READING.index(level) <= READING.index(record), (source, level, record)


def parsed(html: str) -> Any:
    return html5lib.parse(html, namespaceHTMLElements=False, treebuilder="etree")


def text(element: Any) -> str:
    return " ".join("".join(element.itertext()).split())


@every_table
def test_html_of_a_table(table: tables.Table) -> None:
    page = parsed(tables.table_html(table, SOURCES, ROOT))
    (figure,) = page.findall(".//figure[@class='salt-table']")
    assert [child.tag for child in figure] == ["figcaption", "table", "footer"]
    assert table.title in text(figure.find("figcaption"))

    heads = figure.findall("table/thead/tr/th[@scope='col']")
    by_row = "source" in table.rows[0]
    assert len(heads) == len(table.columns) + by_row
    for head, column in zip(heads, table.columns, strict=False):
        assert column.label in text(head)
        if column.has_unit:
            assert column.unit in text(head)
        if table.levels_differ and column.reference:
            assert text(head).endswith(column.reference.level)

    body = figure.findall("table/tbody/tr")
    assert len(body) == len(table.rows)
    for line in body:
        cells = line.findall("td")
        assert len(cells) == len(heads)
        assert all(cell.get("data-label") and text(cell) for cell in cells)
        for cell, head in zip(cells, heads, strict=True):
            label = re.sub(r"[\[\],]", " ", cell.get("data-label"))
            assert label.split() == text(head).replace("[", "").replace(",", " ").split()

    footer = figure.find("footer")
    cited = {link.get("href") for link in footer.findall(".//a[@class='salt-cite']")}
    assert cited == {f"{ROOT}sources/#{key}" for key in table.source_keys()}
    levels = [text(tag) for tag in footer.findall(".//span[@class='tag']")]
    assert {one.level for one in table.references()} <= set(levels)
    (download,) = footer.findall(".//a[@download]")
    assert download.get("href") == f"{ROOT}tables/{table.name}.csv"
    assert (FOLDER / download.get("href").rpartition("/")[2]).exists()


def test_index_folds_every_table_once_under_its_page() -> None:
    homes = uses.table_homes(FOLDER.parent)
    assert set(homes) == set(TABLES), "a table that no page shows"
    page = parsed(tables.tables_index(TABLES, SOURCES, ROOT, homes))
    folds = page.findall(".//details")
    assert sorted(fold.find(".//figure").get("id") for fold in folds) == sorted(
        f"table-{name}" for name in TABLES
    )
    titles = {f"table-{name}": table.title for name, table in TABLES.items()}
    assert all(titles[fold.find(".//figure").get("id")] == text(fold[0]) for fold in folds)
    heads = [(text(head), head.find("a").get("href")) for head in page.findall(".//h2")]
    assert sorted(heads) == sorted({(title, ROOT + address) for title, address in homes.values()})


def test_text_of_a_cell_cannot_become_markup() -> None:
    hostile = tables.Table(
        name="hostile",
        title="<b>title</b>",
        caption="A & B.",
        columns=(
            tables.Column(name="a", label='"quoted" <i>', words=True),
            tables.Column(name="b", label="b", unit="<mm>"),
        ),
        rows=({"a": "<script>alert(1)</script>", "b": "<0.7"},),
    )
    page = parsed(tables.table_html(hostile, SOURCES, ROOT))
    cells = page.findall(".//td")
    assert [text(cell) for cell in cells] == ["<script>alert(1)</script>", "<0.7"]
    assert cells[0].get("data-label") == '"quoted" <i>'
    assert not page.findall(".//script")


@pytest.mark.parametrize(
    ("cell", "printed"),
    [("0.7-3.0", "0.7–3.0"), ("-57.5", "−57.5"), ("-1-2", "−1–2"), ("0-100", "0–100"), ("", "")],
)
def test_numbers_as_printed(cell: str, printed: str) -> None:
    assert tables.shown(cell) == printed


def test_schemas_hold_nothing_unknown() -> None:
    for path in FOLDER.glob("*.json"):
        schema = json.loads(path.read_text(encoding="utf-8"))
        assert set(schema) <= {"title", "caption", "note", "computed", "columns"}, path.name


def test_computed_tables_are_those_that_have_a_generator() -> None:
    computed = {name for name, table in TABLES.items() if table.computed}
    assert computed == set(computed_tables.GENERATORS)
    for name in computed:
        for path in re.findall(r"saltline\.[a-z_]+\.[A-Za-z0-9_]+", TABLES[name].computed):
            module, _, function = path.rpartition(".")
            assert hasattr(importlib.import_module(module), function), path


@pytest.mark.parametrize("name", computed_tables.GENERATORS)
def test_computed_table_is_what_the_science_gives_now(name: str) -> None:
    written = (FOLDER / f"{name}.csv").read_text(encoding="utf-8")
    now = computed_tables.csv_text(TABLES[name])
    assert written == now, "write it again with: python3 scripts/generate.py"


def column(table: str, name: str) -> dict[str, str]:
    """A column by the cells of its table's first column."""
    first = TABLES[table].columns[0].name
    return {row[first]: row[name] for row in TABLES[table].rows}


def test_published_ions_are_those_the_science_uses() -> None:
    printed = {
        row["ion"].rpartition(", ")[2].rstrip("+-"): (row["charge"], float(row["conductivity"]))
        for row in TABLES["ion-conductivities"].rows
    }
    for ion in conductance.IONS:
        name = {"Ca": "Ca2", "Mg": "Mg2", "SO4": "SO42"}.get(ion.name, ion.name)
        assert printed.pop(name) == (str(ion.charge), ion.conductivity)
    assert not printed


def test_published_standards_are_those_the_science_uses() -> None:
    printed = column("kcl-standards", "kcl_0_01_mol_kg")
    for celsius, conductivity in standards.KCL_0_01_MOL_KG:
        assert float(printed[f"{celsius:g}"]) == conductivity
    bottle = column("kcl-standards", "kcl_0_01_mol_l")
    assert float(bottle["25"]) == 1000.0 * standards.STANDARDS["bottle_1413"][0]


# The solid, an element in it, and the mass of anhydrous salt for 1 mol of that element [g].
PHASES = {
    "Potassium chloride": ("Sylvite", "K", 74.551),
    "Potassium sulfate": ("Arcanite", "K", 87.130),
    "Magnesium sulfate": ("Epsomite", "Mg", 120.368),
    "Sodium chloride": ("Halite", "Na", 58.443),
    "Gypsum": ("Gypsum", "Ca", 136.14),
}


@pytest.mark.parametrize("salt", PHASES)
def test_solubility_is_what_phreeqc_gives(salt: str) -> None:
    """Saturation of the pure solid in water, by Pitzer's equations."""
    phase, element, mass = PHASES[salt]
    (row,) = (
        row
        for row in TABLES["salt-solubility"].rows
        if row["salt"].startswith(salt) and row["source"] == "phreeqc-3"
    )
    engine = PhreeqPython(database="pitzer.dat")
    for celsius in (0, 10, 20, 25, 30, 40):
        if printed := row[f"t{celsius}"]:
            water = engine.add_solution({"temp": celsius})
            water.saturate(phase, 0.0, 50)
            grams = water.total(element, units="mol") / water.mass * mass / 10.0
            assert grams == pytest.approx(float(printed), rel=0.005), celsius
