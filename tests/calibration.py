"""Made-up pots with a known truth, read by `flush_learn`'s learner: do its ranges hold them?

The truth comes from `shell_pot.ShellPot`, which shares no code with the model, with noise on every
reading. Ordinary pots are drawn from the stated priors; odd ones break the model's assumptions.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from saltline.flush_log import read_log
from saltline.learner import ENOUGH, Learner
from saltline.ranges import weighted_quantiles, widened
from shell_pot import ShellPot

# What is done to a pot, water in pot waters; the readings are put in as they are taken.
RESTED = (
    "drip pour:1 rest:1 pour:1 rest:1 pour:1 rest:12 drip",
    "drip soak:2.5:10 rest:12 drip",
    "soak:2.5:10 rest:12 soak:2.5:10 rest:12 drip",
    "drip soak:2.5:2 soak:2.5:8 soak:2.5:20 rest:12 drip",
    "drip pour:1 rest:1 pour:1 rest:12 drip pour:1 rest:1 pour:1 rest:12 drip",
)
QUICK = (
    "soak:2.5:10 soak:2.5:10",
    "soak:2.5:10 rest:1 soak:2.5:10 rest:1 soak:2.5:10",
    "drip soak:2.5:10 soak:2.5:10",
    "pour:1 rest:1 pour:1 rest:1 pour:1",
)


@dataclass(frozen=True)
class MadeUp:
    """A pot that nobody but the test knows."""

    pot_l: float
    held_ml: float
    start: float
    rinse: float
    film_share: float
    diffusivity: float
    by_pass: tuple[float, float]  # drawn anew for each pour
    grains_mm: tuple[float, ...]
    dead_share: float = 0.0
    drip_bias: float = 1.0


Change = Callable[[np.random.Generator, MadeUp], MadeUp]


def log_uniform(random: np.random.Generator, low: float, high: float) -> float:
    return float(np.exp(random.uniform(np.log(low), np.log(high))))


def made_up(random: np.random.Generator) -> MadeUp:
    """A pot as the priors say, drawn with numpy."""
    pot_l = log_uniform(random, 0.3, 3.0)
    share = np.interp(random.uniform(), [0.0, 0.5, 1.0], [0.08, 0.15, 0.25])
    by_pass = random.uniform(0.0, 0.6)
    return MadeUp(
        pot_l=pot_l,
        held_ml=1000.0 * pot_l * float(share),
        start=log_uniform(random, 0.8, 4.0),
        rinse=random.uniform(0.05, 0.4),
        film_share=random.triangular(0.005, 0.25, 0.495),
        diffusivity=log_uniform(random, 0.1, 0.75),
        by_pass=(by_pass, by_pass),
        grains_mm=(float(random.choice([4.0, 6.0, 8.0, 12.0, 16.0])),),
    )


def ordinary(_: np.random.Generator, pot: MadeUp) -> MadeUp:
    return pot


def changing_by_pass(_: np.random.Generator, pot: MadeUp) -> MadeUp:
    return replace(pot, by_pass=(0.0, 0.6))


def any_film(random: np.random.Generator, pot: MadeUp) -> MadeUp:
    return replace(pot, film_share=random.uniform(0.1, 0.45))


def mixed_granules(_: np.random.Generator, pot: MadeUp) -> MadeUp:
    return replace(pot, grains_mm=tuple(k * pot.grains_mm[0] for k in (1.0, 0.5, 1.5)))


def dead_corner(_: np.random.Generator, pot: MadeUp) -> MadeUp:
    return replace(pot, dead_share=0.15)


def biased_drips(random: np.random.Generator, pot: MadeUp) -> MadeUp:
    return replace(pot, drip_bias=0.9 if random.random() < 0.5 else 1.1)


ODD: dict[str, Change] = {
    "by-pass changes, 0-60 %": changing_by_pass,
    "film 10-45 % of the water": any_film,
    "granules of three sizes": mixed_granules,
    "a corner of 15 % stays dry": dead_corner,
    "drips read 10 % off": biased_drips,
}


def kept_log(random: np.random.Generator, plan: str, made: MadeUp) -> tuple[list[str], float]:
    """The log a grower would keep, with a pen's noise, and the truth: what is left at the end."""
    pot = ShellPot(
        water_held_ml=made.held_ml,
        film_share=made.film_share,
        diffusivity=made.diffusivity,
        grains_mm=made.grains_mm,
        dead_share=made.dead_share,
        shells=40,
    )
    log = []
    for step in plan.split():
        name, *cells = step.split(":")
        ml = round(150.0 * made.pot_l * float(cells[0])) if cells and name != "rest" else 0
        if name == "rest":
            pot.rest(float(cells[0]))
            log.append(step)
            continue
        if name == "drip":
            shown, words, scale = pot.drip(), "drip", 0.06
        elif name == "soak":
            shown, words, scale = pot.soak(ml, float(cells[1])), f"soak:{ml}:{cells[1]}", 0.02
        else:
            pot.by_pass = random.uniform(*made.by_pass)
            shown, words, scale = pot.pour(ml), f"pour:{ml}", 0.02
        reading = made.rinse + made.start * shown
        reading *= made.drip_bias if name == "drip" else 1.0
        reading *= 1.0 + scale * random.standard_normal()
        reading += 0.008 * random.standard_normal()
        log.append(f"{words}:{max(0.0, reading):.3f}")
    return log, made.start * pot.left()


class Case(NamedTuple):
    """One made-up pot after its log, above the rinse water: the truth and what was learned."""

    fits: bool
    coarse: bool
    true: float
    low: float
    high: float
    shown_low: float
    shown_high: float

    def held(self) -> bool:
        return self.low <= self.true <= self.high

    def shown_held(self) -> bool:
        return self.shown_low <= self.true <= self.shown_high


def case(random: np.random.Generator, plan: str, change: Change) -> Case:
    """Make a pot, do the plan to it, and learn from its log."""
    made = change(random, made_up(random))
    log, true = kept_log(random, plan, made)
    weighed = None if random.random() < 0.5 else made.held_ml / random.uniform(0.85, 1.15)
    learner = Learner(
        events=read_log(log),
        rinse_ms_cm=made.rinse,
        pot_l=made.pot_l,
        water_held_ml=weighed,
        grain_mm=made.grains_mm[0],
    )
    pairs = sorted((one.start * one.lefts[-1], one.weight) for one in learner.weighted())
    low, middle, high = weighted_quantiles(pairs, (0.1, 0.5, 0.9))
    shown = widened(low, middle, high)
    coarse = learner.effective() < ENOUGH
    return Case(learner.fits, coarse, true, low, high, shown[0], shown[2])


def run(plans: tuple[str, ...], change: Change, count: int, seed: int) -> list[Case]:
    """Made-up pots, the plans taken in turn."""
    random = np.random.default_rng(seed)
    return [case(random, plans[number % len(plans)], change) for number in range(count)]


class Summary(NamedTuple):
    """Shares of made-up pots: fitting and rough of all, the rest of those that fit."""

    fit: float
    coarse: float
    held: float
    shown: float
    above: float
    below: float
    worst: float  # the largest truth over the high end that was shown


def summary(cases: list[Case]) -> Summary:
    fit = [one for one in cases if one.fits]

    def share(found: list[bool], of: list[Case]) -> float:
        return sum(found) / max(1, len(of))

    return Summary(
        fit=share([one.fits for one in cases], cases),
        coarse=share([one.coarse for one in cases], cases),
        held=share([one.held() for one in fit], fit),
        shown=share([one.shown_held() for one in fit], fit),
        above=share([one.true > one.shown_high for one in fit], fit),
        below=share([one.true < one.shown_low for one in fit], fit),
        worst=max(one.true / one.shown_high for one in fit),
    )
