"""Water lost by a wet root in air: heat and vapour through the air round a cylinder."""

from __future__ import annotations

from collections.abc import Callable
from math import sqrt
from typing import NamedTuple

from saltline.air import (
    PRANDTL,
    VAPOUR_GAS_CONSTANT,
    conductivity,
    kinematic_viscosity,
    vapour_diffusivity,
    virtual_temperature,
)
from saltline.units import S_PER_DAY, kelvin, metres, millimetres
from saltline.water import GRAVITY_M_S2, density, latent_heat, saturation_pressure

STEFAN_BOLTZMANN = 5.67e-8  # W/(m2 K4)
EMISSIVITY = 0.95  # wet surfaces in the far infrared, docs/sources.json: saltline-notes
COOLEST_BELOW_AIR_K = 40.0  # far below any wet bulb: the left end of the bracket


class WetCylinder(NamedTuple):
    """The answer of `wet_cylinder`: evaporation [mm/day] and surface temperature [C]."""

    evaporation_mm_day: float
    surface_c: float


def forced_transfer(*, reynolds: float, prandtl: float) -> float:
    """Nusselt (or Sherwood) number of a cylinder in a cross wind.

    Equation:
        Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4)
        (1 + (Re/282000)^(5/8))^(4/5).
    Arguments:
        reynolds: wind speed times diameter over kinematic viscosity [-].
        prandtl: Prandtl number, or the Schmidt number for vapour [-].
    Returns:
        Nu on the diameter [-]; 0 below Re Pr = 0.2, where the formula does not hold.
    Valid for:
        Re Pr above 0.2.
    Error:
        16-25 % above another correlation (Sanitjai and Goldstein) at Re 13-52.
    Raises:
        Nothing.
    Sources:
        churchill-bernstein-1977.
    """
    if reynolds * prandtl <= 0.2:
        return 0.0
    shape = (1.0 + (0.4 / prandtl) ** (2.0 / 3.0)) ** 0.25
    swirl = (1.0 + (reynolds / 282000.0) ** 0.625) ** 0.8
    nusselt: float = 0.3 + 0.62 * sqrt(reynolds) * prandtl ** (1.0 / 3.0) / shape * swirl
    return nusselt


def free_transfer(*, grashof: float, prandtl: float) -> float:
    """Nusselt (or Sherwood) number of a level cylinder in still air.

    Equation:
        Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2, Ra = Gr Pr.
    Arguments:
        grashof: buoyancy over viscosity [-].
        prandtl: Prandtl number, or the Schmidt number for vapour [-].
    Returns:
        Nu on the diameter [-].
    Valid for:
        Ra 1e-5 to 1e12.
    Error:
        10 % or so; a root seldom lies level.
    Raises:
        Nothing.
    Sources:
        churchill-chu-1975.
    """
    shape = (1.0 + (0.559 / prandtl) ** 0.5625) ** (8.0 / 27.0)
    root = 0.60 + 0.387 * (grashof * prandtl) ** (1.0 / 6.0) / shape
    nusselt: float = root * root
    return nusselt


def crossing(*, function: Callable[[float], float], low: float, high: float) -> float:
    """Where a function that is above 0 at `low` and not above 0 at `high` crosses zero.

    Equation:
        Bisection down to neighbouring floating-point numbers.
    Arguments:
        function: continuous between the ends.
        low: left end.
        high: right end.
    Returns:
        The crossing, in the unit of the ends.
    Valid for:
        One change of sign.
    Error:
        One unit in the last place of the answer.
    Raises:
        Nothing.
    Sources:
        saltline-notes.
    """
    while True:
        middle = 0.5 * (low + high)
        if not low < middle < high:
            return middle
        if function(middle) > 0.0:
            low = middle
        else:
            high = middle


def wet_cylinder(
    *,
    air_c: float,
    humidity_percent: float,
    air_speed_m_s: float,
    diameter_mm: float,
    emissivity: float = EMISSIVITY,
) -> WetCylinder:
    """Evaporation from a wet root in the shade, with the cooling it causes.

    Equation:
        (hc + hr) (Ta - Ts) = lambda m; m = hm (e(Ts) - RH e(Ta)) / (Rv Tf); E = m / rho.
        hc = Nu k / d, hm = Sh D / d, hr = 4 eps sigma Tf^3, Tf the mean of air and surface.
        Nu and Sh are the larger of wind (`forced_transfer`) and still air (`free_transfer`).
    Arguments:
        air_c: temperature of air and surroundings [C].
        humidity_percent: relative humidity of the air [%].
        air_speed_m_s: wind across the root [m/s], 0 in still air.
        diameter_mm: thickness of the root [mm].
        emissivity: of the root for heat radiation [-]; 0 leaves radiation out.
    Returns:
        WetCylinder: evaporation [mm/day per outer area], surface temperature [C].
    Valid for:
        A root alone in free air, wet all round, no sun on it. Near a damp pot top the air is
        moister and slower: 0.3-1 of this.
    Error:
        10 % from the choice of correlation for wind; without the cooling 2.4-3.4 times too high.
    Raises:
        Nothing within 5-40 C and below 100 % humidity.
    Sources:
        saltline-notes, wicking 5; churchill-bernstein-1977; churchill-chu-1975; fao-56.
    """
    d = metres(diameter_mm)
    air_pa = humidity_percent / 100.0 * saturation_pressure(water_c=air_c)
    air_virtual = virtual_temperature(air_c=air_c, vapour_pa=air_pa)

    def fluxes(surface_c: float) -> tuple[float, float]:
        """Heat that arrives [W/m2] and vapour that leaves [kg/(m2 s)]."""
        film_c = 0.5 * (air_c + surface_c)
        film_k = kelvin(film_c)
        wet_pa = saturation_pressure(water_c=surface_c)
        wet_virtual = virtual_temperature(air_c=surface_c, vapour_pa=wet_pa)
        nu = kinematic_viscosity(air_c=film_c)
        reynolds = air_speed_m_s * d / nu
        lift = abs(air_virtual - wet_virtual) / (0.5 * (air_virtual + wet_virtual))
        grashof = GRAVITY_M_S2 * lift * d * d * d / (nu * nu)

        def transfer(number: float) -> float:
            return max(
                forced_transfer(reynolds=reynolds, prandtl=number),
                free_transfer(grashof=grashof, prandtl=number),
            )

        convected = transfer(PRANDTL) * conductivity(air_c=film_c) / d
        radiated = 4.0 * emissivity * STEFAN_BOLTZMANN * film_k * film_k * film_k
        diffusivity = vapour_diffusivity(air_c=film_c)
        spread = transfer(nu / diffusivity) * diffusivity / d
        vapour = spread * (wet_pa - air_pa) / (VAPOUR_GAS_CONSTANT * film_k)
        return (convected + radiated) * (air_c - surface_c), vapour

    def surplus(surface_c: float) -> float:
        heat, vapour = fluxes(surface_c)
        return heat - latent_heat(water_c=surface_c) * vapour

    surface = crossing(function=surplus, low=air_c - COOLEST_BELOW_AIR_K, high=air_c)
    lost = fluxes(surface)[1] / density(water_c=max(surface, 0.0))
    return WetCylinder(evaporation_mm_day=millimetres(lost) * S_PER_DAY, surface_c=surface)
