"""The ways of writing a unit that a field offers, beside pint."""

from __future__ import annotations

import pint
import pytest

import js
from saltline.declare import OTHER_UNITS, UNITS, Form, Number
from saltline.forms import all_forms
from saltline_pages.calculator import declaration

PINT = {
    "mS/cm": "millisiemens / centimeter",
    "µS/cm": "microsiemens / centimeter",
    "mL": "milliliter",
    "L": "liter",
    "US fl oz": "US_fluid_ounce",
    "US gal": "US_liquid_gallon",
    "mm": "millimeter",
    "cm": "centimeter",
    "in": "inch",
    "°C": "degC",
    "°F": "degF",
    "g": "gram",
    "oz": "ounce",
}
VALUES = (0.5, 12.0, 37.5)
WAYS = [(key, at) for key, others in OTHER_UNITS.items() for at in range(len(others))]


def expected(key: str, sign: str, value: float) -> float:
    """The value in the other unit; a ppm scale is a number by which mS/cm are multiplied."""
    if sign.startswith("ppm"):
        return value * float(sign.removeprefix("ppm (").removesuffix(")"))
    quantity = pint.UnitRegistry().Quantity(value, PINT[UNITS[key][0]])
    return float(quantity.to(PINT[sign]).magnitude)


def example(key: str) -> tuple[Form, Number]:
    for form in all_forms().values():
        for item in form.inputs:
            if isinstance(item, Number) and item.unit == key and not item.unit_from:
                return form, item
    raise AssertionError(f"no field in {key}")


@pytest.mark.parametrize(("key", "at"), WAYS)
def test_a_unit_is_written_as_pint_does_and_read_back(key: str, at: int) -> None:
    sign = OTHER_UNITS[key][at][0]
    form, item = example(key)
    body = """
      const shown = await load('shown.js'), read = await load('read.js');
      const [form, name, key, at, values] = data;
      const item = { ...form.inputs.find((each) => each.name === name), low: -1e9, high: 1e9 };
      shown.choose(key, at);
      return values.map((value) => {
        const text = shown.entry(form, item, value);
        return [Number(text), read.field(item, text, shown.unitOf(form, item, {})).value];
      });"""
    found = js.run(body, [declaration(form), item.name, key, at + 1, VALUES])
    for value, (written, back) in zip(VALUES, found, strict=True):
        assert written == pytest.approx(expected(key, sign, value), rel=5e-5)  # five figures
        assert back == pytest.approx(value, rel=5e-5)
