"""Flush day, step by step: the element `salt-session` with the declarations that it asks with."""

from __future__ import annotations

import json
from html import escape

from saltline.declare import Choice
from saltline.forms import all_forms
from saltline_pages.calculator import declaration

# The calculators whose science a session asks; their modules are loaded with the page's own.
NEEDS = ("flush-learn", "flush-plan")
# What the screens say; they stand in the page, so that its script is small.
EVENING = (
    "Put the pen in a bottle of standard (1.413 mS/cm). Then read your water.",
    "Lift out slow-release beads that lie on top; brush crust into the bin. Empty the saucers.",
    "Water each pot slowly with clear water until it runs out below.",
    "Let them drain for 15 minutes, each in its own basin.",
    "Stand them apart in the shade, at 18 °C or more. Cover the pots, not the leaves.",
)
WORDS = {
    "pots": (
        "One pot to a dozen. Enter the healthy ones first and doubtful ones last; sick ones get no "
        "flush.",
    ),
    "night": (
        "Let the pots drain and stand airy. Before the night cover them again, out of the cold, "
        "and take the cover off before the sun.",
    ),
    "pours": (
        "Take some three minutes, at 20 to 25 °C, turning the pot over its own basin. Throw that "
        "water away. Crown and new shoots stay dry.",
    ),
    "rest": (
        "Leave the pots drained and airy. The granules let go of their salt meanwhile; rest is "
        "free, soaking is not.",
    ),
    "done": (
        "Now a normal dry-down for each pot, then weak feed. Read the first drips once more in two "
        "weeks: a rise means slow granules or beads.",
        "What this cannot see: the line where roots meet air. Clear drips say nothing about it.",
    ),
}


def session_html() -> str:
    """The element, with a sentence for readers without script."""
    forms = all_forms()
    declared = {name: declaration(forms[name]) for name in NEEDS}
    text = json.dumps(declared, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return (
        f'<salt-session data-needs="{" ".join(NEEDS)}" data-asks="saltline.stopping.stopping">'
        '<div class="salt-screen"><p class="salt-static">The step-by-step session needs a script '
        "in this browser. The same steps stand below in words, and print well.</p></div>"
        f"{_chips('stage')}{_chips('kind')}{_words()}"
        f'<script type="application/json">{text}</script></salt-session>'
    )


def _words() -> str:
    """The words of each screen, kept aside for it."""
    tasks = "".join(
        f'<li><label><input type="checkbox" name="task{at}"><span>{escape(text)}</span>'
        "</label></li>"
        for at, text in enumerate(EVENING)
    )
    said = {
        "evening": f'<ul class="salt-tasks">{tasks}</ul>',
        **{
            name: "".join(f"<p>{escape(text)}</p>" for text in texts)
            for name, texts in WORDS.items()
        },
    }
    return "".join(
        f'<template data-words="{name}">{html}</template>' for name, html in said.items()
    )


def _chips(name: str) -> str:
    """The choices of an input, kept aside for the pots' form."""
    item = all_forms()["flush-plan"].input(name)
    assert isinstance(item, Choice)
    chips = "".join(
        f'<label class="salt-chip"><input type="radio" name="{name}" value="{option.value}">'
        f"<span>{escape(option.label)}</span></label>"
        for option in item.options
    )
    return (
        f'<template data-choice="{name}"><fieldset class="salt-field"><legend>{escape(item.label)}'
        f'</legend><div class="salt-chips">{chips}</div></fieldset></template>'
    )
