"""The salt line: where on an exposed root salt gathers, how fast, and how long to rinse it."""

from __future__ import annotations

from math import exp, log, sqrt
from typing import NamedTuple

from saltline.draws import Draws, quantile
from saltline.evaporation import wet_cylinder
from saltline.units import S_PER_DAY, S_PER_H
from saltline.velamen import band_height, drying_h, mean_factor, peclet, rinse_min, steady_mean

# What is not measured is drawn from these (docs/sources.json: saltline-notes, proposed).
VELAMEN_MM = (0.2, 0.6)
SOAK_THROUGH_S = (3.0, 300.0)
POT_AIR = (0.3, 1.0)  # evaporation beside the damp pot over that of a root in free air
USUAL_VELAMEN_MM = 0.4  # the thickness SOAK_THROUGH_S is meant for
OWN_TIMES = (0.7, 2.5)  # the band over its formula, with the reader's own thickness and times
RULER = (0.8, 1.2)  # the band over a ruler's reading, between seasons
TURNOVER = (1.0 / 1.5, 3.0)
HUMIDITY_PERCENT = (30.0, 95.0)
LONGEST_MM = 40.0
PLAIN_WATER_MS_CM = 0.1  # below this a water brings hardly any salt that a root refuses

HOURS = S_PER_DAY / S_PER_H  # in a day
DRAWS = 400
SEED = 1


class SaltBand(NamedTuple):
    """The answer of `salt_band`; factors are over the strength of the water."""

    band_mm: float
    band_mm_low: float
    band_mm_high: float
    evaporation_mm_day: float
    evaporation_mm_day_low: float
    evaporation_mm_day_high: float
    turnover_h: float
    turnover_h_low: float
    turnover_h_high: float
    factor_1d_high: float
    factor_3d_high: float
    factor_7d_high: float
    rinse_min: float
    rinse_min_high: float
    warnings: tuple[str, ...]


class Root(NamedTuple):
    """One root as it may be: band height [mm], time to dry [h], Peclet number [-]."""

    band_mm: float
    dry_h: float
    peclet: float


def possible_roots(
    *,
    root_mm: float,
    evaporation_mm_day_low: float,
    evaporation_mm_day_high: float,
    velamen_mm: float | None,
    soak_through_s: float | None,
    dry_h: float | None,
    measured_band_mm: float | None,
    measured_dry_h: float | None,
) -> list[Root]:
    """Roots drawn from what is known and, for the rest, from what may be.

    Equation:
        Velamen uniform 0.2-0.6 mm and at most d / 4, soak time log-uniform 3-300 s (of a 0.4 mm
        velamen: it goes with the square of a given thickness), evaporation log-uniform between its
        ends; then `drying_h`, `band_height`, `peclet`. With a soak time but not all three of the
        reader's own, the formula's error is drawn too (x0.7 at 10 %, x2.5 at 90 %). A ruler's
        reading L1 takes over: L2 = L1 sqrt(t_dry2 / t_dry1), Pe = L1^2 / (t_dry1 Ds).
    Arguments:
        root_mm: thickness d of the root [mm].
        evaporation_mm_day_low: least evaporation [mm/day].
        evaporation_mm_day_high: most evaporation [mm/day].
        velamen_mm: thickness [mm], or None.
        soak_through_s: time to soak through [s], or None.
        dry_h: time to dry now [h], or None.
        measured_band_mm: height of the receding wet edge [mm], or None.
        measured_dry_h: time to dry when that was read [h], or None.
    Returns:
        The draws; the same ones for every input, so that answers move smoothly.
    Valid for:
        As `band_height`.
    Error:
        Sampling moves the 10 and 90 % points by about 5 %, the middle by 4 %.
    Raises:
        Nothing within the bounds.
    Sources:
        saltline-notes, wicking review 4.
    """
    draws = Draws(SEED)
    timed = velamen_mm is not None and soak_through_s is not None and dry_h is not None
    now_h = measured_dry_h if dry_h is None else dry_h
    roots = []
    for at in range(DRAWS):
        # Soak times are drawn one from each of DRAWS equal parts of their range.
        share = draws.uniform(at / DRAWS, (at + 1) / DRAWS)
        thickness = draws.uniform(VELAMEN_MM[0], VELAMEN_MM[1])
        lost = draws.log_uniform(evaporation_mm_day_low, evaporation_mm_day_high)
        stretch = _stretch(draws.uniform())
        soak = exp(log(SOAK_THROUGH_S[0]) + share * log(SOAK_THROUGH_S[1] / SOAK_THROUGH_S[0]))
        thickness = min(thickness if velamen_mm is None else velamen_mm, 0.25 * root_mm)
        if velamen_mm is not None:
            soak *= (thickness / USUAL_VELAMEN_MM) ** 2
        if soak_through_s is not None:
            soak = soak_through_s
        dry = drying_h(velamen_mm=thickness, root_mm=root_mm, evaporation_mm_day=lost)
        if measured_band_mm is not None:
            dry = dry if now_h is None else now_h
            then = dry if measured_dry_h is None else measured_dry_h
            band = measured_band_mm * sqrt(dry / then)
            pe = peclet(velamen_mm=measured_band_mm, soak_through_s=then * S_PER_H)
        else:
            dry = dry if dry_h is None else dry_h
            band = band_height(velamen_mm=thickness, dry_h=dry, soak_through_s=soak)
            if soak_through_s is not None and not timed:
                band *= stretch
            pe = peclet(velamen_mm=thickness, soak_through_s=soak)
        roots.append(Root(band_mm=band, dry_h=dry, peclet=pe))
    return roots


def _stretch(share: float) -> float:
    """Error of the band's formula: its median is 1, its 10 and 90 % points are OWN_TIMES."""
    end = OWN_TIMES[0] if share < 0.5 else OWN_TIMES[1]
    return exp(log(end) * abs(share - 0.5) / 0.4)


def salt_band(
    *,
    air_c: float,
    humidity_percent: float,
    root_mm: float,
    water_ms_cm: float,
    air_speed_m_s: float,
    measured_band_mm: float | None,
    measured_dry_h: float | None,
    dry_h: float | None,
    soak_through_s: float | None,
    velamen_mm: float | None,
) -> SaltBand:
    """The wet band on a root above damp medium, how fast it gathers salt, how long to rinse it.

    Equation:
        L = delta sqrt(t_dry / t_abs), t_dry = phi de / E, E the free root's (`wet_cylinder`) times
        0.3-1, over the draws of `possible_roots`; or the reader's own times, x0.7 to x2.5; or the
        ruler's reading, x0.8 to x1.2. At most 40 mm.
        Factors: `mean_factor` after 1, 3 and 7 days, 90 % point. Rinse: `rinse_min` for 99 %.
    Arguments:
        air_c: air temperature at the pot [C].
        humidity_percent: relative humidity there [%], held at 30-95.
        root_mm: thickness of the root [mm].
        water_ms_cm: conductivity of the plain water [mS/cm].
        air_speed_m_s: air movement there [m/s].
        measured_band_mm: the wet edge by ruler, a day after a soak [mm], or None.
        measured_dry_h: time to dry when the ruler was used [h], or None.
        dry_h: time it takes to dry at band height beside the pot [h]; None: from the air.
        soak_through_s: time the dry velamen takes to soak through [s]; None: sampled.
        velamen_mm: thickness of its velamen [mm], held at a quarter of the root; None: sampled.
    Returns:
        SaltBand: heights [mm], evaporation [mm/day], turnover [h], factors [-], minutes.
    Valid for:
        A root that stands up from damp medium, dry above, in the shade.
    Error:
        As the ranges say. No band on an orchid root has been measured in print.
    Raises:
        Nothing within the bounds.
    Sources:
        saltline-notes, wicking and its review.
    """
    humidity = min(max(humidity_percent, HUMIDITY_PERCENT[0]), HUMIDITY_PERCENT[1])
    free = wet_cylinder(
        air_c=air_c, humidity_percent=humidity, air_speed_m_s=air_speed_m_s, diameter_mm=root_mm
    ).evaporation_mm_day
    roots = possible_roots(
        root_mm=root_mm,
        evaporation_mm_day_low=POT_AIR[0] * free,
        evaporation_mm_day_high=POT_AIR[1] * free,
        velamen_mm=velamen_mm,
        soak_through_s=soak_through_s,
        dry_h=dry_h,
        measured_band_mm=measured_band_mm,
        measured_dry_h=measured_dry_h,
    )
    timed = velamen_mm is not None and soak_through_s is not None and dry_h is not None
    own = RULER if measured_band_mm is not None else OWN_TIMES if timed else None
    usual = USUAL_VELAMEN_MM if velamen_mm is None else velamen_mm
    warnings = []
    if humidity != humidity_percent:
        warnings.append("Worked out for 30-95 % humidity, the range this can be trusted over.")
    if usual > 0.25 * root_mm:
        warnings.append("The white skin was taken as a quarter of the root's thickness, the most.")
    if water_ms_cm < PLAIN_WATER_MS_CM:
        warnings.append("Water this pure brings hardly any salt that a root refuses.")
    soaked = soak_through_s is not None or measured_band_mm is not None
    return _summed(roots, free, min(usual, 0.25 * root_mm), own, soaked, warnings)


def _summed(
    roots: list[Root],
    free_mm_day: float,
    skin_mm: float,
    own: tuple[float, float] | None,
    soaked: bool,
    warnings: list[str],
) -> SaltBand:
    """The answer from the draws; `soaked`: the flow along the root was measured."""
    band, band_low, band_high = _range([root.band_mm for root in roots], own)
    turnover, turnover_low, turnover_high = _range([root.dry_h for root in roots], None)
    factors = [_factor_high(roots, days) for days in (1.0, 3.0, 7.0)]
    minutes = rinse_min(velamen_mm=skin_mm, share_out=0.99)
    if band_high > LONGEST_MM:
        warnings.append("The upper end is longer than this tool can say: it stops at 40 mm.")
    if soaked and factors[2] < 0.5 * (1.0 + 7.0 * HOURS / turnover):
        warnings.append(
            "The salt figures lean on your timing here. If salt spreads more slowly in the root's "
            "white skin than we assume, they can be several times higher."
        )
    return SaltBand(
        band_mm=min(band, LONGEST_MM),
        band_mm_low=min(band_low, LONGEST_MM),
        band_mm_high=min(band_high, LONGEST_MM),
        evaporation_mm_day=sqrt(POT_AIR[0] * POT_AIR[1]) * free_mm_day,
        evaporation_mm_day_low=POT_AIR[0] * free_mm_day,
        evaporation_mm_day_high=POT_AIR[1] * free_mm_day,
        turnover_h=turnover,
        turnover_h_low=min(turnover_low, TURNOVER[0] * turnover),
        turnover_h_high=max(turnover_high, TURNOVER[1] * turnover),
        factor_1d_high=factors[0],
        factor_3d_high=factors[1],
        factor_7d_high=factors[2],
        rinse_min=minutes,
        rinse_min_high=3.0 * minutes,
        warnings=tuple(warnings),
    )


def _range(values: list[float], own: tuple[float, float] | None) -> tuple[float, float, float]:
    """Middle and ends: the 10 and 90 % points, or `own` times the middle."""
    ordered = sorted(values)
    middle = quantile(ordered, 0.5)
    if own is None:
        return middle, quantile(ordered, 0.1), quantile(ordered, 0.9)
    return middle, own[0] * middle, own[1] * middle


def _factor_high(roots: list[Root], days: float) -> float:
    """90 % point of `mean_factor` after some days."""
    factors = [
        mean_factor(
            turnovers=days * HOURS / root.dry_h,
            steady_mean=steady_mean(peclet=root.peclet),
        )
        for root in roots
    ]
    return quantile(sorted(factors), 0.9)
