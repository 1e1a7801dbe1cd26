"""Solutions of known conductivity: what a pen should show in them, and which scale it is on."""

from __future__ import annotations

from math import exp, log
from typing import NamedTuple

from saltline.meter import scale_from_ec

SCALES = ("us_cm", "ms_cm", "ppm500", "ppm640", "ppm700", "cf")

# Conductivity at 25 C [mS/cm] and how far a pen that needs no repair may read off it [-].
# The bottle is 0.01 mol/L KCl (docs/sources.json: epa-120-1). The home standard is 0.5 g/L sodium
# chloride, 1.01 mS/cm by PHREEQC (saltline-notes); spoons, scales and salt make it good to 10 %.
STANDARDS = {"bottle_1413": (1.413, 0.05), "table_salt_0_5_g_l": (1.01, 0.10)}
FAR_OFF = 0.25  # beyond this no scale is named: proposed

# KCl 0.01 mol/kg: temperature [C] and conductivity [uS/cm], the water's own taken away
# (docs/sources.json: crc-kcl).
KCL_0_01_MOL_KG = (
    (0.0, 772.92), (5.0, 890.96), (10.0, 1013.95), (15.0, 1141.45), (18.0, 1219.93),
    (20.0, 1273.03), (25.0, 1408.23), (30.0, 1546.63), (35.0, 1687.79),
)  # fmt: skip

# A 442 scale (40 % Na2SO4, 40 % NaHCO3, 20 % NaCl) bends: conductivity [mS/cm] and ppm of the
# cells of the trade's table that agree with physics (saltline-notes, salts 2.1).
PPM442 = ((0.447, 300.0), (1.413, 1000.0), (2.07, 1500.0), (2.764, 2062.7))


class WhichScale(NamedTuple):
    """The answer of `which_scale`: a scale's name (None: none is near), how far off it the pen
    reads [%], and a second scale that the reading cannot rule out (or None)."""

    scale: str | None
    off_percent: float | None
    also_fits: str | None
    warnings: tuple[str, ...]


def bottle_1413_us_cm(*, sample_c: float) -> float:
    """What a pen without temperature correction shows in a 1.413 mS/cm bottle.

    Equation:
        kappa(T) of 0.01 mol/kg KCl, straight lines between the table's temperatures, times
        1413 / 1408.23 (0.01 mol/L in ordinary water against 0.01 mol/kg).
    Arguments:
        sample_c: temperature of the bottle [C], 0 to 35.
    Returns:
        Conductivity at that temperature [uS/cm].
    Valid for:
        0-35 C.
    Error:
        0.05 % from the straight lines; 0.1 % against EPA Method 120.1 at 21-26 C.
    Raises:
        ValueError: outside 0-35 C.
    Sources:
        crc-kcl; epa-120-1.
    """
    if not 0.0 <= sample_c <= 35.0:
        raise ValueError("sample_c must be 0 to 35 C")
    return _between(KCL_0_01_MOL_KG, sample_c) * 1413.0 / 1408.23


def ppm442(*, ec_ms_cm: float) -> float:
    """What a pen on a 442 scale shows; that scale is not a straight line.

    Equation:
        ln ppm interpolated linearly in ln EC between the four trusted cells of the table.
    Arguments:
        ec_ms_cm: conductivity at 25 C [mS/cm], 0.447 to 2.764.
    Returns:
        The reading [ppm].
    Valid for:
        0.447-2.764 mS/cm.
    Error:
        The 1.413 row is within 4 % of what PHREEQC gives for the salts themselves.
    Raises:
        ValueError: outside the table.
    Sources:
        saltline-notes, salts 2.1.
    """
    if not PPM442[0][0] <= ec_ms_cm <= PPM442[-1][0]:
        raise ValueError("ec_ms_cm must be 0.447 to 2.764 mS/cm")
    return exp(_between(tuple((log(ec), log(ppm)) for ec, ppm in PPM442), log(ec_ms_cm)))


def _between(table: tuple[tuple[float, float], ...], at: float) -> float:
    cell = 1
    while cell < len(table) - 1 and at > table[cell][0]:
        cell += 1
    (x0, y0), (x1, y1) = table[cell - 1], table[cell]
    return y0 + (at - x0) / (x1 - x0) * (y1 - y0)


def which_scale(*, reading: float, standard: str) -> WhichScale:
    """Which scale a pen is on, from its reading of a solution whose conductivity is known.

    Equation:
        off = reading / expected - 1 on each scale; the scale with the smallest |ln(1 + off)| is
        named, and a second one that lies no more than the standard's own tolerance further off.
    Arguments:
        reading: what the pen shows.
        standard: bottle_1413 or table_salt_0_5_g_l.
    Returns:
        WhichScale.
    Valid for:
        A standard at 25 C, or a pen that corrects for temperature.
    Error:
        640 and 700 lie 9 % apart: the bottle parts them when the pen is within about 2 % of
        right, the home standard hardly ever.
    Raises:
        KeyError: unknown standard.
    Sources:
        saltline-notes, salts E1 and E2; epa-120-1.
    """
    ec, tolerance = STANDARDS[standard]
    offs = []
    for name in SCALES:
        ratio = reading / scale_from_ec(ec_ms_cm=ec, scale=name)
        offs.append((abs(log(ratio)), name, 100.0 * (ratio - 1.0)))
    offs.sort()
    away, scale, off_percent = offs[0]
    if away > log(1.0 + FAR_OFF):
        warning = "The reading is more than a quarter off every scale: look for the cause first."
        return WhichScale(scale=None, off_percent=None, also_fits=None, warnings=(warning,))
    next_away, next_scale, _ = offs[1]
    warnings = []
    if away > log(1.0 + tolerance):
        warnings.append(
            "The pen reads further off than a pen in order should. Check that the standard is "
            "fresh and near 25 °C, adjust the pen, and read again."
        )
    return WhichScale(
        scale=scale,
        off_percent=off_percent,
        also_fits=next_scale if next_away - away <= log(1.0 + tolerance) else None,
        warnings=tuple(warnings),
    )
