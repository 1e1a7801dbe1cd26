"""Whether the readings of one pot drift, and when they would reach a limit."""

from __future__ import annotations

from math import sqrt
from typing import NamedTuple

from saltline.errors import BadInput
from saltline.student import t_quantile, total

TAIL = 0.025  # each tail of the 95 % interval
DAYS_PER_WEEK = 7.0
NEVER_WEEKS = 520.0  # a limit more than ten years off is not being approached


class Drift(NamedTuple):
    """The answer of `drift`: slope a week and weeks to the limit from the last day."""

    slope_per_week: float
    slope_per_week_low: float | None
    slope_per_week_high: float | None
    weeks_low: float | None
    weeks_high: float | None
    warnings: tuple[str, ...]


def _weeks(gap: float, slope: float) -> float | None:
    return gap / slope if 0.0 < gap <= slope * NEVER_WEEKS else None


def drift(*, days: list[float], readings: list[float], limit: float) -> Drift:
    """Whether readings climb, how fast, and when they would reach a limit.

    Equation:
        Least squares line; slope +- t(0.975, n - 2) s / sqrt(Sxx);
        weeks = (limit - line on the last day) / slope, for both ends of the slope's interval.
    Arguments:
        days: day of each reading [days], in any order.
        readings: the readings, by one method on one scale [any].
        limit: the reader's own upper limit [same].
    Returns:
        Drift: slope [per week] with its interval; weeks, None where the limit is never reached.
    Valid for:
        A steady climb without a flush or a change of feed between.
    Error:
        1e-9 relative; the scatter about the line on the last day is not in the weeks.
    Raises:
        BadInput: lists of different length, or days that span less than one.
    Sources:
        abramowitz-stegun, 26.7 for t; saltline-notes, growing 4.
    """
    n = len(readings)
    if n != len(days):
        raise BadInput("readings", "must be as many as the days")
    if max(days) - min(days) < 1.0:
        raise BadInput("days", "must span a day or more")
    day_mean, mean = total(days) / n, total(readings) / n
    off = [day - day_mean for day in days]
    sxx = total([x * x for x in off])
    slope = total([off[i] * (readings[i] - mean) for i in range(n)]) / sxx
    gap = limit - (mean + slope * (max(days) - day_mean))
    slope *= DAYS_PER_WEEK
    warnings = []
    low = high = weeks_low = weeks_high = None
    if n == 2:
        warnings.append("Any two readings make a line: a third one tells how far to trust it.")
    else:
        rest = [readings[i] - mean - slope / DAYS_PER_WEEK * off[i] for i in range(n)]
        error = sqrt(total([r * r for r in rest]) / (n - 2) / sxx) * DAYS_PER_WEEK
        half = t_quantile(tail=TAIL, freedom=n - 2) * error
        low, high = slope - half, slope + half
        weeks_low, weeks_high = _weeks(gap, high), _weeks(gap, low)
        if low <= 0.0 <= high:
            warnings.append(
                "They scatter more than they drift: take another one by the same method in a week."
            )
    if gap <= 0.0:
        weeks_low = weeks_high = 0.0
        warnings.append("At the limit: read this pot once more, and if it stays there, act on it.")
    return Drift(
        slope_per_week=slope,
        slope_per_week_low=low,
        slope_per_week_high=high,
        weeks_low=weeks_low,
        weeks_high=weeks_high,
        warnings=tuple(warnings),
    )
