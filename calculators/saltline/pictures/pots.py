"""Pots cut open side by side, with the salt that is still in each as grains."""

from __future__ import annotations

from collections.abc import Sequence

from saltline.pictures.drawing import EDGE, ROW, WIDTH, dot, line, text

GRAINS = 36  # of salt in a pot that has all of it
WIDEST = 77.0  # a pot, with the gap to the next
ROOMY = 4  # as many pots have room for their figures in one row
TOP, FOOT = 8.0, 88.0
LEAN = 7.0  # how much narrower a pot is at its foot, on either side
ACROSS, DOWN = 0.7549, 0.5698  # steps that spread any number of points evenly over a square


def height(count: int) -> float:
    """The height of a picture of so many pots."""
    return FOOT + (3.0 if count <= ROOMY else 4.0) * ROW + 14.0


def cut_pots(left: Sequence[tuple[float, float]], names: Sequence[str]) -> str:
    """A row of pots; `left` is the share of the salt in each, at least and at most.

    Equation:
        Of 36 grains, low x 36 are drawn full (surely there) and those up to high x 36 hollow
        (perhaps there), at places that do not move from pot to pot.
    """
    step = min(WIDEST, (WIDTH - 2.0 * EDGE) / len(left))
    first = (WIDTH - step * len(left)) / 2.0
    roomy = len(left) <= ROOMY
    parts = ""
    for at, (low, high) in enumerate(left):
        x, wide = first + step * at + 4.0, step - 8.0
        parts += line(((x, TOP), (x + LEAN, FOOT), (x + wide - LEAN, FOOT), (x + wide, TOP)), "ink")
        for grain in range(int(high * GRAINS + 0.5)):
            kind = "full-salt" if grain < int(low * GRAINS + 0.5) else "salt"
            across, deep = (grain + 1) * ACROSS % 1.0, (grain + 1) * DOWN % 1.0
            inset = 6.0 + LEAN * deep
            place = x + inset + across * (wide - 2.0 * inset)
            parts += dot(place, TOP + 10.0 + deep * (FOOT - TOP - 17.0), 2.4, kind)
        parts += text(x + wide / 2.0, FOOT + ROW, names[at], "", "middle")
        if at:
            lower = ROW if not roomy and at % 2 == 0 else 0.0
            said = _percent(low, high) + (" %" if roomy else "")
            parts += text(x + wide / 2.0, FOOT + 2.0 * ROW + lower, said, "strong", "middle")
    foot = height(len(left)) - 6.0
    parts += dot(EDGE + 8.0, foot - 5.0, 3.0, "full-salt") + text(EDGE + 18.0, foot, "still in")
    perhaps = "perhaps" if roomy else "perhaps; in percent"
    return parts + dot(EDGE + 98.0, foot - 5.0, 3.0, "salt") + text(EDGE + 108.0, foot, perhaps)


def _percent(low: float, high: float) -> str:
    """A range in whole percent, which is all that a small pot has room for."""
    first, last = int(100.0 * low + 0.5), int(100.0 * high + 0.5)
    if last < 1:
        return "&lt;1"
    return str(last) if first == last else str(first) + "–" + str(last)
