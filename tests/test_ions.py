"""The ion model beside PHREEQC, measured single salts, other tables of ions, and physics."""

from __future__ import annotations

import csv
from pathlib import Path

import chemicals
import molmass
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from thermo.electrochem import conductivity_McCleskey

from feeds import hundred_feeds, solution
from saltline.conductance import (
    CA,
    IONS,
    MG,
    SO4,
    activity_coefficient,
    conductivity_ms_cm,
    free_ions,
    gypsum_saturation,
    ionic_strength,
)
from saltline.errors import Refused
from saltline.forms import all_forms
from saltline.ions import GAS_BAR_L_MMOL_K, UREA_G_MOL, IonsToEc, van_t_hoff_bar
from saltline_pages import shown
from test_shown import values_of

FORM = all_forms()["ions-to-ec"]
NAMES = [ion.name for ion in IONS]
TABLES = Path(chemicals.__file__).parent / "Electrolytes"
FORMULA = {
    "Ca": "Ca+2", "Mg": "Mg+2", "K": "K+", "Na": "Na+", "NH4": "NH4+", "NO3": "NO3-", "Cl": "Cl-",
    "SO4": "SO4-2", "H2PO4": "H2PO4-", "HCO3": "HCO3-", "H": "H+", "OH": "OH-",
}  # fmt: skip
SALTS = {
    "KCl": {"K": 1, "Cl": 1}, "NaCl": {"Na": 1, "Cl": 1}, "NH4Cl": {"NH4": 1, "Cl": 1},
    "CaCl2": {"Ca": 1, "Cl": 2}, "MgCl2": {"Mg": 1, "Cl": 2}, "Na2SO4": {"Na": 2, "SO4": 1},
    "K2SO4": {"K": 2, "SO4": 1}, "CaSO4": {"Ca": 1, "SO4": 1}, "KHCO3": {"K": 1, "HCO3": 1},
    "NaHCO3": {"Na": 1, "HCO3": 1}, "KNO3": {"K": 1, "NO3": 1},
}  # fmt: skip


def listed(amounts: dict[str, float]) -> list[float]:
    return [amounts.get(name, 0.0) for name in NAMES]


def run(amounts: dict[str, float], **more: float) -> IonsToEc:
    answer = FORM.run({name.lower() + "_mmol_l": mmol for name, mmol in amounts.items()} | more)
    assert isinstance(answer, IonsToEc)
    return answer


def test_hundred_feeds_read_as_phreeqc_has_them(capsys: pytest.CaptureFixture[str]) -> None:
    found = hundred_feeds()
    with capsys.disabled():
        print(f"\n  {found}")
    assert found.most_percent <= 3.0
    assert found.worst_percent <= 6.0


DISSOLVED = [
    (salt, mmol_kg)
    for salt in SALTS
    for mmol_kg in (0.3, 1.0, 3.0, 10.0, 30.0)
    if salt != "CaSO4" or mmol_kg < 15.0  # gypsum holds no more
]


@pytest.mark.parametrize(("salt", "mmol_kg"), DISSOLVED)
def test_single_salts_read_as_measured(salt: str, mmol_kg: float) -> None:
    row = next(row for row in table("McCleskey Electrical Conductivity") if row["formula"] == salt)
    theirs = 10.0 * conductivity_McCleskey(
        T=298.15,
        M=mmol_kg / 1000.0,
        lambda_coeffs=[float(row[key]) for key in ("c1", "c2", "c3")],
        A_coeffs=[float(row[key]) for key in ("d1", "d2", "d3")],
        B=float(row["B"]),
        multiplier=float(row["multiplier"]),
        rho=997.05,
    )
    amounts = {name: 0.99705 * mmol_kg * count for name, count in SALTS[salt].items()}
    # 2 % holds for nine salts; sodium bicarbonate and potassium sulfate are 3.8 and 3.5 % low
    # at the weak end, where the fit's own limit and the handbook's ions differ by as much.
    wide = {"NaHCO3": 0.04, "K2SO4": 0.035, "Na2SO4": 0.03}.get(salt, 0.02)
    assert conductivity_ms_cm(mmol_l=listed(amounts)) == pytest.approx(theirs, rel=wide)


def table(name: str) -> list[dict[str, str]]:
    with (TABLES / f"{name}.tsv").open(encoding="utf-8") as file:
        return list(csv.DictReader(file, delimiter="\t"))


@pytest.mark.parametrize("ion", IONS, ids=NAMES)
def test_conductivities_are_the_handbooks(ion: tuple[str, int, float, float]) -> None:
    name, charge, conductivity, _ = ion
    rows = table("CRC conductivity infinite dilution")
    found = {row["Formula"]: float(row["lambda"]) for row in rows}[FORMULA[name]]
    assert conductivity == pytest.approx(10000.0 * found, rel=1e-9)
    other = {
        row["Formula"]: float(row["Conductivity, cm^2 S^-1 mol^-1"])
        for row in table("Marcus Ion Conductivities")
    }[FORMULA[name]]
    # The second table has 33 for H2PO4, 9 % less; all others agree within 0.3 %.
    assert conductivity * abs(charge) == pytest.approx(other, rel=0.1 if name == "H2PO4" else 0.003)


def test_masses_are_those_of_the_formulas() -> None:
    for ion in IONS:
        sign = "" if abs(ion.charge) == 1 else str(abs(ion.charge))
        formula = f"{ion.name}_{sign}{'+' if ion.charge > 0 else '-'}"
        wide = 1e-3 if ion.name == "H" else 1e-4  # the lost electron, and rounding
        assert ion.mass == pytest.approx(molmass.Formula(formula).mass, rel=wide)
    assert molmass.Formula("CH4N2O").mass == pytest.approx(UREA_G_MOL, rel=2e-5)


def test_gas_constant_is_in_bar_and_mmol() -> None:
    gas = (1.0 * pint.UnitRegistry().molar_gas_constant).to("bar * liter / millimole / kelvin")
    assert pytest.approx(gas.magnitude, rel=1e-12) == GAS_BAR_L_MMOL_K


@pytest.mark.parametrize("mmol", [1.0, 5.0, 10.0, 14.0, 18.0])
def test_gypsum_settles_where_phreeqc_says(mmol: float) -> None:
    salts = {"Ca": mmol, "SO4": mmol}
    theirs = 10.0 ** solution(salts, 6.0).si("Gypsum")
    assert gypsum_saturation(mmol_l=listed(salts)) == pytest.approx(theirs, rel=0.1)
    told = any("gypsum" in warning for warning in run(salts).warnings)
    assert told == (theirs > 1.0)


mmol = st.floats(0.0, 8.0)
amounts_of = st.fixed_dictionaries(dict.fromkeys(NAMES, mmol))


@settings(max_examples=200, deadline=None)
@given(values_of(FORM))
def test_any_solution_is_answered_or_refused(inputs: dict[str, float]) -> None:
    try:
        answer = FORM.run(inputs)
    except Refused:
        entered = [inputs[name.lower() + "_mmol_l"] for name in NAMES[:10]]
        assert ionic_strength(mmol_l=entered) > 0.1
        return
    assert 0.0 < answer.ec_ms_cm_low < answer.ec_ms_cm < answer.ec_ms_cm_high
    assert answer.tds_mg_l > 0.0
    assert answer.osmotic_bar > 0.0
    assert answer.charge_error_percent is None or -100.0 <= answer.charge_error_percent <= 100.0
    values = dict(zip(answer._fields, answer, strict=True))
    for sentence in FORM.words(inputs, answer):
        assert "{" not in shown.fill(sentence, FORM, inputs, values)


@settings(max_examples=200, deadline=None)
@given(amounts_of)
def test_pairs_hide_ions_and_lose_none(amounts: dict[str, float]) -> None:
    totals = listed(amounts)
    free = free_ions(mmol_l=totals)
    assert all(0.0 <= left <= total for left, total in zip(free, totals, strict=True))
    paired = totals[CA] - free[CA] + totals[MG] - free[MG]
    assert totals[SO4] - free[SO4] == pytest.approx(paired, rel=1e-9, abs=1e-12)
    ideal = sum(abs(ion.charge) * ion.conductivity * c for ion, c in zip(IONS, totals, strict=True))
    assert conductivity_ms_cm(mmol_l=totals) <= ideal / 1000.0


@settings(max_examples=200, deadline=None)
@given(amounts_of, st.sampled_from(list(SALTS)), st.floats(0.01, 5.0))
def test_more_salt_reads_more(amounts: dict[str, float], salt: str, more: float) -> None:
    salted = {name: amount + more * SALTS[salt].get(name, 0.0) for name, amount in amounts.items()}
    assert conductivity_ms_cm(mmol_l=listed(salted)) > conductivity_ms_cm(mmol_l=listed(amounts))


def test_urea_pulls_on_water_and_does_not_conduct() -> None:
    feed = {"K": 1.0, "NH4": 1.25, "NO3": 2.0, "H2PO4": 0.25}
    without, with_urea = run(feed), run(feed, urea_mmol_l=1.945)
    assert with_urea.ec_ms_cm == without.ec_ms_cm
    assert with_urea.tds_mg_l - without.tds_mg_l == pytest.approx(1.945 * UREA_G_MOL)
    assert with_urea.osmotic_bar - without.osmotic_bar == pytest.approx(
        van_t_hoff_bar(mmol_l=1.945)
    )


def test_acid_conducts_by_its_ph() -> None:
    # 4.7 against 7.0: 0.02 mmol/L of hydrogen ions at 350 S cm2/mol.
    feed = {"K": 1.0, "H2PO4": 1.0}
    rise = run(feed, ph=4.7).ec_ms_cm - run(feed, ph=7.0).ec_ms_cm
    assert rise == pytest.approx(0.007, rel=0.05)


def test_strength_is_refused_above_a_tenth_molar() -> None:
    assert run({"K": 100.0, "Cl": 100.0}).ec_ms_cm == pytest.approx(12.85, rel=0.01)
    with pytest.raises(Refused, match="ionic strength"):
        run({"Ca": 34.0, "NO3": 68.0})


def test_warnings_name_what_the_numbers_leave_out() -> None:
    tap = {"Ca": 2.5, "Mg": 0.5, "Na": 1.0, "Cl": 1.5, "SO4": 0.75, "HCO3": 4.0}
    assert run(tap, ph=6.5).warnings == ()
    assert "Lime" in run(tap, ph=7.6).warnings[0]
    assert "balance" in run({"K": 2.0, "Cl": 1.0}).warnings[0]
    assert "phosphate" in run({"K": 1.0, "H2PO4": 1.0}, ph=7.2).warnings[0]
    assert run({}).charge_error_percent is None
    assert run({"K": 6.0, "Cl": 5.0}).charge_error_percent == pytest.approx(9.09, abs=0.05)
    assert run({"K": 6.0, "Cl": 6.0}, ph=7.0).charge_error_percent == 0.0


def test_activity_falls_with_charge_and_strength() -> None:
    for strength in (0.001, 0.01, 0.1):
        one = activity_coefficient(charge=1, strength_mol_l=strength)
        two = activity_coefficient(charge=-2, strength_mol_l=strength)
        assert 1.0 > one > two > 0.0
