"""What a calculator declares about itself, once.

A `Form` names the pure function that answers, its inputs with their bounds, and its results. The
page's form, the schema, the share link, the error sentences, the command line, the input table and
the property tests are all made from it. Nothing here runs in the light engine.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from saltline.asking import Kind, Next, Screen
from saltline.errors import BadInput
from saltline.units import G_PER_OZ, ML_PER_US_FL_OZ, ML_PER_US_GAL, MM_PER_IN

# Unit key (the ending of an argument's name) -> how the unit is written, and said aloud.
UNITS: dict[str, tuple[str, str]] = {
    "": ("", ""),
    "ms_cm": ("mS/cm", "millisiemens per centimetre"),
    "us_cm": ("µS/cm", "microsiemens per centimetre"),
    "ppm": ("ppm", "parts per million"),
    "mg_l": ("mg/L", "milligrams per litre"),
    "g_l": ("g/L", "grams per litre"),
    "meq_l": ("meq/L", "milliequivalents per litre"),
    "mmol_l": ("mmol/L", "millimoles per litre"),
    "mg_l_caco3": ("mg/L CaCO₃", "milligrams per litre as calcium carbonate"),
    "german": ("°dH", "German degrees"),
    "french": ("°fH", "French degrees"),
    "clark": ("°Clark", "Clark degrees"),
    "grain_us_gal": ("gr/US gal", "grains per US gallon"),
    "cf": ("cF", "conductivity factor"),
    "bar": ("bar", "bar"),
    "c": ("°C", "degrees Celsius"),
    "percent": ("%", "percent"),
    "share": ("%", "percent"),  # 0 to 1 inside, shown as percent
    "ml": ("mL", "millilitres"),
    "ml_day": ("mL/day", "millilitres a day"),
    "l": ("L", "litres"),
    "g": ("g", "grams"),
    "mg": ("mg", "milligrams"),
    "mg_month": ("mg/month", "milligrams a month"),
    "mm": ("mm", "millimetres"),
    "mm_day": ("mm/day", "millimetres a day"),
    "m_s": ("m/s", "metres a second"),
    "s": ("s", "seconds"),
    "min": ("min", "minutes"),
    "h": ("h", "hours"),
    "day": ("day", "day"),
    "days": ("days", "days"),
    "weeks": ("weeks", "weeks"),
    "deg": ("°", "degrees"),
    "oz_100_gal": ("oz/100 US gal", "ounces per hundred US gallons"),
    "tsp": ("tsp", "teaspoons"),
    "times": ("times", "times"),
    "pots": ("pots", "pots"),
    "beads": ("beads", "beads"),
}

# Other ways to write a unit: sign, factor, offset; shown = value * factor + offset.
OTHER_UNITS: dict[str, tuple[tuple[str, float, float], ...]] = {
    "ms_cm": (
        ("µS/cm", 1000.0, 0.0),
        ("ppm (500)", 500.0, 0.0),
        ("ppm (640)", 640.0, 0.0),
        ("ppm (700)", 700.0, 0.0),
    ),
    "ml": (("L", 0.001, 0.0), ("US fl oz", 1.0 / ML_PER_US_FL_OZ, 0.0)),
    "l": (("mL", 1000.0, 0.0), ("US gal", 1000.0 / ML_PER_US_GAL, 0.0)),
    "mm": (("cm", 0.1, 0.0), ("in", 1.0 / MM_PER_IN, 0.0)),
    "c": (("°F", 1.8, 32.0),),
    "g": (("oz", 1.0 / G_PER_OZ, 0.0),),
}


@dataclass(frozen=True, kw_only=True)
class Number:
    """A numeric input. `name` is the argument's name and ends in its unit.

    `low` and `high` are the hard bounds (inclusive): beyond them is an error. `source_low` and
    `source_high` bound what the source covers: beyond them the answer carries a warning.
    `default` None with `optional` False means the reader must fill it in.
    """

    name: str
    label: str  # in the grower's words, without the unit: "Rinse water"
    unit: str  # a key of UNITS
    low: float
    high: float
    default: float | None = None
    optional: bool = False  # empty is an answer: the function takes None
    source_low: float | None = None
    source_high: float | None = None
    digits: int = 3  # significant digits shown
    whole: bool = False
    hint: str = ""
    origin: str = ""  # where the default comes from and how far the answer moves if it is wrong
    source: str = ""  # key of docs/sources.json for default or range
    more: bool = False  # folded under "more"
    unit_from: str = ""  # the unit is chosen by this other input ("scale")


@dataclass(frozen=True, kw_only=True)
class Option:
    value: str
    label: str


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One of a few words."""

    name: str
    label: str
    options: tuple[Option, ...]
    default: str | None = None
    hint: str = ""
    origin: str = ""
    source: str = ""
    more: bool = False
    sketch: str = ""  # a drawing of what is asked for, as SVG text
    optional: bool = field(default=False, init=False)


@dataclass(frozen=True, kw_only=True)
class Numbers:
    """A list of numbers, written with commas or spaces; the function takes a list of floats."""

    name: str
    label: str
    unit: str
    low: float
    high: float
    least: int = 1
    most: int = 500
    hint: str = ""
    origin: str = ""
    source: str = ""
    digits: int = 3
    more: bool = False
    default: None = field(default=None, init=False)
    optional: bool = field(default=False, init=False)


@dataclass(frozen=True, kw_only=True)
class Words:
    """A comma-separated list of words, each matching `pattern`; the function takes a list of str.

    `choices` (value, label), where given, are the only words allowed; `kinds`, where given, are
    events that the words stand for, made of `parts`, and `begin` is said above their list.
    """

    name: str
    label: str
    pattern: str = r"[a-z0-9_.:-]+"
    choices: tuple[tuple[str, str], ...] = ()
    least: int = 1
    most: int = 200
    hint: str = ""
    origin: str = ""
    source: str = ""
    more: bool = False
    kinds: tuple[Kind, ...] = ()
    parts: tuple[Number, ...] = ()
    begin: str = ""
    default: None = field(default=None, init=False)
    optional: bool = field(default=False, init=False)


Input = Number | Choice | Numbers | Words

YES_NO = (Option(value="yes", label="Yes"), Option(value="no", label="No"))


@dataclass(frozen=True, kw_only=True)
class Result:
    """One field of the answer, in the order of the function's NamedTuple."""

    name: str
    label: str
    unit: str = ""  # a key of UNITS; "words" and "list" results leave it empty
    digits: int = 3
    kind: str = "number"  # number, words, list
    labels: tuple[tuple[str, str], ...] = ()  # ids that are results, as a reader sees them


@dataclass(frozen=True, kw_only=True)
class Form:
    """A calculator.

    `function` takes every input as keyword argument and returns a NamedTuple whose fields are the
    results in order, then `warnings` (a tuple of sentences).
    `words` takes (inputs, answer) and returns (verdict, number, reason): sentences in which
    `{name}` stands for a shown result, `{in:name}` for an input, `{a..b}` for a range.
    `picture` takes (inputs, answer) and returns SVG text with the same placeholders, and
    `{0.5:ms_cm}` for a number in the reader's unit, `{:ms_cm}` for that unit's sign.
    `table` takes the same and returns the picture's curve as rows of cells, heads first.
    """

    id: str
    question: str
    function: Callable[..., Any]
    version: int
    inputs: tuple[Input, ...]
    results: tuple[Result, ...]
    words: Callable[[Mapping[str, Any], Any], tuple[str, str, str]]
    example: Mapping[str, Any]  # values for the page's first answer
    example_label: str = "An example: put your own numbers in"
    picture: Callable[[Mapping[str, Any], Any], str] | None = None
    table: Callable[[Mapping[str, Any], Any], tuple[tuple[str, ...], ...]] | None = None
    equation: tuple[str, ...] = ()  # LaTeX, one equation each, in the trade's symbols
    working: tuple[str, ...] = ()  # the equation with the numbers put in, line by line
    follow: tuple[Next, ...] = ()  # calculators that can go on from this answer
    main: str = ""  # the result that "what would change this" speaks of; else the first number
    assumptions: tuple[str, ...] = ()
    cannot_see: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    cases: tuple[Mapping[str, Any], ...] = ()  # worked cases for readers without script
    sources: tuple[str, ...] = ()  # keys of docs/sources.json
    step: Callable[..., Any] | None = None  # asked by the page that puts one question a screen
    screens: tuple[Screen, ...] = ()  # every input on one of them; none: all inputs at once

    def input(self, name: str) -> Input:
        for item in self.inputs:
            if item.name == name:
                return item
        raise BadInput(name, "is not an input of " + self.id)

    def run(self, values: Mapping[str, Any]) -> Any:
        """Check `values` against the declaration, fill in defaults, and answer.

        Raises BadInput for a name that is unknown, missing, or outside its bounds, and whatever the
        function raises itself (BadInput for contradictions, Refused).
        """
        return self.function(**self.complete(values))

    def complete(self, values: Mapping[str, Any]) -> dict[str, Any]:
        """All arguments of the function: given values checked, defaults filled in."""
        for name in values:
            self.input(name)
        return {item.name: checked(item, values.get(item.name)) for item in self.inputs}


def checked(item: Input, value: Any) -> Any:
    """The value the function takes for this input, or BadInput with the sentence to show."""
    if value is None:
        if item.default is not None or item.optional:
            return item.default if isinstance(item, Choice) else _default(item)
        raise BadInput(item.name, "is missing" + (": " + item.hint if item.hint else ""))
    if isinstance(item, Number):
        return _number(item, value)
    if isinstance(item, Choice):
        allowed = [option.value for option in item.options]
        if value not in allowed:
            raise BadInput(item.name, "must be one of " + ", ".join(allowed))
        return value
    if len(value) < item.least or len(value) > item.most:
        tail = f"must hold {item.least} to {item.most} values"
        raise BadInput(item.name, tail)
    if isinstance(item, Numbers):
        return [_in_bounds(item, number) for number in value]
    for word in value:
        known = not item.choices or word in [choice for choice, _ in item.choices]
        if not known or not re.fullmatch(item.pattern, word):
            raise BadInput(item.name, f"does not know '{word}'")
    return list(value)


def _default(item: Input) -> float | int | None:
    if not isinstance(item, Number) or item.default is None:
        return None
    return int(item.default) if item.whole else float(item.default)


def _number(item: Number, value: float) -> float | int:
    value = _in_bounds(item, value)
    if item.whole:
        if value != int(value):
            raise BadInput(item.name, "must be a whole number")
        return int(value)
    return value


def _in_bounds(item: Number | Numbers, value: float) -> float:
    unit = UNITS[item.unit][0]
    factor = 100.0 if item.unit == "share" else 1.0
    if not value >= item.low:
        raise BadInput(item.name, f"must be {item.low * factor:.12g} {unit}".rstrip() + " or more")
    if not value <= item.high:
        raise BadInput(item.name, f"must be {item.high * factor:.12g} {unit}".rstrip() + " or less")
    return float(value)
