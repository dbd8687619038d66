"""Letters of leaning strokes: A M N V W X Y Z.

A stroke that falls to the right is thick, one that rises is thin, as a broad pen makes them; only the diagonal of Z
rises and is thick.
"""

from __future__ import annotations

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import meet, polygon
from heraldry.lettering.alphabets.ink import join, mirrored
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serif import LEAST_GAP
from heraldry.lettering.alphabets.serifed.forks import Fork, crossing, fork, inset, leaning, tip_of
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.strokes import BARE, Flank, Reach, arm, both, limb, post, post_before, stroke

# Height of A's bar, its centre: a third, to leave the counter its room, and higher the thinner it is.
BAR_OF_A, LOWER_BY_ARM = 0.39, 0.37

# Between the feet of A stands at least this much white, in stems, or its counter would close.
LEAST_WHITE_OF_A = 1.75


def bar_of_a(pen: Pen) -> float:
    """Height of the middle of the bar of A and Æ."""
    return BAR_OF_A - LOWER_BY_ARM * pen.arm


@letter("A")
def draw_a(pen: Pen) -> Outline:
    """A thin leg and a thick one; the bar stands at a third."""
    edge, least = inset(pen), pen.climb + pen.fall + pen.stem * LEAST_WHITE_OF_A
    wide = max(pen.wide("A"), least + 2.0 * edge)
    half = wide / 2.0 - edge
    thin, thick = slope_width(half, 1.0, pen.climb), slope_width(half, 1.0, pen.fall)
    legs = fork(pen, edge, wide - edge, 0.0, 1.0, (pen.climb, pen.fall), leaning(pen, 2.0 * half - thin - thick, half))
    middle = bar_of_a(pen)
    run = (half - tip_of(pen) / 2.0) * middle
    bar = pen.level(edge + run + thin / 2.0, wide - edge - run - thick / 2.0, middle - pen.arm / 2.0)
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
    thick, thin = (slope_width(span / 2.0, top, weight) for weight in weights)
    (outer, _) = leaning(pen, span - thick, span / 2.0 / top)
    peak = (wide - thick) / 2.0
    left = fork(pen, edge, peak + thin + pen.stem * APART, top, 0.0, weights, (outer, BARE))
    right = fork(pen, peak, wide - edge, top, 0.0, weights, (BARE, Reach(outer.right, outer.left)))
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
    wide, natural, hair, reach = pen.wide("N"), pen.serif.natural, pen.hair, pen.serif.reach
    left, right = natural, wide - natural
    inner = pen.serif.between((right - left - 2.0 * hair) * 0.62)
    across = slope_width(right - left, 1.0, pen.fall * 0.97)
    upper, lower = Point(left + across, 1.0), Point(right - hair + across, 0.0)
    stop = meet(upper, lower - upper, Point(right, 0.0), Point(0.0, 1.0))
    diagonal = polygon((right - hair, 0.0), (right, 0.0), (right, stop.y), (upper.x, 1.0), (left, 1.0))
    first = post(pen, left, feet=Reach(reach, inner), heads=Reach(reach), thick=hair)
    return join(first, post_before(pen, right, heads=Reach(inner, reach), thick=hair), diagonal)


@letter("X")
def draw_x(pen: Pen) -> Outline:
    """The upper half narrower."""
    return cross(pen, pen.wide("X"), 1.0)


def cross(pen: Pen, wide: float, top: float) -> Outline:
    """An X of any height: a thick stroke and a thin one."""
    left, right = inset(pen), wide - inset(pen)
    back = wide * 0.025
    thick, thin = (slope_width(right - left - back, top, weight) for weight in (pen.fall, pen.climb))
    first, last = leaning(pen, right - left - 2.0 * back - thick - thin, (right - left - thick) / top)
    falls = _straight(pen, right - thick, left + back, thick, top, last, first)
    return join(falls, _straight(pen, left, right - back - thin, thin, top, first, last))


def _straight(pen: Pen, foot: float, head: float, wide: float, top: float, feet: Reach, heads: Reach) -> Outline:
    """A leaning stroke as wide at its foot as at its head."""
    left, right = (Flank(Point(foot + x, 0.0), Point(head + x, top)) for x in (0.0, wide))
    return stroke(pen, left, right, feet, heads)


# Height of the fork of Y, and how far its stem reaches into it.
FLOOR_OF_Y, OVERLAP = 0.40, 0.01


@letter("Y")
def draw_y(pen: Pen) -> Outline:
    """A V that stands on a stem."""
    wide, stem, floor = pen.wide("Y"), pen.stem, FLOOR_OF_Y
    edge, left = inset(pen), (wide - stem) / 2.0
    half, rise = wide / 2.0 - edge, 1.0 - floor
    thick, thin = slope_width(half, rise, pen.fall), slope_width(half, rise, pen.climb)
    serifs = leaning(pen, 2.0 * half - thick - thin, half / rise)
    low, high = Point(left, floor), Point(left + stem, floor)
    outer = Flank(low, Point(edge, 1.0)), Flank(high, Point(wide - edge, 1.0))
    inner_left = Flank(Point(left + thick * pen.joint, floor), Point(edge + thick, 1.0))
    inner_right = Flank(Point(high.x - thin * pen.joint, floor), Point(wide - edge - thin, 1.0))
    crotch = crossing(inner_left, inner_right)
    falls = limb(pen, outer[0], Flank(crotch, inner_left.head), [crotch, high, low], serifs[0], down=True)
    climbs = limb(pen, Flank(crotch, inner_right.head), outer[1], [high, low, crotch], serifs[1], down=True)
    return join(post(pen, left, 0.0, floor + OVERLAP, both(pen)), falls, climbs)


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
