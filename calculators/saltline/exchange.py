"""Salt between a film or bath of water and porous spheres, a whole night in one step."""

from __future__ import annotations

from typing import NamedTuple

from saltline.units import S_PER_MIN

# A sphere as its film feels it: nine parts of the water inside, from core to skin, each with its
# share of that water and the rate [Da/R2] at which it trades with the film. The first are the
# sphere's own slow modes, the last stand for all its fast ones. Chosen so that the film is answered
# as by the whole sphere at 18 paces (docs/sources.json: mayo-antoulas-2007), within 6e-5 from
# Fourier numbers of 1e-5 up; tests/test_pot.py makes the table again.
SPHERE = (
    (0.6079780711, 9.869848379),
    (0.1561524595, 39.78450998),
    (0.0897350938, 102.4293756),
    (0.0636663283, 290.1986341),
    (0.0393951106, 980.4975791),
    (0.0219796050, 3807.347524),
    (0.0115723283, 16933.82108),
    (0.0060126332, 94960.31573),
    (0.0035083702, 1341934.436),
)
LEVEL = [share for share, _ in SPHERE]  # salt of each part of a sphere levelled out at 1
# exp(-x) for all x >= 0 as the real part of the sum of weight / (x + pole), within 2.1e-6: one step
# takes a whole night. Near-best approximation (docs/sources.json: trefethen-2006), made again in
# tests/test_pot.py.
POLES = (
    2.400602938931959 + 1.193129308402114j,
    1.158552571718079 + 3.614772600819693j,
    -1.7819882759222447 + 6.196512467347207j,
)
WEIGHTS = (
    1.1580260080597964 + 8.573777129153129j,
    -1.326013741054552 - 2.9028258398018343j,
    0.16716323431235033 + 0.21285852149552975j,
)
# What all six poles together make of exp(0): 1 within their error.
AT_REST = sum((weight / pole).real for weight, pole in zip(WEIGHTS, POLES))


class Spell(NamedTuple):
    """What the length of a spell alone decides."""

    # Of each part its share, what it keeps of its own, and its pull on the film at the three poles.
    parts: list[tuple[float, float, complex, complex, complex]]
    pull0: complex  # of all parts together
    pull1: complex
    pull2: complex


class Pull(NamedTuple):
    """What a spell did to the film at the three poles, by which the parts follow."""

    parts: list[tuple[float, float, complex, complex, complex]]
    film0: complex
    film1: complex
    film2: complex
    missed: float


def fourier_number(*, diffusivity: float, grain_mm: float, minutes: float) -> float:
    """Time told in the granule's own measure.

    Equation:
        Fo = Da t / R2, R half the grain.
    Arguments:
        diffusivity: Da of salt in the wet pores [1e-9 m2/s].
        grain_mm: diameter of the granules [mm].
        minutes: time [min].
    Returns:
        Fo [-].
    Valid for:
        Spheres of one size.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        crank-1975.
    """
    return diffusivity * 4e-3 * S_PER_MIN * minutes / (grain_mm * grain_mm)


def spell(*, fourier: float) -> Spell:
    """All that depends on the length of a spell alone, to be used for any bath and any state.

    Equation:
        h = k Fo / (k Fo + pole) for each part of the sphere and each pole, and their sums.
    Arguments:
        fourier: length of the spell, Da t / R2 [-].
    Returns:
        What `exchanged` takes.
    Valid for:
        fourier >= 0.
    Error:
        Exact.
    Raises:
        Nothing.
    Sources:
        trefethen-2006.
    """
    p0, p1, p2 = POLES
    w0, w1, w2 = WEIGHTS
    parts = []
    s0 = s1 = s2 = 0j
    for share, rate in SPHERE:
        pace = fourier * rate
        u0, u1, u2 = 1.0 / (pace + p0), 1.0 / (pace + p1), 1.0 / (pace + p2)
        kept = (w0 * u0 + w1 * u1 + w2 * u2).real
        h0, h1, h2 = pace * u0, pace * u1, pace * u2
        s0 += share * h0
        s1 += share * h1
        s2 += share * h2
        parts.append((share, kept, h0, h1, h2))
    return Spell(parts, s0, s1, s2)


def exchanged(
    during: Spell, salts: list[float], film: float, ratio: float, washed: float, settled: float
) -> tuple[float, Pull]:
    """Excess of the film after a spell of exchange, and what `salts_after` takes for the parts.

    Equation:
        w_i dc_i/dt = w_i k_i (film - c_i); ratio dfilm/dt = sum w_i k_i (c_i - film) - q film,
        with washed = q times the length of the spell. What the poles miss of the settled value is
        put back, so mass is kept to rounding. The loops count, for the light engine is slow to zip.
    Arguments:
        during: what `spell` gave for the Fourier number.
        salts: w_i c_i, salt in the nine parts of the granules over all their water.
        film: excess in the film or bath.
        ratio: water in the film or bath over water inside the granules [-].
        washed: fresh water through the film over water inside the granules [-].
        settled: the excess at which film and parts would end; 0 where water washes through.
    Returns:
        (film, pull) at the end.
    Valid for:
        A stirred film or bath, granules of one size.
    Error:
        2e-6 of the excess for the step in time, 6e-5 of the exchange for the sphere.
    Raises:
        Nothing.
    Sources:
        haggerty-gorelick-1995; trefethen-2006.
    """
    parts, s0, s1, s2 = during
    p0, p1, p2 = POLES
    w0, w1, w2 = WEIGHTS
    x0 = x1 = x2 = complex(ratio * film)
    if salts is LEVEL:  # the parts pull as they do all together
        x0, x1, x2 = x0 + s0, x1 + s1, x2 + s2
    else:
        for at in range(len(parts)):
            _, _, h0, h1, h2 = parts[at]
            salt = salts[at]
            x0 += h0 * salt
            x1 += h1 * salt
            x2 += h2 * salt
    x0 *= w0 / (p0 * (ratio + s0) + washed)
    x1 *= w1 / (p1 * (ratio + s1) + washed)
    x2 *= w2 / (p2 * (ratio + s2) + washed)
    missed = settled * (1.0 - AT_REST)
    return missed + (x0 + x1 + x2).real, Pull(parts, x0, x1, x2, missed)


def salts_after(pull: Pull, salts: list[float]) -> list[float]:
    """Salt of the parts after a spell of exchange.

    Equation:
        As `exchanged`.
    Arguments:
        pull: what `exchanged` gave.
        salts: salt of the parts before, as there.
    Returns:
        Salt of the parts at the end.
    Valid for:
        As `exchanged`.
    Error:
        As `exchanged`.
    Raises:
        Nothing.
    Sources:
        haggerty-gorelick-1995; trefethen-2006.
    """
    parts, x0, x1, x2, missed = pull
    after = []
    for at in range(len(parts)):
        share, kept, h0, h1, h2 = parts[at]
        after.append(kept * salts[at] + share * (missed + (h0 * x0 + h1 * x1 + h2 * x2).real))
    return after
