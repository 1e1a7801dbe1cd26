"""An independent pot to hold `saltline.pot` to: plain shells, full matrices, any odd corner.

Written on its own terms (finite volumes, eigenvectors by scipy) and able to do what the model
cannot: granules of several sizes, a corner that no water reaches, a by-pass that changes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.linalg import eigh

Vector = NDArray[np.float64]
POUR_S = 180.0


def edges(shells: int, finest: float) -> Vector:
    """Radii of shell edges, 0 to 1, thinnest at the skin (geometric)."""
    growth = np.linspace(1.0, 3.0, 20001)
    widths = finest * (growth**shells - 1.0) / np.maximum(growth - 1.0, 1e-12)
    rate = growth[np.argmin(abs(widths - 1.0))]
    steps = rate ** np.arange(shells)[::-1]
    return np.concatenate([[0.0], np.cumsum(steps / steps.sum())])


@dataclass
class ShellPot:
    """Excess 1 everywhere at the start; volumes in mL, times in seconds inside."""

    water_held_ml: float
    film_share: float
    diffusivity: float  # 1e-9 m2/s
    grains_mm: Sequence[float]
    by_pass: float = 0.0
    dead_share: float = 0.0  # of all water, film and granules alike, that no soak or pour reaches
    dead_hours: float = 6.0  # time constant of its film against the rest
    shells: int = 60
    finest: float = 2e-4

    def __post_init__(self) -> None:
        """Nodes: live film, dead film, then the shells of each size, live and dead."""
        zones = [(1.0 - self.dead_share, 0), (self.dead_share, 1)]
        self.zones = [zone for zone in zones if zone[0] > 0.0]
        film = self.film_share * self.water_held_ml
        inside = self.water_held_ml - film
        volumes = [film * share for share, _ in zones]
        self.links: list[tuple[int, int, float]] = []
        if self.dead_share:
            small = min(volumes[:2])
            self.links.append((0, 1, small / (3600.0 * self.dead_hours)))
        r = edges(self.shells, self.finest)
        r[-1] = 1.0
        middle = 0.75 * np.diff(r**4) / np.diff(r**3)
        for share, film_node in self.zones:
            for grain in self.grains_mm:
                water = inside * share / len(self.grains_mm)
                pace = self.diffusivity * 1e-9 / (grain / 2000.0) ** 2
                first = len(volumes)
                volumes += list(water * np.diff(r**3))
                for k in range(self.shells - 1):
                    g = 3.0 * r[k + 1] ** 2 / (middle[k + 1] - middle[k])
                    self.links.append((first + k, first + k + 1, water * pace * g))
                g = 3.0 / (1.0 - middle[-1])
                self.links.append((first + self.shells - 1, film_node, water * pace * g))
        self.volumes = np.array(volumes)
        self.c = np.ones(len(volumes))
        self.modes: dict[tuple[float, float], tuple[Vector, Vector, Vector]] = {}

    def _run(self, seconds: float, bath_ml: float, flow_ml_s: float) -> None:
        key = (bath_ml, flow_ml_s)
        if key not in self.modes:
            n = len(self.volumes)
            matrix = np.zeros((n, n))
            for i, j, g in self.links:
                matrix[i, i] += g
                matrix[j, j] += g
                matrix[i, j] -= g
                matrix[j, i] -= g
            matrix[0, 0] += flow_ml_s
            volumes = self.volumes.copy()
            volumes[0] += bath_ml
            root = np.sqrt(np.where(volumes > 0.0, volumes, 1.0))
            rates, vectors = eigh(matrix / root[:, None] / root[None, :])
            self.modes[key] = rates, vectors, root
        rates, vectors, root = self.modes[key]
        start = vectors.T @ (root * self.c)
        self.c = (vectors @ (np.exp(-rates * seconds) * start)) / root

    def left(self) -> float:
        return float(self.volumes @ self.c / self.volumes.sum())

    def drip(self) -> float:
        return float(self.c[0])

    def soak(self, ml: float, minutes: float) -> float:
        self.c[0] *= self.volumes[0] / (self.volumes[0] + ml)
        self._run(60.0 * minutes, ml, 0.0)
        return float(self.c[0])

    def rest(self, hours: float) -> None:
        self._run(3600.0 * hours, 0.0, 0.0)

    def pour(self, ml: float) -> float:
        before = self.volumes @ self.c
        self._run(POUR_S, 0.0, (1.0 - self.by_pass) * ml / POUR_S)
        return float((before - self.volumes @ self.c) / ml)
