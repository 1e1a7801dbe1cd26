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
ENOUGH = 100.0  # effective draws
WORK = 15000  # exchanges at most: about a second in the light engine of a desk computer
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
        The first batch covers the whole prior; as long as fewer than 100 effective draws,
        (sum w)2 / sum w2, come of all, the next is from the box that holds those which count. Every
        draw is weighted by likelihood over the density of all draws there, so boxes lose nothing.
    Valid for:
        As `pot.Pot`; 10-90 % ranges held 70-95 % of made-up pots (scripts/calibrate.py).
    Error:
        Quantiles of 100 effective draws within about 5 % of the whole prior's.
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
        read = [(event.kind, event.reading or 0.0) for event in events if _is_read(event)]
        self.excesses = [reading - rinse_ms_cm for _, reading in read]
        self.sds = [reading_sd(method=kind, reading_ms_cm=reading) for kind, reading in read]
        self.noise = Draws(SEED)
        self.fits = False
        self.found: list[Learned] = []
        self.boxes = [WHOLE]
        most = WORK // (len(events) + 4)
        self._look()
        while self.effective() < ENOUGH and len(self.found) + BATCH <= most:
            self.boxes.append(self._narrowed())
            self._look()

    def pot(self, draw: PotDraw) -> Pot:
        """The pot of a draw, levelled out."""
        return pot_of(
            draw=draw, grain_mm=self.grain_mm, pot_l=self.pot_l, weighed_ml=self.water_held_ml
        )

    def effective(self) -> float:
        """How many equally weighted draws these are worth."""
        weights = [one.weight for one in self.weighted()]
        return sum(weights) ** 2 / sum(weight * weight for weight in weights)

    def weighted(self) -> list[Learned]:
        """The draws with their weights; the likelihood of the best counts as 1."""
        best = max(one.weight for one in self.found)
        return [
            Learned(
                weight=exp(one.weight - best) / self._density(one.draw.place),
                start=one.start,
                lefts=one.lefts,
                draw=one.draw,
            )
            for one in self.found
        ]

    def _look(self) -> None:
        """A batch of draws from the last box."""
        for draw in pots(count=BATCH, first=len(self.found), box=self.boxes[-1]):
            pot = self.pot(draw)
            seen = replay(pot, self.events)
            shares = [one.shown for one, event in zip(seen, self.events) if _is_read(event)]
            start, sd, squares, worst = solved_start(shares, self.excesses, self.sds)
            self.fits = self.fits or worst <= FAR_SD
            likely = log(sd / max(start, sd)) - squares / 2.0
            start = max(0.0, self.noise.normal(start, sd))
            lefts = [one.left for one in seen]
            self.found.append(Learned(weight=likely, start=start, lefts=lefts, draw=draw))

    def _narrowed(self) -> list[tuple[float, float]]:
        best = max(one.weight for one in self.found)
        places = [one.draw.place for one in self.found if one.weight > best - COUNTS_IF]
        return [
            (max(0.0, min(along) - MARGIN), min(1.0, max(along) + MARGIN)) for along in zip(*places)
        ]

    def _density(self, place: list[float]) -> float:
        """How densely the draws lie at a place, all boxes together."""
        dense = 0.0
        for box in self.boxes:
            size = 1.0
            for at, (low, high) in zip(place, box):
                size = size * (high - low) if low <= at <= high else 0.0
            if size > 0.0:
                dense += 1.0 / size
        return dense


def _is_read(event: Event) -> bool:
    return event.reading is not None


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
    for h, y, s in zip(shares, excesses, sds):
        weight += h * h / (s * s)
        pull += h * y / (s * s)
    start = max(0.0, pull / weight)
    misses = [abs(y - start * h) / s for h, y, s in zip(shares, excesses, sds)]
    return start, 1.0 / sqrt(weight), sum(miss * miss for miss in misses), max(misses)
