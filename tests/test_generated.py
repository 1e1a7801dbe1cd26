"""Derived files stand as they would be made, and the schemas say what the declarations say."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline.declare import Number
from saltline.errors import BadInput
from saltline.forms import all_forms
from saltline_pages import generated
from saltline_pages.schema import schema
from test_shown import values_of


def test_nothing_is_out_of_date() -> None:
    assert not generated.stale(), f"run {generated.REPAIR}"


def test_a_changed_or_left_over_file_is_found() -> None:
    left_over = generated.DOCS / "schemas" / "no-such-calculator.json"
    left_over.write_text("{}", encoding="utf-8")
    try:
        assert generated.stale() == [left_over]
    finally:
        left_over.unlink()


@pytest.mark.parametrize("name", list(all_forms()))
def test_schema_holds_the_bounds(name: str) -> None:
    form = all_forms()[name]
    made = json.loads(json.dumps(schema(form)))
    for item in form.inputs:
        if isinstance(item, Number):
            found = made["properties"][item.name]
            assert (found["minimum"], found["maximum"]) == (item.low, item.high)
    needed = {i.name for i in form.inputs if i.default is None and not i.optional}
    assert set(made["required"]) == needed <= set(form.example)


@settings(max_examples=5, deadline=None)
@given(st.data())
def test_any_value_in_bounds_is_taken_and_one_beyond_is_not(data: st.DataObject) -> None:
    for form in all_forms().values():
        inputs = data.draw(values_of(form))
        for item in form.inputs:
            if isinstance(item, Number):
                for beyond in (item.low - 1, item.high + 1):
                    with pytest.raises(BadInput, match=f"^{item.name} must be "):
                        form.complete({**inputs, item.name: beyond})
        form.complete(inputs)
