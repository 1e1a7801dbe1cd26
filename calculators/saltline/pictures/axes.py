"""Rulers and plots: numbers along an edge, in the reader's own units."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from saltline.pictures.drawing import (
    EDGE,
    ROW,
    WIDTH,
    area,
    box,
    drawn,
    label,
    line,
    patterns,
    scale,
    sign,
    svg,
    text,
    ticks,
)

LEFT, RIGHT = 34.0, WIDTH - 34.0  # of a ruler
START, END = 54.0, WIDTH - 24.0  # of a plot
TOP, FOOT = 42.0, 178.0
DEEP = 24.0  # of a ruler

type Place = Callable[[float], float]


def ruler(y: float, marks: Sequence[float], unit: str) -> str:
    """A ruler from 0 with its numbers below and the unit under its right end."""
    place = scale(0.0, marks[-1], LEFT, RIGHT)
    frame = ((LEFT, y), (RIGHT, y), (RIGHT, y + DEEP), (LEFT, y + DEEP))
    parts = area(frame, "card") + line(frame + frame[:1], "ink thin")
    parts += _numbers(marks, place, y + DEEP + ROW - 3.0, unit)
    for mark in marks:
        x = place(mark)
        parts += line(((x, y), (x, y + 14.0)), "ink thin")
        for part in (1, 2, 3, 4):
            if mark < marks[-1]:
                x = place(mark + marks[1] * part / 5.0)
                parts += line(((x, y), (x, y + 8.0)), "ink thin")
    below = text(WIDTH - EDGE, y + DEEP + 2.0 * ROW - 3.0, sign(unit), "", "end")
    return parts + (below if unit else "")


def _numbers(marks: Sequence[float], place: Place, y: float, unit: str) -> str:
    """Numbers under the marks; long ones only at the ends."""
    if marks[-1] < (1000.0 if unit else 10000.0) and marks[1] >= 0.001:
        return "".join(text(place(mark), y, drawn(mark, unit), "", "middle") for mark in marks)
    first = text(place(marks[0]), y, drawn(marks[0], unit), "", "middle")
    return first + text(WIDTH - EDGE, y, drawn(marks[-1], unit), "", "end")


def range_ruler(
    *,
    owner: str,
    says: str,
    ends: tuple[float, float],
    middle: float | None,
    words: tuple[str, str],
    unit: str,
    marks: Sequence[tuple[float, str]] = (),
) -> str:
    """A range as a hatched band on a ruler from 0, with its middle and up to two named marks.

    `words` stand above: the value, and the range.
    """
    low, high = ends
    top = max([high] + [value for value, _ in marks])
    steps = ticks(top if top > 0.0 else 1.0, 4)
    place = scale(0.0, steps[-1], LEFT, RIGHT)
    left, right = place(low), max(place(high), place(low) + 3.0)
    y = 72.0
    parts = patterns(owner, "band")
    parts += label((left + right) / 2.0, 16.0, words[0], "strong")
    parts += label((left + right) / 2.0, 16.0 + ROW, words[1])
    parts += box(left, y - 26.0, right - left, 26.0, "card", owner + "-band")
    parts += line(((left, y), (left, y - 26.0), (right, y - 26.0), (right, y)), "water")
    if middle is not None:
        parts += line(((place(middle), y - 26.0), (place(middle), y + 14.0)), "water")
    parts += ruler(y, steps, unit)
    foot = y + DEEP + 2.0 * ROW
    # The first mark is a full triangle, the second a hollow one.
    for (value, said), kind, glyph in zip(marks, ("full-salt", "salt thin"), "▲△"):
        x = place(value)
        parts += area(((x, y + 13.0), (x + 6.0, y + 23.0), (x - 6.0, y + 23.0)), kind)
        foot += ROW
        named = glyph + " " + said
        parts += label(x, foot, named) if len(marks) == 1 else text(EDGE, foot, named)
    return svg(foot + EDGE, says, parts)


def halves(marks: Sequence[float]) -> list[float]:
    """The marks of an axis and the places halfway between: rows for the table of a curve."""
    step = marks[1] / 2.0
    return [step * i for i in range(2 * len(marks) - 1)]


def grid(up: Sequence[float], unit: str) -> tuple[str, Place]:
    """The lines of a curve's frame, their numbers on them and the unit at the top; a value's y."""
    rise = scale(0.0, up[-1], FOOT, TOP)
    parts = ""
    for value in up:
        y = rise(value)
        parts += line(((EDGE, y), (END, y)), "grid" if value else "ink thin")
        said = drawn(value, unit)
        parts += text(EDGE, y - 4.0, said + " " + sign(unit) if unit and value == up[-1] else said)
    return parts, rise


def plot(
    across: Sequence[float], up: Sequence[float], across_words: str, unit: str
) -> tuple[str, Place, Place]:
    """The frame of a curve with numbers below it, and the places of a value across and up."""
    right = scale(0.0, across[-1], START, END)
    parts, rise = grid(up, unit)
    for value in across:
        parts += line(((right(value), FOOT), (right(value), FOOT + 6.0)), "ink thin")
    parts += _numbers(across, right, FOOT + ROW + 3.0, "")
    parts += text(WIDTH - EDGE, FOOT + 2.0 * ROW + 3.0, across_words, "", "end")
    return parts, right, rise
