"""Sentences for washing by full mixing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.mixing import FullMixing, RinseOrder
from saltline.words.meter import LAST_DIGIT_MS_CM, UNDER


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


def rinse_order(inputs: Mapping[str, Any], answer: RinseOrder) -> tuple[str, str, str]:
    """Verdict, number, reason for `rinse-order`."""
    if answer.pure_last_ms_cm <= answer.pure_first_ms_cm:
        verdict = "Plentiful water first, the purest last."
    else:
        verdict = "Here the tap is the purer water: let it come last."
    last = _read("pure_last_ms_cm", answer.pure_last_ms_cm)
    first = _read("pure_first_ms_cm", answer.pure_first_ms_cm)
    tap = _read("all_tap_ms_cm", answer.all_tap_ms_cm)
    pure = _read("all_pure_ms_cm", answer.all_pure_ms_cm)
    reason = (
        f"The last rinse stays in the pot. All tap would end at {tap}, all pure water at {pure}: "
        "the best that full mixing could do, and granules do worse."
    )
    return verdict, f"{last} with the pure water last, {first} with it first", reason


def _read(name: str, value: float) -> str:
    return "{" + name + "}" if value >= LAST_DIGIT_MS_CM else UNDER
