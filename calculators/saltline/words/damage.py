"""Sentences for the damage key and for the action by stage."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.damage_key import DamageKey
from saltline.damage_signs import CAUSES, ROT_SIGNS, SIGNS
from saltline.stage_action import StageAction, what_to_do

ACTIONS = (
    ("look_inside", "Look inside first."),
    ("read", "Read the pot first."),
    ("flush", "Flush it."),
    ("repot", "Repot it."),
    ("keep_dry", "Keep it dry."),
    ("leave", "Leave it alone."),
    ("treat", "Mend the cause."),
)


def _cause(name: str) -> str:
    for known, text in CAUSES:
        if known == name:
            return text
    return name


def _first(text: str) -> str:
    return text[0].upper() + text[1:]


def damage_key(inputs: Mapping[str, Any], answer: DamageKey) -> tuple[str, str, str]:
    """Verdict, number (here: what to do), reason for `damage-key`."""
    also = [_cause(name) for name in answer.also_fits.split(",") if name]
    others = ", ".join(also)
    if answer.fits_best == "unsure":
        verdict = "Not to be told from these answers."
        if answer.action == "leave":
            verdict = "Little harm, and no cause stands out."
        reason = f"It may be: {others}." if also else "Nothing seen so far speaks for one cause."
    elif answer.fits_best == "none_of_these":
        verdict = "None of these causes fits."
        reason = "Nothing that was looked for was found."
    else:
        firm = "." if answer.firm == "yes" else ", but this is not firm yet."
        verdict = _first(_cause(answer.fits_best)) + " fits best" + firm
        reason = f"Also fits: {others}." if also else "Nothing else that was looked at comes near."
    if any(inputs[name] == "yes" for name in ROT_SIGNS):
        reason += " With a sign of rot it is neither left alone nor flushed."
    ask = "Still worth a look:" if answer.firm == "yes" else "Look next for:"
    for sign in SIGNS:
        if sign.id == answer.next_test:
            reason += f" {ask} {sign.label[0].lower()}{sign.label[1:]}."
    return verdict, answer.do, reason


def stage_action(inputs: Mapping[str, Any], answer: StageAction) -> tuple[str, str, str]:
    """Verdict, number (here: how and when), reason for `stage-action`."""
    verdict = ""
    for name, text in ACTIONS:
        if name == answer.action:
            verdict = text
    how = what_to_do(stage=inputs["stage"], cause=inputs["cause"], action=answer.action)
    if answer.when[:-1].lower() not in how.lower():  # what to do may say it already
        how += " " + answer.when
    return verdict, how, answer.why + " " + answer.not_now
