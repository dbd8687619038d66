"""How a line is composed: what is done to its first letters, its fractions and its superior letters."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from heraldry.errors import LetteringError
from heraldry.lettering.alphabet import Figures

Fractions = Literal["signs", "built", "slanted", "plain"]
Level = Literal["feet", "heads"]

LARGEST_INITIAL = 3.0
"""An initial more than three times as high as its word is a drawing beside it, and belongs in a shape of its own."""


@dataclass(frozen=True)
class Manner:
    """How a line is composed.

    ``large_initials``
        the height of the first letter of each word in that of the others; 1 leaves it alike.
    ``level``
        whether large initials stand on the base line with the others, or hang from one line with their heads.
    ``fractions``
        ``built`` over a level bar, ``slanted`` beside a slanting one; ``signs`` builds ½ and its like, but leaves
        figures with a stroke between them, as those of a date, as they stand; ``plain`` leaves all.
    ``superior_bar``
        whether superior letters, as in Nᵒ, have a bar under them.
    """

    large_initials: float = 1.0
    level: Level = "feet"
    fractions: Fractions = "built"
    superior_bar: bool = True
    figures: Figures = "proportional"

    def __post_init__(self) -> None:
        if not 1.0 <= self.large_initials <= LARGEST_INITIAL:
            raise LetteringError(
                f"large initials are 1 to {LARGEST_INITIAL:g} times as high as the other letters, "
                f"found {self.large_initials:g}"
            )


PLAIN = Manner()
