"""Build-up between flushes: against an integrator, and what must always hold."""

from __future__ import annotations

from math import inf, isfinite

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from saltline.build_up import UPTAKE_SHARE_HIGH, BuildUp, after_waterings, steady_drain
from saltline.declare import Number
from saltline.forms.build_up import BUILD_UP
from saltline.leaching import HOFFMAN_INTERMITTENT, hoffman_depth, leaching_share
from saltline.mixing import full_mixing

QUICK = settings(max_examples=200, deadline=None)
POT = {
    "start_ms_cm": 0.5,
    "feed_ms_cm": 0.5,
    "limit_ms_cm": 1.5,
    "water_held_ml": 200.0,
    "water_use_ml_day": 12.0,
    "drained_share": 0.2,
}
ANY_POT = st.fixed_dictionaries(
    {
        item.name: st.floats(item.low, item.high, allow_subnormal=False)
        for item in BUILD_UP.inputs
        if isinstance(item, Number)
    }
)


def run(**changed: float) -> BuildUp:
    answer = BUILD_UP.run(POT | changed)
    assert isinstance(answer, BuildUp)
    return answer


def rate(strength: float, uptake_share: float, pot: dict[str, float]) -> float:
    """Rise per day by the balance itself: fed, less taken up, less drained, over water held."""
    poured = pot["water_use_ml_day"] / (1.0 - pot["drained_share"])
    fed = poured * pot["feed_ms_cm"] * (1.0 - uptake_share)
    return (fed - poured * pot["drained_share"] * strength) / pot["water_held_ml"]


@pytest.mark.parametrize("share", [0.0, 0.05, 0.2, 0.3])
@pytest.mark.parametrize("uptake", [0.0, UPTAKE_SHARE_HIGH])
def test_days_against_quadrature(share: float, uptake: float) -> None:
    """Time from 0.5 to 1 mS/cm is the integral of 1 / rate."""
    pot = POT | {"drained_share": share, "limit_ms_cm": 1.0}
    answer = run(**pot)
    ours = answer.days_high if uptake else answer.days_low
    theirs, _ = quad(lambda c: 1.0 / rate(c, uptake, pot), 0.5, 1.0, epsabs=0, epsrel=1e-12)
    assert ours == pytest.approx(theirs, rel=1e-10)


def test_strength_at_the_day_against_an_integrator() -> None:
    answer = run()
    assert answer.days_high is not None
    solved = solve_ivp(
        lambda _, c: [rate(c[0], UPTAKE_SHARE_HIGH, POT)],
        (0.0, answer.days_high),
        [0.5],
        rtol=1e-10,
        atol=1e-12,
    )
    assert solved.y[0][-1] == pytest.approx(1.5, rel=1e-8)


def test_time_constant_closes_all_but_a_third_of_the_gap() -> None:
    answer = run()
    assert answer.time_constant_days is not None
    solved = solve_ivp(
        lambda _, c: [rate(c[0], 0.0, POT)],
        (0.0, answer.time_constant_days),
        [0.5],
        rtol=1e-10,
        atol=1e-12,
    )
    assert (2.5 - solved.y[0][-1]) / (2.5 - 0.5) == pytest.approx(0.367879441, rel=1e-7)


def test_many_small_waterings_become_the_flow() -> None:
    """Watering by watering meets the continuous sum as the waterings grow small."""
    answer = run()
    assert answer.days_low is not None
    waterings = 20000
    use = answer.days_low * POT["water_use_ml_day"] / waterings
    applied = use / 0.8
    assert after_waterings(
        start_ms_cm=0.5,
        feed_ms_cm=0.5,
        water_held_ml=200.0,
        applied_ml=applied,
        drained_ml=applied * 0.2,
        waterings=waterings,
    ) == pytest.approx(1.5, rel=1e-4)


def test_waterings_end_at_the_steady_drain() -> None:
    def ends_at(uptake: float) -> float:
        return after_waterings(
            start_ms_cm=0.0,
            feed_ms_cm=0.5,
            water_held_ml=200.0,
            applied_ml=300.0,
            drained_ml=60.0,
            waterings=400,
            uptake_ms_cm_ml=uptake,
        )

    share = leaching_share(drained_ml=60.0, applied_ml=300.0)
    assert ends_at(0.0) == pytest.approx(steady_drain(feed=0.5, drained_share=share), rel=1e-9)
    fed = 0.5 * 300.0
    assert ends_at(0.3 * fed) == pytest.approx(
        steady_drain(feed=0.5, drained_share=share, uptake_share=0.3), rel=1e-9
    )


def test_water_that_runs_past_leaves_the_pot_saltier() -> None:
    """In the end the drain carries what was fed: C = Cf (1 - b LF) / ((1 - b) LF) inside."""
    ends = after_waterings(
        start_ms_cm=0.5,
        feed_ms_cm=0.5,
        water_held_ml=200.0,
        applied_ml=300.0,
        drained_ml=60.0,
        waterings=400,
        runs_past_share=0.3,
    )
    assert ends == pytest.approx(0.5 * (1 - 0.3 * 0.2) / (0.7 * 0.2), rel=1e-9)


def test_a_plant_never_takes_more_than_there_is() -> None:
    assert (
        after_waterings(
            start_ms_cm=0.1,
            feed_ms_cm=0.1,
            water_held_ml=100.0,
            applied_ml=50.0,
            drained_ml=5.0,
            waterings=10,
            uptake_ms_cm_ml=1000.0,
        )
        == 0.0
    )


def test_never_is_null() -> None:
    assert run(drained_share=0.5).days_low is None
    assert run(drained_share=0.5).days_high is None
    assert run(drained_share=0.33).days_low is not None
    assert run(drained_share=0.33).days_high is None
    assert run(feed_ms_cm=0.0, drained_share=0.0).days_low is None


def test_nothing_is_put_off_for_centuries() -> None:
    assert run(feed_ms_cm=1e-300, drained_share=0.0).days_low is None
    assert run(drained_share=1e-300).steady_ms_cm is None


def test_a_limit_a_hair_under_the_steady_level_is_reached_late() -> None:
    days = run(drained_share=(1.0 - 1e-15) / 3.0).days_low
    assert days == pytest.approx(33.3 * 34.5, rel=0.05)


def test_already_there() -> None:
    answer = run(start_ms_cm=1.5)
    assert (answer.days_low, answer.days_high) == (0.0, 0.0)


def test_nothing_levels_off_without_drainage() -> None:
    answer = run(drained_share=0.0)
    assert answer.steady_ms_cm is None
    assert answer.time_constant_days is None
    assert any("Nothing drains" in warning for warning in answer.warnings)


def test_draining_the_share_shown_holds_the_limit() -> None:
    answer = run()
    assert answer.enough_share is not None
    held = run(drained_share=answer.enough_share)
    assert held.days_low is None
    assert held.steady_ms_cm == pytest.approx(1.5, rel=1e-12)


def test_a_field_rule_is_no_rule_for_a_pot() -> None:
    """To a fifth: 322 mL by a trickle through 200 mL that mix, 848 mL by the field's depth."""
    mixed = full_mixing(times_down=5.0, water_held_ml=200.0, rinses=1)
    assert mixed.trickle_ml == pytest.approx(321.9, abs=0.1)
    field = hoffman_depth(start_ms_cm=5.0, goal_ms_cm=1.0, k=HOFFMAN_INTERMITTENT)
    assert field * 15.0 * 113.0 == pytest.approx(847.5)


@QUICK
@given(ANY_POT)
def test_whatever_is_put_in(pot: dict[str, float]) -> None:
    answer = run(**pot)
    shown = [value for value in answer[:-1] if value is not None]
    assert all(isfinite(value) and value >= 0.0 for value in shown)
    low = inf if answer.days_low is None else answer.days_low
    high = inf if answer.days_high is None else answer.days_high
    assert low <= high
    if answer.steady_ms_cm is not None and answer.steady_ms_cm_low is not None:
        assert answer.steady_ms_cm_low <= answer.steady_ms_cm


@QUICK
@given(ANY_POT, st.floats(1.0, 3.0))
def test_more_feed_is_sooner_and_a_higher_limit_later(pot: dict[str, float], by: float) -> None:
    assume(pot["feed_ms_cm"] * by <= 10.0 and pot["limit_ms_cm"] * by <= 20.0)

    def soonest(**changed: float) -> float:
        days = run(**(pot | changed)).days_low
        return inf if days is None else days

    fuller = soonest(feed_ms_cm=pot["feed_ms_cm"] * by)
    assert fuller <= soonest() * (1 + 1e-9)
    assert soonest(limit_ms_cm=pot["limit_ms_cm"] * by) >= soonest() * (1 - 1e-9)


@QUICK
@given(ANY_POT, st.floats(0.0, 1e-3))
def test_a_trace_of_drainage_changes_little(pot: dict[str, float], share: float) -> None:
    """The sum with drainage meets the one without as the drained share goes to nothing."""
    assume(pot["feed_ms_cm"] > 0.01 and pot["start_ms_cm"] < pot["limit_ms_cm"])
    assume(share * pot["limit_ms_cm"] < 0.01 * pot["feed_ms_cm"])
    none = run(**(pot | {"drained_share": 0.0})).days_low
    assume(none is not None and none < 30000.0)
    some = run(**(pot | {"drained_share": share})).days_low
    assert none is not None
    assert some is not None
    assert some == pytest.approx(none, rel=0.02)
