"""When coated slow-release beads let go: heat, time, and which nutrient leaves first."""

from __future__ import annotations

from math import exp, expm1, log
from typing import NamedTuple

from saltline.units import kelvin

GAS_CONSTANT_J_MOL_K = 8.314462618  # SI definition

# Activation energy [kJ/mol]: 37-46 measured on two products (du-2006, opening only); 57 is what a
# trade rule of doubling every 9 C and a test at 100 C imply (saltline-notes, recomputation E9).
ENERGY_KJ_MOL = 42.0
ENERGIES_KJ_MOL = (37.0, 57.0)
LAG_DAYS = 6.0  # water enters first: 2-10 days (du-2006, opening only)
LAGS_DAYS = (2.0, 10.0)
SHAPES = (1.0, 1.5)  # exponent: 1 is a plain decay (saltline-notes, feed 5)

# Share of the nitrogen out at the end of the rated life: 0.90-0.95 for the kind rated at 21 C, 0.80
# for the kind rated at 25 C (common-practice; memory).
RATED_SHARE_21, RATED_SHARE_25 = 0.90, 0.80
RATED_SHARES = (0.80, 0.95)

# Every combination of the least and the most of what is not known about a bead: Ea [kJ/mol], share
# out after the rated life [-], lag [days], exponent [-].
CORNERS = tuple(
    (energy, share, lag, shape)
    for energy in ENERGIES_KJ_MOL
    for share in RATED_SHARES
    for lag in LAGS_DAYS
    for shape in SHAPES
)

# Paces against nitrate (low, high) and lag [days], fitted with these lags to what two products had
# left after 7 months (broschat-moore-2007, opening only). Phosphorus fits with a long lag or with
# none; a pace belongs to its own lag.
PACES = (
    ("potassium", 0.43, 0.55, LAG_DAYS),
    ("phosphorus", 0.37, 0.42, 60.0),
    ("phosphorus", 0.28, 0.31, 0.0),
)


class PrillRelease(NamedTuple):
    """The answer of `prill_release`: shares out of the bead [-] and the end of its life [days]."""

    released_share: float
    released_share_low: float
    released_share_high: float
    end_day_low: float
    end_day_high: float
    potassium_share_low: float
    potassium_share_high: float
    phosphorus_share_low: float
    phosphorus_share_high: float
    warnings: tuple[str, ...]


def rate_factor(*, at_c: float, rated_c: float, energy_kj_mol: float = ENERGY_KJ_MOL) -> float:
    """How many times faster a bead lets go than at the temperature of its label.

    Equation:
        r = exp(-(Ea / R) (1/T - 1/Tref)), T in kelvin (Arrhenius).
    Arguments:
        at_c: temperature of the medium [C].
        rated_c: temperature of the label, 21 or 25 [C].
        energy_kj_mol: Ea [kJ/mol].
    Returns:
        r [-].
    Valid for:
        Polymer-coated beads kept moist, 20-40 C measured; used from 5 C.
    Error:
        Ea 37-57 kJ/mol: -19 to +22 % on the rate 10 C away from the label.
    Raises:
        Nothing.
    Sources:
        du-2006, activation energy of the linear stage.
    """
    inverse = 1.0 / kelvin(at_c) - 1.0 / kelvin(rated_c)
    return exp(-energy_kj_mol * 1000.0 / GAS_CONSTANT_J_MOL_K * inverse)


def thermal_days(
    *, temperatures_c: list[float], rated_c: float, energy_kj_mol: float = ENERGY_KJ_MOL
) -> float:
    """Days at the label's temperature that a run of days amounts to.

    Equation:
        tau = sum of r(T_i) over the days.
    Arguments:
        temperatures_c: mean temperature of the medium, day by day [C].
        rated_c: temperature of the label [C].
        energy_kj_mol: Ea [kJ/mol].
    Returns:
        tau [days].
    Valid for:
        As `rate_factor`. Means hide a day's swing: 7 % too low for +-10 C about 25 C.
    Error:
        As `rate_factor`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5.
    """
    total = 0.0
    for at_c in temperatures_c:
        total += rate_factor(at_c=at_c, rated_c=rated_c, energy_kj_mol=energy_kj_mol)
    return total


def rate_constant(
    *, rated_days: float, rated_share: float, lag_days: float = LAG_DAYS, shape: float = 1.0
) -> float:
    """Rate at the label's temperature that gives the rated share at the end of the rated life.

    Equation:
        k = (-ln(1 - p))^(1/b) / (L - tL).
    Arguments:
        rated_days: L [days].
        rated_share: p, share out after L [-].
        lag_days: tL, days before anything leaves [days], under L.
        shape: b [-].
    Returns:
        k [1/day at the label's temperature].
    Valid for:
        Beads whose label states a life and a temperature.
    Error:
        Two products measured after 7 months: share out within 0.07 of this rule.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5; broschat-moore-2007 for the check.
    """
    return exp(log(-log(1.0 - rated_share)) / shape) / (rated_days - lag_days)


def released(*, day: float, rate_per_day: float, lag_days: float, shape: float = 1.0) -> float:
    """Share that has left the bead.

    Equation:
        F = 0 up to the lag, then 1 - exp(-(k (tau - tL))^b).
    Arguments:
        day: tau, days at the label's temperature (thermal days) [days].
        rate_per_day: k [1/day].
        lag_days: tL [days].
        shape: b [-].
    Returns:
        F [-].
    Valid for:
        Sound beads that stay moist. Broken ones give all at once.
    Error:
        As `rate_constant`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, feed 5.
    """
    run = rate_per_day * (day - lag_days)
    if run <= 0.0:
        return 0.0
    return -expm1(-(run if shape == 1.0 else exp(shape * log(run))))


def usual_rated_share(*, rated_c: float) -> float:
    """Share of the nitrogen out at the end of the rated life, by the label's temperature.

    Equation:
        0.90 for labels at 21 C, 0.80 for labels at 25 C; 23 C parts them.
    Arguments:
        rated_c: temperature of the label [C].
    Returns:
        p [-].
    Valid for:
        The two kinds of label in use.
    Error:
        0.80 to 0.95 for either.
    Raises:
        Nothing.
    Sources:
        common-practice (memory); trenkel-2010: 0.75 or more by the stated time.
    """
    return RATED_SHARE_21 if rated_c < 23.0 else RATED_SHARE_25


def released_ion(
    *,
    pace: float,
    lag_days: float,
    day: float,
    rated_days: float,
    rated_share: float,
) -> float:
    """Share of another nutrient that has left the bead, from its pace against nitrate.

    Equation:
        F = 1 - exp(-w k (tau - tL)), w the pace of the ion, k of nitrate with its lag of 6 days,
        or with none where the ion has none.
    Arguments:
        pace: w [-]: ammonium 0.82-0.88, potassium 0.43-0.55, phosphorus 0.37-0.42 with a lag of
            60 days or 0.28-0.31 without.
        lag_days: tL of the ion [days].
        day: tau, days at the label's temperature [days].
        rated_days: L [days].
        rated_share: p of nitrogen after L [-].
    Returns:
        F [-].
    Valid for:
        Seven months. The pace of one lag is wrong with another.
    Error:
        0.11 on two products.
    Raises:
        Nothing.
    Sources:
        broschat-moore-2007, shares left after 7 months at 23 C.
    """
    nitrate = rate_constant(
        rated_days=rated_days, rated_share=rated_share, lag_days=min(LAG_DAYS, lag_days)
    )
    return released(day=day, rate_per_day=pace * nitrate, lag_days=lag_days)


def _ion_range(ion: str, thermal: list[float], rated_days: float) -> tuple[float, float]:
    """Least and most of another nutrient out, over pace and lag, rated share and heat."""
    shares = [
        released_ion(
            pace=pace, lag_days=lag, day=day, rated_days=rated_days, rated_share=rated_share
        )
        for name, low, high, lag in PACES
        if name == ion
        for pace in (low, high)
        for rated_share in RATED_SHARES
        for day in thermal
    ]
    return min(shares), max(shares)


def prill_release(*, rated_days: float, rated_c: float, mean_c: float, day: float) -> PrillRelease:
    """How much of a slow-release bead is out on a day, and when its rated life ends.

    Equation:
        tau = r(T) day; F = 1 - exp(-(k (tau - lag))^b); the life ends at L / r(T).
        Middle: Ea 42 kJ/mol, lag 6 d, b 1, and 0.90 (label at 21 C) or 0.80 (label at 25 C) out
        at the end. Range: all corners of Ea 37-57, lag 2-10 d, b 1-1.5 and 0.80-0.95.
    Arguments:
        rated_days: L, life on the label [days].
        rated_c: temperature of the label, 21 or 25 [C].
        mean_c: mean temperature of the medium, day and night [C].
        day: days since the beads went in [days].
    Returns:
        PrillRelease: share of nitrogen (nitrate) out with its range [-], first and last day on
        which the rated share is out [days], shares of potassium and phosphorus [-].
    Valid for:
        Moist polymer-coated beads, 20-40 C measured. Beads that dry out between waterings are
        slower, by how much is not known.
    Error:
        Two products, 7 months at 23 C: 0.905 measured, inside the range; 0.755 measured, 0.05
        below it. Their rated share came 15 % earlier and 9 % later than the label's life.
    Raises:
        Nothing within the bounds.
    Sources:
        du-2006; broschat-moore-2007; wang-2011; saltline-notes, feed 4-5 and its recomputation.
    """
    shares = []
    for energy, share, lag, shape in CORNERS:
        rate = rate_constant(rated_days=rated_days, rated_share=share, lag_days=lag, shape=shape)
        tau = day * rate_factor(at_c=mean_c, rated_c=rated_c, energy_kj_mol=energy)
        shares.append(released(day=tau, rate_per_day=rate, lag_days=lag, shape=shape))
    factors = [rate_factor(at_c=mean_c, rated_c=rated_c, energy_kj_mol=e) for e in ENERGIES_KJ_MOL]
    thermal = [day * factor for factor in factors]
    k_low, k_high = _ion_range("potassium", thermal, rated_days)
    p_low, p_high = _ion_range("phosphorus", thermal, rated_days)
    middle = rate_constant(rated_days=rated_days, rated_share=usual_rated_share(rated_c=rated_c))
    return PrillRelease(
        released_share=released(
            day=day * rate_factor(at_c=mean_c, rated_c=rated_c),
            rate_per_day=middle,
            lag_days=LAG_DAYS,
        ),
        released_share_low=min(shares),
        released_share_high=max(shares),
        end_day_low=rated_days / max(factors),
        end_day_high=rated_days / min(factors),
        potassium_share_low=k_low,
        potassium_share_high=k_high,
        phosphorus_share_low=p_low,
        phosphorus_share_high=p_high,
        warnings=(),
    )
