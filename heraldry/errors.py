"""What can go wrong, at a glance.

HeraldryError
├── DescriptionError      a file the user wrote is wrong; carries every Fault of it at once
├── LengthError           a text is no length, a unit is unknown, a scale is unknown
├── ExpressionError       arithmetic or set arithmetic that cannot be parsed; carries the position
│   └── LetError          named lengths that have no value; carries the error of every such name
├── GeometryError         a shape that cannot be drawn with these numbers
├── LetteringError        a letter that is missing, a font that cannot be read, a stem out of range
│   └── SoundRangeError   a measure that an alphabet cannot take; carries the range that it can
├── ColourError           a text that is no colour
├── RegionError           a map that is unknown, unreadable or empty
├── NumberError           a road, wagon or container number that cannot be right; carries the position
├── DataError             data of a car that no car could carry
└── PressError            an output that cannot be written here (a library is missing, a disk is full)

Everything a user can cause is one of these; any other exception is a defect of ours.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches

LONGEST_PART = 500
"""Characters of what is wrong, or wanted, in one line: room for every sentence of ours, not for a quoted page."""
LONGEST_FOUND = 160
"""Characters of what was found: enough to recognise it."""
NAMES_LISTED = 20
"""How many known names are offered where none comes near."""


class HeraldryError(Exception):
    """The root of the family; its text is fit to be shown to a user."""


@dataclass(frozen=True, order=True)
class Fault:
    """One thing wrong in one file: where, what is wrong, what was found, what would be right."""

    file: str
    line: int
    what: str
    found: str = ""
    wanted: str = ""

    def __str__(self) -> str:
        parts = [in_one_line(self.what, LONGEST_PART)]
        if self.found:
            parts.append(f"found {in_one_line(self.found, LONGEST_FOUND)}")
        if self.wanted:
            parts.append(in_one_line(self.wanted, LONGEST_PART))
        return f"{self.file}:{self.line}: " + ", ".join(parts)


class DescriptionError(HeraldryError):
    """One or more faults of a description file; ``str()`` gives one line a fault."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(sorted(set(faults)))
        super().__init__("\n".join(str(fault) for fault in self.faults))


class LengthError(HeraldryError):
    """A text that is no length, or a scale that nobody knows."""


class ExpressionError(HeraldryError):
    """An expression that cannot be parsed or evaluated; ``position`` counts characters from 0."""

    def __init__(self, message: str, position: int = 0) -> None:
        super().__init__(message)
        self.position = position


class LetError(ExpressionError):
    """Named lengths and numbers without a value; ``errors`` maps each of them to what is wrong with it."""

    def __init__(self, errors: Mapping[str, ExpressionError]) -> None:
        super().__init__("\n".join(f"{name}: {error}" for name, error in errors.items()))
        self.errors = dict(errors)


class GeometryError(HeraldryError):
    """A shape that cannot be drawn with the numbers it was given."""


class LetteringError(HeraldryError):
    """A letter that is missing, a font that cannot be read, a parameter out of its sound range."""


class SoundRangeError(LetteringError):
    """A measure of letters that an alphabet cannot take; it may be from ``least`` to ``most``, in cap heights."""

    def __init__(self, message: str, least: float, most: float) -> None:
        super().__init__(message)
        self.least, self.most = least, most


class ColourError(HeraldryError):
    """A text that is no colour."""


class RegionError(HeraldryError):
    """A map that is unknown, unreadable or empty."""


class NumberError(HeraldryError):
    """A number, or a series of them, that cannot be right; ``position`` counts characters from 0."""

    def __init__(self, message: str, position: int = 0) -> None:
        super().__init__(message)
        self.position = position


class DataError(HeraldryError):
    """Data of a car that no car could carry: a date before it was built, a weight of nothing."""


class PressError(HeraldryError):
    """An output that cannot be written."""


def in_one_line(text: str, longest: int) -> str:
    r"""A text with its line ends and other unseen signs written out, and its middle left out where it is too long.

    >>> in_one_line("two\nlines", 20)
    'two\\nlines'
    >>> in_one_line("A long list of words", 11)
    'A lon…words'
    """
    shown = "".join(sign if sign.isprintable() else repr(sign)[1:-1] for sign in text)
    half = longest // 2
    return shown if len(shown) <= longest else f"{shown[:half]}…{shown[-half:]}"


def key_named(message: str, keys: Container[str], within: int = 1) -> str | None:
    """The key that a message is about, if its first word, or one of the first few, is one.

    >>> key_named("fit is -1 mm, it must be more than 0", {"text": "U", "fit": -1})
    'fit'
    >>> key_named("nothing is left of it", {"text": "U"})
    """
    words = re.findall(r"\w+", message)[:within]
    return next((word for word in words if word in keys), None)


def nearest(word: str, known: Iterable[str]) -> str:
    """Say which known words come near ``word``, else list them, or the first of them where they are many.

    >>> nearest("cirle", ["circle", "ring", "box"])
    "did you mean 'circle'?"
    >>> nearest("zzz", ["ring", "box"])
    'known: box, ring'
    >>> nearest("zzz", [])
    'none is known'
    """
    ordered = sorted(set(known))
    by_lower = {name.lower(): name for name in ordered}
    close = get_close_matches(word.lower(), list(by_lower), n=3, cutoff=0.6)
    if close:
        return "did you mean " + " or ".join(f"'{by_lower[name]}'" for name in close) + "?"
    if not ordered:
        return "none is known"
    more = len(ordered) - NAMES_LISTED
    return "known: " + ", ".join(ordered[:NAMES_LISTED]) + (f" and {more} more" if more > 0 else "")
