"""Letters of leaning strokes: A K M N V W X Y Z.

A stroke that falls to the right is thick, one that rises is thin, as a broad pen makes them. Two strokes that
meet are cut along each other's outer edges, so that the joint is a clean point with a flat tip.
"""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import meet, polygon
from heraldry.lettering.alphabets.ink import join, mirrored
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serif import LEAST_GAP
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.strokes import BARE, Flank, Reach, arm, both, limb, post, stroke

# Height of A's bar, its centre: a third, to leave the counter its room.
BAR_OF_A = 0.335

# Between the feet of A stands at least this much white, in stems, or its counter would close.
LEAST_WHITE_OF_A = 1.75

# Serifs of leaning strokes in those of stems: outside, and inside where two share a white.
LEANING_SERIF = 0.86

# Flat of a point in stems.
TIP_OF_STEM = 0.42


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
        left_end = _crossing(inner_left, outer_right)
        right_end = _crossing(inner_right, outer_left)
        first = limb(pen, outer_left, inner_left, _trimmed(left_end, *flat), serifs[0], down)
        second = limb(pen, inner_right, outer_right, _trimmed(*flat, right_end), serifs[1], down)
        return first, second


def _trimmed(*corners: Point) -> list[Point]:
    return list(corners)


def _crossing(one: Flank, other: Flank) -> Point:
    return meet(one.foot, one.head - one.foot, other.foot, other.head - other.foot)


def fork(pen: Pen, left: float, right: float, base: float, point: float,
         weights: tuple[float, float], serifs: tuple[Reach, Reach] = (BARE, BARE)) -> Outline:  # fmt: skip
    """Two strokes that meet in a point between ``left`` and ``right``."""
    whole = Fork(left, right, base, point, weights, tip_of(pen), (left + right) / 2.0)
    return join(*whole.limbs(pen, serifs))


def tip_of(pen: Pen) -> float:
    """Flat of a point: a part of the stem, but no more than the thinner stroke."""
    return min(TIP_OF_STEM * pen.stem, pen.climb * 0.9)


def leaning(pen: Pen, white: float, lean: float) -> tuple[Reach, Reach]:
    """Serifs of two strokes that share a white and lean toward each other by ``lean`` for each unit of rise."""
    outer = pen.serif.reach * LEANING_SERIF
    inner = min(outer, pen.serif.between(white - 2.0 * lean * pen.serif.thick))
    return Reach(outer, inner), Reach(inner, outer)


def inset(pen: Pen) -> float:
    """Where the outer edges of leaning strokes stand."""
    return pen.serif.natural * LEANING_SERIF


@letter("A")
def draw_a(pen: Pen) -> Outline:
    """A thin leg and a thick one; the bar stands at a third."""
    edge, least = inset(pen), pen.climb + pen.fall + pen.stem * LEAST_WHITE_OF_A
    wide = max(pen.wide("A"), least + 2.0 * edge)
    half = wide / 2.0 - edge
    thin, thick = slope_width(half, 1.0, pen.climb), slope_width(half, 1.0, pen.fall)
    legs = fork(pen, edge, wide - edge, 0.0, 1.0, (pen.climb, pen.fall), leaning(pen, 2.0 * half - thin - thick, half))
    run = (half - tip_of(pen) / 2.0) * BAR_OF_A
    bar = pen.level(edge + run + thin / 2.0, wide - edge - run - thick / 2.0, BAR_OF_A - pen.arm / 2.0)
    return join(legs, bar)


@letter("V")
def draw_v(pen: Pen) -> Outline:
    """A thick arm and a thin one."""
    return vee(pen, pen.wide("V"), 1.0)


def vee(pen: Pen, wide: float, top: float) -> Outline:
    """A V of any height."""
    return join(*vee_fork(pen, wide, top).limbs(pen, vee_serifs(pen, wide, top)))


def vee_fork(pen: Pen, wide: float, top: float) -> Fork:
    """The two strokes of a V."""
    return Fork(inset(pen), wide - inset(pen), top, 0.0, (pen.fall, pen.climb), tip_of(pen), wide / 2.0)


def vee_serifs(pen: Pen, wide: float, top: float) -> tuple[Reach, Reach]:
    """The serifs of a V."""
    half = wide / 2.0 - inset(pen)
    white = 2.0 * half - slope_width(half, top, pen.climb) - slope_width(half, top, pen.fall)
    return leaning(pen, white, half / top)


@letter("W")
def draw_w(pen: Pen) -> Outline:
    """Two V whose inner arms meet under the cap line."""
    return double_vee(pen, pen.wide("W"), 1.0)


# Strokes of W in those of V.
STROKE_OF_W = 0.92

# The corners of its two middle strokes stand this much apart, in stems: corners that all but coincide would leave
# an edge of a micrometre.
APART = 0.04


def double_vee(pen: Pen, wide: float, top: float) -> Outline:
    """A W of any height; its middle is a point as its feet are."""
    edge = inset(pen)
    weights = (pen.fall * STROKE_OF_W, pen.climb * STROKE_OF_W)
    span = (wide - 2.0 * edge) / 2.0
    across = slope_width(span / 2.0, top, weights[0])
    serifs = leaning(pen, span - across, span / 2.0 / top)
    outer = Reach(serifs[0].left, serifs[0].right)
    left = fork(
        pen, edge, (wide - across) / 2.0 + slope_width(span / 2.0, top, weights[1]), top, 0.0, weights, (outer, BARE)
    )
    right = fork(pen, (wide - across) / 2.0, wide - edge, top, 0.0, weights, (BARE, Reach(outer.right, outer.left)))
    return join(left, right)


@letter("M")
def draw_m(pen: Pen) -> Outline:
    """A thin stem, a thick one, and a V between them that reaches the base line."""
    wide, natural, reach = pen.wide("M"), pen.serif.natural, pen.serif.reach
    left, right = natural, wide - natural - pen.stem
    inner = pen.serif.between((right - left - pen.hair) / 2.0 - pen.stem * 0.25)
    stems = (
        post(pen, left, feet=Reach(reach, inner), heads=Reach(reach), thick=pen.hair),
        post(pen, right, feet=Reach(inner, reach), heads=Reach(0.0, reach)),
    )
    thin = pen.fall * 0.95
    return join(*stems, fork(pen, left + pen.hair * 0.15, right + pen.stem * 0.85, 1.0, 0.0, (thin, pen.climb)))


@letter("N")
def draw_n(pen: Pen) -> Outline:
    """Thin uprights; the thick diagonal runs from corner to corner."""
    wide, natural = pen.wide("N"), pen.serif.natural
    left, right = natural, wide - natural - pen.hair
    inner = pen.serif.between((right - left - pen.hair) * 0.62)
    flat = pen.hair
    across = slope_width(right + pen.hair - left, 1.0, pen.fall * 0.97)
    upper, low = Point(left + across, 1.0), Point(right + pen.hair - flat + across, 0.0)
    stop = meet(upper, low - upper, Point(right + pen.hair, 0.0), Point(0.0, 1.0))
    diagonal = polygon(
        (right + pen.hair - flat, 0.0), (right + pen.hair, 0.0), (stop.x, stop.y), (upper.x, 1.0), (left, 1.0)
    )
    stems = (
        post(pen, left, feet=Reach(pen.serif.reach, inner), heads=Reach(pen.serif.reach), thick=pen.hair),
        post(pen, right, heads=Reach(inner, pen.serif.reach), thick=pen.hair),
    )
    return join(*stems, diagonal)


@letter("K")
def draw_k(pen: Pen) -> Outline:
    """The thin arm comes down to the stem, the thick leg springs from the arm."""
    return kay(pen, pen.wide("K"), 1.0, 1.0)


# Where the arm of K meets its stem, and where its leg springs, in parts of the height and of the way.
LOW_OF_K, SPRING_OF_K = 0.34, 0.20


def kay(pen: Pen, wide: float, stem_top: float, top: float) -> Outline:
    """A K whose arm reaches ``top`` and whose stem reaches ``stem_top``."""
    natural, reach = pen.serif.natural, pen.serif.reach
    stem, edge = natural + pen.stem, inset(pen)
    head, foot = wide - edge * 1.15, wide - edge
    low = top * LOW_OF_K
    lean = (head - stem) / (top - low)
    arm_wide, leg = slope_width(head - stem, top - low, pen.climb), 0.0
    spring = Point(stem + (foot - stem) * SPRING_OF_K, low + (foot - stem) * SPRING_OF_K / lean)
    leg = slope_width(foot - spring.x, spring.y, pen.fall)
    gap = pen.serif.between(head - arm_wide - stem - lean * pen.serif.thick)
    heads = Reach(reach, gap) if stem_top == top else Reach(reach)
    lower, upper = (
        Flank(Point(stem, low), Point(head, top)),
        Flank(Point(stem - arm_wide, low), Point(head - arm_wide, top)),
    )
    rising = limb(pen, upper, lower, [Point(stem, low), Point(stem - pen.stem / 2.0, low),
                                      Point(stem - pen.stem / 2.0, upper_at(upper, stem - pen.stem / 2.0))],
                  Reach(min(gap, reach * LEANING_SERIF), reach * LEANING_SERIF), down=True)  # fmt: skip
    outer = Flank(Point(foot, 0.0), Point(foot - (foot - leg - spring.x), spring.y))
    inner = Flank(Point(foot - leg, 0.0), spring)
    axis = Point((lower.foot.x + upper.foot.x) / 2.0, low)
    along = lower.head - lower.foot
    ends = [
        meet(outer.foot, outer.head - outer.foot, axis, along),
        meet(inner.foot, inner.head - inner.foot, axis, along),
    ]
    between = pen.serif.between(foot - leg - stem)
    falling = limb(pen, inner, outer, ends, Reach(min(between, reach * LEANING_SERIF), reach * LEANING_SERIF))
    return join(post(pen, natural, 0.0, stem_top, Reach(reach, min(reach, between)), heads), rising, falling)


def upper_at(flank: Flank, x: float) -> float:
    """Height of a flank at ``x``."""
    run = flank.head - flank.foot
    return flank.foot.y + (x - flank.foot.x) * run.y / run.x


@letter("X")
def draw_x(pen: Pen) -> Outline:
    """The upper half narrower."""
    return cross(pen, pen.wide("X"), 1.0)


def cross(pen: Pen, wide: float, top: float) -> Outline:
    """An X of any height: a thick stroke and a thin one."""
    edge = inset(pen)
    back = wide * 0.025
    thick = slope_width(wide - 2.0 * edge - back, top, pen.fall)
    thin = slope_width(wide - 2.0 * edge - back, top, pen.climb)
    first, last = leaning(pen, wide - 2.0 * (edge + back) - thick - thin, (wide - 2.0 * edge - thick) / top)
    falls = stroke(
        pen, _lean(wide - edge - thick, edge + back, top), _lean(wide - edge, edge + back + thick, top), last, first
    )
    climbs = stroke(
        pen, _lean(edge, wide - edge - back - thin, top), _lean(edge + thin, wide - edge - back, top), first, last
    )
    return join(falls, climbs)


def _lean(foot: float, head: float, top: float) -> Flank:
    return Flank(Point(foot, 0.0), Point(head, top))


@letter("Y")
def draw_y(pen: Pen) -> Outline:
    """A V that stands on a stem."""
    wide, stem, floor = pen.wide("Y"), pen.stem, 0.40
    edge, left = inset(pen), (wide - stem) / 2.0
    half, rise = wide / 2.0 - edge, 1.0 - floor
    thick, thin = slope_width(half, rise, pen.fall), slope_width(half, rise, pen.climb)
    serifs = leaning(pen, 2.0 * half - thick - thin, half / rise)
    crotch = _crossing(
        Flank(Point(left + thick * pen.joint, floor), Point(edge + thick, 1.0)),
        Flank(Point(left + stem - thin * pen.joint, floor), Point(wide - edge - thin, 1.0)),
    )
    arms = (
        limb(pen, Flank(Point(left, floor), Point(edge, 1.0)), Flank(crotch, Point(edge + thick, 1.0)),
             [crotch, Point(left + stem, floor), Point(left, floor)], serifs[0], down=True),
        limb(pen, Flank(crotch, Point(wide - edge - thin, 1.0)), Flank(Point(left + stem, floor), Point(wide - edge, 1.0)),
             [Point(left + stem, floor), Point(left, floor), crotch], serifs[1], down=True),
    )  # fmt: skip
    return join(post(pen, left, 0.0, floor + 0.01, both(pen)), *arms)


@letter("Z")
def draw_z(pen: Pen) -> Outline:
    """Two arms with beaks and the thick stroke from corner to corner."""
    return zed(pen, pen.wide("Z"), 1.0)


def zed(pen: Pen, wide: float, top: float) -> Outline:
    """A Z of any height, the upper arm a trace shorter."""
    head = wide * 0.955
    across = slope_width(head, top, pen.fall * 0.97)
    free = wide - pen.serif.tip - pen.serif.flare - LEAST_GAP - across
    beak = min(pen.serif.beak, top * 0.30, max(free, 0.0) / (head - across) * top * 0.93)
    foot = arm(pen, across / 2.0, wide, 0.0, 1.0, beak * 1.08)
    over = mirrored(arm(pen, across / 2.0, head - wide * 0.035, top, -1.0, beak), head / 2.0 + wide * 0.0175)
    return join(polygon((0.0, 0.0), (across, 0.0), (head, top), (head - across, top)), foot, over)
