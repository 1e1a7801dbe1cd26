"""How each sign of the damage key is looked for: one or two sentences for a grower's hands."""

from __future__ import annotations

_DRIP = (
    "Only if you have read it. How: wet the pot with clear water, let it drain and stand covered "
    "overnight at 18 °C or more, then pour 10 mL at a time over the top and read the first drips "
    "with the pen you read your feed with."
)
_INSIDE = "Through a clear pot or the drain holes; no need to unpot for this."

HOW = (
    ("dark_band_above_medium", "Is the dark piece at the same height on all of them?"),
    ("tips_dead", "The last few millimetres are black or dry; squeeze a little further back."),
    ("brown_inside_pot", _INSIDE),
    ("worst_at_bottom", _INSIDE),
    ("air_roots_dry_back", "Roots that never reached the granules."),
    (
        "soft_skin_slides",
        "Hold a dark root between two fingers and pull gently: is there a thread left?",
    ),
    ("hollow_papery", "Pinch it: does it give like an empty straw?"),
    ("firm_dark", "Squeeze it: it does not give, whatever its colour."),
    ("sour_smell", "Put your nose to the drain hole and to the damp granules."),
    (
        "crust_dissolves",
        "Read a spoon of pure water, stir in a pinch of crust for a minute, read it again. It is "
        "gone and the reading climbs: feed salt. Grit stays: lime or gypsum.",
    ),
    (
        "crust_fizzes",
        "One drop of vinegar on a crumb of fresh crust on a saucer: bubbles mean lime. Far from "
        "bleach, and rinse the saucer.",
    ),
    ("rested_drip_high", _DRIP),
    ("rested_drip_low", _DRIP),
    ("many_pots_same_feed", "Look at the neighbours that get the same can."),
    ("one_pot_only", "Look at the neighbours that get the same can."),
    ("cold_night", "Look at the thermometer's lowest mark, or think of the window."),
    ("sunk_pits", "They show days after the cold."),
    ("hot_day", "Look at the thermometer's highest mark, or lay a hand on the pot at noon."),
    ("tips_bitten", "Look with a lamp after dark, and lift the pot."),
    (
        "purple_ring",
        "Last of all: cut through the rhizome with a flamed or new blade and look at the fresh "
        "cut at once.",
    ),
    ("black_spreading", "Mark its edge with a pencil and look again tomorrow."),
    ("leaf_tips_dry", "The brown ends in a line; behind it the leaf is green."),
    ("oldest_leaves_yellow", "From the oldest leaf on, and the bulb is firm."),
    ("shrivelled_wet", "Push a finger in: the granules are damp, and still it wrinkles."),
    ("shrivelled_dry", "Lift the pot: it is as light as when it is dry."),
    ("fed_from_below", "And seldom rinsed through from above."),
    ("few_roots", "Newly divided, or roots lost before."),
    ("softened_water", "From the tap behind a softener that is fed with salt."),
    ("unfed_and_flushed", "And the damage still goes on."),
    ("roots_branch_behind_tip", "New side roots sprout just behind the dead end."),
    ("stippled_leaves", "Hold the leaf against the light."),
    ("webbing", "Wipe the underside with a white tissue."),
    ("soft_leaf_spots", "They give under a finger and look wet."),
    ("old_roots_only", _INSIDE),
)
