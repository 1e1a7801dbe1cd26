"""Declarations: washing by full mixing."""

from __future__ import annotations

from saltline import mixing
from saltline.declare import Form, Number, Result
from saltline.pictures import mixing as pictures
from saltline.words import mixing as words

FULL_MIXING = Form(
    id="full-mixing",
    question="What is the least water that could do it?",
    function=mixing.full_mixing,
    version=1,
    inputs=(
        Number(
            name="times_down",
            label="How many times weaker should the salt be?",
            unit="times",
            low=1,
            high=100,
            hint="4 leaves a quarter of the salt",
        ),
        Number(
            name="water_held_ml",
            label="Water the drained pot keeps",
            unit="ml",
            low=1,
            high=20000,
            hint="weigh a plant-free pot of the same granules, drained and dry",
        ),
        Number(
            name="rinses",
            label="Number of equal rinses",
            unit="",
            low=1,
            high=10,
            whole=True,
        ),
    ),
    results=(
        Result(name="water_ml", label="Water in all", unit="ml"),
        Result(name="trickle_ml", label="By an endless trickle", unit="ml"),
    ),
    words=words.full_mixing,
    picture=pictures.full_mixing,
    table=pictures.full_mixing_table,
    example={"times_down": 4.0, "water_held_ml": 200.0, "rinses": 3},
    assumptions=("All the water in the pot mixes with every rinse.",),
    cannot_see=("Salt inside the granules: it comes out over hours, not minutes.",),
    cases=tuple(
        {"times_down": times, "water_held_ml": 200.0, "rinses": rinses}
        for times in (2.0, 4.0, 10.0)
        for rinses in (1, 3)
    ),
    sources=("saltline-notes",),
)

FORMS = (FULL_MIXING,)
