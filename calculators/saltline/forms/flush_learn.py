"""Declarations: what a pot's own readings say."""

from __future__ import annotations

from saltline import flush_learn
from saltline.asking import Kind
from saltline.declare import Form, Number, Result, Words
from saltline.flush_log import BOUNDS, KINDS
from saltline.forms.pot_inputs import (
    ASSUMED,
    BINDING,
    GRAIN,
    LAYERS,
    LINE,
    MEDIUM,
    NO_POT,
    POT,
    RINSE,
    WATER_HELD,
)
from saltline.pictures import flush as pictures
from saltline.words import pot as words

EXAMPLE = {
    "log": ["drip:1.9", "soak:400:10:0.66", "soak:400:10:0.37", "rest:12", "drip:0.95"],
    "rinse_ms_cm": 0.2,
    "pot_l": 1.0,
    "grain_mm": 8.0,
}


def _part(name: str, label: str, unit: str, figure: str, hint: str = "") -> Number:
    """A figure of an event, with the bounds that the log has for it."""
    (low, high) = next((low, high) for known, low, high in BOUNDS if known == figure)
    return Number(name=name, label=label, unit=unit, low=low, high=high, hint=hint)


# The figures of the log's words (flush_log) as fields, and their kinds as sentences.
PARTS = {
    "mL": _part("event_ml", "How much water", "ml", "mL"),
    "minutes": _part("event_min", "Minutes in the water", "min", "minutes"),
    "hours": _part("event_h", "Hours it stood", "h", "hours"),
    "reading": _part("event_ms_cm", "What the pen read", "ms_cm", "reading"),
}
DONE = {
    "drip": ("Read the drips", "Drips read {in:event_ms_cm}", "", ""),
    "pour": (
        "Poured",
        "Poured {in:event_ml}",
        "; what ran out read {in:event_ms_cm}",
        "Not read? Leave the reading empty.",
    ),
    "soak": (
        "Soaked",
        "Soaked in {in:event_ml} for {in:event_min}",
        "; the bath read {in:event_ms_cm}",
        "Not read? Leave the reading empty.",
    ),
    "rest": ("Let it stand", "Stood drained for {in:event_h}", "", ""),
}


def _kind(word: str) -> Kind:
    names, least = next((names, least) for known, _, names, least in KINDS if known == word)
    label, said, tail, hint = DONE[word]
    return Kind(
        word=word,
        label=label,
        parts=tuple(PARTS[name].name for name in names),
        least=least,
        said=said,
        tail=tail,
        hint=hint,
    )


FLUSH_LEARN = Form(
    id="flush-learn",
    question="What do my readings say is left?",
    function=flush_learn.flush_learn,
    version=1,
    inputs=(
        Words(
            name="log",
            label="What you did and read",
            pattern=r"[a-z0-9_.:-]+",
            least=1,
            most=40,
            hint="in order: drip:reading, soak:mL:minutes:reading, pour:mL:reading, rest:hours; "
            "readings in mS/cm; begin with a pot that had stood covered overnight",
            kinds=tuple(_kind(word) for word in DONE),
            parts=tuple(PARTS.values()),
            begin="Begin with a pot that had stood covered overnight. Touch a line to change it.",
        ),
        RINSE,
        Number(
            name="target_ms_cm",
            label="Stop when it reads",
            unit="ms_cm",
            low=0,
            high=20,
            optional=True,
            origin="Empty: a quarter of what was above your rinse water at the start, and never "
            "nearer to the rinse water than 0.1 mS/cm (house rule, proposed).",
            more=True,
        ),
        POT,
        WATER_HELD,
        GRAIN,
        MEDIUM,
    ),
    results=(
        Result(name="left_ms_cm_low", label="In the pot now: at least", unit="ms_cm", digits=2),
        Result(name="left_ms_cm_high", label="at most", unit="ms_cm", digits=2),
        Result(name="start_ms_cm_low", label="At the start: at least", unit="ms_cm", digits=2),
        Result(name="start_ms_cm_high", label="at most", unit="ms_cm", digits=2),
        Result(name="more_pours_low", label="Pours still to go: at least", digits=1),
        Result(name="more_pours_high", label="at most", digits=1),
        Result(name="stop_ms_cm", label="Stop when it reads", unit="ms_cm", digits=2),
        Result(name="reached", label="Reached by then", kind="words"),
        Result(name="rested", label="First drips after a covered night among them", kind="words"),
        Result(name="fits", label="Readings fit a simple pot", kind="words"),
        Result(name="coarse", label="A rough range", kind="words"),
        Result(
            name="inside_each_ms_cm_low",
            label="In the pot after each step: at least",
            unit="ms_cm",
            digits=2,
            kind="list",
        ),
        Result(name="inside_each_ms_cm_high", label="at most", unit="ms_cm", digits=2, kind="list"),
        Result(name="answer", label="Answer", kind="words"),
    ),
    words=words.flush_learn,
    picture=pictures.flush_learn,
    table=pictures.flush_learn_table,
    example=EXAMPLE,
    equation=(
        r"w \propto \exp\left( -\frac{1}{2} \sum_i \left( \frac{x_i - m_i}{s_i} \right)^2 "
        r"\right)",
    ),
    working=(
        "w, the weight of each pot that could be yours: x what you read, m what it would show, "
        "s the error of a reading",
        "at the start {start_ms_cm_low..start_ms_cm_high}, left {left_ms_cm_low..left_ms_cm_high}",
    ),
    assumptions=(
        *ASSUMED,
        "Each pot that could be yours is weighted by how well it explains your readings: a drip "
        "good to 6 %, a bath to 2 % and 0.008 mS/cm (our estimate).",
        "Pours still to go are of one pot water each, three a morning.",
        "Of 200 made-up pots the range held the truth in all where readings came after covered "
        "nights, and in 8 of 10 where they did not.",
    ),
    cannot_see=(
        "Corners that stay dry. In made-up pots with one, more was left than the range says in a "
        "tenth of cases after covered nights, in a third without them, once by five times.",
        LINE,
        LAYERS,
        BINDING,
        NO_POT,
    ),
    cases=(
        EXAMPLE,
        EXAMPLE | {"log": ["drip:1.9"]},
        EXAMPLE | {"log": ["soak:400:10:0.66", "soak:400:10:0.37"]},
        EXAMPLE
        | {"log": ["drip:1.9", "pour:150:0.9", "rest:1", "pour:150:0.7", "rest:12", "drip:1.1"]},
    ),
    sources=("saltline-notes", "kish-1965", "veach-guibas-1995", "van-genuchten-wierenga-1976"),
)

FORMS = (FLUSH_LEARN,)
