"""Salt leaving porous granules by diffusion, and how long a soak that asks for."""

from __future__ import annotations

from math import atan, exp, pi
from typing import NamedTuple

from saltline.exchange import fourier_number
from saltline.priors import DIFFUSIVITY_USUAL, diffusivity_at

# What a plant stands, whatever the granules would like: no trial of soak time on potted orchids was
# found (proposed; general growers' pages say 10-30 min and discourage more than an hour).
PLANT_LIMIT_MIN = 30.0
HARD_LIMIT_MIN = 60.0
SOAKS_A_DAY = 3

LONGEST_FOURIER = 5.0  # nothing is left to exchange: e^-49 of the slowest term


class SoakMinutes(NamedTuple):
    """The answer of `soak_minutes`: the plant's limit first, then the granules' time."""

    plant_limit_min: float
    minutes: float
    minutes_low: float
    minutes_high: float
    warnings: tuple[str, ...]


def series_roots(*, bath_ratio: float | None, fourier: float) -> list[float]:
    """Roots of the sphere in a bath, as many as a Fourier number needs.

    Equation:
        tan q = 3 q / (3 + a q2), one root in (k pi, (k + 1) pi); q = k pi in an endless bath.
        Found by q <- k pi + atan(3 q / (3 + a q2)), which closes in at every step.
    Arguments:
        bath_ratio: a, bath over the water inside the granules [-]; None for an endless bath.
        fourier: smallest Fourier number to be served [-], above 0.
    Returns:
        The roots, rising.
    Valid for:
        a > 0.
    Error:
        1e-12.
    Raises:
        Nothing.
    Sources:
        crank-1975, section 6.3.2.
    """
    found: list[float] = []
    q = 0.0
    while not found or q * q * fourier < 40.0:
        floor = (len(found) + 1) * pi
        q = floor
        if bath_ratio is not None:
            before = 0.0
            q = floor + pi / 2.0
            while abs(q - before) > 1e-13 * q:
                before = q
                q = floor + atan(3.0 * q / (3.0 + bath_ratio * q * q))
        found.append(q)
    return found


def exchanged_share(*, fourier: float, bath_ratio: float | None) -> float:
    """Share of the final exchange between granules and bath that is done.

    Equation:
        F = 1 - sum 6 a (a + 1) exp(-q2 Fo) / (9 + 9 a + q2 a2); endless bath
        F = 1 - (6 / pi2) sum exp(-n2 pi2 Fo) / n2.
    Arguments:
        fourier: Fo = Da t / R2 [-], 1e-5 or more.
        bath_ratio: a, bath over the water inside the granules [-]; None for an endless bath.
    Returns:
        F [-], 0 to 1.
    Valid for:
        Spheres of one size in a stirred bath, at one strength throughout at the start, no sorption.
    Error:
        1e-12 above Fo 1e-4; the assumptions are worse.
    Raises:
        Nothing.
    Sources:
        crank-1975, section 6.3.2 and p. 91.
    """
    roots = series_roots(bath_ratio=bath_ratio, fourier=fourier)
    return _share(roots, fourier, bath_ratio)


def _share(roots: list[float], fourier: float, bath_ratio: float | None) -> float:
    left = 0.0
    for q in roots:
        q2 = q * q
        if q2 * fourier > 45.0:
            break
        if bath_ratio is None:
            left += 6.0 / q2 * exp(-q2 * fourier)
        else:
            a = bath_ratio
            left += 6.0 * a * (a + 1.0) * exp(-q2 * fourier) / (9.0 + 9.0 * a + q2 * a * a)
    return 1.0 - left


def fourier_for(*, share: float, bath_ratio: float | None) -> float:
    """Fourier number at which a share of the final exchange is done.

    Equation:
        exchanged_share(Fo) = share, by halving.
    Arguments:
        share: F [-], 0.05 to 0.999.
        bath_ratio: a [-]; None for an endless bath.
    Returns:
        Fo [-].
    Valid for:
        As `exchanged_share`.
    Error:
        1e-12 relative.
    Raises:
        Nothing.
    Sources:
        crank-1975, section 6.3.2.
    """
    low, high = 1e-5, LONGEST_FOURIER
    roots = series_roots(bath_ratio=bath_ratio, fourier=low)
    for _ in range(60):
        middle = (low + high) / 2.0
        if _share(roots, middle, bath_ratio) < share:
            low = middle
        else:
            high = middle
    return high


def minutes_for(
    *, share: float, bath_ratio: float | None, grain_mm: float, diffusivity: float
) -> float:
    """Minutes until a share of the final exchange between granules and bath is done.

    Equation:
        t = Fo R2 / Da.
    Arguments:
        share: F [-].
        bath_ratio: a [-]; None for an endless bath.
        grain_mm: diameter of the granules [mm].
        diffusivity: Da [1e-9 m2/s].
    Returns:
        Time [min].
    Valid for:
        As `exchanged_share`.
    Error:
        That of Da, which is known to a factor of 3 at best.
    Raises:
        Nothing.
    Sources:
        crank-1975; saltline-notes, flush 4.
    """
    in_one_minute = fourier_number(diffusivity=diffusivity, grain_mm=grain_mm, minutes=1.0)
    return fourier_for(share=share, bath_ratio=bath_ratio) / in_one_minute


def soak_minutes(*, grain_mm: float, share: float, bath_ratio: float) -> SoakMinutes:
    """How long granules take to let their salt go, beside what the plant stands.

    Equation:
        t = Fo(share, a) R2 / Da at Da 0.5e-9 m2/s; range over 80 % of the prior of Da.
    Arguments:
        grain_mm: diameter of the granules [mm].
        share: share of what a very long soak would take out [-].
        bath_ratio: a, water round the granules over the water inside them [-].
    Returns:
        SoakMinutes: the plant's limit and the granules' time with its range [min].
    Valid for:
        Round granules of one size, stirred water, no binding of salt.
    Error:
        As the range says: a factor of 5 from end to end.
    Raises:
        Nothing.
    Sources:
        crank-1975; saltline-notes, flush 4.
    """
    usual = minutes_for(
        share=share, bath_ratio=bath_ratio, grain_mm=grain_mm, diffusivity=DIFFUSIVITY_USUAL
    )
    low, high = (usual * DIFFUSIVITY_USUAL / diffusivity_at(place) for place in (0.9, 0.1))
    warnings = []
    if high > PLANT_LIMIT_MIN:
        warnings.append(
            "The granules may need longer than a plant stands. Do not soak longer: soak again, "
            "with drained rests between."
        )
    return SoakMinutes(
        plant_limit_min=PLANT_LIMIT_MIN,
        minutes=usual,
        minutes_low=low,
        minutes_high=high,
        warnings=tuple(warnings),
    )
