"""Pictures of rinses: the salt that is left after each, and which water comes last."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.mixing import FullMixing, RinseOrder
from saltline.pictures.bars import bars
from saltline.pictures.drawing import EDGE, ROW, WIDTH, box, line, patterns, plain, sign, svg, text

TOP, FOOT = 40.0, 150.0
UNSEEN_MS_CM = 0.0001


def _left(inputs: Mapping[str, Any]) -> list[float]:
    """Share of the salt left at the start and after each rinse."""
    rinses = inputs["rinses"]
    return [inputs["times_down"] ** (-i / rinses) for i in range(rinses + 1)]


def _percent(share: float) -> str:
    return plain(100.0 * share, 2) + "\u00a0%"


def full_mixing(inputs: Mapping[str, Any], answer: FullMixing) -> str:
    """A column for each rinse, filled with salt as far as salt is left."""
    left = _left(inputs)
    pitch = (WIDTH - 2.0 * EDGE) / len(left)
    wide = min(0.7 * pitch, 60.0)
    parts = patterns("full-mixing", "salt")
    for at, share in enumerate(left):
        middle = EDGE + pitch * (at + 0.5)
        x, top = middle - wide / 2.0, FOOT + share * (TOP - FOOT)
        parts += box(x, top, wide, FOOT - top, "card", "full-mixing-salt")
        parts += line(((x, TOP), (x, FOOT), (x + wide, FOOT), (x + wide, TOP)), "ink")
        parts += line(((x, top), (x + wide, top)), "water")
        said = _percent(share)
        if len(left) < 7:
            parts += text(middle, TOP - 10.0, said, "strong", "middle")
        elif at in (0, len(left) - 1):
            edge, anchor = (WIDTH - EDGE, "end") if at else (EDGE, "start")
            parts += text(edge, TOP - 10.0, said, "strong", anchor)
        parts += text(middle, FOOT + ROW, "start" if at == 0 else str(at), "", "middle")
    parts += text(WIDTH - EDGE, FOOT + 2.0 * ROW + 2.0, "salt left after each rinse", "", "end")
    says = "Salt left in the pot after each of {in:rinses} equal rinses, {water_ml} in all."
    return svg(FOOT + 2.0 * ROW + 12.0, says, parts)


def full_mixing_table(inputs: Mapping[str, Any], answer: FullMixing) -> tuple[tuple[str, ...], ...]:
    """The same shares, rinse by rinse."""
    rows = [("Rinse", "Salt left")]
    for at, share in enumerate(_left(inputs)):
        rows.append(("start" if at == 0 else str(at), _percent(share)))
    return tuple(rows)


def rinse_order(inputs: Mapping[str, Any], answer: RinseOrder) -> str:
    """What the pot ends at, by the order of the waters."""
    ends = (
        ("pure water last", "pure_last_ms_cm", answer.pure_last_ms_cm),
        ("pure water first", "pure_first_ms_cm", answer.pure_first_ms_cm),
        ("tap alone", "all_tap_ms_cm", answer.all_tap_ms_cm),
        ("pure water alone", "all_pure_ms_cm", answer.all_pure_ms_cm),
    )
    said = ", ".join([name + " {" + result + "}" for name, result, _ in ends])
    return bars(
        owner="rinse-order",
        says="Bars of what the pot ends at: " + said + ".",
        rows=[(name, _told(result, reads), reads) for name, result, reads in ends],
    )


def _told(result: str, reads: float) -> str:
    """What no pen can show is written as 0."""
    return "{" + result + "}" if reads >= UNSEEN_MS_CM else "0 " + sign("ms_cm")
