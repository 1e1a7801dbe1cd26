"""One pot: a film of water round porous granules, and what soaks, pours and rests do to its salt.

Everything is told as excess over the rinse water, and the pot is linear in it: start with 1 and
every result is a share of the start.
"""

from __future__ import annotations

from saltline.exchange import (
    LEVEL,
    Pull,
    Spell,
    exchanged,
    fourier_number,
    salts_after,
    spell,
)

POUR_MIN = 3.0  # a slow pour, over the whole top (proposed)


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
        0.2 % of a 150-shell sphere (tests/test_pot.py). No pot was ever measured against it.
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
        self.salts = LEVEL
        self.pull: Pull | None = None  # of the last spell, where the salts do not yet follow it
        self.inside = 1.0  # mean excess of the granules: the sum of the salts
        self.spells: list[tuple[float, Spell]] = []  # by their minutes

    def left(self) -> float:
        """Excess over all water in the pot, film and granules, by volume."""
        film, inside = self.film_ml, self.inside_ml
        return (film * self.film + inside * self.inside) / (film + inside)

    def settled_salts(self) -> list[float]:
        """Salt of each part, worked out when it is asked for: after the last spell it never is."""
        if self.pull:
            self.salts, self.pull = salts_after(self.pull, self.salts), None
        return self.salts

    def soak(self, *, ml: float, minutes: float) -> float:
        """Soak in `ml` of rinse water and drain; returns the excess the bath reads at the end."""
        bath = self.film_ml + ml
        self.film *= self.film_ml / bath
        self._settle(minutes, bath / self.inside_ml)
        return self.film

    def pour(self, *, ml: float) -> float:
        """Pour `ml` of rinse water through; returns the mean excess of all that ran out."""
        film, inside = self.film_ml, self.inside_ml
        film_before, inside_before = self.film, self.inside
        self.film, self.pull = exchanged(
            self._spell(POUR_MIN),
            self.settled_salts(),
            film_before,
            film / inside,
            (1.0 - self.by_pass) * ml / inside,
            0.0,
        )
        self.inside = sum(self.settled_salts())
        return (film * (film_before - self.film) + inside * (inside_before - self.inside)) / ml

    def rest(self, *, hours: float) -> None:
        """Stand drained and covered: film and granules level out."""
        self._settle(60.0 * hours, self.film_ml / self.inside_ml)

    def _settle(self, minutes: float, ratio: float) -> None:
        """Exchange with a film or bath that nothing leaves: what it gains the granules lose."""
        before = self.film
        settled = (ratio * before + self.inside) / (1.0 + ratio)
        self.film, self.pull = exchanged(
            self._spell(minutes), self.settled_salts(), before, ratio, 0.0, settled
        )
        self.inside += ratio * (before - self.film)

    def _spell(self, minutes: float) -> Spell:
        for known, during in self.spells:
            if known == minutes:
                return during
        fourier = fourier_number(
            diffusivity=self.diffusivity, grain_mm=self.grain_mm, minutes=minutes
        )
        during = spell(fourier=fourier)
        # Not grown in place: the light engine would look for memory from the old list's on.
        self.spells = self.spells + [(minutes, during)]
        return during
