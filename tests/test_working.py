"""The working of every answer: equations that a browser can set, and lines with the numbers in."""

from __future__ import annotations

import re

import pytest
from latex2mathml.converter import convert

from saltline.errors import Refused
from saltline.forms import all_forms
from saltline_pages import shown

FORMS = all_forms()
RULES = {"damage-key", "stage-action"}  # tables of evidence, no equation


@pytest.mark.parametrize("name", sorted(FORMS.keys() - RULES))
def test_every_calculation_shows_its_equation_and_its_numbers(name: str) -> None:
    assert FORMS[name].equation
    assert FORMS[name].working


@pytest.mark.parametrize("name", sorted(FORMS))
def test_equations_become_mathml(name: str) -> None:
    for text in FORMS[name].equation:
        made = convert(text, display="block")
        assert made.startswith("<math")
        assert "\\" not in made, f"{text} holds a command that is not known"


@pytest.mark.parametrize("name", sorted(FORMS))
def test_lines_are_filled_in_for_the_example_and_every_case(name: str) -> None:
    form = FORMS[name]
    for case in ({}, *form.cases):
        inputs = form.complete({**form.example, **case})
        try:
            answer = form.function(**inputs)
        except Refused:
            continue
        values = {item.name: getattr(answer, item.name) for item in form.results}
        for line in form.working:
            said = shown.fill(line, form, inputs, values)
            assert "{" not in said
            assert "None" not in said
            assert not re.search(r"\d - \d| x \d", said), "− and × are signs of their own"
