"""What one step of the damage key says."""

from __future__ import annotations

from typing import NamedTuple

from saltline.damage_key import RIVALS
from saltline.damage_signs import CAUSES, SIGNS
from saltline.damage_walk import walk
from saltline.words.damage import damage_key

UNPROVED = (
    "A good reading of the pot clears the pot, never the ring above it: the drips come from below."
)


class Step(NamedTuple):
    """The next sign to ask for, whether the answer is firm, and the answer in words."""

    question: str | None
    check: str | None
    fits: str
    firm: str
    test: str | None
    verdict: str
    do: str
    not_now: str
    also: tuple[str, ...]
    leader: str | None
    speaks_for: tuple[str, ...]
    speaks_against: tuple[str, ...]
    provisos: tuple[str, ...]


def step(*, stage: str, kind: str, signs: dict[str, str], passed: tuple[str, ...]) -> Step:
    """One step of damage_walk.walk, in words."""
    answer = walk(stage=stage, kind=kind, signs=signs, passed=passed)
    asked = {sign.id: signs.get(sign.id, "not_looked") for sign in SIGNS}
    verdict, do, _ = damage_key(asked, answer.key)
    causes = dict(CAUSES)
    provisos = answer.key.warnings
    return Step(
        question=answer.question,
        check=answer.check,
        fits=answer.key.fits_best,
        firm=answer.key.firm,
        test=answer.key.next_test,
        verdict=verdict,
        do=do,
        not_now=answer.not_now,
        also=tuple(causes[name] for name in answer.key.also_fits.split(",") if name),
        leader=causes[answer.leader] if answer.leader else None,
        speaks_for=_seen(answer.speaks_for),
        speaks_against=_seen(answer.speaks_against),
        provisos=provisos if RIVALS in provisos else provisos + (UNPROVED,),
    )


def _seen(spoken: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    labels = {sign.id: sign.label for sign in SIGNS}
    return tuple(("" if given == "yes" else "Not found: ") + labels[n] for n, given in spoken)
