"""Flush, repot or leave: the stage of the plant decides before the cause of the damage does."""

from __future__ import annotations

from typing import NamedTuple

from saltline.saying import figure
from saltline.stage_rules import (
    ACTIONS,
    COLUMNS,
    DO,
    DO_FOR,
    DRY_WITH_SHOOT,
    LOOK_AGAIN,
    NOT_NOW,
    ROOT_TRIGGER_CM,
    ROOT_TRIGGER_HIGH_CM,
    ROOT_TRIGGER_LOW_CM,
    WHY_CAUSE,
    WHY_STAGE,
)

# fmt: off
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)
# fmt: on
SOUTH_MONTHS = 6  # the southern year, counted from the northern one

# What a plant without roots in leaf needs first whatever took them, unless it is one of these.
LOST_ROOTS_FIRST = (("wet_rot", "look_inside"), ("mites", "treat"))
INFECTIONS = ("black_rot", "fusarium", "soft_rot")


class StageAction(NamedTuple):
    """The answer of `stage_action`: an action id and three sentences."""

    action: str
    why: str
    when: str
    not_now: str
    warnings: tuple[str, ...]


def _of(table: tuple[tuple[str, str], ...], key: str, otherwise: str = "") -> str:
    for name, text in table:
        if name == key:
            return text
    return otherwise


def _column(*, kind: str, stage: str) -> str:
    """The column of the tables that a kind and a stage belong to."""
    if stage not in ("resting", "new_shoot"):
        return stage
    return ("resting" if stage == "resting" else "shoot") + ("_bare" if kind == "deciduous" else "")


def action_for(*, kind: str, stage: str, cause: str) -> str:
    """The action for a cause at a stage.

    Equation:
        Infections are cut out at any stage; a rotting plant is looked into; lost roots are
        repotted; else the table of stage_rules.
    Arguments:
        kind, stage, cause: as in stage_action.
    Returns:
        look_inside, read, flush, repot, keep_dry, leave or treat.
    Valid for:
        Orchids in pots.
    Error:
        None; a judgement.
    Raises:
        KeyError: unknown cause.
    Sources:
        saltline-notes, growing 2; as in stage_action.
    """
    if cause in INFECTIONS:
        return "treat"
    if stage == "rotting":
        return "look_inside"
    if stage == "lost_roots":
        return _of(LOST_ROOTS_FIRST, cause, "repot")
    at = COLUMNS.index(_column(kind=kind, stage=stage))
    for name, actions in ACTIONS:
        if name == cause:
            return actions[at]
    raise KeyError(cause)


def what_to_do(*, stage: str, cause: str, action: str) -> str:
    """How an action is done for a cause at a stage.

    Equation:
        The sentence of stage_rules for cause and action, else for the action alone.
    Arguments:
        stage, cause: as in stage_action.
        action: as action_for returns.
    Returns:
        One or two sentences.
    Valid for:
        Orchids in pots.
    Error:
        None; a judgement.
    Raises:
        Nothing.
    Sources:
        saltline-notes, growing 1-3 and 5; aos-fertilizer-burn for lost roots.
    """
    text = _of(DO, action)
    for name, act, special in DO_FOR:
        if name == cause and act == action:
            text = special
    if stage == "new_shoot" and action == "keep_dry":
        text = DRY_WITH_SHOOT
    if stage == "lost_roots" and action == "repot":
        text += " Then shade, humid air, damp but not wet, and no feed until new roots show."
    return text


def _months(*, first: int, last: int, hemisphere: str) -> str:
    """Months (1 to 12 of the northern year) by name in the reader's hemisphere."""
    shift = SOUTH_MONTHS if hemisphere == "south" else 0
    names = [MONTHS[(month - 1 + shift) % 12] for month in (first, last)]
    return names[0] if first == last else f"{names[0]} to {names[1]}"


def _when(kind: str, stage: str, cause: str, action: str, hemisphere: str) -> str:
    bare = kind == "deciduous"
    if stage in ("lost_roots", "rotting") or action in ("look_inside", "treat"):
        return "Today."
    if stage == "maturing" and bare and (action != "leave" or cause == "rest"):
        leaves = _months(first=10, last=11, hemisphere=hemisphere)  # orchid-forum, thread 98768
        before = "As the" if action == "leave" else "Before the"
        return f"{before} leaves yellow and water is cut, about {leaves}."
    if action == "leave" and not (stage == "new_shoot" and bare):
        return _of(LOOK_AGAIN, cause, "Look again in two weeks.")
    if stage in ("growing", "maturing"):
        return "On the next warm morning, done by mid-afternoon."
    if stage == "resting":
        first, last = (3, 3) if bare else (5, 6)  # motes-south-florida
        named = _months(first=first, last=last, hemisphere=hemisphere)
        if bare:
            return f"Until the new shoot starts, whatever the date: about {named} in the warm."
        if kind == "monopodial":
            return f"On a warm day; repotting can wait until about {named}."
        return "On a warm day; repotting can wait until new root tips show."
    if bare:
        moment = "This is the moment to repot. " if action == "repot" else ""
        return (
            moment + "First water when the longest new roots reach about "
            f"{figure(ROOT_TRIGGER_CM)} cm (published figures run from "
            f"{figure(ROOT_TRIGGER_LOW_CM)} to {figure(ROOT_TRIGGER_HIGH_CM, 3)} cm)."
        )
    return "When new root tips show: some kinds root only after flowering."


def stage_action(*, kind: str, stage: str, cause: str, hemisphere: str) -> StageAction:
    """What to do with a damaged plant, from its kind, its stage and the cause.

    Equation:
        A table (stage_rules): rot and infections first, then the stage, then the cause.
    Arguments:
        kind: deciduous (drops all its leaves), evergreen, monopodial or unknown.
        stage: growing, maturing, resting, new_shoot, lost_roots or rotting.
        cause: a cause id of damage_signs, or unsure.
        hemisphere: north or south; months are six apart.
    Returns:
        StageAction: the action's id, why, when, and what not to do now.
    Valid for:
        Orchids in pots. The months are those of frost-free places; the sign on the plant decides.
    Error:
        Proposed from published stage rules: no trial of the table as a whole exists.
    Raises:
        KeyError: unknown cause.
    Sources:
        clarke-2012; aos-catasetum-sheet; aos-fertilizer-burn; mobot-repotting;
        motes-south-florida; palomar-monthly; saltline-notes, growing 2.
    """
    action = action_for(kind=kind, stage=stage, cause=cause)
    place = _column(kind=kind, stage=stage)
    warnings = []
    if kind == "unknown" and stage in ("resting", "new_shoot"):
        warnings.append("If it drops all its leaves to rest, say so: then it stays dry.")
    return StageAction(
        action=action,
        why=_of(WHY_STAGE, place) + " " + _of(WHY_CAUSE, cause),
        when=_when(kind, stage, cause, action, hemisphere),
        not_now=_of(NOT_NOW, place),
        warnings=tuple(warnings),
    )
