"""Declarations: what can be done for a pot today."""

from __future__ import annotations

from saltline import flush_today
from saltline.declare import Form, Number, Result
from saltline.forms.pot_inputs import (
    ASSUMED,
    AWAY,
    BINDING,
    GRAIN,
    KIND,
    LINE,
    LIVE_BEADS,
    MEDIUM,
    NO_POT,
    OWN_BASIN,
    POT,
    SOFTENED,
    STAGE,
)
from saltline.pictures import flush as pictures
from saltline.words import pot as words

EXAMPLE = {"stage": "growing", "grain_mm": 8.0, "pot_l": 1.0}

FLUSH_TODAY = Form(
    id="flush-today",
    question="What can I do for this pot today?",
    function=flush_today.flush_today,
    version=1,
    inputs=(
        STAGE,
        KIND,
        GRAIN,
        POT,
        LIVE_BEADS,
        Number(
            name="soaks_done",
            label="Soaks already done today",
            unit="",
            low=0,
            high=6,
            default=0,
            whole=True,
            origin="None. Each one done leaves one less for today.",
        ),
        Number(
            name="soak_min",
            label="Minutes of each soak",
            unit="min",
            low=1,
            high=60,
            default=10,
            source_high=30,
            hint="30 at most, an hour never",
            origin="Usual among growers (common practice). Twice as long leaves about a quarter "
            "less salt, and roots under water twice as long.",
            source="common-practice",
            more=True,
        ),
        Number(
            name="tap_ms_cm",
            label="Water you soak with",
            unit="ms_cm",
            low=0,
            high=5,
            optional=True,
            hint="no soak goes below it",
            origin="Empty: the answer is in shares above your tap. It does not move them.",
            more=True,
        ),
        MEDIUM,
        SOFTENED,
    ),
    results=(
        Result(name="soaks_today", label="Soaks today", digits=1),
        Result(name="each_ml", label="Water for each", unit="ml", digits=2),
        Result(name="rest_h", label="Drained rest between two", unit="h", digits=1),
        Result(
            name="left_share_low",
            label="Salt above your tap left then: at least",
            unit="share",
            digits=2,
        ),
        Result(name="left_share_high", label="at most", unit="share", digits=2),
        Result(
            name="left_each_share_low",
            label="Left after each: at least",
            unit="share",
            digits=2,
            kind="list",
        ),
        Result(name="left_each_share_high", label="at most", unit="share", digits=2, kind="list"),
        Result(name="next", label="Next", kind="words"),
        Result(name="steps", label="Steps", kind="list"),
    ),
    words=words.flush_today,
    picture=pictures.flush_today,
    table=pictures.flush_today_table,
    example=EXAMPLE,
    equation=(
        r"\frac{\partial c}{\partial t} = D_a \left( \frac{\partial^2 c}{\partial r^2} + "
        r"\frac{2}{r} \frac{\partial c}{\partial r} \right)",
        r"C_\mathrm{bath} = \frac{V_f\, C_f + V\, C_w}{V_f + V}",
    ),
    working=(
        "in each granule salt spreads to the water round it; Vf the film, V the soak, {each_ml}",
        "salt left after today’s soaks: {left_share_low..left_share_high}",
    ),
    assumptions=(
        *ASSUMED,
        "Filled to the brim, 30-50 % of the pot; soaks already done were an hour apart too.",
        "Three soaks a day, 30 minutes each at most, one on a warm day for a plant at rest: our "
        "estimate of what plants stand, no trial was found.",
    ),
    cannot_see=(LINE, BINDING, "Corners that no water reaches: turn and tilt the pot.", NO_POT),
    cautions=(OWN_BASIN, AWAY, "Water at 20-25 °C, air at 18 °C or more, crown and shoots dry."),
    cases=tuple(EXAMPLE | {"grain_mm": grain} for grain in (4.0, 8.0, 16.0))
    + ({"stage": "resting", "kind": "evergreen", "grain_mm": 8.0, "pot_l": 1.0},),
    sources=("saltline-notes", "bag-2024", "roberts-1987"),
)

FORMS = (FLUSH_TODAY,)
