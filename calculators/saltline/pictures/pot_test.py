"""Picture of one measured pot: its readings as dots on the model's ranges."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import log
from typing import Any

from saltline.pictures.axes import END, FOOT, START, TOP
from saltline.pictures.drawing import (
    EDGE,
    ROW,
    box,
    dot,
    drawn,
    line,
    patterns,
    scale,
    sign,
    span,
    svg,
    text,
)
from saltline.pot_test import PotTest

NAMED_STEPS = 16  # readings that find room for a letter each
WIDEST = 18.0
MANY = 30.0  # times from the lowest to the highest value, beyond which lines would crowd
NAMES = {"drip": "First drips", "pour": "Pour", "soak": "Soak", "left": "Left in the end"}

type Rows = tuple[tuple[str, ...], ...]
type Bar = tuple[str, float | None, float, float]  # what, read, the model's low and high


def _bars(answer: PotTest) -> list[Bar]:
    bars: list[Bar] = [
        (step.event, step.read_ms_cm, step.low_ms_cm, step.high_ms_cm) for step in answer.steps
    ]
    low, high = answer.expected_ms_cm_low, answer.expected_ms_cm_high
    if low is not None and high is not None:
        bars.append(("left", answer.found_ms_cm, low, high))
    return bars


def _by_ratio(values: list[float]) -> tuple[str, Callable[[float], float]]:
    """Lines at 1, 2, 5, 10, ... (over wide ranges 1, 10, ...), evenly by ratio; a value's y."""
    top = max(values + [0.1])
    floor = max(min(values), top / 1000.0)
    steps = (1.0, 2.0, 5.0) if top < MANY * floor else (1.0,)
    marks = [step * 10.0**power for power in range(-5, 5) for step in steps]
    first = max(mark for mark in marks if mark <= floor)
    last = min(mark for mark in marks if mark >= top)
    rise = scale(log(first), log(last), FOOT, TOP)
    parts = ""
    for mark in marks:
        if first <= mark <= last:
            y = rise(log(mark))
            parts += line(((EDGE, y), (END, y)), "grid" if mark > first else "ink thin")
            said = drawn(mark, "ms_cm")
            parts += text(EDGE, y - 4.0, said + " " + sign("ms_cm") if mark == last else said)
    return parts, lambda value: rise(log(max(value, first)))


def pot_test(inputs: Mapping[str, Any], answer: PotTest) -> str:
    """Every reading and what was left, on bars that hold 8 pots in 10 of the model."""
    bars = _bars(answer)
    if not bars:
        return ""
    ends = [value for _, read, low, high in bars for value in (read, low, high)]
    frame, rise = _by_ratio([value for value in ends if value is not None])
    place = scale(0.0, float(len(bars)), START, END)
    half = min(WIDEST, 0.7 * (place(1.0) - place(0.0))) / 2.0
    parts = patterns("pot-test", "band") + frame
    for slot, (event, read, low, high) in enumerate(bars):
        x = place(slot + 0.5)
        top, foot = rise(high), max(rise(low), rise(high) + 3.0)
        parts += box(x - half, top, 2.0 * half, foot - top, "card", "pot-test-band")
        for y in (top, foot):
            parts += line(((x - half, y), (x + half, y)), "water")
        if read is not None:
            parts += dot(x, rise(read), 4.5, "full")
        if event == "left":
            parts += text(END, FOOT + ROW + 3.0, "left", "strong", "end")
        elif len(bars) <= NAMED_STEPS:
            parts += text(x, FOOT + ROW + 3.0, event[0], "", "middle")
    parts += text(EDGE, FOOT + 2.0 * ROW + 3.0, "d drip, p pour, s soak")
    return svg(FOOT + 2.0 * ROW + 10.0, "Your readings as dots on the bars of the model.", parts)


def pot_test_table(inputs: Mapping[str, Any], answer: PotTest) -> Rows:
    """The same in numbers."""
    rows = [("Step", "Read", "The model's range")]
    for event, read, low, high in _bars(answer):
        said = "–" if read is None else drawn(read, "ms_cm") + " " + sign("ms_cm")
        rows.append((NAMES[event], said, span(low, high, "ms_cm")))
    return tuple(rows)
