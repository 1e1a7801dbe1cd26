"""Ranges that say 8 in 10 hold the truth about that often. scripts/calibrate.py prints more."""

from __future__ import annotations

import pytest

import calibration


@pytest.mark.parametrize("plans", [calibration.RESTED, calibration.QUICK], ids=["rested", "quick"])
def test_ranges_hold_the_truth(plans: tuple[str, ...]) -> None:
    found = calibration.summary(calibration.run(plans, calibration.ordinary, 60, seed=5))
    assert found.fit == 1.0
    # 60 pots at 80 % hold 67-92 % in 99 of 100 runs; before the range is widened to a factor 1.3.
    assert 0.67 <= found.held <= 0.95
    assert found.shown >= found.held


@pytest.mark.long
@pytest.mark.parametrize("plans", [calibration.RESTED, calibration.QUICK], ids=["rested", "quick"])
def test_ranges_hold_the_truth_of_many_pots(plans: tuple[str, ...]) -> None:
    found = calibration.summary(calibration.run(plans, calibration.ordinary, 200, seed=2026))
    assert 0.70 <= found.held <= 0.95


@pytest.mark.long
def test_a_dry_corner_is_what_quick_readings_miss() -> None:
    """The breach that the words must own up to: rested drips see it, soaks do not."""
    quick = calibration.run(calibration.QUICK, calibration.dead_corner, 100, seed=2026)
    rested = calibration.run(calibration.RESTED, calibration.dead_corner, 100, seed=2026)
    assert calibration.summary(quick).above > calibration.summary(rested).above
