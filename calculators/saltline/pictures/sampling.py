"""Pictures of many pots: which to read, what their readings say, and whether they drift."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from saltline.drift import DAYS_PER_WEEK, Drift
from saltline.pictures.axes import END, FOOT, LEFT, RIGHT, START, plot, ruler
from saltline.pictures.drawing import (
    EDGE,
    ROW,
    WIDTH,
    area,
    box,
    dot,
    label,
    line,
    patterns,
    scale,
    svg,
    text,
    ticks,
)
from saltline.sampling import Batch, Sample
from saltline.student import total

ACROSS, DOWN = 15, 8  # dots in the picture of a batch
SCATTER = 0.618034  # the golden section spreads any number of dots evenly
BIN = 7.0  # px: readings nearer than this stand on one another
AHEAD = 2.0  # how far a trend is drawn on, in times of the days read


def sample(inputs: Mapping[str, Any], answer: Sample) -> str:
    """A dot a pot: full ones to read for the mean, ringed ones besides to meet a bad pot."""
    pots, mean, find = inputs["pots"], answer.sample_for_mean, answer.sample_to_find
    each = (pots + ACROSS * DOWN - 1) // (ACROSS * DOWN)  # pots a dot stands for
    count = (pots + each - 1) // each
    full = (mean + each - 1) // each
    ringed = max(full, ((find or 0) + each - 1) // each)
    pitch = (WIDTH - 2.0 * EDGE) / ACROSS
    rank = _scattered(count)
    parts = ""
    for at in range(count):
        x, y = EDGE + pitch * (at % ACROSS + 0.5), 14.0 + 19.0 * (at // ACROSS)
        if rank[at] < full:
            parts += dot(x, y, 6.5, "full")
        else:
            parts += dot(x, y, 5.5, "ink thin")
            parts += dot(x, y, 2.2, "full-salt") if rank[at] < ringed else ""
    y = 14.0 + 19.0 * ((count + ACROSS - 1) // ACROSS) + 10.0
    legend = [("full", "read for the mean: {sample_for_mean}")]
    if ringed > full:
        legend.append(("full-salt", "both, to meet a bad one: {sample_to_find}"))
    if ringed < count:
        legend.append(("", "not read"))
    for kind, words in legend:
        parts += dot(EDGE + 8.0, y - 5.0, 6.5, "full") if kind == "full" else ""
        parts += dot(EDGE + 8.0, y - 5.0, 5.5, "ink thin") if kind != "full" else ""
        parts += dot(EDGE + 8.0, y - 5.0, 2.2, kind) if kind == "full-salt" else ""
        parts += text(EDGE + 24.0, y, words)
        y += ROW + 3.0
    if each > 1:
        parts += text(EDGE + 24.0, y, f"a dot is {each} pots")
        y += ROW + 3.0
    says = "Pots as dots: of {in:pots}, read {sample_for_mean} for the mean"
    if find is not None:
        says += ", {sample_to_find} so as not to miss the bad ones"
    return svg(y - ROW + EDGE, says + ".", parts)


def _scattered(count: int) -> list[int]:
    """A fixed shuffle: the place of each dot in the order of reading."""
    rank = [0] * count
    for order, at in enumerate(sorted(range(count), key=lambda i: SCATTER * i % 1.0)):
        rank[at] = order
    return rank


def batch(inputs: Mapping[str, Any], answer: Batch) -> str:
    """The readings as dots over a ruler, with the mean and where it likely lies."""
    readings = inputs["readings"]
    high = max(readings + [answer.mean_high or 0.0])
    marks = ticks(high if high > 0.0 else 1.0, 4)
    place = scale(0.0, marks[-1], LEFT, RIGHT)
    bins: dict[int, int] = {}
    for reading in readings:
        at = int(place(reading) / BIN)
        bins[at] = bins.get(at, 0) + 1
    pitch = min(9.0, 110.0 / max(bins.values()))
    y = 46.0 + pitch * max(bins.values()) + 12.0
    parts = patterns("batch", "band")
    mean = place(answer.mean)
    if answer.mean_low is not None and answer.mean_high is not None:
        low, top = place(answer.mean_low), place(answer.mean_high)
        parts += box(low, 44.0, max(3.0, top - low), y - 44.0, "card", "batch-band")
    parts += line(((mean, 44.0), (mean, y)), "water") + label(mean, 16.0, "mean {mean}", "strong")
    if answer.mean_low is not None:
        parts += label(mean, 16.0 + ROW, "{mean_low..mean_high}")
    stacked: dict[int, int] = {}
    odd = _odd(readings, answer)
    for at_pot, reading in enumerate(readings):
        at = int(place(reading) / BIN)
        up = stacked.get(at, 0)
        stacked[at] = up + 1
        x = min(max(BIN * (at + 0.5), LEFT), RIGHT)
        parts += dot(x, y - 8.0 - pitch * up, 3.5, "full")
        if at_pot == odd:
            parts += dot(x, y - 8.0 - pitch * up, 7.0, "salt")
    says = "The readings as dots on a ruler, with their mean {mean}: " + answer.odd_pot + "."
    return svg(y + 24.0 + ROW + EDGE, says, parts + ruler(y, marks, ""))


def _odd(readings: Sequence[float], answer: Batch) -> int | None:
    """Which reading stands apart, if the answer names one."""
    if not answer.odd_pot.startswith("pot "):
        return None
    apart = [abs(reading - answer.mean) for reading in readings]
    return apart.index(max(apart))


def drift(inputs: Mapping[str, Any], answer: Drift) -> str:
    """Readings day by day, the line through them with its range, and the limit."""
    days, readings, limit = inputs["days"], inputs["readings"], inputs["limit"]
    first, last = min(days), max(days)
    end = last - first
    if answer.weeks_low is not None:
        end = min(AHEAD * end, end + 1.2 * DAYS_PER_WEEK * answer.weeks_low)
    across = ticks(end, 5)
    frame, right, rise = plot(across, ticks(1.05 * max(readings + [limit]) or 1.0, 4), "days", "")
    middle = total(days) / len(days) - first
    mean = total(readings) / len(readings)

    def along(slope: float) -> list[tuple[float, float]]:
        ends = (0.0, across[-1])
        return [(right(x), rise(mean + slope / DAYS_PER_WEEK * (x - middle))) for x in ends]

    parts = patterns("drift", "band")
    if answer.slope_per_week_low is not None and answer.slope_per_week_high is not None:
        low, high = along(answer.slope_per_week_low), along(answer.slope_per_week_high)
        centre = (right(middle), rise(mean))
        parts += area((low[0], centre, high[0]), "card", "drift-band")
        parts += area((low[1], centre, high[1]), "card", "drift-band")
    parts += frame + line(along(answer.slope_per_week), "water")
    parts += line(((START, rise(limit)), (END, rise(limit))), "salt dash")
    for day, reading in zip(days, readings):
        parts += dot(right(day - first), rise(reading), 4.5, "full")
    parts += text(END, 16.0, "dotted: your limit, {in:limit}", "", "end")
    says = "Readings day by day with the line through them: {slope_per_week} a week"
    if answer.slope_per_week_low is not None:
        says += ", likely {slope_per_week_low..slope_per_week_high}"
    return svg(FOOT + 2.0 * ROW + 10.0, says + ". Your limit is {in:limit}.", parts)
