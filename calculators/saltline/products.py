"""What feeds are made of: generic grades and single salts, and what 1 g gives to a litre."""

from __future__ import annotations

from typing import NamedTuple

# Standard atomic masses [g/mol], IUPAC abridged (docs/sources.json: iupac-masses).
MASS_H = 1.008
MASS_C = 12.011
MASS_N = 14.007
MASS_O = 15.999
MASS_MG = 24.305
MASS_P = 30.973762
MASS_S = 32.06
MASS_CL = 35.45
MASS_K = 39.0983
MASS_CA = 40.078

# Element in the oxide that labels declare [g/g].
P_PER_P2O5 = 2.0 * MASS_P / (2.0 * MASS_P + 5.0 * MASS_O)
K_PER_K2O = 2.0 * MASS_K / (2.0 * MASS_K + MASS_O)
CA_PER_CAO = MASS_CA / (MASS_CA + MASS_O)
MG_PER_MGO = MASS_MG / (MASS_MG + MASS_O)

# What products bring into water, and the mass of each [g/mol].
IONS = ("ca", "mg", "k", "nh4", "no3", "h2po4", "so4", "cl", "urea")
ION_MASSES = (
    MASS_CA,
    MASS_MG,
    MASS_K,
    MASS_N + 4.0 * MASS_H,
    MASS_N + 3.0 * MASS_O,
    2.0 * MASS_H + MASS_P + 4.0 * MASS_O,
    MASS_S + 4.0 * MASS_O,
    MASS_CL,
    MASS_C + MASS_O + 2.0 * (MASS_N + 2.0 * MASS_H),
)
WATER_MASS = 2.0 * MASS_H + MASS_O  # of crystallisation


class Product(NamedTuple):
    """A product: what 1 g of it gives to a litre of water."""

    id: str
    label: str
    elements: tuple[float, ...]  # N, P, K, Ca, Mg [mg/L]
    ions: tuple[float, ...] | None  # in the order of IONS [mmol/L]; None where no label tells


def _salt(id_: str, label: str, water: float, **counts: float) -> Product:
    """A single salt, by the ions and the water in one formula unit."""
    units = [counts.get(ion, 0.0) for ion in IONS]
    mass = water * WATER_MASS + sum([n * ION_MASSES[at] for at, n in enumerate(units)])
    ions = tuple([1000.0 * n / mass for n in units])
    return Product(id_, label, _elements(ions), ions)


def _elements(ions: tuple[float, ...]) -> tuple[float, ...]:
    """N, P, K, Ca, Mg [mg/L] of ions in the order of IONS [mmol/L]."""
    ca, mg, k, nh4, no3, h2po4, _, _, urea = ions
    nitrogen = nh4 + no3 + 2.0 * urea
    return (MASS_N * nitrogen, MASS_P * h2po4, MASS_K * k, MASS_CA * ca, MASS_MG * mg)


def _grade(
    id_: str, label: str, n: float, p2o5: float, k2o: float, ca: float = 0.0, mg: float = 0.0
) -> Product:
    """A grade whose label does not say what its nitrogen is bound to [% by weight]."""
    elements = (10.0 * n, 10.0 * P_PER_P2O5 * p2o5, 10.0 * K_PER_K2O * k2o, 10.0 * ca, 10.0 * mg)
    return Product(id_, label, elements, None)


def _nitrate_grade(grade: Product, ammonium_n: float) -> Product:
    """The same grade, with this much ammonium nitrogen [% by weight] and the rest nitrate."""
    n, p, k, ca, mg = grade.elements
    ammonium = 10.0 * ammonium_n
    ions = (
        ca / MASS_CA,
        mg / MASS_MG,
        k / MASS_K,
        ammonium / MASS_N,
        (n - ammonium) / MASS_N,
        p / MASS_P,
        0.0,
        0.0,
        0.0,
    )
    return Product(grade.id, grade.label, grade.elements, ions)


# Ammonium nitrogen of the two grades whose conductivity can be worked out: of 20-10-20 as its
# label splits it, of 15-5-15 by the balance of charges (docs/sources.json: saltline-notes, feed 2).
PRODUCTS = (
    _nitrate_grade(_grade("grade_20_10_20", "20-10-20", 20.0, 10.0, 20.0), 8.0),
    _nitrate_grade(
        _grade("grade_15_5_15", "15-5-15 with 5 % Ca, 2 % Mg", 15.0, 5.0, 15.0, 5.0, 2.0), 2.86
    ),
    _grade("grade_13_3_15", "13-3-15 with 8 % Ca, 2 % Mg", 13.0, 3.0, 15.0, 8.0, 2.0),
    _grade("grade_20_20_20", "20-20-20 (much of its nitrogen is urea)", 20.0, 20.0, 20.0),
    _grade("grade_21_5_20", "21-5-20", 21.0, 5.0, 20.0),
    _salt("calcium_nitrate", "calcium nitrate, 11.9-0-0 crystals", 4.0, ca=1.0, no3=2.0),
    _salt(
        "calcium_ammonium_nitrate",
        "calcium nitrate, 15.5-0-0 granules",
        10.0,
        ca=5.0,
        nh4=1.0,
        no3=11.0,
    ),
    _salt("magnesium_nitrate", "magnesium nitrate crystals", 6.0, mg=1.0, no3=2.0),
    _salt("magnesium_sulfate", "magnesium sulfate (Epsom salt)", 7.0, mg=1.0, so4=1.0),
    _salt("potassium_nitrate", "potassium nitrate", 0.0, k=1.0, no3=1.0),
    _salt("potassium_sulfate", "potassium sulfate", 0.0, k=2.0, so4=1.0),
    _salt("potassium_chloride", "potassium chloride", 0.0, k=1.0, cl=1.0),
    _salt("monopotassium_phosphate", "monopotassium phosphate", 0.0, k=1.0, h2po4=1.0),
    _salt("monoammonium_phosphate", "monoammonium phosphate", 0.0, nh4=1.0, h2po4=1.0),
    _salt("ammonium_nitrate", "ammonium nitrate", 0.0, nh4=1.0, no3=1.0),
    _salt("ammonium_sulfate", "ammonium sulfate", 0.0, nh4=2.0, so4=1.0),
    _salt("urea", "urea", 0.0, urea=1.0),
)

# What a litre of water dissolves at 10 C [g] and the figure's level; the salts left out dissolve
# far more than a stock holds. docs/sources.json: saltline-notes (computed), crc-solubility
# (memory), iupac-nist-66 (read).
DISSOLVES_G_L_10_C = (
    ("potassium_sulfate", 86.0, "computed"),
    ("monopotassium_phosphate", 175.0, "from memory"),
    ("potassium_nitrate", 214.0, "from memory"),
    ("monoammonium_phosphate", 271.0, "measured"),
    ("potassium_chloride", 306.0, "computed"),
)


def elements_ppm(*, product: str) -> tuple[float, ...]:
    """Elements that 1 g of a product gives to a litre.

    Equation:
        Formula mass for single salts (mg/L = mmol/L x atomic mass); label percentages x 10 for
        grades, oxides turned into elements.
    Arguments:
        product: an id of PRODUCTS.
    Returns:
        N, P, K, Ca, Mg [mg/L for 1 g/L].
    Valid for:
        Dry product of the stated formula or grade; damp product gives less.
    Error:
        Rounding of the grade: a label's 20 % may be 19.75 %.
    Raises:
        KeyError: unknown id.
    Sources:
        iupac-masses; saltline-notes, feed 1.
    """
    return by_id(product).elements


def by_id(id_: str) -> Product:
    """The product with this id.

    Equation:
        None: a look-up.
    Arguments:
        id_: an id of PRODUCTS.
    Returns:
        Product.
    Valid for:
        PRODUCTS.
    Error:
        As elements_ppm.
    Raises:
        KeyError: unknown id.
    Sources:
        As elements_ppm.
    """
    for item in PRODUCTS:
        if item.id == id_:
            return item
    raise KeyError(id_)
