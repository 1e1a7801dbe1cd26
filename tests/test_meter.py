"""Pens and standards: scales, tables of standards, and what one reading can tell."""

from __future__ import annotations

from itertools import pairwise

import pint
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from saltline.conductance import IONS, conductivity_ms_cm
from saltline.forms import all_forms
from saltline.meter import ec_from_scale, factor_iso_7888, factor_linear, scale_from_ec
from saltline.standards import (
    KCL_0_01_MOL_KG,
    SCALES,
    STANDARDS,
    bottle_1413_us_cm,
    ppm442,
    which_scale,
)
from saltline_pages import shown
from test_shown import values_of

READING, WHICH = all_forms()["meter-reading"], all_forms()["which-scale"]


def test_conductivity_units_are_pints() -> None:
    ten = pint.UnitRegistry().parse_expression("10 millisiemens / centimeter")
    assert ten.to("siemens / meter").magnitude == pytest.approx(1.0)
    theirs = ten.to("microsiemens / centimeter").magnitude
    assert scale_from_ec(ec_ms_cm=10.0, scale="us_cm") == pytest.approx(theirs)


@settings(max_examples=200, deadline=None)
@given(st.floats(0.0, 1e5), st.sampled_from(SCALES))
def test_scales_lead_back(reading: float, scale: str) -> None:
    ec = ec_from_scale(reading=reading, scale=scale)
    assert scale_from_ec(ec_ms_cm=ec, scale=scale) == pytest.approx(reading, rel=1e-12)


@settings(max_examples=200, deadline=None)
@given(values_of(READING))
def test_any_reading_has_its_range(inputs: dict[str, float]) -> None:
    answer = READING.run(inputs)
    assert 0.0 <= answer.ec_ms_cm_low <= answer.ec_ms_cm <= answer.ec_ms_cm_high
    assert answer.ppm500 <= answer.ppm640 <= answer.ppm700


@settings(max_examples=200, deadline=None)
@given(values_of(WHICH))
def test_any_standard_reading_is_answered(inputs: dict[str, float]) -> None:
    answer = WHICH.run(inputs)
    if answer.scale is None:
        assert answer.off_percent is None
        assert answer.also_fits is None
        assert answer.warnings
    else:
        assert -20.1 < answer.off_percent < 25.1
        assert answer.also_fits != answer.scale
    values = {name: getattr(answer, name) for name in ("scale", "off_percent", "also_fits")}
    for sentence in WHICH.words(inputs, answer):
        assert "{" not in shown.fill(sentence, WHICH, inputs, values)


@settings(max_examples=200, deadline=None)
@given(st.sampled_from(SCALES), st.sampled_from(list(STANDARDS)), st.floats(-0.02, 0.02))
def test_a_pen_two_percent_off_is_never_told_another_scale(
    scale: str, standard: str, off: float
) -> None:
    reading = scale_from_ec(ec_ms_cm=STANDARDS[standard][0], scale=scale) * (1.0 + off)
    answer = which_scale(reading=reading, standard=standard)
    assert answer.scale == scale
    assert answer.off_percent == pytest.approx(100.0 * off, abs=1e-9)
    assert not answer.warnings


@settings(max_examples=200, deadline=None)
@given(st.sampled_from(SCALES), st.floats(-0.1, 0.1))
def test_home_standard_ten_percent_off_still_holds_the_true_scale(scale: str, off: float) -> None:
    reading = scale_from_ec(ec_ms_cm=STANDARDS["table_salt_0_5_g_l"][0], scale=scale) * (1.0 + off)
    answer = which_scale(reading=reading, standard="table_salt_0_5_g_l")
    assert scale in (answer.scale, answer.also_fits)


def test_words_part_sure_from_unsure() -> None:
    def said(reading: float) -> tuple[str, str, str]:
        inputs = {"reading": reading, "standard": "bottle_1413"}
        return WHICH.words(inputs, WHICH.run(inputs))

    assert said(707.0)[0] == "Your pen is on the 500 scale (ppm)."
    assert " or the " in said(945.0)[0]
    assert "far off" in said(620.0)[0]
    assert "No scale" in said(300.0)[0]
    assert "442" in said(1000.0)[2]
    assert "442" not in said(707.0)[2]


def test_home_standard_is_what_the_ions_say() -> None:
    names = [ion.name for ion in IONS]
    salt = [500.0 / 58.44 if name in ("Na", "Cl") else 0.0 for name in names]
    # The ion model has 1.021 and PHREEQC 1.011; kitchen scales are worse.
    assert conductivity_ms_cm(mmol_l=salt) == pytest.approx(
        STANDARDS["table_salt_0_5_g_l"][0], rel=0.015
    )


def test_bottle_follows_its_temperature() -> None:
    for (cold, _), (warm, _) in pairwise(KCL_0_01_MOL_KG):
        assert bottle_1413_us_cm(sample_c=cold) < bottle_1413_us_cm(sample_c=warm)
    with pytest.raises(ValueError, match="0 to 35"):
        bottle_1413_us_cm(sample_c=36.0)


@pytest.mark.parametrize("sample_c", range(36))
def test_a_pens_own_correction_stays_in_its_range(sample_c: int) -> None:
    """What 2 %/K makes of 1 mS/cm by ISO 7888; near freezing 4 % too much."""
    shown = factor_linear(sample_c=sample_c) / factor_iso_7888(sample_c=sample_c)
    given = {"reading": shown, "scale": "ms_cm", "sample_c": sample_c, "error_percent": 0}
    answer = READING.run(given)
    assert answer.ec_ms_cm_low <= 1.0 <= answer.ec_ms_cm_high


def test_what_the_form_says_of_a_cold_bottle() -> None:
    cold = bottle_1413_us_cm(sample_c=20.0)
    assert cold / 1413.0 == pytest.approx(0.9, abs=0.01)
    looks = which_scale(reading=0.7 * cold, standard="bottle_1413")
    assert looks.scale == "ppm640"


@settings(max_examples=200, deadline=None)
@given(st.floats(0.447, 2.763), st.floats(1.0001, 1.5))
def test_a_442_scale_bends_upward(ec: float, times: float) -> None:
    assume(ec * times <= 2.764)
    assert ppm442(ec_ms_cm=ec * times) / ppm442(ec_ms_cm=ec) > times


def test_what_the_words_say_of_a_442_scale() -> None:
    low = ppm442(ec_ms_cm=0.447) / scale_from_ec(ec_ms_cm=0.447, scale="ppm700")
    high = ppm442(ec_ms_cm=2.764) / scale_from_ec(ec_ms_cm=2.764, scale="ppm700")
    assert low - 1.0 == pytest.approx(-0.04, abs=0.005)
    assert high - 1.0 == pytest.approx(0.07, abs=0.005)
    with pytest.raises(ValueError, match=r"0\.447 to 2\.764"):
        ppm442(ec_ms_cm=3.0)
