"""Declarations: how far water climbs."""

from __future__ import annotations

from saltline import medium
from saltline.declare import Choice, Form, Number, Option, Result
from saltline.pictures import medium as pictures
from saltline.words import medium as words

TUBE_RISE = Form(
    id="tube-rise",
    question="How high does water climb in a tube?",
    function=medium.tube_rise,
    version=1,
    inputs=(
        Number(
            name="radius_mm",
            label="Inner radius of the tube",
            unit="mm",
            low=0.001,
            high=5,
            source_high=1,
            hint="half the inner width; the gap between 1 mm grains is about 0.2 mm",
        ),
        Number(
            name="water_c",
            label="Temperature of the water",
            unit="c",
            low=0,
            high=40,
            default=20,
            source="iapws-r1-76",
            origin="A room. 10 °C more or less moves the height by 2 %.",
            more=True,
        ),
        Number(
            name="contact_deg",
            label="Contact angle",
            unit="deg",
            low=0,
            high=90,
            default=0,
            hint="0 for a wall that water wets",
            origin="Wetted glass or fired clay (memory). At 60° the height is half; dry bark and "
            "new clay can push water down instead.",
            more=True,
        ),
        Number(
            name="seconds",
            label="Time since the tube touched the water",
            unit="s",
            low=0,
            high=1000000,
            optional=True,
            hint="leave empty for the final height only",
            more=True,
        ),
    ),
    results=(
        Result(name="rise_mm", label="Final height", unit="mm"),
        Result(name="rise_then_mm", label="Height after that time", unit="mm"),
    ),
    words=words.tube_rise,
    picture=pictures.tube_rise,
    example={"radius_mm": 0.1, "seconds": 1.0},
    equation=(
        r"H = \frac{2 \sigma \cos\theta}{\rho g r}",
        r"h = H \left( 1 + W_0(-e^{-1 - b^2 t / a}) \right)",
        r"a = \frac{r\, \sigma \cos\theta}{4 \mu}",
        r"b = \frac{\rho g r^2}{8 \mu}",
    ),
    working=(
        "σ, ρ, μ: surface tension, density and viscosity of water at {in:water_c}",
        "radius r = {in:radius_mm}, contact angle θ = {in:contact_deg}: H = {rise_mm}",
        "after t = {in:seconds}: h = {rise_then_mm}",
    ),
    assumptions=(
        "A round, upright tube with one end in open water.",
        "Pure water: a wetting agent lowers the height, feed salts hardly change it.",
    ),
    cannot_see=(
        "Evaporation. In a root's white skin it stops the water long before its weight does.",
        "The first instant, when the water must still be set moving.",
    ),
    cases=tuple({"radius_mm": radius} for radius in (0.015, 0.05, 0.1, 0.2, 0.5, 1.0)),
    sources=(
        "iapws-r1-76",
        "iapws-sr6-08",
        "tanaka-2001",
        "washburn-1921",
        "fries-dreyer-2008",
        "corless-1996",
        "saltline-notes",
    ),
)

MEDIUM_RISE = Form(
    id="medium-rise",
    question="Is the top of my pot damp?",
    function=medium.medium_rise,
    version=1,
    inputs=(
        Choice(
            name="top_damp_24h",
            label="Is the top layer dark and damp 24 h after watering?",
            options=(
                Option(value="unknown", label="I have not looked"),
                Option(value="yes", label="Yes"),
                Option(value="no", label="No"),
            ),
            default="unknown",
            hint="your own look beats any sum",
            origin="Nobody has published how far water climbs in granules above 4 mm, so your look "
            "decides.",
        ),
        Number(
            name="grain_mm",
            label="Size of the granules",
            unit="mm",
            low=0.1,
            high=30,
            source_low=0.5,
            source_high=4,
            hint="for 4-8 mm granules take 6",
        ),
        Number(
            name="pot_height_mm",
            label="Height of the medium",
            unit="mm",
            low=10,
            high=1000,
            hint="from the pot's floor to the top layer",
        ),
        Number(
            name="water_level_mm",
            label="Standing water in the pot",
            unit="mm",
            low=0,
            high=1000,
            hint="above the pot's floor; 0 if it drains freely",
        ),
    ),
    results=(
        Result(
            name="damp_rise_mm", label="Damp above the water, between grains", unit="mm", digits=2
        ),
        Result(
            name="saturated_rise_mm", label="Full of water, between grains", unit="mm", digits=2
        ),
        Result(name="dry_top_mm_low", label="Dry top layer, at least", unit="mm", digits=2),
        Result(name="dry_top_mm_high", label="Dry top layer, at most", unit="mm", digits=2),
        Result(name="answer", label="The top", kind="words"),
    ),
    words=words.medium_rise,
    picture=pictures.medium_rise,
    example={"grain_mm": 3.0, "pot_height_mm": 100.0, "water_level_mm": 25.0},
    equation=(
        r"h_\mathrm{damp} = \frac{97.5}{d}, \quad h_\mathrm{full} = \frac{39.5}{d}",
        r"\mathrm{dry} = H - h_\mathrm{water} - h_\mathrm{damp}",
    ),
    working=(
        "d = {in:grain_mm} (up to 4 mm): damp for {damp_rise_mm}, of which full for "
        "{saturated_rise_mm}",
        "{in:pot_height_mm} − {in:water_level_mm} − rise, a quarter more or less, up to 100 mm "
        "for open granules: {dry_top_mm_low..dry_top_mm_high}",
    ),
    assumptions=(
        "Even grains that water wets. One column of 0.5 mm sand was measured; other sizes are "
        "scaled from it, good to about 25 % up to 3 mm.",
        "Granules with an open skin may wick up to 100 mm by themselves (a trade glossary).",
    ),
    cannot_see=(
        "Dry bark, new clay and anything water-repellent: they lift nothing until soaked through.",
        "Roots and fine dust in the gaps: both lift water higher.",
        "Your granule's skin. Test it: a clear cylinder 9 cm wide and 20 cm tall, 1 cm of water "
        "kept in it, read the damp height after 24 h.",
    ),
    cautions=("Dry granules give off dust when tipped: wet them first, outdoors, with a mask.",),
    cases=tuple(
        {"grain_mm": grain, "pot_height_mm": 100.0, "water_level_mm": 25.0, "top_damp_24h": seen}
        for grain in (1.0, 2.0, 3.0, 6.0)
        for seen in ("unknown", "no")
    ),
    sources=(
        "salim-hampton-2012",
        "heath-1983",
        "lohman-1972",
        "fetter-1994",
        "blaehton-glossary",
        "passioura-2006",
        "euler-2018",
        "saltline-notes",
    ),
)

FORMS = (TUBE_RISE, MEDIUM_RISE)
