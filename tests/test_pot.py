"""The pot: its two tables made again, referees, conservation."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import eig, hankel
from scipy.optimize import minimize

from saltline import pot as pot_module
from saltline.exchange import POLES, SPHERE, WEIGHTS
from saltline.mixing import full_mixing
from saltline.pot import Pot
from saltline.priors import FILM_SHARE_SD, pots
from shell_pot import ShellPot


def sphere_answer(pace: np.ndarray) -> np.ndarray:
    """3 (q coth q - 1) / q2: how a whole sphere answers a film that grows as exp(q2 Fo)."""
    q = np.sqrt(np.maximum(pace, 1e-300))
    series = 1.0 - pace / 15.0 + 2.0 * pace * pace / 315.0
    return np.where(pace < 1e-2, series, 3.0 * (q / np.tanh(q) - 1.0) / np.maximum(pace, 1e-300))


def sphere_table(parts: int) -> np.ndarray:
    """Parts that answer as the sphere does at twice as many paces (Mayo & Antoulas 2007)."""
    paces = np.concatenate([[0.0], np.logspace(0.5, 5.5, 2 * parts - 1)])
    s, t = paces[::2], paces[1::2]
    apart = s[:, None] - t[None, :]
    loewner = (sphere_answer(s)[:, None] - sphere_answer(t)[None, :]) / apart
    shifted = ((s * sphere_answer(s))[:, None] - (t * sphere_answer(t))[None, :]) / apart
    rates = np.sort(-eig(shifted, loewner)[0].real)
    each = rates / (paces[:, None] + rates) / sphere_answer(paces)[:, None]
    return np.column_stack([np.linalg.lstsq(each, np.ones(2 * parts), rcond=None)[0], rates])


def test_sphere_table_is_made_again() -> None:
    assert np.array(SPHERE) == pytest.approx(sphere_table(len(SPHERE)), rel=1e-6)
    assert sum(share for share, _ in SPHERE) == pytest.approx(1.0, abs=1e-15)


def test_parts_answer_as_the_whole_sphere() -> None:
    paces = np.logspace(-2, 5, 500)
    shares, rates = np.array(SPHERE).T
    ours = (shares * rates / (paces[:, None] + rates)).sum(axis=1)
    assert ours == pytest.approx(sphere_answer(paces), rel=6e-5)


def near_best_poles(order: int) -> tuple[np.ndarray, np.ndarray]:
    """Poles and residues of exp(z) for z <= 0 by Caratheodory and Fejer (Trefethen 2006)."""
    taps, points = 75, 1024
    circle = np.exp(2j * np.pi * np.arange(points) / points)
    t = circle.real
    values = np.exp(9.0 * (t - 1.0) / (t + 1.0 + 1e-16))
    c = np.fft.fft(values).real / points
    f = np.polyval(c[taps::-1], circle)
    u, s, vh = np.linalg.svd(hankel(c[1 : taps + 1]))
    rest = np.zeros(points - taps)
    above = np.fft.fft(np.concatenate([u[::-1, order], rest]))
    below = np.fft.fft(np.concatenate([vh[order], rest]))
    outside = f - s[order] * circle**taps * above / below
    q = np.roots(vh[order])
    q = q[abs(q) > 1.0]
    top = np.fft.fft(outside * np.polyval(np.poly(q), circle)).real / points
    residue = np.array([np.polyval(top[order::-1], x) / np.prod(x - q[q != x]) for x in q])
    poles = 9.0 * (q - 1.0) ** 2 / (q + 1.0) ** 2
    return poles, 4.0 * residue * poles / (q * q - 1.0)


def test_poles_are_made_again() -> None:
    poles, residues = near_best_poles(2 * len(POLES))
    upper = sorted(
        (i for i in range(len(poles)) if poles[i].imag > 0), key=lambda i: -poles[i].real
    )
    assert np.array(POLES) == pytest.approx(poles[upper], rel=1e-9)
    assert np.array(WEIGHTS) == pytest.approx(-2.0 * residues[upper], rel=1e-8)


def test_poles_give_the_exponential() -> None:
    x = np.concatenate([[0.0], np.logspace(-8, 9, 5000)])
    made = sum((w / (x + p)).real for p, w in zip(POLES, WEIGHTS, strict=True))
    assert abs(made - np.exp(-x)).max() < 2.1e-6


PROPERTIES = st.fixed_dictionaries(
    {
        "water_held_ml": st.floats(20.0, 2000.0),
        "grain_mm": st.floats(1.0, 30.0),
        "film_share": st.floats(0.01, 0.5),
        "diffusivity": st.floats(0.1, 0.75),
        "by_pass": st.floats(0.0, 0.6),
    }
)
EVENTS = st.lists(
    st.tuples(st.sampled_from(["soak", "pour", "rest"]), st.floats(0.1, 8.0), st.floats(0.5, 60.0)),
    min_size=1,
    max_size=8,
)


@given(properties=PROPERTIES, events=EVENTS)
@settings(max_examples=200, deadline=None)
def test_mass_is_kept(properties: dict[str, float], events: list[tuple[str, float, float]]) -> None:
    pot = Pot(**properties)
    held = properties["water_held_ml"]
    for name, waters, minutes in events:
        before, ml = held * pot.left(), waters * held
        if name == "rest":
            pot.rest(hours=minutes)
            gone = 0.0
        elif name == "soak":
            gone = ml * pot.soak(ml=ml, minutes=minutes)
        else:
            gone = ml * pot.pour(ml=ml)
        assert held * pot.left() + gone == pytest.approx(before, abs=1e-10 * held)
        assert -1e-5 <= pot.film <= 1.0 + 1e-9
        assert -1e-6 <= pot.left() <= 1.0 + 1e-9


@given(properties=PROPERTIES)
@settings(max_examples=50, deadline=None)
def test_rest_levels_film_and_granules(properties: dict[str, float]) -> None:
    pot = Pot(**properties)
    pot.soak(ml=2.0 * properties["water_held_ml"], minutes=5.0)
    left = pot.left()
    gaps = []
    for _ in range(5):
        gaps.append(left - pot.film)
        pot.rest(hours=6.0)
    assert all(a >= b - 4e-6 for a, b in pairwise(gaps))
    pot.rest(hours=1e5)
    assert pot.film == pytest.approx(left, abs=4e-6)


def test_any_pot_is_that_of_the_shells() -> None:
    random = np.random.default_rng(7)
    for _ in range(25):
        properties = {
            "water_held_ml": random.uniform(50.0, 400.0),
            "film_share": random.uniform(0.02, 0.5),
            "diffusivity": random.uniform(0.1, 0.75),
            "by_pass": random.uniform(0.0, 0.6),
        }
        grain = random.uniform(3.0, 20.0)
        ours = Pot(**properties, grain_mm=grain)
        theirs = ShellPot(**properties, grains_mm=[grain], shells=150, finest=3e-5)
        for name in random.choice(["soak", "pour", "rest"], 8):
            ml = random.uniform(100.0, 2000.0)
            if name == "soak":
                minutes = random.choice([2.0, 10.0, 30.0])
                shown = ours.soak(ml=ml, minutes=minutes), theirs.soak(ml, minutes)
            elif name == "pour":
                shown = ours.pour(ml=ml), theirs.pour(ml)
            else:
                hours = random.choice([1.0, 4.0, 12.0])
                ours.rest(hours=hours)
                theirs.rest(hours)
                shown = ours.film, theirs.drip()
            assert shown[0] == pytest.approx(shown[1], rel=0.002, abs=1e-7)
            assert ours.left() == pytest.approx(theirs.left(), rel=0.002, abs=1e-7)


@pytest.mark.parametrize(
    ("minutes", "pours", "ml", "rest_h", "left"),
    [(5.0, 1, 2000.0, 0.0, 0.534), (2.0, 10, 200.0, 1.0, 0.021), (300.0, 1, 2000.0, 0.0, 0.0113)],
    ids=["one 5-min pour", "ten 200-mL pours", "drip over 5 h"],
)
def test_two_litres_as_the_notes_have_it(
    monkeypatch: pytest.MonkeyPatch,
    minutes: float,
    pours: int,
    ml: float,
    rest_h: float,
    left: float,
) -> None:
    """The rows of the 2 L table that pour, with the times they were poured in."""
    monkeypatch.setattr(pot_module, "POUR_MIN", minutes)
    pot = Pot(water_held_ml=200.0, grain_mm=8.0, film_share=0.25, diffusivity=0.5)
    for _ in range(pours):
        pot.pour(ml=2000.0 / pours)
        pot.rest(hours=rest_h)
    assert pot.left() == pytest.approx(left, abs=6e-4)


def test_equal_rinses_are_best() -> None:
    def kept(waters: np.ndarray) -> float:
        return float(np.prod(1.0 / (1.0 + np.append(waters, 9.0 - waters.sum()))))

    found = minimize(
        kept, [1.0, 5.0], method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-15}
    )
    assert found.x == pytest.approx([3.0, 3.0], rel=1e-6)
    water = full_mixing(times_down=1.0 / found.fun, water_held_ml=1.0, rinses=3).water_ml
    assert water == pytest.approx(9.0, rel=1e-9)


def test_draws_follow_the_priors() -> None:
    made = pots(count=1000)
    film = np.array([one.film_share for one in made])
    assert film.mean() == pytest.approx(0.25, abs=0.003)
    assert film.std() == pytest.approx(FILM_SHARE_SD, abs=0.003)
    water = np.quantile([one.water_share for one in made], [0.0, 0.5, 1.0])
    assert water == pytest.approx([0.08, 0.15, 0.25], abs=0.001)
    pace = np.log([one.diffusivity for one in made])
    assert np.quantile(pace, [0, 0.25, 0.5, 0.75, 1]) == pytest.approx(
        np.linspace(np.log(0.1), np.log(0.75), 5), abs=0.02
    )
    places = np.array([one.place for one in made])
    assert abs(np.corrcoef(places.T) - np.eye(5)).max() < 0.03
    assert pots(count=5, first=995) == made[995:]
