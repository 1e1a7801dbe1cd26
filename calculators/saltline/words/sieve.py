"""Sentences for parting beads from granules."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.sieve import Sieve


def sieve(inputs: Mapping[str, Any], answer: Sieve) -> tuple[str, str, str]:
    """Verdict, number, reason for `sieve`."""
    if answer.answer == "none":
        return (
            "No mesh parts these.",
            "none",
            "Some beads are as large as the smallest granules, or no opening is made between them. "
            "Repot at the right stage, and put the next beads in a mesh bag that lifts out.",
        )
    reason = (
        "Beads fall through {aperture_mm}, granules stay: {margin_mm} to spare on the tighter side."
    )
    if answer.dust_mm is not None:
        reason += " A mesh of {dust_mm} then holds the beads and drops the dust."
    if answer.answer == "tight":
        verdict = "It works, but it is tight."
        reason += " Beads will jam in the mesh and small granules will go through with them."
    else:
        verdict = "This mesh parts them."
    return verdict, "{aperture_mm}", reason + " Sieve wet, and only granules without roots in them."
