"""Sentences for how often to feed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.feeding import FeedOften

WHY_NONE = {
    "rotting": "Look inside first: cut away what is soft. Feed waits until new roots show.",
    "lost_roots": (
        "Without roots feed only makes the water saltier. Fresh granules, shade and humid air "
        "first; feed when new roots show."
    ),
    "new_shoot": (
        "The new roots are not there yet. Many growers wait until the longest reach about 7.6 cm "
        "(printed rules run from 6.4 to 12.7 cm); then water, then feed."
    ),
    "resting": (
        "A plant at rest takes nothing up and the salt stays. If it drops all its leaves, keep it "
        "dry; if it does not, wait for new growth."
    ),
}


def feed_often(inputs: Mapping[str, Any], answer: FeedOften) -> tuple[str, str, str]:
    """Verdict, number, reason for `feed-often`."""
    if answer.strength == "none":
        why = WHY_NONE.get(inputs["stage"], WHY_NONE["lost_roots"])
        return "No feed now.", "No nitrogen this month", why
    if answer.feeds_of_four == 1:
        verdict = "One watering in four with weak feed, the others with clear water."
    elif answer.strength == "weak":
        verdict = "Weak feed at three waterings in four, the fourth with clear water."
    else:
        verdict = "Usual feed at three waterings in four, the fourth with clear water."
    plan = "{feeds_of_four} of 4 waterings, {strength} feed"
    reason = (
        "Usual is {usual_n_ppm_low..usual_n_ppm_high} nitrogen, our proposal: no published rule "
        "ties feed to roots. Cattleyas of 28 g in pumice grew best on {trial_mg_month} of nitrogen "
        "a month (Tanaka and others 1988, summary read); a plant with more live growth uses more."
    )
    if answer.n_mg_month is None:
        return verdict, plan, reason
    number = plan + ": at the strength you gave, {n_mg_month} of nitrogen a month"
    return verdict, number, "That is {times_trial} what a trial gave. " + reason
