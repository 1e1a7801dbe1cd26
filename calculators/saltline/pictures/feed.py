"""Pictures of the feed: what is in it, a jug with its spoons, the pen beside the label."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil
from typing import Any

from saltline.pictures.axes import range_ruler
from saltline.pictures.bars import bars
from saltline.pictures.drawing import ROW, dot, line, patterns, svg, text
from saltline.pictures.vessels import jug, level
from saltline.strength import FeedCheck, FeedDose, LabelStrength

LEAST_SPOON, MOST_SPOONS = 0.1, 8.0


def label_strength(inputs: Mapping[str, Any], answer: LabelStrength) -> str:
    """The elements of the mixed feed side by side."""
    return bars(
        owner="label-strength",
        says="Bars of what the feed holds: nitrogen {n_ppm}, phosphorus {p_ppm}, potassium "
        "{k_ppm}, calcium {ca_ppm}, magnesium {mg_ppm}.",
        rows=(
            ("nitrogen", "{n_ppm}", answer.n_ppm),
            ("phosphorus", "{p_ppm}", answer.p_ppm),
            ("potassium", "{k_ppm}", answer.k_ppm),
            ("calcium", "{ca_ppm}", answer.ca_ppm),
            ("magnesium", "{mg_ppm}", answer.mg_ppm),
        ),
    )


def feed_dose(inputs: Mapping[str, Any], answer: FeedDose) -> str:
    """The jug, the grams, and the spoons: filled ones surely, hatched ones perhaps."""
    parts = patterns("feed-dose", "water", "salt", "band")
    parts += level(0.0, 0.86, "card", "feed-dose-water") + jug()
    parts += text(92.0, 210.0, "{in:batch_l}", "strong", "middle")
    parts += text(190.0, 40.0, "weigh") + text(190.0, 40.0 + ROW, "{dose_g}", "strong")
    spoons = _spoons(answer)
    if spoons:
        parts += text(190.0, 94.0, "level teaspoons")
        parts += text(190.0, 94.0 + ROW, "{teaspoons_low..teaspoons_high}", "strong")
    for at in range(spoons):
        x, y = 200.0 + 30.0 * (at % 4), 134.0 + 48.0 * (at // 4)
        sure = at < answer.teaspoons_low
        parts += line(((x, y + 8.0), (x, y + 34.0)), "ink")
        parts += dot(x, y, 8.0, "card", "feed-dose-salt" if sure else "feed-dose-band")
        parts += dot(x, y, 8.0, "ink")
    says = "A jug of {in:batch_l} of feed. Weigh {dose_g}"
    if spoons:
        says += ", or take {teaspoons_low..teaspoons_high}, level"
    return svg(222.0, says + ".", parts)


def _spoons(answer: FeedDose) -> int:
    """How many spoons to draw; for pinches and heaps only the scale is of use."""
    told = answer.teaspoons_low >= LEAST_SPOON and answer.teaspoons_high <= MOST_SPOONS
    return ceil(answer.teaspoons_high) if told else 0


def feed_check(inputs: Mapping[str, Any], answer: FeedCheck) -> str:
    """What the pen finds, as a range on a ruler, with what was meant."""
    meant = inputs["label_n_ppm"]
    says = "A ruler of nitrogen. By the pen your feed holds {n_ppm_low..n_ppm_high}"
    marks: tuple[tuple[float, str], ...] = ()
    if meant is not None:
        marks = ((meant, "you meant {in:label_n_ppm}"),)
        says += "; you meant {in:label_n_ppm}"
    return range_ruler(
        owner="feed-check",
        says=says + ".",
        ends=(answer.n_ppm_low, answer.n_ppm_high),
        middle=answer.n_ppm,
        words=("by the pen", "{n_ppm_low..n_ppm_high}"),
        unit="ppm",
        marks=marks,
    )
