"""Declarations: how to bring a pot down."""

from __future__ import annotations

from saltline import flush_plan
from saltline.declare import Choice, Form, Number, Option, Result
from saltline.forms.pot_inputs import (
    ASSUMED,
    AWAY,
    BINDING,
    GRAIN,
    KIND,
    LAYERS,
    LINE,
    LIVE_BEADS,
    MEDIUM,
    NO_POT,
    OWN_BASIN,
    POT,
    RINSE,
    SOFTENED,
    STAGE,
    WATER_HELD,
)
from saltline.pictures import flush as pictures
from saltline.words import pot as words

EXAMPLE = {
    "stage": "growing",
    "pot_ms_cm": 1.8,
    "rinse_ms_cm": 0.2,
    "pot_l": 1.0,
    "grain_mm": 8.0,
}

FLUSH_PLAN = Form(
    id="flush-plan",
    question="How do I bring this pot down?",
    function=flush_plan.flush_plan,
    version=1,
    inputs=(
        STAGE,
        KIND,
        Number(
            name="pot_ms_cm",
            label="First drips after standing covered overnight",
            unit="ms_cm",
            low=0,
            high=30,
            optional=True,
            hint="without them the plan is for a quarter of what is in there now",
        ),
        RINSE,
        Number(
            name="target_ms_cm",
            label="Stop when it reads",
            unit="ms_cm",
            low=0,
            high=20,
            optional=True,
            origin="Empty: a quarter of what is above your rinse water, or your feed if that is "
            "lower, and never nearer to the rinse water than 0.1 mS/cm (house rule, proposed). "
            "Half as much asks for about two pours more.",
            more=True,
        ),
        Number(
            name="feed_ms_cm",
            label="Your feed, ready to pour",
            unit="ms_cm",
            low=0,
            high=10,
            optional=True,
            origin="Empty: the target is a quarter of what is above your rinse water.",
            more=True,
        ),
        POT,
        WATER_HELD,
        GRAIN,
        LIVE_BEADS,
        Choice(
            name="way",
            label="How will you wash?",
            options=(
                Option(value="pours", label="Slow pours"),
                Option(value="soaks", label="Soaks, filled to the brim for 10 minutes"),
            ),
            default="pours",
            origin="Pours take less water and drown nothing; soaks reach every corner.",
        ),
        MEDIUM,
        SOFTENED,
    ),
    results=(
        Result(name="pours_low", label="Pours or soaks: at least", digits=1),
        Result(name="pours_high", label="at most", digits=1),
        Result(name="reached", label="Target reached by then", kind="words"),
        Result(name="each_ml", label="Water for each", unit="ml", digits=2),
        Result(name="water_l_low", label="Water in all: at least", unit="l", digits=2),
        Result(name="water_l_high", label="at most", unit="l", digits=2),
        Result(name="mornings_low", label="Mornings: at least", digits=1),
        Result(name="mornings_high", label="at most", digits=1),
        Result(
            name="left_share_low",
            label="Salt above the rinse water left then: at least",
            unit="share",
            digits=2,
        ),
        Result(name="left_share_high", label="at most", unit="share", digits=2),
        Result(name="at_least_l", label="If every drop mixed", unit="l", digits=2),
        Result(name="stop_ms_cm", label="Stop when it reads", unit="ms_cm"),
        Result(
            name="left_each_share_low",
            label="Left after each: at least",
            unit="share",
            digits=2,
            kind="list",
        ),
        Result(name="left_each_share_high", label="at most", unit="share", digits=2, kind="list"),
        Result(name="steps", label="Steps", kind="list"),
    ),
    words=words.flush_plan,
    picture=pictures.flush_plan,
    table=pictures.flush_plan_table,
    main="left_share_low",
    example=EXAMPLE,
    equation=(
        r"\frac{\partial c}{\partial t} = D_a \left( \frac{\partial^2 c}{\partial r^2} + "
        r"\frac{2}{r} \frac{\partial c}{\partial r} \right)",
        r"n V = n\, V_r \left( F^{1/n} - 1 \right)",
        r"F = \frac{C_0 - C_w}{C_\mathrm{stop} - C_w}",
    ),
    working=(
        "in each granule salt spreads to the film of water round it, and the film is washed",
        "C0 = {in:pot_ms_cm}, Cw = {in:rinse_ms_cm}, stop at {stop_ms_cm}",
        "n = {pours_low..pours_high}, salt left then {left_share_low..left_share_high}",
        "if every drop mixed, n V = {at_least_l}",
    ),
    assumptions=(
        *ASSUMED,
        "Each pour is as much as the drained pot keeps, over some 3 minutes; three a morning, an "
        "hour apart, a covered night between mornings, three mornings at most.",
        "A plant at rest that keeps its leaves gets one wash a morning.",
    ),
    cannot_see=(
        LINE,
        LAYERS,
        BINDING,
        "How your water runs: a pour may run past, or push the old water ahead of it.",
        NO_POT,
    ),
    cautions=(
        OWN_BASIN,
        AWAY,
        "Stop at once at any sour smell, in a cold spell, or when the nights fall below what the "
        "plant stands.",
    ),
    cases=tuple(
        EXAMPLE | {"grain_mm": grain, "way": way}
        for way in ("pours", "soaks")
        for grain in (4.0, 8.0, 16.0)
    ),
    sources=("saltline-notes", "bag-2024", "roberts-1987", "van-genuchten-wierenga-1976"),
)

FORMS = (FLUSH_PLAN,)
