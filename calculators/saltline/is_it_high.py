"""One reading of soak or drip water against the feed and the tap, by the same pen."""

from __future__ import annotations

from typing import NamedTuple

from saltline.errors import BadInput
from saltline.granules import HARD_LIMIT_MIN
from saltline.priors import NIGHT_H, pot_of, pots
from saltline.ranges import ten_to_ninety
from saltline.saying import figure
from saltline.stage_gate import refuse_below, refuse_unread

DRAWS = 200
SLACK_SHARE = 0.05  # of feed over tap: no difference to the grower (proposed)
NOT_A_LIMIT = " Compared with your feed, not with a safe limit: none is published for orchids."


class IsItHigh(NamedTuple):
    """The answer of `is_it_high`: how the pot's water stands to the feed, both above the tap."""

    ratio: float | None
    times_feed_low: float | None
    times_feed_high: float | None
    times_reading_low: float
    times_reading_high: float
    answer: str
    warnings: tuple[str, ...]


def times_reading(
    *, method: str, grain_mm: float, soak_min: float, filled: str
) -> tuple[float, float, float]:
    """How much stronger the pot's water was than what was read, both above the tap.

    Equation:
        1 over what the bath (or the film after a covered night) reads of a pot that started at 1,
        over the priors: low, middle, high.
    Arguments:
        method: soak, or drip (first drips after standing covered overnight).
        grain_mm: diameter of the granules [mm].
        soak_min: minutes in the bath [min].
        filled: brim, or bucket.
    Returns:
        (low, middle, high) [-].
    Valid for:
        The first soak of a pot that has stood some hours since it was last watered.
    Error:
        As the range says.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush 5 and 7.
    """
    found = []
    for draw in pots(count=DRAWS):
        pot = pot_of(draw=draw, grain_mm=grain_mm, pot_l=1.0, weighed_ml=None)
        if method == "drip":
            pot.pour(ml=1000.0 * draw.water_share)
            pot.rest(hours=NIGHT_H)
            found.append(pot.left() / pot.film)
        else:
            share = draw.brim_share if filled == "brim" else draw.bucket_share
            found.append(1.0 / pot.soak(ml=1000.0 * share, minutes=soak_min))
    return ten_to_ninety(found)


def is_it_high(
    *,
    method: str,
    reading: float,
    tap: float | None,
    feed: float | None,
    grain_mm: float,
    soak_min: float,
    filled: str,
) -> IsItHigh:
    """Is a reading of soak or drip water high, told in strengths of the grower's own feed?

    Equation:
        r = (reading - tap) / (feed - tap); pot over feed, both above the tap, is r times
        `times_reading`.
    Arguments:
        method: soak, or drip (first drips after standing covered overnight).
        reading: what the pen shows in that water, any scale.
        tap: what the same pen shows in the water used, or None (refused).
        feed: what the same pen shows in the feed, or None (no comparison, a range for the pot).
        grain_mm: diameter of the granules [mm].
        soak_min: minutes in the bath [min].
        filled: brim, or bucket.
    Returns:
        IsItHigh: r, the range of the pot over the feed, and the answer in words.
    Valid for:
        The first soak of a pot that stood some hours since watering; one pen for all readings.
    Error:
        As the range says.
    Raises:
        BadInput: feed not above tap. Refused: no tap reading; a reading well below the tap.
    Sources:
        saltline-notes, flush 5 and 7.
    """
    tap = refuse_unread(rinse=tap)
    if feed is not None and not feed > tap:
        raise BadInput("feed", "must be more than in the water you used")
    slack = 0.0 if feed is None else SLACK_SHARE * (feed - tap)
    warnings = refuse_below(reading=reading, rinse=tap, slack=slack)
    low, _, high = times_reading(method=method, grain_mm=grain_mm, soak_min=soak_min, filled=filled)
    above = max(0.0, reading - tap)
    if method == "soak" and soak_min > HARD_LIMIT_MIN:
        warnings.append(
            "An hour is more than roots should stand under water: more soaks, not longer ones."
        )
    ratio = times_low = times_high = None
    if feed is None:
        answer = _pot_on_the_pen(tap + above * low, tap + above * high)
    else:
        ratio = (reading - tap) / (feed - tap)
        times_low, times_high = above / (feed - tap) * low, above / (feed - tap) * high
        answer = _against_feed(times_low, times_high)
    return IsItHigh(
        ratio=ratio,
        times_feed_low=times_low,
        times_feed_high=times_high,
        times_reading_low=low,
        times_reading_high=high,
        answer=answer + NOT_A_LIMIT,
        warnings=tuple(warnings),
    )


def _pot_on_the_pen(low: float, high: float) -> str:
    first, last = figure(low), figure(high)
    range_ = "about " + first if first == last else f"at least about {first}, perhaps {last}"
    said = f"Inside the pot your pen would read {range_}."
    return said + " Read your feed too, and this becomes an answer."


def _against_feed(low: float, high: float) -> str:
    """The verdict, and how pressing it is."""
    if high <= 1.0:
        return "At or under the strength of your feed: no flush needed for this."
    if low <= 1.0:
        return (
            "About the strength of your feed, or a little more: go on as you are, and read again "
            "before the plant rests."
        )
    if low < 2.0:
        return (
            "Stronger than your feed: water with clear water for a while, or flush at the next "
            "chance."
        )
    if low < 3.5:
        return (
            "At least about twice the strength of your feed: plan a flush. A plant with many "
            "living roots in full growth stands this for a while, one with few roots does not."
        )
    return (
        f"At least about {figure(low, 1)} times the strength of your feed: flush in the next days, "
        "if the stage allows it."
    )
