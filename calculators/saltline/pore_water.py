"""From one reading to the water inside the pot."""

from __future__ import annotations

from typing import NamedTuple

from saltline.draws import Draws
from saltline.pot import Pot
from saltline.priors import SEED, PotDraw, pot_of, pots, reading_sd, usual_water_ml
from saltline.ranges import ten_to_ninety
from saltline.saying import between
from saltline.stage_gate import refuse_below, refuse_unread

DRAWS = 200
LAST_DIGITS_MS_CM = 0.05  # what a pocket pen cannot tell apart (proposed)
LEVEL_H = 8.0  # covered hours after which a drip counts as rested
POUR_THROUGH_SHARE = 0.03  # of the pot: 120 mL for 4 L (saltline-notes, flush review 1)


class PoreWater(NamedTuple):
    """The answer of `pore_water`: strength of the water in film and granules together."""

    pot_ms_cm: float
    pot_ms_cm_low: float
    pot_ms_cm_high: float
    answer: str
    warnings: tuple[str, ...]


def pore_water(
    *,
    method: str,
    reading_ms_cm: float,
    rinse_ms_cm: float | None,
    pot_l: float,
    water_held_ml: float | None,
    soak_ml: float | None,
    soak_min: float,
    grain_mm: float,
    rested_h: float,
) -> PoreWater:
    """Strength of all the water in the pot, from one reading.

    Equation:
        pot - rinse = (reading - rinse) / share, the share that the reading shows of a pot that
        started at 1 in the model (`pot.Pot`), over the priors and the noise of the reading.
    Arguments:
        method: rested_drip, soak or pour_through.
        reading_ms_cm: the reading [mS/cm].
        rinse_ms_cm: the water used [mS/cm], or None (refused).
        pot_l: volume of the pot [L].
        water_held_ml: water the drained pot keeps [mL], or None for 8-25 % of the pot.
        soak_ml: water of the soak [mL], or None for filled to the brim.
        soak_min: minutes of the soak [min].
        grain_mm: diameter of the granules [mm].
        rested_h: hours the pot stood covered before the drip or pour [h].
    Returns:
        PoreWater: pot water with its range [mS/cm], and the answer in words.
    Valid for:
        Granules that do not bind salt; a soak of a pot that stood some hours since watering.
    Error:
        As the range says, never better than a factor 1.3 either way above the rinse water.
    Raises:
        BadInput: water held not less than the pot. Refused: no rinse reading; a reading well below
        it.
    Sources:
        saltline-notes, flush 7; altland-2021; altland-owen-2024.
    """
    rinse = refuse_unread(rinse=rinse_ms_cm)
    warnings = refuse_below(reading=reading_ms_cm, rinse=rinse, slack=LAST_DIGITS_MS_CM)
    usual_water_ml(pot_l=pot_l, weighed_ml=water_held_ml)
    noise = Draws(SEED)
    sd = reading_sd(
        method="drip" if method == "rested_drip" else method, reading_ms_cm=reading_ms_cm
    )
    found = []
    for draw in pots(count=DRAWS):
        pot = pot_of(draw=draw, grain_mm=grain_mm, pot_l=pot_l, weighed_ml=water_held_ml)
        if method == "soak":
            ml = 1000.0 * pot_l * draw.brim_share if soak_ml is None else soak_ml
            share = pot.soak(ml=ml, minutes=soak_min)
        else:
            share = _drip_share(pot, draw, method, pot_l, rested_h)
        found.append(max(0.0, reading_ms_cm + noise.normal(0.0, sd) - rinse) / share)
    low, middle, high = ten_to_ninety(found)
    return PoreWater(
        pot_ms_cm=rinse + middle,
        pot_ms_cm_low=rinse + low,
        pot_ms_cm_high=rinse + high,
        answer=_answer(method, rinse, rinse + low, rinse + high),
        warnings=tuple(warnings + _warnings(method, rested_h)),
    )


def _drip_share(pot: Pot, draw: PotDraw, method: str, pot_l: float, rested_h: float) -> float:
    """What drips show of the pot's mean after a clear watering and covered hours."""
    pot.pour(ml=pot.film_ml + pot.inside_ml)
    pot.rest(hours=rested_h)
    left = pot.left()
    if method == "rested_drip":
        return pot.film / left
    return pot.pour(ml=1000.0 * pot_l * POUR_THROUGH_SHARE) / left


def _answer(method: str, rinse: float, low: float, high: float) -> str:
    if high <= rinse + 0.1:
        return "The water in the pot is about as weak as your rinse water: nothing to wash out."
    said = f"The water in the pot is probably {between(low, high, 'mS/cm')}."
    if method == "rested_drip":
        return said + " Drips lean to the bottom and cannot see the root above the granules."
    return said + " Let it stand covered overnight and read the first drips: that narrows it."


def _warnings(method: str, rested_h: float) -> list[str]:
    if method == "rested_drip" and rested_h < LEVEL_H:
        return [
            "Film and granules need a covered night to level out: after fewer hours the drips read "
            "low, and the range is wider for it."
        ]
    return []
