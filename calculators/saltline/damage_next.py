"""Which sign to look for next."""

from __future__ import annotations

from saltline.damage_signs import EXCLUSIVE, SALT_CAUSES, SALT_TESTS, SIGNS

CONTEXT_MOST = 2  # what ticks about how it is kept may add to a cause, all together (proposed)
DEAREST = 9  # the cost of a sign that wounds the plant


def next_test(
    *,
    leaders: tuple[str, str],
    ahead: bool,
    signs: dict[str, str],
    counted: dict[str, str],
    passed: tuple[str, ...],
    dearest: int,
) -> str | None:
    """The test a salt cause lacks, else the one that parts the two leaders at the least cost.

    Equation:
        Worth of a sign = twice the difference of its weights for the two leaders, less its cost;
        among equals the cheaper one, then the first.
    Arguments:
        leaders: the two causes with the most points.
        ahead: whether the first has any points.
        signs: sign id -> yes, no or not_looked.
        counted: those that count, as damage_key.evidence returns them.
        passed: signs not to ask for, whatever they would tell.
        dearest: the highest cost that a sign may have.
    Returns:
        A sign id, or None where no sign left tells the leaders apart.
    Valid for:
        The weights of damage_signs.
    Error:
        None; a rule for what to look at first.
    Raises:
        Nothing.
    Sources:
        saltline-notes, growing 1, bench tests by cost.
    """
    if ahead and leaders[0] in SALT_CAUSES and not _seen(SALT_TESTS, counted):
        for name in SALT_TESTS:
            if signs.get(name, "not_looked") == "not_looked" and name not in passed:
                return name
    settled = [name for name, given in signs.items() if given != "not_looked"]
    for one, other in EXCLUSIVE:
        for seen, implied in ((one, other), (other, one)):
            if counted.get(seen) == "yes":
                settled.append(implied)
    known = [sign.line for sign in SIGNS if sign.where == "plant" and signs.get(sign.id) == "yes"]
    chosen, worth = None, (-9, 0)
    for sign in SIGNS:
        if sign.id in settled or sign.id in passed or sign.line in known or sign.cost > dearest:
            continue
        apart = 0
        for name, weight in sign.yes:
            if name == leaders[0]:
                apart += weight
            elif name == leaders[1]:
                apart -= weight
        apart = abs(apart)
        if sign.where == "context":
            apart = min(apart, CONTEXT_MOST)
        gain = (2 * apart - sign.cost, -sign.cost)
        if apart and gain > worth:
            chosen, worth = sign.id, gain
    return chosen


def _seen(names: tuple[str, ...], signs: dict[str, str]) -> bool:
    return any(signs.get(name) == "yes" for name in names)
