"""The salt line: against scipy and a large sampling, and what must always hold."""

from __future__ import annotations

from itertools import pairwise
from math import isfinite
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq
from scipy.special import erf, hyp1f1

from saltline.draws import quantile
from saltline.forms.salt_band import SALT_BAND
from saltline.salt_band import LONGEST_MM, SaltBand, possible_roots
from saltline.velamen import (
    band_height,
    drying_h,
    mean_factor,
    peclet,
    rinse_min,
    rising_edge,
    steady_mean,
)

QUICK = settings(max_examples=200, deadline=None)
EXAMPLE = dict(SALT_BAND.example)


def drawn(low: float, high: float) -> list[float]:
    """10, 50 and 90 % points of the band with nothing measured, evaporation low to high."""
    roots = possible_roots(
        root_mm=5.0,
        evaporation_mm_day_low=low,
        evaporation_mm_day_high=high,
        velamen_mm=None,
        soak_through_s=None,
        dry_h=None,
        measured_band_mm=None,
        measured_dry_h=None,
    )
    bands = sorted(root.band_mm for root in roots)
    return [quantile(bands, share) for share in (0.1, 0.5, 0.9)]


def test_draws_give_the_reviewed_range() -> None:
    # saltline-notes, wicking review 4: 0.8-5 mm/day gives p10 2.5, p50 7.7, p90 24 mm.
    assert drawn(0.8, 5.0) == pytest.approx([2.5, 7.7, 24.0], rel=0.03)


@pytest.mark.parametrize(("low", "high"), [(0.8, 5.0), (1.06, 3.54), (0.25, 0.84)])
def test_draws_against_a_large_sampling(low: float, high: float) -> None:
    chance = np.random.default_rng(5)
    n = 1_000_000
    soak = np.exp(chance.uniform(np.log(3.0), np.log(300.0), n))
    skin = chance.uniform(0.2, 0.6, n)
    lost = np.exp(chance.uniform(np.log(low), np.log(high), n))
    dry_s = 0.8 * skin * (1.0 - skin / 5.0) / lost * 86400.0
    theirs = np.quantile(skin * np.sqrt(dry_s / soak), [0.1, 0.5, 0.9])
    assert drawn(low, high) == pytest.approx(theirs, rel=0.08)  # sampling error of 400 draws


def test_factors_are_90_percent_points() -> None:
    answer = SALT_BAND.run(EXAMPLE)
    chance = np.random.default_rng(6)
    n = 300_000
    soak = np.exp(chance.uniform(np.log(3.0), np.log(300.0), n))
    skin = chance.uniform(0.2, 0.6, n)
    ends = np.log([answer.evaporation_mm_day_low, answer.evaporation_mm_day_high])
    dry_days = 0.8 * skin * (1.0 - skin / 5.0) / np.exp(chance.uniform(*ends, n))
    a = np.minimum(skin**2 * 1e-6 / (soak * 1e-9) / 2.0, 40.0)
    gain = np.exp(a) * np.sqrt(np.pi) * erf(np.sqrt(a)) / (2.0 * np.sqrt(a)) - 1.0
    for days, ours in zip((1, 3, 7), answer[9:12], strict=True):
        theirs = np.quantile(1.0 - gain * np.expm1(-days / dry_days / gain), 0.9)
        assert ours == pytest.approx(theirs, rel=0.08)  # sampling error of 400 draws


def test_with_a_soak_time_the_formula_s_own_error_is_drawn() -> None:
    roots = possible_roots(
        root_mm=5.0,
        evaporation_mm_day_low=3.0,
        evaporation_mm_day_high=3.0,
        velamen_mm=0.4,
        soak_through_s=10.0,
        dry_h=None,
        measured_band_mm=None,
        measured_dry_h=None,
    )
    middle = band_height(velamen_mm=0.4, dry_h=roots[0].dry_h, soak_through_s=10.0)
    errors = sorted(root.band_mm / middle for root in roots)
    found = [quantile(errors, share) for share in (0.1, 0.5, 0.9)]
    assert found == pytest.approx([0.7, 1.0, 2.5], rel=0.08)


@pytest.mark.parametrize("pe", [0.001, 0.1, 1.0, 2.0, 8.0, 16.0, 60.0])
def test_steady_mean_against_quadrature(pe: float) -> None:
    theirs, _ = quad(lambda x: np.exp(0.5 * pe * (1.0 - x * x)), 0.0, 1.0, epsrel=1e-12)
    assert steady_mean(peclet=pe) == pytest.approx(theirs, rel=1e-10)


def exact_mean(pe: float, turnovers: float, modes: int = 8) -> float:
    """Mean strength by the series of Kummer functions, from a band at the water's strength."""

    def at_foot(rate: float) -> float:
        return float(hyp1f1(-rate / 2.0, 0.5, pe / 2.0))

    rates, step, rate = [], 0.05, 1e-9
    while len(rates) < modes:
        if at_foot(rate) * at_foot(rate + step) < 0.0:
            rates.append(brentq(at_foot, rate, rate + step, xtol=1e-14))
        rate += step
    x = np.linspace(0.0, 1.0, 4001)
    steady = np.exp(0.5 * pe * (1.0 - x * x))
    profile = steady.copy()
    for rate in rates:
        mode = np.exp(-0.5 * pe * x * x) * hyp1f1(-rate / 2.0, 0.5, 0.5 * pe * x * x)
        weight = np.exp(0.5 * pe * x * x)
        share = np.trapezoid((steady - 1.0) * mode * weight, x)
        share /= np.trapezoid(mode * mode * weight, x)
        profile -= share * mode * np.exp(-rate * turnovers)
    return float(np.trapezoid(profile, x))


@pytest.mark.parametrize("pe", [2.0, 4.0, 8.0, 16.0])
@pytest.mark.parametrize("turnovers", [2.0, 5.0, 12.0, 36.0, 84.0])
def test_capped_mean_against_the_exact_series(pe: float, turnovers: float) -> None:
    ours = mean_factor(turnovers=turnovers, steady_mean=steady_mean(peclet=pe))
    exact = exact_mean(pe, turnovers)
    assert exact * (1.0 - 1e-5) <= ours <= 1.11 * exact


def test_exact_series_against_a_numerical_solution() -> None:
    pe, cells = 8.0, 400
    edges = np.linspace(0.0, 1.0, cells + 1)  # 0 the sealed tip, 1 the foot in the medium
    size = 1.0 / cells

    def rate(_: float, c: np.ndarray) -> np.ndarray:
        inner = edges[1:-1] * 0.5 * (c[1:] + c[:-1]) + (c[1:] - c[:-1]) / size / pe
        foot = 1.0 + (1.0 - c[-1]) / (0.5 * size) / pe
        return np.diff(np.concatenate(([0.0], inner, [foot]))) / size

    found = solve_ivp(
        rate, (0.0, 12.0), np.ones(cells), method="LSODA", lband=1, uband=1, rtol=1e-8
    )
    assert found.y[:, -1].mean() == pytest.approx(exact_mean(pe, 12.0), rel=2e-4)


@pytest.mark.parametrize("share", [0.6, 0.9, 0.99])
def test_rinse_against_the_whole_series(share: float) -> None:
    def left(fourier: float) -> float:
        odd = np.arange(1, 400, 2) * np.pi / 2.0
        return float(np.sum(2.0 / odd**2 * np.exp(-(odd**2) * fourier)))

    fourier = brentq(lambda f: left(f) - (1.0 - share), 1e-3, 10.0)
    theirs = fourier * 0.4e-3**2 / 1e-9 / 60.0
    assert rinse_min(velamen_mm=0.4, share_out=share) == pytest.approx(theirs, rel=1e-3)


def test_band_height_and_rise_against_a_numerical_solution() -> None:
    thickness, root, lost, soak = 0.4, 5.0, 3.5, 10.0
    depth = thickness * (1.0 - thickness / root)
    loss = lost / 86400.0  # mm/s
    flow = 0.8 * thickness**2 / (2.0 * soak)  # mm2/s, from soaking the velamen from one side
    dry = drying_h(velamen_mm=thickness, root_mm=root, evaporation_mm_day=lost)
    band = band_height(velamen_mm=thickness, dry_h=dry, soak_through_s=soak)

    def squared(_: float, y: np.ndarray) -> np.ndarray:
        # phi de h h' = flow de - loss h^2 / 2
        return 2.0 * (flow * depth - 0.5 * loss * y) / (0.8 * depth)

    for hours in (0.5, 2.0, 8.0, 40.0):
        found = solve_ivp(squared, (0.0, hours * 3600.0), [0.0], rtol=1e-10, atol=1e-12)
        theirs = np.sqrt(found.y[0, -1])
        assert rising_edge(band_mm=band, dry_h=dry, hours=hours) == pytest.approx(theirs, rel=1e-6)
    assert theirs == pytest.approx(band, rel=1e-6)
    assert peclet(velamen_mm=band, soak_through_s=dry * 3600.0) == pytest.approx(
        peclet(velamen_mm=thickness, soak_through_s=soak)
    )


def some(low: float, high: float) -> st.SearchStrategy[float | None]:
    return st.none() | st.floats(low, high)


INPUTS = st.fixed_dictionaries(
    {
        "air_c": st.floats(5, 40),
        "humidity_percent": st.floats(0, 100),
        "root_mm": st.floats(1, 15),
        "water_ms_cm": st.floats(0, 5),
        "air_speed_m_s": st.floats(0, 5),
        "measured_band_mm": some(0.5, 100),
        "measured_dry_h": some(0.1, 72),
        "dry_h": some(0.1, 72),
        "soak_through_s": some(1, 3600),
        "velamen_mm": some(0.05, 2),
    }
)


def hold(answer: SaltBand) -> None:
    assert all(isfinite(value) for value in answer[:-1])
    assert 0.0 < answer.band_mm_low <= answer.band_mm <= answer.band_mm_high <= LONGEST_MM
    ends = (answer.evaporation_mm_day_low, answer.evaporation_mm_day_high)
    assert 0.0 < ends[0] < answer.evaporation_mm_day < ends[1]
    assert 0.0 < answer.turnover_h_low < answer.turnover_h < answer.turnover_h_high
    assert 1.0 <= answer.factor_1d_high <= answer.factor_3d_high <= answer.factor_7d_high
    assert answer.factor_7d_high <= 1.0 + 7.0 * 24.0 / (0.3 * answer.turnover_h_low)
    assert answer.rinse_min_high == pytest.approx(3.0 * answer.rinse_min)


@QUICK
@given(INPUTS)
def test_salt_band_within_its_bounds(values: dict[str, Any]) -> None:
    hold(SALT_BAND.run(values))


@pytest.mark.parametrize("end", ["low", "high"])
@pytest.mark.parametrize("given_too", [True, False])
def test_salt_band_at_its_bounds(end: str, given_too: bool) -> None:
    ends: dict[str, Any] = {item.name: getattr(item, end) for item in SALT_BAND.inputs}
    for name in list(ends):
        if not given_too and SALT_BAND.input(name).optional:
            del ends[name]
    hold(SALT_BAND.run(ends))
    hold(SALT_BAND.run(ends | {"velamen_mm": 2.0, "root_mm": 1.0, "soak_through_s": 3600.0}))


@QUICK
@given(st.floats(8, 35), st.floats(30, 90), st.floats(0, 1), st.floats(2, 8))
def test_drier_or_windier_is_shorter_and_fills_faster(
    warmth: float, humidity: float, wind: float, root: float
) -> None:
    at = {"air_c": warmth, "root_mm": root, "water_ms_cm": 0.3}
    usual = SALT_BAND.run(at | {"humidity_percent": humidity, "air_speed_m_s": wind})
    drier = SALT_BAND.run(at | {"humidity_percent": humidity - 5.0, "air_speed_m_s": wind})
    windier = SALT_BAND.run(at | {"humidity_percent": humidity, "air_speed_m_s": wind + 1.0})
    if humidity >= 35.0:
        assert drier.turnover_h < usual.turnover_h
        assert drier.band_mm < usual.band_mm or usual.band_mm == LONGEST_MM
    assert windier.turnover_h < usual.turnover_h
    assert windier.band_mm < usual.band_mm or usual.band_mm == LONGEST_MM
    assert windier.factor_7d_high >= usual.factor_7d_high


def test_thin_roots_are_not_safe() -> None:
    thin, thick = (SALT_BAND.run(EXAMPLE | {"velamen_mm": v}) for v in (0.2, 0.4))
    # The same tissue soaks four times faster: the band shrinks by less than a third ...
    assert 0.67 * thick.band_mm < thin.band_mm < thick.band_mm
    # ... and fills faster.
    assert thin.factor_7d_high > thick.factor_7d_high


def test_the_skin_is_held_at_a_quarter_of_the_root() -> None:
    held, most = (SALT_BAND.run(EXAMPLE | {"velamen_mm": v}) for v in (2.0, 1.25))
    assert held[:-1] == most[:-1]
    assert held.warnings
    assert not most.warnings


def test_what_growers_say_lies_in_the_range() -> None:
    answer = SALT_BAND.run(EXAMPLE)
    assert answer.band_mm_low < 10.0 < answer.band_mm_high


def test_a_reader_who_measures_gets_a_narrower_range() -> None:
    def width(**own: float) -> float:
        answer = SALT_BAND.run(EXAMPLE | own)
        return answer.band_mm_high / answer.band_mm_low

    nothing, soak = width(), width(soak_through_s=20.0)
    all_three = width(soak_through_s=20.0, velamen_mm=0.4, dry_h=2.0)
    ruler = width(measured_band_mm=10.0)
    widths = [nothing, soak, all_three, ruler]
    assert all(wider > narrower for wider, narrower in pairwise(widths))
    assert all_three == pytest.approx(2.5 / 0.7)


def test_a_ruler_takes_over() -> None:
    own = {"measured_band_mm": 12.0, "velamen_mm": 0.3, "soak_through_s": 200.0}
    answer = SALT_BAND.run(EXAMPLE | own)
    assert answer.band_mm == pytest.approx(12.0)
    # Read when a root dried in 2 h; now it takes 8 h: twice as long.
    later = SALT_BAND.run(EXAMPLE | own | {"measured_dry_h": 2.0, "dry_h": 8.0})
    assert later.band_mm == pytest.approx(24.0)
    assert later.turnover_h == pytest.approx(8.0)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"humidity_percent": 99.0}, "30-95 %"),
        ({"velamen_mm": 2.0}, "quarter"),
        ({"humidity_percent": 94.0}, "40 mm"),
        ({"water_ms_cm": 0.02}, "pure"),
        ({"velamen_mm": 0.4, "soak_through_s": 120.0, "dry_h": 2.0}, "lean on your timing"),
    ],
)
def test_it_says_where_it_stops(change: dict[str, float], says: str) -> None:
    assert any(says in warning for warning in SALT_BAND.run(EXAMPLE | change).warnings)
    assert not SALT_BAND.run(EXAMPLE).warnings
