"""Declarations: what did this to the roots, and what the plant's stage allows."""

from __future__ import annotations

from saltline import damage_key, stage_action
from saltline.asking import Next
from saltline.damage_signs import CAUSES, SIGNS, Sign
from saltline.declare import Choice, Form, Option, Result
from saltline.forms.choices import KINDS, STAGES
from saltline.pictures.signs import sketch
from saltline.words import damage as words
from saltline.words import damage_walk
from saltline.words.damage_how import HOW

STAGE = Choice(name="stage", label="What is the plant doing?", options=STAGES)
KIND = Choice(
    name="kind",
    label="Does it drop all its leaves?",
    options=KINDS,
    hint="If not: does it grow sideways, or straight up?",
)
CAUSE_LABELS = (*CAUSES, ("unsure", "not to be told yet"))
ACTION_LABELS = tuple((name, text.rstrip(".")) for name, text in words.ACTIONS)
ANSWERS = (
    Option(value="yes", label="Yes"),
    Option(value="no", label="No"),
    Option(value="not_looked", label="Not looked"),
)


def _asked(sign: Sign) -> Choice:
    """What can be seen and touched at the bench first; the rest is folded."""
    return Choice(
        name=sign.id,
        label=sign.label,
        options=ANSWERS,
        default="not_looked",
        hint=dict(HOW).get(sign.id, ""),
        origin=f"not looked, which is an answer of its own. Evidence: {sign.evidence}.",
        source=sign.source,
        more=sign.cost > 1 or sign.where in ("context", "weather"),
        sketch=sketch(sign.id),
    )


def _case(stage: str, kind: str, yes: str, no: str = "") -> dict[str, str]:
    signs = dict.fromkeys(yes.split(), "yes") | dict.fromkeys(no.split(), "no")
    return {"stage": stage, "kind": kind} | signs


SOUND = "tips_dead brown_inside_pot"

DAMAGE_KEY = Form(
    id="damage-key",
    question="What did this to the roots?",
    function=damage_key.damage_key,
    version=1,
    inputs=(STAGE, KIND, *(_asked(sign) for sign in SIGNS)),
    results=(
        Result(name="fits_best", label="Fits best", kind="words", labels=CAUSE_LABELS),
        Result(
            name="also_fits",
            label="Also fits",
            kind="words",
            labels=(*CAUSES, ("", "nothing else")),
        ),
        Result(
            name="firm", label="Firm?", kind="words", labels=(("yes", "yes"), ("no", "not yet"))
        ),
        Result(
            name="next_test",
            label="Look next for",
            kind="words",
            labels=tuple((sign.id, sign.label) for sign in SIGNS),
        ),
        Result(name="action", label="Action", kind="words", labels=ACTION_LABELS),
        Result(name="do", label="Do this", kind="words"),
    ),
    words=words.damage_key,
    step=damage_walk.step,
    example=_case("growing", "deciduous", "dark_band_above_medium live_prills few_roots", SOUND),
    example_label="An example: tick what you see on your own plant",
    follow=(
        Next(
            id="stage-action",
            page="care/stages/",
            label="When, why, and what not to do now",
            carry={"kind": "kind", "stage": "stage", "cause": "fits_best"},
        ),
    ),
    assumptions=(
        "The weights behind it are our estimate, so it says words and never a score.",
        "Firm means: two kinds of evidence, one of them on the plant, and an answer that stays "
        "when every weight is off by one.",
    ),
    cannot_see=(
        "Viruses, and two causes at once.",
        "The salt line through a reading: the drips come from below it.",
        "How often it is right: nobody has tried it blind on real plants yet.",
    ),
    cautions=(
        "A fresh or flamed blade for every plant: sap carries viruses.",
        "Vinegar never together with bleach.",
        "Water that ran through one pot does not go into another.",
    ),
    cases=(
        _case("growing", "evergreen", "dark_band_above_medium crust_dissolves"),
        _case("growing", "evergreen", "tips_dead many_pots_same_feed rested_drip_high"),
        _case("resting", "deciduous", "tips_dead many_pots_same_feed rested_drip_high"),
        _case("growing", "evergreen", "soft_skin_slides sour_smell"),
        _case("maturing", "deciduous", "oldest_leaves_yellow"),
        _case("growing", "evergreen", "hollow_papery shrivelled_dry"),
        _case("growing", "evergreen", "brown_inside_pot"),
        _case("growing", "evergreen", "", "few_roots rested_drip_high " + SOUND),
    ),
    sources=tuple(sorted({sign.source for sign in SIGNS})),
)

STAGE_ACTION = Form(
    id="stage-action",
    question="Flush, repot or leave?",
    function=stage_action.stage_action,
    version=1,
    inputs=(
        KIND,
        STAGE,
        Choice(
            name="cause",
            label="What did the damage?",
            options=(
                *(Option(value=name, label=text[0].upper() + text[1:]) for name, text in CAUSES),
                Option(value="unsure", label="I do not know"),
            ),
        ),
        Choice(
            name="hemisphere",
            label="Where do you grow?",
            options=(
                Option(value="north", label="North of the equator"),
                Option(value="south", label="South of the equator"),
            ),
            default="north",
            origin="Only the months change, by six.",
            more=True,
        ),
    ),
    results=(
        Result(name="action", label="Action", kind="words", labels=ACTION_LABELS),
        Result(name="why", label="Why", kind="words"),
        Result(name="when", label="When", kind="words"),
        Result(name="not_now", label="Not now", kind="words"),
    ),
    words=words.stage_action,
    example={"kind": "deciduous", "stage": "new_shoot", "cause": "salty_pot"},
    example_label="An example: tap what your own plant does",
    assumptions=(
        "The sign on the plant decides, the month is a reminder: months are those of frost-free "
        "places.",
        "Cause by stage is our table, built from published rules for each stage.",
    ),
    cannot_see=("Whether the roots are sound: look, or feel how firm the plant stands.",),
    cautions=("A fresh or flamed blade for every plant: sap carries viruses.",),
    cases=tuple(
        {"kind": kind, "stage": stage, "cause": "salty_pot"}
        for kind, stage in (
            ("deciduous", "growing"),
            ("deciduous", "maturing"),
            ("deciduous", "resting"),
            ("evergreen", "resting"),
            ("evergreen", "new_shoot"),
            ("monopodial", "lost_roots"),
            ("unknown", "rotting"),
        )
    ),
    sources=(
        "clarke-2012",
        "aos-catasetum-sheet",
        "aos-fertilizer-burn",
        "mobot-repotting",
        "motes-south-florida",
        "orchid-forum",
        "palomar-monthly",
        "saltline-notes",
    ),
)

FORMS = (DAMAGE_KEY, STAGE_ACTION)
