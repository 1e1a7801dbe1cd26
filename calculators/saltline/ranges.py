"""From many answers to the one range that is shown."""

from __future__ import annotations

from saltline.draws import quantile

# No range is shown narrower than this factor either way: real pots layer, and a drip leans to the
# bottom (docs/sources.json: saltline-notes, flush review 4; proposed).
NEVER_NARROWER = 1.3


def ten_to_ninety(values: list[float], most: float = 1e300) -> tuple[float, float, float]:
    """Low, middle and high of a list of answers.

    Equation:
        10, 50 and 90 % quantiles; then low is at most middle / 1.3 and high at least 1.3 middle.
    Arguments:
        values: one answer a draw, in any order, none below zero.
        most: what no answer can exceed, like 1 for a share that is left.
    Returns:
        (low, middle, high) in the unit of the values.
    Valid for:
        Answers that matter by their ratio: shares, strengths above the rinse water, times.
    Error:
        About a tenth of the range with some 200 draws.
    Raises:
        ValueError: empty list.
    Sources:
        saltline-notes, flush.
    """
    ordered = sorted(values)
    low, middle, high = (quantile(ordered, share) for share in (0.1, 0.5, 0.9))
    low, middle, high = widened(low, middle, high)
    return low, middle, min(high, most)


def after_each(*, runs: list[list[float]], washes: int) -> tuple[list[float], list[float]]:
    """Low and high of the share left after each of some washes.

    Equation:
        `ten_to_ninety` of all runs after the first wash, the second, and so on; at most 1.
    Arguments:
        runs: for each draw the share left after each wash [-].
        washes: how many of them are told [-].
    Returns:
        (lows, highs) [-], one for each wash.
    Valid for:
        As `ten_to_ninety`.
    Error:
        As `ten_to_ninety`.
    Raises:
        ValueError: no runs.
    Sources:
        saltline-notes, flush.
    """
    found = [ten_to_ninety([left[at] for left in runs], most=1.0) for at in range(washes)]
    return [low for low, _, _ in found], [high for _, _, high in found]


def widened(low: float, middle: float, high: float) -> tuple[float, float, float]:
    """A range made no narrower than a factor 1.3 either way of its middle.

    Equation:
        low' = min(low, middle / 1.3); high' = max(high, 1.3 middle).
    Arguments:
        low, middle, high: the range, none below zero.
    Returns:
        (low', middle, high').
    Valid for:
        Answers that matter by their ratio.
    Error:
        None; a house rule (proposed).
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    return min(low, middle / NEVER_NARROWER), middle, max(high, middle * NEVER_NARROWER)


def whole_range(*, counts: list[float], most: int) -> tuple[int, int]:
    """Low and high of whole numbers; high is `most` + 1 where more than `most` may be needed.

    Equation:
        10 and 90 % of the sorted counts, widened like `ten_to_ninety`, low down and high up.
    Arguments:
        counts: whole numbers, `most` + 1 standing for "more than `most`".
        most: the largest number that is shown.
    Returns:
        (low, high).
    Valid for:
        Numbers of pours and soaks.
    Error:
        One either way, as whole numbers go.
    Raises:
        ValueError: empty list.
    Sources:
        saltline-notes, flush.
    """
    low, _, high = ten_to_ninety(counts)
    # A thousandth, so that a rounding error does not add a whole pour.
    return min(int(low + 0.5), most), min(int(high + 0.999), most + 1)


def weighted_quantiles(pairs: list[tuple[float, float]], shares: tuple[float, ...]) -> list[float]:
    """Quantiles of weighted values.

    Equation:
        linear between the middles of the steps of the weighted distribution function.
    Arguments:
        pairs: (value, weight), sorted by value.
        shares: 0 to 1, rising.
    Returns:
        The quantiles, in the unit of the values.
    Valid for:
        Weights of zero or more.
    Error:
        As the number of weighted values allows.
    Raises:
        ValueError: no pair has weight.
    Sources:
        saltline-notes, flush.
    """
    total = sum([weight for _, weight in pairs])
    if not total > 0.0:
        raise ValueError("values have no weight")
    found: list[float] = []
    piled, before, value_before = 0.0, 0.0, pairs[0][0]
    for value, weight in pairs:
        middle = (piled + weight / 2.0) / total
        while len(found) < len(shares) and middle >= shares[len(found)]:
            part = 1.0 if middle <= before else (shares[len(found)] - before) / (middle - before)
            found.append(value_before + part * (value - value_before))
        piled, before, value_before = piled + weight, middle, value
    while len(found) < len(shares):
        found.append(pairs[-1][0])
    return found


def weighted_ten_to_ninety(pairs: list[tuple[float, float]]) -> tuple[float, float, float]:
    """Low, middle and high of weighted answers.

    Equation:
        10, 50 and 90 % of the weight, no narrower than a factor 1.3 either way (`widened`).
    Arguments:
        pairs: (value, weight), in any order, none below zero.
    Returns:
        (low, middle, high) in the unit of the values.
    Valid for:
        As `ten_to_ninety`.
    Error:
        As `weighted_quantiles`.
    Raises:
        ValueError: no pair has weight.
    Sources:
        saltline-notes, flush review 4.
    """
    ordered = sorted(pairs)
    low, middle, high = weighted_quantiles(ordered, (0.1, 0.5, 0.9))
    return widened(low, middle, high)
