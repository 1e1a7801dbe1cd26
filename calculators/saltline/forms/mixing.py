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
    equation=(
        r"n V = n\, V_r \left( F^{1/n} - 1 \right)",
        r"V_\infty = V_r \ln F",
    ),
    working=(
        "n = {in:rinses} rinses, Vr = {in:water_held_ml} held, salt {in:times_down} down (F)",
        "n V = {water_ml}; endless trickle V∞ = {trickle_ml}",
    ),
    assumptions=("All the water in the pot mixes with every rinse.",),
    cannot_see=("Salt inside the granules: it comes out over hours, not minutes.",),
    cases=tuple(
        {"times_down": times, "water_held_ml": 200.0, "rinses": rinses}
        for times in (2.0, 4.0, 10.0)
        for rinses in (1, 3)
    ),
    sources=("saltline-notes",),
)

RINSE_ORDER = Form(
    id="rinse-order",
    question="Which water comes last?",
    function=mixing.rinse_order,
    version=1,
    inputs=(
        Number(
            name="start_ms_cm",
            label="First drips after standing covered overnight",
            unit="ms_cm",
            low=0,
            high=30,
        ),
        Number(name="tap_ms_cm", label="The plentiful water (tap)", unit="ms_cm", low=0, high=5),
        Number(
            name="pure_ms_cm",
            label="The pure water (rain or RO)",
            unit="ms_cm",
            low=0,
            high=5,
            default=0.02,
            origin="Usual for rain and reverse osmosis (common practice); read yours. It is nearly "
            "what the pot ends at.",
            source="common-practice",
        ),
        Number(
            name="rinses",
            label="Rinses in all",
            unit="",
            low=1,
            high=9,
            default=3,
            whole=True,
            origin="A morning of three.",
        ),
        Number(
            name="pure_rinses",
            label="Rinses that the pure water is enough for",
            unit="",
            low=0,
            high=9,
            default=1,
            whole=True,
            origin="One: it does most of the good as the last.",
        ),
        Number(name="rinse_ml", label="Water of each rinse", unit="ml", low=1, high=50000),
        Number(
            name="water_held_ml",
            label="Water the drained pot keeps",
            unit="ml",
            low=1,
            high=20000,
            hint="weigh a plant-free pot of the same granules, drained and dry",
        ),
    ),
    results=(
        Result(name="pure_last_ms_cm", label="Pure water last", unit="ms_cm", digits=2),
        Result(name="pure_first_ms_cm", label="Pure water first", unit="ms_cm", digits=2),
        Result(name="all_tap_ms_cm", label="Tap alone", unit="ms_cm", digits=2),
        Result(name="all_pure_ms_cm", label="Pure water alone", unit="ms_cm", digits=2),
    ),
    words=words.rinse_order,
    picture=pictures.rinse_order,
    example={"start_ms_cm": 2.0, "tap_ms_cm": 0.3, "rinse_ml": 300.0, "water_held_ml": 150.0},
    equation=(r"C_\mathrm{after} = \frac{V_r\, C + V\, C_w}{V_r + V}",),
    working=(
        "C = {in:start_ms_cm}, Vr = {in:water_held_ml} held, V = {in:rinse_ml} each, "
        "{in:rinses} rinses",
        "Cw = {in:tap_ms_cm} first and {in:pure_ms_cm} last: {pure_last_ms_cm}; the other way "
        "round: {pure_first_ms_cm}",
    ),
    assumptions=("All the water in the pot mixes with every rinse: the best that could happen.",),
    cannot_see=(
        "Salt inside the granules: it comes out over hours, not minutes.",
        "What pure water does not bring: feed weakly the next time, with calcium in it.",
    ),
    cases=tuple(
        {
            "start_ms_cm": 2.0,
            "tap_ms_cm": tap,
            "pure_ms_cm": 0.03,
            "rinse_ml": 300.0,
            "water_held_ml": 150.0,
        }
        for tap in (0.1, 0.3, 0.6)
    ),
    sources=("saltline-notes", "common-practice"),
)

FORMS = (FULL_MIXING, RINSE_ORDER)
