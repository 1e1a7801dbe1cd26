"""Declarations: the conductivity pen."""

from __future__ import annotations

from saltline import meter, standards
from saltline.asking import Next
from saltline.declare import YES_NO, Choice, Form, Number, Option, Result
from saltline.pictures import meter as pictures
from saltline.words import meter as words

SCALES = (
    Option(value="us_cm", label="µS/cm"),
    Option(value="ms_cm", label="mS/cm (or dS/m)"),
    Option(value="ppm500", label="ppm, 500 scale"),
    Option(value="ppm640", label="ppm, 640 scale"),
    Option(value="ppm700", label="ppm, 700 scale"),
    Option(value="cf", label="cF"),
)

CORRECTED = {"sample_c": 25.0, "compensated": "yes"}

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
    picture=pictures.meter_reading,
    example={"reading": 500.0, "scale": "us_cm", "sample_c": 20.0, "compensated": "no"},
    equation=(
        r"\kappa_{25} = f_{25}(T)\, \kappa_T",
        r"\mathrm{ppm} = k\, \kappa_{25}, \quad \mathrm{cF} = 10\, \kappa_{25}",
        r"\pi = 0.36\, \kappa_{25}",
        r"\Delta = \frac{e}{100}\, \kappa_\mathrm{top} + e_T\, \kappa_{25}",
    ),
    working=(
        "κ at 25 °C: {in:reading} in water of {in:sample_c} is {ec_ms_cm}",
        "k for each µS/cm: 0.50 gives {ppm500}, 0.64 {ppm640}, 0.70 {ppm700}",
        "Δ, the pen’s error e and that of the temperature: {ec_ms_cm_low..ec_ms_cm_high}",
    ),
    assumptions=("The scale is linear: a 442 scale is not.",),
    cannot_see=(
        "Which salts they are: urea and sugar do not conduct at all.",
        "Whether the pen is right. Check it in a bottle of standard, 1.413 mS/cm.",
    ),
    cases=(
        {"reading": 350.0, "scale": "ppm500"} | CORRECTED,
        {"reading": 350.0, "scale": "ppm640"} | CORRECTED,
        {"reading": 350.0, "scale": "ppm700"} | CORRECTED,
        {"reading": 350.0, "scale": "us_cm", "sample_c": 10.0, "compensated": "no"},
        {"reading": 1.2, "scale": "ms_cm"} | CORRECTED,
    ),
    sources=("iso-7888", "usda-60", "saltline-notes"),
)

WHICH_SCALE = Form(
    id="which-scale",
    question="Which scale is my pen on?",
    function=standards.which_scale,
    version=1,
    inputs=(
        Number(
            name="reading",
            label="Reading in the standard",
            unit="",
            low=0.001,
            high=200000,
            hint="the figures on the pen, whatever its unit",
        ),
        Choice(
            name="standard",
            label="What is the pen standing in?",
            options=(
                Option(value="bottle_1413", label="A bottle of standard, 1.413 mS/cm"),
                Option(value="table_salt_0_5_g_l", label="Table salt, 0.5 g in 1 L of pure water"),
            ),
            hint="table salt: 10 g in 1 L of pure water, then 50 mL of that made up to 1 L",
        ),
    ),
    results=(
        Result(name="scale", label="Scale of the pen", kind="words"),
        Result(name="off_percent", label="Away from that scale", unit="percent", digits=2),
        Result(name="also_fits", label="Cannot be ruled out", kind="words"),
    ),
    words=words.which_scale,
    picture=pictures.which_scale,
    example={"reading": 707.0, "standard": "bottle_1413"},
    equation=(r"\mathrm{off} = 100 \left( \frac{\mathrm{reading}}{k\, \kappa_{25}} - 1 \right)",),
    working=(
        "κ of the standard times the k of each scale is what a pen should read in it",
        "100 × ({in:reading} ÷ what the scale should read − 1) = {off_percent}",
    ),
    follow=(
        Next(
            id="meter-reading",
            page="care/salt-units/",
            label="Read your pen on this scale",
            carry={"scale": "scale"},
        ),
    ),
    assumptions=(
        "The standard is at 25 °C, or the pen corrects for temperature.",
        "Table salt: 1.01 mS/cm, good to 10 % (worked out with a water chemistry program).",
    ),
    cannot_see=(
        "A cold bottle: at 20 °C a pen that does not correct reads a tenth low, and a 700 scale "
        "looks like a 640 scale.",
        "An old bottle. Standard that was poured back or left open is no standard.",
    ),
    cases=(
        {"reading": 1413.0, "standard": "bottle_1413"},
        {"reading": 707.0, "standard": "bottle_1413"},
        {"reading": 904.0, "standard": "bottle_1413"},
        {"reading": 989.0, "standard": "bottle_1413"},
        {"reading": 505.0, "standard": "table_salt_0_5_g_l"},
        {"reading": 680.0, "standard": "table_salt_0_5_g_l"},
    ),
    sources=("epa-120-1", "crc-kcl", "saltline-notes"),
)

FORMS = (METER_READING, WHICH_SCALE)
