"""Declarations: slow-release beads, when they let go and what the pot sees."""

from __future__ import annotations

from saltline import prill_pot, release
from saltline.declare import Form, Number, Result
from saltline.pictures import release as pictures
from saltline.words import release as words

RATED_DAYS = Number(
    name="rated_days",
    label="Life on the label",
    unit="days",
    low=30,
    high=720,
    hint="5 to 6 months are about 167 days",
)
MEAN_C = Number(
    name="mean_c",
    label="Mean temperature of the granules",
    unit="c",
    low=5,
    high=40,
    source_low=20,
    source_high=40,
    source="du-2006",
    hint="halfway between the night's lowest and the day's highest, on a thermometer in the pot",
)


def rated_c(default: float | None) -> Number:
    """The temperature of the label; only the release calculator has a default."""
    return Number(
        name="rated_c",
        label="Temperature on the label",
        unit="c",
        low=15,
        high=30,
        default=default,
        hint="21 or 25 °C, in the small print",
        origin=""
        if default is None
        else "The commoner of the two (common practice, no source). A label at 25 °C lasts a fifth "
        "to a third longer than one of the same days at 21 °C.",
        source="" if default is None else "common-practice",
    )


WATER_HELD = Number(
    name="water_held_ml",
    label="Water the drained pot keeps",
    unit="ml",
    low=1,
    high=20000,
    hint="a plant-free pot of the same granules: soak, drain, weigh, less its dry weight; not "
    "weighed yet: 150 mL for each litre of pot, and 80 to 250 mL is possible (our estimate)",
)
DRAIN = Number(
    name="drain_ml_day",
    label="Water that drains in a day",
    unit="ml_day",
    low=0,
    high=5000,
    hint="what runs out at a watering over the days to the next: 45 mL every third day is 15",
)
N_PERCENT = Number(
    name="n_percent",
    label="Nitrogen on the label",
    unit="percent",
    low=1,
    high=46,
    hint="the first of its three numbers",
)

ASSUMPTIONS = (
    "The coating lets go faster with heat: 37 to 57 kJ/mol, 42 in the middle (measured: 37 to 46 "
    "on two products; only the abstract was read).",
    "Nothing leaves for 2 to 10 days; 80 to 95 % of the nitrogen is out at the end of the rated "
    "life at the rated temperature.",
    "The beads stay moist.",
)
CANNOT_SEE = (
    "Beads that dry between waterings: they are slower, by how much is not known.",
    "Broken beads: they give all they hold at once.",
    "What this product does. Of two products measured for seven months, one was done 15 % before "
    "its label and one 9 % after it.",
)
CAUTIONS = (
    "Beads look like sweets: away from children and pets, in a labelled, locked box.",
    "Mix by hand: machines break the coating. Do not store granules with beads in them.",
    "Used beads are still fertilizer: not into a drain where local codes forbid it.",
)
LABEL = {"rated_days": 167.0, "rated_c": 21.0, "mean_c": 25.0}

PRILL_RELEASE = Form(
    id="prill-release",
    question="When does it run out?",
    function=release.prill_release,
    version=1,
    inputs=(
        RATED_DAYS,
        rated_c(21.0),
        MEAN_C,
        Number(name="day", label="Days since the beads went in", unit="days", low=0, high=2000),
    ),
    results=(
        Result(name="released_share", label="Nitrogen out, about", unit="share", digits=2),
        Result(name="released_share_low", label="at least", unit="share", digits=2),
        Result(name="released_share_high", label="at most", unit="share", digits=2),
        Result(name="end_day_low", label="Rated share out, soonest, on day", unit="days", digits=2),
        Result(name="end_day_high", label="latest, on day", unit="days", digits=2),
        Result(name="potassium_share_low", label="Potassium out, at least", unit="share", digits=2),
        Result(name="potassium_share_high", label="at most", unit="share", digits=2),
        Result(
            name="phosphorus_share_low", label="Phosphorus out, at least", unit="share", digits=2
        ),
        Result(name="phosphorus_share_high", label="at most", unit="share", digits=2),
    ),
    words=words.prill_release,
    picture=pictures.prill_release,
    table=pictures.prill_release_table,
    example=LABEL | {"day": 60.0},
    assumptions=(
        *ASSUMPTIONS,
        "Nitrogen means nitrate; ammonium is about a seventh slower.",
        "At least and at most are the corners of all that is not known, not a chance.",
    ),
    cannot_see=CANNOT_SEE,
    cautions=CAUTIONS,
    equation=(
        r"r = \exp\left( -\frac{E_a}{R} \left( \frac{1}{T} - \frac{1}{T_l} \right) \right)",
        r"F = 1 - e^{-\left( k (r t - t_L) \right)^b}",
        r"k = \frac{\left( -\ln(1 - p) \right)^{1/b}}{L - t_L}",
        r"t_\mathrm{end} = \frac{L}{r}",
    ),
    working=(
        "L = {in:rated_days} at the label’s {in:rated_c}; r, how much faster at {in:mean_c}",
        "p share out after L, lag tL, exponent b, energy Ea: all as they may be",
        "end after L ÷ r = {end_day_low..end_day_high}",
        "after t = {in:day}: F = {released_share_low..released_share_high}, middle "
        "{released_share}",
    ),
    cases=tuple(
        {"rated_days": 180.0, "rated_c": 25.0, "mean_c": mean, "day": 90.0}
        for mean in (15.0, 20.0, 25.0, 30.0, 35.0)
    ),
    sources=("du-2006", "broschat-moore-2007", "wang-2011", "trenkel-2010", "saltline-notes"),
)

PRILL_POT = Form(
    id="prill-pot",
    question="What will the pot see?",
    function=prill_pot.prill_pot,
    version=1,
    inputs=(
        Number(
            name="dose_g",
            label="Beads given",
            unit="g",
            low=0.01,
            high=200,
            hint="weighed",
        ),
        N_PERCENT,
        RATED_DAYS,
        rated_c(None),
        MEAN_C,
        WATER_HELD,
        DRAIN,
        Number(
            name="uptake_mg_month",
            label="Nitrogen the plant takes",
            unit="mg_month",
            low=0,
            high=2000,
            hint="0 without roots; one 28 g Cattleya did best on 20 mg a month",
            source="tanaka-1988",
        ),
    ),
    results=(
        Result(name="peak_n_ppm", label="Most nitrogen in the water, about", unit="ppm", digits=2),
        Result(name="peak_n_ppm_low", label="at least", unit="ppm", digits=2),
        Result(name="peak_n_ppm_high", label="at most", unit="ppm", digits=2),
        Result(name="peak_day", label="on day", unit="days", digits=2),
        Result(name="days", label="Days", unit="days", kind="list"),
        Result(name="n_ppm", label="Nitrogen on those days, about", unit="ppm", kind="list"),
        Result(name="n_ppm_low", label="at least", unit="ppm", kind="list"),
        Result(name="n_ppm_high", label="at most", unit="ppm", kind="list"),
    ),
    words=words.prill_pot,
    picture=pictures.prill_pot,
    table=pictures.prill_pot_table,
    example=LABEL
    | {
        "dose_g": 0.4,
        "n_percent": 15.0,
        "water_held_ml": 120.0,
        "drain_ml_day": 15.0,
        "uptake_mg_month": 10.0,
    },
    equation=(
        r"\frac{\mathrm{d}N}{\mathrm{d}t} = n \frac{\mathrm{d}F}{\mathrm{d}t} - U - \frac{q}{V} "
        r"N",
        r"N \ge 0",
    ),
    working=(
        "n = {in:dose_g} × {in:n_percent} of nitrogen, F the share out of the beads",
        "V = {in:water_held_ml} held, q = {in:drain_ml_day} drained, U = {in:uptake_mg_month} "
        "taken up",
        "highest N ÷ V: {peak_n_ppm_low..peak_n_ppm_high}, middle {peak_n_ppm} after {peak_day}",
    ),
    assumptions=(
        *ASSUMPTIONS,
        "At most, 5 % of the nitrogen comes out at once from broken beads: our estimate.",
        "The plant takes the same every day as long as there is any, and the water is mixed.",
    ),
    cannot_see=(*CANNOT_SEE, "Feed that you pour on: it comes on top."),
    cautions=CAUTIONS,
    cases=tuple(
        LABEL
        | {
            "dose_g": 0.4,
            "n_percent": 15.0,
            "mean_c": mean,
            "water_held_ml": 120.0,
            "drain_ml_day": drain,
            "uptake_mg_month": uptake,
        }
        for mean, drain, uptake in (
            (25.0, 15.0, 10.0),
            (25.0, 15.0, 0.0),
            (25.0, 6.0, 0.0),
            (35.0, 15.0, 0.0),
        )
    ),
    sources=("saltline-notes", "du-2006", "broschat-moore-2007", "tanaka-1988", "trenkel-2010"),
)

FORMS = (PRILL_RELEASE, PRILL_POT)
