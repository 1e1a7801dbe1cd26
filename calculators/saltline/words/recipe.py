"""Sentences for the recipe."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.products import by_id
from saltline.recipe import NOTHING_G_L, NUTRIENTS, FeedRecipe
from saltline.saying import figure


def feed_recipe(inputs: Mapping[str, Any], answer: FeedRecipe) -> tuple[str, str, str]:
    """Verdict, number, reason for `feed-recipe`."""
    weighed = [
        figure(answer.grams_per_l[at], 3) + " g of " + by_id(id_).label
        for at, id_ in enumerate(inputs["products"])
        if answer.grams_per_l[at] >= NOTHING_G_L
    ]
    if not weighed:
        return "None of these products brings what you ask for.", "", "Add one that does."
    verdict = "For each litre weigh:"
    if len(weighed) < len(inputs["products"]):
        verdict = "Not all of them are needed. " + verdict
    reached = [
        name.lower() + " " + figure(answer.reached_ppm[at], 3) for at, name in enumerate(NUTRIENTS)
    ]
    reason = "Times the litres you mix. That makes, in ppm beside your water's own: "
    reason += ", ".join(reached) + "."
    if answer.ec_ms_cm_low is not None:
        reason += " Your pen should read {ec_ms_cm_low..ec_ms_cm_high}."
    return verdict, "; ".join(weighed), reason
