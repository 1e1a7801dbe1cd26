"""Pictures of water that climbs: in a tube, and in a pot cut open."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.medium import MediumRise, TubeRise
from saltline.pictures.drawing import (
    GUTTER,
    box,
    callouts,
    drawn,
    line,
    patterns,
    scale,
    sign,
    svg,
    text,
    ticks,
)

TOP, FOOT = 34.0, 196.0
LEFT, RIGHT = 16.0, 152.0  # of the pot


def tube_rise(inputs: Mapping[str, Any], answer: TubeRise) -> str:
    """A tube in water beside a ruler, with the final height and the height by then."""
    marks = ticks(answer.rise_mm if answer.rise_mm > 0.0 else 1.0, 4)
    place = scale(0.0, marks[-1], FOOT - 26.0, TOP)
    level, top = place(0.0), place(answer.rise_mm)
    parts = patterns("tube-rise", "water") + text(6.0, 16.0, sign("mm"))
    for mark in marks:
        y = place(mark)
        parts += line(((GUTTER, y), (GUTTER + 10.0, y)), "ink thin")
        parts += text(GUTTER - 6.0, y + 5.0, drawn(mark, "mm"), "", "end")
    parts += line(((GUTTER, TOP), (GUTTER, level)), "ink thin")
    parts += box(80.0, level, 100.0, FOOT - level, "card", "tube-rise-water")
    parts += box(120.0, top, 20.0, FOOT - 8.0 - top, "card", "tube-rise-water")
    parts += line(((120.0, top), (140.0, top)), "water")
    parts += line(((80.0, level - 10.0), (80.0, FOOT), (180.0, FOOT), (180.0, level - 10.0)), "ink")
    for x in (120.0, 140.0):
        parts += line(((x, TOP - 8.0), (x, FOOT - 8.0)), "ink")
    items = [(142.0, top, "in the end", "{rise_mm}")]
    says = "Water climbs {rise_mm} in the end"
    if answer.rise_then_mm is not None:
        then = place(answer.rise_then_mm)
        parts += line(((114.0, then), (146.0, then)), "salt")
        items.append((146.0, then, "after {in:seconds}", "{rise_then_mm}"))
        says += " and {rise_then_mm} after {in:seconds}"
    parts += callouts(196.0, (TOP, level), items)
    return svg(FOOT + 8.0, "A tube standing in water. " + says + ".", parts)


def medium_rise(inputs: Mapping[str, Any], answer: MediumRise) -> str:
    """The pot cut open: standing water, damp, perhaps damp, dry."""
    height, water = inputs["pot_height_mm"], inputs["water_level_mm"]
    place = scale(0.0, height, FOOT - 6.0, TOP)
    level, maybe = place(water), place(height - answer.dry_top_mm_high)
    dry = place(height - answer.dry_top_mm_low)
    parts = patterns("medium-rise", "granules", "water", "band")
    parts += box(LEFT, TOP, RIGHT - LEFT, FOOT - TOP, "card", "medium-rise-granules")
    layers = (
        (TOP, dry, "", "dry top", "{dry_top_mm_low..dry_top_mm_high}"),
        (dry, maybe, "medium-rise-band", "perhaps damp", ""),
        (maybe, level, "medium-rise-water", "damp", ""),
        (level, FOOT, "", "standing water", "{in:water_level_mm}"),
    )
    items = []
    for top, foot, pattern, words, more in layers:
        if foot - top < 0.5 or (words == "standing water" and water <= 0.0):
            continue
        if pattern:
            parts += box(LEFT, top, RIGHT - LEFT, foot - top, "", pattern)
        if words == "standing water":
            parts += box(LEFT, top, RIGHT - LEFT, foot - top, "full-water")
            parts += line(((LEFT, top), (RIGHT, top)), "water")
        items.append((RIGHT - 8.0, (top + foot) / 2.0, words, more))
    wall = ((LEFT, TOP - 16.0), (LEFT, FOOT), (RIGHT, FOOT), (RIGHT, TOP - 16.0))
    parts += line(wall, "ink") + callouts(176.0, (TOP, FOOT), items)
    says = "A pot cut open. The dry layer on top is {dry_top_mm_low..dry_top_mm_high} deep; "
    return svg(FOOT + 8.0, says + "water stands {in:water_level_mm} deep.", parts)
