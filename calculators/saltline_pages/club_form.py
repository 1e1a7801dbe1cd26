"""The form of the element `salt-club`, which makes a link that sets the site for a club."""

from __future__ import annotations

import json
from collections.abc import Iterable
from html import escape

from saltline.declare import OTHER_UNITS, UNITS
from saltline.forms.meter import SCALES

UNIT_SYSTEMS = (("metric", "metric: L, mm, °C"), ("us", "US: gal, fl oz, in, °F"))
HEMISPHERES = (("north", "northern"), ("south", "southern"))


def club_html() -> str:
    """The element with its form; without script it has nothing to say."""
    ways = [[UNITS["ms_cm"][0], 1, 0], *(list(way) for way in OTHER_UNITS["ms_cm"])]
    units = _options((str(at), str(way[0])) for at, way in enumerate(ways))
    scales = _options((option.value, option.label) for option in SCALES)
    name = '<input id="club-name" name="name" maxlength="60">'
    tap = (
        '<input id="club-tap" name="tap" inputmode="decimal">'
        f'<select class="salt-unit" name="way" aria-label="Unit">{units}</select>'
    )
    return (
        f'<salt-club data-ways="{escape(json.dumps(ways))}">'
        '<form novalidate autocomplete="off" aria-label="A link for your club">'
        '<div class="salt-now"></div>'
        f"{_field('name', 'Name of the club', name)}"
        f"{_field('tap', 'Tap water, as your pen reads it', tap)}"
        f"{_choice('scale', 'What most pens show', scales)}"
        f"{_choice('units', 'Units', _options(UNIT_SYSTEMS))}"
        f"{_choice('hemisphere', 'Hemisphere', _options(HEMISPHERES))}"
        '<div class="salt-actions"><button type="submit" class="salt-main">Make the link</button>'
        '</div><p class="salt-note" role="status"></p><div class="salt-made"></div>'
        "</form></salt-club>"
    )


def _options(pairs: Iterable[tuple[str, str]]) -> str:
    return "".join(f'<option value="{value}">{escape(label)}</option>' for value, label in pairs)


def _choice(name: str, label: str, options: str) -> str:
    empty = '<option value="">do not set</option>'
    select = f'<select id="club-{name}" class="salt-wide" name="{name}">{empty}{options}</select>'
    return _field(name, label, select)


def _field(name: str, label: str, control: str) -> str:
    return (
        f'<div class="salt-field"><label for="club-{name}">{label}</label>'
        f'<div class="salt-box">{control}</div></div>'
    )
