"""The few strokes that every picture is made of, as SVG text.

Colours and widths are classes of docs/assets/css/pictures.css, so that light, dark and print follow
the page. Coordinates are rounded here in whole tenths: engines print a float differently.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from saltline.saying import NO_BREAK, figure

WIDTH = 320.0
EDGE = 6.0  # nothing is drawn nearer to the frame
GUTTER = 68.0  # room left of a drawing for the numbers of its own ruler
ROW = 19.0  # between two lines of words

# What fills an area besides a colour: a pattern says the same in print.
PATTERNS = {
    "band": ("7", "M-1 8L8 -1M-1 1L1 -1M6 8L8 6", "water thin"),
    "water": ("8", "M0 4h5", "water thin"),
    "salt": ("9", "M2 2h.1M6.5 6.5h.1", "salt grain"),
    "granules": ("15", "M1 5a4 4 0 1 0 8 0a4 4 0 1 0-8 0M9 12a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0-5 0",
                 "ink thin"),
}  # fmt: skip

type Points = Sequence[tuple[float, float]]
type Named = tuple[float, float, str, str]  # a thing's place, what it is, how much


def svg(height: float, label: str, *parts: str) -> str:
    """A picture of the usual width; `label` says in words what it shows."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {at(WIDTH)} {at(height)}" '
        f'role="img" aria-label="{label}">' + "".join(parts) + "</svg>"
    )


def patterns(owner: str, *names: str) -> str:
    """Definitions of the patterns a picture uses; `owner` keeps them apart in a page."""
    made = ""
    for name in names:
        size, path, kind = PATTERNS[name]
        made += (
            f'<pattern id="{owner}-{name}" width="{size}" height="{size}" '
            f'patternUnits="userSpaceOnUse"><path class="{kind}" d="{path}"/></pattern>'
        )
    return f"<defs>{made}</defs>"


def at(value: float) -> str:
    """A coordinate, to a tenth."""
    tenths = int(10.0 * value + 0.5)
    return str(tenths // 10) + ("." + str(tenths % 10) if tenths % 10 else "")


def line(points: Points, kind: str) -> str:
    """A line through some points."""
    return f'<path class="{kind}" d="{_path(points)}"/>'


def area(points: Points, kind: str, pattern: str = "") -> str:
    """A closed shape; `pattern` is a pattern's whole id, drawn over `kind`, if either."""
    return _filled("path", f'd="{_path(points)}Z"', kind, pattern)


def box(x: float, y: float, width: float, height: float, kind: str, pattern: str = "") -> str:
    """An upright rectangle."""
    right, foot = x + width, y + height
    return area(((x, y), (right, y), (right, foot), (x, foot)), kind, pattern)


def dot(x: float, y: float, radius: float, kind: str, pattern: str = "") -> str:
    """A circle."""
    return _filled("circle", f'cx="{at(x)}" cy="{at(y)}" r="{at(radius)}"', kind, pattern)


def _filled(shape: str, place: str, kind: str, pattern: str) -> str:
    under = f'<{shape} class="{kind}" {place}/>' if kind else ""
    return under + (f'<{shape} fill="url(#{pattern})" {place}/>' if pattern else "")


def text(x: float, y: float, words: str, kind: str = "", anchor: str = "start") -> str:
    """Words with their baseline at y."""
    classes = f' class="{kind}"' if kind else ""
    where = "" if anchor == "start" else f' text-anchor="{anchor}"'
    return f'<text{classes} x="{at(x)}" y="{at(y)}"{where}>{words}</text>'


def label(x: float, y: float, words: str, kind: str = "") -> str:
    """Words about a place x, kept inside the frame whatever their length."""
    if x < 120.0:
        return text(max(EDGE, x - 50.0), y, words, kind)
    if x > WIDTH - 120.0:
        return text(min(WIDTH - EDGE, x + 50.0), y, words, kind, "end")
    return text(x, y, words, kind, "middle")


def _path(points: Points) -> str:
    return "M" + "L".join(at(x) + " " + at(y) for x, y in points)


def scale(low: float, high: float, first: float, last: float) -> Callable[[float], float]:
    """From a value to its place between `first` and `last`; beyond the ends it stays there."""

    def place(value: float) -> float:
        share = min(max((value - low) / (high - low), 0.0), 1.0)
        return first + share * (last - first)

    return place


def step_for(top: float, most: int) -> float:
    """The smallest step of 1, 2 or 5 that reaches `top` in at most so many."""
    step = 1.0
    while top > most * step:
        step *= 10.0
    while top <= most * step / 10.0 and step > 1e-9:
        step /= 10.0
    for part in (0.2, 0.5):
        if top <= most * step * part:
            return step * part
    return step


def ticks(top: float, most: int) -> list[float]:
    """Round numbers from 0 to one that is `top` or more."""
    step = step_for(top, most)
    found = [0.0]
    while found[-1] < top * (1.0 - 1e-9):
        found.append(step * len(found))
    return found


def plain(value: float, digits: int = 3) -> str:
    """A number of a few figures for a label or a placeholder: 0.45, 12, 1200."""
    return figure(value, digits).replace(NO_BREAK, "")


def drawn(value: float, unit: str, digits: int = 3) -> str:
    """A placeholder: this number in the unit that the reader has chosen."""
    return "{" + plain(value, digits) + ":" + unit + "}"


def span(low: float, high: float, unit: str) -> str:
    """Placeholders: a range with its unit, to two figures; one number where both read the same."""
    first, last = drawn(low, unit, 2), drawn(high, unit, 2)
    return (first if first == last else first + " to " + last) + " " + sign(unit)


def sign(unit: str) -> str:
    """A placeholder: that unit's sign."""
    return "{:" + unit + "}"


def callouts(x: float, ends: tuple[float, float], items: Sequence[Named]) -> str:
    """Names in a column at x, each with a line to its thing.

    The things run from top to bottom; names too near each other move apart, between `ends`.
    """
    gap = [ROW if not more else 2.0 * ROW + 3.0 for _, _, _, more in items]
    heights, floor = [], ends[0]
    for at_item, item in enumerate(items):
        y = max(item[1], floor)
        heights.append(y)
        floor = y + gap[at_item]
    ceiling = ends[1]
    for back in range(len(items) - 1, -1, -1):
        heights[back] = min(heights[back], ceiling - gap[back] + ROW)
        ceiling = heights[back] - ROW
    parts = ""
    for (from_x, from_y, words, more), y in zip(items, heights):
        parts += line(((from_x, from_y), (x - 14.0, y), (x - 5.0, y)), "ink thin")
        parts += text(x, y + 5.0, words)
        if more:
            parts += text(x, y + 5.0 + ROW, more, "strong")
    return parts
