"""What a conductivity pen's reading means: scales, temperature and the pen's own error."""

from __future__ import annotations

from math import exp, log
from typing import NamedTuple

# Share of the conductivity in uS/cm that a pen prints as ppm, by the scale it is built for.
PPM_PER_US_CM = {"ppm500": 0.50, "ppm640": 0.64, "ppm700": 0.70}

# f25 at 0, 1, ... 35 C: conductivity at 25 C over conductivity at the sample's temperature,
# natural waters. ISO 7888:1985 as reproduced second-hand (docs/sources.json: iso-7888).
F25_ISO_7888 = (
    1.918, 1.857, 1.800, 1.745, 1.693, 1.643, 1.596, 1.551, 1.508, 1.467, 1.428, 1.390,
    1.354, 1.320, 1.287, 1.256, 1.225, 1.196, 1.168, 1.141, 1.116, 1.091, 1.067, 1.044,
    1.021, 1.000, 0.979, 0.959, 0.940, 0.921, 0.903, 0.886, 0.869, 0.853, 0.837, 0.822,
)  # fmt: skip

OSMOTIC_BAR_PER_MS_CM = 0.36  # docs/sources.json: usda-60, stated for extracts of 3-30 dS/m
LINEAR_PER_K = 0.02  # what most pens correct with; docs/sources.json: saltline-notes

# Relative error left by each temperature correction away from 25 C (docs/sources.json:
# saltline-notes): ISO 7888 against feeds over 10-35 C, and a pen's own 2 %/K against ISO 7888.
ISO_7888_ERROR = 0.01
LINEAR_ERROR = 0.015


class MeterReading(NamedTuple):
    """The answer of `meter_reading`: conductivity [mS/cm at 25 C] and what other scales show."""

    ec_ms_cm: float
    ec_ms_cm_low: float
    ec_ms_cm_high: float
    ppm500: float
    ppm640: float
    ppm700: float
    cf: float
    osmotic_bar: float
    warnings: tuple[str, ...]


def ec_from_scale(*, reading: float, scale: str) -> float:
    """Conductivity behind a reading on a pen's scale.

    Equation:
        EC = ppm / k with k = 0.50, 0.64 or 0.70 per uS/cm; EC[mS/cm] = cF / 10.
    Arguments:
        reading: what the pen shows, in the unit of `scale`.
        scale: us_cm, ms_cm, ppm500, ppm640, ppm700 or cf.
    Returns:
        Conductivity [mS/cm], at whatever temperature the pen read.
    Valid for:
        Linear scales. A 442 scale is non-linear and is not one of these.
    Error:
        Exact: the scales are definitions.
    Raises:
        KeyError: unknown scale.
    Sources:
        saltline-notes, salts E1 and E2.
    """
    if scale == "ms_cm":
        return reading
    if scale == "us_cm":
        return reading / 1000.0
    if scale == "cf":
        return reading / 10.0
    return reading / PPM_PER_US_CM[scale] / 1000.0


def scale_from_ec(*, ec_ms_cm: float, scale: str) -> float:
    """What a pen on this scale shows for a conductivity; the inverse of `ec_from_scale`.

    Equation:
        ppm = k EC[uS/cm]; cF = 10 EC[mS/cm].
    Arguments:
        ec_ms_cm: conductivity [mS/cm].
        scale: us_cm, ms_cm, ppm500, ppm640, ppm700 or cf.
    Returns:
        The reading, in the unit of `scale`.
    Valid for:
        Linear scales.
    Error:
        Exact: the scales are definitions.
    Raises:
        KeyError: unknown scale.
    Sources:
        saltline-notes, salts E1 and E2.
    """
    if scale == "ms_cm":
        return ec_ms_cm
    if scale == "us_cm":
        return ec_ms_cm * 1000.0
    if scale == "cf":
        return ec_ms_cm * 10.0
    return ec_ms_cm * 1000.0 * PPM_PER_US_CM[scale]


def factor_iso_7888(*, sample_c: float) -> float:
    """Factor that takes a conductivity at the sample's temperature to 25 C.

    Equation:
        EC25 = f25(T) EC(T); table of whole degrees, ln f25 interpolated linearly between them.
    Arguments:
        sample_c: temperature of the sample [C], 0 to 35.
    Returns:
        f25 [-].
    Valid for:
        Natural waters, 0-35 C; mixed feeds follow within 1 % over 10-35 C.
    Error:
        0.05 % (rounding of the table).
    Raises:
        ValueError: outside 0-35 C.
    Sources:
        iso-7888, table of f25.
    """
    if not 0.0 <= sample_c <= 35.0:
        raise ValueError("sample_c must be 0 to 35 C")
    cell = min(int(sample_c), 34)
    below, above = F25_ISO_7888[cell], F25_ISO_7888[cell + 1]
    return exp(log(below) + (sample_c - cell) * log(above / below))


def factor_linear(*, sample_c: float, per_k: float = LINEAR_PER_K) -> float:
    """Factor to 25 C of the straight-line correction that most pens carry.

    Equation:
        EC25 = EC(T) / (1 + a (T - 25)).
    Arguments:
        sample_c: temperature of the sample [C].
        per_k: coefficient a [1/K].
    Returns:
        EC25 / EC(T) [-].
    Valid for:
        5-35 C with a = 0.02: within 1.5 % of ISO 7888.
    Error:
        1.5 % against ISO 7888.
    Raises:
        ValueError: where 1 + a (T - 25) is not positive.
    Sources:
        saltline-notes, salts E4.
    """
    slope = 1.0 + per_k * (sample_c - 25.0)
    if not slope > 0.0:
        raise ValueError("sample_c is too low for a linear correction")
    return 1.0 / slope


def osmotic_bar(*, ec_ms_cm: float) -> float:
    """Osmotic pressure of a mixed salt solution, from its conductivity.

    Equation:
        pi = 0.36 EC.
    Arguments:
        ec_ms_cm: conductivity at 25 C [mS/cm].
    Returns:
        Osmotic pressure [bar].
    Valid for:
        Soil extracts of 3-30 mS/cm; used below that for feeds.
    Error:
        +6 to -15 % at feed strength against van 't Hoff.
    Raises:
        Nothing.
    Sources:
        usda-60, rule for extracts.
    """
    return OSMOTIC_BAR_PER_MS_CM * ec_ms_cm


def meter_reading(
    *,
    reading: float,
    scale: str,
    sample_c: float,
    compensated: str,
    error_percent: float,
    full_scale: float | None,
) -> MeterReading:
    """What a pen's reading is on every scale, at 25 C, with the range the pen allows.

    Equation:
        EC = reading on its scale (ec_from_scale), times f25(T) of ISO 7888 when the pen does not
        correct for temperature. Half range = error % of the full scale, or of the reading when no
        full scale is given, plus the temperature correction's own error away from 25 C: 1 % of
        ISO 7888, 1.5 % of a pen's 2 %/K or what parts it from ISO 7888 where that is more.
    Arguments:
        reading: what the pen shows, in the unit of `scale`.
        scale: us_cm, ms_cm, ppm500, ppm640, ppm700 or cf.
        sample_c: temperature of the sample [C], 0 to 35.
        compensated: yes when the pen refers its reading to 25 C itself, else no.
        error_percent: the pen's stated error [%].
        full_scale: top of the pen's range, in the unit of `scale`, or None.
    Returns:
        MeterReading: EC with its range [mS/cm at 25 C], ppm on three scales, cF, bar.
    Valid for:
        0-35 C; feeds and tap water.
    Error:
        As the range says; the conversion between linear scales is exact.
    Raises:
        ValueError: temperature outside 0-35 C.
    Sources:
        iso-7888, table of f25; usda-60; saltline-notes, salts 1-3 and 9.
    """
    read = ec_from_scale(reading=reading, scale=scale)
    factor, temperature_error = 1.0, 0.0
    if sample_c != 25.0:
        true_factor = factor_iso_7888(sample_c=sample_c)
        if compensated == "no":
            factor, temperature_error = true_factor, ISO_7888_ERROR
        else:  # near freezing a straight line is 4 % off
            apart = abs(factor_linear(sample_c=sample_c) / true_factor - 1.0)
            temperature_error = max(LINEAR_ERROR, apart)
    ec = read * factor
    of = read if full_scale is None else ec_from_scale(reading=full_scale, scale=scale)
    half = error_percent / 100.0 * of * factor + temperature_error * ec
    warnings = []
    if full_scale is not None and half > 0.25 * ec > 0.0:
        warnings.append(
            "The pen's own error is more than a quarter of this reading: a pen with a smaller "
            "range would tell you more."
        )
    if full_scale is not None and reading > full_scale:
        warnings.append(
            "Above the pen's range: thin the water with as much pure water and read again. It is "
            "then nearly twice that."
        )
    if not 10.0 <= sample_c <= 35.0 and compensated == "no":
        warnings.append("Worked out, but below the 10-35 °C over which feeds were checked.")
    return MeterReading(
        ec_ms_cm=ec,
        ec_ms_cm_low=max(0.0, ec - half),
        ec_ms_cm_high=ec + half,
        ppm500=scale_from_ec(ec_ms_cm=ec, scale="ppm500"),
        ppm640=scale_from_ec(ec_ms_cm=ec, scale="ppm640"),
        ppm700=scale_from_ec(ec_ms_cm=ec, scale="ppm700"),
        cf=scale_from_ec(ec_ms_cm=ec, scale="cf"),
        osmotic_bar=osmotic_bar(ec_ms_cm=ec),
        warnings=tuple(warnings),
    )
