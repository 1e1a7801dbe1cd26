"""Sentences for the time that granules take."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.granules import SoakMinutes


def soak_minutes(inputs: Mapping[str, Any], answer: SoakMinutes) -> tuple[str, str, str]:
    """Verdict, number, reason for `soak-minutes`."""
    verdict = "Soak no longer than {plant_limit_min}, whatever the granules would like."
    number = "granules alone would take {minutes_low..minutes_high}"
    if answer.minutes_high <= answer.plant_limit_min:
        reason = "Granules this small let go of {in:share} of what a long soak takes within that."
    else:
        reason = (
            "That is for {in:share} of what a very long soak would take out. Roots drown first; in "
            "an hour's drained rest the granules go on letting go, and resting costs nothing."
        )
    return verdict, number, reason
