"""Declarations: one reading against the feed and the tap."""

from __future__ import annotations

from saltline import is_it_high
from saltline.asking import Next
from saltline.declare import Choice, Form, Number, Option, Result
from saltline.forms.pot_inputs import ASSUMED, BINDING, GRAIN, LAYERS, LINE, NO_POT
from saltline.pictures import pot as pictures
from saltline.words import pot as words

EXAMPLE = {"method": "soak", "reading": 230.0, "tap": 60.0, "feed": 350.0, "grain_mm": 8.0}
SAME_PEN = "the same pen and the same scale for all three"

IS_IT_HIGH = Form(
    id="is-it-high",
    question="Is my reading high?",
    function=is_it_high.is_it_high,
    version=1,
    inputs=(
        Choice(
            name="method",
            label="What did you read?",
            options=(
                Option(value="soak", label="The water of a soak"),
                Option(value="drip", label="First drips after standing covered overnight"),
            ),
        ),
        Number(
            name="reading",
            label="What the pen shows in it",
            unit="",
            low=0,
            high=100000,
            hint=SAME_PEN,
        ),
        Number(
            name="tap",
            label="What it shows in the water you used",
            unit="",
            low=0,
            high=100000,
            optional=True,
            hint=SAME_PEN,
        ),
        Number(
            name="feed",
            label="What it shows in your feed",
            unit="",
            low=0,
            high=100000,
            optional=True,
            hint="ready to pour; without it there is a range for the pot, but nothing to compare",
        ),
        GRAIN,
        Number(
            name="soak_min",
            label="Minutes in the soak",
            unit="min",
            low=1,
            high=240,
            default=10,
            hint="from full to draining",
            origin="Usual among growers (common practice). Half as long makes the answer a tenth "
            "higher, twice as long a tenth lower.",
            source="common-practice",
            more=True,
        ),
        Choice(
            name="filled",
            label="How was it soaked?",
            options=(
                Option(value="brim", label="The pot filled to its brim"),
                Option(value="bucket", label="The pot standing in a bucket"),
            ),
            default="brim",
            origin="Filled to the brim. In a bucket the same reading means more than twice as "
            "much, because more water thins it.",
            more=True,
        ),
    ),
    results=(
        Result(name="ratio", label="Reading over feed, both above tap", digits=2),
        Result(
            name="times_feed_low",
            label="Pot over feed, both above tap: at least",
            unit="times",
            digits=2,
        ),
        Result(name="times_feed_high", label="at most", unit="times", digits=2),
        Result(
            name="times_reading_low",
            label="Pot over reading, both above tap: at least",
            unit="times",
            digits=2,
        ),
        Result(name="times_reading_high", label="at most", unit="times", digits=2),
        Result(name="answer", label="Answer", kind="words"),
    ),
    words=words.is_it_high,
    picture=pictures.is_it_high,
    main="times_feed_low",
    example=EXAMPLE,
    equation=(
        r"r = \frac{C_\mathrm{read} - C_\mathrm{tap}}{C_\mathrm{feed} - C_\mathrm{tap}}",
        r"\frac{C_\mathrm{pot} - C_\mathrm{tap}}{C_\mathrm{feed} - C_\mathrm{tap}} = r\, k",
    ),
    working=(
        "r = ({in:reading} − {in:tap}) ÷ ({in:feed} − {in:tap}) = {ratio}",
        "k, pot over reading, from the model: {times_reading_low..times_reading_high}",
        "r × k = {times_feed_low..times_feed_high}",
    ),
    follow=(
        Next(
            id="flush-today",
            page="flush-day/",
            label="What can I do for it today?",
            carry={"grain_mm": "grain_mm", "soak_min": "soak_min"},
        ),
    ),
    assumptions=(
        *ASSUMED,
        "A pot filled to the brim takes 30-50 % of its volume; in a bucket 70-150 % reaches the "
        "granules (our estimate).",
        "It is the first soak, and the pot had stood some hours since it was last watered.",
    ),
    cannot_see=(
        "What this plant stands: no safe strength for orchids is published.",
        LINE,
        LAYERS,
        BINDING,
        NO_POT,
    ),
    cases=tuple(EXAMPLE | {"grain_mm": grain} for grain in (4.0, 8.0, 16.0))
    + ({"method": "soak", "reading": 120.0, "tap": 60.0, "feed": 350.0, "grain_mm": 8.0},),
    sources=("saltline-notes", "van-genuchten-wierenga-1976", "altland-owen-2024"),
)

FORMS = (IS_IT_HIGH,)
