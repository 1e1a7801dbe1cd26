"""Washing by full mixing: the least water that could bring a pot down."""

from __future__ import annotations

from math import log
from typing import NamedTuple


class FullMixing(NamedTuple):
    """The answer of `full_mixing`: water in all for equal rinses, and for an endless trickle."""

    water_ml: float
    trickle_ml: float
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
