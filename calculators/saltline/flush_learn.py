"""What a pot's own readings say is left in it."""

from __future__ import annotations

from typing import NamedTuple

from saltline.errors import BadInput
from saltline.flush_log import Event, has_rested_drip, read_log, replay
from saltline.flush_plan import target_excess
from saltline.learner import ENOUGH, Learned, Learner
from saltline.mornings import A_MORNING, MORNINGS, REST_H, number_needed, wash_by_wash
from saltline.priors import usual_water_ml
from saltline.ranges import weighted_ten_to_ninety, whole_range
from saltline.saying import between, counts, figure
from saltline.stage_gate import refuse_bark, refuse_unread

AHEAD = 40  # draws taken on into the pours to come

NO_FIT = (
    "These readings do not fit a simple pot. Look for a wrong reading of the rinse water, a wrong "
    "volume, slow-release beads that still feed, granules that bind salt as bark does, or a part "
    "of the pot that stayed dry. Cover the pot for a night and read the first drips: that reading "
    "holds whatever the others say."
)
COARSE = "Few of the pots tried agree with all your readings, so this range is a rough one."


class FlushLearn(NamedTuple):
    """The answer of `flush_learn`; None where the readings fit no pot."""

    left_ms_cm_low: float | None
    left_ms_cm_high: float | None
    start_ms_cm_low: float | None
    start_ms_cm_high: float | None
    more_pours_low: int | None
    more_pours_high: int | None
    stop_ms_cm: float | None
    reached: str
    rested: str
    fits: str
    coarse: str
    inside_each_ms_cm_low: list[float]
    inside_each_ms_cm_high: list[float]
    answer: str
    warnings: tuple[str, ...]


def flush_learn(
    *,
    log: list[str],
    rinse_ms_cm: float | None,
    target_ms_cm: float | None,
    pot_l: float,
    water_held_ml: float | None,
    grain_mm: float,
    medium: str,
) -> FlushLearn:
    """What is left in a pot, from its own log of drips, soaks, pours and rests.

    Equation:
        10 and 90 % of the weighted draws (`Learner`) of start times share left, by volume of film
        and granules, after the last event; then pours on to the target, three a morning.
    Arguments:
        log: events in order, from a levelled pot (`flush_log.read_log`).
        rinse_ms_cm: rinse water [mS/cm], or None (refused).
        target_ms_cm: stop when it reads [mS/cm], or None for a quarter of the start's excess.
        pot_l: volume of the pot [L].
        water_held_ml: water the drained pot keeps [mL], or None for 8-25 % of the pot.
        grain_mm: diameter of the granules [mm].
        medium: granules, or bark (refused).
    Returns:
        FlushLearn: what is left and what was at the start [mS/cm], pours still to go, in ranges.
    Valid for:
        Granules that do not bind salt, one rinse water throughout.
    Error:
        As the ranges say, never better than a factor 1.3 either way above the rinse water.
    Raises:
        BadInput: log, water held. Refused: no rinse reading, bark, target too near the rinse water.
    Sources:
        saltline-notes, flush review 4.
    """
    rinse = refuse_unread(rinse=rinse_ms_cm)
    refuse_bark(medium=medium)
    held = usual_water_ml(pot_l=pot_l, weighed_ml=water_held_ml)
    events = read_log(log)
    rested = has_rested_drip(events)
    if all(event.reading is None for event in events):
        raise BadInput("log", "needs at least one reading, as in drip:1.2")
    learner = Learner(
        events=events,
        rinse_ms_cm=rinse,
        pot_l=pot_l,
        water_held_ml=water_held_ml,
        grain_mm=grain_mm,
    )
    coarse = "yes" if learner.effective() < ENOUGH else "no"
    if not learner.fits:
        return _no_fit(rested, coarse)
    kept = learner.weighted()
    start = weighted_ten_to_ninety([(one.start, one.weight) for one in kept])
    inside = _inside(events, kept, start)
    left = inside[-1]
    goal = target_excess(
        excess_ms_cm=start[1], rinse_ms_cm=rinse, target_ms_cm=target_ms_cm, feed_ms_cm=None
    )
    low, high = _more_pours(learner, kept, goal, held)
    return FlushLearn(
        left_ms_cm_low=rinse + left[0],
        left_ms_cm_high=rinse + left[2],
        start_ms_cm_low=rinse + start[0],
        start_ms_cm_high=rinse + start[2],
        more_pours_low=low,
        more_pours_high=min(high, MORNINGS * A_MORNING),
        stop_ms_cm=rinse + goal,
        reached="yes" if high <= MORNINGS * A_MORNING else "no",
        rested="yes" if rested else "no",
        fits="yes",
        coarse=coarse,
        inside_each_ms_cm_low=[rinse + low for low, _, _ in inside],
        inside_each_ms_cm_high=[rinse + high for _, _, high in inside],
        answer=_answer(rested, rinse + left[0], rinse + left[2])
        + _pours_in_words(low, high, rinse + goal),
        warnings=(COARSE,) if coarse == "yes" else (),
    )


def _inside(
    events: list[Event], kept: list[Learned], left: tuple[float, float, float]
) -> list[tuple[float, float, float]]:
    """What each event leaves above the rinse water; a drip and a rest leave what was there."""
    found = []
    for at, event in enumerate(events):
        if event.kind in ("soak", "pour"):
            pairs = [(one.start * one.lefts[at], one.weight) for one in kept]
            left = weighted_ten_to_ninety(pairs)
        found.append(left)
    return found


def _more_pours(
    learner: Learner, kept: list[Learned], goal: float, pour_ml: float
) -> tuple[int, int]:
    """Pours still to go, over draws taken in proportion to their weights."""
    counts_needed: list[float] = []
    step = sum(one.weight for one in kept) / AHEAD
    piled, mark = 0.0, step / 2.0
    for one in kept:
        piled += one.weight
        taken = 0
        while piled > mark and len(counts_needed) + taken < AHEAD:
            mark += step
            taken += 1
        if taken:
            counts_needed += [float(_pours_of(learner, one, goal, pour_ml))] * taken
    return whole_range(counts=counts_needed, most=MORNINGS * A_MORNING)


def _pours_of(learner: Learner, one: Learned, goal: float, pour_ml: float) -> int:
    """Pours still to go in one of the pots that agree with the readings."""
    if one.start * one.lefts[-1] <= goal:
        return 0
    pot = learner.pot(one.draw)
    replay(pot, learner.events)
    pot.rest(hours=REST_H)
    left = wash_by_wash(
        pot, washes=MORNINGS * A_MORNING, a_morning=A_MORNING, ml=pour_ml, soak_min=None
    )
    return number_needed(left=left, goal=goal / one.start)


def _answer(rested: bool, low: float, high: float) -> str:
    if rested:
        return f"Probably {between(low, high, 'mS/cm')} is still in the pot (8 chances in 10)."
    return (
        f"At least about {figure(low)} mS/cm is still in the pot, perhaps {figure(high)}. A "
        "covered night and its first drips would narrow that; another soak would not."
    )


def _pours_in_words(low: int, high: int, stop: float) -> str:
    if high == 0:
        return f" That is at or under {figure(stop)} mS/cm: stop here."
    if high > MORNINGS * A_MORNING:
        return (
            f" Three mornings of three pours may not bring it to {figure(stop)} mS/cm: repot into "
            "fresh granules when new roots start."
        )
    return f" Expect {counts(low, high, 'more pour')} to bring it to {figure(stop)} mS/cm."


def _no_fit(rested: bool, coarse: str) -> FlushLearn:
    return FlushLearn(
        left_ms_cm_low=None,
        left_ms_cm_high=None,
        start_ms_cm_low=None,
        start_ms_cm_high=None,
        more_pours_low=None,
        more_pours_high=None,
        stop_ms_cm=None,
        reached="no",
        rested="yes" if rested else "no",
        fits="no",
        coarse=coarse,
        inside_each_ms_cm_low=[],
        inside_each_ms_cm_high=[],
        answer=NO_FIT,
        warnings=(),
    )
