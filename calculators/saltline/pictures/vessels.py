"""Things on a grower's bench: a jug and what is in it."""

from __future__ import annotations

from saltline.pictures.drawing import area, line

# A jug: its walls lean, its full mark is at TOP.
TOP, FOOT = 44.0, 190.0
LEFT_TOP, LEFT_FOOT, RIGHT_TOP, RIGHT_FOOT = 24.0, 34.0, 150.0, 140.0


def jug() -> str:
    """The outline of a jug, lip to the left and handle to the right."""
    walls = line(
        (
            (14.0, 22.0),
            (LEFT_TOP, 34.0),
            (LEFT_FOOT, FOOT),
            (RIGHT_FOOT, FOOT),
            (RIGHT_TOP, 22.0),
        ),
        "ink",
    )
    handle = ((149.0, 40.0), (168.0, 46.0), (170.0, 96.0), (144.0, 128.0))
    return walls + line(handle, "ink")


def level(low: float, high: float, kind: str, pattern: str) -> str:
    """What fills the jug between two shares of its full mark."""
    foot, top = (FOOT + share * (TOP - FOOT) for share in (low, high))
    (a, b), (c, d) = _walls(low), _walls(high)
    return area(((a, foot), (b, foot), (d, top), (c, top)), kind, pattern)


def _walls(share: float) -> tuple[float, float]:
    left = LEFT_FOOT + share * (LEFT_TOP - LEFT_FOOT)
    return left, RIGHT_FOOT + share * (RIGHT_TOP - RIGHT_FOOT)
