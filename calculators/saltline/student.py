"""Student's t, for intervals of a few readings, to nine digits on every engine."""

from __future__ import annotations

from math import gamma, pi, pow, sqrt

SERIES_FROM = 60.0  # half degrees of freedom above which the gamma ratio is taken from its series


def total(values: list[float]) -> float:
    """Sum from first to last, so that every engine rounds alike (its own `sum` may not).

    Equation:
        x1 + x2 + ... in the order given.
    Arguments:
        values: numbers [any].
    Returns:
        Their sum [same]; 0 for none.
    Valid for:
        Readings: tens of numbers of one size.
    Error:
        Rounding of doubles.
    Raises:
        Nothing.
    Sources:
        None needed.
    """
    out = 0.0
    for value in values:
        out += value
    return out


def gamma_ratio(*, half: float) -> float:
    """Gamma(half + 1/2) / Gamma(half), without the cancellation of two large logarithms.

    Equation:
        Directly up to half = 60; above it sqrt(h)(1 - 1/8h + 1/128h2 + 5/1024h3 - 21/32768h4).
    Arguments:
        half: h, half the degrees of freedom [-], above 0.
    Returns:
        The ratio [-].
    Valid for:
        Any h above 0.
    Error:
        1e-11 relative.
    Raises:
        Nothing.
    Sources:
        abramowitz-stegun, 6.1 (ratio of gamma functions).
    """
    if half <= SERIES_FROM:
        return gamma(half + 0.5) / gamma(half)
    u = 1.0 / half
    return sqrt(half) * (1.0 + u * (-1 / 8 + u * (1 / 128 + u * (5 / 1024 - u * 21 / 32768))))


def _beta_fraction(a: float, b: float, x: float) -> float:
    """Continued fraction of the incomplete beta function (26.5.8), by Lentz's method."""
    tiny = 1e-300
    c, d = 1.0, 1.0 - (a + b) * x / (a + 1.0)
    d = 1.0 / (d or tiny)
    out = d
    for m in range(1, 1000):
        for step in (
            m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0)),
        ):
            d = 1.0 / (1.0 + step * d or tiny)
            c = 1.0 + step / c or tiny
            out *= c * d
        if abs(c * d - 1.0) < 1e-15:
            break
    return out


def t_tail(*, t: float, freedom: int) -> float:
    """Chance that Student's t is above `t`.

    Equation:
        I_x(v/2, 1/2) / 2 with x = v / (v + t2), the incomplete beta function.
    Arguments:
        t: 0 or more [-].
        freedom: v, degrees of freedom [-], 1 or more.
    Returns:
        One-sided chance [-], at most 0.5.
    Valid for:
        Any v of 1 or more.
    Error:
        1e-11 relative.
    Raises:
        Nothing.
    Sources:
        abramowitz-stegun, 26.5.8 and 26.7.1.
    """
    half = freedom / 2.0
    x, y = freedom / (freedom + t * t), t * t / (freedom + t * t)
    front = pow(x, half) * sqrt(y) * gamma_ratio(half=half) / sqrt(pi)
    if x < (half + 1.0) / (half + 2.5):
        return 0.5 * front * _beta_fraction(half, 0.5, x) / half
    return 0.5 * (1.0 - 2.0 * front * _beta_fraction(0.5, half, y))


def t_quantile(*, tail: float, freedom: int) -> float:
    """Student's t that is exceeded with the chance `tail`.

    Equation:
        Newton on the tail, from 0: the tail is convex there, so no step goes past the root.
    Arguments:
        tail: one-sided chance [-], above 0 and at most 0.5.
        freedom: v, degrees of freedom [-], 1 or more.
    Returns:
        t [-], 0 or more.
    Valid for:
        Tails down to 1e-6.
    Error:
        1e-9 relative against scipy.stats (tests).
    Raises:
        Nothing.
    Sources:
        abramowitz-stegun, 26.7.
    """
    t = 0.0
    peak = gamma_ratio(half=freedom / 2.0) / sqrt(pi * freedom)
    for _ in range(200):
        density = peak * pow(1.0 + t * t / freedom, -(freedom + 1) / 2.0)
        step = (t_tail(t=t, freedom=freedom) - tail) / density
        t += step
        if abs(step) <= 1e-14 * t:
            break
    return t
