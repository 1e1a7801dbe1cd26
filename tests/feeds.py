"""Made-up feeds, and what PHREEQC says that they conduct."""

from __future__ import annotations

import random
from functools import cache
from typing import NamedTuple

import phreeqpython

from saltline.forms import all_forms

# How PHREEQC is told of each ion.
ELEMENT = {
    "Ca": "Ca", "Mg": "Mg", "K": "K", "Na": "Na", "NH4": "N(-3)", "NO3": "N(5)", "Cl": "Cl",
    "SO4": "S(6)", "H2PO4": "P", "HCO3": "Alkalinity",
}  # fmt: skip


@cache
def phreeqc() -> phreeqpython.PhreeqPython:
    return phreeqpython.PhreeqPython(database="phreeqc.dat")


def solution(amounts: dict[str, float], ph: float) -> phreeqpython.Solution:
    told: dict[str, object] = {"pH": ph, "units": "mmol/l", "temp": 25}
    for name, mmol in amounts.items():
        told[ELEMENT[name]] = mmol
    return phreeqc().add_solution(told)


def random_feed(draws: random.Random, tap: bool) -> dict[str, float]:
    """A balanced feed; in tap water (bicarbonate, no phosphate, pH 7.5) or in pure water."""
    strength = draws.uniform(0.3, 2.0)
    cations = {
        "Ca": draws.uniform(0.0, 3.0), "Mg": draws.uniform(0.1, 1.5), "K": draws.uniform(0.3, 5.0),
        "Na": draws.uniform(0.0, 2.0), "NH4": draws.uniform(0.0, 3.0),
    }  # fmt: skip
    charge = 2 * cations["Ca"] + 2 * cations["Mg"] + cations["K"] + cations["Na"] + cations["NH4"]
    shares = {"SO4": draws.uniform(0.0, 0.3), "Cl": draws.uniform(0.0, 0.2)}
    shares |= {"HCO3": draws.uniform(0.1, 0.4)} if tap else {"H2PO4": draws.uniform(0.02, 0.15)}
    anions = {name: share * charge / (2 if name == "SO4" else 1) for name, share in shares.items()}
    anions["NO3"] = charge * (1.0 - sum(shares.values()))
    return {name: strength * amount for name, amount in (cations | anions).items()}


class Feeds(NamedTuple):
    """How far ours read from PHREEQC, over all feeds [%], and how strong they are [mS/cm]."""

    mean_percent: float
    most_percent: float
    worst_percent: float
    least_ms_cm: float
    most_ms_cm: float

    def __str__(self) -> str:
        return (
            f"100 feeds of {self.least_ms_cm:.2f}-{self.most_ms_cm:.2f} mS/cm against PHREEQC "
            f"3.7.3: mean {self.mean_percent:+.2f} %, 95 % within {self.most_percent:.2f} %, "
            f"worst {self.worst_percent:.2f} %"
        )


def hundred_feeds() -> Feeds:
    """A hundred feeds, every fourth in tap water."""
    draws, form = random.Random(20260), all_forms()["ions-to-ec"]
    off, theirs = [], []
    for at in range(100):
        tap = at % 4 == 0
        feed, ph = random_feed(draws, tap), 7.5 if tap else 5.5
        told = {f"{name.lower()}_mmol_l": mmol for name, mmol in feed.items()} | {"ph": ph}
        theirs.append(solution(feed, ph).sc / 1000.0)
        off.append(100.0 * (form.run(told).ec_ms_cm / theirs[-1] - 1.0))
    sizes = sorted(map(abs, off))
    return Feeds(sum(off) / len(off), sizes[94], sizes[-1], min(theirs), max(theirs))
