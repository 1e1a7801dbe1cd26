"""How to bring a pot down: pours or soaks, water and mornings, until a rested drip reads low."""

from __future__ import annotations

from typing import NamedTuple

from saltline.errors import Refused
from saltline.mixing import full_mixing
from saltline.mornings import (
    A_MORNING,
    COVER,
    GENTLE_A_MORNING,
    LIFT_BEADS,
    MORNINGS,
    READ,
    SOAK_MIN,
    STOP_AT_ONCE,
    WARM_DAY,
)
from saltline.priors import brim_ml, usual_water_ml
from saltline.ranges import after_each
from saltline.saying import COUNTS, counts, figure, shares
from saltline.stage_gate import gentle, medium_warnings, refuse_softened, refuse_unread
from saltline.washes import Asked, washes_needed

TARGET_SHARE = 0.25  # of the excess (proposed)
NEAREST_MS_CM = 0.1  # a target this near the rinse water cannot be told from it by a pocket pen


class FlushPlan(NamedTuple):
    """The answer of `flush_plan`."""

    pours_low: int
    pours_high: int
    reached: str
    each_ml: float
    water_l_low: float
    water_l_high: float
    mornings_low: int
    mornings_high: int
    left_share_low: float
    left_share_high: float
    at_least_l: float
    stop_ms_cm: float | None
    left_each_share_low: list[float]
    left_each_share_high: list[float]
    steps: tuple[str, ...]
    warnings: tuple[str, ...]


def target_excess(
    *,
    excess_ms_cm: float,
    rinse_ms_cm: float,
    target_ms_cm: float | None,
    feed_ms_cm: float | None,
) -> float:
    """The excess over the rinse water at which a flush may stop.

    Equation:
        As asked; else the lower of a quarter of the excess and the feed's own excess, and never
        less than 0.1 mS/cm.
    Arguments:
        excess_ms_cm: pot above the rinse water [mS/cm].
        rinse_ms_cm: rinse water [mS/cm].
        target_ms_cm: what the grower asks for [mS/cm], or None.
        feed_ms_cm: feed [mS/cm], or None.
    Returns:
        Excess [mS/cm].
    Valid for:
        Any pot.
    Error:
        None; a house rule (proposed).
    Raises:
        Refused: target within 0.1 mS/cm of the rinse water.
    Sources:
        saltline-notes.
    """
    if target_ms_cm is not None:
        # A millionth, so that 0.4 - 0.3 counts as 0.1.
        if target_ms_cm - rinse_ms_cm < NEAREST_MS_CM - 1e-6:
            raise Refused(
                "A target within 0.1 mS/cm of the rinse water cannot be reached for certain: no "
                "flush goes below its water, and a pocket pen cannot tell the last 0.1.",
                f"Aim at {figure(rinse_ms_cm + NEAREST_MS_CM)} mS/cm or more, or flush with rain "
                "or reverse-osmosis water.",
            )
        return target_ms_cm - rinse_ms_cm
    goal = TARGET_SHARE * excess_ms_cm
    if feed_ms_cm is not None:
        goal = min(goal, feed_ms_cm - rinse_ms_cm)
    return max(goal, NEAREST_MS_CM)


def flush_plan(
    *,
    stage: str,
    kind: str,
    pot_ms_cm: float | None,
    rinse_ms_cm: float | None,
    target_ms_cm: float | None,
    feed_ms_cm: float | None,
    pot_l: float,
    water_held_ml: float | None,
    grain_mm: float,
    live_prills: str,
    way: str,
    medium: str,
    softened: str,
) -> FlushPlan:
    """Pours or soaks, water and mornings that bring a pot down to its target.

    Equation:
        Number of washes after which the share left (`wash_by_wash`) is at most the target's
        share of the excess, over the priors. At least: n Vr (F^(1/n) - 1), full mixing.
    Arguments:
        stage, kind: the plant, see `stage_gate.gentle`.
        pot_ms_cm: first drips after a covered night [mS/cm], or None (shares only).
        rinse_ms_cm: rinse water [mS/cm], or None (refused).
        target_ms_cm: stop when it reads [mS/cm], or None for the house rule (`target_excess`).
        feed_ms_cm: feed [mS/cm], or None.
        pot_l: volume of the pot [L].
        water_held_ml: water the drained pot keeps [mL], or None for 8-25 % of the pot.
        grain_mm: diameter of the granules [mm].
        live_prills: yes when slow-release beads in the pot still feed.
        way: pours (of one pot water each) or soaks (to the brim, 10 min).
        medium: granules or bark.
        softened: yes when the water comes from a softener (refused).
    Returns:
        FlushPlan. `pours_` count washes of the way chosen; shares left are those after pours_high.
    Valid for:
        Granules that do not bind salt; a growing or maturing plant, or a gentle flush at rest.
    Error:
        As the ranges say. A pour is the least certain wash: water may run past or push ahead.
    Raises:
        BadInput: water held not less than the pot. Refused: stage, softened water, no rinse
        reading, target too near the rinse water.
    Sources:
        saltline-notes, flush 3, 5 and review 4.
    """
    resting = gentle(stage=stage, kind=kind)
    refuse_softened(softened=softened)
    held = usual_water_ml(pot_l=pot_l, weighed_ml=water_held_ml)
    pours = way == "pours"
    each = held if pours else brim_ml(pot_l=pot_l)
    goal, stop = _goal(pot_ms_cm, refuse_unread(rinse=rinse_ms_cm), target_ms_cm, feed_ms_cm)
    warnings = tuple(medium_warnings(medium=medium, live_prills=live_prills))
    if goal >= 1.0:
        return _nothing_to_do(each, stop, warnings)
    a_morning = GENTLE_A_MORNING if resting else A_MORNING
    most = MORNINGS * a_morning
    weighed = None if water_held_ml is None else water_held_ml / pot_l
    asked = Asked(grain_mm=grain_mm, weighed_ml=weighed, pours=pours, a_morning=a_morning)
    low, high, runs = washes_needed(asked=asked, goal=goal)
    reached, high = high <= most, min(high, most)
    lows, highs = after_each(runs=runs, washes=high)
    return FlushPlan(
        pours_low=low,
        pours_high=high,
        reached="yes" if reached else "no",
        each_ml=each,
        water_l_low=low * each / 1000.0,
        water_l_high=high * each / 1000.0,
        mornings_low=(low + a_morning - 1) // a_morning,
        mornings_high=(high + a_morning - 1) // a_morning,
        left_share_low=lows[-1],
        left_share_high=highs[-1],
        at_least_l=_at_least_l(goal, held, low, each),
        stop_ms_cm=stop,
        left_each_share_low=lows,
        left_each_share_high=highs,
        steps=_first_steps(live_prills, resting)
        + _wash_steps(pours, each, resting)
        + _last_steps(counts(low, high, way[:-1]), reached, stop, shares(lows[-1], highs[-1])),
        warnings=warnings,
    )


def _goal(
    pot: float | None, rinse: float, target: float | None, feed: float | None
) -> tuple[float, float | None]:
    """Target as a share of the excess, and as a reading where there is one."""
    if pot is None:
        if target is not None:
            return TARGET_SHARE, rinse + target_excess(
                excess_ms_cm=0.0, rinse_ms_cm=rinse, target_ms_cm=target, feed_ms_cm=feed
            )
        return TARGET_SHARE, None
    goal = target_excess(
        excess_ms_cm=pot - rinse, rinse_ms_cm=rinse, target_ms_cm=target, feed_ms_cm=feed
    )
    return (goal / (pot - rinse) if pot - rinse > goal else 1.0), rinse + goal


def _at_least_l(goal: float, held_ml: float, rinses: int, each_ml: float) -> float:
    """Full mixing in as many rinses; a pot that holds less than assumed may do with less."""
    mixing = full_mixing(times_down=1.0 / goal, water_held_ml=held_ml, rinses=rinses).water_ml
    return min(mixing, rinses * each_ml) / 1000.0


def _nothing_to_do(each: float, stop: float | None, warnings: tuple[str, ...]) -> FlushPlan:
    return FlushPlan(
        pours_low=0,
        pours_high=0,
        reached="yes",
        each_ml=each,
        water_l_low=0.0,
        water_l_high=0.0,
        mornings_low=0,
        mornings_high=0,
        left_share_low=1.0,
        left_share_high=1.0,
        at_least_l=0.0,
        stop_ms_cm=stop,
        left_each_share_low=[],
        left_each_share_high=[],
        steps=("Nothing to wash out: the pot already reads at or under the target.",),
        warnings=warnings,
    )


def _first_steps(live_prills: str, resting: bool) -> tuple[str, ...]:
    steps = [LIFT_BEADS] if live_prills == "yes" else []
    steps.append(
        "The evening before, water the pot with the water you will flush with and let it drain "
        "for 15 minutes."
    )
    if resting:
        steps.insert(0, WARM_DAY)
    return tuple(steps + [COVER, READ])


def _wash_steps(pours: bool, each_ml: float, resting: bool) -> tuple[str, ...]:
    if pours:
        wash = (
            f"Pour about {figure(each_ml)} mL at 20 to 25 °C slowly over the whole top, for some "
            "3 minutes, turning the pot over its own basin. Throw that water away."
        )
    else:
        wash = (
            f"Fill the pot to the brim with about {figure(each_ml)} mL at 20 to 25 °C, leave it "
            f"{figure(SOAK_MIN)} min in its own basin, and let it drain. Throw that water away."
        )
    if resting:
        return (wash + " Once a morning is enough.",)
    return (
        wash,
        f"Do this up to {COUNTS[A_MORNING]} times, an hour apart, drained and airy in between; "
        "finish by mid-afternoon. Keep your purest water for the last.",
    )


def _last_steps(washes: str, reached: bool, stop: float | None, left: str) -> tuple[str, ...]:
    when = "reads a quarter as far above your rinse water as at the start"
    if stop is not None:
        shown = int(100.0 * stop + 0.5) / 100.0  # a pen shows no finer
        when = f"reads {figure(shown, 3)} mS/cm or less"
    said = (
        "Cover it for the night again and read the first drips. Stop when that "
        f"{when}, or when a morning has changed it by less than a fifth (then look for live beads, "
        "bark or lime); else another morning."
    )
    if reached:
        return (said, f"Expect {washes} in all.", STOP_AT_ONCE)
    return (
        said,
        f"Expect {washes}, and even the last may not get there: {left} of the salt may be left. "
        "Then stop, and repot into fresh granules when new roots start.",
        STOP_AT_ONCE,
    )
