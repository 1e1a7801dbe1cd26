"""Tables as text, the way spreadsheets write them."""

from __future__ import annotations

from typing import NamedTuple

SEPARATORS = ("\t", ";", ",")
DIGITS = "0123456789"
SPACES = (" ", "\u00a0", "\u2009", "\u202f")
MINUS = ("\u2212", "\u2013")


class Row(NamedTuple):
    """One line of a table: its number in the text, and its cells, or why it could not be read."""

    line: int
    cells: dict[str, str]
    trouble: str


class Table(NamedTuple):
    """The names in the head, in order, and the lines below it that are not empty."""

    heads: list[str]
    rows: list[Row]
    decimal_comma: bool


def read_table(*, text: str) -> Table:
    """A table whose first line that is not empty names the columns.

    Equation:
        None: one line is one row; cells between commas, semicolons or tabs, in double quotes where
        they hold one (RFC 4180); which of the three stands most often in the head separates.
    Arguments:
        text: the whole table.
    Returns:
        Table: a row that cannot be read has a `trouble` and no cells.
    Valid for:
        Comma- and tab-separated text in any column order; no line breaks inside a cell.
    Error:
        None.
    Raises:
        Nothing.
    Sources:
        saltline-notes.
    """
    lines = text.replace("\ufeff", "").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    heads: list[str] = []
    rows: list[Row] = []
    separator = ","
    for number, line in enumerate(lines, 1):
        if not line.strip(" \t;,"):
            continue
        if heads:
            rows.append(_row(number, split_line(line=line, separator=separator), heads))
            continue
        separator = max(SEPARATORS, key=line.count)
        cells = split_line(line=line, separator=separator) or []
        heads = ["_".join(cell.strip().lower().split()) for cell in cells]
    return Table(heads, rows, separator != ",")


def _row(number: int, cells: list[str] | None, heads: list[str]) -> Row:
    if cells is None:
        return Row(number, {}, "has a quotation mark that is not closed")
    while len(cells) > len(heads) and not cells[-1].strip():
        cells.pop()
    if len(cells) > len(heads):
        tail = "has " + str(len(cells)) + " cells, its head has " + str(len(heads))
        return Row(number, {}, tail + ": a cell that holds a separator needs quotation marks")
    return Row(number, {head: cell.strip() for head, cell in zip(heads, cells)}, "")


def split_line(*, line: str, separator: str) -> list[str] | None:
    """The cells of one line, or None where a quotation mark is not closed.

    Equation:
        None: a cell that begins with a double quote ends at the next single one; two are one.
    Arguments:
        line: the line, without its end.
        separator: one sign.
    Returns:
        The cells.
    Valid for:
        RFC 4180, line by line.
    Error:
        None.
    Raises:
        Nothing.
    Sources:
        saltline-notes.
    """
    cells = [""]
    quoted = False
    at = 0
    while at < len(line):
        sign = line[at]
        if quoted and line[at : at + 2] == '""':
            cells[-1] += sign
            at += 1
        elif quoted and sign == '"':
            quoted = False
        elif sign == '"' and not cells[-1].strip():
            cells[-1], quoted = "", True
        elif sign == separator and not quoted:
            cells.append("")
        else:
            cells[-1] += sign
        at += 1
    return None if quoted else cells


def number_in(*, text: str, decimal_comma: bool) -> float | None:
    """The number that a cell holds, or None.

    Equation:
        None: digits with at most one point, a sign before them.
    Arguments:
        text: the cell.
        decimal_comma: whether a comma may stand for the point.
    Returns:
        The number, or None where it is not one.
    Valid for:
        Plain decimal numbers, without powers of ten or grouping.
    Error:
        None.
    Raises:
        Nothing.
    Sources:
        saltline-notes.
    """
    for space in SPACES:
        text = text.replace(space, "")
    for minus in MINUS:
        text = text.replace(minus, "-")
    if decimal_comma and "." not in text:
        text = text.replace(",", ".", 1)
    bare = text[1:] if text[:1] in ("-", "+") else text
    figures = bare.replace(".", "", 1)
    if not figures or any(sign not in DIGITS for sign in figures):
        return None
    return float(text)
