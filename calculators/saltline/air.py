"""Still and moving room air as the evaporation solve needs it, at ordinary pressure."""

from __future__ import annotations

from saltline.units import ZERO_CELSIUS_K, kelvin

PRESSURE_PA = 101325.0  # standard atmosphere
VAPOUR_GAS_CONSTANT = 461.5  # J/(kg K): 8.314463 / 0.018015
VAPOUR_LIGHTNESS = 0.378  # 1 - 0.622, the ratio of the molar masses of water and dry air
PRANDTL = 0.71  # kinematic viscosity over thermal diffusivity of air, 10-40 C


def _warmed(at_0_c: float, air_c: float, exponent: float) -> float:
    """A property at `air_c` from its value at 0 C, by a power of the absolute temperature."""
    grown: float = (kelvin(air_c) / ZERO_CELSIUS_K) ** exponent
    return at_0_c * grown


def vapour_diffusivity(*, air_c: float) -> float:
    """How fast water vapour spreads in air.

    Equation:
        D = 2.12e-5 (T / 273.15 K)^1.75.
    Arguments:
        air_c: temperature [C].
    Returns:
        Diffusivity [m2/s].
    Valid for:
        0-40 C near sea level; it rises as pressure falls.
    Error:
        3 % (the published values at 0 C lie between 2.12e-5 and 2.18e-5).
    Raises:
        Nothing.
    Sources:
        saltline-notes, wicking 5; monteith-unsworth for the exponent.
    """
    return _warmed(2.12e-5, air_c, 1.75)


def kinematic_viscosity(*, air_c: float) -> float:
    """Kinematic viscosity of air.

    Equation:
        nu = 1.33e-5 (T / 273.15 K)^1.77.
    Arguments:
        air_c: temperature [C].
    Returns:
        Kinematic viscosity [m2/s].
    Valid for:
        0-40 C near sea level, any humidity.
    Error:
        0.5 % against CoolProp for moist air.
    Raises:
        Nothing.
    Sources:
        saltline-notes, wicking 5.
    """
    return _warmed(1.33e-5, air_c, 1.77)


def conductivity(*, air_c: float) -> float:
    """Thermal conductivity of air.

    Equation:
        k = 0.0243 (T / 273.15 K)^0.85.
    Arguments:
        air_c: temperature [C].
    Returns:
        Conductivity [W/(m K)].
    Valid for:
        0-40 C, any humidity.
    Error:
        0.3 % against CoolProp for moist air.
    Raises:
        Nothing.
    Sources:
        saltline-notes, wicking 5.
    """
    return _warmed(0.0243, air_c, 0.85)


def virtual_temperature(*, air_c: float, vapour_pa: float) -> float:
    """Temperature at which dry air would be as light as this moist air.

    Equation:
        Tv = T / (1 - 0.378 e / p).
    Arguments:
        air_c: temperature [C].
        vapour_pa: partial pressure e of the vapour [Pa].
    Returns:
        Virtual temperature [K].
    Valid for:
        Vapour pressures far below the air's.
    Error:
        0.02 K against psychrolib's densities.
    Raises:
        Nothing.
    Sources:
        saltline-notes, wicking 5 (ideal gas).
    """
    return kelvin(air_c) / (1.0 - VAPOUR_LIGHTNESS * vapour_pa / PRESSURE_PA)
