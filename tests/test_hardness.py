"""Hardness scales beside pint and molmass; lime beside PHREEQC."""

from __future__ import annotations

from itertools import pairwise

import molmass
import phreeqpython
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline.forms import all_forms
from saltline.hardness import (
    CACO3_G_MOL,
    CAO_G_MOL,
    MG_L_CACO3,
    hardness,
    hardness_class,
    langelier_index,
    lime_warning,
)
from saltline_pages import shown
from test_shown import values_of

FORM = all_forms()["hardness"]


def test_masses_are_those_of_the_formulas() -> None:
    assert molmass.Formula("CaCO3").mass == pytest.approx(CACO3_G_MOL, rel=1e-5)
    assert molmass.Formula("CaO").mass == pytest.approx(CAO_G_MOL, rel=1e-5)


@pytest.mark.parametrize(
    ("scale", "quantity"),
    [
        ("clark", "grain / imperial_gallon"),
        ("grain_us_gal", "grain / gallon"),
        ("french", "10 * milligram / liter"),
        ("mg_l_caco3", "gram / meter**3"),
    ],
)
def test_scales_are_their_definitions(scale: str, quantity: str) -> None:
    theirs = pint.UnitRegistry().parse_expression(quantity).to("milligram / liter").magnitude
    assert MG_L_CACO3[scale] == pytest.approx(theirs, rel=1e-9)


@settings(max_examples=200, deadline=None)
@given(values_of(FORM))
def test_every_scale_leads_back(inputs: dict[str, float]) -> None:
    answer = FORM.run(inputs)
    values = dict(zip(answer._fields, answer, strict=True))
    assert values[str(inputs["unit"])] == pytest.approx(inputs["value"], rel=1e-12)
    for scale in MG_L_CACO3:
        again = hardness(value=values[scale], unit=scale)
        assert again.mg_l_caco3 == pytest.approx(answer.mg_l_caco3, rel=1e-12)
    for sentence in FORM.words(inputs, answer):
        assert "{" not in shown.fill(sentence, FORM, inputs, values)


def test_words_climb_with_hardness() -> None:
    words = [hardness_class(mg_l_caco3=float(mg)) for mg in range(0, 400, 5)]
    changes = [(a, b) for a, b in pairwise(words) if a != b]
    assert changes == [
        ("soft", "moderately hard"),
        ("moderately hard", "hard"),
        ("hard", "very hard"),
    ]


@pytest.mark.parametrize("alkalinity", [1.0, 2.0, 4.0, 6.0])
@pytest.mark.parametrize("ph", [6.8, 7.4, 8.0, 8.4])
def test_lime_index_beside_phreeqc(alkalinity: float, ph: float) -> None:
    """Calcium bicarbonate water with some sodium chloride, from soft to very hard."""
    calcium = 0.5 * alkalinity
    water = phreeqpython.PhreeqPython(database="phreeqc.dat").add_solution(
        {"pH": ph, "units": "mmol/l", "temp": 25, "Ca": calcium, "Alkalinity": alkalinity,
         "Na": 1.0, "Cl": 1.0}
    )  # fmt: skip
    index = langelier_index(
        ph=ph,
        tds_mg_l=40.078 * calcium + 61.017 * alkalinity + 58.44,
        water_c=25.0,
        calcium_mg_l_caco3=calcium * MG_L_CACO3["mmol_l"],
        alkalinity_mg_l_caco3=alkalinity * MG_L_CACO3["meq_l"],
    )
    # Found 0.11 to 0.23 below; the warning allows for 0.2.
    assert 0.1 < water.si("Calcite") - index < 0.25
    if abs(water.si("Calcite")) > 0.1:
        assert (lime_warning(index=index) is not None) == (water.si("Calcite") > 0.0)


positive = st.floats(1.0, 1000.0)
warm = st.floats(0.0, 40.0)


@settings(max_examples=200, deadline=None)
@given(
    st.floats(5.0, 9.5), positive, st.floats(0.0, 40.0), positive, positive, st.floats(1.01, 3.0)
)
def test_lime_comes_with_all_that_feeds_it(
    ph: float, tds: float, c: float, calcium: float, alkalinity: float, times: float
) -> None:
    def index(ph: float, tds: float, c: float, calcium: float, alkalinity: float) -> float:
        return langelier_index(
            ph=ph,
            tds_mg_l=tds,
            water_c=c,
            calcium_mg_l_caco3=calcium,
            alkalinity_mg_l_caco3=alkalinity,
        )

    here = index(ph, tds, c, calcium, alkalinity)
    assert index(ph + 0.1, tds, c, calcium, alkalinity) > here
    assert index(ph, tds, c + 5.0, calcium, alkalinity) > here
    assert index(ph, tds, c, times * calcium, alkalinity) > here
    assert index(ph, tds, c, calcium, times * alkalinity) > here
    assert index(ph, times * tds, c, calcium, alkalinity) < here
