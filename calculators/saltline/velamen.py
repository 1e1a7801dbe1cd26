"""Water and salt in the velamen, the white skin of an orchid's root, above a damp surface."""

from __future__ import annotations

from math import erf, exp, expm1, log, pi, sqrt

from saltline.units import S_PER_DAY, S_PER_H, S_PER_MIN, metres

PORE_SHARE = 0.8  # water in a soaked velamen over its volume; docs/sources.json: saltline-notes
SALT_SPREAD_M2_S = 1e-9  # Ds: 1.5e-9 in water over a tortuosity of 1.5; may be 3-10 times lower
MOST_EXPONENT = 40.0  # beyond it the salt has no ceiling within any time that is asked for


def drying_h(*, velamen_mm: float, root_mm: float, evaporation_mm_day: float) -> float:
    """Time a soaked root takes to dry, which is also how often its wet band renews its water.

    Equation:
        t = phi de / E, de = delta (1 - delta / d), phi = 0.8.
    Arguments:
        velamen_mm: thickness delta of the velamen [mm].
        root_mm: thickness d of the root [mm].
        evaporation_mm_day: E per outer area [mm/day].
    Returns:
        Time [h].
    Valid for:
        Even loss all round, down to dry.
    Error:
        10 % from phi; E carries the rest.
    Raises:
        ZeroDivisionError: no evaporation.
    Sources:
        saltline-notes, wicking 3.
    """
    depth = velamen_mm * (1.0 - velamen_mm / root_mm)
    return PORE_SHARE * depth / evaporation_mm_day * S_PER_DAY / S_PER_H


def band_height(*, velamen_mm: float, dry_h: float, soak_through_s: float) -> float:
    """Height of the wet band that flow up the velamen feeds against evaporation.

    Equation:
        L = delta sqrt(t_dry / t_abs).
    Arguments:
        velamen_mm: thickness delta [mm].
        dry_h: time t_dry to dry at that height [h].
        soak_through_s: time t_abs the dry velamen takes to soak through [s].
    Returns:
        Height [mm] above the damp surface.
    Valid for:
        A root that stands up from damp medium, dry above. Gravity shortens it by 1 % or so.
    Error:
        x0.7 to x2.5: the soak time stands in for flow along the root.
    Raises:
        ZeroDivisionError: soak_through_s is 0.
    Sources:
        saltline-notes, wicking 3.
    """
    return velamen_mm * sqrt(dry_h * S_PER_H / soak_through_s)


def rising_edge(*, band_mm: float, dry_h: float, hours: float) -> float:
    """Where the wet edge stands on a dry root some time after its foot was wetted.

    Equation:
        h^2 = L^2 (1 - exp(-t / t_dry)).
    Arguments:
        band_mm: final height L [mm].
        dry_h: time t_dry to dry [h].
        hours: time t since wetting [h].
    Returns:
        Height [mm].
    Valid for:
        Even evaporation, no gravity.
    Error:
        6e-6 against a numerical solution of the same model; the band's own error on top.
    Raises:
        ZeroDivisionError: dry_h is 0.
    Sources:
        saltline-notes, wicking 3.
    """
    return band_mm * sqrt(-expm1(-hours / dry_h))


def peclet(*, velamen_mm: float, soak_through_s: float) -> float:
    """How far the upward flow outruns the salt's own spreading back.

    Equation:
        Pe = delta^2 / (t_abs Ds), equal to L^2 / (t_dry Ds).
    Arguments:
        velamen_mm: thickness delta, or the height L of the band [mm].
        soak_through_s: time t_abs to soak through, or t_dry to dry when given L [s].
    Returns:
        Pe [-].
    Valid for:
        Ds = 1e-9 m2/s.
    Error:
        x10 either way: neither t_abs nor Ds is known better.
    Raises:
        ZeroDivisionError: soak_through_s is 0.
    Sources:
        saltline-notes, wicking 4.
    """
    return metres(velamen_mm) ** 2 / (soak_through_s * SALT_SPREAD_M2_S)


def steady_mean(*, peclet: float) -> float:
    """Mean strength of a refused salt in the band once it gains no more, over the water's.

    Equation:
        m = integral over x from 0 to 1 of exp(Pe (1 - x^2) / 2)
        = exp(a) sqrt(pi) erf(sqrt a) / (2 sqrt a), a = Pe / 2.
    Arguments:
        peclet: Pe [-], above 0.
    Returns:
        m [-]; a is held at 40, where m is 1e16 and `mean_factor` no longer depends on it.
    Valid for:
        Even evaporation, sealed tip, no uptake, nothing precipitates.
    Error:
        Exact for the model; Pe enters an exponential, so never an answer by itself.
    Raises:
        ZeroDivisionError: peclet is 0.
    Sources:
        saltline-notes, wicking 4.
    """
    a = min(0.5 * peclet, MOST_EXPONENT)
    return exp(a) * sqrt(pi) * erf(sqrt(a)) / (2.0 * sqrt(a))


def mean_factor(*, turnovers: float, steady_mean: float) -> float:
    """Mean strength of a refused salt in the band after some renewals of its water.

    Equation:
        N = 1 + (m - 1) (1 - exp(-tau / (m - 1))); N = 1 + tau where m is large.
    Arguments:
        turnovers: tau, time over t_dry [-].
        steady_mean: m [-], above 1.
    Returns:
        N [-], over the water's strength.
    Valid for:
        Up to 7 days without a rinse, night or mist; a root that drinks and refuses exceeds it.
    Error:
        0-11 % above the exact series for Pe 2-16, tau 2-84.
    Raises:
        ZeroDivisionError: steady_mean is 1.
    Sources:
        saltline-notes, wicking 4 and review W2.
    """
    gain = steady_mean - 1.0
    return 1.0 - gain * expm1(-turnovers / gain)


def rinse_min(*, velamen_mm: float, share_out: float) -> float:
    """Time under clear water until this share of the dissolved salt has left the velamen.

    Equation:
        t = (4 / pi^2) ln(8 / (pi^2 (1 - share))) delta^2 / Ds: first term of the slab's series.
    Arguments:
        velamen_mm: thickness delta [mm], wet outside, sealed inside.
        share_out: share that has left [-], 0.6 or more.
    Returns:
        Time [min].
    Valid for:
        Dissolved salt and running or plentiful water; lime and gypsum stay.
    Error:
        0.1 % against the whole series; three times longer if Ds is three times lower.
    Raises:
        ValueError: share_out is 1.
    Sources:
        crank-1975; saltline-notes, wicking review 4.
    """
    fourier = 4.0 / pi**2 * log(8.0 / (pi**2 * (1.0 - share_out)))
    return fourier * metres(velamen_mm) ** 2 / SALT_SPREAD_M2_S / S_PER_MIN
