"""What can be done for a pot today, without waiting for a rested reading."""

from __future__ import annotations

from typing import NamedTuple

from saltline.draws import quantile
from saltline.granules import PLANT_LIMIT_MIN, SOAKS_A_DAY
from saltline.mornings import (
    COVER,
    GENTLE_A_MORNING,
    LIFT_BEADS,
    READ,
    REST_H,
    STOP_AT_ONCE,
    WARM_DAY,
    wash_by_wash,
)
from saltline.priors import brim_ml, pot_of, pots
from saltline.ranges import after_each
from saltline.saying import COUNTS, figure, shares
from saltline.stage_gate import gentle, medium_warnings, refuse_softened

DRAWS = 150
SHORT_COVER_H = 4.0  # for a reader who cannot wait a night
SECOND_DAY_SHARE = 0.25  # more than the usual target may be left: plan another day


class FlushToday(NamedTuple):
    """The answer of `flush_today`: soaks still to do today and the share of salt left then."""

    soaks_today: int
    each_ml: float
    rest_h: float
    left_share_low: float
    left_share_high: float
    left_each_share_low: list[float]
    left_each_share_high: list[float]
    next: str
    steps: tuple[str, ...]
    warnings: tuple[str, ...]


def flush_today(
    *,
    stage: str,
    kind: str,
    grain_mm: float,
    pot_l: float,
    live_prills: str,
    soaks_done: int,
    soak_min: float,
    tap_ms_cm: float | None,
    medium: str,
    softened: str,
) -> FlushToday:
    """Soaks for today, and what they leave.

    Equation:
        `wash_by_wash` over the priors for the soaks done and to do, filled to the brim, an hour
        apart: shares of the excess over the tap, so no reading is needed.
    Arguments:
        stage, kind: the plant, see `stage_gate.gentle`.
        grain_mm: diameter of the granules [mm].
        pot_l: volume of the pot [L].
        live_prills: yes when slow-release beads in the pot still feed.
        soaks_done: soaks already done today [-].
        soak_min: minutes of each soak [min]; beyond half an hour counted as that.
        tap_ms_cm: the water used [mS/cm], or None.
        medium: granules or bark.
        softened: yes when the water comes from a softener (refused).
    Returns:
        FlushToday: soaks, water, rest, share left, what comes next, and the steps in words.
    Valid for:
        Granules that do not bind salt; a growing or maturing plant, or a gentle soak at rest.
    Error:
        As the range says.
    Raises:
        Refused: stages that are not flushed, softened water.
    Sources:
        saltline-notes, flush 5 and review 3.
    """
    resting = gentle(stage=stage, kind=kind)
    refuse_softened(softened=softened)
    most = GENTLE_A_MORNING if resting else SOAKS_A_DAY
    today = max(0, most - soaks_done)
    minutes = min(soak_min, PLANT_LIMIT_MIN)
    runs, shown = [], []
    for draw in pots(count=DRAWS):
        pot = pot_of(draw=draw, grain_mm=grain_mm, pot_l=pot_l, weighed_ml=None)
        after = wash_by_wash(
            pot,
            washes=soaks_done + today,
            a_morning=soaks_done + today,
            ml=1000.0 * pot_l * draw.brim_share,
            soak_min=minutes,
        )
        runs.append(list(after))
        pot.rest(hours=SHORT_COVER_H)
        shown.append(pot.film / pot.left())
    lows, highs = after_each(runs=runs, washes=soaks_done + today)
    low, high = lows[-1], highs[-1]
    each = brim_ml(pot_l=pot_l)
    warnings = medium_warnings(medium=medium, live_prills=live_prills)
    if soak_min > PLANT_LIMIT_MIN:
        warnings.append(
            "Half an hour a soak is enough for the plant: more soaks, not longer ones. Each is "
            "counted as half an hour here."
        )
    return FlushToday(
        soaks_today=today,
        each_ml=each,
        rest_h=REST_H,
        left_share_low=low,
        left_share_high=high,
        left_each_share_low=lows,
        left_each_share_high=highs,
        next=_next(low, high, quantile(sorted(shown), 0.1), tap_ms_cm, resting),
        steps=_steps(today, each, minutes, live_prills, resting),
        warnings=tuple(warnings),
    )


def _next(low: float, high: float, shown: float, tap: float | None, resting: bool) -> str:
    said = f"Of the salt above your tap, probably {shares(low, high)} is left in the pot then."
    if resting:
        said += " Leave it at that until the plant grows again."
    elif high > SECOND_DAY_SHARE:
        said += " Plan a second day: granules of this size let go slowly."
    else:
        said += " Tomorrow's first drips decide whether a second day is needed."
    if shown < 0.9:
        said += (
            " If you cannot wait a night, first drips after 4 covered hours may read as much as "
            f"{figure(100.0 * (1.0 - shown), 1)} % low."
        )
    else:
        said += " If you cannot wait a night, first drips after 4 covered hours will do."
    if tap is None:
        return said + " It never gets below what your tap reads."
    return said + f" It never gets below your tap, {figure(tap)} mS/cm."


def _steps(
    today: int, each_ml: float, soak_min: float, live_prills: str, resting: bool
) -> tuple[str, ...]:
    steps = [LIFT_BEADS] if live_prills == "yes" else []
    if today == 0:
        steps.append("Enough for today: more water drowns roots. Let the pot drain and stand airy.")
    else:
        if resting:
            steps.append(WARM_DAY)
        steps.append(
            "Use clear water at 20 to 25 °C where the air is 18 °C or more. One pot, one basin: "
            "throw the water away, never dip the next pot in it."
        )
        steps.append(
            f"Fill the pot to the brim, about {figure(each_ml)} mL, leave it "
            f"{figure(soak_min)} min, and let it drain. Keep crown and new shoots dry."
        )
        if today > 1:
            steps.append(
                f"Do this {COUNTS[today]} times, an hour apart, drained and airy in between. "
                "Finish by mid-afternoon."
            )
    return tuple(steps + [COVER, READ, STOP_AT_ONCE])
