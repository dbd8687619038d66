"""The table that letters are entered in: a character, and the function that draws it with a pen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.pen import Pen

Draw = Callable[[Pen], Outline]


@dataclass(frozen=True)
class Entry:
    """One letter: how it is drawn, and whose width and whites it takes (an Á stands like an A)."""

    draw: Draw
    spaced_as: str


Letters = dict[str, Entry]

# Drawings remembered at once: those of a few alphabets, since Á, Â and Ä are all made from one A.
DRAWINGS_KEPT = 1024


@lru_cache(maxsize=DRAWINGS_KEPT)
def inked(draw: Draw, pen: Pen) -> Outline:
    """A letter drawn with a pen, once for all letters that are made from it."""
    return draw(pen)


def enters(table: Letters) -> Callable[..., Callable[[Draw], Draw]]:
    """A decorator that enters a drawing function in a table under its character."""

    def letter(character: str, spaced_as: str = "") -> Callable[[Draw], Draw]:
        def enter(draw: Draw) -> Draw:
            if character in table:
                raise ValueError(f"the letter {character!r} is drawn twice")
            table[character] = Entry(draw, spaced_as or character)
            return draw

        return enter

    return letter
