"""Sentences for the meter calculators."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.meter import MeterReading


def meter_reading(inputs: Mapping[str, Any], answer: MeterReading) -> tuple[str, str, str]:
    """Verdict, number, reason for `meter-reading`."""
    if inputs["sample_c"] == 25:
        verdict = "Your water conducts this much."
    elif inputs["compensated"] == "no":
        verdict = "At 25 °C your water would conduct this much."
    else:
        verdict = "Your pen has already allowed for the temperature."
    number = "{ec_ms_cm}, likely {ec_ms_cm_low..ec_ms_cm_high}"
    reason = (
        "The same water reads {ppm500} on a 500 scale, {ppm640} on a 640 scale and {ppm700} on a "
        "700 scale. Compare readings in mS/cm, never in ppm from another pen."
    )
    return verdict, number, reason
