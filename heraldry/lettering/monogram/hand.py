"""The hand that draws the letters of a monogram: all with strokes of one thickness, whatever their size."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.adjusting import widened, with_stem_near
from heraldry.lettering.alphabet import Alphabet

Letters = tuple[Outline, ...]

JOINERS = "&+"
"""Signs that join two initials: never the large letter, and smaller than both."""

NEARER = (1.0, 0.75, 0.5, 0.25)
"""Shares of a change of width that are tried one after the other, until the alphabet can be drawn so."""


@dataclass(frozen=True)
class Hand:
    """An alphabet, the thickness of stem that it is asked for at every size, and how many times as wide it draws."""

    alphabet: Alphabet
    stem_mm: float
    wide: float = 1.0

    def letter(self, initial: str, cap_mm: float, wider: float = 1.0) -> Outline:
        """One letter, the middle of its ink at the origin, so many times wider where its alphabet can be.

        Raises LetteringError where it has no ink.
        """
        return unite(self.sketch(initial, cap_mm, wider))

    def sketch(self, initial: str, cap_mm: float, wider: float = 1.0) -> Outline:
        """The same as its alphabet draws it, which need not be fit to be cut; quickly done."""
        alphabet = with_stem_near(self._wider(wider * self.wide), self.stem_mm / cap_mm)
        outline = alphabet.set_line(initial, cap_mm).outline
        if outline.is_empty:
            raise LetteringError(f"an initial of a monogram is a letter with ink, found '{initial}'")
        return centred(outline)

    def _wider(self, factor: float) -> Alphabet:
        """The alphabet as near to so many times as wide as it can be."""
        if factor == 1.0:
            return self.alphabet
        for share in NEARER:
            try:
                return widened(self.alphabet, factor**share)
            except LetteringError:
                continue
        return self.alphabet


def centred(outline: Outline) -> Outline:
    """The outline with the middle of its ink at the origin."""
    middle = bounds(outline).centre
    return moved(outline, -middle)


def moved(outline: Outline, to: Point) -> Outline:
    """The outline moved by a vector."""
    return outline.transformed(Affine.move(to.x, to.y))
