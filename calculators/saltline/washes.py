"""How many washes the pots that could be the reader's need, worked out no further than asked."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from saltline.exchange import SPHERE
from saltline.mornings import MORNINGS, SOAK_MIN, number_needed, wash_by_wash
from saltline.pot import Pot
from saltline.priors import NIGHT_H, pot_of, pots, usual_water_ml
from saltline.ranges import whole_range

DRAWS = 120
KEEP = 4  # sets of washed pots kept: a changed reading or target then needs no pot washed again


class Asked(NamedTuple):
    """All that the washed pots depend on; what they hold counts for each litre of pot."""

    grain_mm: float
    weighed_ml: float | None
    pours: bool
    a_morning: int


class Needed(NamedTuple):
    """Washes needed, from low to high, and in each pot the share left after each wash."""

    low: int
    high: int  # one more than are told where even those may not do
    runs: list[list[float]]  # at least as many washes as are told of


_kept: list[tuple[Asked, list[list[float]]]] = []  # the latest first


def washes_needed(*, asked: Asked, goal: float) -> Needed:
    """How many washes bring the pots that could be the reader's to a goal.

    Equation:
        `number_needed` in each draw, and `whole_range` of them all. Another morning is worked out
        only while it matters how many more washes the pots not yet there will take.
    Arguments:
        asked: granules, water, way, and washes a morning.
        goal: share that may stay [-].
    Returns:
        Needed, the same as if all mornings were worked out.
    Valid for:
        As `pot.Pot`.
    Error:
        As `whole_range`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    most = MORNINGS * asked.a_morning
    for runs in _longer_and_longer(asked):
        done = len(runs[0])
        counts = [float(number_needed(left=left, goal=goal)) for left in runs]
        low, high = whole_range(counts=counts, most=most)
        at_worst = [float(most + 1) if count > done else count for count in counts]
        if done >= min(high, most) and (low, high) == whole_range(counts=at_worst, most=most):
            break
    return Needed(low, high, runs)


def _longer_and_longer(asked: Asked) -> Iterator[list[list[float]]]:
    """Share left after each wash in each pot: as kept from another answer, then morning by morning.

    New lists, for growing old ones makes the light engine look through all memory since.
    """
    known = [runs for before, runs in _kept if before == asked]
    if known:
        yield known[0]
    washed = _pots(asked)
    runs: list[list[float]] = [[] for _ in washed]
    for _ in range(MORNINGS):
        runs = [run + next(mornings) for run, mornings in zip(runs, washed)]
        if not known or len(runs[0]) > len(known[0][0]):
            _keep(asked, runs)
            yield runs


def _keep(asked: Asked, runs: list[list[float]]) -> None:
    others = [each for each in _kept if each[0] != asked]
    _kept[:] = [(asked, runs)] + others[: KEEP - 1]


def _pots(asked: Asked) -> list[Iterator[list[float]]]:
    """A litre of each pot that could be the reader's, washed as the mornings are asked for."""
    found = []
    for draw in pots(count=DRAWS):
        pot = pot_of(draw=draw, grain_mm=asked.grain_mm, pot_l=1.0, weighed_ml=asked.weighed_ml)
        if asked.pours:
            ml, soak_min = usual_water_ml(pot_l=1.0, weighed_ml=asked.weighed_ml), None
        else:
            ml, soak_min = 1000.0 * draw.brim_share, SOAK_MIN
        found.append(morning_by_morning(pot, a_morning=asked.a_morning, ml=ml, soak_min=soak_min))
    return found


def morning_by_morning(
    pot: Pot, *, a_morning: int, ml: float, soak_min: float | None
) -> Iterator[list[float]]:
    """What `wash_by_wash` gives for a levelled pot, a morning at a time, for two thirds the work.

    Equation:
        A morning of washes is the same backwards, so what is left after n washes of any morning is
        the pot as that morning finds it, weighed by the first morning's pot after n washes.
        Only what brings the pot to the next morning is done to it.
    Arguments:
        pot: a levelled pot, changed by this.
        a_morning, ml, soak_min: as `wash_by_wash`.
    Returns:
        For each morning, without end, the share left after each of its washes.
    Valid for:
        As `pot.Pot`.
    Error:
        As `pot.Pot`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    after, lefts = [], []
    for left in wash_by_wash(pot, washes=a_morning, a_morning=a_morning, ml=ml, soak_min=soak_min):
        after.append(_excesses(pot))
        lefts.append(left)
    yield lefts
    while True:
        pot.rest(hours=NIGHT_H)
        yield [_mirrored(pot, excesses) for excesses in after]
        for _ in wash_by_wash(pot, washes=a_morning, a_morning=a_morning, ml=ml, soak_min=soak_min):
            pass


def _excesses(pot: Pot) -> list[float]:
    """Excess of each part of the granules, last of the film."""
    salts = pot.settled_salts()
    found = [salts[at] / SPHERE[at][0] for at in range(len(SPHERE))]
    found.append(pot.film)
    return found


def _mirrored(pot: Pot, excesses: list[float]) -> float:
    """Share left in a pot after what brought a level one of its kind to these excesses.

    True of washes and rests that are the same backwards: exchange, soaks and pours are symmetric
    over the water of film and parts, so it does not matter which end is begun from.
    """
    salts, inside = pot.settled_salts(), 0.0
    for at in range(len(SPHERE)):
        inside += salts[at] * excesses[at]
    film_ml, inside_ml = pot.film_ml, pot.inside_ml
    return (film_ml * pot.film * excesses[-1] + inside_ml * inside) / (film_ml + inside_ml)
