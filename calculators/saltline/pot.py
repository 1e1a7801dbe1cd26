"""One pot: a film of water round porous granules, and what soaks, pours and rests do to its salt.

Everything is told as excess over the rinse water, and the pot is linear in it: start with 1 and
every result is a share of the start.
"""

from __future__ import annotations

from typing import NamedTuple

from saltline.units import S_PER_MIN

# A sphere as its film feels it: twelve parts of the water inside, from core to skin, each with its
# share of that water and the rate [Da/R2] at which it trades with the film. The first are the
# sphere's own slow modes, the last stand for all its fast ones. Chosen so that the film is answered
# as by the whole sphere at 24 paces (docs/sources.json: mayo-antoulas-2007), within 1e-6 from
# Fourier numbers of 1e-5 up; tests/test_pot.py makes the table again.
SPHERE = (
    (0.6079271475, 9.869604575),
    (0.1520124630, 39.47985307),
    (0.0690728346, 89.22715953),
    (0.0472418823, 169.7403959),
    (0.0390197308, 340.4087492),
    (0.0297141281, 764.48689),
    (0.0208133684, 1889.948173),
    (0.0137825275, 5074.716269),
    (0.0088034390, 14841.05456),
    (0.0055303014, 48933.16159),
    (0.0035354488, 207538.0791),
    (0.0025467286, 2407046.327),
)
# exp(-x) for all x >= 0 as the real part of the sum of weight / (x + pole), within 2.1e-6: one step
# takes a whole night. Near-best approximation (docs/sources.json: trefethen-2006), made again in
# tests/test_pot.py.
POLES = (
    2.400602938931959 + 1.193129308402114j,
    1.158552571718079 + 3.614772600819693j,
    -1.7819882759222447 + 6.196512467347207j,
)
WEIGHTS = (
    1.1580260080597964 + 8.573777129153129j,
    -1.326013741054552 - 2.9028258398018343j,
    0.16716323431235033 + 0.21285852149552975j,
)
POUR_MIN = 3.0  # a slow pour, over the whole top (proposed)


class Spell(NamedTuple):
    """What the length of a spell alone decides, for each part and at each of the three poles."""

    pulls: list[tuple[complex, complex, complex]]  # of a part on the film
    kept: list[float]  # of a part's own excess
    holds: list[tuple[complex, complex, complex]]  # of the film on a part
    slow0: complex  # what all parts together hold back of the film's own change
    slow1: complex
    slow2: complex


def fourier_number(*, diffusivity: float, grain_mm: float, minutes: float) -> float:
    """Time told in the granule's own measure.

    Equation:
        Fo = Da t / R2, R half the grain.
    Arguments:
        diffusivity: Da of salt in the wet pores [1e-9 m2/s].
        grain_mm: diameter of the granules [mm].
        minutes: time [min].
    Returns:
        Fo [-].
    Valid for:
        Spheres of one size.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        crank-1975.
    """
    return diffusivity * 4e-3 * S_PER_MIN * minutes / (grain_mm * grain_mm)


def spell(*, fourier: float) -> Spell:
    """All that depends on the length of a spell alone, to be used for any bath and any state.

    Equation:
        h = k Fo / (k Fo + pole) for each part of the sphere and each pole, and their sums.
    Arguments:
        fourier: length of the spell, Da t / R2 [-].
    Returns:
        What `exchanged` takes.
    Valid for:
        fourier >= 0.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        trefethen-2006.
    """
    p0, p1, p2 = POLES
    w0, w1, w2 = WEIGHTS
    pulls, kept, holds, s0, s1, s2 = [], [], [], 0j, 0j, 0j
    for share, rate in SPHERE:
        pace = fourier * rate
        u0, u1, u2 = 1.0 / (pace + p0), 1.0 / (pace + p1), 1.0 / (pace + p2)
        h0, h1, h2 = pace * u0, pace * u1, pace * u2
        pace *= share
        s0, s1, s2 = s0 + pace * (1.0 - h0), s1 + pace * (1.0 - h1), s2 + pace * (1.0 - h2)
        pulls.append((share * h0, share * h1, share * h2))
        kept.append((w0 * u0 + w1 * u1 + w2 * u2).real)
        holds.append((h0, h1, h2))
    return Spell(pulls, kept, holds, s0, s1, s2)


def exchanged(
    during: Spell, parts: list[float], film: float, ratio: float, washed: float
) -> tuple[list[float], float]:
    """Parts and film after a spell of exchange.

    Equation:
        w_i dc_i/dt = w_i k_i (film - c_i); ratio dfilm/dt = sum w_i k_i (c_i - film) - q film,
        with washed = q times the length of the spell. The settled value is taken out first where
        nothing is washed away, so mass is kept to rounding.
    Arguments:
        during: what `spell` gave for the Fourier number.
        parts: excess in the twelve parts of the granules.
        film: excess in the film or bath.
        ratio: water in the film or bath over water inside the granules [-].
        washed: fresh water through the film over water inside the granules [-].
    Returns:
        (parts, film) at the end.
    Valid for:
        A stirred film or bath, granules of one size.
    Error:
        2e-6 of the excess for the step in time, 1e-6 of the exchange for the sphere.
    Raises:
        Nothing.
    Sources:
        haggerty-gorelick-1995; trefethen-2006.
    """
    pulls, kept, holds, s0, s1, s2 = during
    settled = 0.0
    if not washed:
        settled = ratio * film
        for (share, _), part in zip(SPHERE, parts):
            settled += share * part
        settled /= 1.0 + ratio
        parts = [part - settled for part in parts]
        film -= settled
    p0, p1, p2 = POLES
    w0, w1, w2 = WEIGHTS
    x0 = x1 = x2 = complex(ratio * film)
    for (g0, g1, g2), part in zip(pulls, parts):
        x0, x1, x2 = x0 + g0 * part, x1 + g1 * part, x2 + g2 * part
    x0 *= w0 / (s0 + p0 * ratio + washed)
    x1 *= w1 / (s1 + p1 * ratio + washed)
    x2 *= w2 / (s2 + p2 * ratio + washed)
    after = [
        settled + keep * part + (h0 * x0 + h1 * x1 + h2 * x2).real
        for keep, (h0, h1, h2), part in zip(kept, holds, parts)
    ]
    return after, settled + (x0 + x1 + x2).real


class Pot:
    """A drained pot whose film and granules have levelled out at an excess of 1.

    Equation:
        film: share p of the water held; granules: the rest, spheres of one size (`exchanged`).
        Soak: the film mixes with the bath, exchange, and the film keeps what the bath reads.
        Pour: fresh water runs through the mixed film, a share of it straight past. Rest: exchange.
    Valid for:
        Granules that neither bind salt nor hold it undissolved. Bark, zeolite, lime crust and live
        slow-release beads do one or the other.
    Error:
        0.1 % of a 300-shell sphere (tests/test_pot.py). No pot was ever measured against it.
    Sources:
        saltline-notes, flush 5; van-genuchten-wierenga-1976.
    """

    def __init__(
        self,
        *,
        water_held_ml: float,
        grain_mm: float,
        film_share: float,
        diffusivity: float,
        by_pass: float = 0.0,
    ) -> None:
        self.film_ml = film_share * water_held_ml
        self.inside_ml = water_held_ml - self.film_ml
        self.grain_mm = grain_mm
        self.diffusivity = diffusivity
        self.by_pass = by_pass
        self.film = 1.0
        self.parts = [1.0 for _ in SPHERE]
        self.spells: dict[float, Spell] = {}

    def left(self) -> float:
        """Excess over all water in the pot, film and granules, by volume."""
        inside = 0.0
        for (share, _), part in zip(SPHERE, self.parts):
            inside += share * part
        held = self.film_ml + self.inside_ml
        return (self.film_ml * self.film + self.inside_ml * inside) / held

    def soak(self, *, ml: float, minutes: float) -> float:
        """Soak in `ml` of rinse water and drain; returns the excess the bath reads at the end."""
        bath = self.film_ml + ml
        self.film *= self.film_ml / bath
        self._exchange(minutes, bath, 0.0)
        return self.film

    def pour(self, *, ml: float) -> float:
        """Pour `ml` of rinse water through; returns the mean excess of all that ran out."""
        before = self.left()
        self._exchange(POUR_MIN, self.film_ml, (1.0 - self.by_pass) * ml)
        return (before - self.left()) * (self.film_ml + self.inside_ml) / ml

    def rest(self, *, hours: float) -> None:
        """Stand drained and covered: film and granules level out."""
        self._exchange(60.0 * hours, self.film_ml, 0.0)

    def _exchange(self, minutes: float, bath_ml: float, washed_ml: float) -> None:
        if minutes not in self.spells:
            fourier = fourier_number(
                diffusivity=self.diffusivity, grain_mm=self.grain_mm, minutes=minutes
            )
            self.spells[minutes] = spell(fourier=fourier)
        self.parts, self.film = exchanged(
            self.spells[minutes],
            self.parts,
            self.film,
            bath_ml / self.inside_ml,
            washed_ml / self.inside_ml,
        )
