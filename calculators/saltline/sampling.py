"""Many pots: how many to read, and what the readings say of the batch."""

from __future__ import annotations

from collections.abc import Callable
from math import sqrt
from typing import NamedTuple

from saltline.errors import BadInput
from saltline.saying import figure
from saltline.student import t_quantile, total

TAIL = 0.025  # each tail of the 95 % interval of `batch`
ODD_TAIL = 0.05  # chance of calling a pot odd in a batch that has none
JUST = 1.02  # Grubbs statistic within 2 % of its limit: one digit of the reading decides
READ_ALL = 12  # a batch this small is read whole (docs/sources.json: saltline-notes)
SAME = 1e-12  # readings that spread less than this share of their size are equal


class Sample(NamedTuple):
    """The answer of `sample`: pots to read for the mean, and to meet a bad one."""

    sample_for_mean: int
    sample_to_find: int | None
    warnings: tuple[str, ...]


class Batch(NamedTuple):
    """The answer of `batch`, in the unit of the readings; `odd_pot` is a sentence."""

    mean: float
    mean_low: float | None
    mean_high: float | None
    median: float
    odd_pot: str
    warnings: tuple[str, ...]


def mean_half_width(
    *, spread_percent: float, read: int, pots: int | None, sure_percent: float
) -> float:
    """Half the interval of a batch's mean, in percent of the mean.

    Equation:
        t(n - 1) CV / sqrt(n), times sqrt((N - n) / (N - 1)) for a finite batch of N.
    Arguments:
        spread_percent: CV between pots, standard deviation over mean [%].
        read: n, pots read [-], 2 or more.
        pots: N, pots in the batch [-], or None for a very large one.
        sure_percent: two-sided confidence [%].
    Returns:
        Half width [%]; 0 when every pot is read.
    Valid for:
        Readings spread about normally; pots taken at random.
    Error:
        1e-9 relative.
    Raises:
        Nothing.
    Sources:
        abramowitz-stegun, 26.7; hortsci-42-661 for plain readings, not their logarithms.
    """
    half = t_quantile(tail=(1.0 - sure_percent / 100.0) / 2.0, freedom=read - 1)
    half *= spread_percent / sqrt(float(read))
    return half if pots is None else half * sqrt((pots - read) / (pots - 1.0))


def chance_to_find(*, read: int, pots: int, bad_pots: int) -> float:
    """Chance that at least one of the pots read is a bad one (hypergeometric).

    Equation:
        1 - product over j < bad of (N - n - j) / (N - j).
    Arguments:
        read: n, pots read at random [-].
        pots: N, pots in the batch [-].
        bad_pots: bad pots among them [-].
    Returns:
        Chance [-].
    Valid for:
        n and bad_pots from 0 to N.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        abramowitz-stegun, 26.1 (hypergeometric distribution).
    """
    if read + bad_pots > pots:
        return 1.0
    fewer, more = min(read, bad_pots), max(read, bad_pots)  # the chance is the same either way
    none = 1.0
    for j in range(fewer):
        none *= (pots - more - j) / (pots - j)
    return 1.0 - none


def bad_still_possible(*, read: int, pots: int) -> int:
    """How many bad pots a batch may hold although none of those read is bad.

    Equation:
        The most for which 1 - chance_to_find is 5 % or more.
    Arguments:
        read: n, pots read at random [-].
        pots: N, pots in the batch [-].
    Returns:
        Number of pots [-], at most pots - read.
    Valid for:
        n from 1 to N.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        saltline-notes, growing 4 and its correction for a finite batch.
    """
    missed = 1.0 - ODD_TAIL
    return (
        _least(
            lambda bad: chance_to_find(read=read, pots=pots, bad_pots=bad) > missed,
            1,
            pots - read + 1,
        )
        - 1
    )


def _least(enough: Callable[[int], bool], low: int, high: int) -> int:
    """Smallest whole number from low to high that is enough; `high` always is."""
    while low < high:
        middle = (low + high) // 2
        if enough(middle):
            high = middle
        else:
            low = middle + 1
    return low


def sample(
    *,
    pots: int,
    spread_percent: float,
    within_percent: float,
    bad_pots: int | None,
    sure_percent: float,
) -> Sample:
    """How many pots to read: for the batch's mean, and to meet a bad pot.

    Equation:
        Smallest n with mean_half_width <= within; smallest n with chance_to_find >= sure.
    Arguments:
        pots: N, pots in the batch [-], 1 or more.
        spread_percent: CV between pots of the batch [%].
        within_percent: half width wanted for the mean [%].
        bad_pots: how many bad ones should not be missed [-], or None.
        sure_percent: confidence [%].
    Returns:
        Sample: two numbers of pots [-]; the second None without `bad_pots`.
    Valid for:
        Pots of one medium, feed and age, taken at random.
    Error:
        Exact for its assumptions; the spread is usually a guess.
    Raises:
        BadInput: more bad pots than pots.
    Sources:
        hortsci-42-661; saltline-notes, growing 4.
    """
    if bad_pots is not None and bad_pots > pots:
        raise BadInput("bad_pots", "must not be more than the pots in the batch")

    def narrow(read: int) -> bool:
        half = mean_half_width(
            spread_percent=spread_percent, read=read, pots=pots, sure_percent=sure_percent
        )
        return half <= within_percent

    sure, to_find = sure_percent / 100.0, None
    if bad_pots is not None:
        bad = bad_pots
        to_find = _least(
            lambda read: chance_to_find(read=read, pots=pots, bad_pots=bad) >= sure, 1, pots
        )
    warnings = []
    if pots <= READ_ALL:
        warnings.append("With twelve pots or fewer, sampling spares little work.")
    return Sample(
        sample_for_mean=_least(narrow, min(2, pots), pots),
        sample_to_find=to_find,
        warnings=tuple(warnings),
    )


def grubbs_limit(*, readings: int) -> float:
    """Grubbs' limit for the reading farthest from the mean, two-sided, 5 %.

    Equation:
        (n - 1) / sqrt(n) sqrt(t2 / (n - 2 + t2)), t exceeded with 0.05 / (2 n) at n - 2 degrees.
    Arguments:
        readings: n [-], 3 or more.
    Returns:
        Limit of |reading - mean| / standard deviation [-].
    Valid for:
        One odd reading among normal ones.
    Error:
        1e-9 relative.
    Raises:
        Nothing.
    Sources:
        grubbs-1969.
    """
    n = float(readings)
    t = t_quantile(tail=ODD_TAIL / (2.0 * n), freedom=readings - 2)
    return (n - 1.0) / sqrt(n) * sqrt(t * t / (n - 2.0 + t * t))


def _odd_pot(readings: list[float], mean: float, sd: float) -> str:
    if len(readings) < 3:
        return "too few readings to tell"
    apart = [abs(value - mean) for value in readings]
    farthest, limit = max(apart), grubbs_limit(readings=len(readings)) * sd
    if sd == 0.0 or farthest <= limit:
        return "no pot stands apart"
    at = apart.index(farthest)
    just = ", but only just" if farthest < JUST * limit else ""
    read = figure(readings[at], 4)
    return f"pot {at + 1} ({read}) stands apart{just}: read it again, then treat it alone"


def batch(*, readings: list[float], pots: int) -> Batch:
    """What the readings of a batch say: mean with its 95 % t interval, median, the odd pot.

    Equation:
        mean +- t(0.975, n - 1) s / sqrt(n); Grubbs' two-sided 5 % test for the farthest reading.
        The interval is that of a large batch: for a few pots it is on the wide side. It stops at 0.
    Arguments:
        readings: one reading a pot, all by one method on one scale [any].
        pots: pots in the batch [-].
    Returns:
        Batch: in the unit of the readings; no interval from a single one.
    Valid for:
        Plain readings, which were near normal where tested; pots taken at random.
    Error:
        1e-9 relative.
    Raises:
        BadInput: more readings than pots.
    Sources:
        hortsci-42-661; grubbs-1969.
    """
    n = len(readings)
    if n > pots:
        raise BadInput("readings", "must not be more than the pots in the batch")
    mean = total(readings) / n
    ordered = sorted(readings)
    median = (ordered[(n - 1) // 2] + ordered[n // 2]) / 2.0
    low = high = None
    sd = 0.0
    if n > 1:
        sd = sqrt(total([(value - mean) * (value - mean) for value in readings]) / (n - 1))
        if sd <= SAME * abs(mean):
            sd = 0.0
        half = t_quantile(tail=TAIL, freedom=n - 1) * sd / sqrt(float(n))
        low, high = max(0.0, mean - half), mean + half
    warnings = []
    if n == pots:
        warnings.append("Every pot is read: the range is what another batch like this might show.")
    elif pots <= READ_ALL:
        warnings.append("With twelve pots or fewer, read them all.")
    return Batch(
        mean=mean,
        mean_low=low,
        mean_high=high,
        median=median,
        odd_pot=_odd_pot(readings, mean, sd),
        warnings=tuple(warnings),
    )
