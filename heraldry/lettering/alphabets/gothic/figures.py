"""The figures, as high as the capitals and a little narrower than H."""

from __future__ import annotations

import math

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import INNER_TENSION, Bend, Knot, bent, meet, polygon
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.ink import join, turned
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serif import LEAST_GAP

# Heights of the waists' centres.
WAIST_OF_3 = 0.522
WAIST_OF_8 = 0.525

# Height of the ring of 6.
TOP_OF_6 = 0.622

# How far the bowl of 5 springs from its stem below its own top.
SINK_OF_5 = 0.07


def side(pen: Pen) -> float:
    """Thickness of a figure's rounds."""
    return pen.side * pen.sides_of_figures


def ring(pen: Pen, left: float, bottom: float, right: float, top: float) -> Outline:
    """A closed round with the figures' sides."""
    return pen.bowl(left, bottom, right, top, sides=(side(pen), side(pen)))


@letter("0")
def draw_0(pen: Pen) -> Outline:
    """A narrow O."""
    return ring(pen, 0.0, -pen.over, pen.wide("0"), 1.0 + pen.over)


@letter("1")
def draw_1(pen: Pen) -> Outline:
    """A stem with a flag."""
    wide, stem = pen.wide("1"), pen.stem
    left, tip = wide - stem, 0.735
    thick = pen.arm * 1.08
    rise = (1.0 - tip - thick) / left
    flag = polygon((0.0, tip), (left, tip + rise * left), (wide, 1.0), (left, 1.0), (0.0, tip + thick))
    return join(pen.upright(left), flag)


@letter("2")
def draw_2(pen: Pen) -> Outline:
    """A hook whose end runs down straight to the foot."""
    return two(pen, pen.wide("2"), pen.wide("2"))


def two(pen: Pen, wide: float, foot_end: float) -> Outline:
    """A 2 of any width, its foot as long as it is told; the neck's outer edge is ruled parallel to the inner one."""
    thick, crown, top, right = side(pen), pen.crown, 1.0 + pen.over, wide * 0.975
    left, end, tip = wide * 0.02, 0.5 + pen.opening * 0.5, thick * pen.ending
    inner, low, outer, foot = neck_of_2(pen, right)
    outside = hook_bend(pen, right - left, top - outer.y)
    inside = hook_inside(pen, outside, thick, right - left - thick - tip, top - crown - inner.y)
    knots = (
        Knot(0.0, 0.0), Knot(foot_end, 0.0), Knot(foot_end, pen.arm), Knot(foot.x, foot.y),
        Knot(outer.x, outer.y, *_neck(pen, outside, abs(outer - foot) * 0.7, top - outer.y)),
        Knot.upright_first(right, top, outside),
        Knot.level_first(left, top, pen.hook_end(outside, top - end), cut=end),
        Knot.upright_first(left + tip, top - crown, pen.hook_end(inside, top - end, crown), cut=end),
        Knot.level_first(inner.x, top - crown, inside),
        Knot(inner.x, inner.y, *_neck(pen, inside, abs(inner - low) * 0.62, top - crown - inner.y)[::-1]),
        Knot(low.x, low.y),
    )  # fmt: skip
    return Outline.of([bent(knots, pen.corner)])


def neck_of_2(pen: Pen, right: float) -> tuple[Point, Point, Point, Point]:
    """The ends of the neck's inner edge, above and below, and of its outer edge, above and below."""
    inner, low = Point(right - side(pen), 0.475), Point(0.0, pen.arm * 0.85)
    neck = (inner - low).unit
    edge = low - neck.left * pen.climb
    outer = meet(edge, neck, Point(right, 0.0), Point(0.0, 1.0))
    return inner, low, outer, meet(edge, neck, Point(0.0, pen.arm), Point(1.0, 0.0))


def hook_bend(pen: Pen, width: float, height: float) -> Bend:
    """The bend of an open hook, half of its height long when it is a curve."""
    return Bend(width / 2.0, height * 0.5) if pen.corner == "round" else pen.bend(width, height)


def hook_inside(pen: Pen, outer: Bend, thick: float, width: float, height: float) -> Bend:
    """The bend inside such a hook, whose side is ``thick``."""
    if pen.corner != "round":
        return pen.fitted(pen.inner_bend(outer, thick, pen.crown), min(width, height))
    return Bend(width / 2.0, height * 0.5, INNER_TENSION)


def _neck(pen: Pen, bend: Bend, reach: float, edge: float) -> tuple[float, float]:
    """Reach of the bend from the neck (before) into the hook's side (after), which is ``edge`` long."""
    return (reach, edge - bend.along) if pen.corner == "round" else (bend.along, min(bend.along, edge - bend.along))


@letter("3")
def draw_3(pen: Pen) -> Outline:
    """Two bowls opened at the left; the bar of the waist reaches half way in."""
    wide, half, over, thick = pen.wide("3"), pen.crown / 2.0, pen.over, side(pen)
    right, bar = wide * (1.0 - pen.standing_back * 0.7), wide * 0.33
    low, high = 0.5 - pen.opening * 0.62, 0.5 + pen.opening * 0.62
    upper = pen.hook(wide * 0.03, right, 1.0 + over, WAIST_OF_3 - half, bar, high, thick)
    lower = pen.hook(0.0, wide, -over, WAIST_OF_3 + half, bar, low, thick)
    return pen.nicked(join(upper, lower), WAIST_OF_3, wide)


@letter("4")
def draw_4(pen: Pen) -> Outline:
    """The diagonal rises from the bar to the top of the stem."""
    wide, stem, low = pen.wide("4"), pen.stem, 0.20
    left, high = wide * 0.87 - stem, low + pen.arm
    lean = (left + stem) / (1.0 - high)
    across = pen.climb * 0.94 * math.hypot(1.0, lean * 0.8)
    head = left + stem - across
    stroke = polygon((0.0, low), (across, low), (across, high), (left + stem, 1.0), (head, 1.0), (0.0, high))
    return join(pen.upright(left), pen.level(0.0, wide, low), stroke)


@letter("5")
def draw_5(pen: Pen) -> Outline:
    """A bar, a short stem, and a bowl opened at the left."""
    return five(pen, pen.wide("5"), pen.stem * 0.96, pen.arm)


def five(pen: Pen, wide: float, stem: float, arm: float) -> Outline:
    """A 5 of any width, stem and bar."""
    thick, crown = side(pen), pen.crown
    top, left, tip = 0.637, wide * 0.06, thick * pen.ending
    foot, end = -pen.over, 0.5 - pen.opening * 0.67
    outside = pen.bend(wide, top - foot)
    room = min(wide - thick - tip, top - foot - 2 * crown)
    inside, end_inside = (pen.fitted(pen.inner_bend(outside, side_, crown), room) for side_ in (thick, tip))
    run, sink, brow = _brow(pen, wide * 0.5 - left - stem)
    spring, bend = left + stem, left + stem + run
    knots = (
        Knot(left, 1.0), Knot(wide * 0.955, 1.0), Knot(wide * 0.955, 1.0 - arm), Knot(spring, 1.0 - arm),
        Knot(spring, top - sink), Knot(bend, top, *brow),
        Knot.level_first(wide, top, outside), Knot.upright_first(wide, foot, outside),
        Knot.level_first(0.0, foot, pen.hook_end(outside, end - foot), cut=end),
        Knot.upright_first(tip, foot + crown, pen.hook_end(end_inside, end - foot, crown), cut=end),
        Knot.level_first(wide - thick, foot + crown, inside), Knot.upright_first(wide - thick, top - crown, inside),
        Knot(bend, top - crown, *brow[::-1]), Knot(spring, top - crown - sink), Knot(left, top - crown - sink),
    )  # fmt: skip
    return Outline.of([bent(knots, pen.corner)])


def _brow(pen: Pen, half: float) -> tuple[float, float, tuple[float, float]]:
    """How the bowl of 5 springs from its stem: run and rise of the ruled line, and its bend into the bowl.

    ``half`` is the way from the stem to the middle of the bowl. Only curves rise; others leave the stem level.
    """
    run = half * 0.6
    if pen.corner != "round":
        return run, 0.0, (0.0, 0.0)
    sink = min(SINK_OF_5, half * 0.5)
    return run, sink, (0.55 * math.hypot(run, sink), half * 0.4)


def end_of_6(pen: Pen) -> float:
    """Height at which the hook of 6 ends: clear of the ring, with its ball where it has one."""
    return max(0.5 + pen.opening * 0.66, TOP_OF_6 + pen.serif.ball / 2.0 + LEAST_GAP)


@letter("6")
def draw_6(pen: Pen) -> Outline:
    """A ring with a hook over it that shares its left side."""
    return six(pen, pen.wide("6"))


def six(pen: Pen, wide: float) -> Outline:
    """The hook's straight side stands on the ring's, so that both are one stroke."""
    thick, foot = side(pen), -pen.over
    body, sides = ring(pen, 0.0, foot, wide, TOP_OF_6), (thick, thick * pen.ending)
    hook = pen.arch(0.0, (foot + TOP_OF_6) / 2.0, wide * 0.975, 1.0 + pen.over, sides, ends=(None, end_of_6(pen)))
    return join(body, hook)


@letter("7")
def draw_7(pen: Pen) -> Outline:
    """A bar and a stroke that falls from its very end to the left of the middle."""
    wide, under = pen.wide("7"), 1.0 - pen.arm
    foot = wide * 0.16
    across = slope_width(wide - foot, under, pen.climb)
    falling = ((foot, 0.0), (foot + across, 0.0), (wide, under))
    stroke = polygon(*falling, (wide, 1.0), (wide - across, 1.0), (wide - across, under))
    return join(pen.level(0.0, wide, under), stroke)


@letter("8")
def draw_8(pen: Pen) -> Outline:
    """Two rings that share the bar of the waist; the upper one is smaller."""
    wide, half, over = pen.wide("8"), pen.crown / 2.0, pen.over
    back = wide * pen.standing_back * 0.9
    upper = ring(pen, back, WAIST_OF_8 - half, wide - back, 1.0 + over)
    eight = join(upper, ring(pen, 0.0, -over, wide, WAIST_OF_8 + half))
    return pen.nicked(eight, WAIST_OF_8, 0.0, wide)


@letter("9")
def draw_9(pen: Pen) -> Outline:
    """6 upside down."""
    wide = pen.wide("9")
    return turned(six(pen, wide), wide / 2.0, 0.5)
