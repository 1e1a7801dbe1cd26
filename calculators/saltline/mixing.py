"""Washing by full mixing: the least water that could do it, and which water comes last."""

from __future__ import annotations

from math import log
from typing import NamedTuple

from saltline.errors import BadInput


class FullMixing(NamedTuple):
    """The answer of `full_mixing`: water in all for equal rinses, and for an endless trickle."""

    water_ml: float
    trickle_ml: float
    warnings: tuple[str, ...]


class RinseOrder(NamedTuple):
    """The answer of `rinse_order`: what the pot reads after the last rinse, by order."""

    pure_last_ms_cm: float
    pure_first_ms_cm: float
    all_tap_ms_cm: float
    all_pure_ms_cm: float
    warnings: tuple[str, ...]


def full_mixing(*, times_down: float, water_held_ml: float, rinses: int) -> FullMixing:
    """Least water that divides the salt above the rinse water by `times_down`.

    Equation:
        Each rinse V mixes with the water held Vr and drains: excess' = excess Vr / (Vr + V).
        Equal rinses are best, so n V = n Vr (F^(1/n) - 1); an endless trickle needs Vr ln F.
    Arguments:
        times_down: F, excess before over excess after [-], 1 or more.
        water_held_ml: Vr, water the drained pot keeps [mL].
        rinses: n, number of equal rinses [-], 1 to 10.
    Returns:
        FullMixing: water in all [mL] by n rinses and by a trickle.
    Valid for:
        Water that mixes fully with what the pot holds at each rinse. Granules never do: a bound.
    Error:
        Exact for its assumption. A real pot needs more, never less, unless water displaces the old
        without mixing (plug flow, Vr at most).
    Raises:
        Nothing within the bounds.
    Sources:
        saltline-notes, flush 3.
    """
    water = rinses * water_held_ml * (times_down ** (1.0 / rinses) - 1.0)
    return FullMixing(water_ml=water, trickle_ml=water_held_ml * log(times_down), warnings=())


def after_rinses(
    *, start_ms_cm: float, waters_ms_cm: list[float], rinse_ml: float, water_held_ml: float
) -> float:
    """What a pot reads after rinses with different waters.

    Equation:
        C' = (Vr C + V Cw) / (Vr + V) for each water in turn.
    Arguments:
        start_ms_cm: pot before [mS/cm].
        waters_ms_cm: the waters, in order [mS/cm].
        rinse_ml: V, water of each rinse [mL].
        water_held_ml: Vr, water the drained pot keeps [mL].
    Returns:
        Pot after the last rinse [mS/cm].
    Valid for:
        Full mixing: a bound, as `full_mixing`. The order of waters that is best here is best in
        granules too: what comes last is what stays in the film.
    Error:
        Exact for its assumption; conductivities add within 5 %.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush 3 and review 4.
    """
    kept = water_held_ml / (water_held_ml + rinse_ml)
    reads = start_ms_cm
    for water in waters_ms_cm:
        reads = water + kept * (reads - water)
    return reads


def rinse_order(
    *,
    start_ms_cm: float,
    tap_ms_cm: float,
    pure_ms_cm: float,
    rinses: int,
    pure_rinses: int,
    rinse_ml: float,
    water_held_ml: float,
) -> RinseOrder:
    """Which water comes last, when there is not enough rain for every rinse?

    Equation:
        `after_rinses` for the purer water last, first, for tap alone and for pure water alone.
        Late rinses count most, each by (1 - k) k^(rinses after it), so the purest comes last.
    Arguments:
        start_ms_cm: pot before [mS/cm].
        tap_ms_cm: the plentiful water [mS/cm].
        pure_ms_cm: rain or reverse-osmosis water [mS/cm].
        rinses: rinses in all [-].
        pure_rinses: how many of them the pure water is enough for [-].
        rinse_ml: water of each rinse [mL].
        water_held_ml: water the drained pot keeps [mL].
    Returns:
        RinseOrder: what the pot reads after the last rinse [mS/cm].
    Valid for:
        As `after_rinses`.
    Error:
        As `after_rinses`: a bound, not a forecast.
    Raises:
        BadInput: more pure rinses than rinses.
    Sources:
        saltline-notes, flush review 4.
    """
    if pure_rinses > rinses:
        raise BadInput("pure_rinses", "must not be more than the rinses in all")

    def reads(waters: list[float]) -> float:
        return after_rinses(
            start_ms_cm=start_ms_cm,
            waters_ms_cm=waters,
            rinse_ml=rinse_ml,
            water_held_ml=water_held_ml,
        )

    tap, pure = [tap_ms_cm] * (rinses - pure_rinses), [pure_ms_cm] * pure_rinses
    warnings: tuple[str, ...] = ()
    if pure_ms_cm > tap_ms_cm:
        warnings = ("Your tap is the purer of the two: it should come last.",)
    return RinseOrder(
        pure_last_ms_cm=reads(tap + pure),
        pure_first_ms_cm=reads(pure + tap),
        all_tap_ms_cm=reads([tap_ms_cm] * rinses),
        all_pure_ms_cm=reads([pure_ms_cm] * rinses),
        warnings=warnings,
    )
