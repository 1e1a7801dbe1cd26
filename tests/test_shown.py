"""What a reader sees and types: the Python and the JavaScript halves agree on shared vectors."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

import js
from saltline.declare import Choice, Form, Number, Numbers
from saltline.errors import Refused
from saltline.forms import all_forms
from saltline_pages import links, shown
from saltline_pages.calculator import declaration

VECTORS = Path(__file__).parent / "vectors"
SHOWN = json.loads((VECTORS / "shown.json").read_text(encoding="utf-8"))
TYPED = json.loads((VECTORS / "typed.json").read_text(encoding="utf-8"))
FORMS = all_forms()


def test_numbers_are_shown_alike() -> None:
    for value, digits, text in SHOWN["number"]:
        assert shown.number(value, digits) == text
    body = "const m = await load('shown.js'); return data.map(([v, d]) => m.number(v, d));"
    assert js.run(body, SHOWN["number"]) == [text for _, _, text in SHOWN["number"]]


@settings(max_examples=20, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.floats(-1e12, 1e12, allow_nan=False).filter(lambda v: v == 0 or abs(v) > 1e-9),
            st.integers(1, 6),
        ),
        min_size=60,
        max_size=60,
    )
)
def test_any_number_is_shown_alike(cases: list[tuple[float, int]]) -> None:
    body = "const m = await load('shown.js'); return data.map(([v, d]) => m.number(v, d));"
    assert js.run(body, cases) == [shown.number(value, digits) for value, digits in cases]


def test_links_are_written_alike() -> None:
    for name, inputs, text in SHOWN["links"]:
        assert links.fragment(FORMS[name], inputs) == text
    body = "const m = await load('link.js'); return data.map(([form, v]) => m.fragment(form, v));"
    cases = [(declaration(FORMS[name]), inputs) for name, inputs, _ in SHOWN["links"]]
    assert js.run(body, cases) == [text for _, _, text in SHOWN["links"]]


EVENTS = st.one_of(
    st.floats(0.0, 30.0).map(lambda reading: f"drip:{reading:.3f}"),
    st.tuples(st.integers(1, 5000), st.integers(1, 60), st.floats(0.0, 30.0)).map(
        lambda soak: f"soak:{soak[0]}:{soak[1]}:{soak[2]:.3f}"
    ),
    st.integers(1, 5000).map(lambda ml: f"pour:{ml}"),
    st.integers(0, 72).map(lambda hours: f"rest:{hours}"),
)


def values_of(form: Form) -> st.SearchStrategy[dict[str, Any]]:
    """Any inputs within the declared bounds of a calculator."""

    def of(item: Any) -> st.SearchStrategy[Any]:
        if isinstance(item, Choice):
            return st.sampled_from([option.value for option in item.options])
        if isinstance(item, Number):
            bounds = {"min_value": item.low, "max_value": item.high}
            whole = st.integers(int(item.low), int(item.high))
            made: st.SearchStrategy[Any] = whole if item.whole else st.floats(**bounds)
            return st.none() | made if item.optional else made
        if isinstance(item, Numbers):
            number = st.floats(item.low, item.high)
            return st.lists(number, min_size=item.least, max_size=min(item.most, item.least + 5))
        words = st.sampled_from([value for value, _ in item.choices]) if item.choices else EVENTS
        return st.lists(words, min_size=item.least, max_size=item.least + 4)

    return st.fixed_dictionaries({item.name: of(item) for item in form.inputs})


@settings(max_examples=10, deadline=None)
@given(st.data())
def test_links_round_trip_for_every_calculator(data: st.DataObject) -> None:
    cases = []
    for form in FORMS.values():
        inputs = data.draw(values_of(form))
        cases.append((declaration(form), inputs, links.fragment(form, inputs)))
    body = """
      const [link, read] = [await load('link.js'), await load('read.js')];
      return data.map(([form, , text]) => {
        const found = link.parse(text);
        const back = {};
        for (const item of form.inputs) {
          const typed = found.values[item.name];
          if (typed === undefined) { back[item.name] = null; continue; }
          const text = item.kind === 'numbers' ? typed.replaceAll(',', ' ') : typed;
          back[item.name] = read.field(item, text).value ?? 'unread: ' + typed;
        }
        return { id: found.id, version: found.version, dropped: found.dropped, back };
      });"""
    for (form, inputs, text), found in zip(cases, js.run(body, cases), strict=True):
        assert found["id"] == form["id"]
        assert found["version"] == form["version"]
        assert not found["dropped"]
        for name, value in inputs.items():
            same = found["back"][name] == value
            assert same or close(found["back"][name], value), (text, name, value, found["back"])


def close(a: Any, b: Any) -> bool:
    if isinstance(a, list) and isinstance(b, list):
        return len(a) == len(b) and all(close(x, y) for x, y in zip(a, b, strict=True))
    number = isinstance(a, int | float) and isinstance(b, int | float)
    return number and abs(a - b) <= 1e-12 * abs(b)


def test_typed_text_is_read() -> None:
    body = """
      const m = await load('read.js');
      return data.map(([text, unit]) => {
        const found = m.number(text, [unit]);
        delete found.sign;
        return found;
      });"""
    for (text, unit, expected), found in zip(TYPED, js.run(body, TYPED), strict=True):
        if isinstance(expected, str):
            assert found == {"tail": expected}, text
        elif expected is None:
            assert found == {"tail": None}, (text, unit)
        else:
            assert found == {"value": expected}, (text, unit)


def test_figures_stay_with_their_units() -> None:
    cases = {
        "5 °C warmer, 20 % and 0.3 mS/cm": "5\u00a0°C warmer, 20\u00a0% and 0.3\u00a0mS/cm",
        "6.4 to 12.7 cm in 24 h": "6.4 to 12.7\u00a0cm in 24\u00a0h",
        "1 hour, 3 pours, a 500 scale, ppm": "1 hour, 3 pours, a 500 scale, ppm",
        "2 Ls, 3 gallons and 4 highest": "2 Ls, 3 gallons and 4 highest",
    }
    assert [shown.bound(text) for text in cases] == list(cases.values())
    body = "const m = await load('shown.js'); return data.map(m.bound);"
    assert js.run(body, list(cases)) == list(cases.values())


def test_what_is_said_of_a_field_names_it_and_shows_a_pattern() -> None:
    number = {"name": "x", "label": "Size", "kind": "number", "unit": "mm", "low": 1, "high": 30}
    pots = number | {"label": "Pots", "unit": "pots", "whole": True}
    asked = number | {"label": "How sure?"}
    many = number | {"label": "Readings", "kind": "numbers", "least": 1, "most": 9}
    cases = {
        "Size must be a number, like 8": (number | {"like": 8}, "wide"),
        "Size must be a number, like 1.5": (number, "wide"),
        "Size must be 30\u00a0mm or less": (number, "31"),
        "Pots must be 1 or more": (pots, "0"),
        "How sure? It must be a number, like 1.5": (asked, "very"),
        "Readings must be a list of numbers: “1.x” is not one": (many, "1.2, 1.x, 1.4"),
        "Enter the size": (number, ""),
        "Answer: How sure?": (asked, ""),
    }
    body = """
      const m = await load('read.js');
      return data.map(([item, text]) => m.sentence(item, m.field(item, text,
        { ways: [[item.unit, 1, 0]], at: 0 })));"""
    assert js.run(body, list(cases.values())) == list(cases)


def test_a_typed_unit_counts_and_lists_are_parted() -> None:
    ec = {"name": "x", "label": "X", "kind": "number", "unit": "ms_cm", "low": 0, "high": 20}
    list_ = ec | {"kind": "numbers", "least": 1, "most": 9}
    ways = [["mS/cm", 1, 0], ["µS/cm", 1000, 0], ["ppm (500)", 500, 0], ["ppm (700)", 700, 0]]
    cases = [
        (ec, "500 uS", 0, 0.5),
        (ec, "0,5 mS/cm", 1, 0.5),
        (ec, "350 ppm", 3, 0.5),
        (ec, "250 ppm (500)", 0, 0.5),
        (ec, "500", 1, 0.5),
        (ec, "30 mS/cm", 1, "must be 20000\u00a0µS/cm or less"),
        (list_, "0.9, 1.1 1.4", 0, [0.9, 1.1, 1.4]),
        (list_, "0,9 1,1; 1,4", 0, [0.9, 1.1, 1.4]),
        (list_, "0,9, 1,1, 1,4", 0, [0.9, 1.1, 1.4]),
        (list_, "1,2,3", 0, [1, 2, 3]),
        (list_, "0,9", 0, [0.9]),
    ]
    body = """
      const m = await load('read.js');
      return data.cases.map(([item, text, at]) => m.field(item, text, { ways: data.ways, at }));"""
    found = js.run(body, {"cases": cases, "ways": ways})
    for (_, text, _, expected), got in zip(cases, found, strict=True):
        key = "tail" if isinstance(expected, str) else "value"
        assert got == {key: expected}, text


@settings(max_examples=15, deadline=None)
@given(st.lists(st.text(max_size=30), min_size=80, max_size=80))
def test_any_typed_text_gives_a_value_or_a_sentence(texts: list[str]) -> None:
    body = """
      const m = await load('read.js');
      return data.texts.map((text, at) => {
        const form = data.forms[at % data.forms.length];
        return form.inputs.map((item) => {
          const found = m.field(item, text, { ways: form.units[item.unit] ?? [['', 1, 0]], at: 0 });
          return 'value' in found ? true : m.sentence(item, found);
        });
      });"""
    forms = [declaration(form) for form in FORMS.values()]
    banned = ("undefined", "null", "NaN", "please", "sorry", "valid", "oops")
    for row in js.run(body, {"texts": texts, "forms": forms}):
        for outcome in row:
            # What the reader typed may stand in the sentence, between its marks.
            said = outcome is True or re.sub("“.*”", "", outcome, flags=re.S)
            assert said is True or (said and not any(word in said for word in banned))


@settings(max_examples=10, deadline=None)
@given(st.lists(st.text(max_size=80), min_size=400, max_size=400))
def test_any_fragment_is_read_without_a_throw(texts: list[str]) -> None:
    heads = ["", "#meter-reading=1;", "#full-mixing=1;reading=", "#meter-reading=1;reading=~"]
    cases = [heads[at % len(heads)] + text for at, text in enumerate(texts)]
    body = "const m = await load('link.js'); return data.map((t) => m.parse(t));"
    for found in js.run(body, cases):
        assert found is None or set(found) == {"id", "version", "values", "dropped"}


def test_every_example_and_case_is_answered() -> None:
    for form in FORMS.values():
        for case in ({}, *form.cases):
            inputs = form.complete({**form.example, **case})
            try:
                answer = form.function(**inputs)
            except Refused:
                continue
            values = {item.name: getattr(answer, item.name) for item in form.results}
            for text in form.words(inputs, answer):
                assert "{" not in shown.fill(text, form, inputs, values)
