"""Pictures: well formed, inside their frame, legible at any inputs, and alike on every engine."""

from __future__ import annotations

import json
import random
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from html import escape
from math import isfinite, log10
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import js
from engines import light, native
from saltline.declare import OTHER_UNITS, Choice, Form, Number, Numbers
from saltline.errors import Refused
from saltline.forms import all_forms
from saltline.pictures.drawing import at, plain, step_for, ticks
from saltline.pictures.pots import GRAINS, cut_pots
from saltline_pages import shown
from saltline_pages.calculator import declaration
from test_shown import values_of

PICTURED = {name: form for name, form in all_forms().items() if form.picture is not None}
BRINE_MS_CM = 250.0  # no water conducts more: beyond it numbers may be too long for their place
EVENTS = ("drip:1.8", "soak:400:10:0.6", "soak:400:10", "pour:150:0.9", "rest:1", "rest:12")
NUMBER = re.compile(r"-?[0-9.]+(?:e-?[0-9]+)?")


def tidy(value: Any) -> Any:
    """A number as people type it, to three figures."""
    if isinstance(value, list):
        return [tidy(part) for part in value]
    return float(f"{value:.3g}") if isinstance(value, float) else value


def drawn(form: Form, given: dict[str, Any]) -> tuple[dict[str, Any], dict[str, Any], str] | None:
    """Inputs, results and the picture's template; None where there is no answer."""
    try:
        inputs = form.complete(given)
        answer = form.function(**inputs)
    except (Refused, ValueError):
        return None
    values = {item.name: getattr(answer, item.name) for item in form.results}
    assert form.picture is not None
    return inputs, values, form.picture(inputs, answer)


def sampled(form: Form, count: int) -> Iterator[dict[str, Any]]:
    """The example, the cases, and inputs from all over the bounds, their ends often."""
    yield dict(form.example)
    yield from ({**form.example, **case} for case in form.cases)
    chance = random.Random(form.id)
    for _ in range(count):
        inputs = {item.name: tidy(_one(item, chance)) for item in form.inputs}
        kept = [name for name in form.example if chance.random() < 0.3]
        yield {**inputs, **{name: form.example[name] for name in kept}}


def _one(item: Any, chance: random.Random) -> Any:
    if isinstance(item, Choice):
        return chance.choice(item.options).value
    if isinstance(item, Number):
        if item.optional and chance.random() < 0.4:
            return None
        value = _number(item, chance)
        return int(value) if item.whole else value
    if isinstance(item, Numbers):
        top = chance.choice((1.0, 3.0, 2000.0, item.high))
        return [chance.uniform(item.low, top) for _ in range(max(item.least, 6))]
    if item.choices:
        return [chance.choice(item.choices)[0]]
    return [chance.choice(EVENTS) for _ in range(chance.randint(1, 12))]


def _number(item: Number, chance: random.Random) -> float:
    if chance.random() < 0.2:
        return float(chance.choice((item.low, item.high)))
    if item.high > 100.0 * max(item.low, 0.01):
        return float(10.0 ** chance.uniform(log10(max(item.low, 0.01)), log10(item.high)))
    return chance.uniform(item.low, item.high)


def frame(svg: ET.Element) -> tuple[float, float]:
    _, _, width, height = (float(part) for part in svg.attrib["viewBox"].split())
    return width, height


def shapes(svg: ET.Element) -> Iterator[ET.Element]:
    """What is drawn, without the patterns' own insides."""
    for child in svg:
        if not child.tag.endswith("defs"):
            yield child


def check_geometry(text: str) -> None:
    svg = ET.fromstring(text)
    width, height = frame(svg)
    assert 300.0 <= width <= 340.0
    assert svg.attrib["role"] == "img"
    assert svg.attrib["aria-label"].endswith(".")
    patterns = {each.attrib["id"] for each in svg.iter() if each.tag.endswith("pattern")}
    for shape in shapes(svg):
        assert "style" not in shape.attrib
        if "fill" in shape.attrib:
            assert shape.attrib["fill"].removeprefix("url(#").removesuffix(")") in patterns
        numbers = [float(n) for n in NUMBER.findall(shape.attrib.get("d", ""))]
        points = list(zip(numbers[::2], numbers[1::2], strict=True))
        if shape.tag.endswith("circle"):
            x, y, r = (float(shape.attrib[name]) for name in ("cx", "cy", "r"))
            points = [(x - r, y - r), (x + r, y + r)]
        elif shape.tag.endswith("text"):
            points = [(float(shape.attrib["x"]), float(shape.attrib["y"]))]
        assert points
        for x, y in points:
            assert isfinite(x)
            assert 0.0 <= x <= width, (x, text)
            assert 0.0 <= y <= height, (y, text)


def wide(text: str, strong: bool) -> float:
    """Width of 14 px words in a wide face; most faces are narrower."""
    total = 0.0
    for sign in text:
        if sign in " \u00a0ijl.,:;'/()":
            total += 0.34
        elif sign in "tfr":
            total += 0.46
        elif sign in "mwMW%▲":
            total += 0.92
        else:
            total += 0.64 if sign.isdigit() or not sign.isupper() else 0.72
    return 14.0 * total * (1.09 if strong else 1.0)


def check_words(text: str) -> None:
    """No words are cut off at the frame and none stand on others."""
    svg = ET.fromstring(text)
    width, height = frame(svg)
    boxes = []
    for each in shapes(svg):
        if not each.tag.endswith("text") or not each.text:
            continue
        length = wide(each.text, each.attrib.get("class") == "strong")
        x, y = float(each.attrib["x"]), float(each.attrib["y"])
        x -= {"start": 0.0, "middle": 0.5, "end": 1.0}[each.attrib.get("text-anchor", "start")] * (
            length
        )
        assert x >= 0.0, (each.text, text)
        assert x + length <= width, (each.text, text)
        assert 10.0 <= y <= height - 3.0, (each.text, text)
        boxes.append((x, x + length, y - 10.0, y + 3.0, each.text))
    for at_one, (a, b, c, d, one) in enumerate(boxes):
        for e, f, g, h, other in boxes[at_one + 1 :]:
            assert not (a < f and e < b and c < h and g < d), (one, other, text)


@pytest.mark.parametrize("name", list(PICTURED))
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(data=st.data())
def test_any_picture_is_well_formed_and_inside_its_frame(name: str, data: st.DataObject) -> None:
    form = PICTURED[name]
    names = [item.name for item in form.inputs]
    usual = form.complete(form.example)
    changed = data.draw(st.sets(st.sampled_from(names)))  # the rest stays as in the example
    inputs = {**usual, **{k: v for k, v in data.draw(values_of(form)).items() if k in changed}}
    found = drawn(form, tidy_all(inputs))
    assume(found is not None)
    assert found is not None
    inputs, values, template = found
    text = shown.fill(template, form, inputs, values, escape)
    assert "{" not in text
    check_geometry(text)


def tidy_all(inputs: dict[str, Any]) -> dict[str, Any]:
    return {name: tidy(value) for name, value in inputs.items()}


def test_no_words_are_cut_off_or_stand_on_others_in_any_unit() -> None:
    questions, names = [], []
    ways = max(len(others) for others in OTHER_UNITS.values()) + 1
    for name, form in PICTURED.items():
        for values_given in sampled(form, 40):
            found = drawn(form, values_given)
            if found is None or too_strong(found[1]):
                continue
            inputs, values, template = found
            for way in range(ways):
                questions.append([declaration(form), inputs, values, template, way])
                names.append(name)
    body = """
      const m = await load('shown.js');
      const xml = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.codePointAt(0)};`);
      return data.map(([form, inputs, values, template, way]) => {
        for (const key of Object.keys(form.units)) m.choose(key, way);
        return m.fill(template, form, inputs, values, xml);
      });"""
    texts = js.run(body, questions)
    assert len(texts) > 40 * len(PICTURED)
    for text in texts:
        check_words(text)


def too_strong(values: dict[str, Any]) -> bool:
    return any(
        "ms_cm" in name and isinstance(value, float) and value > BRINE_MS_CM
        for name, value in values.items()
    )


def test_pictures_and_their_tables_are_alike_on_the_light_engine() -> None:
    questions = []
    for form in PICTURED.values():
        for values_given in list(sampled(form, 2))[-3:]:
            found = drawn(form, values_given)
            if found is None:
                continue
            asked = {"function": form.function, "picture": form.picture, "table": form.table}
            paths = {
                part: f"{made.__module__}.{made.__name__}" for part, made in asked.items() if made
            }
            questions.append({**paths, "arguments": found[0]})
    assert len(questions) > 2 * len(PICTURED)
    for question, ours, theirs in zip(questions, native(questions), light(questions), strict=True):
        for part in ("picture", "table"):
            assert ours.get(part) == theirs.get(part), (question, theirs)


@pytest.mark.parametrize("name", [name for name, form in PICTURED.items() if form.table])
def test_a_table_holds_heads_and_rows_of_one_width(name: str) -> None:
    form = PICTURED[name]
    assert form.table is not None
    for values_given in sampled(form, 4):
        found = drawn(form, values_given)
        if found is None:
            continue
        inputs, values, _ = found
        rows = form.table(inputs, form.function(**inputs))
        assert 2 <= len(rows) <= 16
        assert {len(row) for row in rows} == {len(rows[0])}
        for row in rows:
            for cell in row:
                assert "{" not in shown.fill(cell, form, inputs, values)


@pytest.mark.parametrize("name", list(PICTURED))
def test_drawn_numbers_have_units_that_the_page_knows(name: str) -> None:
    form = PICTURED[name]
    found = drawn(form, dict(form.example))
    assert found is not None
    rows = form.table(found[0], form.function(**found[0])) if form.table else ()
    for text in (found[2], *(cell for row in rows for cell in row)):
        for _, unit in shown.DRAWN.findall(text):
            assert unit in {"", *declaration(form)["units"]}


def test_each_picture_owns_its_patterns() -> None:
    seen: dict[str, str] = {}
    for name, form in PICTURED.items():
        found = drawn(form, dict(form.example))
        assert found is not None
        for pattern in re.findall(r'<pattern id="([^"]+)"', found[2]):
            assert seen.setdefault(pattern, name) == name


def test_classes_have_their_style() -> None:
    css = (js.SCRIPTS.parent / "css" / "pictures.css").read_text(encoding="utf-8")
    for form in PICTURED.values():
        found = drawn(form, dict(form.example))
        assert found is not None
        for names in re.findall(r'class="([^"]+)"', found[2]):
            for name in names.split():
                assert f".{name} " in css


def test_drawn_numbers_follow_the_unit_on_both_halves() -> None:
    form = all_forms()["build-up"]
    template = "{0.5:ms_cm} to {1.25:ms_cm} {:ms_cm}, {0.5:share} {:share}"
    assert shown.fill(template, form, {}, {}) == "0.5 to 1.25 mS/cm, 50 %"
    body = """
      const m = await load('shown.js');
      const plain = m.fill(data.template, data.form, {}, {});
      m.choose('ms_cm', 3);
      return [plain, m.fill(data.template, data.form, {}, {})];"""
    told = js.run(body, {"form": declaration(form), "template": template})
    assert told[0] == "0.5 to 1.25 mS/cm, 50 %"
    assert told[1] == "320 to 800 ppm (640), 50 %"


@given(st.floats(0.0, 1000.0))
def test_coordinates_are_rounded_to_tenths(value: float) -> None:
    assert abs(float(at(value)) - value) <= 0.05 + 1e-9


@given(st.floats(1e-6, 1e9), st.integers(2, 6))
def test_ticks_reach_the_top_in_few_round_steps(top: float, most: int) -> None:
    found = ticks(top, most)
    assert found[-1] >= top * (1.0 - 1e-8)
    assert 2 <= len(found) <= most + 1
    step = step_for(top, most)
    assert float(f"{step:.0e}") == pytest.approx(step, rel=1e-9)
    for mark in found:
        assert float(plain(mark)) == pytest.approx(mark, rel=1e-9)
        assert json.loads(plain(mark)) >= 0.0


def test_a_pot_cut_open_shows_sure_and_possible_grains() -> None:
    drawn = cut_pots([(1.0, 1.0), (0.25, 0.5)], ["start", "soak 1"])
    pots, legend = 2, 1
    assert drawn.count('class="full-salt"') == GRAINS + GRAINS // 4 + legend
    assert drawn.count('class="salt"') == GRAINS // 4 + legend
    assert drawn.count('class="ink"') == pots
    assert ">25–50 %<" in drawn
