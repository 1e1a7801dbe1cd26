"""Declarations: the conductivity pen."""

from __future__ import annotations

from saltline import meter
from saltline.declare import YES_NO, Choice, Form, Number, Option, Result
from saltline.words import meter as words

SCALES = (
    Option(value="us_cm", label="µS/cm"),
    Option(value="ms_cm", label="mS/cm (or dS/m)"),
    Option(value="ppm500", label="ppm, 500 scale"),
    Option(value="ppm640", label="ppm, 640 scale"),
    Option(value="ppm700", label="ppm, 700 scale"),
    Option(value="cf", label="cF"),
)

METER_READING = Form(
    id="meter-reading",
    question="What does my pen mean?",
    function=meter.meter_reading,
    version=1,
    inputs=(
        Number(
            name="reading",
            label="Reading on the pen",
            unit="",
            unit_from="scale",
            low=0,
            high=200000,
            hint="what the pen shows",
        ),
        Choice(name="scale", label="Scale of the pen", options=SCALES),
        Number(
            name="sample_c",
            label="Temperature of the water",
            unit="c",
            low=0,
            high=35,
            default=25,
            source_low=10,
            source_high=35,
            origin="The standard's own reference. Water 5 °C colder reads about a tenth lower on "
            "a pen that does not correct.",
            source="iso-7888",
        ),
        Choice(
            name="compensated",
            label="Does the pen correct for temperature?",
            options=YES_NO,
            default="yes",
            hint="most pens do; the leaflet says ATC",
            origin="Most pens do (common practice, no source).",
        ),
        Number(
            name="error_percent",
            label="Error of the pen",
            unit="percent",
            low=0,
            high=20,
            default=2,
            hint="from the leaflet",
            origin="Usual for pocket pens (common practice, no source).",
            more=True,
        ),
        Number(
            name="full_scale",
            label="Top of the pen's range",
            unit="",
            unit_from="scale",
            low=0.001,
            high=200000,
            optional=True,
            hint="leave empty if the error is a share of the reading",
            more=True,
        ),
    ),
    results=(
        Result(name="ec_ms_cm", label="Conductivity at 25 °C", unit="ms_cm"),
        Result(name="ec_ms_cm_low", label="at least", unit="ms_cm"),
        Result(name="ec_ms_cm_high", label="at most", unit="ms_cm"),
        Result(name="ppm500", label="On a 500 scale", unit="ppm"),
        Result(name="ppm640", label="On a 640 scale", unit="ppm"),
        Result(name="ppm700", label="On a 700 scale", unit="ppm"),
        Result(name="cf", label="Conductivity factor", unit="cf"),
        Result(name="osmotic_bar", label="Osmotic pressure", unit="bar", digits=2),
    ),
    words=words.meter_reading,
    example={"reading": 500.0, "scale": "us_cm", "sample_c": 20.0, "compensated": "no"},
    assumptions=("The scale is linear: a 442 scale is not.",),
    cannot_see=(
        "Which salts they are: urea and sugar do not conduct at all.",
        "Whether the pen is right. Check it in a bottle of standard, 1.413 mS/cm.",
    ),
    cases=(
        {"reading": 350.0, "scale": "ppm500"},
        {"reading": 350.0, "scale": "ppm640"},
        {"reading": 350.0, "scale": "ppm700"},
        {"reading": 350.0, "scale": "us_cm", "sample_c": 10.0, "compensated": "no"},
        {"reading": 1.2, "scale": "ms_cm"},
    ),
    sources=("iso-7888", "usda-60", "saltline-notes"),
)

FORMS = (METER_READING,)
