"""Water, air and a wet root's evaporation: against other libraries, and what must always hold."""

from __future__ import annotations

from math import cos, isfinite

import ht
import iapws
import numpy as np
import psychrolib
import pytest
import refet.calcs
from CoolProp.HumidAirProp import HAPropsSI
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from saltline import air, water
from saltline.air import PRESSURE_PA
from saltline.evaporation import (
    COOLEST_BELOW_AIR_K,
    WetCylinder,
    crossing,
    forced_transfer,
    free_transfer,
    wet_cylinder,
)
from saltline.units import kelvin

WARMTHS = [float(t) for t in range(5, 41)]
QUICK = settings(max_examples=200, deadline=None)
psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize("t", WARMTHS)
def test_liquid_water_against_iapws(t: float) -> None:
    liquid = iapws.IAPWS95(T=kelvin(t), P=PRESSURE_PA / 1e6)
    boiling = iapws.IAPWS95(T=kelvin(t), x=0)
    steam = iapws.IAPWS95(T=kelvin(t), x=1)
    assert water.surface_tension(water_c=t) == pytest.approx(boiling.sigma, rel=1e-12)
    assert water.viscosity(water_c=t) == pytest.approx(liquid.mu, rel=4e-5)
    assert water.density(water_c=t) == pytest.approx(liquid.rho, abs=0.0012)
    assert water.saturation_pressure(water_c=t) == pytest.approx(boiling.P * 1e6, rel=1.3e-3)
    assert water.latent_heat(water_c=t) == pytest.approx((steam.h - boiling.h) * 1e3, rel=3e-4)


@pytest.mark.parametrize("t", WARMTHS)
def test_vapour_pressure_is_fao_56(t: float) -> None:
    theirs = 1000.0 * float(refet.calcs.sat_vapor_pressure(np.array([t]))[0])
    assert water.saturation_pressure(water_c=t) == pytest.approx(theirs, rel=1e-12)


@pytest.mark.parametrize("humidity", [0.3, 0.6, 0.95])
@pytest.mark.parametrize("t", [5.0, 15.0, 25.0, 40.0])
def test_moist_air_against_coolprop(t: float, humidity: float) -> None:
    state = ("T", kelvin(t), "P", PRESSURE_PA, "R", humidity)
    viscosity = HAPropsSI("mu", *state) * HAPropsSI("Vha", *state)
    assert air.kinematic_viscosity(air_c=t) == pytest.approx(viscosity, rel=0.01)
    assert air.conductivity(air_c=t) == pytest.approx(HAPropsSI("k", *state), rel=0.01)
    prandtl = HAPropsSI("mu", *state) * HAPropsSI("cp_ha", *state) / HAPropsSI("k", *state)
    assert pytest.approx(prandtl, rel=0.02) == air.PRANDTL


@pytest.mark.parametrize("humidity", [0.3, 0.6, 0.95])
@pytest.mark.parametrize("t", [5.0, 15.0, 25.0, 40.0])
def test_lightness_of_moist_air_against_psychrolib(t: float, humidity: float) -> None:
    vapour = psychrolib.GetVapPresFromRelHum(t, humidity)
    ratio = psychrolib.GetHumRatioFromRelHum(t, humidity, PRESSURE_PA)
    theirs = PRESSURE_PA / (287.042 * psychrolib.GetMoistAirDensity(t, ratio, PRESSURE_PA))
    assert air.virtual_temperature(air_c=t, vapour_pa=vapour) == pytest.approx(theirs, abs=0.03)


@QUICK
@given(st.floats(1, 1e4), st.floats(0.5, 1), st.floats(0.001, 1e6))
def test_cylinder_correlations_against_ht(re: float, pr: float, gr: float) -> None:
    forced = ht.conv_external.Nu_cylinder_Churchill_Bernstein(re, pr)
    free = ht.conv_free_immersed.Nu_horizontal_cylinder_Churchill_Chu(pr, gr)
    assert forced_transfer(reynolds=re, prandtl=pr) == pytest.approx(forced, rel=1e-12)
    assert free_transfer(grashof=gr, prandtl=pr) == pytest.approx(free, rel=1e-12)


def test_crossing_against_scipy() -> None:
    theirs = brentq(cos, 0.0, 3.0, xtol=1e-15)
    assert crossing(function=cos, low=0.0, high=3.0) == pytest.approx(theirs, abs=1e-15)


AIR = st.fixed_dictionaries(
    {
        "air_c": st.floats(5, 40),
        "humidity_percent": st.floats(30, 95),
        "air_speed_m_s": st.floats(0, 5),
        "diameter_mm": st.floats(1, 15),
    }
)


@QUICK
@given(AIR)
def test_wet_root_cools_and_dries(at: dict[str, float]) -> None:
    root = wet_cylinder(**at)
    assert isfinite(root.evaporation_mm_day)
    assert root.evaporation_mm_day > 0.0
    assert at["air_c"] - COOLEST_BELOW_AIR_K < root.surface_c < at["air_c"]
    # Radiation warms the root, so it stays above the coolest it could be without.
    alone = wet_cylinder(**at, emissivity=0.0)
    assert alone.surface_c < root.surface_c


@QUICK
@given(AIR, st.floats(1.02, 1.5))
def test_drier_windier_warmer_or_thinner_dries_faster(at: dict[str, float], more: float) -> None:
    def lost(**change: float) -> float:
        return wet_cylinder(**(at | change)).evaporation_mm_day

    usual = lost()
    assert lost(humidity_percent=at["humidity_percent"] / more) > usual
    assert lost(air_c=at["air_c"] * more) > usual
    assert lost(diameter_mm=at["diameter_mm"] * more) < usual
    # Wind counts only once it beats the root's own draught.
    assert lost(air_speed_m_s=at["air_speed_m_s"] * more) >= usual * (1 - 1e-12)


@pytest.mark.parametrize("t", [10.0, 20.0, 30.0])
@pytest.mark.parametrize("humidity", [30.0, 50.0, 80.0])
def test_without_radiation_it_is_a_wet_bulb(t: float, humidity: float) -> None:
    root: WetCylinder = wet_cylinder(
        air_c=t, humidity_percent=humidity, air_speed_m_s=3.0, diameter_mm=3.0, emissivity=0.0
    )
    wet_bulb = psychrolib.GetTWetBulbFromRelHum(t, humidity / 100.0, PRESSURE_PA)
    # Vapour spreads faster than heat, so a thin wet root settles a little lower.
    assert wet_bulb - 0.4 < root.surface_c < wet_bulb
