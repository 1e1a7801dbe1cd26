"""Which mesh parts slow-release beads from granules, in the openings that sieves are made in."""

from __future__ import annotations

from typing import NamedTuple

from saltline.errors import BadInput

# Nominal openings of test sieves [mm], series R40/3 (every second one is R20/3), largest first.
# docs/sources.json: iso-565, second-hand; each within 2 % of 10^(3 i/40).
OPENINGS_MM = (
    31.5, 26.5, 22.4, 19.0, 16.0, 13.2, 11.2, 9.5, 8.0, 6.7, 5.6, 4.75, 4.0, 3.35, 2.8, 2.36, 2.0,
    1.7, 1.4, 1.18, 1.0, 0.85, 0.71, 0.6, 0.5, 0.425, 0.355, 0.3, 0.25,
)  # fmt: skip
MAIN_STEP = 1.4  # R20/3: each main opening is about 1.4 times the next
TIGHT_SHARE = 0.1  # a margin under a tenth of the opening lets odd shapes jam: our estimate


class Sieve(NamedTuple):
    """The answer of `sieve`: openings [mm]; None where none is made."""

    aperture_mm: float | None
    margin_mm: float | None
    dust_mm: float | None
    answer: str
    warnings: tuple[str, ...]


def sieve(*, prill_min_mm: float, prill_max_mm: float, grain_min_mm: float) -> Sieve:
    """The opening that lets every bead through and holds every granule, and one that drops dust.

    Equation:
        the opening a with the largest margin min(a - largest bead, smallest granule - a), not
        below 0; for dust the largest opening that is at least one main step (1.4) finer than the
        smallest bead.
    Arguments:
        prill_min_mm: smallest bead [mm].
        prill_max_mm: largest bead [mm].
        grain_min_mm: smallest granule [mm].
    Returns:
        Sieve: opening, margin, dust opening [mm]; parts, tight or none.
    Valid for:
        Round beads and granules, square openings, shaken by hand.
    Error:
        A woven mesh is good to a few percent of its opening.
    Raises:
        BadInput: smallest bead larger than the largest.
    Sources:
        iso-565, nominal openings; saltline-notes, feed 6 and its recomputation.
    """
    if prill_min_mm > prill_max_mm:
        raise BadInput("prill_min_mm", "must not be more than the largest bead")
    best, margin = None, None
    for opening in OPENINGS_MM:
        room = min(opening - prill_max_mm, grain_min_mm - opening)
        if room >= 0.0 and (margin is None or room > margin):
            best, margin = opening, room
    dust = None
    for opening in OPENINGS_MM:
        if opening * MAIN_STEP <= prill_min_mm:
            dust = opening
            break
    if best is None or margin is None:
        answer = "none"
    else:
        answer = "tight" if margin < TIGHT_SHARE * best else "parts"
    return Sieve(aperture_mm=best, margin_mm=margin, dust_mm=dust, answer=answer, warnings=())
