"""Letters of leaning strokes: A K M N V W X Y Z.

A stroke keeps its weight at its free end and thins toward the joint, where two strokes would clot. Widths of
leaning strokes are measured level; ``slope_width`` makes them from the thickness across.
"""

from __future__ import annotations

import math

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import meet, polygon, rectangle
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen, slope_width

# Height of A's bar, its centre: a third, to leave the counter its room.
BAR_OF_A = 0.31


@letter("A")
def draw_a(pen: Pen) -> Outline:
    """Two legs that meet in a flat tip; the bar stands at a third."""
    wide = pen.wide("A")
    rise = slope_width(wide / 2.0, 1.0, pen.climb)
    fall = slope_width(wide / 2.0, 1.0, pen.fall)
    tip = (rise + fall) / 2.0 * pen.joint
    left = pen.slope(0.0, rise, (wide - tip) / 2.0, tip)
    right = pen.slope(wide - fall, fall, (wide - tip) / 2.0, tip)
    inset = (wide - tip) / 2.0 * BAR_OF_A + rise / 2.0
    return join(left, right, pen.level(inset, wide - inset, BAR_OF_A - pen.arm / 2.0))


@letter("V")
def draw_v(pen: Pen) -> Outline:
    """Two arms that meet in a flat point."""
    return vee(pen, pen.wide("V"), 1.0)


def vee(pen: Pen, wide: float, top: float) -> Outline:
    """A V of any height."""
    fall = slope_width(wide / 2.0, top, pen.fall)
    climb = slope_width(wide / 2.0, top, pen.climb)
    tip = (fall + climb) / 2.0 * pen.joint
    left = pen.slope((wide - tip) / 2.0, tip, 0.0, fall, 0.0, top)
    right = pen.slope((wide - tip) / 2.0, tip, wide - climb, climb, 0.0, top)
    return join(left, right)


@letter("W")
def draw_w(pen: Pen) -> Outline:
    """Two V that share the tip in the middle."""
    return double_vee(pen, pen.wide("W"), 1.0)


def double_vee(pen: Pen, wide: float, top: float) -> Outline:
    """A W of any height: four strokes, a little thinner than those of V, so that it is no darker."""
    thin = 1.0 - 0.3 * pen.stem
    fall = slope_width(wide / 4.0, top, pen.fall * thin)
    climb = slope_width(wide / 4.0, top, pen.climb * thin)
    tip = (fall + climb) / 2.0 * pen.joint
    middle = (wide - tip) / 2.0
    foot = (middle + tip) / 2.0 - tip / 2.0 + (fall - tip) / 4.0
    strokes = (
        pen.slope(foot, tip, 0.0, fall, 0.0, top),
        pen.slope(foot, tip, middle, tip, 0.0, top),
        pen.slope(wide - foot - tip, tip, middle, tip, 0.0, top),
        pen.slope(wide - foot - tip, tip, wide - climb, climb, 0.0, top),
    )
    return join(*strokes)


@letter("M")
def draw_m(pen: Pen) -> Outline:
    """Two stems and a V between them that reaches the base line."""
    wide, stem = pen.wide("M"), pen.stem
    inside = wide / 2.0 - stem * 0.2
    tip = slope_width(inside, 1.0, pen.fall * 0.95) * pen.joint
    shoulder = stem * 0.12
    left = pen.slope((wide - tip) / 2.0, tip, shoulder, tip * 1.06)
    right = pen.slope((wide - tip) / 2.0, tip, wide - shoulder - tip * 1.06, tip * 1.06)
    return join(pen.upright(0.0), pen.upright(wide - stem), left, right)


@letter("N")
def draw_n(pen: Pen) -> Outline:
    """The diagonal runs from corner to corner."""
    wide = pen.wide("N")
    across = slope_width(wide, 1.0, pen.fall * 0.95)
    diagonal = pen.slope(wide - across, across, 0.0, across)
    return join(pen.upright(0.0), pen.upright(wide - pen.stem), diagonal)


@letter("K")
def draw_k(pen: Pen) -> Outline:
    """The arm comes down to the stem, the leg springs from the arm."""
    return kay(pen, pen.wide("K"), 1.0, 1.0)


def kay(pen: Pen, wide: float, stem_top: float, top: float) -> Outline:
    """A K whose arm reaches ``top`` and whose stem reaches ``stem_top``."""
    stem, low, head = pen.stem, top * 0.27, wide * 0.965
    lean = (head - stem) / (top - low)
    arm = pen.climb * math.hypot(1.0, lean)
    high = low + arm / lean
    spring = Point(stem + (wide - stem) * 0.10, low + (wide - stem) * 0.10 / lean)
    leg = slope_width(wide - spring.x, spring.y, pen.fall)
    foot = Point(wide - leg, 0.0)
    axis, along = Point(stem, (low + high) / 2.0), Point(lean, 1.0)
    ends = [meet(place, spring - foot, axis, along) for place in (Point(wide, 0.0), foot)]
    back = stem * 0.5
    return join(
        rectangle(0.0, 0.0, stem, stem_top),
        polygon((back, high), (back, low), (stem, low), (head, top), (head - arm, top), (stem, high)),
        polygon((foot.x, 0.0), (wide, 0.0), *((end.x, end.y) for end in ends)),
    )


@letter("X")
def draw_x(pen: Pen) -> Outline:
    """The upper half narrower; both strokes thin toward the crossing."""
    return cross(pen, pen.wide("X"), 1.0)


def cross(pen: Pen, wide: float, top: float) -> Outline:
    """An X of any height: two strokes with a waist."""
    inset, crossing = wide * 0.03, top * 0.51
    fall = slope_width(wide - inset, top, pen.fall)
    climb = slope_width(wide - inset, top, pen.climb)
    thin = (1.0 + pen.joint) / 2.0

    def stroke(foot: float, head: float, across: float) -> Outline:
        middle = foot + (head - foot) * crossing / top + across / 2.0
        half = across * thin / 2.0
        right = [(foot + across, 0.0), (middle + half, crossing), (head + across, top)]
        return polygon((foot, 0.0), *right, (head, top), (middle - half, crossing))

    return join(stroke(wide - fall, inset, fall), stroke(0.0, wide - inset - climb, climb))


@letter("Y")
def draw_y(pen: Pen) -> Outline:
    """A V that stands on a stem; its arms thin toward the fork."""
    wide, stem, fork = pen.wide("Y"), pen.stem, 0.405
    fall = slope_width(wide / 2.0, 1.0 - fork, pen.fall)
    climb = slope_width(wide / 2.0, 1.0 - fork, pen.climb)
    left = pen.slope((wide - stem) / 2.0, stem, 0.0, fall, fork, 1.0)
    right = pen.slope((wide - stem) / 2.0, stem, wide - climb, climb, fork, 1.0)
    return join(pen.upright((wide - stem) / 2.0, 0.0, fork), left, right)


@letter("Z")
def draw_z(pen: Pen) -> Outline:
    """Two bars and the stroke from corner to corner."""
    return zed(pen, pen.wide("Z"), 1.0)


def zed(pen: Pen, wide: float, top: float) -> Outline:
    """A Z of any height, the upper bar a trace shorter; the diagonal leaves each bar at its very end."""
    arm, head = pen.arm, wide * 0.97
    under = top - arm
    across = slope_width(head, under - arm, pen.climb)
    lower_side = ((0.0, 0.0), (across, 0.0), (across, arm), (head, under))
    upper_side = ((head, top), (head - across, top), (head - across, under), (0.0, arm))
    diagonal = polygon(*lower_side, *upper_side)
    return join(pen.level(0.0, wide, 0.0), pen.level(wide * 0.02, head, under), diagonal)
