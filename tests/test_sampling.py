"""Student's t, samples, batches and drift: against scipy, and what must always hold."""

from __future__ import annotations

from math import isfinite

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from engines import light, native
from saltline.drift import NEVER_WEEKS
from saltline.errors import BadInput
from saltline.forms.sampling import BATCH, DRIFT, SAMPLE
from saltline.sampling import (
    bad_still_possible,
    chance_to_find,
    grubbs_limit,
    mean_half_width,
)
from saltline.student import t_quantile, t_tail

QUICK = settings(max_examples=200, deadline=None)
READING = st.floats(0, 200000, allow_subnormal=False)
FREEDOMS = [*range(1, 131), 180, 499, 999, 4999, 9999, 99999]


@pytest.mark.parametrize("tail", [0.5, 0.3, 0.1, 0.025, 0.005, 5e-4, 5e-5, 1e-6])
def test_t_quantile_against_scipy(tail: float) -> None:
    for freedom in FREEDOMS:
        ours = t_quantile(tail=tail, freedom=freedom)
        assert ours == pytest.approx(stats.t.isf(tail, freedom), rel=1e-9, abs=1e-12)


@QUICK
@given(st.floats(0, 1e3), st.integers(1, 100000))
def test_t_tail_against_scipy(t: float, freedom: int) -> None:
    theirs = stats.t.sf(t, freedom)
    assert t_tail(t=t, freedom=freedom) == pytest.approx(theirs, rel=1e-9, abs=1e-300)


@QUICK
@given(st.integers(1, 3000), st.data())
def test_chance_to_find_against_scipy(pots: int, data: st.DataObject) -> None:
    bad = data.draw(st.integers(0, pots))
    read = data.draw(st.integers(0, pots))
    theirs = stats.hypergeom.sf(0, pots, bad, read)
    assert chance_to_find(read=read, pots=pots, bad_pots=bad) == pytest.approx(theirs, abs=1e-9)


@QUICK
@given(
    st.integers(1, 100000),
    st.floats(0.1, 300),
    st.floats(0.5, 200),
    st.floats(50, 99.9),
    st.data(),
)
def test_sample_is_the_least_that_does(
    pots: int, spread: float, within: float, sure: float, data: st.DataObject
) -> None:
    bad = data.draw(st.none() | st.integers(1, pots))
    answer = SAMPLE.run(
        {
            "pots": pots,
            "spread_percent": spread,
            "within_percent": within,
            "sure_percent": sure,
            "bad_pots": bad,
        }
    )

    def half(read: int) -> float:
        return mean_half_width(spread_percent=spread, read=read, pots=pots, sure_percent=sure)

    read = answer.sample_for_mean
    assert 1 <= read <= pots
    if pots > 1:
        assert half(read) <= within
        assert read == 2 or half(read - 1) > within
    if bad is not None:
        found = answer.sample_to_find
        assert chance_to_find(read=found, pots=pots, bad_pots=bad) >= sure / 100
        assert found == 1 or chance_to_find(read=found - 1, pots=pots, bad_pots=bad) < sure / 100


def test_sample_refuses_more_bad_pots_than_pots() -> None:
    with pytest.raises(BadInput, match="bad_pots must not be more"):
        SAMPLE.run({"pots": 5, "spread_percent": 25, "within_percent": 20, "bad_pots": 6})


@QUICK
@given(st.integers(1, 400), st.data())
def test_bad_still_possible_is_the_most_that_may_hide(pots: int, data: st.DataObject) -> None:
    read = data.draw(st.integers(1, pots))
    hidden = bad_still_possible(read=read, pots=pots)
    assert 0 <= hidden <= pots - read
    assert 1 - chance_to_find(read=read, pots=pots, bad_pots=hidden) >= 0.05 - 1e-12
    if hidden < pots - read:
        assert 1 - chance_to_find(read=read, pots=pots, bad_pots=hidden + 1) < 0.05 + 1e-12


@pytest.mark.parametrize("n", [3, 4, 5, 8, 12, 30, 100, 500])
def test_grubbs_limit_against_scipy(n: int) -> None:
    t = stats.t.isf(0.05 / (2 * n), n - 2)
    limit = (n - 1) / np.sqrt(n) * np.sqrt(t**2 / (n - 2 + t**2))
    assert grubbs_limit(readings=n) == pytest.approx(limit, rel=1e-9)


@QUICK
@given(st.lists(READING, min_size=1, max_size=60))
def test_batch(readings: list[float]) -> None:
    answer = BATCH.run({"readings": readings, "pots": 60})
    assert answer.mean == pytest.approx(np.mean(readings), rel=1e-12, abs=1e-300)
    assert answer.median == pytest.approx(np.median(readings), rel=1e-12, abs=1e-300)
    if len(readings) == 1:
        assert answer.mean_low is None
        assert answer.mean_high is None
        return
    assert 0 <= answer.mean_low <= answer.mean * (1 + 1e-12)
    assert answer.mean <= answer.mean_high * (1 + 1e-12)
    sem = np.std(readings, ddof=1) / np.sqrt(len(readings))
    if sem > 1e-9 * np.mean(readings):
        low, high = stats.t.interval(0.95, len(readings) - 1, np.mean(readings), sem)
        assert answer.mean_low == pytest.approx(max(0.0, low), rel=1e-6, abs=1e-6 * answer.mean)
        assert answer.mean_high == pytest.approx(high, rel=1e-9)


def test_batch_words() -> None:
    def odd(*readings: float) -> str:
        words: str = BATCH.run({"readings": list(readings), "pots": 40}).odd_pot
        return words

    assert odd(1.0, 1.0) == "too few readings to tell"
    assert odd(0.1, 0.1, 0.1) == "no pot stands apart"
    assert odd(1.0, 1.1, 0.9, 1.0, 1.05, 9.0).startswith("pot 6 (9) stands apart: read it again")
    with pytest.raises(BadInput, match="readings must not be more"):
        BATCH.run({"readings": [1.0, 2.0], "pots": 1})


DATED = st.lists(
    st.tuples(st.integers(0, 3000), st.floats(0, 1000, allow_subnormal=False)),
    min_size=2,
    max_size=40,
)


@QUICK
@given(DATED, st.floats(0, 1000, allow_subnormal=False))
def test_drift(dated: list[tuple[int, float]], limit: float) -> None:
    days, readings = [float(d) for d, _ in dated], [y for _, y in dated]
    asked = {"days": days, "readings": readings, "limit": limit}
    if len(set(days)) == 1:
        with pytest.raises(BadInput, match="days must span"):
            DRIFT.run(asked)
        return
    answer = DRIFT.run(asked)
    if len(set(readings)) == 1:  # the referee gives no error for a flat line
        assert answer.slope_per_week == pytest.approx(0.0, abs=1e-9 * max(readings))
        return
    line = stats.linregress(days, readings)
    scale = max(*readings, 1e-300) / (max(days) - min(days))
    assert answer.slope_per_week == pytest.approx(7 * line.slope, rel=1e-7, abs=1e-9 * scale)
    if len(days) == 2:
        assert answer.slope_per_week_low is None
    else:
        half = 7 * line.stderr * stats.t.isf(0.025, len(days) - 2)
        low, high = answer.slope_per_week_low, answer.slope_per_week_high
        assert low == pytest.approx(7 * line.slope - half, rel=1e-6, abs=1e-6 * scale)
        assert high == pytest.approx(7 * line.slope + half, rel=1e-6, abs=1e-6 * scale)
    weeks = (answer.weeks_low, answer.weeks_high)
    assert all(w is None or (isfinite(w) and 0 <= w <= NEVER_WEEKS * (1 + 1e-9)) for w in weeks)
    if None not in weeks:
        assert weeks[0] <= weeks[1]
    if weeks[0] is None:
        assert weeks[1] is None


def test_drift_any_order_same_answer() -> None:
    days, readings = [0.0, 7.0, 14.0, 21.0], [1.0, 1.2, 1.1, 1.5]
    forward = DRIFT.run({"days": days, "readings": readings, "limit": 2.0})
    back = DRIFT.run({"days": days[::-1], "readings": readings[::-1], "limit": 2.0})
    assert forward[:4] == pytest.approx(back[:4], rel=1e-12)
    with pytest.raises(BadInput, match="readings must be as many"):
        DRIFT.run({"days": days, "readings": readings[:3], "limit": 2.0})


def test_light_engine_says_the_same() -> None:
    questions = [
        {
            "function": f"{form.function.__module__}.{form.function.__name__}",
            "words": f"{form.words.__module__}.{form.words.__name__}",
            "arguments": form.complete(case),
        }
        for form in (SAMPLE, BATCH, DRIFT)
        for case in (form.example, *form.cases)
    ]
    for ours, theirs in zip(native(questions), light(questions), strict=True):
        assert ours["words"] == theirs["words"]
