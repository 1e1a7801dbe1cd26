"""The two ways a calculator declines: the input is bad, or the question should not be answered."""

from __future__ import annotations


class BadInput(ValueError):
    """An input outside its hard bounds, or two inputs that contradict each other.

    The sentence starts with the argument's name, so that the command line can print it and the
    page can put the field's label in its place: ``water_held_ml must be less than the pot``.
    """

    def __init__(self, name: str, tail: str) -> None:
        super().__init__(name + " " + tail)


class Refused(Exception):
    """The honest answer is not a number: says why, and what to do instead.

    ``args`` are the reason and the instead, each a whole sentence.
    """

    def __init__(self, reason: str, instead: str) -> None:
        super().__init__(reason, instead)
