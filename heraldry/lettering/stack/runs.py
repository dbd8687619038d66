"""A text parted into runs that are set alike: plain letters, large initials, fractions, superior letters.

Fractions and superior letters are known by what the Unicode Character Database says they stand for: ¾ decomposes
to 3, fraction slash, 4, and ᵒ is the superscript of o. Where keyboards have no such letter, ^ before letters or figures
makes them superior, to the end of the word or to another ^. A stroke between figures is a fraction where the manner
says so, and a space between a whole number and its fraction is no more than the writing of it.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from heraldry.lettering.stack.manner import Manner

Kind = Literal["plain", "initial", "fraction", "superior"]

FRACTION_SLASH = "\N{FRACTION SLASH}"
_FRACTION = re.compile(r"(?:(?<=[0-9])\s+)?(?P<written>[0-9]+[/⁄][0-9]+|[¼-¾⅐-⅞])")
_SIGN = re.compile(r"(?:(?<=[0-9])\s+)?(?P<written>[¼-¾⅐-⅞])")
_FOUND = {"built": _FRACTION, "slanted": _FRACTION, "signs": _SIGN}
_RAISED = re.compile(r"\^([^\W_]+)\^?")
_WORD = re.compile(r"\S+")


@dataclass(frozen=True)
class Run:
    """Neighbouring characters that are set alike; superior ones by the letters they stand for."""

    kind: Kind
    text: str


def runs(text: str, manner: Manner) -> tuple[Run, ...]:
    """The runs of a text, in order.

    >>> runs("Nᵒ 4 ¾", Manner())
    (Run(kind='plain', text='N'), Run(kind='superior', text='o'), Run(kind='plain', text=' 4'), \
Run(kind='fraction', text='3/4'))
    >>> runs("M^c 6/27", Manner(fractions="signs"))
    (Run(kind='plain', text='M'), Run(kind='superior', text='c'), Run(kind='plain', text=' 6/27'))
    """
    return tuple(_merged(_parted(text, manner)))


def _parted(text: str, manner: Manner) -> Iterator[Run]:
    place, found = 0, _FOUND.get(manner.fractions)
    for fraction in found.finditer(text) if found else ():
        yield from _plain_and_raised(text[place : fraction.start()], manner)
        yield Run("fraction", unicodedata.normalize("NFKC", fraction["written"]).replace(FRACTION_SLASH, "/"))
        place = fraction.end()
    yield from _plain_and_raised(text[place:], manner)


def _plain_and_raised(text: str, manner: Manner) -> Iterator[Run]:
    place = 0
    for raised in _RAISED.finditer(text):
        yield from _plain_and_superior(text[place : raised.start()], manner)
        yield Run("superior", raised[1])
        place = raised.end()
    yield from _plain_and_superior(text[place:], manner)


def _plain_and_superior(text: str, manner: Manner) -> Iterator[Run]:
    starts = {word.start() for word in _WORD.finditer(text)} if manner.large_initials != 1.0 else set()
    for place, character in enumerate(text):
        kind, *parts = unicodedata.decomposition(character).split() or [""]
        if kind == "<super>":
            yield Run("superior", "".join(chr(int(part, 16)) for part in parts))
        else:
            yield Run("initial" if place in starts and character.isalpha() else "plain", character)


def _merged(parts: Iterator[Run]) -> Iterator[Run]:
    """Neighbours of one kind as one run; each initial and each fraction stays by itself."""
    held: Run | None = None
    for run in parts:
        if held and held.kind == run.kind and run.kind in ("plain", "superior"):
            held = Run(held.kind, held.text + run.text)
        else:
            if held:
                yield held
            held = run
    if held:
        yield held
