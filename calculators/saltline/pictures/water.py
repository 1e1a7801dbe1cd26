"""Pictures of the water: what it should read, its hardness, and a blend in its jug."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.blend import WaterBlend
from saltline.hardness import Hardness, hardness_class
from saltline.ions import IonsToEc
from saltline.pictures.axes import LEFT, RIGHT, range_ruler, ruler
from saltline.pictures.drawing import (
    EDGE,
    ROW,
    box,
    callouts,
    label,
    line,
    patterns,
    scale,
    svg,
    text,
)
from saltline.pictures.vessels import jug, level

MARKS = (0.0, 60.0, 120.0, 180.0, 240.0)  # the household classes are 60 mg/L wide
PATTERNS = ((), ("hardness-salt",), ("hardness-band",), ("hardness-salt", "hardness-band"))
NAMES = ("soft", "moderately hard", "hard", "very hard")


def ions_to_ec(inputs: Mapping[str, Any], answer: IonsToEc) -> str:
    """What a pocket pen should show, as a range on a ruler."""
    return range_ruler(
        owner="ions-to-ec",
        says="A ruler of conductivity. These ions make {ec_ms_cm}; a pocket pen should show "
        "{ec_ms_cm_low..ec_ms_cm_high}.",
        ends=(answer.ec_ms_cm_low, answer.ec_ms_cm_high),
        middle=answer.ec_ms_cm,
        words=("{ec_ms_cm}", "pen {ec_ms_cm_low..ec_ms_cm_high}"),
        unit="ms_cm",
    )


def hardness(inputs: Mapping[str, Any], answer: Hardness) -> str:
    """The hardness on a ruler of the household classes; beyond its end an arrow."""
    value = answer.mg_l_caco3
    place = scale(0.0, MARKS[-1], LEFT, RIGHT)
    x, y = place(value), 84.0
    parts = patterns("hardness", "salt", "band")
    for at, names in enumerate(PATTERNS):
        left = place(MARKS[at])
        for pattern in names:
            parts += box(left, y - 20.0, place(MARKS[at + 1]) - left, 20.0, "", pattern)
        middle = (left + place(MARKS[at + 1])) / 2.0
        parts += text(middle, y + 84.0 + ROW * (at % 2), NAMES[at], "", "middle")
    parts += ruler(y, MARKS, "mg_l_caco3")
    parts += label(x, 16.0, "{mg_l_caco3}", "strong")
    parts += label(x, 16.0 + ROW, "{german}")
    if value > MARKS[-1]:
        parts += line(((x - 30.0, 50.0), (x, 50.0), (x - 8.0, 43.0)), "water")
        parts += line(((x, 50.0), (x - 8.0, 57.0)), "water")
    else:
        parts += line(((x, 42.0), (x, y)), "water")
    word = hardness_class(mg_l_caco3=value)
    says = "A ruler of hardness. Your water stands at {mg_l_caco3}, {german}: " + word + "."
    return svg(y + 84.0 + ROW + EDGE, says, parts)


def water_blend(inputs: Mapping[str, Any], answer: WaterBlend) -> str:
    """Tap water in a jug with pure water on it; the hatched layer depends on the tap's salts."""
    parts = patterns("water-blend", "salt", "water", "band")
    tap, low, high = answer.tap_share, answer.tap_share_low, answer.tap_share_high
    parts += level(0.0, tap, "wash", "water-blend-salt")
    parts += level(tap, 1.0, "card", "water-blend-water")
    parts += level(low, max(high, low + 0.01), "card", "water-blend-band")
    parts += jug()
    place = scale(0.0, 1.0, 190.0, 44.0)
    parts += callouts(
        180.0,
        (44.0, 190.0),
        (
            (150.0, place((1.0 + tap) / 2.0), "rain or RO", "{pure_l}"),
            (150.0, place(tap / 2.0), "tap water", "{tap_l}"),
        ),
    )
    says = (
        "A jug holding {pure_l} of rain or RO water over {tap_l} of tap water: "
        "{tap_share_low..tap_share_high} tap, by what your tap is rich in."
    )
    return svg(210.0, says, parts)
