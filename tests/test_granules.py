"""Granules in a bath: referees and what physics says."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from saltline.forms import all_forms
from saltline.granules import exchanged_share, fourier_for, minutes_for, series_roots, soak_minutes
from shell_pot import edges


@pytest.mark.parametrize("ratio", [0.2, 0.25, 1.0, 3.0, 9.0, 50.0])
def test_roots_are_scipys(ratio: float) -> None:
    def tangent(q: float) -> float:
        return float((3.0 + ratio * q * q) * np.sin(q) - 3.0 * q * np.cos(q))

    roots = series_roots(bath_ratio=ratio, fourier=1e-3)
    for number, root in enumerate(roots):
        inside = (number + 1) * np.pi
        assert root == pytest.approx(brentq(tangent, inside + 1e-9, inside + np.pi - 1e-9), 1e-11)


@pytest.mark.parametrize("ratio", [1.0, 3.0, 9.0])
def test_series_is_the_differential_equation(ratio: float) -> None:
    """Shells and bath by scipy's BDF, on their own terms."""
    r = edges(250, 5e-5)
    r[-1] = 1.0
    middle = 0.75 * np.diff(r**4) / np.diff(r**3)
    volume = np.append(np.diff(r**3), ratio)
    pace = 3.0 * r[1:] ** 2 / np.diff(np.append(middle, 1.0))

    def slope(_: float, c: np.ndarray) -> np.ndarray:
        flow = pace * np.diff(c)
        return (np.append(flow, 0.0) - np.append(0.0, flow)) / volume

    times = [0.002, 0.01, 0.05, 0.2]
    start = np.append(np.ones(len(middle)), 0.0)
    lower = np.eye(len(volume), k=1) + np.eye(len(volume)) + np.eye(len(volume), k=-1)
    done = solve_ivp(
        slope, (0.0, 0.2), start, "BDF", times, rtol=1e-8, atol=1e-10, jac_sparsity=lower
    )
    for time, bath in zip(times, done.y[-1], strict=True):
        share = exchanged_share(fourier=time, bath_ratio=ratio)
        assert bath * (1.0 + ratio) == pytest.approx(share, rel=0.002)


@given(
    share=st.floats(0.1, 0.99),
    ratio=st.none() | st.floats(0.2, 50.0),
    grain=st.floats(1.0, 30.0),
)
@settings(max_examples=100, deadline=None)
def test_time_and_share_undo_each_other(share: float, ratio: float | None, grain: float) -> None:
    fourier = fourier_for(share=share, bath_ratio=ratio)
    if fourier > 1.1e-5:
        assert exchanged_share(fourier=fourier, bath_ratio=ratio) == pytest.approx(share, 1e-9)
    at = {"share": share, "bath_ratio": ratio, "diffusivity": 0.5}
    once, twice = (minutes_for(grain_mm=k * grain, **at) for k in (1.0, 2.0))
    assert twice == pytest.approx(4.0 * once, rel=1e-9)


@given(
    grain=st.floats(1.0, 30.0),
    share=st.floats(0.1, 0.99),
    ratio=st.floats(0.2, 50.0),
)
@settings(max_examples=100, deadline=None)
def test_soak_minutes_over_its_bounds(grain: float, share: float, ratio: float) -> None:
    answer = soak_minutes(grain_mm=grain, share=share, bath_ratio=ratio)
    assert 0.0 < answer.minutes_low < answer.minutes < answer.minutes_high < 1e5
    assert answer.plant_limit_min == 30.0
    more = soak_minutes(grain_mm=grain, share=min(0.99, share + 0.05), bath_ratio=ratio)
    assert more.minutes >= answer.minutes


def test_the_plants_limit_stands_first() -> None:
    form = all_forms()["soak-minutes"]
    assert form.results[0].name == "plant_limit_min"
    verdict, _, _ = form.words(form.complete(form.example), form.run(form.example))
    assert "{plant_limit_min}" in verdict
