"""What one step of the damage key says."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from saltline.damage_key import RIVALS
from saltline.damage_signs import CAUSES, SIGNS
from saltline.damage_walk import DamageWalk
from saltline.words.damage import damage_key

UNPROVED = (
    "A good reading of the pot clears the pot, never the ring above it: the drips come from below."
)


def _seen(spoken: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    labels = {sign.id: sign.label for sign in SIGNS}
    return tuple(("" if given == "yes" else "Not found: ") + labels[n] for n, given in spoken)


def walk(inputs: Mapping[str, Any], answer: DamageWalk) -> tuple[Any, ...]:
    """Verdict, what to do, what not to do; also fits, for, against, warnings (lists); a proviso."""
    asked = {sign.id: inputs["signs"].get(sign.id, "not_looked") for sign in SIGNS}
    verdict, do, _ = damage_key(asked, answer.key)
    causes = dict(CAUSES)
    also = tuple(causes[name] for name in answer.key.also_fits.split(",") if name)
    return (
        verdict,
        do,
        answer.not_now,
        also,
        _seen(answer.speaks_for),
        _seen(answer.speaks_against),
        answer.key.warnings,
        "" if RIVALS in answer.key.warnings else UNPROVED,
    )
