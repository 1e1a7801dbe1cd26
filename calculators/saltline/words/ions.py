"""Sentences for the solution made of known ions."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.ions import IonsToEc
from saltline.words.meter import LAST_DIGIT_MS_CM, UNDER


def ions_to_ec(inputs: Mapping[str, Any], answer: IonsToEc) -> tuple[str, str, str]:
    """Verdict, number, reason for `ions-to-ec`."""
    number = "{ec_ms_cm}, on a pocket pen {ec_ms_cm_low..ec_ms_cm_high}"
    if answer.ec_ms_cm < LAST_DIGIT_MS_CM:
        number = UNDER
    if answer.charge_error_percent is None:
        verdict = "No salts: the pen reads next to nothing."
    elif abs(answer.charge_error_percent) > 5.0:
        verdict = "Take this as a rough reading."
    else:
        verdict = "A pen should read about this."
    reason = (
        "The water holds {tds_mg_l} of dissolved matter, which pulls on water with {osmotic_bar}."
    )
    if answer.ec_ms_cm < LAST_DIGIT_MS_CM:
        reason = "No pocket pen tells it from pure water."
    if inputs["urea_mmol_l"] > 0:
        reason += " There is urea in it, which conducts nothing: the pen cannot see it."
    return verdict, number, reason
