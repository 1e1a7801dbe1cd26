"""How often to feed: every stage and root state, and the milligrams behind the words."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline.declare import Choice
from saltline.feeding import FeedOften
from saltline.forms import all_forms

FORM = all_forms()["feed-often"]
STRENGTHS = ("none", "weak", "usual")


def values_of(name: str) -> list[str]:
    item = FORM.input(name)
    assert isinstance(item, Choice)
    return [option.value for option in item.options]


PLANTS = list(itertools.product(values_of("stage"), values_of("kind"), values_of("roots")))


@pytest.mark.parametrize(("stage", "kind", "roots"), PLANTS)
def test_no_feed_without_roots_or_in_rest(stage: str, kind: str, roots: str) -> None:
    plant = {"stage": stage, "kind": kind, "roots": roots, "water_use_ml_day": 20.0}
    answer: FeedOften = FORM.run(plant)
    assert (answer.strength == "none") == (answer.feeds_of_four == 0)
    if roots == "none" or stage in ("rotting", "lost_roots", "new_shoot"):
        assert answer.strength == "none"
    if stage == "resting" and kind in ("deciduous", "unknown"):
        assert answer.strength == "none"
    if answer.strength == "none":
        assert answer.n_mg_month == 0
    if answer.strength == "usual":
        assert stage == "growing"
        assert roots in ("wall", "full")
    verdict, number, reason = FORM.words(FORM.complete(plant), answer)
    assert verdict.startswith("No feed") == (answer.strength == "none")
    assert number
    assert reason


@given(st.sampled_from(PLANTS), st.floats(1, 1000), st.none() | st.floats(0.1, 5000))
@settings(max_examples=200, deadline=None)
def test_milligrams_follow_the_water(
    plant: tuple[str, str, str], n_ppm: float, use: float | None
) -> None:
    stage, kind, roots = plant
    answer: FeedOften = FORM.run(
        {"stage": stage, "kind": kind, "roots": roots, "n_ppm": n_ppm, "water_use_ml_day": use}
    )
    if use is None:
        assert answer.n_mg_month is None
        assert answer.times_trial is None
        return
    assert answer.n_mg_month is not None
    assert answer.n_mg_month == pytest.approx(n_ppm * use * 0.03 * answer.feeds_of_four / 4)
    assert answer.times_trial == pytest.approx(answer.n_mg_month / 19.8)


def test_more_roots_never_mean_weaker() -> None:
    for stage, kind in itertools.product(values_of("stage"), values_of("kind")):
        order = [
            STRENGTHS.index(FORM.run({"stage": stage, "kind": kind, "roots": roots}).strength)
            for roots in ("none", "some", "wall", "full")
        ]
        assert order == sorted(order)


@pytest.mark.parametrize(
    ("plant", "n_ppm", "says"),
    [
        ({"stage": "growing", "roots": "some"}, 100.0, "Make it weaker now"),
        ({"stage": "growing", "roots": "some"}, 50.0, ""),
        ({"stage": "growing", "roots": "wall"}, 100.0, ""),
        ({"stage": "growing", "roots": "wall"}, 200.0, "Above our usual"),
        ({"stage": "growing", "roots": "wall"}, 300.0, "More than 280 ppm"),
        ({"stage": "growing", "roots": "full"}, 100.0, "not to feed stronger"),
        ({"stage": "maturing", "roots": "wall"}, 50.0, "last heavy watering"),
    ],
)
def test_feeding_warns(plant: dict[str, str], n_ppm: float, says: str) -> None:
    warnings = FORM.run(plant | {"n_ppm": n_ppm}).warnings
    assert len(warnings) == (1 if says else 0)
    assert all(says in warning for warning in warnings)
