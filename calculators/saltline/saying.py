"""Numbers inside sentences that the science itself writes, alike on every engine.

Engines differ in how they print a float, so the rounding is done here in whole numbers.
"""

from __future__ import annotations

# Shares that people say; between two of them the nearer by ratio is said.
SHARES = (
    (0.02, "a fiftieth"), (0.033, "a thirtieth"), (0.05, "a twentieth"), (0.1, "a tenth"),
    (0.143, "a seventh"),
    (0.2, "a fifth"), (0.25, "a quarter"), (0.333, "a third"), (0.4, "two fifths"),
    (0.5, "half"), (0.6, "three fifths"), (0.667, "two thirds"), (0.75, "three quarters"),
    (0.9, "nine tenths"), (1.0, "all"),
)  # fmt: skip
NO_BREAK = "\u00a0"
COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")


def figure(value: float, digits: int = 2) -> str:
    """A number to some significant digits, as people write it: 0.45, 1.2, 340, 1200, 12 000."""
    if not value > 0.0:
        return "0"
    places, scaled = 0, value
    while scaled < 10.0 ** (digits - 1):
        scaled *= 10.0
        places += 1
    while scaled >= 10.0**digits:
        scaled /= 10.0
        places -= 1
    whole = int(scaled + 0.5)
    if places <= 0:
        return _grouped(str(whole * 10**-places))
    text = str(whole)
    text = "0" * (places + 1 - len(text)) + text
    return (text[:-places] + "." + text[-places:]).rstrip("0").rstrip(".")


def _grouped(text: str) -> str:
    """Whole thousands parted from five figures on, as everywhere on the pages."""
    parts: list[str] = []
    while len(text) > (3 if parts else 4):
        parts.insert(0, text[-3:])
        text = text[:-3]
    return NO_BREAK.join([text] + parts)


def between(low: float, high: float, unit: str) -> str:
    """A range with its unit: "0.6 to 1.1 mS/cm", or one figure where both look alike."""
    first, last = figure(low), figure(high)
    return (first if first == last else first + " to " + last) + " " + unit


def share(value: float) -> str:
    """A share in words: "a third"."""
    if value < 0.015:
        return "next to nothing"
    for (below, word), (above, _) in zip(SHARES, SHARES[1:]):
        if value * value < below * above:
            return word
    return SHARES[-1][1]


def shares(low: float, high: float) -> str:
    """A range of shares in words: "a tenth to a third"."""
    first, last = share(low), share(high)
    return first if first == last else first + " to " + last


def count(number: int, thing: str) -> str:
    """A whole number of things in words: "one pour", "three pours"."""
    word = COUNTS[number] if number < len(COUNTS) else str(number)
    return word + " " + thing + ("" if number == 1 else "s")


def counts(low: int, high: int, thing: str) -> str:
    """A range of whole numbers of things: "two to four pours"."""
    if low == high:
        return count(high, thing)
    return ("at most " if low == 0 else COUNTS[low] + " to ") + count(high, thing)
