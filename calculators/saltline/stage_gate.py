"""Which stages of growth may be flushed at all. Every refusal says what to do instead."""

from __future__ import annotations

from saltline.errors import Refused

ROTTING = (
    "A rotting plant is not flushed: water in the pot feeds the rot.",
    "Look inside first. Take the plant out, cut away all that is soft or sour down to sound "
    "tissue, let the cuts dry, and pot it in fresh, barely damp granules.",
)
LOST_ROOTS = (
    "Its roots are gone, so there is nothing in the pot that a flush could save.",
    "Take it out of the old granules, rinse what is left of the roots, pot it in fresh granules, "
    "and keep it shaded in humid air without feed until new roots show. Do not dry it out.",
)
RESTING = (
    "A plant that drops its leaves and rests stays dry: it cannot use the water, and wet granules "
    "rot it.",
    "Keep it dry. When the next shoot shows, repot it dry into fresh granules and throw the old "
    "ones away.",
)
SHOOT_DECIDUOUS = (
    "The new shoot has no roots of its own yet, and water round it rots it.",
    "Keep it dry until its longest roots reach about 7.6 cm (published: 6.4 to 12.7 cm). This is "
    "the moment to repot it dry into fresh granules.",
)
SHOOT_EVERGREEN = (
    "The new shoot has no roots of its own yet, and a flush now would stand round it.",
    "Repot it now into fresh granules, just as its roots start, or wait until they are a few "
    "centimetres long and flush then. Keep water off the shoot.",
)
SOFTENED = (
    "Softened water carries sodium where the lime was, and sodium harms roots.",
    "Use rain water, reverse-osmosis water, or a tap that comes before the softener.",
)

BARK = (
    "Bark and zeolite bind salt and give it back, so their readings fit no simple pot.",
    "Go by the first drips after standing covered: flush until they are low enough, and read them "
    "again two weeks later.",
)
BELOW_SHARE = 0.1  # two readings of one pocket pen: proposed
BELOW = (
    "It reads well below the water you used, and no pot takes that much salt out of its water: one "
    "of the two readings is wrong.",
    "Rinse the pen, let both waters stand until they are equally warm, and read both again on the "
    "same scale. If it stays so, make sure which water went into the pot; bark, zeolite and new "
    "granules can bind salt.",
)


def gentle(*, stage: str, kind: str) -> bool:
    """Whether the flush must be a gentle one; raises Refused where there must be none.

    Equation:
        Rules by stage, then by kind (docs/sources.json: saltline-notes, flush review 3; proposed).
    Arguments:
        stage: growing, maturing, resting, new_shoot, lost_roots or rotting.
        kind: deciduous, evergreen, monopodial or unknown.
    Returns:
        True for a resting plant that keeps its leaves, or may: one wetting on a warm day. A salty
        pot left to dry gets saltier.
    Valid for:
        Orchids in airy granules.
    Error:
        None; a judgement.
    Raises:
        Refused: rotting, roots lost, a new shoot without roots, a deciduous plant at rest.
    Sources:
        saltline-notes.
    """
    if stage == "rotting":
        raise Refused(*ROTTING)
    if stage == "lost_roots":
        raise Refused(*LOST_ROOTS)
    if stage == "new_shoot":
        raise Refused(
            *(SHOOT_EVERGREEN if kind in ("evergreen", "monopodial") else SHOOT_DECIDUOUS)
        )
    if stage == "resting" and kind == "deciduous":
        raise Refused(*RESTING)
    return stage == "resting"


def refuse_softened(*, softened: str) -> None:
    """Softened water is no rinse water.

    Equation:
        None.
    Arguments:
        softened: yes or no.
    Returns:
        Nothing.
    Valid for:
        Softeners that trade lime for sodium.
    Error:
        None.
    Raises:
        Refused: yes.
    Sources:
        saltline-notes.
    """
    if softened == "yes":
        raise Refused(*SOFTENED)


def refuse_bark(*, medium: str) -> None:
    """Bark and zeolite bind salt, so no simple pot can be fitted to their readings.

    Equation:
        None.
    Arguments:
        medium: granules or bark.
    Returns:
        Nothing.
    Valid for:
        Bark, zeolite and mixes with them.
    Error:
        None.
    Raises:
        Refused: bark.
    Sources:
        saltline-notes, flush review 3.
    """
    if medium == "bark":
        raise Refused(*BARK)


def refuse_unread(*, rinse: float | None) -> float:
    """The reading of the rinse water, without which there is no answer.

    Equation:
        None.
    Arguments:
        rinse: the reading, any scale, or None.
    Returns:
        The reading.
    Valid for:
        Every question about what is left in a pot.
    Error:
        None.
    Raises:
        Refused: None.
    Sources:
        saltline-notes, flush review 3.
    """
    if rinse is None:
        raise Refused(
            "Without a reading of the water you flush with, nothing can be said: no flush goes "
            "below it.",
            "Read that water with the same pen and put the reading in.",
        )
    return rinse


def refuse_below(*, reading: float, rinse: float, slack: float) -> list[str]:
    """A pot gives salt to the water that runs through it: a reading well below is a wrong one.

    Equation:
        Refused where reading < rinse - max(0.1 rinse, slack).
    Arguments:
        reading: of soak or drip water, any scale.
        rinse: of the water that was used, same pen and scale.
        slack: what else two readings may differ by, same scale.
    Returns:
        Sentences: one where the reading is a little below.
    Valid for:
        Granules that do not bind salt.
    Error:
        Two readings by one pocket pen differ by up to a tenth (proposed).
    Raises:
        Refused: further below.
    Sources:
        saltline-notes.
    """
    if reading < rinse - max(BELOW_SHARE * rinse, slack):
        raise Refused(*BELOW)
    if reading < rinse:
        return ["It reads a little below the water you used: for a pen they are the same."]
    return []


def medium_warnings(*, medium: str, live_prills: str) -> list[str]:
    """What makes a flush slower than the model thinks.

    Equation:
        None.
    Arguments:
        medium: granules or bark.
        live_prills: yes or no.
    Returns:
        Sentences.
    Valid for:
        Any pot.
    Error:
        None; a judgement.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 3.
    """
    warnings = []
    if medium == "bark":
        warnings.append(
            "Bark and zeolite bind salt and give it back slowly: expect more of it to stay than "
            "this says."
        )
    if live_prills == "yes":
        warnings.append(
            "Live slow-release beads go on giving salt, more so in a warm bath: what is left "
            "includes theirs."
        )
    return warnings
