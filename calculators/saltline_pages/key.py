"""The damage key one question a screen: the element `salt-key`, its first question built in."""

from __future__ import annotations

import json
from html import escape

from saltline.forms.choices import STAGES
from saltline.forms.damage import DAMAGE_KEY

# What a grower may start from, by where it is seen. Signs that cost a wound are left out.
FIRST = (
    (
        "On the roots",
        (
            "dark_band_above_medium",
            "tips_dead",
            "soft_skin_slides",
            "hollow_papery",
            "firm_dark",
            "tips_bitten",
            "air_roots_dry_back",
            "brown_inside_pot",
            "old_roots_only",
        ),
    ),
    (
        "Pot, bulbs and base",
        ("sour_smell", "black_spreading", "shrivelled_wet", "shrivelled_dry"),
    ),
    (
        "On the leaves",
        (
            "leaf_tips_dry",
            "oldest_leaves_yellow",
            "soft_leaf_spots",
            "sunk_pits",
            "stippled_leaves",
            "webbing",
        ),
    ),
)


def key_html() -> str:
    """The element; it drives the form of the calculator below it on the page."""
    buttons = "".join(
        f'<button type="button" value="{option.value}">{escape(option.label)}</button>'
        for option in STAGES
    )
    first = escape(json.dumps(FIRST))
    return (
        f'<salt-key data-form="{DAMAGE_KEY.id}" data-first="{first}">'
        '<p class="salt-count">Question 1 of about 7</p>'
        f'<h2 class="salt-asked" tabindex="-1">{escape(DAMAGE_KEY.input("stage").label)}</h2>'
        f'<div class="salt-options">{buttons}</div></salt-key>'
    )
