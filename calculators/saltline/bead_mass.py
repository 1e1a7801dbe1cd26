"""What one slow-release bead weighs, from its size."""

from __future__ import annotations

from math import pi

BEAD_MG_MM3 = 1.7  # 1.5-1.9, the same number in g/cm3; memory, docs/sources.json: saltline-notes


def bead_mass_mg(*, diameter_mm: float) -> float:
    """Mass of one round slow-release bead.

    Equation:
        m = pi d^3 rho / 6.
    Arguments:
        diameter_mm: d, diameter of the bead [mm].
    Returns:
        Mass [mg].
    Valid for:
        Round coated beads. Weigh 10 g and count: beads of one bag differ in size.
    Error:
        12 % from the density, which is from memory; 3 % for each 1 % of the diameter.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 4.
    """
    return BEAD_MG_MM3 * pi * diameter_mm * diameter_mm * diameter_mm / 6.0


def beads_per_g(*, diameter_mm: float) -> float:
    """Number of round slow-release beads in a gram.

    Equation:
        n = 1000 / m, m in mg.
    Arguments:
        diameter_mm: d, diameter of the beads [mm].
    Returns:
        Beads in 1 g [-].
    Valid for:
        As `bead_mass_mg`.
    Error:
        As `bead_mass_mg`.
    Raises:
        ZeroDivisionError: no diameter.
    Sources:
        saltline-notes, feed 4.
    """
    return 1000.0 / bead_mass_mg(diameter_mm=diameter_mm)
