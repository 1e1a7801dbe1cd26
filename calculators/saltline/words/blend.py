"""Sentences for the blend of tap and pure water."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.blend import WaterBlend


def water_blend(inputs: Mapping[str, Any], answer: WaterBlend) -> tuple[str, str, str]:
    """Verdict, number, reason for `water-blend`."""
    if answer.tap_share == 0.0:
        return "Use the pure water alone.", "{pure_l} of pure water", "It reads the target already."
    if answer.tap_share == 1.0:
        return "Use the tap water alone.", "{tap_l} of tap water", "It reads the target already."
    verdict = "Pour in the tap water first, fill up with pure water, stir and read."
    number = "{tap_l} of tap water and {pure_l} of pure water"
    reason = (
        "That is {tap_share} tap water ({tap_share_low..tap_share_high}, by the salts in it), and "
        "the pen should read {ec_ms_cm_low..ec_ms_cm_high}. Above {in:target_ms_cm}, add pure "
        "water. A mix reads a little more than the two readings suggest: in thinner water the "
        "salts hinder each other less."
    )
    return verdict, number, reason
