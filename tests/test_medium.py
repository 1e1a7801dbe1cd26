"""Rise of water in tubes and media: against scipy, and what must always hold."""

from __future__ import annotations

from math import isfinite
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.special import lambertw

from saltline import water
from saltline.errors import BadInput
from saltline.forms.medium import MEDIUM_RISE, TUBE_RISE
from saltline.medium import lambert_w0_plus_1, tube_rise

QUICK = settings(max_examples=200, deadline=None)


@QUICK
@given(st.floats(0.01, 100))
def test_lambert_against_scipy(depth: float) -> None:
    theirs = 1.0 + lambertw(-np.exp(-1.0 - depth)).real
    assert lambert_w0_plus_1(depth=depth) == pytest.approx(theirs, rel=1e-12)


@QUICK
@given(st.floats(-14, 0.5))
def test_lambert_solves_its_equation_near_the_branch_point(power: float) -> None:
    depth = 10.0**power
    u = lambert_w0_plus_1(depth=depth)
    # -ln(1 - u) - u = s, as a series where u is small so that no digits cancel.
    back = sum(u**n / n for n in range(2, 12)) if u < 0.03 else -np.log1p(-u) - u
    assert back == pytest.approx(depth, rel=3e-11)


@pytest.mark.parametrize("radius", [0.02, 0.1, 0.3])
@pytest.mark.parametrize("t", [0.05, 0.5, 5.0, 50.0])
def test_rise_in_time_against_a_numerical_solution(radius: float, t: float) -> None:
    r = radius / 1000.0
    sigma, rho = water.surface_tension(water_c=20.0), water.density(water_c=20.0)
    mu = water.viscosity(water_c=20.0)
    a, b = r * sigma / (4.0 * mu), rho * 9.80665 * r * r / (8.0 * mu)
    start = 1e-9  # s: where gravity does not count yet

    def squared(_: float, y: np.ndarray) -> np.ndarray:
        return 2.0 * a - 2.0 * b * np.sqrt(y)

    found = solve_ivp(
        squared, (start, t), [2.0 * a * start], rtol=1e-10, atol=1e-18, method="LSODA"
    )
    ours = tube_rise(radius_mm=radius, water_c=20.0, contact_deg=0.0, seconds=t)
    assert ours.rise_then_mm == pytest.approx(1000.0 * np.sqrt(found.y[0, -1]), rel=1e-6)


TUBE = st.fixed_dictionaries(
    {
        "radius_mm": st.floats(0.001, 5),
        "water_c": st.floats(0, 40),
        "contact_deg": st.floats(0, 90),
        "seconds": st.none() | st.floats(0, 1e6),
    }
)


@QUICK
@given(TUBE)
def test_tube_rise_within_its_bounds(values: dict[str, Any]) -> None:
    answer = TUBE_RISE.run(values)
    assert isfinite(answer.rise_mm)
    assert answer.rise_mm >= 0.0
    if values["seconds"] is None:
        assert answer.rise_then_mm is None
    else:
        assert 0.0 <= answer.rise_then_mm <= answer.rise_mm
        later = TUBE_RISE.run(values | {"seconds": min(1e6, values["seconds"] * 2.0)})
        assert later.rise_then_mm >= answer.rise_then_mm * (1.0 - 1e-12)


@pytest.mark.parametrize("contact", [0.0, 60.0, 89.999, 90.0])
@pytest.mark.parametrize("radius", [0.001, 5.0])
@pytest.mark.parametrize("seconds", [None, 0.0, 1e6])
def test_tube_rise_at_its_bounds(contact: float, radius: float, seconds: float | None) -> None:
    answer = TUBE_RISE.run({"radius_mm": radius, "contact_deg": contact, "seconds": seconds})
    assert (answer.rise_mm == 0.0) is (contact == 90.0)


POT = st.fixed_dictionaries(
    {
        "grain_mm": st.floats(0.1, 30),
        "pot_height_mm": st.floats(10, 1000),
        "water_level_mm": st.floats(0, 1000),
        "top_damp_24h": st.sampled_from(["unknown", "yes", "no"]),
    }
)


@QUICK
@given(POT)
def test_medium_rise_within_its_bounds(values: dict[str, Any]) -> None:
    gap = values["pot_height_mm"] - values["water_level_mm"]
    if gap < 0.0:
        with pytest.raises(BadInput, match=r"^water_level_mm must be"):
            MEDIUM_RISE.run(values)
        return
    answer = MEDIUM_RISE.run(values)
    coarse = values["grain_mm"] > 4.0
    assert (answer.damp_rise_mm is None) is coarse
    assert (answer.saturated_rise_mm is None) is coarse
    assert 0.0 <= answer.dry_top_mm_low <= answer.dry_top_mm_high <= gap
    assert answer.answer
    if values["top_damp_24h"] == "yes":
        assert answer.dry_top_mm_high == 0.0
    if values["top_damp_24h"] == "no" and gap > 0.0:
        assert answer.dry_top_mm_low > 0.0


def test_rises_are_not_cut_at_the_pot() -> None:
    answer = MEDIUM_RISE.run({"grain_mm": 0.5, "pot_height_mm": 60.0, "water_level_mm": 10.0})
    assert answer.damp_rise_mm == pytest.approx(195.0)


@QUICK
@given(st.floats(0.1, 4), st.floats(1.01, 2))
def test_finer_grains_lift_higher_and_leave_less_dry(grain: float, finer: float) -> None:
    pot = {"pot_height_mm": 150.0, "water_level_mm": 20.0}
    coarse = MEDIUM_RISE.run(pot | {"grain_mm": grain})
    fine = MEDIUM_RISE.run(pot | {"grain_mm": max(0.1, grain / finer)})
    assert fine.damp_rise_mm >= coarse.damp_rise_mm
    assert fine.dry_top_mm_high <= coarse.dry_top_mm_high
    assert coarse.saturated_rise_mm < coarse.damp_rise_mm
