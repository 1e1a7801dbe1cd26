"""Declarations: the pen against the label."""

from __future__ import annotations

from saltline import strength
from saltline.declare import Form, Number, Result
from saltline.forms.strength import DRAIN, WATER
from saltline.pictures import feed as pictures
from saltline.words import strength as words

FEED_CHECK = Form(
    id="feed-check",
    question="Does the pen agree with the label?",
    function=strength.feed_check,
    version=1,
    inputs=(
        WATER,
        Number(
            name="feed_ms_cm",
            label="The mixed feed",
            unit="ms_cm",
            low=0,
            high=20,
            hint="stirred, at the same temperature as the water",
        ),
        Number(
            name="ec_per_100_ppm_n_ms_cm",
            label="What 100 ppm nitrogen of this product reads",
            unit="ms_cm",
            low=0.1,
            high=3,
            source_low=0.498,
            source_high=0.974,
            hint="from its label; a 20-10-20 prints about 0.64, a 15-5-15 about 0.74",
        ),
        Number(
            name="label_n_ppm",
            label="Nitrogen you meant to mix",
            unit="ppm",
            low=1,
            high=2000,
            optional=True,
            hint="from the label and the grams",
        ),
    ),
    results=(
        Result(name="n_ppm", label="Nitrogen by the pen", unit="ppm", digits=2),
        Result(name="n_ppm_low", label="at least", unit="ppm", digits=2),
        Result(name="n_ppm_high", label="at most", unit="ppm", digits=2),
        Result(
            name="expected_ms_cm_low", label="The label expects at least", unit="ms_cm", digits=2
        ),
        Result(name="expected_ms_cm_high", label="at most", unit="ms_cm", digits=2),
        Result(name="off_percent", label="The pen against the label", unit="percent", digits=2),
    ),
    words=words.feed_check,
    picture=pictures.feed_check,
    example={
        "water_ms_cm": 0.3,
        "feed_ms_cm": 0.95,
        "ec_per_100_ppm_n_ms_cm": 0.64,
        "label_n_ppm": 100.0,
    },
    equation=(
        r"C_\mathrm{N} = 100\, \frac{EC_f - EC_w}{EC_{100}}",
        r"EC_\mathrm{label} = EC_w + \frac{C_\mathrm{N}\, EC_{100}}{100}",
    ),
    working=(
        "100 ppm × ({in:feed_ms_cm} − {in:water_ms_cm}) ÷ {in:ec_per_100_ppm_n_ms_cm} = {n_ppm}",
        "the label: {in:water_ms_cm} + {in:label_n_ppm} × {in:ec_per_100_ppm_n_ms_cm} ÷ 100 "
        "ppm, on a pen {expected_ms_cm_low..expected_ms_cm_high}",
    ),
    assumptions=(
        "One product in the water, and its own figure for 100 ppm nitrogen.",
        "Both readings in mS/cm, by the same pen.",
    ),
    cannot_see=(
        "Urea: it does not conduct. In one 20-20-20 it was 52 % of the nitrogen (Wang 1996).",
        "Which salts they are: salt left in the can reads like feed.",
    ),
    cautions=(DRAIN,),
    cases=(
        {"feed_ms_cm": 0.62},
        {"feed_ms_cm": 0.95},
        {"feed_ms_cm": 1.58, "label_n_ppm": 200.0},
        {"feed_ms_cm": 1.58, "label_n_ppm": 100.0},
        {"feed_ms_cm": 0.6, "label_n_ppm": 100.0},
    ),
    sources=("purdue-ho-286", "msu-concentration", "label-15-5-15", "wang-1996", "saltline-notes"),
)

FORMS = (FEED_CHECK,)
