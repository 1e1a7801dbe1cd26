"""Sentences for the salt line."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.salt_band import SaltBand

HARDLY = 1.1  # times the water's strength: no figure is told


def salt_band(inputs: Mapping[str, Any], answer: SaltBand) -> tuple[str, str, str]:
    """Verdict, number, reason for `salt-band`: the band, then its turnover, then the rinse."""
    if inputs["measured_band_mm"] is not None:
        verdict = "Salt gathers up to the wet edge that you measured, " + _about(answer.band_mm)
    else:
        verdict = "Salt gathers on the wet part of the root, " + _about(answer.band_mm)
    verdict += " above the damp surface."
    number = "likely {band_mm_low..band_mm_high}"
    if answer.factor_7d_high < HARDLY:
        gathers = "in a week without rinsing hardly more than your plain water brings."
    else:
        gathers = (
            "up to {factor_1d_high} the strength of your plain water after one day, "
            "{factor_3d_high} after three, {factor_7d_high} after seven, if nothing wets it."
        )
    reason = (
        "It renews its water every {turnover_h_low..turnover_h_high} and keeps the salt the root "
        "refuses: " + gathers + " To rinse it, keep clear water on it for "
        "{rinse_min..rinse_min_high}, by a wet tissue or a fine trickle; a quick pour does little, "
        "and lime stays. Growers report the line; this is our best explanation, not a study of "
        "orchids."
    )
    return verdict, number, reason


def _about(height_mm: float) -> str:
    """A height in words: the answer is a bar, not a digit."""
    if height_mm < 1.5:
        return "a millimetre or less"
    if height_mm < 5.0:
        return "a few millimetres"
    if height_mm < 15.0:
        return "about 1 cm"
    if height_mm < 25.0:
        return "about 2 cm"
    return "3 cm or more"
