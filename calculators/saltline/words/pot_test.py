"""Sentences for one measured pot beside the model."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.pot_test import PotTest, Step
from saltline.saying import COUNTS, between, figure

NEAR = 0.1  # the first drips differ from the salt bath by no more than that: "as the bath did"


def pot_test(inputs: Mapping[str, Any], answer: PotTest) -> tuple[str, str, str]:
    """Verdict, number, reason for `pot_test`."""
    if answer.missing:
        return "Not enough lines yet to compare.", "", answer.missing
    reason = " ".join(_reasons(answer) + list(answer.warnings))
    low, high, found = answer.expected_ms_cm_low, answer.expected_ms_cm_high, answer.found_ms_cm
    if low is None or high is None or found is None:
        verdict = _of(answer.steps) + " in the model's range."
        return verdict[0].upper() + verdict[1:], "", reason
    if found < low:
        verdict = "Less was left than the model says: it is too slow for this pot."
    elif found > high:
        verdict = "More was left than the model says: it is too quick for this pot."
    else:
        verdict = "What was left lies in the model's range."
    number = figure(found) + " mS/cm left by your last bath, " + between(low, high, "mS/cm")
    return verdict, number + " expected", reason


def _of(steps: list[Step]) -> str:
    inside = sum(1 for step in steps if step.inside)
    if len(steps) == 1:
        return "the one reading lies" if inside else "the one reading does not lie"
    first, last = (COUNTS[n] if n < len(COUNTS) else str(n) for n in (inside, len(steps)))
    return first + " of the " + last + " readings lie"


def _percent(share: float) -> str:
    return figure(100.0 * share, 3 if share >= 1.0 else 2) + " %"


def _reasons(answer: PotTest) -> list[str]:
    said = []
    if answer.found_ms_cm is not None:
        said.append("On the way " + _of(answer.steps) + " in its range; about eight in ten should.")
    if answer.drip_share is not None:
        said.append(_drips(answer.drip_share))
    low, high = answer.learned_ms_cm_low, answer.learned_ms_cm_high
    if low is None or high is None:
        said.append("No pot of the model agrees with all of them.")
    else:
        told = between(low, high, "mS/cm")
        said.append("Without the two baths your readings would tell it that " + told + " is left.")
    if answer.salt_found_share is not None:
        said.append(
            "Of the salt in the pot, " + _percent(answer.salt_found_share) + " was found again."
        )
    return said


def _drips(share: float) -> str:
    if share < 1.0 - NEAR or share > 1.0 + NEAR:
        return "The first drips read " + _percent(share) + " of the salt bath, not as it did."
    return "The first drips read as the salt bath did, within a tenth."
