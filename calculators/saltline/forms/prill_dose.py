"""Declarations: how many slow-release beads."""

from __future__ import annotations

from saltline import prill_dose
from saltline.declare import Choice, Form, Number, Result
from saltline.forms.choices import ROOTS, STAGES
from saltline.forms.release import (
    ASSUMPTIONS,
    CANNOT_SEE,
    CAUTIONS,
    DRAIN,
    LABEL,
    MEAN_C,
    N_PERCENT,
    RATED_DAYS,
    WATER_HELD,
    rated_c,
)
from saltline.pictures import release as pictures
from saltline.words import release as words

PRILL_DOSE = Form(
    id="prill-dose",
    question="How much for these roots?",
    function=prill_dose.prill_dose,
    version=1,
    inputs=(
        Choice(name="stage", label="What is the plant doing?", options=STAGES),
        Choice(name="roots", label="Live roots in the pot", options=ROOTS),
        Number(name="pot_l", label="Volume of the pot", unit="l", low=0.05, high=50),
        WATER_HELD,
        DRAIN,
        N_PERCENT,
        RATED_DAYS,
        rated_c(None),
        MEAN_C,
        Number(
            name="new_growth_g",
            label="Live new growth",
            unit="g",
            low=0,
            high=5000,
            hint="this season's shoots and leaves, fresh, a guess; not the old bulbs",
        ),
        Number(
            name="prill_mg",
            label="Mass of one bead",
            unit="mg",
            low=0.5,
            high=200,
            optional=True,
            hint="weigh 10 g and count; 7 to 57 mg for beads of 2 to 4 mm",
        ),
    ),
    results=(
        Result(name="dose_g_high", label="Beads, at most", unit="g", digits=2),
        Result(name="limited_by", label="Held down by", kind="words"),
        Result(name="peak_rise_ms_cm_high", label="Rise with idle roots", unit="ms_cm", digits=2),
        Result(name="prills_high", label="Number of beads, at most", unit="beads"),
        Result(
            name="peak_rise_worse_ms_cm_high",
            label="Rise if 5 °C warmer and half drained, up to",
            unit="ms_cm",
            digits=2,
        ),
        Result(
            name="counted_error_percent_low",
            label="Counted beads differ by, at least",
            unit="percent",
            digits=2,
        ),
        Result(name="counted_error_percent_high", label="at most", unit="percent", digits=2),
        Result(
            name="scooped_error_percent", label="Scooped beads differ by", unit="percent", digits=2
        ),
    ),
    words=words.prill_dose,
    picture=pictures.prill_dose,
    example=LABEL
    | {
        "stage": "growing",
        "roots": "wall",
        "pot_l": 0.9,
        "water_held_ml": 120.0,
        "drain_ml_day": 15.0,
        "n_percent": 15.0,
        "new_growth_g": 28.0,
        "prill_mg": 24.0,
    },
    equation=(
        r"m = \min(m_a, m_b, m_c)",
        r"m_a,\ m_b = \frac{S\, L}{r\, w\, p}",
        r"S_a = \frac{0.7\, G}{30}, \quad S_b = \frac{20\, V_\mathrm{pot}}{0.9 \cdot 30.4}",
        r"\frac{0.66}{100}\, \frac{\max N}{V} = 0.3 \Rightarrow m_c",
        r"\frac{\mathrm{CV}}{\sqrt{n}}, \quad \frac{100}{\sqrt{n}}",
    ),
    working=(
        "new growth G = {in:new_growth_g}, pot {in:pot_l}, water held V = {in:water_held_ml}",
        "L = {in:rated_days} at {in:rated_c}, w = {in:n_percent}; r faster at {in:mean_c}, p "
        "share out after L",
        "the smallest is {dose_g_high}, held down by {limited_by}",
        "CV ÷ √n: {counted_error_percent_low..counted_error_percent_high} counted; 100 ÷ √n: "
        "{scooped_error_percent} scooped",
    ),
    assumptions=(
        "Need: 0.7 mg of nitrogen for each gram of new growth in 30 days, from one Cattleya of "
        "28 g that did best on it. Rules for nursery shrubs give a pot about nine times more.",
        "The salt limit of 0.3 mS/cm is our guard; none is published.",
        *ASSUMPTIONS,
    ),
    cannot_see=(
        "How well the roots work. No published dose by root mass was found, so roots change the "
        "words and not the number, and no roots means no beads.",
        *CANNOT_SEE,
        "Feed that you pour on: it comes on top.",
    ),
    cautions=(*CAUTIONS, "Take beads out before the rest: a mesh bag of 1.0 to 1.4 mm lifts out."),
    cases=tuple(
        LABEL
        | {
            "stage": "growing",
            "roots": "wall",
            "pot_l": pot,
            "water_held_ml": held,
            "drain_ml_day": drain,
            "n_percent": 15.0,
            "new_growth_g": growth,
            "prill_mg": 24.0,
        }
        for pot, held, drain, growth in (
            (0.5, 60.0, 6.0, 28.0),
            (0.9, 120.0, 15.0, 28.0),
            (0.9, 120.0, 15.0, 5.0),
            (1.5, 200.0, 30.0, 60.0),
        )
    ),
    sources=("tanaka-1988", "saltline-notes", "du-2006", "khadduri-small-prill", "trenkel-2010"),
)

FORMS = (PRILL_DOSE,)
