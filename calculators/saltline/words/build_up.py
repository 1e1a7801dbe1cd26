"""Sentences for the build-up between flushes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.build_up import BuildUp


def build_up(inputs: Mapping[str, Any], answer: BuildUp) -> tuple[str, str, str]:
    """Verdict, number, reason for `build-up`."""
    low, high, steady = answer.days_low, answer.days_high, answer.steady_ms_cm
    if low == 0.0:
        verdict = "It is there already."
        number = "{in:start_ms_cm} now, your limit {in:limit_ms_cm}"
    elif low is None:
        verdict = "Not with this feed and this much draining."
        number = "never" if steady is None else "levels off at {steady_ms_cm_low..steady_ms_cm}"
    elif high is None:
        verdict, number = "Soonest then; never, if the plant feeds well.", "not before {days_low}"
    else:
        verdict, number = "About then your limit is reached.", "{days_low..days_high}"
    trend = "Trust the trend of your own first drips before this sum."
    if steady is None:
        why = ""
    elif low is None:
        why = "That is what this much draining gives, and it can still be hard on roots. "
    else:
        why = "Salt gathers until as much drains as goes in, at {steady_ms_cm_low..steady_ms_cm}. "
    if low is not None and answer.enough_share is not None:
        why += "Drain {enough_share} of what you pour, or feed weaker, and your limit holds. "
    return verdict, number, why + trend
