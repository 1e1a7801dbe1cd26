"""Pictures of a flush: how the salt falls, wash by wash, and what the readings say."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from saltline.flush_learn import FlushLearn
from saltline.flush_log import read_log
from saltline.flush_plan import TARGET_SHARE, FlushPlan
from saltline.flush_today import FlushToday
from saltline.pictures.axes import END, FOOT, START, grid, plot
from saltline.pictures.drawing import (
    EDGE,
    ROW,
    area,
    box,
    dot,
    drawn,
    label,
    line,
    patterns,
    scale,
    span,
    svg,
    text,
    ticks,
)
from saltline.pictures.pots import ROOMY, cut_pots, height

FALL = (0.0, 0.5, 1.0)  # shares of the salt on the axis
BELOW = FOOT + 2.0 * ROW + 10.0
NAMED_EVENTS = 16  # events of a log that find room for a letter each

WAYS = {"pours": "Pours", "soaks": "Soaks"}

type Rows = tuple[tuple[str, ...], ...]


def _fall(
    owner: str, lows: Sequence[float], highs: Sequence[float], across_words: str
) -> tuple[str, Any, Any]:
    """The band of the salt left from wash to wash, beginning with all of it."""
    across = [float(number) for number in range(max(len(highs), 1) + 1)]
    frame, right, rise = plot(across, FALL, across_words, "share")
    top = [(right(0.0), rise(1.0))]
    foot = [(right(0.0), rise(1.0))]
    for number, (low, high) in enumerate(zip(lows, highs)):
        top.append((right(number + 1.0), rise(high)))
        foot.append((right(number + 1.0), rise(low)))
    parts = patterns(owner, "band") + area(top + foot[::-1], "card", owner + "-band") + frame
    parts += line(top, "water") + line(foot, "water")
    for x, y in top[1:] + foot[1:]:
        parts += dot(x, y, 3.0, "full-water")
    return parts, right, rise


def _fall_table(lows: Sequence[float], highs: Sequence[float], name: str) -> Rows:
    rows = [(name, "Salt left"), ("start", span(1.0, 1.0, "share"))]
    for number, (low, high) in enumerate(zip(lows, highs)):
        rows.append((str(number + 1), span(low, high, "share")))
    return tuple(rows)


def flush_plan(inputs: Mapping[str, Any], answer: FlushPlan) -> str:
    """Salt left after each pour or soak, the target, and how many it takes."""
    way = inputs["way"]
    parts, right, rise = _fall(
        "flush-plan", answer.left_each_share_low, answer.left_each_share_high, way
    )
    goal, said = TARGET_SHARE, "dotted: a quarter of it"
    if answer.stop_ms_cm is not None:
        said = "dotted: stop at {stop_ms_cm}"
        if inputs["pot_ms_cm"] is not None:
            above = inputs["pot_ms_cm"] - inputs["rinse_ms_cm"]
            goal = min(1.0, (answer.stop_ms_cm - inputs["rinse_ms_cm"]) / above) if above else 1.0
    parts += line(((START, rise(goal)), (END, rise(goal))), "salt dash")
    parts += text(END, 16.0, said, "", "end")
    if answer.pours_high == 0:
        return svg(BELOW, "The pot is under the target already: nothing to wash out.", parts)
    first = right(float(answer.pours_low))
    last = max(first + 4.0, right(float(answer.pours_high)))
    parts += box(first, BELOW, last - first, 12.0, "full-salt")
    enough = "enough after {pours_low..pours_high} " + way
    if answer.reached == "no":
        enough = "may not be enough after {pours_high} " + way
    parts += label((first + last) / 2.0, BELOW + 32.0, enough)
    says = (
        "Salt left in the pot, falling from all of it to {left_share_low..left_share_high} after "
        "{pours_high} " + way + "."
    )
    return svg(BELOW + 40.0, says, parts)


def flush_plan_table(inputs: Mapping[str, Any], answer: FlushPlan) -> Rows:
    """The same band, wash by wash."""
    return _fall_table(answer.left_each_share_low, answer.left_each_share_high, WAYS[inputs["way"]])


def flush_today(inputs: Mapping[str, Any], answer: FlushToday) -> str:
    """The pot cut open at the start and after each soak of today, those already done among them."""
    lows, highs = answer.left_each_share_low, answer.left_each_share_high
    word = "soak " if len(highs) < ROOMY else ""
    names = ["start"] + [word + str(number + 1) for number in range(len(highs))]
    says = "The pot cut open soak by soak, its salt as grains: "
    says += "{left_share_low..left_share_high} is left after today's soaks."
    return svg(height(len(names)), says, cut_pots([(1.0, 1.0)] + list(zip(lows, highs)), names))


def flush_today_table(inputs: Mapping[str, Any], answer: FlushToday) -> Rows:
    """The same band, soak by soak."""
    return _fall_table(answer.left_each_share_low, answer.left_each_share_high, "Soaks")


def flush_learn(inputs: Mapping[str, Any], answer: FlushLearn) -> str:
    """The reader's readings in order as dots, beside the band of what the pot held inside."""
    events, rinse = read_log(inputs["log"]), inputs["rinse_ms_cm"]
    readings = [event.reading or 0.0 for event in events]
    top = max(readings + [rinse, answer.start_ms_cm_high or 0.0])
    frame, rise = grid(ticks(1.05 * top or 1.0, 4), "ms_cm")
    place = scale(0.0, len(events) + 1.0, START, END)
    parts = patterns("flush-learn", "band") + _inside(answer, place, rise) + frame
    parts += line(((START, rise(rinse)), (END, rise(rinse))), "salt dash")
    parts += text(END, 16.0, "dotted: rinse water {in:rinse_ms_cm}", "", "end")
    for slot, name, anchor, low, high in (
        (0.0, "start", "end", answer.start_ms_cm_low, answer.start_ms_cm_high),
        (len(events) + 1.0, "left", "start", answer.left_ms_cm_low, answer.left_ms_cm_high),
    ):
        x = place(slot)
        if low is not None and high is not None:
            y, foot = rise(high), max(rise(low), rise(high) + 3.0)
            parts += box(x - 8.0, y, 16.0, foot - y, "card", "flush-learn-band")
            parts += line(((x - 8.0, y), (x + 8.0, y)), "water")
            parts += line(((x - 8.0, foot), (x + 8.0, foot)), "water")
            edge = x + 8.0 if anchor == "end" else x - 8.0
            parts += text(edge, FOOT + ROW + 3.0, name, "strong", anchor)
    for slot, event in enumerate(events):
        x = place(slot + 1.0)
        parts += line(((x, FOOT), (x, FOOT + 6.0)), "ink thin")
        if event.reading is not None:
            parts += dot(x, rise(event.reading), 4.5, "full")
        if len(events) <= NAMED_EVENTS:
            parts += text(x, FOOT + ROW + 3.0, event.kind[0], "", "middle")
    parts += text(EDGE, FOOT + 2.0 * ROW + 3.0, "d drip, s soak, p pour, r rest; band: inside")
    says = "Your readings in order as dots."
    if answer.left_ms_cm_low is not None:
        says = (
            "Your readings in order as dots; as a band what the pot holds inside, from "
            "{start_ms_cm_low..start_ms_cm_high} at the start to "
            "{left_ms_cm_low..left_ms_cm_high} left."
        )
    return svg(BELOW, says, parts)


def _inside(answer: FlushLearn, place: Any, rise: Any) -> str:
    """The band of what the pot held, film and granules, from the start through every event."""
    if answer.start_ms_cm_low is None or answer.start_ms_cm_high is None:
        return ""
    lows = [answer.start_ms_cm_low] + answer.inside_each_ms_cm_low
    highs = [answer.start_ms_cm_high] + answer.inside_each_ms_cm_high
    top = [(place(float(slot)), rise(high)) for slot, high in enumerate(highs)]
    foot = [(place(float(slot)), rise(low)) for slot, low in enumerate(lows)]
    band = area(top + foot[::-1], "card", "flush-learn-band")
    return band + line(top, "water") + line(foot, "water")


def flush_learn_table(inputs: Mapping[str, Any], answer: FlushLearn) -> Rows:
    """What was done and read, in order, and what the pot held then."""
    rows = [("Step", "Read", "Inside the pot")]
    if answer.start_ms_cm_low is not None:
        rows.append(("start", "–", "{start_ms_cm_low..start_ms_cm_high}"))
    lows, highs = answer.inside_each_ms_cm_low, answer.inside_each_ms_cm_high
    for at, event in enumerate(read_log(inputs["log"])):
        read = "–" if event.reading is None else drawn(event.reading, "ms_cm") + " {:ms_cm}"
        rows.append((event.kind, read, span(lows[at], highs[at], "ms_cm") if lows else "–"))
    return tuple(rows)
