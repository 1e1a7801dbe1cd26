"""Declarations: from a reading to the water inside the pot."""

from __future__ import annotations

from saltline import pore_water
from saltline.asking import Next
from saltline.declare import Choice, Form, Number, Option, Result
from saltline.forms.pot_inputs import (
    ASSUMED,
    BINDING,
    GRAIN,
    LAYERS,
    LINE,
    NO_POT,
    POT,
    RINSE,
    WATER_HELD,
)
from saltline.pictures import pot as pictures
from saltline.words import pot as words

EXAMPLE = {
    "method": "soak",
    "reading_ms_cm": 0.5,
    "rinse_ms_cm": 0.2,
    "pot_l": 1.0,
    "grain_mm": 8.0,
}

PORE_WATER = Form(
    id="pore-water",
    question="What is inside the pot?",
    function=pore_water.pore_water,
    version=1,
    inputs=(
        Choice(
            name="method",
            label="What did you read?",
            options=(
                Option(value="rested_drip", label="First drips after standing covered"),
                Option(value="soak", label="The water of a soak"),
                Option(value="pour_through", label="What ran out of a small pour (pour-through)"),
            ),
        ),
        Number(
            name="reading_ms_cm",
            label="What the pen shows in it",
            unit="ms_cm",
            low=0,
            high=20,
        ),
        RINSE,
        POT,
        WATER_HELD,
        Number(
            name="soak_ml",
            label="Water of the soak",
            unit="ml",
            low=10,
            high=50000,
            optional=True,
            hint="all that you poured in",
            origin="Empty: filled to the brim, 30-50 % of the pot (our estimate). A quarter more "
            "water means a pot a quarter saltier for the same reading.",
            source="saltline-notes",
            more=True,
        ),
        Number(
            name="soak_min",
            label="Minutes in the soak",
            unit="min",
            low=1,
            high=240,
            default=10,
            origin="Usual among growers (common practice). Half as long makes the answer a tenth "
            "higher.",
            source="common-practice",
            more=True,
        ),
        GRAIN,
        Number(
            name="rested_h",
            label="Hours it stood covered",
            unit="h",
            low=0,
            high=72,
            default=12,
            hint="drained and covered, before the drips were read",
            origin="A night. 4 hours do for granules up to 8 mm; at 16 mm they read some 5 % low.",
            source="saltline-notes",
            more=True,
        ),
    ),
    results=(
        Result(name="pot_ms_cm", label="Water inside the pot", unit="ms_cm", digits=2),
        Result(name="pot_ms_cm_low", label="at least", unit="ms_cm", digits=2),
        Result(name="pot_ms_cm_high", label="at most", unit="ms_cm", digits=2),
        Result(name="answer", label="Answer", kind="words"),
    ),
    words=words.pore_water,
    picture=pictures.pore_water,
    example=EXAMPLE,
    equation=(r"C_\mathrm{pot} = C_w + \frac{C_\mathrm{read} - C_w}{s}",),
    working=(
        "Cw = {in:rinse_ms_cm}, read {in:reading_ms_cm}; s, what such a reading shows of the "
        "pot, from the model",
        "C in the pot = {pot_ms_cm_low..pot_ms_cm_high}, middle {pot_ms_cm}",
    ),
    follow=(
        Next(
            id="flush-plan",
            page="care/flush-maths/",
            label="Plan the flush with this",
            carry={
                "pot_ms_cm": "pot_ms_cm",
                "rinse_ms_cm": "rinse_ms_cm",
                "pot_l": "pot_l",
                "water_held_ml": "water_held_ml",
                "grain_mm": "grain_mm",
            },
        ),
    ),
    assumptions=(
        *ASSUMED,
        "Before a soak the pot had stood some hours since it was last watered.",
        "A drip is good to 6 %, a bath to 2 % and 0.008 mS/cm (our estimate).",
    ),
    cannot_see=(LINE, LAYERS, BINDING, "Water lost to the air while it stood: cover it.", NO_POT),
    cases=tuple(
        EXAMPLE | {"method": method, "grain_mm": grain}
        for method in ("soak", "rested_drip")
        for grain in (4.0, 8.0, 16.0)
    ),
    sources=("saltline-notes", "altland-2021", "altland-owen-2024", "roberts-1987"),
)

FORMS = (PORE_WATER,)
