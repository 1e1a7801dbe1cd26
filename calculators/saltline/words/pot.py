"""Sentences for the water inside a pot and for its flush."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.flush_learn import FlushLearn
from saltline.flush_plan import FlushPlan
from saltline.flush_today import FlushToday
from saltline.is_it_high import IsItHigh
from saltline.pore_water import PoreWater
from saltline.saying import count, counts


def _first(text: str) -> tuple[str, str]:
    """The first sentence, and the rest."""
    head, stop, tail = text.partition(". ")
    return (head + ".", tail) if stop else (text, "")


def is_it_high(inputs: Mapping[str, Any], answer: IsItHigh) -> tuple[str, str, str]:
    """Verdict, number, reason for `is-it-high`."""
    verdict, reason = _first(answer.answer)
    if inputs["reading"] <= inputs["tap"]:
        number = "no more in it than in your tap"
    elif answer.times_feed_low is None:
        number = "{times_reading_low..times_reading_high} as far above your tap as the reading"
    else:
        number = "{times_feed_low..times_feed_high} your feed, both counted above your tap"
    return verdict, number, reason


def pore_water(inputs: Mapping[str, Any], answer: PoreWater) -> tuple[str, str, str]:
    """Verdict, number, reason for `pore-water`."""
    verdict, reason = _first(answer.answer)
    if reason:
        verdict = "Probably this is what the water in the pot reads."
    number = "{pot_ms_cm_low..pot_ms_cm_high}, your rinse water {in:rinse_ms_cm}"
    return verdict, number, reason or "Feed as usual, and read again in a few weeks."


def flush_today(inputs: Mapping[str, Any], answer: FlushToday) -> tuple[str, str, str]:
    """Verdict, number, reason for `flush-today`."""
    if answer.soaks_today == 0:
        verdict = "Enough for today: let it drain and stand airy."
        number = "{left_share_low..left_share_high} of the salt above your tap left"
    else:
        soaks = count(answer.soaks_today, "soak")
        soaks = soaks[0].upper() + soaks[1:]
        apart = "" if answer.soaks_today == 1 else ", {rest_h} apart"
        verdict = soaks + " today, filled to the brim" + apart + "."
        number = "{each_ml} each, {left_share_low..left_share_high} of the salt left then"
    return verdict, number, answer.next


def flush_plan(inputs: Mapping[str, Any], answer: FlushPlan) -> tuple[str, str, str]:
    """Verdict, number, reason for `flush-plan`."""
    if answer.pours_high == 0:
        return (
            "Nothing to wash out.",
            "the pot reads at or under the target already",
            "Feed as usual, and read the first drips again in a few weeks.",
        )
    washes = counts(answer.pours_low, answer.pours_high, inputs["way"][:-1])
    mornings = counts(answer.mornings_low, answer.mornings_high, "morning")
    verdict = washes[0].upper() + washes[1:] + " of {each_ml}, over " + mornings + "."
    number = "{left_share_low..left_share_high} of the salt left then, with "
    number += "{water_l_low..water_l_high} of water"
    if answer.reached == "yes":
        reason = "Read the first drips after each covered night and stop as soon as they are low. "
    else:
        reason = "That may not be enough: then stop, and repot when new roots start. "
    reason += "If every drop mixed it would take {at_least_l} at least; granules need time, not "
    return verdict, number, reason + "more water at once."


def flush_learn(inputs: Mapping[str, Any], answer: FlushLearn) -> tuple[str, str, str]:
    """Verdict, number, reason for `flush-learn`."""
    verdict, reason = _first(answer.answer)
    low, high = answer.more_pours_low, answer.more_pours_high
    if low is None or high is None:
        return verdict, "nothing can be said from these", reason
    if answer.rested == "yes":
        verdict, reason = "Probably this much is still in the pot (8 chances in 10).", ""
    else:
        verdict = "At least the lower of these is still in the pot."
        reason = "A covered night and its first drips would narrow it; another soak would not. "
    if high == 0:
        reason += "That is at or under {stop_ms_cm}: stop here."
    elif answer.reached == "no":
        reason += (
            "Three mornings of three pours may not bring it to {stop_ms_cm}: repot when new roots "
            "start."
        )
    else:
        reason += "Expect " + counts(low, high, "more pour") + " to bring it to {stop_ms_cm}."
    number = "{left_ms_cm_low..left_ms_cm_high} left"
    reason += (
        " It began at {start_ms_cm_low..start_ms_cm_high}; your rinse water reads {in:rinse_ms_cm}."
    )
    return verdict, number, reason
