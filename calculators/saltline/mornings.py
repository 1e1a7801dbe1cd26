"""A flush as it is done: a few pours or soaks a morning, an hour apart, a covered night between."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from saltline.pot import Pot
from saltline.priors import NIGHT_H

REST_H = 1.0  # drained, between two pours or soaks of a morning (proposed)
A_MORNING, MORNINGS = 3, 3  # most washes a morning, most mornings (proposed)
GENTLE_A_MORNING = 1  # for a plant at rest that keeps its leaves (proposed)
SOAK_MIN = 10.0  # of a soak in a plan: more soaks, not longer ones (proposed)

LIFT_BEADS = (
    "Lift out the slow-release beads that lie on the surface. Do not dig or sieve through living "
    "roots for the others."
)
WARM_DAY = "Wait for a warm, bright day and wet the pot only once: the plant is at rest."
COVER = (
    "For the night stand the drained pot in the shade at 18 °C or more and cover the pot, not the "
    "leaves; take the cover off before the sun."
)
READ = (
    "In the morning pour 10 mL at a time over the whole top until the drips cover the pen, and "
    "read those first drips."
)
STOP_AT_ONCE = (
    "Stop at once at any sour smell or in a cold spell. When you are done let the pot dry down as "
    "usual, feed weakly next time, and read the first drips once more two weeks later."
)


def wash_by_wash(
    pot: Pot, *, washes: int, a_morning: int, ml: float, soak_min: float | None
) -> Iterator[float]:
    """Share of the excess left after each of some pours or soaks, worked out as it is asked for.

    Equation:
        `pot.Pot`: wash, an hour's rest, and a covered night of 12 h after the last of a morning.
    Arguments:
        pot: the pot, changed by this.
        washes: how many [-].
        a_morning: how many a morning [-].
        ml: water of each [mL].
        soak_min: minutes of each soak [min], or None for pours.
    Returns:
        The share left after each, which a rest does not change.
    Valid for:
        As `pot.Pot`.
    Error:
        As `pot.Pot`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    for number in range(washes):
        if number:
            pot.rest(hours=REST_H if number % a_morning else NIGHT_H)
        if soak_min is None:
            pot.pour(ml=ml)
        else:
            pot.soak(ml=ml, minutes=soak_min)
        yield pot.left()


def number_needed(*, left: Iterable[float], goal: float) -> int:
    """How many washes bring a pot to its goal.

    Equation:
        The first n with left[n - 1] <= goal.
    Arguments:
        left: share left after each wash [-]; no more of them are asked for than needed.
        goal: share that may stay [-].
    Returns:
        n; one more than there are washes if none gets there.
    Valid for:
        Any list.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush.
    """
    number = 1
    for share in left:
        if share <= goal:
            return number
        number += 1
    return number
