"""The picture of the mesh: the granule it holds and the bead it lets through."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.pictures.drawing import callouts, dot, line, patterns, svg
from saltline.sieve import Sieve

MIDDLE, MESH = 96.0, 116.0
LARGEST = 84.0  # px across of the largest thing drawn
WIRE = 4.0


def sieve(inputs: Mapping[str, Any], answer: Sieve) -> str:
    """To scale: the smallest granule on the mesh, the largest bead below it."""
    bead, grain = inputs["prill_max_mm"], inputs["grain_min_mm"]
    opening = answer.aperture_mm
    px = LARGEST / max(bead, grain, opening or 0.0)
    radius, small = max(1.5, px * grain / 2.0), max(1.5, px * bead / 2.0)
    parts = patterns("sieve", "granules", "salt")
    if opening is not None:
        pitch = px * opening + 2.0 * WIRE
        for step in (-1.5, -0.5, 0.5, 1.5):
            x = MIDDLE + step * pitch
            if 2.0 * WIRE < x < 2.0 * MIDDLE - 2.0 * WIRE:
                parts += dot(x, MESH, WIRE, "full")
    else:
        parts += line(((16.0, MESH), (2.0 * MIDDLE - 16.0, MESH)), "salt dash")
    grain_y, bead_y = MESH - WIRE - 2.0 - radius, MESH + WIRE + 8.0 + small
    parts += dot(MIDDLE, grain_y, radius, "card", "sieve-granules") + dot(
        MIDDLE, grain_y, radius, "ink"
    )
    parts += dot(MIDDLE, bead_y, small, "card", "sieve-salt") + dot(MIDDLE, bead_y, small, "salt")
    words, more = "opening", "{aperture_mm}"
    if opening is None:
        words, more = "no mesh", "parts them"
    parts += callouts(
        176.0,
        (22.0, 214.0),
        (
            (MIDDLE + radius, grain_y, "smallest granule", "{in:grain_min_mm}"),
            (MIDDLE + LARGEST / 2.0, MESH, words, more),
            (MIDDLE + small, bead_y, "largest bead", "{in:prill_max_mm}"),
        ),
    )
    says = "The smallest granule, {in:grain_min_mm}, and the largest bead, {in:prill_max_mm}"
    if opening is None:
        says += ": no mesh parts them."
    else:
        says += ", with a mesh of {aperture_mm} between them."
    return svg(226.0, says, parts)
