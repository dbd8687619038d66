"""What an alphabet can be asked for besides a size: another width, and a stem as near as it goes to one.

Some alphabets can be drawn wider or narrower with their stems unchanged: ours, and variable fonts with a width
axis. That is no part of the ``Alphabet`` contract; it is asked for here.
"""

from __future__ import annotations

from typing import Protocol, runtime_checkable

from heraldry.errors import LetteringError
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.treatments.strokes import strokes

STEM_HALVINGS = 7
"""The nearest stem that an alphabet takes is found to a hundredth of what it is off by."""

MEASURED_CAP_MM = 10.0
"""The size at which an alphabet's own stem is measured; any would do."""


@runtime_checkable
class Widening(Protocol):
    """An alphabet that can be drawn wider or narrower, its stems as thick as before."""

    def widened(self, factor: float) -> Alphabet:
        """The same alphabet, ``factor`` times as wide as it is now; raises LetteringError out of its range."""
        ...


def widened(alphabet: Alphabet, factor: float) -> Alphabet:
    """The alphabet so many times as wide; raises LetteringError where it has one width only, or not so much."""
    if not isinstance(alphabet, Widening):
        raise LetteringError(f"the letters of {alphabet.name} have one width only")
    return alphabet.widened(factor)


def with_stem_near(alphabet: Alphabet, stem: float) -> Alphabet:
    """The alphabet with a stem (cap heights), or as near to it as it can be drawn; itself where it has one only."""
    try:
        return alphabet.with_stem(stem)
    except LetteringError:
        found, able, unable = alphabet, own_stem(alphabet), stem
    for _ in range(STEM_HALVINGS):
        middle = (able + unable) / 2
        try:
            found, able = alphabet.with_stem(middle), middle
        except LetteringError:
            unable = middle
    return found


def own_stem(alphabet: Alphabet) -> float:
    """The stem of an alphabet as it is, in cap heights, measured on its I."""
    return strokes(alphabet.set_line("I", MEASURED_CAP_MM).outline).upright_mm / MEASURED_CAP_MM
