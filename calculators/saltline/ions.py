"""What a pen reads in a solution of known ions, and what it cannot see in it."""

from __future__ import annotations

from typing import NamedTuple

from saltline.conductance import (
    CA,
    H2PO4,
    HCO3,
    IONS,
    conductivity_ms_cm,
    gypsum_saturation,
    ionic_strength,
)
from saltline.errors import Refused
from saltline.hardness import MG_L_CACO3, langelier_index, lime_warning
from saltline.saying import figure
from saltline.units import kelvin

UREA_G_MOL = 60.056  # docs/sources.json: iupac-masses
GAS_BAR_L_MMOL_K = 8.314462618e-5  # docs/sources.json: si-units
STRONGEST_MOL_L = 0.1
PEN_ERROR = 0.10  # a pocket pen on a mixed solution; saltline-notes, review S5


class IonsToEc(NamedTuple):
    """The answer of `ions_to_ec`: what a pen reads, and what it cannot see."""

    ec_ms_cm: float
    ec_ms_cm_low: float
    ec_ms_cm_high: float
    tds_mg_l: float
    osmotic_bar: float
    charge_error_percent: float | None
    warnings: tuple[str, ...]


def van_t_hoff_bar(*, mmol_l: float) -> float:
    """Osmotic pressure of an ideal solution at 25 C, after van 't Hoff.

    Equation:
        pi = R T sum c.
    Arguments:
        mmol_l: everything dissolved, charged or not [mmol/L].
    Returns:
        Osmotic pressure [bar].
    Valid for:
        Dilute solutions at 25 C.
    Error:
        Real solutions of this strength pull 3-10 % less.
    Raises:
        Nothing.
    Sources:
        saltline-notes, salts E12; si-units.
    """
    return GAS_BAR_L_MMOL_K * kelvin(25.0) * mmol_l


def ions_to_ec(
    *,
    ca_mmol_l: float,
    mg_mmol_l: float,
    k_mmol_l: float,
    na_mmol_l: float,
    nh4_mmol_l: float,
    no3_mmol_l: float,
    cl_mmol_l: float,
    so4_mmol_l: float,
    h2po4_mmol_l: float,
    hco3_mmol_l: float,
    urea_mmol_l: float,
    ph: float,
) -> IonsToEc:
    """What a pen reads in a solution of these ions, and what else is in it.

    Equation:
        conductivity_ms_cm of the ions with H = 10^-pH and OH = 10^(pH-14) mol/L; dissolved matter
        = sum c M; van_t_hoff_bar of sum c; both with urea, which does not conduct; charge error
        = (cations - anions) / (cations + anions).
    Arguments:
        ca_mmol_l ... hco3_mmol_l: ions as analysed, pairs included [mmol/L].
        urea_mmol_l: urea [mmol/L].
        ph: pH of the solution [-].
    Returns:
        IonsToEc: at 25 C, the range that of a pocket pen (10 %).
    Valid for:
        Ionic strength up to 0.1 mol/L; phosphate up to pH 6.5, bicarbonate up to pH 8.5.
    Error:
        As conductivity_ms_cm; the range is 10 %, as a pocket pen reads no better.
    Raises:
        Refused: ionic strength above 0.1 mol/L.
    Sources:
        saltline-notes, salts 4 and 5; crc-ions; phreeqc-3.
    """
    entered = [
        ca_mmol_l, mg_mmol_l, k_mmol_l, na_mmol_l, nh4_mmol_l, no3_mmol_l, cl_mmol_l, so4_mmol_l,
        h2po4_mmol_l, hco3_mmol_l,
    ]  # fmt: skip
    if ionic_strength(mmol_l=entered) > STRONGEST_MOL_L:
        raise Refused(
            "This is stronger than the sum covers (ionic strength above 0.1 mol/L).",
            "Dilute one part with nine parts of pure water, enter a tenth of each number, and "
            "compare with the reading of the diluted solution.",
        )
    acid_and_base = [10.0 ** (3.0 - ph), 10.0 ** (ph - 11.0)]
    ions = entered + acid_and_base
    ec = conductivity_ms_cm(mmol_l=ions)
    tds = sum(ion.mass * ions[at] for at, ion in enumerate(IONS)) + UREA_G_MOL * urea_mmol_l
    charges = [ion.charge * ions[at] for at, ion in enumerate(IONS)]
    error = None
    if sum(entered) > 0.0:
        error = 100.0 * sum(charges) / sum(abs(charge) for charge in charges)
        if abs(error) < 1e-9:  # what rounding leaves of a balanced solution
            error = 0.0
    return IonsToEc(
        ec_ms_cm=ec,
        ec_ms_cm_low=ec * (1.0 - PEN_ERROR),
        ec_ms_cm_high=ec * (1.0 + PEN_ERROR),
        tds_mg_l=tds,
        osmotic_bar=van_t_hoff_bar(mmol_l=sum(ions) + urea_mmol_l),
        charge_error_percent=error,
        warnings=_warnings(ions, ph, tds, error),
    )


def _warnings(ions: list[float], ph: float, tds: float, error: float | None) -> tuple[str, ...]:
    """What a reader should know about this solution beside the numbers."""
    found = []
    if error is not None and abs(error) > 5.0:
        found.append(
            f"Positive and negative charges do not balance, by {figure(abs(error))} %: an ion is "
            "missing or mistyped, and the reading can be off by as much."
        )
    if gypsum_saturation(mmol_l=ions) > 1.0:
        found.append("This is more calcium sulfate than water holds: gypsum settles out of it.")
    if ph > 6.5 and ions[H2PO4] > 0.0:
        found.append("Above pH 6.5 part of the phosphate conducts more: the pen reads higher.")
    if ph > 8.5 and ions[HCO3] > 0.0:
        found.append("Above pH 8.5 part of the bicarbonate is carbonate: the pen reads higher.")
    if ions[CA] > 0.0 and ions[HCO3] > 0.0:
        index = langelier_index(
            ph=ph,
            tds_mg_l=tds,
            water_c=25.0,
            calcium_mg_l_caco3=ions[CA] * MG_L_CACO3["mmol_l"],
            alkalinity_mg_l_caco3=ions[HCO3] * MG_L_CACO3["meq_l"],
        )
        lime = lime_warning(index=index)
        if lime is not None:
            found.append(lime)
    return tuple(found)
