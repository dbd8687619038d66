"""Forks: two leaning strokes that meet in a point, as in A, M, V, W and Y.

Each stroke is cut along the outer edge of the other, so that the joint is a clean point with a flat tip; it thins
toward the joint, where two strokes would clot.
"""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import meet
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serifed.strokes import BARE, Flank, Reach, limb

# Serifs of leaning strokes in those of stems.
LEANING_SERIF = 0.86

# Flat of a point in stems, and at most in the thinner of the strokes that meet there.
TIP_OF_STEM, TIP_OF_THIN = 0.42, 0.9


@dataclass(frozen=True)
class Fork:
    """Two strokes that stand on a level ``base`` and meet at ``point``; x are the outer edges at the base.

    ``weights`` are their thicknesses across, ``tip`` the flat of their point, ``middle`` where its centre is.
    """

    left: float
    right: float
    base: float
    point: float
    weights: tuple[float, float]
    tip: float
    middle: float

    def _flank(self, at_base: float, at_point: float) -> Flank:
        ends = (Point(at_base, self.base), Point(at_point, self.point))
        return Flank(*ends) if self.base < self.point else Flank(*ends[::-1])

    def limbs(self, pen: Pen, serifs: tuple[Reach, Reach]) -> tuple[Outline, Outline]:
        """Both strokes, thinned toward the joint, each cut along the other's outer edge."""
        rise = abs(self.point - self.base)
        wide = [slope_width(abs(self.middle - end), rise, weight)
                for end, weight in zip((self.left, self.right), self.weights, strict=True)]  # fmt: skip
        a, b = self.middle - self.tip / 2.0, self.middle + self.tip / 2.0
        outer_left, outer_right = self._flank(self.left, a), self._flank(self.right, b)
        inner_left = self._flank(self.left + wide[0], a + wide[0] * pen.joint)
        inner_right = self._flank(self.right - wide[1], b - wide[1] * pen.joint)
        flat, down = (Point(b, self.point), Point(a, self.point)), self.base > self.point
        left_end = crossing(inner_left, outer_right)
        right_end = crossing(inner_right, outer_left)
        first = limb(pen, outer_left, inner_left, [left_end, *flat], serifs[0], down)
        second = limb(pen, inner_right, outer_right, [*flat, right_end], serifs[1], down)
        return first, second


def crossing(one: Flank, other: Flank) -> Point:
    """Where two flanks would meet."""
    return meet(one.foot, one.head - one.foot, other.foot, other.head - other.foot)


def fork(pen: Pen, left: float, right: float, base: float, point: float,
         weights: tuple[float, float], serifs: tuple[Reach, Reach] = (BARE, BARE)) -> Outline:  # fmt: skip
    """Two strokes that meet in a point between ``left`` and ``right``."""
    whole = Fork(left, right, base, point, weights, tip_of(pen), (left + right) / 2.0)
    return join(*whole.limbs(pen, serifs))


def tip_of(pen: Pen) -> float:
    """Flat of a point: a part of the stem, but no more than the thinner stroke."""
    return min(TIP_OF_STEM * pen.stem, pen.climb * TIP_OF_THIN)


def leaning(pen: Pen, white: float, lean: float) -> tuple[Reach, Reach]:
    """Serifs of two strokes that share a white and lean toward each other by ``lean`` for each unit of rise."""
    outer = pen.serif.reach * LEANING_SERIF
    inner = min(outer, pen.serif.between(white - 2.0 * lean * pen.serif.thick))
    return Reach(outer, inner), Reach(inner, outer)


def inset(pen: Pen) -> float:
    """Where the outer edges of leaning strokes stand."""
    return pen.serif.natural * LEANING_SERIF
