"""Cutting tap water: mass balance, the bend of conductivity beside PHREEQC, and what is refused."""

from __future__ import annotations

import phreeqpython
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from saltline.blend import HARD_TAP, SALT_TAP, SULFATE_TAP, diluted_ms_cm, mixed, share_for
from saltline.conductance import IONS
from saltline.errors import BadInput, Refused
from saltline.forms import all_forms
from saltline_pages import shown
from test_shown import values_of

FORM = all_forms()["water-blend"]
WATERS = {"salt": SALT_TAP, "hard": HARD_TAP, "sulfate": SULFATE_TAP}
ELEMENT = {"Ca": "Ca", "Mg": "Mg", "Na": "Na", "Cl": "Cl", "SO4": "S(6)", "HCO3": "Alkalinity"}


@pytest.mark.parametrize("water", WATERS.values(), ids=list(WATERS))
def test_waters_are_neutral(water: tuple[float, ...]) -> None:
    assert sum(IONS[at].charge * amount for at, amount in enumerate(water)) == 0.0


@pytest.mark.parametrize("name", WATERS)
@pytest.mark.parametrize("share", [0.1, 0.25, 0.5, 0.75])
def test_bend_is_phreeqcs(name: str, share: float) -> None:
    water = WATERS[name]
    program = phreeqpython.PhreeqPython(database="phreeqc.dat")

    def theirs(part: float) -> float:
        told: dict[str, object] = {"pH": 7.5, "units": "mmol/l", "temp": 25}
        for at, amount in enumerate(water):
            if amount:
                told[ELEMENT[IONS[at].name]] = part * amount
        return float(program.add_solution(told).sc) / 1000.0

    ours = diluted_ms_cm(water=water, tap_ms_cm=theirs(1.0), pure_ms_cm=0.0, share=share)
    assert ours == pytest.approx(theirs(share), rel=0.01)  # found within 0.9 %


@settings(max_examples=200, deadline=None)
@given(values_of(FORM))
def test_any_blend_is_answered_or_refused(inputs: dict[str, float]) -> None:
    try:
        answer = FORM.run(inputs)
    except BadInput:
        assert inputs["pure_ms_cm"] >= inputs["tap_ms_cm"]
        return
    except Refused:
        assert not inputs["pure_ms_cm"] <= inputs["target_ms_cm"] <= inputs["tap_ms_cm"]
        return
    check(inputs, answer)


@settings(max_examples=200, deadline=None)
@given(st.floats(0.05, 3.0), st.floats(0.0, 0.9), st.floats(0.0, 1.0), st.floats(0.1, 10000.0))
def test_blends_between_the_waters_are_answered(
    tap: float, purity: float, way: float, batch: float
) -> None:
    pure = purity * tap
    target = min(tap, max(0.01, pure + way * (tap - pure)))
    assume(pure <= min(1.0, target))
    inputs = {"tap_ms_cm": tap, "pure_ms_cm": pure, "target_ms_cm": target, "batch_l": batch}
    check(inputs, FORM.run(inputs))


def check(inputs: dict[str, float], answer: object) -> None:
    values = {name: getattr(answer, name) for name in (item.name for item in FORM.results)}
    line = share_for(
        first=inputs["tap_ms_cm"], second=inputs["pure_ms_cm"], target=inputs["target_ms_cm"]
    )
    tiny = 1e-9
    assert values["tap_l"] + values["pure_l"] == pytest.approx(inputs["batch_l"])
    assert 0.0 <= values["tap_share_low"] <= values["tap_share"] + tiny
    assert values["tap_share"] <= values["tap_share_high"] + tiny
    # A mix reads above the straight line, so less tap water is needed than the line says.
    assert values["tap_share_high"] <= line + tiny
    assert line <= 1.0
    assert values["ec_ms_cm_low"] < inputs["target_ms_cm"] < values["ec_ms_cm_high"]
    for sentence in FORM.words(inputs, answer):
        assert "{" not in shown.fill(sentence, FORM, inputs, values)


@settings(max_examples=200, deadline=None)
@given(st.floats(0.1, 3.0), st.floats(0.05, 0.95), st.floats(0.01, 0.05))
def test_a_higher_target_takes_more_tap_water(tap: float, way: float, more: float) -> None:
    def share(target: float) -> float:
        inputs = {"tap_ms_cm": tap, "target_ms_cm": target, "batch_l": 10.0, "pure_ms_cm": 0.0}
        return float(FORM.run(inputs).tap_share)

    assume(way * tap >= 0.01)
    assert share((way + more) * tap) > share(way * tap)


@settings(max_examples=200, deadline=None)
@given(st.floats(0.0, 500.0), st.floats(0.0, 500.0), st.floats(0.0, 1.0))
def test_mass_balance_leads_back(first: float, second: float, share: float) -> None:
    assume(abs(first - second) > 1.0)
    target = mixed(first=first, second=second, first_share=share)
    assert share_for(first=first, second=second, target=target) == pytest.approx(share, abs=1e-9)


def test_targets_outside_the_waters_say_what_to_do() -> None:
    with pytest.raises(Refused) as above:
        FORM.run({"tap_ms_cm": 0.3, "target_ms_cm": 0.5, "batch_l": 10.0})
    assert "as it is" in above.value.args[1]
    with pytest.raises(Refused) as below:
        FORM.run({"tap_ms_cm": 0.3, "pure_ms_cm": 0.1, "target_ms_cm": 0.05, "batch_l": 10.0})
    assert "pure water alone" in below.value.args[1]
    with pytest.raises(BadInput, match=r"^pure_ms_cm must be less than the tap water$"):
        FORM.run({"tap_ms_cm": 0.1, "pure_ms_cm": 0.1, "target_ms_cm": 0.1, "batch_l": 10.0})
