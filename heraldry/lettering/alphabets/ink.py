"""Strokes become a letter: overlapping strokes united, apertures cut away, turned or mirrored copies made.

Strokes are drawn in cap heights; the set operations work in millimetres, with tolerances that suit artwork.
They are therefore done on letters ``DRAWN_CAP_MM`` high and brought back, which costs no accuracy since the
factor is a power of two.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import subtract, unite
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point

DRAWN_CAP_MM = 16.0
_ENLARGE = Affine.scale(DRAWN_CAP_MM)
_REDUCE = Affine.scale(1.0 / DRAWN_CAP_MM)


def join(*strokes: Outline) -> Outline:
    """One outline covering all strokes; those that all stand clear of one another are only put together."""
    if len(strokes) > 1 and _clear_of_one_another(strokes):
        return Outline.gather(strokes)
    return unite(*(stroke.transformed(_ENLARGE) for stroke in strokes)).transformed(_REDUCE)


def _clear_of_one_another(strokes: Sequence[Outline]) -> bool:
    """Whether no two boxes meet; strokes are lines and cubics, which stay within their points."""
    boxes = [(s.data.min(axis=(0, 1)), s.data.max(axis=(0, 1))) for s in strokes if not s.is_empty]
    return all((one[1] < other[0]).any() or (other[1] < one[0]).any() for one, other in combinations(boxes, 2))


def cut(stroke: Outline, *whites: Outline) -> Outline:
    """A stroke with whites cut out of it."""
    enlarged = [white.transformed(_ENLARGE) for white in whites]
    return subtract(stroke.transformed(_ENLARGE), *enlarged).transformed(_REDUCE)


def moved(stroke: Outline, dx: float, dy: float = 0.0) -> Outline:
    """A stroke moved by cap heights."""
    return stroke.transformed(Affine.move(dx, dy))


def turned(stroke: Outline, x: float, y: float) -> Outline:
    """A stroke turned upside down about a point."""
    return stroke.transformed(Affine.turn(180.0, Point(x, y)))


def mirrored(stroke: Outline, x: float) -> Outline:
    """A stroke seen in a mirror that stands at ``x``."""
    return stroke.flipped(Point(x, 0.0))
