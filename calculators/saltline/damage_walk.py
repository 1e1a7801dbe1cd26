"""The damage key one question at a time: what to ask next, and what the answers speak for."""

from __future__ import annotations

from typing import NamedTuple

from saltline.damage_key import DamageKey, evidence, judge
from saltline.damage_next import next_test
from saltline.damage_signs import SIGNS
from saltline.stage_action import stage_action

DEAREST = 3  # a walk asks for nothing that wounds the plant
# A plant that rots is not left, flushed or kept dry unseen: smell and squeeze it first.
UNSEEN = ("leave", "flush", "keep_dry")
ROT_CHECKS = ("sour_smell", "soft_skin_slides")


class DamageWalk(NamedTuple):
    """The answer so far, the sign to ask for, and the signs that speak for and against it."""

    question: str | None
    check: str | None
    key: DamageKey
    leader: str | None
    speaks_for: tuple[tuple[str, str], ...]
    speaks_against: tuple[tuple[str, str], ...]
    not_now: str


def walk(*, stage: str, kind: str, signs: dict[str, str], passed: tuple[str, ...]) -> DamageWalk:
    """One step of the damage key.

    Equation:
        As in damage_key.judge and damage_next.next_test.
    Arguments:
        stage, kind, signs: as in damage_key.judge.
        passed: signs that were asked for and not looked for, or skipped.
    Returns:
        DamageWalk: the next sign or None; the sign of rot to ask for before this answer may stand,
        or None; the key's answer; the cause with the most points, if it has any, with the (sign
        id, answer) that add to it and that take from it; and what this stage forbids.
    Valid for:
        As in damage_key.judge.
    Error:
        As in damage_key.judge.
    Raises:
        Nothing within the declared answers.
    Sources:
        As in damage_key.judge.
    """
    answer = judge(stage=stage, kind=kind, signs=signs)
    ranked, counted = evidence(stage=stage, kind=kind, signs=signs)
    question = next_test(
        leaders=(ranked[0].cause, ranked[1].cause),
        ahead=ranked[0].points > 0,
        signs=signs,
        counted=counted,
        passed=passed,
        dearest=DEAREST,
    )
    unasked = [name for name in ROT_CHECKS if name not in passed and name not in counted]
    check = unasked[0] if unasked and answer.action in UNSEEN else None
    spoken: tuple[list[tuple[str, str]], list[tuple[str, str]]] = ([], [])
    for sign in SIGNS:
        given = counted.get(sign.id)
        if given is None or ranked[0].points <= 0:
            continue
        for name, weight in sign.yes if given == "yes" else sign.no:
            if name == ranked[0].cause:
                spoken[weight < 0].append((sign.id, given))
    stop = stage_action(kind=kind, stage=stage, cause=answer.fits_best, hemisphere="north")
    leader = ranked[0].cause if ranked[0].points > 0 else None
    reasons = [tuple(each) for each in spoken]
    return DamageWalk(question, check, answer, leader, reasons[0], reasons[1], stop.not_now)
