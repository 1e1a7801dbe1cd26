"""Recipes: the solver against SciPy, formulas against molmass, conductivity against PHREEQC."""

from __future__ import annotations

import math
import re
from functools import cache
from typing import Any

import molmass
import numpy as np
import phreeqpython
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls

from saltline.errors import BadInput
from saltline.feeding import USUAL_N_PPM_HIGH, USUAL_N_PPM_LOW
from saltline.forms import all_forms
from saltline.leastsquares import non_negative
from saltline.products import IONS, MASS_N, MASS_P, PRODUCTS, elements_ppm
from saltline.recipe import NOTHING_G_L, FeedRecipe, mix_ms_cm
from saltline.strength import SMALL_DOSE

FORM = all_forms()["feed-recipe"]
IDS = [item.id for item in PRODUCTS]
NUTRIENTS = ("n_ppm", "p_ppm", "k_ppm", "ca_ppm", "mg_ppm")

FORMULAS = {
    "calcium_nitrate": "Ca(NO3)2(H2O)4",
    "calcium_ammonium_nitrate": "Ca5(NO3)11NH4(H2O)10",
    "magnesium_nitrate": "Mg(NO3)2(H2O)6",
    "magnesium_sulfate": "MgSO4(H2O)7",
    "potassium_nitrate": "KNO3",
    "potassium_sulfate": "K2SO4",
    "potassium_chloride": "KCl",
    "monopotassium_phosphate": "KH2PO4",
    "monoammonium_phosphate": "NH4H2PO4",
    "ammonium_nitrate": "NH4NO3",
    "ammonium_sulfate": "(NH4)2SO4",
    "urea": "CO(NH2)2",
}
CHARGES = {"ca": 2, "mg": 2, "k": 1, "nh4": 1, "no3": -1, "h2po4": -1, "so4": -2, "cl": -1}


@pytest.mark.parametrize("seed", range(4))
def test_solver_against_scipy(seed: int) -> None:
    """Random tables, sparse ones, and columns that stand in for each other."""
    random = np.random.default_rng(seed)
    for _ in range(250):
        rows, columns = random.integers(1, 6), random.integers(1, 18)
        table = random.uniform(-50, 400, (rows, columns))
        table[random.random((rows, columns)) < 0.4 * (seed % 2)] = 0.0
        if seed > 1 and columns > 3:
            table[:, 1] = 2 * table[:, 0]
            table[:, 2] = table[:, 0] + table[:, 3]
        target = random.uniform(0, 300, rows)
        ours = non_negative(columns=table.T.tolist(), target=target.tolist())
        _, miss = nnls(table, target)
        assert min(ours) >= 0
        assert np.linalg.norm(table @ ours - target) == pytest.approx(
            miss, abs=1e-9 * np.linalg.norm(target)
        )


@pytest.mark.parametrize("product", list(FORMULAS))
def test_salts_against_molmass(product: str) -> None:
    formula = molmass.Formula(FORMULAS[product])
    made = formula.composition()
    for at, element in enumerate(("N", "P", "K", "Ca", "Mg")):
        share = made[element].fraction if element in made else 0.0
        assert elements_ppm(product=product)[at] == pytest.approx(1000 * share, rel=1e-4)


def test_charges_balance() -> None:
    for item in PRODUCTS:
        if item.ions is None:
            continue
        charged = [CHARGES.get(ion, 0) * item.ions[at] for at, ion in enumerate(IONS)]
        positive = sum(value for value in charged if value > 0)
        assert abs(sum(charged)) <= 0.003 * positive


@cache
def water() -> Any:
    return phreeqpython.PhreeqPython()


def phreeqc_ms_cm(products: list[str], grams: list[float]) -> float:
    """Conductivity of a mix by PHREEQC [mS/cm]."""
    names = {"ca": "Ca", "mg": "Mg", "k": "K", "nh4": "Amm", "no3": "N(5)", "h2po4": "P"}
    names |= {"so4": "S(6)", "cl": "Cl"}
    total: dict[str, float] = {}
    for product, amount in zip(products, grams, strict=True):
        item = next(item for item in PRODUCTS if item.id == product)
        assert item.ions is not None
        for at, ion in enumerate(IONS):
            if ion in names and item.ions[at]:
                total[names[ion]] = total.get(names[ion], 0.0) + amount * item.ions[at]
    solution = water().add_solution({"units": "mmol/l", "pH": "6.0", "temp": "25", **total})
    reading = solution.sc / 1000
    solution.forget()
    return float(reading)


MIXES = [
    (["grade_20_10_20"], [0.5]),
    (["grade_15_5_15"], [0.7]),
    (["calcium_nitrate", "potassium_nitrate", "magnesium_sulfate"], [0.4, 0.2, 0.2]),
    (["calcium_ammonium_nitrate", "monopotassium_phosphate", "magnesium_nitrate"], [0.4, 0.1, 0.2]),
    (["grade_20_10_20", "calcium_nitrate", "magnesium_sulfate"], [0.3, 0.3, 0.3]),
    (["potassium_sulfate", "ammonium_nitrate", "monoammonium_phosphate"], [0.3, 0.2, 0.1]),
    (["potassium_nitrate", "urea"], [0.4, 0.1]),
]


@pytest.mark.parametrize(("products", "grams"), MIXES)
def test_mixes_against_phreeqc(products: list[str], grams: list[float]) -> None:
    """Within 2 %, so that the +-10 % shown has room for the pen and for the label."""
    assert mix_ms_cm(products=products, grams_per_l=grams) == pytest.approx(
        phreeqc_ms_cm(products, grams), rel=0.02
    )


def wanted() -> st.SearchStrategy[dict[str, Any]]:
    high = {name: FORM.input(name).high for name in NUTRIENTS}  # type: ignore[union-attr]
    numbers = {name: st.just(0.0) | st.floats(0.5, high[name]) for name in NUTRIENTS}
    return st.fixed_dictionaries(
        numbers
        | {
            "products": st.lists(st.sampled_from(IDS), min_size=1, max_size=len(IDS)),
            "water_ms_cm": st.floats(0, 5),
            "batch_l": st.floats(0.05, 10000),
            "injector": st.just(1.0) | st.floats(1, 1000),
        }
    )


@given(wanted())
@settings(max_examples=200, deadline=None)
def test_recipe_holds_for_every_shelf(values: dict[str, Any]) -> None:
    if not any(values[name] for name in NUTRIENTS):
        with pytest.raises(BadInput, match="n_ppm"):
            FORM.run(values)
        return
    answer: FeedRecipe = FORM.run(values)
    assert len(answer.grams_per_l) == len(values["products"])
    for each, times in ((answer.dose_g, "batch_l"), (answer.stock_g_l, "injector")):
        assert each == pytest.approx([grams * values[times] for grams in answer.grams_per_l])
    small = values["injector"] == 1 and any(
        grams >= NOTHING_G_L and grams * values["batch_l"] < 5 for grams in answer.grams_per_l
    )
    assert (SMALL_DOSE in answer.warnings) == small
    assert all(math.isfinite(value) and value >= 0 for value in answer.grams_per_l)
    assert all(math.isfinite(value) and value >= 0 for value in answer.reached_ppm)
    assert all(FORM.words(FORM.complete(values), answer)[0::2])
    told = [text for text in answer.warnings if "come no closer" in text]
    missed = [
        name
        for at, name in enumerate(NUTRIENTS)
        if values[name]
        and abs(answer.reached_ppm[at] - values[name]) > max(1.0, 0.05 * values[name])
    ]
    assert len(told) == (1 if missed else 0)
    assert not told or told[0].count(" is wanted") == len(missed)
    if answer.ec_ms_cm_low is not None and answer.ec_ms_cm_high is not None:
        assert 0.9 * values["water_ms_cm"] <= answer.ec_ms_cm_low <= answer.ec_ms_cm_high
        assert answer.ec_ms_cm_high == pytest.approx(answer.ec_ms_cm_low * 1.1 / 0.9)
    else:
        assert any("No conductivity" in text for text in answer.warnings)


@given(st.lists(st.sampled_from(IDS), min_size=1, max_size=4, unique=True), st.data())
@settings(max_examples=100, deadline=None)
def test_what_can_be_reached_is_reached(products: list[str], data: st.DataObject) -> None:
    """Mix some grams, ask for what they hold, and get it."""
    grams = [data.draw(st.floats(0.05, 0.5)) for _ in products]
    held = [
        sum(
            amount * elements_ppm(product=item)[at]
            for item, amount in zip(products, grams, strict=True)
        )
        for at in range(5)
    ]
    if not any(held):
        return
    asked = dict(zip(NUTRIENTS, held, strict=True))
    answer = FORM.function(products=products, water_ms_cm=0.0, batch_l=1.0, injector=1.0, **asked)
    for at, value in enumerate(held):
        assert answer.reached_ppm[at] == pytest.approx(value, rel=1e-6, abs=1e-6)


@pytest.mark.parametrize(
    ("products", "apart"),
    [
        (["calcium_nitrate", "magnesium_sulfate"], True),
        (["calcium_nitrate", "monoammonium_phosphate"], True),
        (["grade_15_5_15", "magnesium_sulfate"], True),
        (["grade_15_5_15"], False),
        (["calcium_nitrate", "magnesium_nitrate", "potassium_nitrate"], False),
        (["potassium_sulfate", "monopotassium_phosphate", "ammonium_nitrate"], False),
    ],
)
def test_calcium_stays_out_of_one_stock(products: list[str], apart: bool) -> None:
    asked = dict.fromkeys(NUTRIENTS, 30.0)
    answer = FORM.run(asked | {"products": products, "water_ms_cm": 0.1})
    assert any("out of one stock" in text for text in answer.warnings) == apart


def test_grade_without_a_known_make_up_has_no_conductivity() -> None:
    answer = FORM.run({"n_ppm": 100.0, "products": ["grade_20_20_20"], "water_ms_cm": 0.1})
    assert (answer.ec_ms_cm_low, answer.ec_ms_cm_high) == (None, None)
    assert "20-20-20" in answer.warnings[0]


def test_too_strong_for_the_sum_is_said() -> None:
    asked = {"k_ppm": 800.0, "products": ["potassium_sulfate"], "water_ms_cm": 0.1}
    assert FORM.run(asked).ec_ms_cm_low is not None
    asked = {"mg_ppm": 200.0, "ca_ppm": 500.0, "k_ppm": 800.0, "water_ms_cm": 0.1}
    salts = ["calcium_nitrate", "magnesium_sulfate", "potassium_sulfate"]
    answer = FORM.run(asked | {"products": salts})
    assert answer.ec_ms_cm_low is None
    assert any("No conductivity" in text for text in answer.warnings)


@pytest.mark.parametrize(
    ("asked", "products", "says"),
    [
        ({"n_ppm": 300.0}, ["grade_20_10_20"], "More than 280 ppm"),
        ({"n_ppm": 100.0}, ["urea"], "does not conduct"),
        ({"n_ppm": 100.0}, ["ammonium_sulfate"], "Less than half"),
        ({"k_ppm": 500.0, "injector": 100.0}, ["potassium_sulfate"], "at 10 °C"),
    ],
)
def test_recipe_warns(asked: dict[str, float], products: list[str], says: str) -> None:
    answer = FORM.run(asked | {"products": products, "water_ms_cm": 0.0})
    assert any(says in text for text in answer.warnings)


def test_a_cold_stock_is_the_reader_s_own() -> None:
    """At 1:100 the litre of stock would take 111 g of potassium sulfate, at 1:50 half of it."""
    asked = {"k_ppm": 500.0, "products": ["potassium_sulfate"], "water_ms_cm": 0.0}
    for injector, told in ((1.0, False), (50.0, False), (100.0, True)):
        warnings = FORM.run(asked | {"injector": injector}).warnings
        assert any("at 10 °C" in text for text in warnings) == told, injector


def test_the_answer_is_for_the_jug() -> None:
    """0.5 g/L of a 20 % feed for 100 ppm nitrogen: 4 g for 8 L, 100 g in a litre of stock."""
    asked = {"n_ppm": 100.0, "products": ["grade_20_20_20"], "water_ms_cm": 0.1}
    one, jug = FORM.run(asked), FORM.run(asked | {"batch_l": 8.0})
    assert (one.dose_g, jug.dose_g) == (pytest.approx((0.5,)), pytest.approx((4.0,)))
    assert one.grams_per_l == jug.grams_per_l
    assert jug.oz_per_100_us_gal == pytest.approx((6.676,), rel=1e-3)  # 100 / (0.7489 x 20)
    for injector, said in ((1.0, False), (100.0, True)):
        inputs = FORM.complete(asked | {"batch_l": 8.0, "injector": injector})
        _, number, reason = FORM.words(inputs, FORM.function(**inputs))
        assert number.startswith("4 g of 20-20-20")
        assert (" 50 g of 20-20-20" in reason) == said


def test_the_ready_needs_are_what_their_origin_says() -> None:
    growing, gentle = (way.values for way in FORM.screens[0].ways)
    n, p, k, _, _ = growing.values()
    assert USUAL_N_PPM_LOW <= n <= USUAL_N_PPM_HIGH
    assert 0.5 < k / n < 1.0  # tanaka-1988, wang-2007
    assert p / n < 1.4 * MASS_P / (14.3 * MASS_N)  # ashs-2009-2001, in mmol/L
    assert gentle == pytest.approx({name: value / 2 for name, value in growing.items()}, rel=0.07)
    for way in FORM.screens[0].ways:
        shown = [float(figure) for figure in re.findall(r"\d+(?:\.\d+)?", way.hint)]
        assert shown == list(way.values.values())
        assert "our own proposal" in way.hint
    assert sorted(name for s in FORM.screens for name in (*s.inputs, *s.folded)) == sorted(
        item.name for item in FORM.inputs
    )


def test_nothing_fits() -> None:
    answer = FORM.run({"p_ppm": 20.0, "products": ["potassium_nitrate"], "water_ms_cm": 0.2})
    assert answer.grams_per_l == (0.0,)
    assert answer.ec_ms_cm_low == pytest.approx(0.18, abs=5e-4)  # pH 6 itself conducts
    assert (
        "None of these"
        in FORM.words(
            FORM.complete(
                {
                    "p_ppm": 20.0,
                    "products": ["potassium_nitrate"],
                    "water_ms_cm": 0.2,
                }
            ),
            answer,
        )[0]
    )
