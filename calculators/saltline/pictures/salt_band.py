"""The picture of the salt line: a root that leaves the damp medium, and a ruler beside it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.pictures.drawing import (
    EDGE,
    GUTTER,
    WIDTH,
    area,
    box,
    callouts,
    drawn,
    line,
    patterns,
    scale,
    sign,
    svg,
    text,
)
from saltline.salt_band import LONGEST_MM, SaltBand

TOP, SURFACE, FOOT = 40.0, 192.0, 236.0
MIDDLE = 118.0  # of the root
MM = (SURFACE - TOP) / LONGEST_MM


def salt_band(inputs: Mapping[str, Any], answer: SaltBand) -> str:
    """Root, wet band with its range, damp granules, and centimetres."""
    place = scale(0.0, LONGEST_MM, SURFACE, TOP)
    half = inputs["root_mm"] * MM / 2.0
    left, right = MIDDLE - half, MIDDLE + half
    low, high = place(answer.band_mm_low), place(answer.band_mm_high)
    parts = patterns("salt-band", "granules", "salt") + text(EDGE, 16.0, sign("mm"))
    parts += text(WIDTH - EDGE, 16.0, "likely {band_mm_low..band_mm_high}", "strong", "end")
    for mark in (0.0, 10.0, 20.0, 30.0, 40.0):
        y = place(mark)
        parts += line(((GUTTER - 2.0, y), (GUTTER + 8.0, y)), "ink thin")
        parts += text(GUTTER - 8.0, y + 5.0, drawn(mark, "mm"), "", "end")
    parts += line(((GUTTER - 2.0, TOP), (GUTTER - 2.0, SURFACE)), "ink thin")
    parts += box(left, 28.0, right - left, FOOT - 28.0, "card")
    parts += box(left, high, right - left, SURFACE - high, "", "salt-band-salt")
    for x in (left, right):
        parts += line(((x, 28.0), (x, FOOT)), "ink")
    range_x, middle = right + 12.0, place(answer.band_mm)
    parts += line(((range_x, low), (range_x, high)), "salt")
    for y in (low, middle, high):
        parts += line(((range_x - 5.0, y), (range_x + 5.0, y)), "salt")
    for a, b in ((70.0, left), (right, 172.0)):
        ground = ((a, SURFACE), (b, SURFACE), (b, FOOT), (a, FOOT))
        parts += area(ground, "wash", "salt-band-granules")
        parts += line(((a, SURFACE), (b, SURFACE)), "water")
    items = (
        (range_x + 6.0, middle, "wet edge", ""),
        (right - 3.0, (middle + SURFACE) / 2.0, "salt gathers", ""),
        (168.0, SURFACE + 24.0, "damp medium", ""),
    )
    parts += callouts(194.0, (TOP, FOOT - 4.0), items)
    says = (
        "A root that leaves the damp medium. It stays wet, and salt gathers, up to an edge that "
        "likely lies {band_mm_low..band_mm_high} above the surface."
    )
    return svg(FOOT + 8.0, says, parts)
