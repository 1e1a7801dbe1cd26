"""Pictures of what is inside a pot: against the feed, and by one reading."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.is_it_high import IsItHigh
from saltline.pictures.axes import range_ruler
from saltline.pictures.drawing import span
from saltline.pore_water import PoreWater


def is_it_high(inputs: Mapping[str, Any], answer: IsItHigh) -> str:
    """The pot in strengths of the reader's own feed; without a feed reading, on their pen."""
    tap = inputs["tap"]
    if answer.times_feed_low is None or answer.times_feed_high is None:
        above = max(0.0, inputs["reading"] - tap)
        low, high = tap + above * answer.times_reading_low, tap + above * answer.times_reading_high
        return range_ruler(
            owner="is-it-high",
            says="A ruler in the figures of your pen: inside the pot it would read "
            + span(low, high, "").rstrip()
            + ".",
            ends=(low, high),
            middle=None,
            words=("inside the pot", span(low, high, "")),
            unit="",
            marks=((tap, "your tap {in:tap}"), (inputs["reading"], "your reading {in:reading}")),
        )
    return range_ruler(
        owner="is-it-high",
        says="A ruler in strengths of your feed, counted above your tap: the pot stands at "
        "{times_feed_low..times_feed_high}. No limit is drawn, because none is published.",
        ends=(answer.times_feed_low, answer.times_feed_high),
        middle=None,
        words=("inside the pot", "{times_feed_low..times_feed_high}"),
        unit="times",
        marks=((0.0, "your tap"), (1.0, "your feed")),
    )


def pore_water(inputs: Mapping[str, Any], answer: PoreWater) -> str:
    """The water inside the pot with its range, beside the rinse water and the reading."""
    return range_ruler(
        owner="pore-water",
        says="A ruler of conductivity: inside the pot {pot_ms_cm_low..pot_ms_cm_high}, your "
        "reading {in:reading_ms_cm}, your rinse water {in:rinse_ms_cm}.",
        ends=(answer.pot_ms_cm_low, answer.pot_ms_cm_high),
        middle=answer.pot_ms_cm,
        words=("inside the pot", "{pot_ms_cm_low..pot_ms_cm_high}"),
        unit="ms_cm",
        marks=(
            (inputs["rinse_ms_cm"], "rinse water {in:rinse_ms_cm}"),
            (inputs["reading_ms_cm"], "your reading {in:reading_ms_cm}"),
        ),
    )
