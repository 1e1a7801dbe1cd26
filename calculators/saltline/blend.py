"""Tap water cut with rain or pure water to a wanted conductivity."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from saltline.conductance import conductivity_ms_cm
from saltline.errors import BadInput, Refused

# Tap waters in the order of conductance.IONS [mmol/L], scaled to the reader's own reading. How far
# a diluted tap reads above the straight line hangs on its salts, least for sodium chloride and
# most for sulfates: the middle one is the hard tap of saltline-notes (salts 4.1), the others are
# proposed ends.
SALT_TAP = (0.0, 0.0, 0.0, 5.0, 0.0, 0.0, 5.0, 0.0, 0.0, 0.0)
HARD_TAP = (2.5, 0.5, 0.0, 1.0, 0.0, 0.0, 1.5, 0.75, 0.0, 4.0)
SULFATE_TAP = (2.5, 1.0, 0.0, 0.5, 0.0, 0.0, 0.5, 2.5, 0.0, 2.0)

PEN_ERROR = 0.10  # a pocket pen on a mixed solution; saltline-notes, review S5


class WaterBlend(NamedTuple):
    """The answer of `water_blend`: what to pour together, and what the pen should then read."""

    tap_l: float
    pure_l: float
    tap_share: float
    tap_share_low: float
    tap_share_high: float
    ec_ms_cm_low: float
    ec_ms_cm_high: float
    warnings: tuple[str, ...]


def mixed(*, first: float, second: float, first_share: float) -> float:
    """A quantity of two waters mixed, for what is conserved (mg/L, meq/L, alkalinity).

    Equation:
        C = r C1 + (1 - r) C2.
    Arguments:
        first, second: concentrations, in one unit.
        first_share: r, volume share of the first [-].
    Returns:
        Concentration of the mix, in that unit.
    Valid for:
        What neither settles, escapes nor reacts. Not conductivity.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        ali-2011, worked examples; saltline-notes, salts E13.
    """
    return first_share * first + (1.0 - first_share) * second


def share_for(*, first: float, second: float, target: float) -> float:
    """Volume share of the first water that gives a wanted concentration; inverse of `mixed`.

    Equation:
        r = (C2 - Ct) / (C2 - C1).
    Arguments:
        first, second, target: concentrations, in one unit.
    Returns:
        r [-].
    Valid for:
        As mixed, with the target between the two.
    Error:
        Exact.
    Raises:
        ZeroDivisionError: two equal waters.
    Sources:
        ali-2011, worked examples; saltline-notes, salts E13.
    """
    return (second - target) / (second - first)


def diluted_ms_cm(
    *, water: Sequence[float], tap_ms_cm: float, pure_ms_cm: float, share: float
) -> float:
    """What a tap water of given salts and given reading conducts once it is diluted.

    Equation:
        Salts scaled by s so that EC(s) = tap (conductivity_ms_cm); then EC(share s) + (1 - share)
        pure.
    Arguments:
        water: salts of the tap water in the order of IONS, in any amount [mmol/L].
        tap_ms_cm, pure_ms_cm: readings of the two waters [mS/cm].
        share: volume share of tap water [-].
    Returns:
        Conductivity of the mix [mS/cm].
    Valid for:
        Tap up to 3 mS/cm; no lime lost and no carbon dioxide taken up on standing.
    Error:
        6 % for bicarbonate water, as conductivity_ms_cm.
    Raises:
        Nothing within the bounds.
    Sources:
        saltline-notes, salts E7, E8 and 8.
    """
    return _diluted(water, _strength(water, tap_ms_cm), pure_ms_cm, share)


def _conducts(water: Sequence[float], strength: float) -> float:
    return conductivity_ms_cm(mmol_l=[strength * amount for amount in water])


def _diluted(water: Sequence[float], strength: float, pure_ms_cm: float, share: float) -> float:
    return _conducts(water, share * strength) + (1.0 - share) * pure_ms_cm


def _strength(water: Sequence[float], ec_ms_cm: float) -> float:
    """How many times its listed salts a water must hold to conduct this much."""
    guess = ec_ms_cm / _conducts(water, 1.0)
    return _solved(lambda times: _conducts(water, times) / ec_ms_cm - 1.0, guess)


def _share(water: Sequence[float], tap_ms_cm: float, pure_ms_cm: float, target: float) -> float:
    """Share of this tap water in a mix that reads the target."""
    strength = _strength(water, tap_ms_cm)
    line = share_for(first=tap_ms_cm, second=pure_ms_cm, target=target)

    def over(share: float) -> float:
        return _diluted(water, strength, pure_ms_cm, share) / target - 1.0

    found = _solved(over, line)
    if found <= line:
        return found
    # Two waters that read nearly alike: the mix can read above both, and a second share of tap
    # water gives the target too. The one wanted lies below the straight line.
    low, high = 0.0, line
    for _ in range(60):
        middle = 0.5 * (low + high)
        if over(middle) < 0.0:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def _solved(function: Callable[[float], float], guess: float) -> float:
    """Where a rising, nearly straight function of a positive number is zero, by secants."""
    first, second = 0.0, max(0.0, guess)
    at_first, at_second = function(first), function(second)
    for _ in range(50):
        if abs(at_second) <= 1e-14 or at_second == at_first:
            break
        step = at_second * (second - first) / (at_second - at_first)
        first, at_first = second, at_second
        second = max(0.0, second - step)
        at_second = function(second)
    return second


def water_blend(
    *, tap_ms_cm: float, pure_ms_cm: float, target_ms_cm: float, batch_l: float
) -> WaterBlend:
    """How much tap water and how much pure water make a batch that reads the target.

    Equation:
        EC of a mix lies above the straight line between the two waters, as ions hinder each other
        less when diluted: diluted_ms_cm(share) = target solved for the share of a hard tap, and
        for the least and the most curved tap (tap_share_low, tap_share_high). The mix should read
        within 10 % of the target, or as those two waters would at the share given.
    Arguments:
        tap_ms_cm, pure_ms_cm: readings of the two waters [mS/cm], 0 to 3.
        target_ms_cm: wanted reading, from that of the pure water to that of the tap [mS/cm].
        batch_l: finished water [L].
    Returns:
        WaterBlend.
    Valid for:
        Tap up to 3 mS/cm, mixed and read at once.
    Error:
        As the ranges say.
    Raises:
        BadInput: the pure water reads as much as the tap.
        Refused: a target outside the two waters.
    Sources:
        saltline-notes, salts 8 and review S1; ali-2011 for the straight line.
    """
    if pure_ms_cm >= tap_ms_cm:
        raise BadInput("pure_ms_cm", "must be less than the tap water")
    if target_ms_cm > tap_ms_cm:
        raise Refused(
            "Your tap water already reads less than the target, and pure water only weakens it.",
            "Use the tap water as it is. If the reading should be higher, feed does that.",
        )
    if target_ms_cm < pure_ms_cm:
        raise Refused(
            "Your pure water reads more than the target, so no mix can reach it.",
            "Use the pure water alone, or find purer: fresh rain, or a renewed filter.",
        )
    shares = [
        _share(water, tap_ms_cm, pure_ms_cm, target_ms_cm)
        for water in (SULFATE_TAP, HARD_TAP, SALT_TAP)
    ]
    low, share, high = shares
    reads = [
        _diluted(water, _strength(water, tap_ms_cm), pure_ms_cm, share)
        for water in (SALT_TAP, SULFATE_TAP)
    ]
    return WaterBlend(
        tap_l=share * batch_l,
        pure_l=(1.0 - share) * batch_l,
        tap_share=share,
        tap_share_low=low,
        tap_share_high=high,
        ec_ms_cm_low=min(reads[0], (1.0 - PEN_ERROR) * target_ms_cm),
        ec_ms_cm_high=max(reads[1], (1.0 + PEN_ERROR) * target_ms_cm),
        warnings=(),
    )
