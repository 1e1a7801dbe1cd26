"""One measured pot against the model: what its sheet reads, and what the model expected."""

from __future__ import annotations

from typing import NamedTuple

from saltline.flush_log import Event, Seen, replay
from saltline.learner import Learner
from saltline.pot_sheet import Line, Sheet, read_sheet
from saltline.priors import PEN_NOISE_MS_CM, pot_of, pots
from saltline.ranges import ten_to_ninety, weighted_ten_to_ninety

DRAWS = 128
LEVEL_MIN = 24.0 * 60.0  # a last bath shorter than this may not have taken all out (proposed)

NO_POT = "A line 'pot' with volume_ml and grain_mm is missing."
NO_RINSE = "A line 'rinse' with the reading of your rinse water is missing."
NO_START = "A line 'salt_bath', or a 'drip' before any water, is missing."
NO_SALT = "The pot must start saltier than the rinse water."
NO_READING = "A reading of a drip, a pour or a soak is missing."
NOT_WEIGHED = (
    "Without the weight of the dry pot and of the drained one, the last bath cannot tell what was "
    "left."
)
SHORT_BATH = (
    "The last bath stood for less than a day. Large granules may have held some salt back, so "
    "more may have been left than it says."
)


class Step(NamedTuple):
    """One reading, and where 8 pots in 10 of the model would read."""

    event: str
    read_ms_cm: float
    low_ms_cm: float
    high_ms_cm: float
    inside: bool


class PotTest(NamedTuple):
    """The answer of `pot_test`; None where the sheet cannot tell."""

    taken: int
    refused: list[tuple[int, str]]
    missing: str
    rinse_ms_cm: float | None
    start_ms_cm: float | None
    water_held_ml: float | None
    steps: list[Step]
    drip_share: float | None  # first drips over the salt bath, both above the rinse water
    found_ms_cm: float | None  # left, by the last bath
    expected_ms_cm_low: float | None  # left, by the model that has seen no reading of the flush
    expected_ms_cm_high: float | None
    learned_ms_cm_low: float | None  # left, by the readings before the last bath
    learned_ms_cm_high: float | None
    fits: bool
    salt_found_share: float | None
    warnings: tuple[str, ...]


def pot_test(*, sheet: str) -> PotTest:
    """What one pot without a plant shows, beside what the model says of such pots.

    Equation:
        expected: 10-90 % of 128 pots from the priors, started at the salt bath. learned: the same
        of those that agree with the readings (`Learner`), the salt bath and the last one unseen.
        found = rinse + (bath - rinse) (V + W) / W, V the last bath's water, W the water held.
        salt found again = (what ran out + what the last bath found) / (start W).
    Arguments:
        sheet: lines of `pot_sheet.read_sheet`.
    Returns:
        PotTest: strengths in mS/cm, in ranges where the model speaks.
    Valid for:
        One pot of granules that do not bind salt, without a plant, salted through.
    Error:
        found: as weight and readings. EC is taken as linear in salt: table salt reads some 5 % more
        for its strength in a weak bath than in the first one.
    Raises:
        Nothing: what is missing is said.
    Sources:
        saltline-notes, flush review 4.
    """
    read = read_sheet(sheet=sheet)
    missing = _missing(read)
    if missing or read.pot is None:
        return _unanswered(read, missing)
    rinse, start = _reading(read.rinse), _start(read)
    steps, expected = _expected(read, read.pot, rinse, start - rinse)
    learned = _learned(read, read.pot, rinse)
    found = _found(read, rinse)
    warnings = []
    if read.last_bath and found is None:
        warnings.append(NOT_WEIGHED)
    if read.last_bath and _number(read.last_bath.minutes) < LEVEL_MIN:
        warnings.append(SHORT_BATH)
    return PotTest(
        taken=read.taken,
        refused=read.refused,
        missing="",
        rinse_ms_cm=rinse,
        start_ms_cm=start,
        water_held_ml=read.water_held_ml,
        steps=steps,
        drip_share=_drip_share(read, rinse, start),
        found_ms_cm=found,
        expected_ms_cm_low=rinse + expected[0],
        expected_ms_cm_high=rinse + expected[2],
        learned_ms_cm_low=rinse + learned[0] if learned else None,
        learned_ms_cm_high=rinse + learned[2] if learned else None,
        fits=learned is not None,
        salt_found_share=_salt_found(read, rinse, start, found),
        warnings=tuple(warnings),
    )


def _number(value: float | None) -> float:
    return 0.0 if value is None else value


def _reading(line: Line | None) -> float:
    return _number(line.reading) if line else 0.0


def _first_drip(read: Sheet) -> Line | None:
    """The drip before any water, which reads the pot as it was."""
    for step in read.steps:
        if step.event == "drip":
            return step
        if step.event != "rest":
            break
    return None


def _start(read: Sheet) -> float:
    return _reading(read.salt_bath or _first_drip(read))


def _missing(read: Sheet) -> str:
    if read.pot is None:
        return NO_POT
    if read.rinse is None:
        return NO_RINSE
    if read.salt_bath is None and _first_drip(read) is None:
        return NO_START
    if not _start(read) > _reading(read.rinse):
        return NO_SALT
    if all(step.reading is None for step in read.steps):
        return NO_READING
    return ""


def _events(read: Sheet) -> list[Event]:
    """The steps as the model takes them: water that ran out with a drip was a small pour."""
    events = []
    for step in read.steps:
        event = Event(
            kind=step.event,
            ml=_number(step.volume_ml),
            minutes=_number(step.minutes),
            hours=_number(step.minutes) / 60.0,
            reading=step.reading,
        )
        events.append(event)
        if step.event == "drip" and step.volume_ml is not None:
            events.append(Event("pour", step.volume_ml, 0.0, 0.0, None))
    return events


def _expected(
    read: Sheet, filled: Line, rinse: float, excess: float
) -> tuple[list[Step], tuple[float, float, float]]:
    """Each reading with its range, and what is left in the end, over the priors."""
    events = _events(read)
    runs: list[list[Seen]] = []
    left: list[float] = []
    for draw in pots(count=DRAWS):
        pot = pot_of(
            draw=draw,
            grain_mm=_number(filled.grain_mm),
            pot_l=_number(filled.volume_ml) / 1000.0,
            weighed_ml=read.water_held_ml,
        )
        runs.append(replay(pot, events))
        left.append(excess * pot.left())
    steps = []
    for at, event in enumerate(events):
        if event.reading is None:
            continue
        low, _, high = ten_to_ninety([excess * seen[at].shown for seen in runs])
        above = event.reading - rinse
        inside = low - PEN_NOISE_MS_CM <= above <= high + PEN_NOISE_MS_CM
        steps.append(Step(event.kind, event.reading, rinse + low, rinse + high, inside))
    return steps, ten_to_ninety(left)


def _learned(read: Sheet, filled: Line, rinse: float) -> tuple[float, float, float] | None:
    """What is left by the readings before the last bath; None where they fit no pot."""
    learner = Learner(
        events=_events(read),
        rinse_ms_cm=rinse,
        pot_l=_number(filled.volume_ml) / 1000.0,
        water_held_ml=read.water_held_ml,
        grain_mm=_number(filled.grain_mm),
    )
    if not learner.fits:
        return None
    return weighted_ten_to_ninety(
        [(one.start * one.lefts[-1], one.weight) for one in learner.weighted()]
    )


def _found(read: Sheet, rinse: float) -> float | None:
    """What was left, by a bath into which all of it has come."""
    if read.last_bath is None or read.water_held_ml is None:
        return None
    held = read.water_held_ml
    share = (_number(read.last_bath.volume_ml) + held) / held
    return rinse + max(0.0, _reading(read.last_bath) - rinse) * share


def _drip_share(read: Sheet, rinse: float, start: float) -> float | None:
    drip = _first_drip(read)
    if read.salt_bath is None or drip is None:
        return None
    return max(0.0, _reading(drip) - rinse) / (start - rinse)


def _salt_found(read: Sheet, rinse: float, start: float, found: float | None) -> float | None:
    """Salt that ran out or was left, of all that the pot held; None where a reading is missing."""
    if found is None or read.water_held_ml is None:
        return None
    salt = (found - rinse) * read.water_held_ml
    for step in read.steps:
        if step.event == "rest" or (step.event == "drip" and step.volume_ml is None):
            continue
        if step.reading is None:
            return None
        salt += max(0.0, step.reading - rinse) * _number(step.volume_ml)
    return salt / ((start - rinse) * read.water_held_ml)


def _unanswered(read: Sheet, missing: str) -> PotTest:
    return PotTest(
        taken=read.taken,
        refused=read.refused,
        missing=missing,
        rinse_ms_cm=None,
        start_ms_cm=None,
        water_held_ml=read.water_held_ml,
        steps=[],
        drip_share=None,
        found_ms_cm=None,
        expected_ms_cm_low=None,
        expected_ms_cm_high=None,
        learned_ms_cm_low=None,
        learned_ms_cm_high=None,
        fits=False,
        salt_found_share=None,
        warnings=(),
    )
