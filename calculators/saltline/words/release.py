"""Sentences for slow-release beads: when they let go, what the pot sees, how many."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.prill_dose import PrillDose
from saltline.prill_pot import PrillPot
from saltline.release import PrillRelease


def prill_release(inputs: Mapping[str, Any], answer: PrillRelease) -> tuple[str, str, str]:
    """Verdict, number, reason for `prill-release`."""
    day = inputs["day"]
    if day >= answer.end_day_high:
        verdict = "Mostly spent, but not empty."
    elif day >= answer.end_day_low:
        verdict = "Near the end of its life."
    else:
        verdict = "Still giving."
    number = "mostly spent after about {end_day_low..end_day_high}"
    reason = (
        "After {in:day}, {released_share_low..released_share_high} of the nitrogen is out, but "
        "only {potassium_share_low..potassium_share_high} of the potassium and "
        "{phosphorus_share_low..phosphorus_share_high} of the phosphorus. A tenth to a fifth of "
        "the nitrogen is still inside at the end: lift the mesh bag out before the rest, whatever "
        "the day."
    )
    return verdict, number, reason


def prill_pot(inputs: Mapping[str, Any], answer: PrillPot) -> tuple[str, str, str]:
    """Verdict, number, reason for `prill-pot`."""
    number = "{peak_n_ppm_low..peak_n_ppm_high} of nitrogen at the most"
    if answer.peak_day is None:
        verdict = "The roots keep up with these beads, if they all work."
        reason = "The plant takes the nitrogen as fast as it comes out."
    else:
        verdict = "Most in the water after about {peak_day}."
        reason = "The middle of the sum is {peak_n_ppm}."
    reason += (
        " 100 ppm of nitrogen adds about 0.66 to 0.74 mS/cm, and feed comes on top. Granules that "
        "dry out between waterings are not the mixed water of this sum: read the first drips."
    )
    if inputs["uptake_mg_month"] == 0:
        reason += " Nothing is taken up here: a plant without roots gets no beads at all."
    return verdict, number, reason


def prill_dose(inputs: Mapping[str, Any], answer: PrillDose) -> tuple[str, str, str]:
    """Verdict, number, reason for `prill-dose`."""
    if answer.dose_g_high == 0.0:
        if answer.limited_by == "no roots":
            reason = (
                "A plant without roots takes nothing up: all the salt would stay in the pot. Wait "
                "until new roots are about 7.6 cm long (published: 6.4 to 12.7 cm)."
            )
        else:
            reason = "There is no new growth to feed. Dose when it is there."
        return "No beads for this plant now.", "0 g", reason
    count = "" if answer.prills_high is None else ", {prills_high}"
    if answer.prills_high == 0:
        count = ", less than one bead"
    reasons = {
        "new growth": "The new growth needs no more than that.",
        "pot size": "A pot of this size gets no more than 20 mg of nitrogen a month per 0.9 L.",
        "salt": "More would raise the water by over 0.3 mS/cm while the roots take nothing.",
    }
    reason = reasons[answer.limited_by] + (
        " With all roots idle the water rises by {peak_rise_ms_cm_high}; 5 °C warmer and half as "
        "well drained, by up to {peak_rise_worse_ms_cm_high}."
    )
    if answer.prills_high:
        reason += (
            " Counted beads differ by {counted_error_percent_low..counted_error_percent_high} from "
            "pot to pot, scooped ones by {scooped_error_percent}."
        )
    return "At most this, and less is always allowed.", "{dose_g_high}" + count, reason
