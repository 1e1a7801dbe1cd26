"""Declarations: the salt line on an exposed root."""

from __future__ import annotations

from saltline import salt_band
from saltline.declare import Form, Number, Result
from saltline.pictures import salt_band as pictures
from saltline.words import salt_band as words

SALT_BAND = Form(
    id="salt-band",
    question="Where on the root does salt gather?",
    function=salt_band.salt_band,
    version=1,
    inputs=(
        Number(
            name="air_c",
            label="Air temperature at the pot",
            unit="c",
            low=5,
            high=40,
        ),
        Number(
            name="humidity_percent",
            label="Humidity at the pot",
            unit="percent",
            low=0,
            high=100,
            source_low=30,
            source_high=95,
            hint="by day, beside the pot",
        ),
        Number(
            name="root_mm",
            label="Thickness of the root",
            unit="mm",
            low=1,
            high=15,
            hint="most orchid roots are 3-8 mm",
        ),
        Number(
            name="water_ms_cm",
            label="Your plain water",
            unit="ms_cm",
            low=0,
            high=5,
            hint="the water alone, before any feed: roots refuse its salt, not the feed's",
        ),
        Number(
            name="air_speed_m_s",
            label="Air movement",
            unit="m_s",
            low=0,
            high=5,
            default=0.1,
            hint="0 still, 0.1 a room, 0.5 a fan you can feel",
            origin="A quiet room (proposed). Half of it makes the band about a seventh longer, "
            "twice of it about a seventh shorter.",
            source="saltline-notes",
        ),
        Number(
            name="measured_band_mm",
            label="Wet edge on the root by ruler",
            unit="mm",
            low=0.5,
            high=100,
            optional=True,
            hint="above the damp surface, a day after a soak; beats everything below",
            more=True,
        ),
        Number(
            name="measured_dry_h",
            label="Drying time when you used the ruler",
            unit="h",
            low=0.1,
            high=72,
            optional=True,
            hint="only to carry the reading to another season",
            more=True,
        ),
        Number(
            name="dry_h",
            label="Drying time now",
            unit="h",
            low=0.1,
            high=72,
            optional=True,
            hint="from green to silver, at that height beside the pot",
            origin="Empty: worked out from the air, 30-100 % of what a root alone would lose "
            "(proposed). Four times the time makes the band twice as long.",
            more=True,
        ),
        Number(
            name="soak_through_s",
            label="Time to soak through",
            unit="s",
            low=1,
            high=3600,
            optional=True,
            hint="from silver until the green stops deepening",
            origin="Empty: anywhere from 3 to 300 s. This is what makes the answer so wide: four "
            "times the time makes the band half as long.",
            source="zotz-winkler-2013",
            more=True,
        ),
        Number(
            name="velamen_mm",
            label="Thickness of the root's white skin",
            unit="mm",
            low=0.05,
            high=2,
            optional=True,
            hint="on a cut across a dead root; at most a quarter of the root's thickness",
            origin="Empty: anywhere from 0.2 to 0.6 mm (memory). Rinsing time goes with its "
            "square. A thin skin soaks faster, so thin roots are not safe.",
            more=True,
        ),
    ),
    results=(
        Result(name="band_mm", label="Wet band above the damp surface", unit="mm", digits=1),
        Result(name="band_mm_low", label="at least", unit="mm", digits=2),
        Result(name="band_mm_high", label="at most", unit="mm", digits=2),
        Result(name="evaporation_mm_day", label="Evaporation", unit="mm_day", digits=2),
        Result(name="evaporation_mm_day_low", label="at least", unit="mm_day", digits=2),
        Result(
            name="evaporation_mm_day_high",
            label="of a root alone in the air",
            unit="mm_day",
            digits=2,
        ),
        Result(name="turnover_h", label="The band renews its water every", unit="h", digits=2),
        Result(name="turnover_h_low", label="at least", unit="h", digits=2),
        Result(name="turnover_h_high", label="at most", unit="h", digits=2),
        Result(
            name="factor_1d_high",
            label="Refused salt after 1 day, up to (your water is 1)",
            unit="times",
            digits=2,
        ),
        Result(name="factor_3d_high", label="after 3 days, up to", unit="times", digits=2),
        Result(name="factor_7d_high", label="after 7 days, up to", unit="times", digits=2),
        Result(name="rinse_min", label="Rinse, at least", unit="min", digits=2),
        Result(name="rinse_min_high", label="Rinse, if salt leaves slowly", unit="min", digits=2),
    ),
    words=words.salt_band,
    picture=pictures.salt_band,
    example={"air_c": 22.0, "humidity_percent": 60.0, "root_mm": 5.0, "water_ms_cm": 0.3},
    equation=(
        r"L = \delta \sqrt{\frac{t_\mathrm{dry}}{t_\mathrm{abs}}}",
        r"t_\mathrm{dry} = \frac{0.8\, \delta (1 - \delta / d)}{E}",
        r"N = 1 + M \left( 1 - e^{-\tau / M} \right)",
        r"M = m - 1",
        r"\tau = \frac{t}{t_\mathrm{dry}}, \quad Pe = \frac{\delta^2}{t_\mathrm{abs} D_s}",
        r"m = \int_0^1 e^{Pe (1 - x^2) / 2}\, \mathrm{d}x",
        r"t_{99} = \frac{4}{\pi^2} \ln \frac{8}{0.01\, \pi^2}\, \frac{\delta^2}{D_s}",
    ),
    working=(
        "δ thickness of the white skin, t with “abs” the time to soak through",
        "root d = {in:root_mm}, evaporation E = "
        "{evaporation_mm_day_low..evaporation_mm_day_high}: dry in "
        "{turnover_h_low..turnover_h_high}",
        "band L = {band_mm_low..band_mm_high}",
        "strength N after 1, 3 and 7 days: up to {factor_1d_high}, {factor_3d_high}, "
        "{factor_7d_high}",
        "rinse, 99 % out: {rinse_min}, or {rinse_min_high} if salt spreads three times slower",
    ),
    assumptions=(
        "The root stands up from damp medium in the shade, dry above. A root that lies across damp "
        "granules stays wet along its whole length.",
        "Air beside a damp pot takes 30-100 % of what it takes from a root alone (proposed).",
        "The band's water is renewed by evaporation alone: a root that drinks and refuses a salt "
        "can exceed the figures. Nothing is said beyond 7 days.",
        "A rinse counts dissolved salt; three times the minutes if it spreads three times slower.",
    ),
    cannot_see=(
        "Whether a dark ring is salt at all: an old water line, stain, naturally dark skin, drying "
        "and lack of air look alike.",
        "A white ring proves evaporation, not a salty pot.",
        "The growing green tip: it has no white skin.",
        "A dry top layer: it shortens the part you see but does not weaken the salt.",
    ),
    cautions=(
        "The ring stands above the granules, so soaks and pours may miss it. Never dunk the plant "
        "for it: a wet tissue or a fine trickle round the ring, crown and new shoot dry.",
        "Rinse with water at 20-25 °C, early in the day.",
    ),
    cases=tuple(
        {
            "air_c": 22.0,
            "humidity_percent": humidity,
            "root_mm": 5.0,
            "water_ms_cm": 0.3,
            "air_speed_m_s": wind,
        }
        for humidity in (40.0, 60.0, 80.0)
        for wind in (0.0, 0.1, 0.5)
    ),
    sources=(
        "common-practice",
        "zotz-winkler-2013",
        "roth-nebelsick-2018",
        "hernandez-oxy",
        "churchill-bernstein-1977",
        "churchill-chu-1975",
        "fao-56",
        "crank-1975",
        "saltline-notes",
    ),
)

FORMS = (SALT_BAND,)
