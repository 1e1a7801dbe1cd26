"""Pictures of slow-release beads: what is out, what the pot's water holds, how many to give."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from saltline.pictures.axes import FOOT, halves, plot
from saltline.pictures.drawing import (
    ROW,
    area,
    box,
    dot,
    label,
    line,
    patterns,
    plain,
    span,
    svg,
    text,
    ticks,
)
from saltline.prill_dose import PrillDose
from saltline.prill_pot import Beads, PrillPot, possible_beads, usual_beads
from saltline.release import PrillRelease, released

POINTS = 24  # of a curve
MOST_BEADS = 120  # that a drawn pot has room for
SCATTER = 0.618034  # the golden section spreads any number of beads evenly
TABLE_STEPS = 6  # of the 30 days that the answer lists


def _curve(inputs: Mapping[str, Any], days: Sequence[float]) -> list[tuple[float, float, float]]:
    """Least, usual and most nitrogen out by each of these days."""
    heat = {name: inputs[name] for name in ("rated_days", "rated_c", "mean_c")}
    usual = usual_beads(nitrogen_mg=1.0, **heat)
    possible = possible_beads(nitrogen_mg=1.0, at_once_share=0.0, **heat)
    found = []
    for day in days:
        shares = [_share(beads, day) for beads in possible]
        found.append((min(shares), _share(usual, day), max(shares)))
    return found


def _share(beads: Beads, day: float) -> float:
    return released(
        day=day, rate_per_day=beads.rate_per_day, lag_days=beads.lag_days, shape=beads.shape
    )


def _across(answer: PrillRelease) -> list[float]:
    return ticks(1.1 * answer.end_day_high, 5)


def prill_release(inputs: Mapping[str, Any], answer: PrillRelease) -> str:
    """Nitrogen out, day by day, as a band; the end of the season as a range below."""
    across = _across(answer)
    frame, right, rise = plot(across, (0.0, 0.5, 1.0), "days", "share")
    days = [across[-1] * i / POINTS for i in range(POINTS + 1)]
    curve = _curve(inputs, days)
    lows = [(right(day), rise(low)) for day, (low, _, _) in zip(days, curve)]
    highs = [(right(day), rise(high)) for day, (_, _, high) in zip(days, curve)]
    parts = patterns("prill-release", "band")
    parts += area(highs + lows[::-1], "card", "prill-release-band") + frame
    parts += line([(right(day), rise(out)) for day, (_, out, _) in zip(days, curve)], "water")
    x, y = right(inputs["day"]), FOOT + 2.0 * ROW + 20.0
    parts += line(((x, 24.0), (x, FOOT)), "salt dash") + label(x, 16.0, "{in:day}", "strong")
    first = right(answer.end_day_low)
    last = max(first + 4.0, right(answer.end_day_high))
    parts += area(((first, y), (last, y), (last, y + 12.0), (first, y + 12.0)), "full-salt")
    parts += label((first + last) / 2.0, y + 32.0, "mostly spent {end_day_low..end_day_high}")
    says = (
        "Nitrogen out of the beads, day by day. After {in:day} it is "
        "{released_share_low..released_share_high}; mostly spent after "
        "{end_day_low..end_day_high}."
    )
    return svg(y + 40.0, says, parts)


def prill_release_table(
    inputs: Mapping[str, Any], answer: PrillRelease
) -> tuple[tuple[str, ...], ...]:
    """The same band at a few days."""
    days = halves(_across(answer))
    rows = [("Days", "Nitrogen out")]
    for day, (low, _, high) in zip(days, _curve(inputs, days)):
        rows.append((plain(day), span(low, high, "share")))
    return tuple(rows)


def prill_pot(inputs: Mapping[str, Any], answer: PrillPot) -> str:
    """Nitrogen in the water of the pot, day by day, as a band."""
    high = max(answer.n_ppm_high)
    frame, right, rise = plot(
        ticks(answer.days[-1], 5), ticks(high if high > 0.0 else 1.0, 4), "days", "ppm"
    )
    lows = [(right(day), rise(n)) for day, n in zip(answer.days, answer.n_ppm_low)]
    highs = [(right(day), rise(n)) for day, n in zip(answer.days, answer.n_ppm_high)]
    parts = patterns("prill-pot", "band")
    parts += area(highs + lows[::-1], "card", "prill-pot-band") + frame
    parts += line([(right(day), rise(n)) for day, n in zip(answer.days, answer.n_ppm)], "water")
    says = (
        "Nitrogen in the water of the pot, day by day. At the most it is "
        "{peak_n_ppm_low..peak_n_ppm_high}."
    )
    return svg(FOOT + 2.0 * ROW + 10.0, says, parts)


def prill_pot_table(inputs: Mapping[str, Any], answer: PrillPot) -> tuple[tuple[str, ...], ...]:
    """The same band at a few days."""
    rows = [("Days", "Nitrogen")]
    step = (len(answer.days) - 1) // TABLE_STEPS
    for i in range(0, len(answer.days), step):
        reads = span(answer.n_ppm_low[i], answer.n_ppm_high[i], "ppm")
        rows.append((plain(answer.days[i]), reads))
    return tuple(rows)


def prill_dose(inputs: Mapping[str, Any], answer: PrillDose) -> str:
    """The beads in the pot, as many as there may be at the most."""
    parts = patterns("prill-dose", "granules")
    parts += box(16.0, 34.0, 136.0, 130.0, "card", "prill-dose-granules")
    parts += line(((16.0, 20.0), (16.0, 164.0), (152.0, 164.0), (152.0, 20.0)), "ink")
    count = answer.prills_high or 0
    shown = min(count, MOST_BEADS)
    for at in range(shown):
        x, y = 26.0 + 116.0 * (SCATTER * at % 1.0), 42.0 + 110.0 * (at + 0.5) / shown
        parts += dot(x, y, 4.0, "full-salt")
    parts += text(170.0, 48.0, "at most") + text(170.0, 48.0 + ROW, "{dose_g_high}", "strong")
    says = "A pot with at most {dose_g_high} of beads"
    if answer.prills_high:
        parts += text(170.0, 100.0, "{prills_high}", "strong")
        says += ", {prills_high}"
        if count > shown:
            parts += text(170.0, 100.0 + ROW, f"{shown} are drawn")
    parts += text(170.0, 152.0, "rise with idle roots")
    parts += text(170.0, 152.0 + ROW, "{peak_rise_ms_cm_high}", "strong")
    return svg(178.0, says + ". With idle roots the water rises by {peak_rise_ms_cm_high}.", parts)
