"""Declarations: how often to feed."""

from __future__ import annotations

from saltline import feeding
from saltline.declare import Choice, Form, Number, Result
from saltline.forms.choices import KINDS, ROOTS, STAGES
from saltline.pictures import feed as pictures
from saltline.words import feeding as words

FEED_OFTEN = Form(
    id="feed-often",
    question="How often do I feed?",
    function=feeding.feed_often,
    version=1,
    inputs=(
        Choice(name="stage", label="What is the plant doing?", options=STAGES),
        Choice(
            name="kind",
            label="Does it drop all its leaves?",
            options=KINDS,
            default="unknown",
            origin="Unknown is treated as one that drops its leaves: dry and unfed at rest.",
        ),
        Choice(name="roots", label="Live roots in the pot", options=ROOTS),
        Number(
            name="n_ppm",
            label="Nitrogen in your feed",
            unit="ppm",
            low=1,
            high=1000,
            default=100,
            source_low=10,
            source_high=280,
            hint="from the label and the grams",
            origin="Our usual, 100-125 ppm: proposed. The milligrams move with it one to one.",
            source="saltline-notes",
        ),
        Number(
            name="water_use_ml_day",
            label="Water the pot uses",
            unit="ml_day",
            low=0.1,
            high=5000,
            optional=True,
            hint="weigh it drained and again before the next watering; grams lost by days between",
        ),
    ),
    results=(
        Result(name="strength", label="Strength", kind="words"),
        Result(name="feeds_of_four", label="Waterings in four with feed"),
        Result(name="usual_n_ppm_low", label="Usual nitrogen, from", unit="ppm"),
        Result(name="usual_n_ppm_high", label="to", unit="ppm"),
        Result(name="n_mg_month", label="Nitrogen a month", unit="mg", digits=2),
        Result(name="trial_mg_month", label="In the Cattleya trial", unit="mg", digits=2),
        Result(name="times_trial", label="Yours against the trial's", unit="times", digits=2),
    ),
    words=words.feed_often,
    picture=pictures.feed_often,
    main="n_mg_month",
    example={
        "stage": "growing",
        "kind": "unknown",
        "roots": "wall",
        "n_ppm": 100.0,
        "water_use_ml_day": 15.0,
    },
    equation=(r"m = C\, V_\mathrm{day}\, \frac{30}{1000}\, \frac{f}{4}",),
    working=(
        "C = {in:n_ppm}, V = {in:water_use_ml_day}, feeds in four f = {feeds_of_four}: m = "
        "{n_mg_month}",
        "the trial: 231 ppm × 20 mL × 30 ÷ 7 = {trial_mg_month}",
    ),
    assumptions=(
        "Each watering replaces what was used, and the rest runs through.",
        "Three feeds and one clear watering is a grower's trial of one season, mostly in lava "
        "rock; one in four while growth ends, and weak for few roots, are our proposals.",
    ),
    cannot_see=(
        "How much live growth there is. One trial plant weighed 28 g; a large clump uses more, "
        "old leafless bulbs use little.",
        "What slow-release beads give besides: with live beads in the pot, water clear.",
        "How much the roots catch: a Cattleya took up 46 % of the nitrogen given in one trial.",
        "Light and warmth: in a dark cool winter a plant in leaf uses less.",
        "A published figure for Catasetum or Paphiopedilum: none was found.",
    ),
    cautions=("Wet the granules with clear water before a feed if they have dried out.",),
    cases=(
        {"stage": "growing", "roots": "some"},
        {"stage": "growing", "roots": "wall"},
        {"stage": "maturing", "roots": "wall"},
        {"stage": "resting", "kind": "deciduous", "roots": "wall"},
        {"stage": "resting", "kind": "monopodial", "roots": "wall"},
        {"stage": "new_shoot", "roots": "some"},
    ),
    sources=(
        "tanaka-1988",
        "cattleya-uptake-57-4",
        "hackney-2011",
        "bottom-2023",
        "clarke-2012",
        "wang-1998",
        "wur-phalaenopsis-2014",
        "saltline-notes",
    ),
)

FORMS = (FEED_OFTEN,)
