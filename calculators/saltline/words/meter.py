"""Sentences for the meter calculators."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.meter import MeterReading
from saltline.standards import WhichScale

LAST_DIGIT_MS_CM = 0.01  # a pocket pen shows no less
UNDER = "under {0.01:ms_cm} {:ms_cm}"
SCALES = {
    "us_cm": "µS/cm scale",
    "ms_cm": "mS/cm scale",
    "ppm500": "500 scale (ppm)",
    "ppm640": "640 scale (ppm)",
    "ppm700": "700 scale (ppm)",
    "cf": "cF scale",
}


def meter_reading(inputs: Mapping[str, Any], answer: MeterReading) -> tuple[str, str, str]:
    """Verdict, number, reason for `meter-reading`."""
    if inputs["full_scale"] is not None and inputs["reading"] > inputs["full_scale"]:
        trusting = "The figures below take the pen at its word."
        return "So far up your pen cannot know.", "more than {in:full_scale}", trusting
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


def which_scale(inputs: Mapping[str, Any], answer: WhichScale) -> tuple[str, str, str]:
    """Verdict, number, reason for `which-scale`."""
    if answer.scale is None or answer.off_percent is None:
        return (
            "No scale fits this reading.",
            "",
            "Rinse the probe, take fresh standard at 25 °C and read again. If it stays, the probe "
            "or the battery is worn out: trust no reading of this pen until it fits.",
        )
    off = "within 1 % of" if abs(answer.off_percent) < 1.0 else "{off_percent} away from"
    number = f"{SCALES[answer.scale]}, {off} what that scale should read"
    if answer.also_fits is None:
        verdict = f"Your pen is on the {SCALES[answer.scale]}."
        if answer.warnings:
            verdict = f"Your pen is nearest to the {SCALES[answer.scale]}, but far off it."
        reason = "Write it on the pen with a marker, and pick this scale on every page here."
    else:
        verdict = (
            f"Your pen is on the {SCALES[answer.scale]} or the {SCALES[answer.also_fits]}: this "
            "reading cannot part them."
        )
        reason = (
            "Compare its readings only with its own until a fresh bottle of 1.413 mS/cm at 25 °C "
            "has settled it."
        )
    if "ppm700" in (answer.scale, answer.also_fits):
        reason += (
            " About 1000 in the bottle can also be a 442 scale. That one bends: beside a straight "
            "700 scale it reads 4 % less at 0.45 mS/cm and 7 % more at 2.8 mS/cm."
        )
    return verdict, number, reason
