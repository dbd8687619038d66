"""Thirteen lines of colour that say whose a car is and which: the automatic car identification of 1967.

Read from the bottom: start, one digit for the kind of equipment, three for the owner, six for the road number
with leading zeros, stop, and on top the check digit. A line is two stripes, one over the other.

Sources: colour pairs, order, sizes and check digit from a society's and an enthusiast's public descriptions
(freightcars.nakina.net, solrs.ca) and an encyclopedia's article on automatic car identification; which stripe
is the upper one, and the three zones of start and stop, from the notes of a general barcode library that
checked them against a drawing.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from heraldry.diagrams.numbers.road_number import NORTH_AMERICAN_DIGITS, road_number
from heraldry.errors import NumberError

Colour = Literal["blue", "red", "white", "black"]

OWNER_DIGITS = 3
CHECK_MODULUS = 11
FIRST_YEAR, LAST_YEAR = 1967, 1977
"""Adopted in September 1967, dropped by ballot early in 1978: public histories of it. What was painted before that
kept its plates until it was painted again: common practice, no source."""

EQUIPMENT: Mapping[int, str] = MappingProxyType(
    {0: "railroad owned", 1: "privately owned", 6: "not in revenue service"}
)
"""Kinds of equipment that the descriptions name; other digits were in use as well."""

PAIRS: tuple[tuple[Colour, Colour], ...] = (
    ("white", "blue"),
    ("white", "white"),
    ("red", "white"),
    ("black", "red"),
    ("red", "red"),
    ("black", "blue"),
    ("blue", "white"),
    ("white", "red"),
    ("black", "white"),
    ("blue", "blue"),
    ("red", "blue"),
)
"""The upper and the lower stripe of the values 0 to 10; 10 is a check digit only."""


@dataclass(frozen=True, slots=True)
class Stripe:
    """A run of one colour along a line, from one share of its width to another (0 is left, 1 right)."""

    colour: Colour
    start: Fraction
    end: Fraction


@dataclass(frozen=True, slots=True)
class Bar:
    """One line: the stripes of its upper half and of its lower half, left to right."""

    upper: tuple[Stripe, ...]
    lower: tuple[Stripe, ...]


def _plain(colour: Colour) -> tuple[Stripe, ...]:
    return (Stripe(colour, Fraction(0), Fraction(1)),)


def _zones(left: Colour, centre: Colour, right: Colour) -> tuple[Stripe, ...]:
    """Three zones of 23, 54 and 23 hundredths of the width, as near as the notes say."""
    first, last = Fraction(23, 100), Fraction(77, 100)
    return Stripe(left, Fraction(0), first), Stripe(centre, first, last), Stripe(right, last, Fraction(1))


_BLUES, _REDS = _zones("blue", "blue", "black"), _zones("black", "red", "red")
START = Bar(upper=_BLUES, lower=_REDS)
STOP = Bar(upper=_REDS, lower=_BLUES)
VALUE_BARS = tuple(Bar(_plain(upper), _plain(lower)) for upper, lower in PAIRS)


def check_digit(digits: str) -> int:
    """Σ digit(i)·2^i mod 11 over the ten digits, i = 0 for the kind of equipment: 0 to 10.

    >>> check_digit("8350199918")
    5
    """
    return sum(int(digit) << place for place, digit in enumerate(digits)) % CHECK_MODULUS


def bars(equipment: int, owner: str, number: str) -> tuple[Bar, ...]:
    """The thirteen lines of a plate, from the bottom up.

    The owner's three digits are the user's to choose. Raises NumberError: a kind of equipment that is no
    digit, an owner of other than three digits, a number that is no road number.

    >>> bars(8, "350", "199918")[-1] == VALUE_BARS[5]
    True
    """
    digits = _digits(equipment, owner, number)
    return (START, *(VALUE_BARS[int(digit)] for digit in digits), STOP, VALUE_BARS[check_digit(digits)])


def is_worn_in(year: int, last_painted: int | None = None) -> bool:
    """Whether a car wears the plate in a year, last painted in another one.

    >>> is_worn_in(1966), is_worn_in(1970), is_worn_in(1983), is_worn_in(1983, last_painted=1971)
    (False, True, False, True)
    """
    return year >= FIRST_YEAR and min(year, last_painted or year) <= LAST_YEAR


def _digits(equipment: int, owner: str, number: str) -> str:
    if not 0 <= equipment <= 9:
        known = ", ".join(f"{digit} {kind}" for digit, kind in EQUIPMENT.items())
        raise NumberError(f"a kind of equipment is one digit, found {equipment}, known: {known}")
    if not re.fullmatch(rf"[0-9]{{{OWNER_DIGITS}}}", owner):
        raise NumberError(f"an owner is {OWNER_DIGITS} digits of your choice, found '{owner[:20]}', write such as 942")
    return f"{equipment}{owner}{road_number(number).zfill(NORTH_AMERICAN_DIGITS)}"
