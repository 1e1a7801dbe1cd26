"""Pictures of the feed: what is in it, its jug and spoons, the pen beside the label, how often."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil
from typing import Any

from saltline.feeding import FeedOften
from saltline.pictures.axes import range_ruler
from saltline.pictures.bars import bars
from saltline.pictures.drawing import EDGE, ROW, WIDTH, area, dot, drawn, line, patterns, svg, text
from saltline.pictures.vessels import jug, level
from saltline.recipe import FeedRecipe
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


def feed_recipe(inputs: Mapping[str, Any], answer: FeedRecipe) -> str:
    """What the recipe reaches beside what was wanted."""
    names = ("nitrogen", "phosphorus", "potassium", "calcium", "magnesium")
    symbols = ("n_ppm", "p_ppm", "k_ppm", "ca_ppm", "mg_ppm")
    rows = []
    for name, symbol, reached in zip(names, symbols, answer.reached_ppm):
        wanted = " of {in:" + symbol + "}" if inputs[symbol] > 0.0 else " ppm"
        words = drawn(reached, "ppm") + wanted
        rows.append((name, words, reached))
    said = ", ".join([name + " " + words for name, words, _ in rows])
    return bars(owner="feed-recipe", says="Bars of what is reached: " + said + ".", rows=rows)


def feed_often(inputs: Mapping[str, Any], answer: FeedOften) -> str:
    """Four waterings as four cans: dots for feed, dashes for clear water."""
    feeds = answer.feeds_of_four
    parts = patterns("feed-often", "salt", "water")
    for at in range(4):
        x = 30.0 + 72.0 * at
        body = ((x, 26.0), (x + 40.0, 26.0), (x + 44.0, 78.0), (x - 4.0, 78.0))
        pattern = "feed-often-salt" if at < feeds else "feed-often-water" if feeds else ""
        parts += area(body, "card", pattern) + line(body + body[:1], "ink")
        parts += line(((x - 3.0, 66.0), (x - 18.0, 32.0), (x - 22.0, 38.0)), "ink")
        handle = ((x + 8.0, 26.0), (x + 12.0, 12.0), (x + 28.0, 12.0), (x + 32.0, 26.0))
        parts += line(handle, "ink")
    if not feeds:
        parts += text(WIDTH / 2.0, 104.0, "no feed now", "strong", "middle")
        return svg(114.0, "Four watering cans, none with feed.", parts)
    parts += text(EDGE, 104.0, f"feed in {feeds} of 4", "strong")
    parts += text(WIDTH - EDGE, 104.0, "clear water", "", "end")
    says = f"Four watering cans, {feeds} with feed and the rest with clear water."
    return svg(114.0, says, parts)
