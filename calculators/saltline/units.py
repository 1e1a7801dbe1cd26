"""Trade units to SI and back: the one module that converts.

Names end in the unit they carry. Factors are exact by definition unless a comment says otherwise.
"""

from __future__ import annotations

ZERO_CELSIUS_K = 273.15
S_PER_MIN = 60.0
S_PER_H = 3600.0
S_PER_DAY = 86400.0
G_PER_OZ = 28.349523125  # international avoirdupois ounce
ML_PER_US_GAL = 3785.411784
ML_PER_US_FL_OZ = 29.5735295625
ML_PER_US_TSP = 4.92892159375
MM_PER_IN = 25.4
S_M_PER_MS_CM = 0.1


def kelvin(celsius: float) -> float:
    """Absolute temperature [K] of a Celsius temperature [C]; exact."""
    return celsius + ZERO_CELSIUS_K


def celsius(kelvin_: float) -> float:
    """Celsius temperature [C] of an absolute temperature [K]; exact."""
    return kelvin_ - ZERO_CELSIUS_K


def metres(mm: float) -> float:
    """Length [m] of a length in millimetres [mm]; exact."""
    return mm / 1000.0


def millimetres(m: float) -> float:
    """Length [mm] of a length in metres [m]; exact."""
    return m * 1000.0
