"""What is assumed of a pot nobody has measured, and the draws made from it.

Proposed ranges: no leaching curve of clay granules was found in print. They are kept to sums,
products and square roots where they can be, so that every engine draws the same pots.
"""

from __future__ import annotations

from math import exp, log, sqrt
from typing import NamedTuple

from saltline.draws import Draws
from saltline.errors import BadInput
from saltline.pot import Pot

# Diffusivity of salt in the wet pores of a granule [1e-9 m2/s]: 1.5 in free water over a tortuosity
# of 2 (measured, docs/sources.json: roberts-1987) gives the high end; dense skins and air-filled
# pores the low end (proposed).
DIFFUSIVITY_LOW, DIFFUSIVITY_USUAL, DIFFUSIVITY_HIGH = 0.1, 0.5, 0.75
FILM_SHARE, FILM_SHARE_SD = 0.25, 0.10  # water outside the granules, of all water held (proposed)
WATER_SHARES = (0.08, 0.15, 0.25)  # water held over pot volume: low, middle, high (proposed)
WEIGHING_ERROR = 0.15  # either way, of a twin pot's water (proposed)
BY_PASS_HIGH = 0.6  # largest share of a pour that runs straight past (proposed)
BRIM_SHARES = (0.3, 0.5)  # water that fills a drained pot to the brim, over pot volume (proposed)
BUCKET_SHARES = (0.7, 1.5)  # water that reaches the granules in a bucket (proposed)

NIGHT_H = 12.0  # a covered night: film and granules level out

# Standard deviation of a reading: a share of it, and 8 uS/cm of a pocket pen. A drip leans to the
# bottom of the pot (docs/sources.json: altland-owen-2024), hence its larger share (proposed).
BATH_NOISE, DRIP_NOISE, PEN_NOISE_MS_CM = 0.02, 0.06, 0.008

SEED = 2026
# Richtmyer's sequence: multiples of square roots of primes, modulo 1, fill a box evenly.
STEPS = (sqrt(2.0), sqrt(3.0), sqrt(5.0), sqrt(7.0), sqrt(11.0))


WHOLE = [(0.0, 1.0) for _ in STEPS]  # all of every prior


class PotDraw(NamedTuple):
    """One pot that could be the reader's."""

    place: list[float]  # where it lies in each prior, 0 to 1
    diffusivity: float  # [1e-9 m2/s]
    film_share: float
    water_share: float  # water held over pot volume, where nobody weighed it
    weighing: float  # true water held over the weighed one
    by_pass: float
    brim_share: float
    bucket_share: float


def diffusivity_at(place: float) -> float:
    """Diffusivity at a place in its prior.

    Equation:
        Da = 0.1 (0.75 / 0.1)^place: log-uniform.
    Arguments:
        place: share of the prior below it [-].
    Returns:
        Da of salt in the wet pores [1e-9 m2/s].
    Valid for:
        Porous granules, 20-25 C.
    Error:
        Proposed; no measurement of clay granules was found.
    Raises:
        Nothing.
    Sources:
        roberts-1987; saltline-notes, flush review 0.
    """
    return DIFFUSIVITY_LOW * exp(place * log(DIFFUSIVITY_HIGH / DIFFUSIVITY_LOW))


def film_share_at(place: float) -> float:
    """Film share at a place in its prior.

    Equation:
        triangular about 0.25 with a standard deviation of 0.10: the bell curve without its tails.
    Arguments:
        place: share of the prior below it [-].
    Returns:
        Water outside the granules over all water held [-].
    Valid for:
        Drained pots of granules.
    Error:
        Proposed.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    half = sqrt(6.0) * FILM_SHARE_SD
    if place < 0.5:
        return FILM_SHARE - half * (1.0 - sqrt(2.0 * place))
    return FILM_SHARE + half * (1.0 - sqrt(2.0 * (1.0 - place)))


def water_share_at(place: float) -> float:
    """Water held over pot volume at a place in its prior.

    Equation:
        even from 8 to 15 % below the middle, even from 15 to 25 % above it.
    Arguments:
        place: share of the prior below it [-].
    Returns:
        Water held over pot volume [-].
    Valid for:
        Drained pots of granules.
    Error:
        Proposed; peat, moss and bark hold more.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    low, middle, high = WATER_SHARES
    if place < 0.5:
        return low + 2.0 * place * (middle - low)
    return middle + (2.0 * place - 1.0) * (high - middle)


def pots(*, count: int, first: int = 0, box: list[tuple[float, float]] = WHOLE) -> list[PotDraw]:
    """Draws of pots, evenly spread over the priors, the same on every engine.

    Equation:
        place = frac(start + n sqrt(prime)), one prime a property (Richtmyer), start by `Draws`.
    Arguments:
        count: how many [-].
        first: number of draws already taken, to go on from there [-].
        box: part of each prior to draw from, as shares of it.
    Returns:
        `count` draws.
    Valid for:
        Some thousands of draws.
    Error:
        Quantiles of 200 draws within about 2 % of the prior's own.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush; richtmyer-1951; park-miller-1988.
    """
    stream = Draws(SEED)
    starts = [stream.uniform() for _ in STEPS]
    along = [(low, high - low, start, step) for start, step, (low, high) in zip(starts, STEPS, box)]
    return [
        pot_at([low + width * ((start + number * step) % 1.0) for low, width, start, step in along])
        for number in range(first + 1, first + count + 1)
    ]


def pot_at(place: list[float]) -> PotDraw:
    """The pot at a place in the priors.

    Equation:
        each property at its own place.
    Arguments:
        place: five shares, one a prior [-].
    Returns:
        The draw.
    Valid for:
        Shares from 0 to 1.
    Error:
        None.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush.
    """
    return PotDraw(
        place=place,
        diffusivity=diffusivity_at(place[0]),
        film_share=film_share_at(place[1]),
        water_share=water_share_at(place[2]),
        weighing=1.0 - WEIGHING_ERROR + 2.0 * WEIGHING_ERROR * place[2],
        by_pass=BY_PASS_HIGH * place[3],
        brim_share=_along(BRIM_SHARES, place[4]),
        bucket_share=_along(BUCKET_SHARES, place[4]),
    )


def _along(ends: tuple[float, float], place: float) -> float:
    return ends[0] + place * (ends[1] - ends[0])


def usual_water_ml(*, pot_l: float, weighed_ml: float | None) -> float:
    """Water the drained pot keeps.

    Equation:
        as weighed, or 15 % of the pot.
    Arguments:
        pot_l: volume of the pot [L].
        weighed_ml: water held as weighed [mL], or None.
    Returns:
        Water held [mL].
    Valid for:
        Drained pots of granules.
    Error:
        8-25 % of the pot where nobody weighed it.
    Raises:
        BadInput: weighed water that would not fit into the pot.
    Sources:
        saltline-notes, flush review 4.
    """
    if weighed_ml is None:
        return 1000.0 * pot_l * WATER_SHARES[1]
    if not weighed_ml < 1000.0 * pot_l:
        raise BadInput("water_held_ml", "must be less than the pot")
    return weighed_ml


def brim_ml(*, pot_l: float) -> float:
    """Water that fills a drained pot to the brim.

    Equation:
        40 % of the pot, the middle of 30-50 %.
    Arguments:
        pot_l: volume of the pot [L].
    Returns:
        Water [mL].
    Valid for:
        Pots of granules of one size, with a rim.
    Error:
        A quarter either way (proposed).
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush.
    """
    return 1000.0 * pot_l * _along(BRIM_SHARES, 0.5)


def pot_of(*, draw: PotDraw, grain_mm: float, pot_l: float, weighed_ml: float | None) -> Pot:
    """The pot of a draw, levelled out at an excess of 1.

    Equation:
        water held is the draw's share of the pot, or the weighed water times its error.
    Arguments:
        draw: one of `pots`.
        grain_mm: diameter of the granules [mm].
        pot_l: volume of the pot [L].
        weighed_ml: water held as weighed [mL], or None.
    Returns:
        The pot.
    Valid for:
        As `pot.Pot`.
    Error:
        As `pot.Pot`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush.
    """
    unweighed = 1000.0 * pot_l * draw.water_share
    held = unweighed if weighed_ml is None else weighed_ml * draw.weighing
    return Pot(
        water_held_ml=held,
        grain_mm=grain_mm,
        film_share=draw.film_share,
        diffusivity=draw.diffusivity,
        by_pass=draw.by_pass,
    )


def reading_sd(*, method: str, reading_ms_cm: float) -> float:
    """Standard deviation of one reading.

    Equation:
        a share of the reading and 8 uS/cm: 6 % for a drip, 2 % for a bath.
    Arguments:
        method: drip, or any other word for a bath.
        reading_ms_cm: the reading [mS/cm].
    Returns:
        Standard deviation [mS/cm].
    Valid for:
        Pocket pens; drips taken in steps of 10 mL.
    Error:
        Proposed.
    Raises:
        Nothing.
    Sources:
        altland-owen-2024; saltline-notes, flush review 4.
    """
    share = DRIP_NOISE if method == "drip" else BATH_NOISE
    return share * reading_ms_cm + PEN_NOISE_MS_CM
