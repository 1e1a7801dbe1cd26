"""The rule that ends a flush."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from saltline.stopping import stopping


@pytest.mark.parametrize(
    ("readings", "action"),
    [
        ([2.0], "go_on"),
        ([0.6], "stop"),
        ([2.0, 0.59], "stop"),
        ([1.0, 0.49], "stop"),
        ([2.0, 1.0], "go_on"),
        ([2.0, 1.8], "find"),
        ([2.0, 2.3], "find"),
        ([2.0, 1.5, 1.1], "go_on"),
        ([2.0, 1.5, 1.1, 0.8], "stop"),
    ],
)
def test_rule(readings: list[float], action: str) -> None:
    assert stopping(readings=readings, rinse_ms_cm=0.3, stop_ms_cm=0.6).action == action


def test_without_a_target_the_house_rule_holds() -> None:
    # A quarter of 1.6 above a rinse water of 0.4: 0.8.
    assert stopping(readings=[2.0, 0.79], rinse_ms_cm=0.4, stop_ms_cm=None).action == "stop"
    assert stopping(readings=[2.0, 0.81], rinse_ms_cm=0.4, stop_ms_cm=None).action == "go_on"


def test_no_reading_is_refused() -> None:
    with pytest.raises(ValueError, match="readings are missing"):
        stopping(readings=[], rinse_ms_cm=0.3, stop_ms_cm=0.6)


@given(st.lists(st.floats(0, 30), min_size=1, max_size=8), st.floats(0, 5), st.floats(0, 20))
def test_no_session_goes_on_for_ever(readings: list[float], rinse: float, stop: float) -> None:
    found = stopping(readings=readings, rinse_ms_cm=rinse, stop_ms_cm=stop)
    assert found.action in ("stop", "find", "go_on")
    assert found.why
    if len(readings) > 3 or readings[-1] <= stop:
        assert found.action != "go_on"
