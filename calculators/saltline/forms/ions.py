"""Declarations: the solution made of known ions."""

from __future__ import annotations

from saltline import ions
from saltline.declare import Form, Number, Result
from saltline.pictures import water as pictures
from saltline.words import ions as words


def _amount(name: str, label: str, hint: str, *, more: bool = False) -> Number:
    return Number(
        name=name + "_mmol_l",
        label=label,
        unit="mmol_l",
        low=0,
        high=100,
        default=0,
        hint=hint,
        origin="None unless you enter it. One left out shows as a charge error, and the reading "
        "moves by about a tenth of a mS/cm for each mmol/L of charge.",
        more=more,
    )


AMOUNTS = (
    _amount("ca", "Calcium", "mg/L on the sheet, divided by 40.1"),
    _amount("mg", "Magnesium", "mg/L divided by 24.3"),
    _amount("k", "Potassium", "mg/L divided by 39.1"),
    _amount("na", "Sodium", "mg/L divided by 23.0"),
    _amount("nh4", "Ammonium", "mg/L of ammonium nitrogen divided by 14.0", more=True),
    _amount("no3", "Nitrate", "mg/L of nitrate divided by 62.0, or of nitrate nitrogen by 14.0"),
    _amount("cl", "Chloride", "mg/L divided by 35.5"),
    _amount("so4", "Sulfate", "mg/L of sulfate divided by 96.1"),
    _amount("h2po4", "Phosphate", "mg/L of phosphorus divided by 31.0", more=True),
    _amount(
        "hco3",
        "Bicarbonate",
        "mg/L divided by 61.0; or the alkalinity in mg/L CaCO₃ divided by 50.0",
    ),
    _amount("urea", "Urea", "mg/L of urea nitrogen divided by 28.0", more=True),
)


def _solution(**amounts: float) -> dict[str, float]:
    """A whole solution: every ion that is not named is absent."""
    return {item.name: amounts.get(item.name.removesuffix("_mmol_l"), 0.0) for item in AMOUNTS}


IONS_TO_EC = Form(
    id="ions-to-ec",
    question="What will this solution read?",
    function=ions.ions_to_ec,
    version=1,
    inputs=(
        *AMOUNTS,
        Number(
            name="ph",
            label="pH",
            unit="",
            low=3,
            high=10,
            default=6,
            source_low=4.5,
            source_high=8.5,
            origin="Usual for a mixed feed (common practice, no source). Between pH 5 and 8 the "
            "reading moves by 0.004 mS/cm.",
            more=True,
        ),
    ),
    results=(
        Result(name="ec_ms_cm", label="Conductivity at 25 °C", unit="ms_cm"),
        Result(name="ec_ms_cm_low", label="on a pocket pen at least", unit="ms_cm", digits=2),
        Result(name="ec_ms_cm_high", label="on a pocket pen at most", unit="ms_cm", digits=2),
        Result(name="tds_mg_l", label="Dissolved matter", unit="mg_l"),
        Result(name="osmotic_bar", label="Osmotic pressure", unit="bar", digits=2),
        Result(name="charge_error_percent", label="Charge error", unit="percent", digits=2),
    ),
    words=words.ions_to_ec,
    picture=pictures.ions_to_ec,
    example=_solution(ca=2.5, mg=0.5, na=1.0, cl=1.5, so4=0.75, hco3=4.0),
    example_label="An example, a hard tap water from its supplier's sheet: put your own numbers in",
    equation=(
        r"\kappa = \sum_i |z_i|\, \lambda_i\, c_i\, \gamma_i^{0.6 / \sqrt{|z_i|}}",
        r"\log_{10} \gamma_i = -0.5085\, z_i^2\, g(I)",
        r"g = \frac{\sqrt{I}}{1 + \sqrt{I}} - 0.3\, I",
        r"I = \frac{1}{2} \sum_i z_i^2 c_i",
        r"[\mathrm{MSO_4}] = K\, \gamma_2^2\, [\mathrm{M}]\, [\mathrm{SO_4}]",
        r"\pi = R\, T \sum_i c_i",
    ),
    working=(
        "z charge, λ conductivity, c amount of each ion; pairs with sulfate do not conduct",
        "the sum: κ = {ec_ms_cm}, and a tenth more or less on a pocket pen: "
        "{ec_ms_cm_low..ec_ms_cm_high}",
        "π = {osmotic_bar}",
    ),
    assumptions=(
        "Everything is dissolved, at 25 °C.",
        "Magnesium and calcium pair with sulfate, and the pairs do not conduct. Pairs with "
        "bicarbonate and phosphate are left out: up to 6 % on hard tap water.",
        "Bicarbonate is counted in full. A laboratory that boils the water dry finds half of it.",
    ),
    cannot_see=(
        "Whether calcium phosphate settles. Calcium and phosphate never go in one stock.",
        "Iron and the other traces: they add little to the reading.",
        "How good it is for orchids: no limit for orchids is published.",
    ),
    cases=(
        _solution(k=10.0, cl=10.0),
        _solution(ca=2.0, mg=0.75, k=2.1, nh4=0.79, no3=6.35, so4=0.75, h2po4=0.54),
        _solution(k=1.0, nh4=1.25, no3=2.0, h2po4=0.25, urea=1.945),
        _solution(ca=1.25, mg=0.25, na=0.5, cl=0.75, so4=0.375, hco3=2.0),
        _solution(na=7.0, cl=1.5, so4=0.75, hco3=4.0),
    ),
    sources=("crc-ions", "appelo-conductance", "phreeqc-3", "mccleskey-2011", "saltline-notes"),
)

FORMS = (IONS_TO_EC,)
