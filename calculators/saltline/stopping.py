"""When a flush of several mornings stops: the rule that each morning's first drips are put to."""

from __future__ import annotations

from typing import NamedTuple

from saltline.flush_plan import target_excess
from saltline.mornings import MORNINGS

NEAR_RINSE_MS_CM = 0.2  # nearer to the rinse water than this is not worth more water (proposed)
LEAST_FALL = 0.2  # of the excess, from one morning to the next (proposed)


class Stopping(NamedTuple):
    """The answer of `stopping`: stop, find or go_on, and the sentence that says why."""

    action: str
    why: str


def stopping(*, readings: list[float], rinse_ms_cm: float, stop_ms_cm: float | None) -> Stopping:
    """Whether to go on with a flush, from the first drips of each morning so far.

    Equation:
        Stop at D <= target, or D - rinse <= 0.2 mS/cm, or on the fourth reading. Find the cause
        when the excess D - rinse fell by less than a fifth from the morning before.
    Arguments:
        readings: first drips after each covered night [mS/cm], the first before any water.
        rinse_ms_cm: the water used [mS/cm].
        stop_ms_cm: the target [mS/cm]; None for the house rule on the first reading.
    Returns:
        Stopping: action (stop, find, go_on) and why.
    Valid for:
        Drips read after 8 covered hours or more; a shorter rest reads the film alone.
    Error:
        A rule of procedure, not a measurement; its limits are proposed.
    Raises:
        ValueError: no reading.
    Sources:
        saltline-notes, the procedure for a flush session.
    """
    if not readings:
        raise ValueError("readings are missing")
    now = readings[-1]
    if stop_ms_cm is None:
        excess = max(0.0, readings[0] - rinse_ms_cm)
        stop_ms_cm = rinse_ms_cm + target_excess(
            excess_ms_cm=excess, rinse_ms_cm=rinse_ms_cm, target_ms_cm=None, feed_ms_cm=None
        )
    if now <= stop_ms_cm:
        return Stopping("stop", "The first drips are at or under your target: stop here.")
    if now - rinse_ms_cm <= NEAR_RINSE_MS_CM:
        return Stopping("stop", "The first drips are as near to your rinse water as is worth it.")
    if len(readings) > 1 and readings[-2] - now < LEAST_FALL * (readings[-2] - rinse_ms_cm):
        return Stopping(
            "find",
            "The reading fell by less than a fifth since yesterday. Something keeps giving salt: "
            "live beads, bark, lime, or a rinse water other than you think. Find it before more "
            "water goes on.",
        )
    if len(readings) > MORNINGS:
        return Stopping(
            "stop",
            "Three mornings are enough for one go. Let the pot dry down as usual and read it again "
            "in two weeks; if it is still high, fresh granules at the right stage do more.",
        )
    return Stopping("go_on", "Not there yet: three more pours this morning, an hour apart.")
