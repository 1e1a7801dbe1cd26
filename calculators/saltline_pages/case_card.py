"""A case to ask the club: the form of the element `salt-case`, which makes a card and a link."""

from __future__ import annotations

import json
from html import escape
from typing import Any

from saltline.declare import OTHER_UNITS, UNITS
from saltline.forms.damage import DAMAGE_KEY
from saltline_pages.notes import METHODS

READINGS = (
    ("reading", "The pot reads"),
    ("feed", "The feed reads"),
    ("tap", "Tap or rain reads"),
)
DATES = (("read_on", "Read on"), ("fed_on", "Last fed on"), ("repotted_on", "Last repotted on"))
BUTTONS = (
    ("link", "Share the case"),
    ("print", "Print the card"),
    ("text", "Copy as text"),
    ("forget", "Forget it"),
)


def case_html() -> str:
    """The element; the answers it shows are those of the damage key on the same page."""
    ways: list[list[Any]] = [
        [UNITS["ms_cm"][0], 1, 0],
        *(list(way) for way in OTHER_UNITS["ms_cm"]),
    ]
    units = "".join(
        f'<option value="{at}">{escape(way[0])}</option>' for at, way in enumerate(ways)
    )
    methods = "".join(f"<option>{method}</option>" for method in METHODS)
    readings = "".join(
        _field(name, label, f'<input id="case-{name}" name="{name}" inputmode="decimal">')
        for name, label in READINGS
    )
    dates = "".join(
        _field(name, label, f'<input type="date" id="case-{name}" name="{name}">')
        for name, label in DATES
    )
    buttons = "".join(
        f'<button type="button" data-do="{name}">{label}</button>' for name, label in BUTTONS
    )
    unit = f'<select id="case-unit" class="salt-wide" name="unit">{units}</select>'
    method = f'<select id="case-method" class="salt-wide" name="method">{methods}</select>'
    medium = '<input id="case-medium" name="medium" maxlength="60">'
    return (
        f'<salt-case data-form="{DAMAGE_KEY.id}" data-ways="{escape(json.dumps(ways))}">'
        '<form novalidate autocomplete="off" aria-label="A case to ask the club">'
        f"{_field('medium', 'Medium and pot', medium)}{readings}"
        f"{_field('unit', 'What the pen shows', unit)}"
        f"{_field('method', 'How the pot was read', method)}{dates}"
        '<p class="salt-hint">Leave out names and places.</p></form>'
        '<div class="salt-card"><p>Answer the questions at the top first: the card shows what they '
        "say.</p></div>"
        f'<div class="salt-actions">{buttons}</div>'
        '<p class="salt-note" role="status"></p></salt-case>'
    )


def _field(name: str, label: str, control: str) -> str:
    return (
        f'<div class="salt-field"><label for="case-{name}">{label}</label>'
        f'<div class="salt-box">{control}</div></div>'
    )
