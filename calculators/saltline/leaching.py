"""Leaching sums made for fields: background to the care pages, none of them a rule for a pot.

They hide how much water the ground holds and how fast it lets go. A pot of granules is limited by
time, not by water, so nothing here feeds a calculator. Each function says how well it is sourced.
"""

from __future__ import annotations

# Hoffman's k by the way the water is given: memory, the papers were not read.
HOFFMAN_INTERMITTENT = 0.1
HOFFMAN_PONDED_CLAY_LOAM = 0.3
HOFFMAN_PONDED_ORGANIC = 0.45


def leaching_share(*, drained_ml: float, applied_ml: float) -> float:
    """Share of the water given to a container that leaves it.

    Equation:
        LF = drained / applied.
    Arguments:
        drained_ml: water caught below [mL].
        applied_ml: water that entered the container [mL], above 0.
    Returns:
        LF [-].
    Valid for:
        Any container; nurseries aim low, for example under 0.15.
    Error:
        Exact: a definition.
    Raises:
        ZeroDivisionError: nothing applied.
    Sources:
        million-yeager-ep529 (opening only).
    """
    return drained_ml / applied_ml


def requirement_surface(*, water_ms_cm: float, extract_ms_cm: float) -> float:
    """Leaching requirement of a field under surface or sprinkler irrigation.

    Equation:
        LR = ECw / (5 ECe - ECw).
    Arguments:
        water_ms_cm: ECw, the irrigation water [mS/cm].
        extract_ms_cm: ECe, the saturated extract that the crop tolerates [mS/cm].
    Returns:
        LR [-].
    Valid for:
        Fields. Its saturated extract is about half as strong as the water in a pot.
    Error:
        Not known for pots.
    Raises:
        ZeroDivisionError: 5 ECe equal to ECw.
    Sources:
        fao-29 (second-hand: read in works that quote it, which number the equation 7 or 9).
    """
    return water_ms_cm / (5.0 * extract_ms_cm - water_ms_cm)


def requirement_drip(*, water_ms_cm: float, extract_no_yield_ms_cm: float) -> float:
    """Leaching requirement of a field under frequent drip irrigation.

    Equation:
        LR = ECw / (2 max ECe).
    Arguments:
        water_ms_cm: ECw, the irrigation water [mS/cm].
        extract_no_yield_ms_cm: max ECe, the saturated extract at which nothing grows [mS/cm].
    Returns:
        LR [-].
    Valid for:
        Fields.
    Error:
        Not known for pots.
    Raises:
        ZeroDivisionError: an extract of 0.
    Sources:
        fao-29 (second-hand).
    """
    return water_ms_cm / (2.0 * extract_no_yield_ms_cm)


def requirement_balance(*, water_ms_cm: float, drain_ms_cm: float) -> float:
    """Leaching requirement from the salt balance alone.

    Equation:
        LR = ECw / ECdw; for a pot, feed over the strength the drained water may have.
    Arguments:
        water_ms_cm: ECw, what goes in [mS/cm].
        drain_ms_cm: ECdw, what may come out [mS/cm].
    Returns:
        LR [-].
    Valid for:
        A steady state without rain or uptake.
    Error:
        Exact for its assumption.
    Raises:
        ZeroDivisionError: a drain of 0.
    Sources:
        usda-60 (second-hand).
    """
    return water_ms_cm / drain_ms_cm


def applied_water(*, used: float, requirement: float) -> float:
    """Water to apply so that the requirement is left over to drain.

    Equation:
        AW = ET / (1 - LR).
    Arguments:
        used: ET, water used [mm or mL].
        requirement: LR [-], under 1.
    Returns:
        AW [unit of `used`].
    Valid for:
        Any water balance.
    Error:
        Exact: a balance.
    Raises:
        ZeroDivisionError: LR of 1.
    Sources:
        fao-29 (second-hand); saltline-notes, flush 1.
    """
    return used / (1.0 - requirement)


def hoffman_depth(
    *, start_ms_cm: float, goal_ms_cm: float, k: float, floor_ms_cm: float = 0.0
) -> float:
    """Depth of water per depth of field soil that brings its salt down, by Hoffman's rule.

    Equation:
        dl/ds = k (C0 - Ceq) / (C - Ceq).
    Arguments:
        start_ms_cm: C0 [mS/cm].
        goal_ms_cm: C [mS/cm], above the floor.
        k: 0.1 intermittent, 0.3 ponded on clay loam, 0.45 ponded on organic soil [-].
        floor_ms_cm: Ceq, what the water itself leaves behind [mS/cm].
    Returns:
        dl/ds [depth of water per depth of soil].
    Valid for:
        Fields, where the result exceeds k.
    Error:
        Not known for pots: k hides how much water the soil holds.
    Raises:
        ZeroDivisionError: a goal at the floor.
    Sources:
        hoffman-1980 (memory).
    """
    return k * (start_ms_cm - floor_ms_cm) / (goal_ms_cm - floor_ms_cm)


def reeve_depth(*, start_ms_cm: float, goal_ms_cm: float) -> float:
    """Depth of ponded water per depth of field soil that brings its salt down, by Reeve's rule.

    Equation:
        dl/ds = C0 / (5 C) + 0.15.
    Arguments:
        start_ms_cm: C0 [mS/cm].
        goal_ms_cm: C [mS/cm], above 0.
    Returns:
        dl/ds [depth of water per depth of soil].
    Valid for:
        Ponded fields.
    Error:
        Not known for pots.
    Raises:
        ZeroDivisionError: a goal of 0.
    Sources:
        reeve-1955 (memory).
    """
    return start_ms_cm / (5.0 * goal_ms_cm) + 0.15
