"""Sentences for the rise of water in tubes and in the pot's medium."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.medium import COARSEST_MM, MediumRise, TubeRise


def tube_rise(inputs: Mapping[str, Any], answer: TubeRise) -> tuple[str, str, str]:
    """Verdict, number, reason for `tube-rise`."""
    verdict = "Water climbs this high and stops, because its own weight balances the pull."
    number = "{rise_mm}"
    if answer.rise_then_mm is not None:
        number = "{rise_mm} in the end, {rise_then_mm} after {in:seconds}"
    reason = (
        "Half the width doubles the height. Gaps between granules are wide, so water climbs little "
        "there; the cells of a root's white skin are narrow, and there drying sets the limit."
    )
    return verdict, number, reason


def medium_rise(inputs: Mapping[str, Any], answer: MediumRise) -> tuple[str, str, str]:
    """Verdict, number, reason for `medium-rise`."""
    if inputs["top_damp_24h"] == "yes":
        verdict = "The top of your pot is damp: roots that stand up from it can draw a salt line."
    elif answer.answer == "damp to the top":
        verdict = "Wetted through, this pot should be damp to the top. Look, and say what you see."
    elif answer.answer == "dry on top":
        verdict = "The top of your pot is dry: roots start drying below its surface."
    else:
        verdict = "Size alone cannot say. Look at the top layer 24 h after watering."
    number = "Dry top layer {dry_top_mm_low..dry_top_mm_high}"
    if inputs["grain_mm"] > COARSEST_MM:
        rise = "Between granules this coarse water climbs about one granule or less."
        perched = "After draining, the lowest 1 to 3 granules stay full, however tall the pot."
    else:
        rise = "Between these grains water climbs about {damp_rise_mm}."
        perched = (
            "After draining, the lowest {saturated_rise_mm} or more stays full, however tall the "
            "pot."
        )
    skin = " Granules with an open skin also wick by themselves, 0 to 100 mm. "
    reason = rise + skin + perched
    return verdict, number, reason
