"""What an alphabet can be asked for besides a size: another width, and a stem as near as it goes to one.

Some alphabets can be drawn wider or narrower with their stems unchanged: ours, and variable fonts with a width
axis. That is no part of the ``Alphabet`` contract; it is asked for here.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Protocol, runtime_checkable

from heraldry.errors import LetteringError
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.treatments.strokes import strokes

ALPHABETS_KEPT = 64
"""Alphabets of one stem or width that are remembered: a line asks for a few, and for each of them many times."""

STEM_HALVINGS = 7
"""The nearest stem that an alphabet takes is found to a hundredth of what it is off by."""

MEASURED_CAP_MM = 10.0
"""The size at which an alphabet's own stem is measured; any would do."""


@runtime_checkable
class Widening(Protocol):
    """An alphabet that can be drawn at another width, 1 being normal, its stems as thick as before."""

    def with_width(self, width: float) -> Alphabet:
        """The same alphabet at another width; raises LetteringError out of its range."""
        ...


@lru_cache(maxsize=ALPHABETS_KEPT)
def at_width(alphabet: Alphabet, width: float) -> Alphabet:
    """The alphabet at another width; raises LetteringError where it has none to change, or not so much."""
    if not isinstance(alphabet, Widening):
        raise LetteringError(f"the letters of {alphabet.name} have one width only")
    return alphabet.with_width(width)


@lru_cache(maxsize=ALPHABETS_KEPT)
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
