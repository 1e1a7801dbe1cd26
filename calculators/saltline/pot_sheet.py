"""The sheet of one measured pot: what was done to it and read, line by line."""

from __future__ import annotations

from typing import NamedTuple

from saltline.csv_text import Row, Table, number_in, read_table
from saltline.meter import ec_from_scale

# Each kind of line: the columns it cannot do without, and those that it may have besides.
EVENTS = (
    ("pot", ("volume_ml", "grain_mm"), ("weight_g",)),
    ("rinse", ("reading",), ()),
    ("salt_bath", ("reading",), ("minutes",)),
    ("drained", ("weight_g",), ()),
    ("rest", ("minutes",), ()),
    ("drip", ("reading",), ("volume_ml",)),
    ("pour", ("volume_ml",), ("reading",)),
    ("soak", ("volume_ml", "minutes"), ("reading",)),
    ("last_bath", ("volume_ml", "minutes", "reading"), ()),
)
STEPS = ("rest", "drip", "pour", "soak")
BOUNDS = (
    ("volume_ml", 1.0, 50000.0),
    ("minutes", 0.1, 20160.0),
    ("weight_g", 1.0, 50000.0),
    ("grain_mm", 1.0, 30.0),
    ("reading", 0.0, 30000.0),
)
HIGHEST_MS_CM = 30.0
MOST_STEPS = 40
# How people write a pen's scale, without spaces, brackets and strokes.
SCALES = (
    ("", "ms_cm"), ("mscm", "ms_cm"), ("ms", "ms_cm"), ("dsm", "ms_cm"), ("ec", "ms_cm"),
    ("uscm", "us_cm"), ("us", "us_cm"), ("ppm500", "ppm500"), ("ppm640", "ppm640"),
    ("ppm700", "ppm700"), ("cf", "cf"),
)  # fmt: skip

NO_HEAD = "The first line must name the columns, one of them event."


class Line(NamedTuple):
    """One line that was taken; a figure that it does not hold is None."""

    line: int
    event: str
    volume_ml: float | None
    minutes: float | None
    weight_g: float | None
    grain_mm: float | None
    reading: float | None  # [mS/cm]


class Sheet(NamedTuple):
    """What a sheet says of one pot; what it does not say is None."""

    pot: Line | None
    rinse: Line | None
    salt_bath: Line | None
    drained: Line | None
    last_bath: Line | None
    steps: list[Line]
    water_held_ml: float | None
    taken: int
    refused: list[tuple[int, str]]  # (line, reason)


class _Bad(Exception):
    """Why a line is not taken."""


def read_sheet(*, sheet: str) -> Sheet:
    """A pot's sheet, with every line that is not taken and its reason.

    Equation:
        water held = drained weight - dry weight (1 g is 1 mL).
    Arguments:
        sheet: a table with the column event and any of volume_ml, minutes, reading, scale,
            weight_g, grain_mm; other columns are left alone.
    Returns:
        Sheet: lines in order.
    Valid for:
        One pot; readings at 25 C, by pens that correct for temperature.
    Error:
        None.
    Raises:
        Nothing: lines that cannot be used are in `refused`.
    Sources:
        saltline-notes.
    """
    table = read_table(text=sheet)
    refused: list[tuple[int, str]] = []
    if "event" not in table.heads:
        return _sheet({}, [], 0, [(1, NO_HEAD)])
    single: dict[str, Line] = {}
    steps: list[Line] = []
    for row in table.rows:
        try:
            line = _line(row, table)
            _placed(line, single, steps)
        except _Bad as bad:
            refused.append((row.line, str(bad)))
    _weighed(single, refused)
    return _sheet(single, steps, len(table.rows) - len(refused), sorted(refused))


def _sheet(
    single: dict[str, Line], steps: list[Line], taken: int, refused: list[tuple[int, str]]
) -> Sheet:
    pot, drained = single.get("pot"), single.get("drained")
    held = None
    if pot and drained and pot.weight_g is not None and drained.weight_g is not None:
        held = drained.weight_g - pot.weight_g
    return Sheet(
        pot=pot,
        rinse=single.get("rinse"),
        salt_bath=single.get("salt_bath"),
        drained=drained,
        last_bath=single.get("last_bath"),
        steps=steps,
        water_held_ml=held,
        taken=taken,
        refused=refused,
    )


def _line(row: Row, table: Table) -> Line:
    """A row whose cells are all in order."""
    if row.trouble:
        raise _Bad(row.trouble)
    event, needs, may = _event(row.cells.get("event", ""))
    found: dict[str, float | None] = {}
    for column, low, high in BOUNDS:
        found[column] = None
        if column in needs or column in may:
            found[column] = _figure(row, column, low, high, table.decimal_comma)
        if column in needs and found[column] is None:
            raise _Bad("needs " + column + " for " + event)
    if found["reading"] is not None:
        found["reading"] = _ms_cm(found["reading"], row.cells.get("scale", ""))
    return Line(
        row.line, event, found["volume_ml"], found["minutes"], found["weight_g"],
        found["grain_mm"], found["reading"],
    )  # fmt: skip


def _event(written: str) -> tuple[str, tuple[str, ...], tuple[str, ...]]:
    """Which kind of line it is, with the columns it needs and those it may have."""
    event = "_".join(written.lower().replace("-", " ").split())
    for name, needs, may in EVENTS:
        if name == event:
            return name, needs, may
    said = "does not know '" + written + "': " if written else "names no event: "
    raise _Bad(said + ", ".join(name for name, _, _ in EVENTS))


def _figure(row: Row, column: str, low: float, high: float, comma: bool) -> float | None:
    text = row.cells.get(column, "")
    if not text:
        return None
    value = number_in(text=text, decimal_comma=comma)
    if value is None:
        raise _Bad(column + " must be a number, not '" + text + "'")
    if not low <= value <= high:
        raise _Bad(column + f" must be {low:g} to {high:g}")
    return value


def _ms_cm(reading: float, scale: str) -> float:
    bare = scale.lower().replace("\u00b5", "u").replace("\u03bc", "u")
    for sign in " /()_.\u00a0":
        bare = bare.replace(sign, "")
    if bare == "ppm":
        raise _Bad("scale must say which ppm: ppm500, ppm640 or ppm700")
    for written, name in SCALES:
        if bare == written:
            value = ec_from_scale(reading=reading, scale=name)
            if value > HIGHEST_MS_CM:
                raise _Bad(f"reading must be {HIGHEST_MS_CM:g} mS/cm or less: is the scale right?")
            return value
    raise _Bad("does not know the scale '" + scale + "': mS/cm, uS/cm, ppm500, ppm640, ppm700, CF")


def _placed(line: Line, single: dict[str, Line], steps: list[Line]) -> None:
    """Put a line where it belongs, if it may stand there."""
    event = line.event
    if (event == "salt_bath" or event in STEPS) and "last_bath" in single:
        raise _Bad("comes after the last bath, so it is not taken")
    if event in STEPS:
        if len(steps) == MOST_STEPS:
            raise _Bad(f"is more than {MOST_STEPS} steps")
        steps.append(line)
        return
    if event in single:
        raise _Bad("is a second " + event + f": the one in line {single[event].line} stands")
    if event == "salt_bath" and any(step.event != "rest" for step in steps):
        raise _Bad("must come before the first drip, pour or soak")
    single[event] = line


def _weighed(single: dict[str, Line], refused: list[tuple[int, str]]) -> None:
    """Refuse a drained weight that no pot can have."""
    pot, drained = single.get("pot"), single.get("drained")
    if pot is None or drained is None or pot.weight_g is None or drained.weight_g is None:
        return
    held = drained.weight_g - pot.weight_g
    reason = ""
    if not held > 0.0:
        reason = "weight_g must be more than that of the dry pot"
    elif pot.volume_ml is not None and not held < pot.volume_ml:
        reason = "weight_g means more water than the pot has room for"
    if reason:
        refused.append((drained.line, reason))
        del single["drained"]
