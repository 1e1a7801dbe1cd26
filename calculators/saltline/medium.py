"""How far water climbs: in a tube, and between the grains of a pot's medium."""

from __future__ import annotations

from math import exp, expm1, log, pi, sin, sqrt
from typing import NamedTuple

from saltline.errors import BadInput
from saltline.units import metres, millimetres
from saltline.water import GRAVITY_M_S2, density, surface_tension, viscosity

# Height times grain size, measured in one column of 0.45-0.55 mm sand: 195 mm to the top of the
# damp sand, 79 mm of it saturated (docs/sources.json: salim-hampton-2012).
DAMP_MM2 = 97.5
SATURATED_MM2 = 39.5
COARSEST_MM = 4.0  # above it a meniscus cannot span the gaps and no height is given
RISE_ERROR = 0.25
OPEN_GRANULES_MM = 100.0  # most that granules with an open skin wick by themselves
WIDEST_TUBE_MM = 1.0  # above it the meniscus is no longer round: Jurin is 2 % high or more
VISCOUS_TUBE_MM = 0.3  # above it the column's own inertia delays the rise

# 1 + W0 near the branch point, in powers of p = sqrt(2 (1 + e x)); Corless et al. 1996.
BRANCH_SERIES = (
    1.0, -1.0 / 3.0, 11.0 / 72.0, -43.0 / 540.0, 769.0 / 17280.0, -221.0 / 8505.0,
    680863.0 / 43545600.0,
)  # fmt: skip


class TubeRise(NamedTuple):
    """The answer of `tube_rise`: heights [mm]; `rise_then_mm` is None when no time was asked."""

    rise_mm: float
    rise_then_mm: float | None
    warnings: tuple[str, ...]


class MediumRise(NamedTuple):
    """The answer of `medium_rise`: heights [mm], rises None above 4 mm grains, and words."""

    damp_rise_mm: float | None
    saturated_rise_mm: float | None
    dry_top_mm_low: float
    dry_top_mm_high: float
    answer: str
    warnings: tuple[str, ...]


def lambert_w0_plus_1(*, depth: float) -> float:
    """1 + W0(-exp(-1 - s)): the principal Lambert W, in the form that viscous rise needs.

    Equation:
        With w = -W0: ln w - w + 1 + s = 0, by Newton from w = exp(-1 - s), which climbs to the
        root without overshoot; for small s the series about the branch point.
    Arguments:
        depth: s [-], 0 or more; given as s because -exp(-1 - s) loses its digits near -1/e.
    Returns:
        1 + W0 [-], 0 to 1.
    Valid for:
        s from 0 up.
    Error:
        1e-12 relative against scipy.
    Raises:
        ValueError: s below 0.
    Sources:
        corless-1996.
    """
    p = sqrt(-2.0 * expm1(-depth))
    if p < 0.03:
        total = 0.0
        for coefficient in reversed(BRANCH_SERIES):
            total = p * (total + coefficient)
        return total
    if depth > 700.0:
        return 1.0
    w = exp(-1.0 - depth)
    while True:
        better = w - w * (log(w) - w + 1.0 + depth) / (1.0 - w)
        if not better > w:
            return 1.0 - w
        w = better


def tube_rise(
    *, radius_mm: float, water_c: float, contact_deg: float, seconds: float | None
) -> TubeRise:
    """How high water climbs in an upright tube, in the end and after some seconds.

    Equation:
        Jurin: H = 2 sigma cos(theta) / (rho g r).
        Washburn with gravity: h = H (1 + W0(-exp(-1 - b^2 t / a))), H = a / b,
        a = r sigma cos(theta) / (4 mu), b = rho g r^2 / (8 mu).
    Arguments:
        radius_mm: inner radius r [mm].
        water_c: temperature of the water [C].
        contact_deg: contact angle theta [degrees], 0 for a wetted wall.
        seconds: time t since the tube touched the water [s], or None.
    Returns:
        TubeRise: heights [mm].
    Valid for:
        Tubes narrower than about 1 mm; the time course up to about 0.3 mm, and not the first
        instant, when the water must still be set moving.
    Error:
        0.5 % from surface tension; -r/3 from the shape of the meniscus.
    Raises:
        Nothing within the bounds.
    Sources:
        iapws-r1-76; iapws-sr6-08; tanaka-2001; washburn-1921; fries-dreyer-2008.
    """
    r, rho, mu = metres(radius_mm), density(water_c=water_c), viscosity(water_c=water_c)
    cosine = sin((90.0 - contact_deg) * pi / 180.0)  # exactly 0 at 90 degrees
    pull = surface_tension(water_c=water_c) * cosine
    a = r * pull / (4.0 * mu)
    b = rho * GRAVITY_M_S2 * r * r / (8.0 * mu)
    rise = millimetres(a / b)
    then = None
    if seconds is not None:
        then = rise * lambert_w0_plus_1(depth=b * b * seconds / a) if a > 0.0 else 0.0
    warnings = []
    if radius_mm > WIDEST_TUBE_MM:
        warnings.append("In a tube this wide the water's surface is no longer round: less rises.")
    if seconds is not None and radius_mm > VISCOUS_TUBE_MM:
        warnings.append("In a tube this wide the water's own inertia makes the start slower.")
    return TubeRise(rise_mm=rise, rise_then_mm=then, warnings=tuple(warnings))


def medium_rise(
    *, top_damp_24h: str, grain_mm: float, pot_height_mm: float, water_level_mm: float
) -> MediumRise:
    """How far water climbs between the grains, and whether the top of the pot is damp.

    Equation:
        damp rise = 97.5 / d, saturated rise = 39.5 / d (mm, d in mm), good to 25 %; no height above
        d = 4 mm. Dry top = pot height - water level - rise, with open granules wicking up to
        100 mm by themselves. The reader's own look at the top takes over.
    Arguments:
        top_damp_24h: is the top layer dark and damp 24 h after watering: unknown, yes, no.
        grain_mm: size d of the grains [mm].
        pot_height_mm: height of the medium from the pot's floor [mm].
        water_level_mm: standing water above the pot's floor [mm].
    Returns:
        MediumRise: rises [mm] or None, dry top [mm], words.
    Valid for:
        Wetted, even grains. Dry bark, new clay and anything repellent lift nothing.
    Error:
        25 % up to 3 mm grains; a textbook's 5 mm gravel lies 23 % lower.
    Raises:
        BadInput: water stands above the medium.
    Sources:
        salim-hampton-2012; saltline-notes, wicking 2 and review W10, W11.
    """
    gap = pot_height_mm - water_level_mm
    if gap < 0.0:
        raise BadInput("water_level_mm", "must be no more than the height of the medium")
    damp = saturated = None
    surely = 0.0
    perhaps = OPEN_GRANULES_MM
    if grain_mm <= COARSEST_MM:
        damp, saturated = DAMP_MM2 / grain_mm, SATURATED_MM2 / grain_mm
        surely, perhaps = (1.0 - RISE_ERROR) * damp, max(perhaps, (1.0 + RISE_ERROR) * damp)
    low, high = max(0.0, gap - perhaps), max(0.0, gap - surely)
    if top_damp_24h == "yes":
        low = high = 0.0
    elif top_damp_24h == "no":
        low = min(grain_mm, gap)
        high = max(low, high)
    return MediumRise(
        damp_rise_mm=damp,
        saturated_rise_mm=saturated,
        dry_top_mm_low=low,
        dry_top_mm_high=high,
        answer=_top(low, high, top_damp_24h),
        warnings=_doubts(gap - surely, water_level_mm, top_damp_24h),
    )


def _top(low: float, high: float, seen: str) -> str:
    if seen == "yes" or (seen == "unknown" and high <= 0.0):
        return "damp to the top"
    if seen == "no" or low > 0.0:
        return "dry on top"
    return "size alone cannot say: look at the top layer 24 h after watering"


def _doubts(short_mm: float, water_level_mm: float, seen: str) -> tuple[str, ...]:
    """Warnings; `short_mm` is what the sure rise leaves dry."""
    warnings = []
    if seen == "no" and short_mm <= 0.0:
        warnings.append(
            "Grains this fine should be damp to the top. Dust-dry or water-repellent medium lifts "
            "nothing: soak it through once, then look again."
        )
    if water_level_mm == 0.0:
        warnings.append("With no standing water this holds just after draining, not for days.")
    return tuple(warnings)
