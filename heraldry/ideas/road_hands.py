"""The hands of a road that has alphabets of its own."""

from __future__ import annotations

from heraldry.describe.description import Description
from heraldry.describe.models import AlphabetTable
from heraldry.errors import DescriptionError, LetteringError
from heraldry.ideas.hands import Hand
from heraldry.ideas.words import Words
from heraldry.resolve.alphabets import alphabet_finder
from heraldry.resolve.yardstick import Yardstick
from heraldry.units import Ruler


def hands_of(road: Description, words: Words) -> tuple[Hand, ...]:
    """A hand for each alphabet of a road that has the letters of its name: ours to be drawn wider, fonts as they are.

    Raises HeraldryError where a road has alphabets, and none of them has the letters.
    """
    find = alphabet_finder(road, Yardstick({}, Ruler("mm", None)))
    tables = sorted(road.store("alphabet").items())
    hands = [_ours(table) or Hand(named=name, find=find) for name, (_, table) in tables]
    faults: list[LetteringError | DescriptionError] = []
    able = tuple(hand for hand in hands if _sets(hand, words, faults))
    if faults and not able:
        raise faults[0]
    return able


def _sets(hand: Hand, words: Words, faults: list[LetteringError | DescriptionError]) -> bool:
    try:
        hand.alphabet(1.0).set_line(f"{words.body} {words.kind} {words.initials} {words.founded}", 1.0)
    except (LetteringError, DescriptionError) as error:
        faults.append(error)
        return False
    return True


def _ours(table: AlphabetTable) -> Hand | None:
    """An alphabet of ours, if its numbers are plain and it asks for nothing that a hand does not know."""
    known = {"style", "stem", "corner", "slant", "width"}
    asked = set(table.model_dump(exclude_none=True))
    numbers = [table.stem, table.slant]
    if table.style is None or asked - known or any(isinstance(one, str) for one in numbers):
        return None
    stem = None if table.stem is None else float(table.stem)
    slant = 0.0 if table.slant is None else float(table.slant)
    return Hand(table.style, stem, table.corner, slant)
