"""Print how often the ranges of `flush-learn` hold the truth of made-up pots.

    .venv/bin/python scripts/calibrate.py [POTS]

Ordinary pots come from the stated priors, odd ones break an assumption of the model each; the
truth is made by tests/shell_pot.py, which shares no code with the model. 200 pots take minutes.
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT / "calculators"), str(ROOT / "tests")]

import calibration  # noqa: E402

HEADS = ("fit", "rough", "10-90 %", "shown", "above it", "below it", "worst")


def main(pots: int) -> None:
    """One line for each kind of log and of pot."""
    print(f"{pots} made-up pots a line; shares of those that fit; worst: truth over shown high")
    print(f"{'log':8}{'pot':32}" + "".join(f"{head:>10}" for head in HEADS))
    for name, plans in (("rested", calibration.RESTED), ("quick", calibration.QUICK)):
        changes = {"as the priors say": calibration.ordinary} | calibration.ODD
        for pot, change in changes.items():
            found = calibration.summary(calibration.run(plans, change, pots, seed=2026))
            print(f"{name:8}{pot:32}" + "".join(f"{value:10.2f}" for value in found), flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
