"""A few amounts side by side, as bars with their names above them."""

from __future__ import annotations

from collections.abc import Sequence

from saltline.pictures.axes import END
from saltline.pictures.drawing import EDGE, ROW, box, line, patterns, scale, svg, text

STEP = 44.0  # from one bar to the next


def bars(*, owner: str, says: str, rows: Sequence[tuple[str, str, float]]) -> str:
    """Bars from 0, the longest across the picture; rows are a name, its amount in words, and it."""
    top = max([amount for _, _, amount in rows])
    place = scale(0.0, top if top > 0.0 else 1.0, EDGE, END)
    parts = patterns(owner, "salt")
    for at, (name, words, amount) in enumerate(rows):
        y = 16.0 + STEP * at
        parts += text(EDGE, y, name) + text(END, y, words, "strong", "end")
        foot = y + ROW + 2.0
        if amount > 0.0:
            parts += box(EDGE, y + 6.0, place(amount) - EDGE, 15.0, "card", owner + "-salt")
        parts += line(((EDGE, y + 6.0), (EDGE, foot)), "ink")
        parts += line(((EDGE, foot), (max(place(amount), EDGE), foot)), "salt")
    return svg(16.0 + STEP * len(rows) - 10.0, says, parts)
