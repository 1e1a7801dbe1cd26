"""What did this to the roots? Evidence added up, and said only as far as it carries."""

from __future__ import annotations

from typing import NamedTuple

from saltline.damage_next import CONTEXT_MOST, DEAREST, next_test
from saltline.damage_signs import (
    CAUSES,
    EXCLUSIVE,
    ROT_CAUSES,
    ROT_SIGNS,
    SALT_CAUSES,
    SALT_TESTS,
    SIGNS,
)
from saltline.stage_action import action_for, what_to_do
from saltline.stage_rules import READ_AGAIN

# All proposed (unpublished).
FITS = 3  # points of the best cause, below which nothing fits
FIRM = 4
LEAD = 2  # points ahead of the next cause
LINE = 2  # points of a sign, below which it is no line of evidence by itself
LOOKED_FOR = 8  # signs looked for in vain before "none of these" is an answer
ALSO_MOST = 3  # causes named beside the best

RIVALS = (
    "A dark ring can also be an old water line, a stain, naturally dark skin, drying or lack of "
    "air; a good reading of the pot does not clear the ring."
)
# Little harm: a well-rooted plant with these alone and a moderate reading is left in peace.
HARMLESS = (
    "dark_band_above_medium",
    "old_roots_only",
    "firm_dark",
    "roots_branch_behind_tip",
    "air_roots_dry_back",
    "leaf_tips_dry",
)


class DamageKey(NamedTuple):
    """The answer of `damage_key`: ids, yes or no, and a sentence."""

    fits_best: str
    also_fits: str
    firm: str
    next_test: str | None
    action: str
    do: str
    warnings: tuple[str, ...]


class Case(NamedTuple):
    """One cause's evidence: points, also if every weight is off by one, and what carries them."""

    cause: str
    points: int
    least: int
    most: int
    lines: int
    lines_most: int
    on_plant: int  # weight of the strongest sign on the plant


def _counted(signs: dict[str, str]) -> dict[str, str]:
    """The yes and no answers, without pairs that contradict each other."""
    counted = {name: given for name, given in signs.items() if given != "not_looked"}
    for pair in EXCLUSIVE:
        if all(counted.get(name) == "yes" for name in pair):
            for name in pair:
                del counted[name]
    return counted


def _cases(counted: dict[str, str], seasonal: bool) -> list[Case]:
    """Every cause's evidence, the best first; equal points keep the order of the causes."""
    names = [name for name, _ in CAUSES[:-1]]
    points = {name: [0, 0, 0] for name in names}  # as they are, at least, at most
    context = {name: [0, 0, 0] for name in names}
    lines: dict[str, list[str]] = {name: [] for name in names}
    weak: dict[str, list[str]] = {name: [] for name in names}
    on_plant = dict.fromkeys(names, 0)
    for sign in SIGNS:
        given = counted.get(sign.id)
        if given is None:
            continue
        for name, weight in sign.yes if given == "yes" else sign.no:
            if name == "rest" and not seasonal:
                continue
            into = (context if sign.where == "context" else points)[name]
            for at, off in enumerate((0, -1, 1)):
                into[at] += weight + off
            if given == "yes" and weight > 0:
                (lines if weight >= LINE else weak)[name].append(sign.line)
                if sign.where == "plant":
                    on_plant[name] = max(on_plant[name], weight)
    found = []
    for order, name in enumerate(names):
        now, least, most = [
            points[name][at] + min(context[name][at], CONTEXT_MOST) for at in range(3)
        ]
        strong = len(set(lines[name]))
        either = len(set(lines[name] + weak[name]))
        found.append((-now, order, Case(name, now, least, most, strong, either, on_plant[name])))
    return [case for _, _, case in sorted(found)]


def evidence(*, stage: str, kind: str, signs: dict[str, str]) -> tuple[list[Case], dict[str, str]]:
    """Every cause with its points, the best first, and the answers that count.

    Equation:
        As in judge.
    Arguments:
        stage, kind, signs: as in judge.
    Returns:
        The cases in order, and sign id -> yes or no without pairs that contradict each other.
    Valid for:
        As in judge.
    Error:
        As in judge.
    Raises:
        Nothing within the declared answers.
    Sources:
        As in judge.
    """
    counted = _counted(signs)
    seasonal = stage in ("maturing", "resting") and kind in ("deciduous", "unknown")
    return _cases(counted, seasonal), counted


def _is_firm(ranked: list[Case], signs: dict[str, str], counted: dict[str, str]) -> bool:
    """Two lines, one on the plant, a test for salt, and a lead that no weight off by one undoes."""
    best = ranked[0]
    if best.points < FIRM or best.points - ranked[1].points < LEAD:
        return False
    if best.lines < 2 or best.on_plant < LINE:
        return False
    if best.cause in SALT_CAUSES and not _any(SALT_TESTS, counted):
        return False
    if best.cause not in ROT_CAUSES and _any(ROT_SIGNS, signs):
        return False
    rivals = [other for other in ranked[1:] if other.lines_most > 1 and other.on_plant > 0]
    return all(best.least > other.most for other in rivals)


def _any(names: tuple[str, ...], signs: dict[str, str]) -> bool:
    return any(signs.get(name) == "yes" for name in names)


def _fits(ranked: list[Case], counted: dict[str, str]) -> str:
    best = ranked[0]
    if best.points >= FITS and best.points - ranked[1].points >= LEAD and best.on_plant > 0:
        return best.cause
    if best.points <= 0 and len(counted) >= LOOKED_FOR:
        return "none_of_these"
    return "unsure"


def _left_in_peace(stage: str, signs: dict[str, str]) -> bool:
    """Well rooted, first drips read and moderate, growing, and little harm on the plant."""
    if stage not in ("growing", "maturing") or signs.get("few_roots") != "no":
        return False
    moderate = signs.get("rested_drip_high") == "no" or signs.get("rested_drip_low") == "yes"
    harmed = any(
        signs.get(sign.id) == "yes"
        for sign in SIGNS
        if sign.where == "plant" and sign.id not in HARMLESS
    )
    return moderate and not harmed and signs.get("rested_drip_high") != "yes"


def _action(
    kind: str, stage: str, fits: str, firm: bool, ranked: list[Case], signs: dict[str, str]
) -> str:
    """Rot first, then what a firm answer asks for; without one, no flush before a test for salt."""
    usual = action_for(kind=kind, stage=stage, cause=fits)
    if _any(ROT_SIGNS, signs):
        return usual if firm and usual not in ("leave", "flush") else "look_inside"
    if firm:
        return usual
    if _left_in_peace(stage, signs):
        return "leave"
    if fits == "unsure" and ranked[1].points > 0:
        asked = [action_for(kind=kind, stage=stage, cause=case.cause) for case in ranked[:2]]
        if asked == ["leave", "leave"]:
            return "leave"
    return "read" if usual == "flush" and not _any(SALT_TESTS, _counted(signs)) else usual


def judge(*, stage: str, kind: str, signs: dict[str, str]) -> DamageKey:
    """Which cause fits the signs best, what else fits, what to look at next, and what to do.

    Equation:
        Points of a cause = sum of the weights of the answers, with context ticks adding at most 2.
        It fits with 3 points, one sign on the plant and 2 points ahead; it is firm with 4, from two
        lines of evidence, and if no cause that could itself be firm catches up when every weight
        is off by one against it. Salt causes need a dissolving crust or a high rested reading.
        Rot signs forbid leaving and flushing, and any firm answer but a rot.
    Arguments:
        stage, kind: as in stage_action.
        signs: sign id of damage_signs -> yes, no or not_looked; what is missing was not looked at.
    Returns:
        DamageKey: cause ids, yes or no, a sign id or None, an action id and how to do it.
    Valid for:
        Orchids in pots. Points are never shown: weights are proposed.
    Error:
        Unknown: no blind trial with real plants exists. Tests say what it must never do.
    Raises:
        Nothing within the declared answers.
    Sources:
        damage_signs, each sign its own; saltline-notes, growing 1 and its corrections.
    """
    ranked, counted = evidence(stage=stage, kind=kind, signs=signs)
    firm = _is_firm(ranked, signs, counted)
    fits = _fits(ranked, counted)
    action = _action(kind, stage, fits, firm, ranked, signs)
    least = 1 if fits == "unsure" else 2
    also = [case.cause for case in ranked if case.points >= least and case.cause != fits]
    read = counted.get("rested_drip_high") or counted.get("rested_drip_low")
    warnings = []
    if signs.get("dark_band_above_medium") == "yes":
        warnings.append(RIVALS)
    if any(all(signs.get(name) == "yes" for name in pair) for pair in EXCLUSIVE):
        warnings.append("Two of your answers contradict each other: neither was counted.")
    return DamageKey(
        fits_best=fits,
        also_fits=",".join(also[:ALSO_MOST]),
        firm="yes" if firm else "no",
        next_test=next_test(
            leaders=(ranked[0].cause, ranked[1].cause),
            ahead=ranked[0].points > 0,
            signs=signs,
            counted=counted,
            passed=(),
            dearest=DEAREST,
        ),
        action=action,
        do=READ_AGAIN
        if action == "read" and read
        else what_to_do(stage=stage, cause=fits, action=action),
        warnings=tuple(warnings),
    )


# fmt: off
def damage_key(
    *, stage: str, kind: str,
    dark_band_above_medium: str, tips_dead: str, brown_inside_pot: str, worst_at_bottom: str,
    air_roots_dry_back: str, soft_skin_slides: str, hollow_papery: str, firm_dark: str,
    sour_smell: str, crust_dissolves: str, crust_fizzes: str, rested_drip_high: str,
    rested_drip_low: str, many_pots_same_feed: str, one_pot_only: str, cold_night: str,
    sunk_pits: str, hot_day: str, tips_bitten: str, purple_ring: str, black_spreading: str,
    leaf_tips_dry: str, oldest_leaves_yellow: str, shrivelled_wet: str, shrivelled_dry: str,
    repotted_lately: str, fed_from_below: str, live_prills: str, few_roots: str,
    softened_water: str, unfed_and_flushed: str, roots_branch_behind_tip: str,
    stippled_leaves: str, webbing: str, soft_leaf_spots: str, old_roots_only: str,
) -> DamageKey:
    """The damage key with every sign by its name: see `judge`.

    Equation:
        As in judge.
    Arguments:
        stage, kind: as in stage_action.
        the signs: yes, no or not_looked each.
    Returns:
        DamageKey.
    Valid for:
        As in judge.
    Error:
        As in judge.
    Raises:
        Nothing within the declared answers.
    Sources:
        As in judge.
    """
    return judge(stage=stage, kind=kind, signs={
        "dark_band_above_medium": dark_band_above_medium, "tips_dead": tips_dead,
        "brown_inside_pot": brown_inside_pot, "worst_at_bottom": worst_at_bottom,
        "air_roots_dry_back": air_roots_dry_back, "soft_skin_slides": soft_skin_slides,
        "hollow_papery": hollow_papery, "firm_dark": firm_dark, "sour_smell": sour_smell,
        "crust_dissolves": crust_dissolves, "crust_fizzes": crust_fizzes,
        "rested_drip_high": rested_drip_high, "rested_drip_low": rested_drip_low,
        "many_pots_same_feed": many_pots_same_feed, "one_pot_only": one_pot_only,
        "cold_night": cold_night, "sunk_pits": sunk_pits, "hot_day": hot_day,
        "tips_bitten": tips_bitten, "purple_ring": purple_ring,
        "black_spreading": black_spreading, "leaf_tips_dry": leaf_tips_dry,
        "oldest_leaves_yellow": oldest_leaves_yellow, "shrivelled_wet": shrivelled_wet,
        "shrivelled_dry": shrivelled_dry, "repotted_lately": repotted_lately,
        "fed_from_below": fed_from_below, "live_prills": live_prills, "few_roots": few_roots,
        "softened_water": softened_water, "unfed_and_flushed": unfed_and_flushed,
        "roots_branch_behind_tip": roots_branch_behind_tip, "stippled_leaves": stippled_leaves,
        "webbing": webbing, "soft_leaf_spots": soft_leaf_spots, "old_roots_only": old_roots_only,
    })
# fmt: on
