"""Declarations: the time granules take to let go."""

from __future__ import annotations

from saltline import granules
from saltline.declare import Form, Number, Result
from saltline.forms.pot_inputs import GRAIN, NO_POT
from saltline.pictures import granules as pictures
from saltline.words import granules as words

SOAK_MINUTES = Form(
    id="soak-minutes",
    question="How long until the granules let go?",
    function=granules.soak_minutes,
    version=1,
    inputs=(
        GRAIN,
        Number(
            name="share",
            label="How much of it should come out?",
            unit="share",
            low=0.1,
            high=0.99,
            default=0.9,
            hint="of what a very long soak would take",
            origin="Nine tenths. Half takes a seventh of that time, 95 % takes half as long again.",
        ),
        Number(
            name="bath_ratio",
            label="Ratio of bath water to the granules' own",
            unit="times",
            low=0.2,
            high=50,
            default=3,
            hint="3 for a pot filled to the brim, 9 in a bucket",
            origin="A pot filled to the brim (our estimate). In a bucket it takes a fifth longer.",
            source="saltline-notes",
            more=True,
        ),
    ),
    results=(
        Result(name="plant_limit_min", label="The plant's limit for one soak", unit="min"),
        Result(name="minutes", label="Granules alone", unit="min", digits=2),
        Result(name="minutes_low", label="at least", unit="min", digits=2),
        Result(name="minutes_high", label="at most", unit="min", digits=2),
    ),
    words=words.soak_minutes,
    picture=pictures.soak_minutes,
    main="minutes",
    example={"grain_mm": 8.0},
    equation=(
        r"F = 1 - \sum_n \frac{6\, a\, (a + 1)\, e^{-q_n^2 Fo}}{9 + 9 a + q_n^2 a^2}",
        r"Fo = \frac{D_a\, t}{R^2}, \quad \tan q_n = \frac{3\, q_n}{3 + a\, q_n^2}",
    ),
    working=(
        "F = {in:share}, a = {in:bath_ratio}, R half of {in:grain_mm}",
        "t = {minutes} for Da 0.5e-9 m²/s; {minutes_low..minutes_high} over what Da may be",
    ),
    assumptions=(
        "Granules are spheres of one size, wet through; the bath is stirred.",
        "Diffusivity in their pores 0.1-0.75e-9 m2/s; the middle figure takes 0.5e-9.",
        "Porosity changes how much salt there is, not how fast it leaves.",
    ),
    cannot_see=(
        "Dense skins and air in the granules: both slow them.",
        "What a root stands. No trial of soak times on potted orchids was found.",
        NO_POT,
    ),
    cautions=(
        "30 minutes a soak, an hour at the very most, three a day: our estimate, on the safe side.",
    ),
    cases=tuple({"grain_mm": grain} for grain in (2.0, 4.0, 6.0, 8.0, 12.0, 16.0)),
    sources=("crank-1975", "roberts-1987", "saltline-notes"),
)

FORMS = (SOAK_MINUTES,)
