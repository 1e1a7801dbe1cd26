"""Sentences for the feed's strength."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.strength import EC_ERROR, FLAG_PERCENT, FeedCheck, FeedDose, LabelStrength


def label_strength(inputs: Mapping[str, Any], answer: LabelStrength) -> tuple[str, str, str]:
    """Verdict, number, reason for `label-strength`."""
    verdict = "This is what each litre of your mix holds."
    number = "Nitrogen {n_ppm}"
    others = []
    for oxide, text in (
        ("p2o5_percent", "phosphorus {p_ppm}"),
        ("k2o_percent", "potassium {k_ppm}"),
        ("cao_percent", "calcium {ca_ppm}"),
        ("mgo_percent", "magnesium {mg_ppm}"),
    ):
        if inputs[oxide] > 0.0:
            others.append(text)
    beside = "With it come " + ", ".join(others) + ", as elements. " if others else ""
    reason = beside + (
        "These ppm are milligrams in a litre, worked out from the label; the ppm on a pen are a "
        "guess from conductivity, and not the same."
    )
    return verdict, number, reason


def feed_dose(inputs: Mapping[str, Any], answer: FeedDose) -> tuple[str, str, str]:
    """Verdict, number, reason for `feed-dose`."""
    verdict = "Weigh it once; a spoon is only about right."
    number = "{dose_g} for {in:batch_l}"
    spoons = "By the spoon that is {teaspoons_low..teaspoons_high}, level. "
    if inputs["injector"] > 1.0:
        verdict = "Weigh the stock; the injector does the rest."
        number = "{stock_g_l} in the stock"
        spoons = "Your batch of {in:batch_l} takes {dose_g} in all. "
    reason = spoons + "In the finished feed it is {dose_g_l}, or {oz_per_100_us_gal}."
    return verdict, number, reason


def feed_check(inputs: Mapping[str, Any], answer: FeedCheck) -> tuple[str, str, str]:
    """Verdict, number, reason for `feed-check`."""
    number = "About {n_ppm} nitrogen, likely {n_ppm_low..n_ppm_high}"
    reason = "The pen sees salts, not nitrogen: this holds for this one product only."
    wide = answer.n_ppm_high - answer.n_ppm > 1.5 * EC_ERROR * answer.n_ppm
    if answer.off_percent is None:
        return "By the pen, your feed has about this much nitrogen.", number, reason
    if abs(answer.off_percent) <= FLAG_PERCENT and wide:
        verdict = "The feed adds too little to this water for a pen to tell."
    elif abs(answer.off_percent) <= FLAG_PERCENT:
        verdict = "Yes: pen and label agree as well as a pocket pen can tell."
    elif answer.off_percent > 0.0:
        verdict = "No: the pen reads more than the label promises. Find out why before you water."
    else:
        verdict = "No: the pen reads less than the label promises. Find out why before adding more."
    reason = (
        "By the label your pen should read {expected_ms_cm_low..expected_ms_cm_high}; it reads "
        "{in:feed_ms_cm}. " + reason
    )
    return verdict, number, reason
