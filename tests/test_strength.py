"""Feed strength: against pint and molmass, and what must hold for every label and jug."""

from __future__ import annotations

import math
from typing import Any

import molmass
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline import products
from saltline.declare import Form, Number
from saltline.errors import BadInput
from saltline.forms import all_forms
from saltline.strength import FeedCheck, FeedDose, LabelStrength, oz_per_100_us_gal

FORMS = all_forms()
MANY = settings(max_examples=200, deadline=None)
UNITS = pint.UnitRegistry()


def inside(form: Form, **fixed: Any) -> st.SearchStrategy[dict[str, Any]]:
    """Any arguments within the declared bounds."""
    drawn = {}
    for item in form.inputs:
        assert isinstance(item, Number)
        number = st.floats(item.low, item.high)
        drawn[item.name] = st.none() | number if item.optional else number
    return st.fixed_dictionaries(drawn | {k: st.just(v) for k, v in fixed.items()})


def finite(answer: tuple[Any, ...]) -> bool:
    return all(math.isfinite(value) for value in answer if isinstance(value, float))


@pytest.mark.parametrize(
    ("ours", "oxide", "element", "atoms"),
    [
        (products.P_PER_P2O5, "P2O5", "P", 2),
        (products.K_PER_K2O, "K2O", "K", 2),
        (products.CA_PER_CAO, "CaO", "Ca", 1),
        (products.MG_PER_MGO, "MgO", "Mg", 1),
    ],
)
def test_oxide_factors_against_molmass(ours: float, oxide: str, element: str, atoms: int) -> None:
    theirs = atoms * molmass.Formula(element).mass / molmass.Formula(oxide).mass
    assert ours == pytest.approx(theirs, rel=2e-5)


@given(st.floats(0.001, 500))
@MANY
def test_ounces_against_pint(g_l: float) -> None:
    quantity = UNITS.Quantity(g_l, "gram / liter").to("ounce / US_liquid_gallon")
    assert oz_per_100_us_gal(g_l=g_l) == pytest.approx(100 * quantity.magnitude, rel=1e-12)


@given(inside(FORMS["label-strength"]))
@MANY
def test_label_holds_for_every_label(values: dict[str, Any]) -> None:
    form = FORMS["label-strength"]
    if sum(values[name] for name in values if name.endswith("_percent")) > 100.0:
        with pytest.raises(BadInput, match="n_percent and the other"):
            form.run(values)
        return
    answer: LabelStrength = form.run(values)
    assert finite(answer)
    given_mg_l = 10 * values["dose_g_l"] * 100
    assert 0 <= sum(answer[:5]) <= given_mg_l * (1 + 1e-12)
    twice = form.function(**(values | {"dose_g_l": 2 * values["dose_g_l"]}))
    assert twice.n_ppm == pytest.approx(2 * answer.n_ppm)


@given(inside(FORMS["feed-dose"]))
@MANY
def test_dose_comes_back_as_strength(values: dict[str, Any]) -> None:
    answer: FeedDose = FORMS["feed-dose"].run(values)
    assert finite(answer)
    assert answer.teaspoons_low < answer.dose_g / values["teaspoon_g"] < answer.teaspoons_high
    assert answer.stock_g_l == pytest.approx(answer.dose_g_l * values["injector"])
    if answer.dose_g_l <= 500:
        back = FORMS["label-strength"].run(
            {"n_percent": values["n_percent"], "dose_g_l": answer.dose_g_l}
        )
        assert back.n_ppm == pytest.approx(values["target_n_ppm"], rel=1e-12)


@given(inside(FORMS["feed-check"]))
@MANY
def test_check_ranges_are_in_order(values: dict[str, Any]) -> None:
    form = FORMS["feed-check"]
    if values["feed_ms_cm"] < values["water_ms_cm"]:
        with pytest.raises(BadInput, match="feed_ms_cm"):
            form.run(values)
        return
    answer: FeedCheck = form.run(values)
    assert finite(answer)
    assert 0 <= answer.n_ppm_low <= answer.n_ppm <= answer.n_ppm_high
    assert answer.n_ppm_low <= 0.9 * answer.n_ppm * (1 + 1e-12)
    assert (answer.off_percent is None) == (values["label_n_ppm"] is None)
    stronger = form.function(**(values | {"feed_ms_cm": values["feed_ms_cm"] + 1.0}))
    assert stronger.n_ppm > answer.n_ppm


@pytest.mark.parametrize(
    ("feed_ms_cm", "flag", "cause"),
    [(0.94, None, ""), (1.07, None, ""), (1.09, "above", "heaped spoon"), (0.79, "below", "urea")],
)
def test_flag_beyond_15_percent(feed_ms_cm: float, flag: str | None, cause: str) -> None:
    values = {"water_ms_cm": 0.3, "ec_per_100_ppm_n_ms_cm": 0.64, "label_n_ppm": 100.0}
    answer = FORMS["feed-check"].run(values | {"feed_ms_cm": feed_ms_cm})
    flagged = [text for text in answer.warnings if "15 %" in text]
    assert len(flagged) == (flag is not None)
    if flag:
        assert flag in flagged[0]
        assert cause in flagged[0]


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({"target_n_ppm": 200.0, "injector": 100.0}, ["101 in all"]),
        ({"target_n_ppm": 200.0, "injector": 200.0}, ["101 in all", "at 10 °C"]),
        ({"target_n_ppm": 280.0, "injector": 400.0}, ["101 in all", "479 g/L"]),
        ({"target_n_ppm": 281.0}, ["More than 280 ppm"]),
        ({"target_n_ppm": 100.0, "batch_l": 5.0}, ["kitchen scale"]),
    ],
)
def test_dose_warns(values: dict[str, float], says: list[str]) -> None:
    answer = FORMS["feed-dose"].run({"n_percent": 20.0, "batch_l": 50.0} | values)
    assert len(answer.warnings) == len(says)
    for warning, part in zip(answer.warnings, says, strict=True):
        assert part in warning


@pytest.mark.parametrize(("ec_100", "says"), [(0.44, "urea"), (0.64, ""), (1.2, "not for 1 g")])
def test_odd_figure_for_100_ppm_is_questioned(ec_100: float, says: str) -> None:
    answer = FORMS["feed-check"].run(
        {"water_ms_cm": 0.1, "feed_ms_cm": 0.8, "ec_per_100_ppm_n_ms_cm": ec_100}
    )
    assert len(answer.warnings) == (1 if says else 0)
    assert all(says in warning for warning in answer.warnings)


def test_hard_water_widens_the_range() -> None:
    answer = FORMS["feed-check"].run(
        {"water_ms_cm": 0.9, "feed_ms_cm": 1.0, "ec_per_100_ppm_n_ms_cm": 0.64}
    )
    half = 100 / 0.64 * 0.02 * 1.9
    assert answer.n_ppm_high - answer.n_ppm == pytest.approx(half)
    assert "rain water" in answer.warnings[0]


def test_bloom_feed_is_named() -> None:
    label = {"n_percent": 10.0, "p2o5_percent": 30.0, "k2o_percent": 20.0, "dose_g_l": 0.5}
    assert "15 to 19 flowers" in FORMS["label-strength"].run(label).warnings[0]
