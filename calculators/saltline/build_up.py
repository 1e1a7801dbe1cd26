"""How salt builds up in a pot between flushes: a balance of its water and salt."""

from __future__ import annotations

from math import atanh, log
from typing import NamedTuple

# Largest share of the salt fed that a plant is taken to keep. Orchid roots kept 17-28 % of the
# nitrogen sprayed on them (docs/sources.json: panjama-2018); 0.3 for all salts is our estimate.
UPTAKE_SHARE_HIGH = 0.3
DRAINS_SHARE = 1e-6  # a drained share under this is nothing that a jug could catch
NEVER_DAYS = 36525.0  # a century


class BuildUp(NamedTuple):
    """The answer of `build_up`; what never happens or does not exist is None."""

    days_low: float | None
    days_high: float | None
    steady_ms_cm: float | None
    time_constant_days: float | None
    steady_ms_cm_low: float | None
    enough_share: float | None
    warnings: tuple[str, ...]


def after_waterings(
    *,
    start_ms_cm: float,
    feed_ms_cm: float,
    water_held_ml: float,
    applied_ml: float,
    drained_ml: float,
    waterings: int,
    runs_past_share: float = 0.0,
    uptake_ms_cm_ml: float = 0.0,
) -> float:
    """Strength of the water in the drained pot after some equal waterings with feed.

    Equation:
        C' = (C Vr - U + Cf (V - b D)) / (Vr + (1 - b) D), not below zero; between waterings the
        plant and the air take V - D of pure water.
    Arguments:
        start_ms_cm: C of the drained pot before the first watering [mS/cm].
        feed_ms_cm: Cf, what is poured on [mS/cm].
        water_held_ml: Vr, water the drained pot keeps [mL].
        applied_ml: V, poured on at each watering [mL].
        drained_ml: D, drained at each watering [mL].
        waterings: how many [-].
        runs_past_share: b, share of the drained water that ran past without mixing [-].
        uptake_ms_cm_ml: U, salt the plant takes between two waterings [mS/cm mL].
    Returns:
        C after the last watering has drained [mS/cm].
    Valid for:
        Salts that stay dissolved and do not stick to the granules; EC taken as linear in salt.
    Error:
        A mixed pot: within 15 % of leachate measured on a crop in peat, at assumed volumes.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush 8; ku-hershey-1991 for the comparison.
    """
    strength = start_ms_cm
    past_ml = runs_past_share * drained_ml
    for _ in range(waterings):
        salt = strength * water_held_ml - uptake_ms_cm_ml + feed_ms_cm * (applied_ml - past_ml)
        strength = max(0.0, salt / (water_held_ml + drained_ml - past_ml))
    return strength


def steady_drain(*, feed: float, drained_share: float, uptake_share: float = 0.0) -> float:
    """Strength at which the drained water levels off when nothing changes.

    Equation:
        C = (1 - u) Cf / LF: the salt fed and not taken up leaves in the drained share.
    Arguments:
        feed: Cf [mS/cm, or mg/L of anything dissolved].
        drained_share: LF, drained over poured on [-], above 0.
        uptake_share: u, share of the salt fed that the plant keeps [-].
    Returns:
        C [unit of `feed`].
    Valid for:
        Any pot, mixed or not, once it has levelled off.
    Error:
        Exact for its assumption. At small LF a crop ends long before it levels off.
    Raises:
        ZeroDivisionError: LF of 0, where nothing levels off.
    Sources:
        saltline-notes, flush 8.
    """
    return (1.0 - uptake_share) * feed / drained_share


def time_constant(
    *, water_held_ml: float, water_use_ml_day: float, drained_share: float
) -> float | None:
    """Days in which the distance to the steady strength shrinks to 37 %.

    Equation:
        T = Vr (1 - LF) / (ET LF); none where nothing drains.
    Arguments:
        water_held_ml: Vr, water the drained pot keeps [mL].
        water_use_ml_day: ET, what plant and air take [mL/day].
        drained_share: LF, drained over poured on [-].
    Returns:
        T [days], or None.
    Valid for:
        Waterings close together against T.
    Error:
        Pots that use most of their water between two waterings are up to a fifth slower.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush 8.
    """
    if drained_share < DRAINS_SHARE:
        return None
    return water_held_ml * (1.0 - drained_share) / (water_use_ml_day * drained_share)


def _days_to(
    *, start: float, feed: float, limit: float, held: float, use: float, share: float
) -> float | None:
    """Days until a mixed pot fed `feed` stands at `limit`; None where no grower sees it."""
    if start >= limit:
        return 0.0
    if share < DRAINS_SHARE:
        gain = use * feed / held
        days = (limit - start) / gain if gain > 0.0 else NEVER_DAYS
    else:
        steady = feed / share
        if steady <= limit:
            return None
        x = (limit - start) / (steady - limit)
        # ln(1 + x), written so that a small drained share loses no figures.
        gap = log(1.0 + x) if x > 0.1 else 2.0 * atanh(x / (2.0 + x))
        days = held * (1.0 - share) / (use * share) * gap
    return days if days < NEVER_DAYS else None


def build_up(
    *,
    feed_ms_cm: float,
    start_ms_cm: float,
    limit_ms_cm: float,
    drained_share: float,
    water_use_ml_day: float,
    water_held_ml: float,
) -> BuildUp:
    """When the water in a pot that is fed at every watering reaches the reader's own limit.

    Equation:
        Vr dC/dt = ET ((1 - u) Cf - LF C) / (1 - LF). It levels off at (1 - u) Cf / LF with the
        time constant Vr (1 - LF) / (ET LF); without drainage C rises by (1 - u) ET Cf / Vr a day.
        Soonest with u = 0, latest with u = 0.3.
    Arguments:
        feed_ms_cm: Cf, what is poured on, at every watering [mS/cm].
        start_ms_cm: strength now, by the first drips after standing covered [mS/cm].
        limit_ms_cm: the reader's own limit [mS/cm].
        drained_share: LF, drained over poured on [-], 0 to 0.9.
        water_use_ml_day: ET, what plant and air take [mL/day].
        water_held_ml: Vr, water the drained pot keeps [mL].
    Returns:
        BuildUp: days [days] (None for never, or not in a century), the level without uptake and
        with it [mS/cm], the time constant [days], and the share to drain that holds the limit
        without uptake [-].
    Valid for:
        A mixed pot of granules that do not hold salt, watered often, no slow-release beads.
    Error:
        The range covers uptake only. Water that runs past makes it sooner; layers hide salt.
    Raises:
        Nothing within the bounds.
    Sources:
        saltline-notes, flush 1 and 8; panjama-2018 for the order of uptake.
    """
    pot = {"held": water_held_ml, "use": water_use_ml_day, "share": drained_share}
    kept_out = (1.0 - UPTAKE_SHARE_HIGH) * feed_ms_cm
    warnings = []
    if start_ms_cm < limit_ms_cm <= feed_ms_cm:
        warnings.append(
            "Your limit is not above the feed itself: no draining holds a pot under what goes in."
        )
    drains = drained_share >= DRAINS_SHARE
    if not drains and feed_ms_cm > 0.0:
        warnings.append(
            "Nothing drains: all the salt that the plant leaves stays. Let some run out below."
        )
    return BuildUp(
        days_low=_days_to(start=start_ms_cm, feed=feed_ms_cm, limit=limit_ms_cm, **pot),
        days_high=_days_to(start=start_ms_cm, feed=kept_out, limit=limit_ms_cm, **pot),
        steady_ms_cm=feed_ms_cm / drained_share if drains else None,
        time_constant_days=time_constant(
            water_held_ml=water_held_ml,
            water_use_ml_day=water_use_ml_day,
            drained_share=drained_share,
        ),
        steady_ms_cm_low=kept_out / drained_share if drains else None,
        enough_share=feed_ms_cm / limit_ms_cm if feed_ms_cm < limit_ms_cm else None,
        warnings=tuple(warnings),
    )
