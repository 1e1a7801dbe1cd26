"""Declarations: salt between two flushes."""

from __future__ import annotations

from saltline import build_up
from saltline.declare import Form, Number, Result
from saltline.pictures import build_up as pictures
from saltline.words import build_up as words

START = {"start_ms_cm": 0.5, "limit_ms_cm": 1.5, "water_held_ml": 200.0, "water_use_ml_day": 12.0}

BUILD_UP = Form(
    id="build-up",
    question="When is it salty again?",
    function=build_up.build_up,
    version=1,
    inputs=(
        Number(
            name="feed_ms_cm",
            label="What you pour on",
            unit="ms_cm",
            low=0,
            high=10,
            hint="feed and water together, as the pen reads the can; if every second watering is "
            "clear water, take the average",
        ),
        Number(
            name="start_ms_cm",
            label="Water inside the pot now",
            unit="ms_cm",
            low=0,
            high=20,
            hint="the first drips after standing covered overnight, best two weeks after a flush",
        ),
        Number(
            name="limit_ms_cm",
            label="Your own limit",
            unit="ms_cm",
            low=0.05,
            high=20,
            hint="no safe strength for orchids is published; a trade rule for pot crops is your "
            "feed + 0.5",
        ),
        Number(
            name="drained_share",
            label="Share of the water that drains",
            unit="share",
            low=0,
            high=0.9,
            hint="what runs out below, over what you poured, both weighed: 50 g of 250 g is 20 %",
        ),
        Number(
            name="water_use_ml_day",
            label="Water used in a day",
            unit="ml_day",
            low=0.1,
            high=5000,
            hint="weigh the drained pot today and tomorrow: grams lost",
        ),
        Number(
            name="water_held_ml",
            label="Water the drained pot keeps",
            unit="ml",
            low=1,
            high=20000,
            hint="a plant-free pot of the same granules: soak, drain, weigh, less its dry weight; "
            "not weighed yet: 150 mL for each litre of pot, and 80 to 250 mL is possible (our "
            "estimate)",
        ),
    ),
    results=(
        Result(
            name="days_low", label="Your limit is reached after at least", unit="days", digits=2
        ),
        Result(name="days_high", label="at most (no number: never)", unit="days", digits=2),
        Result(
            name="steady_ms_cm",
            label="Levels off at, if nothing is taken up",
            unit="ms_cm",
            digits=2,
        ),
        Result(
            name="time_constant_days", label="Two thirds of the way there in", unit="days", digits=2
        ),
        Result(
            name="steady_ms_cm_low",
            label="Levels off at, plant feeding well",
            unit="ms_cm",
            digits=2,
        ),
        Result(
            name="enough_share",
            label="Share to drain to hold your limit",
            unit="share",
            digits=2,
        ),
    ),
    words=words.build_up,
    picture=pictures.build_up,
    table=pictures.build_up_table,
    example=START | {"feed_ms_cm": 0.5, "drained_share": 0.2},
    assumptions=(
        "Every watering is this feed, and the water in the pot mixes with it.",
        "The plant takes nothing (soonest) to 30 % of the salt fed (latest): orchid roots kept "
        "17-28 % of the nitrogen sprayed on them; 30 % for all salts is our estimate.",
        "Readings are at 25 °C.",
    ),
    cannot_see=(
        "Slow-release beads in the pot: they add salt that is not in this sum.",
        "Water that runs past without mixing: it makes the day come sooner.",
        "Layers. The top and the lower third can be much saltier than the drips.",
        "The line of salt on roots above the granules.",
    ),
    cautions=(
        "Water that drained goes on other plants or a lawn where local codes allow, not into a "
        "pond or a storm drain.",
    ),
    equation=(
        r"V_r \frac{\mathrm{d}C}{\mathrm{d}t} = ET\, \frac{(1 - u)\, C_f - LF\, C}{1 - LF}",
        r"C_\infty = \frac{(1 - u)\, C_f}{LF}",
        r"T = \frac{V_r\, (1 - LF)}{ET\, LF}",
        r"t = T \ln \frac{C_\infty - C_0}{C_\infty - C_\mathrm{limit}}",
    ),
    working=(
        "Vr water held, ET water used, LF share that drains, Cf feed, u share of salt taken up",
        "C∞ = {in:feed_ms_cm} ÷ {in:drained_share} = {steady_ms_cm} if nothing is taken up",
        "T = {in:water_held_ml} × (100 % − {in:drained_share}) ÷ ({in:water_use_ml_day} × "
        "{in:drained_share}) = {time_constant_days}",
        "from {in:start_ms_cm} to {in:limit_ms_cm}: {days_low}, or {days_high} with u = 30 %",
    ),
    cases=tuple(
        START | {"feed_ms_cm": 0.5, "drained_share": share} for share in (0.0, 0.1, 0.2, 0.33, 0.5)
    ),
    sources=("saltline-notes", "panjama-2018", "ku-hershey-1991"),
)

FORMS = (BUILD_UP,)
