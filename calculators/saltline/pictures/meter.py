"""Pictures for the conductivity pen: the reading on a ruler, and the scales side by side."""

from __future__ import annotations

from collections.abc import Mapping
from math import log
from typing import Any

from saltline.meter import MeterReading, scale_from_ec
from saltline.pictures.axes import END, range_ruler
from saltline.pictures.drawing import EDGE, box, dot, line, patterns, scale, svg, text
from saltline.standards import SCALES, STANDARDS, WhichScale

NAMES = {
    "us_cm": "µS/cm",
    "ms_cm": "mS/cm",
    "ppm500": "500 scale",
    "ppm640": "640 scale",
    "ppm700": "700 scale",
    "cf": "cF",
}
# What a pen on each scale should read in each standard, as people write it.
SHOULD = {
    "bottle_1413": ("1413", "1.413", "707", "904", "989", "14.1"),
    "table_salt_0_5_g_l": ("1010", "1.01", "505", "646", "707", "10.1"),
}


def meter_reading(inputs: Mapping[str, Any], answer: MeterReading) -> str:
    """The reading and its range on a ruler."""
    return range_ruler(
        owner="meter-reading",
        says="A ruler of conductivity. Your water stands at {ec_ms_cm}, and the pen's own error "
        "allows {ec_ms_cm_low..ec_ms_cm_high}.",
        ends=(answer.ec_ms_cm_low, answer.ec_ms_cm_high),
        middle=answer.ec_ms_cm,
        words=("{ec_ms_cm}", "{ec_ms_cm_low..ec_ms_cm_high}"),
        unit="ms_cm",
    )


def which_scale(inputs: Mapping[str, Any], answer: WhichScale) -> str:
    """A row for each scale: what a pen on it should read, and where this reading falls."""
    standard, reading = inputs["standard"], inputs["reading"]
    ec, tolerance = STANDARDS[standard]
    place = scale(-log(2.0), log(2.0), 130.0, END)
    rows = ["ppm500", "ppm640", "ppm700"]
    rows.insert(0, _nearest(reading, ec, ("us_cm", "ms_cm", "cf")))
    foot = 42.0 + 34.0 * len(rows)
    low, high = place(log(1.0 - tolerance)), place(log(1.0 + tolerance))
    parts = patterns("which-scale", "band")
    parts += text(EDGE, 16.0, "should read")
    parts += text(place(0.0), 16.0, "your reading", "strong", "middle")
    parts += box(low, 26.0, high - low, foot - 26.0 - 22.0, "card", "which-scale-band")
    y = 46.0
    for name in rows:
        off = log(reading / scale_from_ec(ec_ms_cm=ec, scale=name))
        fits = name in (answer.scale, answer.also_fits)
        should = SHOULD[standard][SCALES.index(name)]
        parts += text(EDGE, y + 5.0, f"{NAMES[name]}: {should}", "strong" if fits else "")
        parts += line(((130.0, y), (END, y)), "grid")
        x = place(off)
        if abs(off) > log(2.0):
            tip = 6.0 if off > 0.0 else -6.0
            parts += line(((x - tip, y - 6.0), (x, y), (x - tip, y + 6.0)), "ink")
        else:
            parts += dot(x, y, 7.0, "full" if fits else "ink")
        y += 34.0
    parts += text(130.0, foot - 4.0, "too low")
    parts += text(place(0.0), foot - 4.0, "fits", "", "middle")
    parts += text(END, foot - 4.0, "too high", "", "end")
    return svg(foot + EDGE, _says(answer), parts)


def _nearest(reading: float, ec: float, names: tuple[str, ...]) -> str:
    return min(names, key=lambda name: abs(log(reading / scale_from_ec(ec_ms_cm=ec, scale=name))))


def _says(answer: WhichScale) -> str:
    if answer.scale is None:
        return "Your reading beside what each scale should read: it falls on none of them."
    said = "Your reading beside what each scale should read: it falls on the " + NAMES[answer.scale]
    if answer.also_fits is not None:
        said += " and cannot rule out the " + NAMES[answer.also_fits]
    return said + "."
