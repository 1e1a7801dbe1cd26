"""Declarations: the blend of tap and pure water."""

from __future__ import annotations

from saltline import blend
from saltline.declare import Form, Number, Result
from saltline.pictures import water as pictures
from saltline.words import blend as words

WATER_BLEND = Form(
    id="water-blend",
    question="How much rain or RO in the can?",
    function=blend.water_blend,
    version=1,
    inputs=(
        Number(
            name="tap_ms_cm",
            label="What your tap water reads",
            unit="ms_cm",
            low=0.01,
            high=3,
            hint="read it with the same pen, after the tap has run",
        ),
        Number(
            name="pure_ms_cm",
            label="What the rain or RO water reads",
            unit="ms_cm",
            low=0,
            high=1,
            default=0.02,
            origin="Fresh rain and water from a working filter read 0.01-0.05 mS/cm (common "
            "practice, no source). Each 0.01 mS/cm more takes about 0.1 L of tap out of 10 L.",
        ),
        Number(
            name="target_ms_cm",
            label="What the mix should read",
            unit="ms_cm",
            low=0.01,
            high=3,
            hint="before feed goes in",
        ),
        Number(name="batch_l", label="Water to mix", unit="l", low=0.1, high=10000),
    ),
    results=(
        Result(name="tap_l", label="Tap water", unit="l"),
        Result(name="pure_l", label="Rain or RO water", unit="l"),
        Result(name="tap_share", label="Share of tap water", unit="share", digits=2),
        Result(name="tap_share_low", label="for tap rich in sulfate", unit="share", digits=2),
        Result(name="tap_share_high", label="for tap rich in salt", unit="share", digits=2),
        Result(name="ec_ms_cm_low", label="The mix should read at least", unit="ms_cm", digits=2),
        Result(name="ec_ms_cm_high", label="and at most", unit="ms_cm", digits=2),
    ),
    words=words.water_blend,
    picture=pictures.water_blend,
    example={"tap_ms_cm": 0.7, "target_ms_cm": 0.35, "batch_l": 10.0},
    equation=(
        r"\kappa(r\, s) = \kappa_\mathrm{target} - (1 - r)\, \kappa_\mathrm{pure}",
        r"\kappa(s) = \kappa_\mathrm{tap}",
    ),
    working=(
        "s: the salts that make tap water read {in:tap_ms_cm}; r: the share of tap water",
        "r = {tap_share} makes the mix read {in:target_ms_cm}",
        "{tap_share} of {in:batch_l} = {tap_l}, and {pure_l} to fill up",
    ),
    assumptions=(
        "The tap water is hard, like most that needs cutting: calcium, bicarbonate, some sulfate. "
        "The range runs from sulfate-rich to salt-rich water.",
        "All three readings are from one pen, at one temperature.",
    ),
    cannot_see=(
        "Lime that settles when the mix stands: it then reads less.",
        "What is in the tap water. Your supplier's sheet says.",
        "Which reading is right for your orchids: no limit is published.",
    ),
    cautions=(
        "Do not use softened water: it carries sodium. Take water from before the softener.",
        "Never let a hose hang in the can: water can be drawn back into the pipe.",
    ),
    cases=(
        {"tap_ms_cm": 0.7, "target_ms_cm": 0.1, "batch_l": 10.0},
        {"tap_ms_cm": 0.7, "target_ms_cm": 0.2, "batch_l": 10.0},
        {"tap_ms_cm": 0.7, "target_ms_cm": 0.35, "batch_l": 10.0},
        {"tap_ms_cm": 0.4, "target_ms_cm": 0.2, "batch_l": 10.0},
        {"tap_ms_cm": 1.2, "target_ms_cm": 0.3, "batch_l": 10.0},
    ),
    sources=("saltline-notes", "crc-ions", "phreeqc-3", "ali-2011"),
)

FORMS = (WATER_BLEND,)
