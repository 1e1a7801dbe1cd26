"""Flush day, step by step: the element `salt-session` with the declarations that it asks with."""

from __future__ import annotations

import json
from html import escape

from saltline.declare import Choice
from saltline.forms import all_forms
from saltline_pages.calculator import declaration

# The calculators whose science a session asks; their modules are loaded with the page's own.
NEEDS = ("flush-learn", "flush-plan")


def session_html() -> str:
    """The element, with a sentence for readers without script."""
    forms = all_forms()
    declared = {name: declaration(forms[name]) for name in NEEDS}
    text = json.dumps(declared, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return (
        f'<salt-session data-needs="{" ".join(NEEDS)}" data-asks="saltline.stopping.stopping">'
        '<div class="salt-screen"><p class="salt-static">The step-by-step session needs a script '
        "in this browser. The same steps stand below in words, and print well.</p></div>"
        f"{_chips('stage')}{_chips('kind')}"
        f'<script type="application/json">{text}</script></salt-session>'
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
