"""What several calculators ask in the same words: the plant's stage, its kind, its live roots."""

from __future__ import annotations

from saltline.declare import Option

STAGES = (
    Option(value="growing", label="In growth, with working roots"),
    Option(value="maturing", label="Growth done, bulbs filling"),
    Option(value="resting", label="At rest"),
    Option(value="new_shoot", label="New shoot, its roots not yet"),
    Option(value="lost_roots", label="In leaf, roots gone"),
    Option(value="rotting", label="Something is rotting"),
)
# To the question "Does it drop all its leaves?"
KINDS = (
    Option(value="deciduous", label="Yes, all of them"),
    Option(value="evergreen", label="No; it grows sideways, shoot after shoot"),
    Option(value="monopodial", label="No; it grows straight up from one stem"),
    Option(value="unknown", label="I do not know"),
)
ROOTS = (
    Option(value="none", label="None alive"),
    Option(value="some", label="Some, not at the wall yet"),
    Option(value="wall", label="At the pot's wall"),
    Option(value="full", label="The pot is full of them"),
)
