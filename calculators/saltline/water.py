"""Water as it climbs and dries: surface tension, viscosity, density, vapour pressure, heat."""

from __future__ import annotations

from math import exp

from saltline.units import kelvin

CRITICAL_K = 647.096  # docs/sources.json: iapws-r1-76
GRAVITY_M_S2 = 9.80665  # standard gravity, exact by definition


def surface_tension(*, water_c: float) -> float:
    """Surface tension of water against its vapour.

    Equation:
        sigma = 0.2358 x^1.256 (1 - 0.625 x), x = 1 - T / 647.096 K.
    Arguments:
        water_c: temperature [C].
    Returns:
        Surface tension [N/m].
    Valid for:
        0.01-374 C, and supercooled to about -25 C.
    Error:
        0.5 % or less at pot temperatures. Wetters and dissolved organics lower it; salts hardly.
    Raises:
        Nothing within 0-40 C.
    Sources:
        iapws-r1-76.
    """
    x = 1.0 - kelvin(water_c) / CRITICAL_K
    sigma: float = 0.2358 * x**1.256 * (1.0 - 0.625 * x)
    return sigma


def viscosity(*, water_c: float) -> float:
    """Dynamic viscosity of liquid water at ordinary pressure.

    Equation:
        mu = 280.68 q^-1.9 + 511.45 q^-7.7 + 61.131 q^-19.6 + 0.45903 q^-40 uPa s, q = T / 300 K.
    Arguments:
        water_c: temperature [C].
    Returns:
        Viscosity [Pa s].
    Valid for:
        -20 to 110 C at 0.1 MPa.
    Error:
        1 %; within 0.004 % of the full 2008 formulation over 5-40 C.
    Raises:
        Nothing within 0-40 C.
    Sources:
        iapws-sr6-08.
    """
    q = kelvin(water_c) / 300.0
    micro: float = 280.68 * q**-1.9 + 511.45 * q**-7.7 + 61.131 * q**-19.6 + 0.45903 * q**-40.0
    return micro * 1e-6


def density(*, water_c: float) -> float:
    """Density of air-free water at ordinary pressure.

    Equation:
        rho = 999.97495 (1 - (t - 3.983035)^2 (t + 301.797) / (522528.9 (t + 69.34881))).
    Arguments:
        water_c: temperature t [C].
    Returns:
        Density [kg/m3].
    Valid for:
        0-40 C.
    Error:
        0.0012 kg/m3 against IAPWS-95 over 5-40 C; feed salts add up to about 1 kg/m3.
    Raises:
        Nothing within 0-40 C.
    Sources:
        tanaka-2001.
    """
    t = water_c
    fall = (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881))
    return 999.97495 * (1.0 - fall)


def saturation_pressure(*, water_c: float) -> float:
    """Vapour pressure over a flat surface of pure water.

    Equation:
        e = 610.8 exp(17.27 t / (t + 237.3)) Pa.
    Arguments:
        water_c: temperature t [C].
    Returns:
        Pressure [Pa].
    Valid for:
        0-50 C.
    Error:
        0.02-0.13 % below IAPWS-95 over 5-40 C. Over a strong brine it is a few percent lower.
    Raises:
        Nothing within 0-50 C.
    Sources:
        fao-56, equation 11.
    """
    return 610.8 * exp(17.27 * water_c / (water_c + 237.3))


def latent_heat(*, water_c: float) -> float:
    """Heat that evaporating water takes.

    Equation:
        lambda = 2.501e6 - 2361 t J/kg.
    Arguments:
        water_c: temperature t of the surface [C].
    Returns:
        Latent heat [J/kg].
    Valid for:
        0-50 C.
    Error:
        0.03 % against IAPWS-95 over 5-40 C.
    Raises:
        Nothing.
    Sources:
        fao-56, annex 3, equation 3-1.
    """
    return 2.501e6 - 2361.0 * water_c
