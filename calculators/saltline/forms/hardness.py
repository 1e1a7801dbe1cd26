"""Declarations: the hardness of water."""

from __future__ import annotations

from saltline import hardness
from saltline.declare import UNITS, Choice, Form, Number, Option, Result
from saltline.pictures import water as pictures
from saltline.words import hardness as words

SCALES = ("mg_l_caco3", "meq_l", "mmol_l", "german", "french", "clark", "grain_us_gal")
LABELS = (
    "As calcium carbonate",
    "In charges",
    "In moles",
    "German degrees",
    "French degrees",
    "Clark (English) degrees",
    "Grains per US gallon",
)

HARDNESS = Form(
    id="hardness",
    question="What is my water's hardness?",
    function=hardness.hardness,
    version=1,
    inputs=(
        Number(
            name="value",
            label="Hardness",
            unit="",
            unit_from="unit",
            low=0,
            high=10000,
            hint="from the water supplier's sheet or a test kit",
        ),
        Choice(
            name="unit",
            label="Unit of the hardness",
            options=tuple(Option(value=scale, label=UNITS[scale][0]) for scale in SCALES),
            hint="“ppm” on a test kit is mg/L CaCO₃",
        ),
    ),
    results=tuple(
        Result(name=scale, label=label, unit=scale)
        for scale, label in zip(SCALES, LABELS, strict=True)
    ),
    words=words.hardness,
    picture=pictures.hardness,
    example={"value": 14.0, "unit": "german"},
    equation=(
        r"c = h\, u",
        r"u_\mathrm{meq/L} = \frac{100.087}{2}",
        r"u_\mathrm{dH} = \frac{10 \cdot 100.087}{56.077}",
    ),
    working=(
        "h = {in:value}, u = mg/L of CaCO₃ in one unit: c = {mg_l_caco3}",
        "{mg_l_caco3} ÷ 50.04 = {meq_l}; ÷ 17.85 = {german}; ÷ 10 = {french}",
        "{mg_l_caco3} ÷ 14.25 = {clark}; ÷ 17.12 = {grain_us_gal}",
    ),
    assumptions=(
        "All of it is counted as calcium carbonate, whatever share is magnesium.",
        "Alkalinity converts in the same way.",
    ),
    cannot_see=(
        "Alkalinity: hard water can hold little of it, and soft water much.",
        "Sodium: a household softener takes hardness away and puts sodium in its place. Softened "
        "water is no water for orchids.",
    ),
    cases=tuple({"value": 1.0, "unit": scale} for scale in SCALES),
    sources=("iupac-masses", "si-units", "usgs-hardness", "saltline-notes"),
)

FORMS = (HARDNESS,)
