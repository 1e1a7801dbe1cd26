"""How well a mixed solution conducts at 25 C, from the ions in it and the pairs they form."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log, sqrt
from typing import NamedTuple


class Ion(NamedTuple):
    """A dissolved ion: charge [-], conductivity at infinite dilution [S cm2/eq], mass [g/mol]."""

    name: str
    charge: int
    conductivity: float
    mass: float


# 25 C. Conductivities: docs/sources.json crc-ions; masses: iupac-masses. Other tables give 32 or 33
# for H2PO4: 0.004 mS/cm less per mmol/L, which no pen would show in a feed.
IONS = (
    Ion("Ca", 2, 59.47, 40.078),
    Ion("Mg", 2, 53.0, 24.305),
    Ion("K", 1, 73.48, 39.098),
    Ion("Na", 1, 50.08, 22.990),
    Ion("NH4", 1, 73.5, 18.038),
    Ion("NO3", -1, 71.42, 62.005),
    Ion("Cl", -1, 76.31, 35.453),
    Ion("SO4", -2, 80.0, 96.063),
    Ion("H2PO4", -1, 36.0, 96.987),
    Ion("HCO3", -1, 44.5, 61.017),
    Ion("H", 1, 349.65, 1.008),
    Ion("OH", -1, 198.0, 17.007),
)
CA, MG, SO4, H2PO4, HCO3 = 0, 1, 7, 8, 9

DEBYE_HUCKEL_A = 0.5085  # water at 25 C [(mol/L)^-1/2]
ALPHA = 0.6  # exponent of the conductivity correction [-]; docs/sources.json: appelo-conductance
# Association constants of the pairs that carry no current [L/mol], and the solubility product of
# gypsum [mol2/L2] (docs/sources.json: phreeqc-3, phreeqc.dat).
K_CASO4 = 10.0**2.25
K_MGSO4 = 10.0**2.37
K_GYPSUM = 10.0**-4.58


def ionic_strength(*, mmol_l: Sequence[float]) -> float:
    """Ionic strength of a list of ions in the order of `IONS`.

    Equation:
        I = 1/2 sum z^2 c.
    Arguments:
        mmol_l: concentrations in the order of IONS [mmol/L].
    Returns:
        I [mol/L].
    Valid for:
        Any.
    Error:
        Exact.
    Raises:
        IndexError: a list longer than IONS.
    Sources:
        Definition.
    """
    return 0.0005 * sum(IONS[at].charge ** 2 * amount for at, amount in enumerate(mmol_l))


def activity_coefficient(*, charge: int, strength_mol_l: float) -> float:
    """Activity coefficient of an ion, after Davies.

    Equation:
        log10 gamma = -0.5085 z^2 (sqrt I / (1 + sqrt I) - 0.3 I).
    Arguments:
        charge: z [-].
        strength_mol_l: ionic strength I [mol/L].
    Returns:
        gamma [-].
    Valid for:
        25 C, I up to 0.1 mol/L.
    Error:
        A few percent at 0.1 mol/L.
    Raises:
        Nothing.
    Sources:
        saltline-notes, salts E7.
    """
    root = sqrt(strength_mol_l)
    slope = root / (1.0 + root) - 0.3 * strength_mol_l
    return exp(-DEBYE_HUCKEL_A * log(10.0) * charge * charge * slope)


def free_ions(*, mmol_l: Sequence[float]) -> list[float]:
    """What is left of each ion once magnesium and calcium have paired with sulfate.

    Equation:
        [MSO4] = K g2^2 [M][SO4] for M = Ca, Mg, g2 the activity coefficient of a double charge at
        the ionic strength of the free ions; solved by repeated substitution.
    Arguments:
        mmol_l: total concentrations in the order of IONS [mmol/L].
    Returns:
        Free concentrations in the same order [mmol/L].
    Valid for:
        25 C, I up to 0.1 mol/L.
    Error:
        Pairs with bicarbonate and phosphate are left out: up to 6 % in conductivity of hard tap.
    Raises:
        IndexError: a list longer than IONS.
    Sources:
        saltline-notes, salts E8; phreeqc-3, phreeqc.dat.
    """
    free = list(mmol_l)
    for _ in range(100):
        gamma = activity_coefficient(charge=2, strength_mol_l=ionic_strength(mmol_l=free))
        per_mmol = 0.001 * gamma * gamma
        before = free[SO4]
        free[CA] = mmol_l[CA] / (1.0 + K_CASO4 * per_mmol * before)
        free[MG] = mmol_l[MG] / (1.0 + K_MGSO4 * per_mmol * before)
        bound = per_mmol * (K_CASO4 * free[CA] + K_MGSO4 * free[MG])
        free[SO4] = mmol_l[SO4] / (1.0 + bound)
        if abs(free[SO4] - before) <= 1e-14 * mmol_l[SO4]:
            break
    return free


def conductivity_ms_cm(*, mmol_l: Sequence[float]) -> float:
    """Conductivity of a mixed solution at 25 C from its ions.

    Equation:
        EC = sum |z| lambda c gamma^(0.6 / sqrt|z|) over the free ions (free_ions), gamma after
        Davies (activity_coefficient).
    Arguments:
        mmol_l: total concentrations in the order of IONS [mmol/L].
    Returns:
        Conductivity at 25 C [mS/cm].
    Valid for:
        Ionic strength up to 0.1 mol/L.
    Error:
        3 % against PHREEQC for feeds, 6 % for bicarbonate water; 4 % against measured single
        salts; 0.5 % for KCl standards up to 0.1 mol/L.
    Raises:
        IndexError: a list longer than IONS.
    Sources:
        saltline-notes, salts E7 and E8; crc-ions; appelo-conductance.
    """
    free = free_ions(mmol_l=mmol_l)
    strength = ionic_strength(mmol_l=free)
    slowed = [0.0]
    for charge in (1, 2):
        gamma = activity_coefficient(charge=charge, strength_mol_l=strength)
        slowed.append(gamma ** (ALPHA / sqrt(charge)))
    total = 0.0
    for at, amount in enumerate(free):
        charge = abs(IONS[at].charge)
        total += charge * IONS[at].conductivity * amount * slowed[charge]
    return total / 1000.0


def gypsum_saturation(*, mmol_l: Sequence[float]) -> float:
    """How full of gypsum a solution is: above 1, gypsum settles.

    Equation:
        Omega = g2^2 [Ca][SO4] / K over the free ions.
    Arguments:
        mmol_l: total concentrations in the order of IONS [mmol/L].
    Returns:
        Omega [-].
    Valid for:
        25 C, I up to 0.1 mol/L.
    Error:
        10 % against PHREEQC.
    Raises:
        IndexError: a list longer than IONS.
    Sources:
        phreeqc-3, phreeqc.dat.
    """
    free = free_ions(mmol_l=mmol_l)
    gamma = activity_coefficient(charge=2, strength_mol_l=ionic_strength(mmol_l=free))
    return 1e-6 * gamma * gamma * free[CA] * free[SO4] / K_GYPSUM
