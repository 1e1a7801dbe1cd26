"""The picture of salt building up between flushes, towards its level and the reader's limit."""

from __future__ import annotations

from collections.abc import Mapping
from math import exp
from typing import Any

from saltline.build_up import UPTAKE_SHARE_HIGH, BuildUp
from saltline.pictures.axes import END, FOOT, START, halves, plot
from saltline.pictures.drawing import (
    ROW,
    area,
    line,
    patterns,
    plain,
    span,
    svg,
    text,
    ticks,
)

POINTS = 24  # of a curve
FEWEST_DAYS, MOST_DAYS = 7.0, 1825.0  # a week to five years are worth drawing


def _strength(day: float, inputs: Mapping[str, Any], answer: BuildUp, taken: float) -> float:
    """Strength of the pot's water on a day, when the plant takes this share of the salt."""
    start, feed = float(inputs["start_ms_cm"]), (1.0 - taken) * float(inputs["feed_ms_cm"])
    if answer.time_constant_days is None:
        return start + feed * float(inputs["water_use_ml_day"] * day / inputs["water_held_ml"])
    steady = feed / float(inputs["drained_share"])
    return steady + (start - steady) * exp(-day / answer.time_constant_days)


def _days(answer: BuildUp) -> list[float]:
    """Days to draw: past the limit if it is ever reached, else until it has levelled off."""
    last = answer.days_high or 2.0 * (answer.days_low or 0.0)
    if not last:
        last = 60.0 if answer.time_constant_days is None else 3.0 * answer.time_constant_days
    return ticks(min(max(1.25 * last, FEWEST_DAYS), MOST_DAYS), 5)


def build_up(inputs: Mapping[str, Any], answer: BuildUp) -> str:
    """Strength of the pot's water, day by day: plant taking nothing, and plant feeding well."""
    across, limit = _days(answer), inputs["limit_ms_cm"]
    days = [across[-1] * i / POINTS for i in range(POINTS + 1)]
    most = [_strength(day, inputs, answer, 0.0) for day in days]
    least = [_strength(day, inputs, answer, UPTAKE_SHARE_HIGH) for day in days]
    frame, right, rise = plot(across, ticks(1.1 * max([limit] + most), 4), "days", "ms_cm")
    highs = [(right(day), rise(ec)) for day, ec in zip(days, most)]
    lows = [(right(day), rise(ec)) for day, ec in zip(days, least)]
    parts = patterns("build-up", "band")
    parts += area(highs + lows[::-1], "card", "build-up-band") + frame
    parts += line(highs, "water") + line(lows, "water")
    parts += line(((START, rise(limit)), (END, rise(limit))), "salt dash")
    parts += text(END, 16.0, "dotted: your limit, {in:limit_ms_cm}", "", "end")
    return svg(FOOT + 2.0 * ROW + 10.0, _says(answer), parts)


def _says(answer: BuildUp) -> str:
    said = "Strength of the water in the pot, day by day, from a plant that takes nothing to one "
    said += "that feeds well. "
    if answer.days_low is None:
        return said + "Your limit, {in:limit_ms_cm}, is not reached."
    if answer.days_high is None:
        return said + "Your limit, {in:limit_ms_cm}, is reached after {days_low}, or never."
    return said + "Your limit, {in:limit_ms_cm}, is reached after {days_low..days_high}."


def build_up_table(inputs: Mapping[str, Any], answer: BuildUp) -> tuple[tuple[str, ...], ...]:
    """The same band at a few days."""
    rows = [("Days", "Water in the pot")]
    for day in halves(_days(answer)):
        low = _strength(day, inputs, answer, UPTAKE_SHARE_HIGH)
        high = _strength(day, inputs, answer, 0.0)
        rows.append((plain(day), span(low, high, "ms_cm")))
    return tuple(rows)
