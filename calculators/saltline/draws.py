"""Seeded pseudo-random draws, identical on every engine."""

from __future__ import annotations

from math import cos, exp, log, pi, sqrt

# Park & Miller's minimal standard generator with the multiplier 48271: products stay below 2^53,
# so doubles carry them exactly where an engine's integers do not reach.
MODULUS = 2147483647.0
MULTIPLIER = 48271.0


class Draws:
    """A stream of draws from one seed (a whole number from 1 to 2147483646).

    Equation:
        x' = 48271 x mod (2^31 - 1); uniform = x / (2^31 - 1), strictly between 0 and 1.
    Valid for:
        Some thousands of draws for ranges; not for cryptography.
    Sources:
        park-miller-1988; the multiplier 48271 from their 1993 reply.
    """

    def __init__(self, seed: int) -> None:
        self.state = float(seed)

    def uniform(self, low: float = 0.0, high: float = 1.0) -> float:
        """The next draw between `low` and `high` [their unit]."""
        product = MULTIPLIER * self.state
        self.state = product - MODULUS * float(int(product / MODULUS))
        return low + (high - low) * (self.state / MODULUS)

    def log_uniform(self, low: float, high: float) -> float:
        """The next draw with its logarithm uniform between those of `low` and `high`."""
        return exp(self.uniform(log(low), log(high)))

    def normal(self, mean: float = 0.0, sd: float = 1.0) -> float:
        """The next normal draw, by Box and Muller (two uniform draws each)."""
        radius = sqrt(-2.0 * log(self.uniform()))
        return mean + sd * radius * cos(2.0 * pi * self.uniform())


def quantile(values: list[float], share: float) -> float:
    """Quantile of a sorted list by linear interpolation (share 0 to 1).

    Equation:
        position (n - 1) share; the same rule as numpy.quantile's default.
    Raises:
        ValueError: empty list.
    """
    if not values:
        raise ValueError("values are missing")
    position = share * (len(values) - 1)
    below = int(position)
    above = min(below + 1, len(values) - 1)
    return values[below] + (position - below) * (values[above] - values[below])
