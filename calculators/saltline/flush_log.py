"""The log of a flush, as a grower writes it: drip, soak, pour and rest in order."""

from __future__ import annotations

from math import isfinite
from typing import NamedTuple

from saltline.errors import BadInput
from saltline.pot import Pot

LEVEL_H = 8.0  # covered hours after which a drip reads the whole pot and not just its film

# Kind, how it is written, the names of its figures, and how many of them it cannot do without.
KINDS = (
    ("drip", "drip:reading", ("reading",), 1),
    ("soak", "soak:mL:minutes:reading", ("mL", "minutes", "reading"), 2),
    ("pour", "pour:mL:reading", ("mL", "reading"), 1),
    ("rest", "rest:hours", ("hours",), 1),
)
BOUNDS = (
    ("reading", 0.0, 30.0),
    ("mL", 1.0, 50000.0),
    ("minutes", 0.1, 1440.0),
    ("hours", 0.0, 336.0),
)


class Event(NamedTuple):
    """One entry of the log; what its kind does not have is 0, a reading not taken is None."""

    kind: str
    ml: float
    minutes: float
    hours: float
    reading: float | None


class Seen(NamedTuple):
    """What an event shows, and the mean of film and granules after it, as shares of the start."""

    shown: float
    left: float


class KnownPot(NamedTuple):
    """The answer of `known_pot`: shares of the excess that the pot started with."""

    shown: list[float]
    left: float


def known_pot(
    *,
    log: list[str],
    water_held_ml: float,
    grain_mm: float,
    film_share: float,
    diffusivity: float,
    by_pass: float,
) -> KnownPot:
    """What a pot with known properties shows through a log, and what is left in it.

    Equation:
        `replay` on one `pot.Pot`.
    Arguments:
        log: events in order, from a levelled pot (`read_log`).
        water_held_ml: water the drained pot keeps [mL].
        grain_mm: diameter of the granules [mm].
        film_share: water outside the granules over all water held [-].
        diffusivity: Da of salt in the wet pores [1e-9 m2/s].
        by_pass: share of a pour that runs straight past [-].
    Returns:
        KnownPot: what each event shows, and the mean at the end, as shares of the start.
    Valid for:
        As `pot.Pot`.
    Error:
        As `pot.Pot`.
    Raises:
        BadInput: a word that is no event.
    Sources:
        saltline-notes, flush 5.
    """
    pot = Pot(
        water_held_ml=water_held_ml,
        grain_mm=grain_mm,
        film_share=film_share,
        diffusivity=diffusivity,
        by_pass=by_pass,
    )
    seen = replay(pot, read_log(log))
    return KnownPot(shown=[one.shown for one in seen], left=pot.left())


def read_log(log: list[str]) -> list[Event]:
    """Events from the words of a log.

    Equation:
        None: drip:reading, soak:mL:minutes:reading, pour:mL:reading, rest:hours; the reading of a
        soak or a pour may be left out.
    Arguments:
        log: the words, in order, from a pot that had levelled out.
    Returns:
        The events.
    Valid for:
        Readings in mS/cm.
    Error:
        None.
    Raises:
        BadInput: a word that is none of these, or a figure out of bounds.
    Sources:
        saltline-notes.
    """
    return [_event(number + 1, word) for number, word in enumerate(log)]


def _event(number: int, word: str) -> Event:
    cells = word.split(":")
    for kind, written, names, least in KINDS:
        if cells[0] != kind:
            continue
        figures = cells[1:]
        if not least <= len(figures) <= len(names):
            raise BadInput("log", f"must have entry {number}, '{word}', written as {written}")
        found = {name: _figure(number, word, name, cell) for name, cell in zip(names, figures)}
        return Event(
            kind=kind,
            ml=found.get("mL", 0.0),
            minutes=found.get("minutes", 0.0),
            hours=found.get("hours", 0.0),
            reading=found.get("reading"),
        )
    raise BadInput(
        "log", f"must have entry {number}, '{word}', begin with drip, soak, pour or rest"
    )


def _figure(number: int, word: str, name: str, cell: str) -> float:
    try:
        value = float(cell)
    except ValueError:
        value = float("nan")
    for known, low, high in BOUNDS:
        if known == name and not (isfinite(value) and low <= value <= high):
            tail = f"must have {name} from {low:g} to {high:g} in entry {number}, '{word}'"
            raise BadInput("log", tail)
    return value


def replay(pot: Pot, events: list[Event]) -> list[Seen]:
    """Do all the events to a pot.

    Equation:
        A drip and a rest show the film, a soak the bath at its end, a pour the mean of all that
        ran out.
    Arguments:
        pot: a levelled pot, changed by this.
        events: what was done.
    Returns:
        What each event shows and leaves, as shares of the start.
    Valid for:
        As `pot.Pot`; the few millilitres of a drip are not counted as washing.
    Error:
        As `pot.Pot`.
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush 5.
    """
    seen = []
    left = pot.left()
    for kind, ml, minutes, hours, _ in events:
        if kind == "soak":
            shown = pot.soak(ml=ml, minutes=minutes)
            left = pot.left()
        elif kind == "pour":
            shown = pot.pour(ml=ml)
            left = pot.left()
        else:
            if kind == "rest":
                pot.rest(hours=hours)
            shown = pot.film
        seen.append(Seen(shown, left))
    return seen


def has_rested_drip(events: list[Event]) -> bool:
    """Whether some drip read the whole pot and not just its film.

    Equation:
        Read at the start, or after rests of 8 h or more with no water between.
    Arguments:
        events: what was done.
    Returns:
        True or False.
    Valid for:
        Granules up to 8 mm; at 16 mm 8 h show some nine tenths.
    Error:
        None; a house rule (proposed).
    Raises:
        Nothing.
    Sources:
        saltline-notes, flush review 4.
    """
    rested = LEVEL_H
    for event in events:
        if event.kind == "rest":
            rested += event.hours
        elif event.kind != "drip":
            rested = 0.0
        elif rested >= LEVEL_H:
            return True
    return False
