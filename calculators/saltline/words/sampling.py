"""Sentences for the calculators about many pots."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.drift import Drift
from saltline.sampling import READ_ALL, Batch, Sample, bad_still_possible


def sample(inputs: Mapping[str, Any], answer: Sample) -> tuple[str, str, str]:
    """Verdict, number, reason for `sample`."""
    verdict = "Read all of them." if inputs["pots"] <= READ_ALL else "Read this many, at random."
    number = "{sample_for_mean} for the mean of the batch"
    if answer.sample_to_find is not None:
        number += "; {sample_to_find} so as not to miss the bad ones"
    reason = (
        "The mean and the bad pot are two questions: a few pots tell the mean, and a bad pot hides "
        "among those not read. The least a published leaflet asks for in a routine check is 5."
    )
    return verdict, number, reason


def batch(inputs: Mapping[str, Any], answer: Batch) -> tuple[str, str, str]:
    """Verdict, number, reason for `batch`."""
    read, pots = len(inputs["readings"]), inputs["pots"]
    verdict = answer.odd_pot[0].upper() + answer.odd_pot[1:] + "."
    number = "mean {mean}"
    if answer.mean_low is not None:
        number += ", likely {mean_low..mean_high}"
    number += " on your pen"
    number += "; the middle reading is {median}"
    hidden = bad_still_possible(read=read, pots=pots)
    if hidden:
        reason = (
            f"Even if none of the {read} you read is above your own limit, up to {hidden} of the "
            f"{pots - read} not read may be: a good mean does not clear every pot."
        )
    else:
        reason = "Look at each reading too: a good mean does not clear every pot."
    return verdict, number, reason


def drift(inputs: Mapping[str, Any], answer: Drift) -> tuple[str, str, str]:
    """Verdict, number, reason for `drift`."""
    low, high = answer.slope_per_week_low, answer.slope_per_week_high
    if low is None or high is None:
        return (
            "Too few readings to tell.",
            "{slope_per_week} a week between the two, on your pen",
            "Take a third reading by the same method before acting on a trend.",
        )
    if low > 0.0:
        verdict = "It is climbing."
    elif high < 0.0:
        verdict = "It is falling."
    else:
        verdict = "These readings do not show a drift."
    if answer.weeks_low is None:
        reason = "At this pace your limit is not being approached."
    elif answer.weeks_low <= 0.0:
        reason = "The line through your readings is already at your limit."
    elif answer.weeks_high is None:
        reason = "At the steepest these readings allow, your limit is {weeks_low} away; or never."
    else:
        reason = "At this pace your limit is {weeks_low..weeks_high} after the last reading."
    return verdict, "{slope_per_week_low..slope_per_week_high} a week on your pen", reason
