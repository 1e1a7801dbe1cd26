"""Whatever is put in within the declared bounds: an answer in order or a reason, on each engine."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engines import light, native
from saltline.declare import Form, Number
from saltline.errors import BadInput, Refused
from saltline.forms import all_forms
from test_pictures import sampled
from test_published import agree
from test_shown import values_of

FORMS = all_forms()
# What may be below zero; all else may not.
SIGNED = ("ratio", "off_percent", "charge_error_percent", "slope_per_week", "margin_mm")
ROUNDING = 1e-12  # relative: ends that are the same number may part by so much


def near_the_example(form: Form) -> st.SearchStrategy[dict[str, Any]]:
    """Some inputs drawn from all over their bounds, the others as in the example."""
    usual = form.complete(form.example)
    names = st.sets(st.sampled_from(list(usual)), min_size=1)
    return st.tuples(values_of(form), names).map(
        lambda drawn: {**usual, **{name: drawn[0][name] for name in drawn[1]}}
    )


def ranges(results: dict[str, Any]) -> Iterator[tuple[str, list[float]]]:
    """Low, middle where there is one, and high of every range; of lists, place by place."""
    for name, low in results.items():
        plain = name.removesuffix("_low")
        if not name.endswith("_low"):
            continue
        ends = [low, results.get(plain), results.get(plain + "_high")]
        there = [end for end in ends if end is not None]
        if isinstance(low, list | tuple):
            for at in range(len(low)):
                yield name, [end[at] for end in there]
        else:
            yield name, there


def check_reason(reason: BadInput | Refused, inputs: dict[str, Any]) -> None:
    if isinstance(reason, BadInput):
        assert str(reason).split(" ", maxsplit=1)[0] in inputs
    else:
        assert all(sentence.endswith(".") for sentence in reason.args)


def check(form: Form, chosen: dict[str, Any]) -> bool:
    """Whether there is an answer; what is wrong with it is an error."""
    inputs = form.complete(chosen)
    try:
        found = form.function(**inputs)
    except (BadInput, Refused) as reason:
        check_reason(reason, inputs)
        return False
    results = {item.name: getattr(found, item.name) for item in form.results}
    json.dumps(results, allow_nan=False)
    for item in form.results:
        value = results[item.name]
        kinds: dict[str, Any] = {
            "number": (int, float, list, tuple),
            "words": str,
            "list": (list, tuple),
        }
        assert value is None or isinstance(value, kinds[item.kind]), item.name
        if isinstance(value, float | int) and not item.name.startswith(SIGNED):
            assert 0.0 <= value <= (1.0 + ROUNDING if item.unit == "share" else value), item.name
    for name, ends in ranges(results):
        for first, last in pairwise(ends):
            slack = ROUNDING * max(abs(first), abs(last))
            assert first <= last + slack, (name, ends)
    sentences = [*form.words(inputs, found), *found.warnings]
    assert len(sentences) == 3 + len(found.warnings)
    for sentence in sentences:
        assert not re.search(r"\b(nan|inf|None)\b(?! of)", sentence), sentence
    assert all(sentence.endswith(".") for sentence in found.warnings)
    said = [one for text in sentences for one in re.split(r"(?<=\.) ", text.lower())]
    assert len(said) == len(set(said)), said
    return True


@pytest.mark.parametrize(
    "count", [100, pytest.param(1500, marks=pytest.mark.long)], ids=["some", "many"]
)
@pytest.mark.parametrize("name", list(FORMS))
def test_an_answer_in_order_or_a_reason(name: str, count: int) -> None:
    form, answered = FORMS[name], 0

    @settings(max_examples=count, deadline=None, derandomize=True, database=None)
    @given(st.one_of(near_the_example(form), values_of(form)))
    def whatever(chosen: dict[str, Any]) -> None:
        nonlocal answered
        answered += check(form, chosen)

    whatever()
    assert answered >= 10


@pytest.mark.parametrize("name", list(FORMS))
def test_at_every_bound(name: str) -> None:
    form = FORMS[name]
    usual = form.complete(form.example)
    for item in form.inputs:
        for bound in (item.low, item.high) if isinstance(item, Number) else ():
            check(form, usual | {item.name: bound})


def test_engines_agree_all_over_the_bounds() -> None:
    """Ten inputs of each calculator, typed as people type them."""
    asked = []
    for form in FORMS.values():
        parts = {"function": form.function, "words": form.words}
        paths = {part: f"{made.__module__}.{made.__name__}" for part, made in parts.items()}
        for inputs in list(sampled(form, 10))[-10:]:
            asked.append(paths | {"arguments": form.complete(inputs)})
    ours = native(asked)
    assert sum("value" in reply for reply in ours) > len(asked) / 2
    for question, one, other in zip(asked, ours, light(asked), strict=True):
        assert one.keys() == other.keys(), (question, one, other)
        for part in one:
            assert agree(one[part], other[part]), (question, one[part], other[part])
