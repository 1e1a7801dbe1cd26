"""Sentences for the washing bound."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.mixing import FullMixing


def full_mixing(inputs: Mapping[str, Any], answer: FullMixing) -> tuple[str, str, str]:
    """Verdict, number, reason for `full-mixing`."""
    rinses = "one rinse" if inputs["rinses"] == 1 else "{in:rinses} equal rinses"
    verdict = "At least this much water, and more in practice."
    number = "{water_ml} in " + rinses
    reason = (
        "That is if every drop mixed with all the water in the pot. Granules let go slowly, so a "
        "real pot needs more. An endless slow trickle could not beat {trickle_ml}."
    )
    return verdict, number, reason
