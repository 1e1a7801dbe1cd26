"""Hardness of water on the scales of seven countries and trades, and whether lime will settle."""

from __future__ import annotations

from math import log10
from typing import NamedTuple

from saltline.units import ML_PER_US_GAL

CACO3_G_MOL = 100.087  # docs/sources.json: iupac-masses
CAO_G_MOL = 56.077  # docs/sources.json: iupac-masses
MG_PER_GRAIN = 64.79891  # exact
L_PER_IMPERIAL_GAL = 4.54609  # exact

# mg/L of calcium carbonate in one unit of each scale; all are definitions.
MG_L_CACO3 = {
    "mg_l_caco3": 1.0,
    "meq_l": CACO3_G_MOL / 2.0,
    "mmol_l": CACO3_G_MOL,
    "german": 10.0 * CACO3_G_MOL / CAO_G_MOL,  # 10 mg/L of calcium oxide
    "french": 10.0,
    "clark": MG_PER_GRAIN / L_PER_IMPERIAL_GAL,
    "grain_us_gal": MG_PER_GRAIN * 1000.0 / ML_PER_US_GAL,
}

# Upper ends [mg/L CaCO3] of the household classes (docs/sources.json: usgs-hardness).
CLASSES = ((60.0, "soft"), (120.0, "moderately hard"), (180.0, "hard"))

# How far the closed formula reads below PHREEQC's calcite index: 0.11 to 0.23 for soft to very
# hard water (tests/test_hardness.py).
LANGELIER_LOW_BY = 0.2


class Hardness(NamedTuple):
    """The answer of `hardness`: one hardness on every scale."""

    mg_l_caco3: float
    meq_l: float
    mmol_l: float
    german: float
    french: float
    clark: float
    grain_us_gal: float
    warnings: tuple[str, ...]


def hardness(*, value: float, unit: str) -> Hardness:
    """One hardness (or alkalinity) on every scale.

    Equation:
        mg/L CaCO3 = value times the scale's own mg/L CaCO3 per unit, and back.
    Arguments:
        value: hardness in `unit`.
        unit: mg_l_caco3, meq_l, mmol_l, german, french, clark or grain_us_gal.
    Returns:
        Hardness.
    Valid for:
        Calcium and magnesium together; alkalinity on the same scales.
    Error:
        Exact to the rounding of the masses (0.001 %).
    Raises:
        KeyError: unknown unit.
    Sources:
        saltline-notes, salts E14 and 6; iupac-masses; si-units.
    """
    mg_l = value * MG_L_CACO3[unit]
    return Hardness(
        mg_l_caco3=mg_l,
        meq_l=mg_l / MG_L_CACO3["meq_l"],
        mmol_l=mg_l / MG_L_CACO3["mmol_l"],
        german=mg_l / MG_L_CACO3["german"],
        french=mg_l / MG_L_CACO3["french"],
        clark=mg_l / MG_L_CACO3["clark"],
        grain_us_gal=mg_l / MG_L_CACO3["grain_us_gal"],
        warnings=(),
    )


def hardness_class(*, mg_l_caco3: float) -> str:
    """The household word for a hardness; it says nothing about orchids.

    Equation:
        soft up to 60, moderately hard up to 120, hard up to 180, very hard above.
    Arguments:
        mg_l_caco3: hardness [mg/L CaCO3].
    Returns:
        soft, moderately hard, hard or very hard.
    Valid for:
        Household water.
    Error:
        Other bodies draw the lines at 75, 150 and 300 mg/L.
    Raises:
        Nothing.
    Sources:
        usgs-hardness.
    """
    for top, word in CLASSES:
        if mg_l_caco3 <= top:
            return word
    return "very hard"


def langelier_index(
    *,
    ph: float,
    tds_mg_l: float,
    water_c: float,
    calcium_mg_l_caco3: float,
    alkalinity_mg_l_caco3: float,
) -> float:
    """Langelier's saturation index: above zero, lime settles.

    Equation:
        LSI = pH - [(9.3 + A + B) - (C + D)], A = (log10 TDS - 1) / 10,
        B = 34.55 - 13.12 log10(T + 273), C = log10 Ca - 0.4, D = log10 alkalinity.
    Arguments:
        ph: pH [-].
        tds_mg_l: dissolved matter [mg/L], above 0.
        water_c: temperature [C].
        calcium_mg_l_caco3: calcium hardness [mg/L CaCO3], above 0.
        alkalinity_mg_l_caco3: alkalinity [mg/L CaCO3], above 0.
    Returns:
        LSI [-].
    Valid for:
        Tap and well water, pH 6.5-9.
    Error:
        0.1-0.25 below PHREEQC's calcite index for soft to very hard water at 25 C.
    Raises:
        ValueError: a quantity that is not positive.
    Sources:
        langelier-1936 (closed formula from memory); saltline-notes, salts 6.
    """
    a = (log10(tds_mg_l) - 1.0) / 10.0
    b = 34.55 - 13.12 * log10(water_c + 273.0)
    c = log10(calcium_mg_l_caco3) - 0.4
    return ph - (9.3 + a + b - c - log10(alkalinity_mg_l_caco3))


def lime_warning(*, index: float) -> str | None:
    """What a saturation index means for roots and granules, or None where lime stays dissolved.

    Equation:
        Lime settles where LSI + 0.2 > 0; 0.2 is how far the formula reads low.
    Arguments:
        index: Langelier's index [-].
    Returns:
        A sentence, or None.
    Valid for:
        As langelier_index.
    Error:
        Near zero either answer can be right.
    Raises:
        Nothing.
    Sources:
        saltline-notes, salts 6.
    """
    if index + LANGELIER_LOW_BY <= 0.0:
        return None
    return (
        "Lime can settle from this water: expect white crust on roots and granules. Rinsing with "
        "the same water does not take it away; rain or pure water in the mix keeps it from forming."
    )
