"""The picture of a soak's minutes: what the plant stands, what the granules need."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.granules import SoakMinutes
from saltline.pictures.axes import DEEP, LEFT, RIGHT, ruler
from saltline.pictures.drawing import EDGE, ROW, box, label, line, patterns, scale, svg, text, ticks


def soak_minutes(inputs: Mapping[str, Any], answer: SoakMinutes) -> str:
    """Two bars over one ruler of minutes."""
    limit = answer.plant_limit_min
    marks = ticks(max(answer.minutes_high, limit), 4)
    place = scale(0.0, marks[-1], LEFT, RIGHT)
    low, high = place(answer.minutes_low), place(answer.minutes_high)
    high = max(high, low + 3.0)
    parts = patterns("soak-minutes", "water", "band")
    parts += text(EDGE, 16.0, "one soak, at most {plant_limit_min}", "strong")
    parts += box(LEFT, 24.0, place(limit) - LEFT, 20.0, "card", "soak-minutes-water")
    for top, foot in ((22.0, 46.0), (74.0, 102.0)):
        parts += line(((place(limit), top), (place(limit), foot)), "ink")
    parts += label((low + high) / 2.0, 66.0, "granules {minutes_low..minutes_high}")
    parts += box(low, 76.0, high - low, 20.0, "card", "soak-minutes-band")
    middle = place(answer.minutes)
    parts += line(((middle, 76.0), (middle, 96.0)), "water")
    says = (
        "Two bars over a ruler of minutes: one soak lasts {plant_limit_min} at the most, the "
        "granules need {minutes_low..minutes_high}."
    )
    return svg(102.0 + DEEP + 2.0 * ROW + EDGE, says, parts + ruler(102.0, marks, "min"))
