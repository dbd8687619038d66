"""How initials stand together: the styles of monogram, each a function from initials to letters in their places.

A style draws its letters with a hand, at the cap height of its largest letter; millimetres. ``gap_mm`` is the white
that parts two letters. Letters that are interlaced are placed by ``interlacing``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import Literal, get_args

from heraldry.geometry.distance import distance
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.monogram.hand import JOINERS, Hand, Letters, moved

Style = Literal["interlaced", "stacked", "large", "row"]
STYLES: tuple[Style, ...] = get_args(Style)

# The shares below are taken from the look of it: common practice, no source.
SMALL_BESIDE, SMALL_JOINER = 0.58, 0.56
"""Cap heights of the smaller letters in that of the large one."""

SPACING_STEPS = 24
"""Halvings in which a letter is brought up to its neighbour: from a cap height to a nanometre."""


def stacked(initials: Sequence[str], hand: Hand, cap_mm: float, gap_mm: float) -> Letters:
    """Letters of one size, one under another, each centred by its ink."""
    letters = [hand.letter(initial, cap_mm) for initial in initials]
    tops = [bounds(letter).height + gap_mm for letter in letters]
    feet = accumulate(tops)
    return tuple(
        moved(letter, Point(0.0, bounds(letter).height / 2 - foot)) for letter, foot in zip(letters, feet, strict=True)
    )


def large(initials: Sequence[str], hand: Hand, cap_mm: float, gap_mm: float) -> Letters:
    """The middle letter of three large, else the first; the others small beside it, on its middle line."""
    tall = len(initials) // 2 if len(initials) == 3 and initials[1] not in JOINERS else 0
    sizes = [cap_mm * (1.0 if i == tall else SMALL_BESIDE) for i in range(len(initials))]
    return _in_row([hand.letter(initial, size) for initial, size in zip(initials, sizes, strict=True)], gap_mm)


def row(initials: Sequence[str], hand: Hand, cap_mm: float, gap_mm: float) -> Letters:
    """Letters of one size side by side, joiners smaller."""
    sizes = [cap_mm * (SMALL_JOINER if initial in JOINERS else 1.0) for initial in initials]
    return _in_row([hand.letter(initial, size) for initial, size in zip(initials, sizes, strict=True)], gap_mm)


def _in_row(letters: Sequence[Outline], gap_mm: float) -> Letters:
    """Letters brought up to each other until a gap is left at the nearest place."""
    steps = [_brought_up(one, other, gap_mm) for one, other in pairwise(letters)]
    return tuple(
        moved(letter, Point(x, 0.0)) for letter, x in zip(letters, accumulate(steps, initial=0.0), strict=True)
    )


def _brought_up(standing: Outline, coming: Outline, gap_mm: float) -> float:
    """How far to the right of one letter's middle another's is when they are a gap apart."""
    far = (bounds(standing).width + bounds(coming).width) / 2 + gap_mm
    near = 0.0
    for _ in range(SPACING_STEPS):
        middle = (near + far) / 2
        apart = distance(standing, moved(coming, Point(middle, 0.0)))
        near, far = (near, middle) if apart >= gap_mm else (middle, far)
    return far


@dataclass(frozen=True)
class Arrangement:
    """A style: the stem it wants in cap heights, and how it places letters; None where they are interlaced."""

    stem_caps: float
    place: Callable[[Sequence[str], Hand, float, float], Letters] | None


# Strokes that cross want to be light; a stem that serves a large letter and a small one lies between the two.
ARRANGEMENTS: dict[Style, Arrangement] = {
    "interlaced": Arrangement(0.075, None),
    "stacked": Arrangement(0.17, stacked),
    "large": Arrangement(0.135, large),
    "row": Arrangement(0.155, row),
}
