"""Least squares with no negative unknowns, after Lawson and Hanson."""

from __future__ import annotations

from math import sqrt

TOLERANCE = 1e-11  # of a column's slope, relative to both lengths: below it is rounding


def non_negative(*, columns: list[list[float]], target: list[float]) -> list[float]:
    """The x >= 0 that brings a sum of columns closest to a target.

    Equation:
        min |A x - b|^2 with x >= 0: unknowns enter one by one where the slope A'(b - Ax) is
        steepest, the entered ones are solved freely, and those that turn negative leave again.
    Arguments:
        columns: columns of A, all as long as the target.
        target: b.
    Returns:
        x, one number a column; of columns that can stand in for each other, the first steepest.
    Valid for:
        A few rows and some tens of columns.
    Error:
        Rounding: 1e-9 relative in the miss.
    Raises:
        Nothing.
    Sources:
        lawson-hanson-1974, chapter 23.
    """
    x = [0.0] * len(columns)
    entered: list[int] = []
    barred: list[int] = []
    for _ in range(
        30 * len(columns)
    ):  # far more than it takes; rounding must not go round for ever
        slopes = _slopes(columns, _rest(columns, x, target), _length(target))
        waiting = [at for at in range(len(columns)) if at not in entered and at not in barred]
        steepest = max(waiting, key=lambda at: slopes[at], default=-1)
        if steepest < 0 or slopes[steepest] <= TOLERANCE:
            break
        tried = list(entered)
        tried.append(steepest)
        free = _free([columns[at] for at in tried], target)
        if free[-1] <= 0.0:  # rounding let in a column that others can stand in for
            barred.append(steepest)
            continue
        barred = []
        x, entered = _inside(columns, target, x, tried, free)
    return x


def _inside(
    columns: list[list[float]],
    target: list[float],
    x: list[float],
    entered: list[int],
    free: list[float],
) -> tuple[list[float], list[int]]:
    """Walk from x towards the free solution, dropping whatever reaches zero on the way."""
    while min(free) <= 0.0:
        step = min(
            [
                x[at] / (x[at] - free[place])
                for place, at in enumerate(entered)
                if free[place] <= 0.0
            ]
        )
        for place, at in enumerate(entered):
            x[at] += step * (free[place] - x[at])
        lowest = min([x[at] for at in entered])
        gone = [at for at in entered if x[at] <= max(0.0, lowest)]
        for at in gone:
            x[at] = 0.0
        entered = [at for at in entered if at not in gone]
        free = _free([columns[at] for at in entered], target)
    for place, at in enumerate(entered):
        x[at] = free[place]
    return x, entered


def _free(columns: list[list[float]], target: list[float]) -> list[float]:
    """Plain least squares: orthogonal directions (Gram and Schmidt, twice), then back."""
    directions: list[list[float]] = []
    upper: list[list[float]] = []
    for column in columns:
        rest = list(column)
        row = [0.0] * len(directions)
        for _ in (1, 2):
            for at, direction in enumerate(directions):
                part = _dot(direction, rest)
                row[at] += part
                rest = [value - part * direction[i] for i, value in enumerate(rest)]
        size = _length(rest)
        row.append(size)
        upper.append(row)
        directions.append([value / size if size > 0.0 else 0.0 for value in rest])
    x = [_dot(direction, target) for direction in directions]
    for at in range(len(x) - 1, -1, -1):
        for later in range(at + 1, len(x)):
            x[at] -= upper[later][at] * x[later]
        x[at] = x[at] / upper[at][at] if upper[at][at] > 0.0 else 0.0
    return x


def _rest(columns: list[list[float]], x: list[float], target: list[float]) -> list[float]:
    rest = list(target)
    for at, column in enumerate(columns):
        rest = [value - x[at] * column[i] for i, value in enumerate(rest)]
    return rest


def _slopes(columns: list[list[float]], rest: list[float], length: float) -> list[float]:
    """Slope of each column against what is left, as a share of both lengths."""
    sizes = [_length(column) * length for column in columns]
    return [
        _dot(column, rest) / sizes[at] if sizes[at] > 0.0 else 0.0
        for at, column in enumerate(columns)
    ]


def _dot(a: list[float], b: list[float]) -> float:
    total = 0.0  # not sum(): engines differ in how it rounds
    for at, value in enumerate(a):
        total += value * b[at]
    return total


def _length(a: list[float]) -> float:
    return sqrt(_dot(a, a))
