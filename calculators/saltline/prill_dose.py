"""How many slow-release beads a pot may get: the smallest of three limits, none without roots."""

from __future__ import annotations

from math import sqrt
from typing import NamedTuple

from saltline.errors import BadInput, Refused
from saltline.prill_pot import (
    DAYS_PER_MONTH,
    Pot,
    possible_beads,
    pot_nitrogen,
    shown_days,
    usual_beads,
)
from saltline.release import rate_factor, usual_rated_share

# Nitrogen that live new growth takes [mg per g fresh mass and day]: one 28 g Cattleya in pumice did
# best on 19.8 mg in 30 days (docs/sources.json: tanaka-1988, computed from its abstract).
NEED_MG_G_DAY = 0.7 / 30.0
POT_MG_MONTH_L = 20.0 / 0.9  # most a litre of pot gets in a month: the same plant's pot
RISE_MS_CM = 0.3  # most that beads may add while nothing is taken up: our guard, unpublished
# Conductivity of what beads give, per 100 mg/L of nitrogen [mS/cm]: middle and most
# (docs/sources.json: saltline-notes, feed 2 and 5).
MS_CM_PER_100_PPM, MS_CM_PER_100_PPM_HIGH = 0.66, 0.74
WARMER_C = 5.0  # the bad summer: so much warmer, and half the water drained
# Spread of the mass of single beads [%]: 3 +- 0.35 mm across, and 2-4 mm evenly (geometry).
MASS_SPREADS_PERCENT = (35.0, 54.0)

# Stages in which beads are refused: why, and what to do instead.
REFUSALS = (
    (
        "maturing",
        "Beads given now would still be giving salt when the plant stops drinking.",
        "Lift out the beads that are in, make the last heavy watering a rinse with clear water, "
        "and dose when the next roots are long enough.",
    ),
    (
        "resting",
        "A resting plant takes nothing up, so all the salt would stay in the pot.",
        "Keep to the water this plant gets at rest, lift out old beads, and dose when new roots "
        "are about 7.6 cm long (published: 6.4 to 12.7 cm).",
    ),
    (
        "new_shoot",
        "A shoot whose own roots are not there yet takes nothing up.",
        "Repot now in fresh granules if the pot is salty; dose when the new roots are about "
        "7.6 cm long (published: 6.4 to 12.7 cm).",
    ),
    (
        "lost_roots",
        "A plant that has lost its roots takes nothing up, and salt would kill the new ones.",
        "Take it out of the old granules, rinse the roots, give fresh granules, shade and humid "
        "air, and no feed of any kind until roots show.",
    ),
    (
        "rotting",
        "A rotting plant takes nothing up.",
        "Look inside the pot first, cut back to firm tissue, and leave feeding for later.",
    ),
)


class PrillDose(NamedTuple):
    """The answer of `prill_dose`; counts are None where the mass of a bead is not known."""

    dose_g_high: float
    limited_by: str
    peak_rise_ms_cm_high: float
    prills_high: int | None
    peak_rise_worse_ms_cm_high: float
    counted_error_percent_low: float | None
    counted_error_percent_high: float | None
    scooped_error_percent: float | None
    warnings: tuple[str, ...]


def counted_error_percent(*, prills: int, mass_spread_percent: float) -> float:
    """Spread of the dose between pots that got the same counted number of beads.

    Equation:
        CV / sqrt(n).
    Arguments:
        prills: n, beads counted into each pot [-], 1 or more.
        mass_spread_percent: CV of the mass of single beads [%].
    Returns:
        Standard deviation of the dose [%].
    Valid for:
        Beads picked without regard to size.
    Error:
        Exact for its assumption.
    Raises:
        ZeroDivisionError: no beads.
    Sources:
        saltline-notes, feed 5 and its recomputation.
    """
    return mass_spread_percent / sqrt(prills)


def scooped_error_percent(*, prills: float) -> float:
    """Spread of the number of beads between equal scoops from a mix.

    Equation:
        100 / sqrt(n) (Poisson).
    Arguments:
        prills: n, mean number in a scoop [-], above 0.
    Returns:
        Standard deviation of the number [%].
    Valid for:
        Well mixed medium. A trial counted beads of two sizes: the ratio of spreads agrees.
    Error:
        Exact for its assumption.
    Raises:
        ZeroDivisionError: no beads.
    Sources:
        saltline-notes, feed 5; khadduri-small-prill for the comparison.
    """
    return 100.0 / sqrt(prills)


def rise_per_gram(
    *,
    n_percent: float,
    rated_days: float,
    rated_c: float,
    mean_c: float,
    water_held_ml: float,
    drain_ml_day: float,
) -> float:
    """Highest rise that a gram of beads gives to the water of a pot while nothing is taken up.

    Equation:
        peak of `pot_nitrogen` with U = 0 and release from the first day, times 0.66 mS/cm per
        100 mg/L of nitrogen.
    Arguments:
        n_percent: nitrogen on the label [%].
        rated_days: life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium [C].
        water_held_ml: water the drained pot keeps [mL].
        drain_ml_day: water drained, spread over the days [mL/day].
    Returns:
        Rise [mS/cm per g].
    Valid for:
        As `pot_nitrogen`.
    Error:
        As `pot_nitrogen`; the conductivity per nitrogen is 0.66 to 0.74. A lag of 6 days, then
        faster to the same end, gives 3 % more.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5 and its recomputation.
    """
    label = {"rated_days": rated_days, "rated_c": rated_c, "mean_c": mean_c}
    _, peak, _ = pot_nitrogen(
        beads=usual_beads(nitrogen_mg=n_percent * 10.0, lag_days=0.0, **label),
        pot=Pot(water_held_ml, drain_ml_day, 0.0),
        days=shown_days(**label),
    )
    return peak * MS_CM_PER_100_PPM / 100.0


def _worse_rise(
    nitrogen_mg: float, rated_days: float, rated_c: float, mean_c: float, pot: Pot
) -> float:
    """Rise in a bad summer: warmer, half drained, the fastest beads, the saltiest nitrogen."""
    label = {"rated_days": rated_days, "rated_c": rated_c, "mean_c": mean_c + WARMER_C}
    days = shown_days(**label)
    peaks = [
        pot_nitrogen(beads=beads, pot=pot, days=days)[1]
        for beads in possible_beads(nitrogen_mg=nitrogen_mg, at_once_share=0.0, **label)
    ]
    return max(peaks) * MS_CM_PER_100_PPM_HIGH / 100.0


def _refuse(stage: str) -> None:
    for name, reason, instead in REFUSALS:
        if stage == name:
            raise Refused(reason, instead)


def prill_dose(
    *,
    stage: str,
    roots: str,
    pot_l: float,
    water_held_ml: float,
    drain_ml_day: float,
    n_percent: float,
    rated_days: float,
    rated_c: float,
    mean_c: float,
    new_growth_g: float,
    prill_mg: float | None,
) -> PrillDose:
    """The most slow-release beads a pot may get for the roots and the growth it has.

    Equation:
        smallest of (a) 0.7 mg N per g of live new growth and 30 days, (b) 20 mg N a month for
        0.9 L of pot, (c) the dose that raises the water by 0.3 mS/cm while nothing is taken up;
        (a) and (b) as grams over the life at this temperature: m = S L / (r(T) w p).
        Without roots: 0.
    Arguments:
        stage: growing, maturing, resting, new_shoot, lost_roots or rotting.
        roots: none, some, wall (at the pot wall) or full.
        pot_l: volume of the pot [L].
        water_held_ml: water the drained pot keeps [mL].
        drain_ml_day: water drained, spread over the days [mL/day].
        n_percent: nitrogen on the label [%].
        rated_days: life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium [C].
        new_growth_g: live new growth, fresh, without old bulbs [g].
        prill_mg: mass of one bead [mg], or None.
    Returns:
        PrillDose: most grams, what limits them, the rise without uptake [mS/cm], beads.
    Valid for:
        One dose in growth. A guard, not a recommendation: less is always allowed.
    Error:
        (a) rests on one plant; roots have no published dose. An order of magnitude.
    Raises:
        Refused: in every stage but growing.
        BadInput: water held not less than the pot.
    Sources:
        tanaka-1988; saltline-notes, recomputation E7; du-2006.
    """
    _refuse(stage)
    if water_held_ml >= pot_l * 1000.0:
        raise BadInput("water_held_ml", "must be less than the pot")
    if roots == "none":
        return PrillDose(0.0, "no roots", 0.0, 0, 0.0, None, None, None, ())
    life = rated_days / rate_factor(at_c=mean_c, rated_c=rated_c)
    per_gram = n_percent * 10.0 * usual_rated_share(rated_c=rated_c) / life  # mg N a day
    rise = rise_per_gram(
        n_percent=n_percent,
        rated_days=rated_days,
        rated_c=rated_c,
        mean_c=mean_c,
        water_held_ml=water_held_ml,
        drain_ml_day=drain_ml_day,
    )
    limited_by, dose = "new growth", NEED_MG_G_DAY * new_growth_g / per_gram
    for name, limit in (
        ("pot size", POT_MG_MONTH_L * pot_l / DAYS_PER_MONTH / per_gram),
        ("salt", RISE_MS_CM / rise),
    ):
        if limit < dose:
            limited_by, dose = name, limit
    prills = None if prill_mg is None else int(dose * 1000.0 / prill_mg)
    low, high = MASS_SPREADS_PERCENT
    hot_pot = Pot(water_held_ml, drain_ml_day / 2.0, 0.0)
    return PrillDose(
        dose_g_high=dose,
        limited_by=limited_by,
        peak_rise_ms_cm_high=dose * rise,
        prills_high=prills,
        peak_rise_worse_ms_cm_high=_worse_rise(
            dose * n_percent * 10.0, rated_days, rated_c, mean_c, hot_pot
        ),
        counted_error_percent_low=(
            counted_error_percent(prills=prills, mass_spread_percent=low) if prills else None
        ),
        counted_error_percent_high=(
            counted_error_percent(prills=prills, mass_spread_percent=high) if prills else None
        ),
        scooped_error_percent=scooped_error_percent(prills=prills) if prills else None,
        warnings=_warnings(roots, dose, prill_mg),
    )


def _warnings(roots: str, dose: float, prill_mg: float | None) -> tuple[str, ...]:
    warnings = []
    if roots == "some":
        warnings.append(
            "Few roots take little: begin with clearly less, read the first drips after a month, "
            "and add the rest only if they have not risen."
        )
    if 0.0 < dose < 5.0:
        scale = "A scale that shows whole grams can be half a gram off: no tool for this dose."
        weigh = " Weigh 10 g of beads, count them, and put in the mass of one to get a number."
        warnings.append(scale + (weigh if prill_mg is None else " Count the beads."))
    return tuple(warnings)
