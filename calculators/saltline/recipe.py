"""Which of the grower's products, and how much of each, come closest to what is wanted."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from saltline.errors import BadInput, Refused
from saltline.ions import ions_to_ec
from saltline.leastsquares import non_negative
from saltline.products import DISSOLVES_G_L_10_C, IONS, Product, by_id
from saltline.saying import figure
from saltline.strength import (
    EC_ERROR,
    N_PPM_TRIAL_TOP,
    SMALL_DOSE,
    SMALL_DOSE_G,
    STRONG,
    oz_per_100_us_gal,
)

NUTRIENTS = ("Nitrogen", "Phosphorus", "Potassium", "Calcium", "Magnesium")
N, P, K, CA, MG = 0, 1, 2, 3, 4
NH4, NO3, SO4, UREA = 3, 4, 6, 8  # places in products.IONS

NOTHING_G_L = 0.001  # less than any scale shows: not used
MISS_SHARE = 0.05  # a target missed by more is told
MISS_PPM = 1.0
FEED_PH = 6.0  # a mixed feed's; at 5 the reading is 0.003 mS/cm higher
NITRATE_LEAST = 0.5  # share of nitrogen; docs/sources.json: wang-2008


class FeedRecipe(NamedTuple):
    """The answer of `feed_recipe`: grams of each product, and what they make."""

    grams_per_l: tuple[float, ...]
    reached_ppm: tuple[float, ...]
    ec_ms_cm_low: float | None
    ec_ms_cm_high: float | None
    dose_g: tuple[float, ...]
    stock_g_l: tuple[float, ...]
    oz_per_100_us_gal: tuple[float, ...]
    warnings: tuple[str, ...]


def feed_recipe(
    *,
    products: list[str],
    n_ppm: float,
    p_ppm: float,
    k_ppm: float,
    ca_ppm: float,
    mg_ppm: float,
    water_ms_cm: float,
    batch_l: float,
    injector: float,
) -> FeedRecipe:
    """Grams of each chosen product that come closest to the nutrients wanted.

    Equation:
        min sum (reached - wanted)^2 in mg/L over the nutrients asked for (above 0), grams >= 0
        (leastsquares.non_negative). Conductivity = water + ions_to_ec of what dissolves, +-10 %.
        Grams for the jug = g/L x litres; stock = g/L x injector.
    Arguments:
        products: ids of products.PRODUCTS.
        n_ppm: nitrogen wanted [mg/L]; 0 takes what comes, and so for the others.
        p_ppm: phosphorus as the element [mg/L].
        k_ppm: potassium as the element [mg/L].
        ca_ppm: calcium [mg/L], beside what the water holds.
        mg_ppm: magnesium [mg/L], beside what the water holds.
        water_ms_cm: the water before feed goes in [mS/cm at 25 C].
        batch_l: finished feed [L].
        injector: litres of finished feed from one litre of stock [-]; 1 without an injector.
    Returns:
        FeedRecipe: grams in the order of `products` [g/L], N P K Ca Mg reached [mg/L],
        conductivity as a range [mS/cm at 25 C] or None; grams for the jug, in a litre of stock,
        and ounces in 100 US gallons, in the same order.
    Valid for:
        Dry products of the stated formula or grade, in water that keeps them dissolved.
    Error:
        Nutrients as the labels; conductivity 10 %: feed and tap read 3-4 % below the sum.
    Raises:
        BadInput: no nutrient above 0.
    Sources:
        lawson-hanson-1974; saltline-notes, feed 1 and 2, salts E7 and E8.
    """
    wanted = (n_ppm, p_ppm, k_ppm, ca_ppm, mg_ppm)
    asked = [at for at in range(len(wanted)) if wanted[at] > 0.0]
    if not asked:
        raise BadInput("n_ppm", "or another nutrient must be more than 0")
    chosen = [by_id(id_) for id_ in products]
    grams = non_negative(
        columns=[[item.elements[at] for at in asked] for item in chosen],
        target=[wanted[at] for at in asked],
    )
    reached = [
        sum([grams[at] * item.elements[nutrient] for at, item in enumerate(chosen)])
        for nutrient in range(len(NUTRIENTS))
    ]
    used = [(item, grams[at]) for at, item in enumerate(chosen) if grams[at] >= NOTHING_G_L]
    added, notes = _conductivity(used)
    notes = _missed(wanted, reached) + notes + _together(used, injector) + _feeds(used, reached)
    if injector == 1.0 and any(amount * batch_l < SMALL_DOSE_G for _, amount in used):
        notes.append(SMALL_DOSE)
    return FeedRecipe(
        grams_per_l=tuple(grams),
        reached_ppm=tuple(reached),
        ec_ms_cm_low=None if added is None else (1.0 - EC_ERROR) * (water_ms_cm + added),
        ec_ms_cm_high=None if added is None else (1.0 + EC_ERROR) * (water_ms_cm + added),
        dose_g=tuple([amount * batch_l for amount in grams]),
        stock_g_l=tuple([amount * injector for amount in grams]),
        oz_per_100_us_gal=tuple([oz_per_100_us_gal(g_l=amount) for amount in grams]),
        warnings=tuple(notes),
    )


def mix_ms_cm(*, products: list[str], grams_per_l: Sequence[float]) -> float:
    """Conductivity that products add to pure water.

    Equation:
        ions of each product x grams, then ions_to_ec at pH 6.
    Arguments:
        products: ids of products.PRODUCTS that tell their ions.
        grams_per_l: grams of each in a litre [g/L].
    Returns:
        Conductivity at 25 C [mS/cm].
    Valid for:
        Ionic strength up to 0.1 mol/L; single salts, 20-10-20 and 15-5-15.
    Error:
        Against PHREEQC up to 2 g/L: nitrates 1.2 %, phosphates and magnesium sulfate 4.3 %,
        ammonium sulfate 9 %. The two grades read 2-8 % above their labels.
    Raises:
        Refused: stronger than 0.1 mol/L.
    Sources:
        saltline-notes, feed 2, salts E7 and E8.
    """
    used = [(by_id(id_), grams_per_l[at]) for at, id_ in enumerate(products)]
    ca, mg, k, nh4, no3, h2po4, so4, cl, urea = _dissolved(used)
    return ions_to_ec(
        ca_mmol_l=ca,
        mg_mmol_l=mg,
        k_mmol_l=k,
        na_mmol_l=0.0,
        nh4_mmol_l=nh4,
        no3_mmol_l=no3,
        cl_mmol_l=cl,
        so4_mmol_l=so4,
        h2po4_mmol_l=h2po4,
        hco3_mmol_l=0.0,
        urea_mmol_l=urea,
        ph=FEED_PH,
    ).ec_ms_cm


def _dissolved(used: Sequence[tuple[Product, float]]) -> list[float]:
    """Ions of a mix in the order of products.IONS [mmol/L], of the products that tell theirs."""
    total = [0.0] * len(IONS)
    for item, amount in used:
        if item.ions is not None:
            total = [total[at] + amount * each for at, each in enumerate(item.ions)]
    return total


def _conductivity(used: Sequence[tuple[Product, float]]) -> tuple[float | None, list[str]]:
    """What a mix adds to the water's conductivity [mS/cm], or None and why."""
    silent = [item.label for item, _ in used if item.ions is None]
    if silent:
        return None, [
            f"No conductivity is worked out: the name {silent[0]} does not say which salts are in "
            "it. Ask its label for the conductivity at 100 ppm nitrogen."
        ]
    try:
        ids, grams = [item.id for item, _ in used], [amount for _, amount in used]
        return mix_ms_cm(products=ids, grams_per_l=grams), []
    except Refused as refused:
        return None, [refused.args[0] + " No conductivity is worked out."]


def _missed(wanted: Sequence[float], reached: Sequence[float]) -> list[str]:
    """One sentence with every nutrient asked for and not reached."""
    missed = [
        f"{name.lower()} to {figure(reached[at], 3)} ppm where {figure(wanted[at], 3)} is wanted"
        for at, name in enumerate(NUTRIENTS)
        if wanted[at] > 0.0
        and abs(reached[at] - wanted[at]) > max(MISS_PPM, MISS_SHARE * wanted[at])
    ]
    if not missed:
        return []
    return ["These products together come no closer: " + "; ".join(missed) + "."]


def _together(used: Sequence[tuple[Product, float]], injector: float) -> list[str]:
    """What must not share a stock, and what a cold stock cannot hold."""
    found = []
    for item, _ in used:
        others = [
            other.label
            for other, _ in used
            if other.id != item.id
            and (other.elements[P] > 0.0 or (other.ions is not None and other.ions[SO4] > 0.0))
        ]
        if item.elements[CA] > 0.0 and others:
            found.append(f"Keep {item.label} out of one stock with {' and '.join(others)}.")
    if found:
        found.append(
            "Calcium falls out with sulfate and phosphate: dissolve each in its own bucket; in the "
            "weak feed they may meet."
        )
        found = [" ".join(found)]
    for item, amount in used:
        for id_, grams, level in DISSOLVES_G_L_10_C:
            if item.id == id_ and injector > 1.0 and amount * injector > grams:
                found.append(
                    f"Your stock would take {figure(amount * injector, 3)} g of {item.label} in a "
                    f"litre; at 10 °C a litre of water dissolves {figure(grams, 3)} g ({level})."
                )
    return found


def _feeds(used: Sequence[tuple[Product, float]], reached: Sequence[float]) -> list[str]:
    """What the trials say of such a feed."""
    found = []
    if reached[N] > N_PPM_TRIAL_TOP:
        found.append(STRONG)
    ions = _dissolved(used)
    if ions[UREA] > 0.0:
        found.append("Urea does not conduct: the pen sees nothing of it.")
    nitrogen = ions[NO3] + ions[NH4] + 2.0 * ions[UREA]
    silent = [item for item, _ in used if item.ions is None]
    if not silent and nitrogen > 0.0 and ions[NO3] < NITRATE_LEAST * nitrogen:
        found.append(
            "Less than half of the nitrogen is nitrate. In a Phalaenopsis trial half was the "
            "least that did well, and three quarters was best."
        )
    return found
