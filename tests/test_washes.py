"""Washes worked out the short way against the long one: every pot, every wash, every exchange."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline import washes
from saltline.exchange import LEVEL, POLES, SPHERE, WEIGHTS, exchanged, salts_after, spell
from saltline.mornings import MORNINGS, SOAK_MIN, number_needed, wash_by_wash
from saltline.pot import Pot
from saltline.priors import pot_of, pots, usual_water_ml
from saltline.ranges import after_each, whole_range
from saltline.washes import DRAWS, Asked, morning_by_morning, washes_needed

PARTS = len(SPHERE)
PROPERTIES = st.fixed_dictionaries(
    {
        "water_held_ml": st.floats(20.0, 2000.0),
        "grain_mm": st.floats(1.0, 30.0),
        "film_share": st.floats(0.01, 0.5),
        "diffusivity": st.floats(0.1, 0.75),
        "by_pass": st.floats(0.0, 0.6),
    }
)
ASKED = st.builds(
    Asked,
    grain_mm=st.sampled_from([2.0, 4.0, 8.0, 16.0, 30.0]),
    weighed_ml=st.sampled_from([None, 60.0, 180.0]),
    pours=st.booleans(),
    a_morning=st.sampled_from([1, 3]),
)


@given(
    fourier=st.floats(1e-6, 100.0),
    excesses=st.one_of(
        st.lists(st.floats(0.0, 1.0), min_size=PARTS + 1, max_size=PARTS + 1),
        st.floats(0.0, 1.0).map(lambda film: [1.0] * PARTS + [film]),
    ),
    ratio=st.floats(0.01, 50.0),
    washed=st.sampled_from([0.0, 0.3, 5.0]),
)
@settings(max_examples=100, deadline=None)
def test_exchange_is_that_of_whole_matrices(
    fourier: float, excesses: list[float], ratio: float, washed: float
) -> None:
    """Each pole by a matrix of all places, against the sums that `exchanged` takes."""
    shares, rates = np.array(SPHERE).T
    start = np.array(excesses)
    paces = fourier * shares * rates
    flows = np.diag(np.append(paces, paces.sum() + washed))
    flows[-1, :-1] = flows[:-1, -1] = -paces
    waters = np.append(shares, ratio)
    settled = 0.0 if washed else waters @ start / waters.sum()
    poles = zip(POLES, WEIGHTS, strict=True)
    plain = settled + sum(
        (weight * np.linalg.solve(flows + pole * np.diag(waters), waters * (start - settled)))
        for pole, weight in poles
    )
    salts = LEVEL if (start[:-1] == 1.0).all() else list(shares * start[:-1])
    film, pull = exchanged(spell(fourier=fourier), salts, float(start[-1]), ratio, washed, settled)
    after = salts_after(pull, salts)
    # The matrices themselves round so: their film takes in all the parts' paces at once.
    rounding = 1e-11 * max(1.0, fourier)
    assert np.append(after / shares, film) == pytest.approx(plain.real, abs=rounding)


@given(
    properties=PROPERTIES,
    a_morning=st.integers(1, 4),
    waters=st.floats(0.1, 8.0),
    soak_min=st.sampled_from([None, 2.0, 30.0]),
)
@settings(max_examples=100, deadline=None)
def test_a_morning_is_the_same_backwards(
    properties: dict[str, float], a_morning: int, waters: float, soak_min: float | None
) -> None:
    ml = waters * properties["water_held_ml"]
    plain = list(
        wash_by_wash(
            Pot(**properties), washes=3 * a_morning, a_morning=a_morning, ml=ml, soak_min=soak_min
        )
    )
    mornings = morning_by_morning(Pot(**properties), a_morning=a_morning, ml=ml, soak_min=soak_min)
    short = [left for _ in range(3) for left in next(mornings)]
    assert short == pytest.approx(plain, rel=1e-12, abs=1e-13)


@given(asked=ASKED, goals=st.lists(st.floats(0.01, 0.95), min_size=2, max_size=3))
@settings(max_examples=20, deadline=None)
def test_no_more_mornings_than_needed_give_the_whole_answer(
    asked: Asked, goals: list[float]
) -> None:
    """One goal after the other, so that pots kept from the last answer serve the next."""
    washes._kept.clear()
    most = MORNINGS * asked.a_morning
    plain = []
    for draw in pots(count=DRAWS):
        pot = pot_of(draw=draw, grain_mm=asked.grain_mm, pot_l=1.0, weighed_ml=asked.weighed_ml)
        ml = 1000.0 * draw.brim_share
        if asked.pours:
            ml = usual_water_ml(pot_l=1.0, weighed_ml=asked.weighed_ml)
        soak_min = None if asked.pours else SOAK_MIN
        plain.append(
            list(
                wash_by_wash(pot, washes=most, a_morning=asked.a_morning, ml=ml, soak_min=soak_min)
            )
        )
    for goal in goals:
        low, high, runs = washes_needed(asked=asked, goal=goal)
        counts = [float(number_needed(left=left, goal=goal)) for left in plain]
        assert (low, high) == whole_range(counts=counts, most=most)
        told = min(high, most)
        for short, long in zip(
            after_each(runs=runs, washes=told), after_each(runs=plain, washes=told), strict=True
        ):
            assert short == pytest.approx(long, rel=1e-12, abs=1e-13)


def test_washed_pots_are_kept_for_the_next_answer_and_no_more_than_a_few() -> None:
    washes._kept.clear()
    questions = [Asked(float(grain), None, False, 1) for grain in range(2, 3 + washes.KEEP)]
    for asked in questions:
        washes_needed(asked=asked, goal=0.5)
    assert len(washes._kept) == washes.KEEP < len(questions)
    again = washes_needed(asked=questions[-1], goal=0.9)
    assert again.runs is washes._kept[0][1]
