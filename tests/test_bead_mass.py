"""Mass of a bead: grows with the cube of its size, and counts agree with it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline.bead_mass import bead_mass_mg, beads_per_g

SIZES = st.floats(0.5, 10.0)


@settings(max_examples=200, deadline=None)
@given(size=SIZES)
def test_twice_the_size_weighs_eight_times(size: float) -> None:
    one, twice = bead_mass_mg(diameter_mm=size), bead_mass_mg(diameter_mm=2.0 * size)
    assert twice == pytest.approx(8.0 * one, rel=1e-12)


@settings(max_examples=200, deadline=None)
@given(size=SIZES)
def test_count_and_mass_agree(size: float) -> None:
    count = beads_per_g(diameter_mm=size)
    assert count * bead_mass_mg(diameter_mm=size) == pytest.approx(1000.0, rel=1e-12)


def test_no_size_no_count() -> None:
    with pytest.raises(ZeroDivisionError):
        beads_per_g(diameter_mm=0.0)
