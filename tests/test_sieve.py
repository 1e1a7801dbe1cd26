"""Sieves: the series, and that a mesh does what it is chosen for."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from saltline.errors import BadInput
from saltline.forms.sieve import SIEVE
from saltline.sieve import OPENINGS_MM, Sieve

QUICK = settings(max_examples=300, deadline=None)
SIZE = st.floats(0.2, 20, allow_subnormal=False)


def test_openings_are_the_preferred_numbers_rounded() -> None:
    for at, opening in enumerate(OPENINGS_MM):
        assert opening == pytest.approx(10 ** (3 * (20 - at) / 40), rel=0.013)


def test_openings_read_in_a_list_of_iso_apertures_are_there() -> None:
    assert {16.0, 13.2, 11.2, 9.5, 8.0, 6.7} <= set(OPENINGS_MM)


def test_openings_fall() -> None:
    assert all(coarse > fine for coarse, fine in pairwise(OPENINGS_MM))


def test_bounds_contradict() -> None:
    with pytest.raises(BadInput, match="prill_min_mm must not be more"):
        SIEVE.run({"prill_min_mm": 4.0, "prill_max_mm": 2.0, "grain_min_mm": 8.0})


@QUICK
@given(SIZE, SIZE, st.floats(0.2, 40, allow_subnormal=False))
def test_the_mesh_parts_and_no_other_has_more_to_spare(a: float, b: float, grain: float) -> None:
    low, high = min(a, b), max(a, b)
    answer = SIEVE.run({"prill_min_mm": low, "prill_max_mm": high, "grain_min_mm": grain})
    assert isinstance(answer, Sieve)
    between = [opening for opening in OPENINGS_MM if high <= opening <= grain]
    if not between:
        assert (answer.aperture_mm, answer.margin_mm, answer.answer) == (None, None, "none")
    else:
        assert answer.aperture_mm in between
        best = max(min(opening - high, grain - opening) for opening in between)
        assert answer.margin_mm == best
    if answer.dust_mm is not None:
        assert answer.dust_mm <= low / 1.4 * (1 + 1e-12)


@QUICK
@given(SIZE, SIZE, st.floats(0.2, 40), st.floats(0, 10))
def test_larger_granules_never_part_worse(a: float, b: float, grain: float, more: float) -> None:
    low, high = min(a, b), max(a, b)

    def margin(smallest: float) -> float:
        answer = SIEVE.run({"prill_min_mm": low, "prill_max_mm": high, "grain_min_mm": smallest})
        assert isinstance(answer, Sieve)
        return -1.0 if answer.margin_mm is None else answer.margin_mm

    assert margin(min(40.0, grain + more)) >= margin(grain)
