"""How a page asks beyond fields all at once (screens, ready values, events), and leads on.

Parts of a declaration (`declare`). Nothing here runs in the light engine.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Kind:
    """One kind of word in a list of events: `word:part:part`, which a page asks for part by part.

    `said` is the sentence that stands for it, `{in:name}` its parts; `tail` follows where the last
    part is there.
    """

    word: str
    label: str  # on the button that adds one
    parts: tuple[str, ...]  # names of `Words.parts`, in the word's order
    least: int  # how many of them it cannot do without
    said: str
    tail: str = ""
    hint: str = ""


@dataclass(frozen=True, kw_only=True)
class Way:
    """Ready values for some inputs, chosen by what they are for."""

    label: str
    hint: str  # the values in words, with their level
    values: Mapping[str, float]
    origin: str


@dataclass(frozen=True, kw_only=True)
class Screen:
    """One question of a form that asks one at a time."""

    question: str
    inputs: tuple[str, ...] = ()
    ways: tuple[Way, ...] = ()
    hint: str = ""
    folded: tuple[str, ...] = ()  # inputs under a fold
    fold: str = ""  # what the fold says


@dataclass(frozen=True, kw_only=True)
class Next:
    """A calculator that can go on from this answer.

    `carry` names, for each of its inputs, the result or input here whose value it takes.
    """

    id: str
    page: str  # from the site's root, like "care/flush-maths/"
    label: str  # what the link says: "Plan the flush with this"
    carry: Mapping[str, str]
