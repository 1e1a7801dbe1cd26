"""Sentences for the recipe."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from saltline.products import by_id
from saltline.recipe import NOTHING_G_L, NUTRIENTS, FeedRecipe
from saltline.saying import figure


def feed_recipe(inputs: Mapping[str, Any], answer: FeedRecipe) -> tuple[str, str, str]:
    """Verdict, number, reason for `feed-recipe`."""
    used = [at for at, grams in enumerate(answer.grams_per_l) if grams >= NOTHING_G_L]
    if not used:
        return "None of these products brings what you ask for.", "", "Add one that does."

    def weighed(grams: Sequence[float]) -> list[str]:
        return [
            figure(grams[at], 3) + " g of " + by_id(inputs["products"][at]).label for at in used
        ]

    verdict = "For {in:batch_l} of feed weigh:"
    if len(used) < len(inputs["products"]):
        verdict = "Not all of them are needed. " + verdict
    reached = [
        name.lower() + " " + figure(answer.reached_ppm[at], 3) for at, name in enumerate(NUTRIENTS)
    ]
    reason = "That makes, in ppm beside your water's own: " + ", ".join(reached) + "."
    if answer.ec_ms_cm_low is not None:
        reason += " Your pen should read {ec_ms_cm_low..ec_ms_cm_high}."
    if inputs["injector"] > 1.0:
        reason += " In each litre of stock for the injector: "
        reason += "; ".join(weighed(answer.stock_g_l)) + "."
    return verdict, ";\n".join(weighed(answer.dose_g)), reason
