"""Numbers and sentences as a reader sees them: the Python half of docs/assets/js/shown.js.

Both halves are held together by tests/vectors/shown.json.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from saltline.declare import UNITS, Choice, Form, Input, Number, Numbers, Result, Words

NO_BREAK = "\u00a0"
PLACEHOLDER = re.compile(r"\{(in:)?([a-z0-9_]+)(?:\.\.([a-z0-9_]+))?\}")
# A number that only a drawing has, and its unit's sign: {0.5:ms_cm} {:ms_cm}.
DRAWN = re.compile(r"\{([0-9.]*):([a-z0-9_]*)\}")
# A figure that a sentence holds, and its unit: they stay in one line.
LOOSE = re.compile(r"(\d) (?=[°%]|(?:mS|ppm|mm|cm|mL|L|g|mg|mol|min|minutes|h|hours|days)\b)")


def bound(text: str) -> str:
    """A sentence whose figures stay with their units."""
    return LOOSE.sub(rf"\1{NO_BREAK}", text)


def number(value: float, digits: int) -> str:
    """A number with `digits` significant digits, halves rounded away from zero, no exponent.

    Zeros after the point that carry nothing are dropped; five figures and more are grouped.
    """
    if value == 0:
        return "0"
    exact = Decimal(value)
    step = Decimal(1).scaleb(exact.adjusted() - digits + 1)
    text = f"{exact.quantize(step, ROUND_HALF_UP) if step < 1 else _to(exact, step):f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    whole, point, rest = text.lstrip("-").partition(".")
    if len(whole) > 4:
        whole = re.sub(r"(?<=\d)(?=(\d{3})+$)", NO_BREAK, whole)
    return ("−" if value < 0 else "") + whole + point + rest


def _to(exact: Decimal, step: Decimal) -> Decimal:
    return (exact / step).quantize(Decimal(1), ROUND_HALF_UP) * step


def with_unit(text: str, unit: str) -> str:
    """A shown number with its unit behind it."""
    sign = UNITS[unit][0]
    return text + (sign if unit == "deg" else NO_BREAK + sign if sign else "")


def scaled(value: float, unit: str) -> float:
    """The value in the unit it is shown in: shares as percent."""
    return value * 100 if unit == "share" else value


def result(item: Result, value: Any) -> str:
    """One result with its unit; words as they are; a dash for what does not exist."""
    if value is None:
        return "–"
    if isinstance(value, list | tuple):
        return ", ".join(result(item, part) for part in value)
    if isinstance(value, str):
        return labelled(item, value)
    return with_unit(number(scaled(float(value), item.unit), item.digits), item.unit)


def labelled(item: Result, value: str) -> str:
    """Words as they are; ids that have labels (one, or a comma list) as their labels."""
    labels = dict(item.labels)
    return ", ".join(labels.get(one, one) for one in value.split(",")) if labels else value


def unit_of(item: Number | Numbers, form: Form, inputs: Mapping[str, Any]) -> str:
    """How the unit of a numeric input is written; some follow another input (a pen's scale)."""
    if isinstance(item, Number) and item.unit_from:
        chooser = form.input(item.unit_from)
        assert isinstance(chooser, Choice)
        chosen = inputs.get(chooser.name)
        return next((o.label for o in chooser.options if o.value == chosen), "")
    return UNITS[item.unit][0]


def entry(item: Input, value: Any) -> str:
    """An input's value as it stands in its field, without the unit."""
    if value is None:
        return ""
    if isinstance(value, list | tuple):
        return ", ".join(entry(item, part) for part in value)
    if isinstance(item, Number | Numbers):
        exact = float(f"{scaled(float(value), item.unit):.15g}")
        return f"{Decimal(repr(exact)).normalize():f}"
    return str(value)


def given(item: Input, form: Form, inputs: Mapping[str, Any]) -> str:
    """An input's value in a sentence, with its unit."""
    value = inputs.get(item.name)
    if isinstance(item, Choice):
        return next((option.label for option in item.options if option.value == value), "–")
    if value is None:
        return "–"
    if isinstance(item, Words) and item.choices:
        return ", ".join(label for word, label in item.choices if word in value) or "–"
    return measure(item, form, inputs, value)


def measure(item: Input, form: Form, inputs: Mapping[str, Any], value: Any) -> str:
    """Any value of an input, with the unit that the input has here."""
    text = entry(item, value)
    if isinstance(item, Number | Numbers):
        sign = unit_of(item, form, inputs)
        return text + (NO_BREAK + sign if sign else "")
    return text


def range_of(low: Result, a: Any, b: Any) -> str:
    """A range of two results: one number where both read the same."""
    if a is None or b is None:
        return f"{result(low, a)} to {result(low, b)}"
    first, last = (number(scaled(float(v), low.unit), low.digits) for v in (a, b))
    return with_unit(first if first == last else f"{first} to {last}", low.unit)


def fill(
    template: str,
    form: Form,
    inputs: Mapping[str, Any],
    values: Mapping[str, Any],
    escape: Callable[[str], str] = str,
) -> str:
    """A sentence or drawing with its placeholders filled in."""
    results = {item.name: item for item in form.results}

    def one(match: re.Match[str]) -> str:
        is_input, name, last = match.groups()
        if is_input:
            return escape(given(form.input(name), form, inputs))
        if last:
            return escape(range_of(results[name], values[name], values[last]))
        return escape(result(results[name], values[name]))

    def drawn(match: re.Match[str]) -> str:
        value, unit = match.groups()
        return escape(number(scaled(float(value), unit), 3) if value else UNITS[unit][0])

    return PLACEHOLDER.sub(one, DRAWN.sub(drawn, template))
