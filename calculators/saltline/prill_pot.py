"""What the water in a pot sees of slow-release beads: release in, drainage and uptake out."""

from __future__ import annotations

from math import ceil, exp, expm1
from typing import NamedTuple

from saltline.release import (
    CORNERS,
    ENERGY_KJ_MOL,
    LAG_DAYS,
    rate_constant,
    rate_factor,
    released,
    usual_rated_share,
)

DAYS_PER_MONTH = 30.4375  # a twelfth of a year
# Share of the nitrogen that broken beads may give at once: our estimate, at most 0.15 by the
# European working definition (docs/sources.json: trenkel-2010).
AT_ONCE_SHARE_HIGH = 0.05
SHOWN_STEPS = 30  # days shown in the curve
LEAST_STEPS = 3  # steps of the sum between two shown days; more at first


class Beads(NamedTuple):
    """Beads in a pot: nitrogen in them [mg] and how it comes out, in days as they pass."""

    nitrogen_mg: float
    at_once_share: float
    rate_per_day: float
    lag_days: float
    shape: float


class Pot(NamedTuple):
    """The water that beads feed: volume [mL], drained [mL/day], uptake of nitrogen [mg/day]."""

    water_held_ml: float
    drain_ml_day: float
    uptake_mg_day: float


class PrillPot(NamedTuple):
    """The answer of `prill_pot`: nitrogen in the water of the pot [mg/L], day by day."""

    peak_n_ppm: float
    peak_n_ppm_low: float
    peak_n_ppm_high: float
    peak_day: float | None
    days: list[float]
    n_ppm: list[float]
    n_ppm_low: list[float]
    n_ppm_high: list[float]
    warnings: tuple[str, ...]


def _out(beads: Beads, day: float) -> float:
    """Nitrogen that has left the beads by this day [mg]."""
    share = released(
        day=day, rate_per_day=beads.rate_per_day, lag_days=beads.lag_days, shape=beads.shape
    )
    return beads.nitrogen_mg * (beads.at_once_share + (1.0 - beads.at_once_share) * share)


def _beads(
    nitrogen_mg: float,
    at_once_share: float,
    rated_days: float,
    factor: float,
    corner: tuple[float, float, float],
) -> Beads:
    """Beads whose clock runs `factor` times as fast as the label's."""
    share, lag, shape = corner
    rate = rate_constant(rated_days=rated_days, rated_share=share, lag_days=lag, shape=shape)
    return Beads(nitrogen_mg, at_once_share, rate * factor, lag / factor, shape)


def usual_beads(
    *,
    nitrogen_mg: float,
    rated_days: float,
    rated_c: float,
    mean_c: float,
    lag_days: float = LAG_DAYS,
) -> Beads:
    """Beads as they mostly behave.

    Equation:
        k r(T) and tL / r(T) with Ea 42 kJ/mol, b 1 and 0.90 or 0.80 out after the rated life.
    Arguments:
        nitrogen_mg: nitrogen in them [mg].
        rated_days: life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium [C].
        lag_days: tL, days before anything leaves, at the label's temperature [days].
    Returns:
        Beads whose clock is the calendar.
    Valid for:
        As `rate_constant` and `rate_factor`.
    Error:
        As `rate_constant`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5; du-2006.
    """
    return _beads(
        nitrogen_mg,
        0.0,
        rated_days,
        rate_factor(at_c=mean_c, rated_c=rated_c, energy_kj_mol=ENERGY_KJ_MOL),
        (usual_rated_share(rated_c=rated_c), lag_days, 1.0),
    )


def possible_beads(
    *, nitrogen_mg: float, at_once_share: float, rated_days: float, rated_c: float, mean_c: float
) -> list[Beads]:
    """The same beads at every corner of what is not known about them.

    Equation:
        As `usual_beads`, over all of CORNERS.
    Arguments:
        nitrogen_mg: nitrogen in them [mg].
        at_once_share: share of it that broken beads give at once [-].
        rated_days: life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium [C].
    Returns:
        Beads, 16 kinds.
    Valid for:
        As `usual_beads`.
    Error:
        Corners bound the answer; they are not chances.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5 and its recomputation.
    """
    return [
        _beads(
            nitrogen_mg,
            at_once_share,
            rated_days,
            rate_factor(at_c=mean_c, rated_c=rated_c, energy_kj_mol=energy),
            (share, lag, shape),
        )
        for energy, share, lag, shape in CORNERS
    ]


def shown_days(*, rated_days: float, rated_c: float, mean_c: float) -> list[float]:
    """Whole days, evenly spaced, from 0 past the slowest end of the rated life.

    Equation:
        30 steps of ceil(1.1 L / r / 30), r the slowest rate factor.
    Arguments:
        rated_days: L, life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium [C].
    Returns:
        31 days [days].
    Valid for:
        As `rate_factor`.
    Error:
        None: a choice of days to show.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5.
    """
    slowest = min(
        rate_factor(at_c=mean_c, rated_c=rated_c, energy_kj_mol=corner[0]) for corner in CORNERS
    )
    step = ceil(1.1 * rated_days / slowest / SHOWN_STEPS)
    return [float(step * i) for i in range(SHOWN_STEPS + 1)]


def pot_nitrogen(
    *, beads: Beads, pot: Pot, days: list[float]
) -> tuple[list[float], float, float | None]:
    """Nitrogen in the water of the pot: at the days asked, at its peak, and the day of the peak.

    Equation:
        dN/dt = n dF/dt - U - (q/V) N, N >= 0: where the water runs empty the plant takes only what
        comes out. Stepped exactly for a steady release within the step:
        N' = N e^(-q h/V) + (n dF/h - U) (1 - e^(-q h/V)) V/q, h shorter at first.
    Arguments:
        beads: nitrogen and its release.
        pot: V [mL], q [mL/day], U [mg/day].
        days: whole or broken days from 0 upward [days].
    Returns:
        Nitrogen [mg/L] at each of `days`, the highest [mg/L] and its day [days] (None if none).
    Valid for:
        Water that mixes through the pot, no drying out, no nitrogen lost to the air.
    Error:
        1 % against a stiff integrator. Against a pot: an order of magnitude.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5.
    """
    litres = pot.water_held_ml / 1000.0
    washing = pot.drain_ml_day / pot.water_held_ml
    day, out = 0.0, _out(beads, 0.0)
    held, shown = out, [out / litres]
    top, top_day = held, 0.0 if held > 0.0 else None
    for next_day in _moments(days, beads.lag_days):
        step, out_before = next_day - day, out
        day, out = next_day, _out(beads, next_day)
        stays = exp(-washing * step)
        spread = -expm1(-washing * step) / washing if washing > 0.0 else step
        held = held * stays + ((out - out_before) / step - pot.uptake_mg_day) * spread
        held = max(0.0, held)
        if held > top:
            top, top_day = held, day
        if day == days[len(shown)]:
            shown.append(held / litres)
    return shown, top / litres, top_day


def _moments(days: list[float], lag: float) -> list[float]:
    """Ends of the steps: the days to show, finer in between, and the moment release begins."""
    moments: list[float] = []
    for at in range(len(days) - 1):
        first, last = days[at], days[at + 1]
        steps = LEAST_STEPS + 12 // (1 + at)
        inside = [first + (last - first) * i / steps for i in range(1, steps)]
        if first < lag < last and lag not in inside:
            inside.append(lag)
            inside.sort()
        moments += inside
        moments.append(last)
    return moments


def prill_pot(
    *,
    dose_g: float,
    n_percent: float,
    rated_days: float,
    rated_c: float,
    mean_c: float,
    water_held_ml: float,
    drain_ml_day: float,
    uptake_mg_month: float,
) -> PrillPot:
    """Nitrogen that slow-release beads put into the water of a pot, from the day they go in.

    Equation:
        As `pot_nitrogen`, from water without nitrogen. Middle: the usual bead. Range: the lowest
        and highest over it and all corners of the release, the highest with 5 % of the nitrogen
        at once.
    Arguments:
        dose_g: beads given [g].
        n_percent: nitrogen on the label [%].
        rated_days: life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium [C].
        water_held_ml: V, water the drained pot keeps [mL].
        drain_ml_day: q, water drained, spread over the days [mL/day].
        uptake_mg_month: nitrogen the plant takes while there is any [mg/month]; 0 without roots.
    Returns:
        PrillPot: peak with its range [mg/L], its day [days], and the curve.
    Valid for:
        Beads that stay moist in a mixed pot; feed comes on top.
    Error:
        An order of magnitude: granules that dry between waterings are not mixed.
    Raises:
        Nothing within the bounds.
    Sources:
        saltline-notes, feed 5 and its recomputation; du-2006; broschat-moore-2007.
    """
    label = {"rated_days": rated_days, "rated_c": rated_c, "mean_c": mean_c}
    nitrogen = dose_g * n_percent * 10.0
    pot = Pot(water_held_ml, drain_ml_day, uptake_mg_month / DAYS_PER_MONTH)
    days = shown_days(**label)
    usual = pot_nitrogen(beads=usual_beads(nitrogen_mg=nitrogen, **label), pot=pot, days=days)
    # In a pot that washes out fast the usual bead can stand alone on the days it begins.
    lows, highs = (
        [usual]
        + [
            pot_nitrogen(beads=beads, pot=pot, days=days)
            for beads in possible_beads(nitrogen_mg=nitrogen, at_once_share=at_once, **label)
        ]
        for at_once in (0.0, AT_ONCE_SHARE_HIGH)
    )
    middle, peak, peak_day = usual
    return PrillPot(
        peak_n_ppm=peak,
        peak_n_ppm_low=min(run[1] for run in lows),
        peak_n_ppm_high=max(run[1] for run in highs),
        peak_day=peak_day,
        days=days,
        n_ppm=middle,
        n_ppm_low=[min(run[0][i] for run in lows) for i in range(len(days))],
        n_ppm_high=[max(run[0][i] for run in highs) for i in range(len(days))],
        warnings=(),
    )
