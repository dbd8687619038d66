"""How initials stand together: the styles of monogram, each a function from initials to letters in their places.

A style draws its letters with a hand, at the cap height of its largest letter; millimetres. ``gap_mm`` is the white
that parts two letters, at a crossing as well as side by side. Letters that are to be interlaced are given whole.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import Literal, get_args

from heraldry.errors import LetteringError
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.monogram.clash import Window, best_place
from heraldry.lettering.monogram.hand import Hand, Letters, moved

Style = Literal["interlaced", "stacked", "large", "row"]
STYLES: tuple[Style, ...] = get_args(Style)

JOINERS = "&+"
"""Signs that join two initials: never the large letter, and smaller than both."""

# The shares below are taken from the look of it: common practice, no source.
STEP_DOWN = 0.24
"""Of two interlaced letters the second stands lower by this share of the cap height: heads and feet stay free."""
STEP_DOWN_JOINED = 0.42
"""The same with a joiner, which stands above the second letter."""
STEP_ACROSS = 0.50
"""And to the right by this share of the two letters' mean width."""
BESIDE = 0.56
"""Of three interlaced letters the outer ones stand this share of the summed half widths away from the middle."""
SMALL_INTERLACED, SMALL_BESIDE, SMALL_JOINER = 0.72, 0.58, 0.56
"""Cap heights of the smaller letters in that of the large one."""

MIDDLE_WIDE, SIDES_WIDE = 1.3, 1.15
"""The tall middle letter is drawn wider, so that there is room in it for its neighbours' strokes."""

FREE_ACROSS = 0.32
"""How far a letter may leave its wished place for a cleaner crossing, in mean widths."""
PULL = 1.0
"""How hard a letter keeps to its wished place, mm² of lost ink to the mm²: enough to decide between equals."""
SPACING_STEPS = 24
"""Halvings in which a letter is brought up to its neighbour: from a cap height to a nanometre."""


def interlaced(initials: Sequence[str], hand: Hand, cap_mm: float, gap_mm: float) -> Letters:
    """Two letters stepped down over each other, or a tall middle letter crossed by one on either side."""
    if len(initials) > 3:
        raise LetteringError(f"two or three initials are interlaced, found {len(initials)}: {' '.join(initials)}")
    if len(initials) < 3:
        return _stepped([hand.letter(initial, cap_mm) for initial in initials], STEP_DOWN * cap_mm, gap_mm)
    if initials[1] in JOINERS:
        return _joined(initials, hand, cap_mm, gap_mm)
    sizes = (SMALL_INTERLACED * cap_mm, cap_mm, SMALL_INTERLACED * cap_mm)
    left, middle, right = map(hand.letter, initials, sizes, (SIDES_WIDE, MIDDLE_WIDE, SIDES_WIDE))
    places = [_beside(middle, side, way, gap_mm) for side, way in ((left, -1.0), (right, 1.0))]
    return moved(left, places[0]), middle, moved(right, places[1])


def _stepped(letters: Sequence[Outline], down_mm: float, gap_mm: float) -> Letters:
    if len(letters) < 2:
        return tuple(letters)
    first, second = letters
    width = (bounds(first).width + bounds(second).width) / 2
    wished = Point(width * STEP_ACROSS, -down_mm)
    place = best_place(first, second, gap_mm, Window(wished, width * FREE_ACROSS, 0.0, PULL))
    return first, moved(second, Point(place.x, wished.y))


def _joined(initials: Sequence[str], hand: Hand, cap_mm: float, gap_mm: float) -> Letters:
    """Two letters stepped down further, and the joiner small in the corner that the second leaves free."""
    step = STEP_DOWN_JOINED * cap_mm
    first, second = _stepped([hand.letter(initials[i], cap_mm) for i in (0, 2)], step, gap_mm)
    joiner = hand.letter(initials[1], step - 2 * gap_mm)
    middle = (bounds(first).right + bounds(second).right) / 2
    return first, moved(joiner, Point(middle, bounds(first).top - bounds(joiner).height / 2)), second


def _beside(middle: Outline, side: Outline, way: float, gap_mm: float) -> Point:
    width = (bounds(middle).width + bounds(side).width) / 2
    window = Window(Point(way * width * BESIDE, 0.0), width * FREE_ACROSS, 0.0, PULL)
    return Point(best_place(middle, side, gap_mm, window).x, 0.0)


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
    """A style: how it places letters, the stem it wants in cap heights, and whether they go over and under."""

    place: Callable[[Sequence[str], Hand, float, float], Letters]
    stem_caps: float
    woven: bool = False


# Strokes that cross want to be light; a stem that serves a large letter and a small one lies between the two.
ARRANGEMENTS: dict[Style, Arrangement] = {
    "interlaced": Arrangement(interlaced, 0.105, woven=True),
    "stacked": Arrangement(stacked, 0.17),
    "large": Arrangement(large, 0.135),
    "row": Arrangement(row, 0.155),
}
