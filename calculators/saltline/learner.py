"""Which pots agree with a log of readings: prior draws, weighted."""

from __future__ import annotations

from math import exp, log, sqrt
from typing import NamedTuple

from saltline.draws import Draws
from saltline.flush_log import Event, replay
from saltline.pot import Pot
from saltline.priors import SEED, WHOLE, PotDraw, pot_of, pots, reading_sd

BATCH = 128  # draws in one box
COUNTS_IF, MARGIN = 4.0, 0.03  # of the log likelihood below the best; of a prior, round the box
ENOUGH = 80.0  # effective draws
WORK = 15000  # exchanges at most: 0.7 s in the light engine of a desk computer
FAR_SD = 3.0  # a draw with a reading farther off than this does not fit


class Learned(NamedTuple):
    """One draw: its weight, its start above the rinse water, the share left after each event."""

    weight: float
    start: float
    lefts: list[float]
    draw: PotDraw


class Learner:
    """Prior draws weighted by a log's readings.

    Equation:
        likelihood = exp(-misses2 / 2) s / start, the start solved for each draw (`solved_start`)
        under a prior even in its logarithm; then one normal draw of the start about its solution.
        The first batch covers the whole prior; as long as fewer than 80 effective draws,
        (sum w)2 / sum w2, come of all, the next is from the box that holds those which count. Every
        draw is weighted by likelihood over the density of all draws there, so boxes lose nothing.
    Valid for:
        As `pot.Pot`; 10-90 % ranges held 70-95 % of made-up pots (scripts/calibrate.py).
    Error:
        Quantiles of 80 effective draws within about 6 % of the whole prior's.
    Sources:
        saltline-notes, flush review 4; kish-1965; veach-guibas-1995.
    """

    def __init__(
        self,
        *,
        events: list[Event],
        rinse_ms_cm: float,
        pot_l: float,
        water_held_ml: float | None,
        grain_mm: float,
    ) -> None:
        self.events = events
        self.pot_l, self.water_held_ml, self.grain_mm = pot_l, water_held_ml, grain_mm
        self.read = [at for at, event in enumerate(events) if event.reading is not None]
        read = [(events[at].kind, events[at].reading or 0.0) for at in self.read]
        self.excesses = [reading - rinse_ms_cm for _, reading in read]
        self.sds = [reading_sd(method=kind, reading_ms_cm=reading) for kind, reading in read]
        self.noise = Draws(SEED)
        self.fits = False
        self.found: list[Learned] = []
        self.dense: list[float] = []  # how densely all draws lie where each of them lies
        self.boxes = [WHOLE]
        most = WORK // (len(events) + 4)
        self._look()
        while self.effective() < ENOUGH and len(self.found) + BATCH <= most:
            self._narrow()
            self._look()

    def pot(self, draw: PotDraw) -> Pot:
        """The pot of a draw, levelled out."""
        return pot_of(
            draw=draw, grain_mm=self.grain_mm, pot_l=self.pot_l, weighed_ml=self.water_held_ml
        )

    def effective(self) -> float:
        """How many equally weighted draws these are worth."""
        weights = self._weights()
        return sum(weights) ** 2 / sum([weight * weight for weight in weights])

    def weighted(self) -> list[Learned]:
        """The draws with their weights; the likelihood of the best counts as 1."""
        return [
            Learned(weight, one.start, one.lefts, one.draw)
            for weight, one in zip(self._weights(), self.found)
        ]

    def _weights(self) -> list[float]:
        best = max([one.weight for one in self.found])
        return [exp(one.weight - best) / dense for one, dense in zip(self.found, self.dense)]

    def _look(self) -> None:
        """A batch of draws from the last box."""
        for draw in pots(count=BATCH, first=len(self.found), box=self.boxes[-1]):
            pot = self.pot(draw)
            seen = replay(pot, self.events)
            shares = [seen[at].shown for at in self.read]
            start, sd, squares, worst = solved_start(shares, self.excesses, self.sds)
            self.fits = self.fits or worst <= FAR_SD
            likely = log(sd / max(start, sd)) - squares / 2.0
            start = max(0.0, self.noise.normal(start, sd))
            lefts = [one.left for one in seen]
            self.found.append(Learned(likely, start, lefts, draw))
            self.dense.append(sum([_density(draw.place, box) for box in self.boxes]))

    def _narrow(self) -> None:
        """Draw from the box that holds all that count, from now on."""
        best = max([one.weight for one in self.found])
        places = [one.draw.place for one in self.found if one.weight > best - COUNTS_IF]
        box = [
            (max(0.0, min(along) - MARGIN), min(1.0, max(along) + MARGIN)) for along in zip(*places)
        ]
        self.boxes.append(box)
        self.dense = [
            dense + _density(one.draw.place, box) for one, dense in zip(self.found, self.dense)
        ]


def _density(place: list[float], box: list[tuple[float, float]]) -> float:
    """How densely the draws of a box lie at a place."""
    size = 1.0
    for at in range(len(place)):
        low, high = box[at]
        if not low <= place[at] <= high:
            return 0.0
        size *= high - low
    return 1.0 / size


def solved_start(
    shares: list[float], excesses: list[float], sds: list[float]
) -> tuple[float, float, float, float]:
    """The start that brings a draw nearest to the readings.

    Equation:
        weighted least squares through the origin: start = sum(h y / s2) / sum(h2 / s2), its
        standard deviation 1 / sqrt(sum(h2 / s2)), none below 0.
    Arguments:
        shares: what each reading shows of a start of 1, h [-].
        excesses: the readings above the rinse water, y [mS/cm].
        sds: standard deviation of each, s [mS/cm].
    Returns:
        (start [mS/cm], its standard deviation, sum of squared misses, largest miss), misses in
        standard deviations.
    Valid for:
        A pot linear in its excess.
    Error:
        None for independent normal errors.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    weight = pull = 0.0
    for at in range(len(shares)):
        h, s = shares[at], sds[at]
        weight += h * h / (s * s)
        pull += h * excesses[at] / (s * s)
    start = max(0.0, pull / weight)
    misses = [abs(excesses[at] - start * shares[at]) / sds[at] for at in range(len(shares))]
    return start, 1.0 / sqrt(weight), sum([miss * miss for miss in misses]), max(misses)
