"""Letters with bowls: B C D G J O P Q R S U."""

from __future__ import annotations

import math

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import rectangle
from heraldry.lettering.alphabets.gothic.round import LEAST_WHITE_OF_J, WAIST_OF_B, WAIST_OF_S, ring
from heraldry.lettering.alphabets.hook_end import HookEnd, balls
from heraldry.lettering.alphabets.ink import cut, join
from heraldry.lettering.alphabets.pen import RIGHT, Pen, slope_width
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.straight import outer_reach
from heraldry.lettering.alphabets.serifed.strokes import Flank, Reach, both, limb, post, post_before
from heraldry.lettering.alphabets.serifed.terminals import FAR, BeakEnd, beaked, open_round, outermost
from heraldry.lettering.alphabets.spine import DoubleTurn, Hook, spine

WAIST_OF_P = 0.465
WAIST_OF_R = 0.492

# How far C and G would go on past their cut ends at the alphabet's own aperture, in their widths.
FURTHER = 0.085

# Height of the shelf of G, of the end of J's hook.
SHELF_OF_G, END_OF_J = 0.445, 0.29

# How far the spine of S falls for each unit of its run.
FALL_OF_S = 0.34


def further(pen: Pen, wide: float) -> float:
    """How far an open round would go on past its cut ends; the more, the wider it stands open."""
    return wide * (FURTHER + 0.25 * (pen.opening - 0.36))


@letter("O")
def draw_o(pen: Pen) -> Outline:
    """The measure of the rounds."""
    return ring(pen, pen.wide("O"))


@letter("D")
def draw_d(pen: Pen) -> Outline:
    """Straight from the stem, then one great bend; flat strokes need no overshoot."""
    left, wide = pen.serif.natural, pen.wide("D")
    bowl = pen.bowl(left, 0.0, wide, 1.0, RIGHT, (pen.stem, pen.side), (pen.arm, pen.arm))
    return join(post(pen, left, feet=outer_reach(pen), heads=outer_reach(pen)), bowl)


@letter("B")
def draw_b(pen: Pen) -> Outline:
    """Two bowls that share the bar of the waist; the upper one stands back."""
    left, wide, half = pen.serif.natural, pen.wide("B"), pen.arm / 2.0
    levels, back = (pen.arm, pen.arm), wide * (1.0 - pen.standing_back * 1.2)
    upper = pen.bowl(left, WAIST_OF_B - half, back, 1.0, RIGHT, (pen.stem, pen.side * 0.98), levels)
    lower = pen.bowl(left, 0.0, wide, WAIST_OF_B + half, RIGHT, (pen.stem, pen.side), levels)
    return join(post(pen, left, feet=outer_reach(pen), heads=outer_reach(pen)), upper, lower)


@letter("P")
def draw_p(pen: Pen) -> Outline:
    """The largest of the one-sided bowls."""
    left, levels = pen.serif.natural, (pen.arm, pen.arm)
    bowl = pen.bowl(left, WAIST_OF_P - pen.arm / 2.0, pen.wide("P"), 1.0, RIGHT, (pen.stem, pen.side), levels)
    return join(post(pen, left, feet=both(pen), heads=outer_reach(pen)), bowl)


@letter("R")
def draw_r(pen: Pen) -> Outline:
    """P with a smaller bowl and a straight leg that stands out as far as it can."""
    left, wide, reach = pen.serif.natural, pen.wide("R"), pen.serif.reach
    levels = (pen.arm, pen.arm)
    bowl = pen.bowl(left, WAIST_OF_R - pen.arm / 2.0, wide * 0.90, 1.0, RIGHT, (pen.stem, pen.side), levels)
    foot, head = wide - pen.serif.natural * 0.70, left + (wide - left) * 0.36
    across = slope_width(foot - head, WAIST_OF_R, pen.fall)
    inner = Flank(Point(foot - across, 0.0), Point(head, WAIST_OF_R))
    outer = Flank(Point(foot, 0.0), Point(head + across * 0.96, WAIST_OF_R))
    gap = pen.serif.between(foot - across - left - pen.stem)
    leg = limb(pen, inner, outer, [outer.head, inner.head], Reach(min(gap, reach * 0.8), reach * 0.70))
    return join(post(pen, left, feet=Reach(reach, gap), heads=outer_reach(pen)), bowl, leg)


@letter("C")
def draw_c(pen: Pen) -> Outline:
    """A round with a beak above."""
    return cee(pen, pen.wide("C"))


def cee(pen: Pen, wide: float) -> Outline:
    """A round open at the right, a beak at its upper end; the lower one runs out a trace further."""
    body = open_round(pen, wide * 0.985, -pen.over, 1.0 + pen.over, further(pen, wide))
    return beaked(pen, body, BeakEnd(wide * 0.985, True, 1.0 - pen.serif.beak * 1.12, True))


@letter("G")
def draw_g(pen: Pen) -> Outline:
    """C whose lower end runs into a short stem with a serif on it."""
    wide, reach = pen.wide("G"), pen.serif.reach
    right = wide - pen.serif.natural * 0.5
    left = right - pen.stem
    body = open_round(pen, right - pen.serif.tip * 0.2, -pen.over, 1.0 + pen.over, further(pen, wide))
    body = cut(body, rectangle(left + pen.stem / 2.0, -FAR, FAR, 0.5))
    beak = beaked(pen, body, BeakEnd(right - pen.serif.tip * 0.2, True, 1.0 - pen.serif.beak * 1.05, True))
    inner = min(reach, max(left - wide * 0.42, 0.0))
    return join(beak, post(pen, left, outermost(body, left, -1.0), SHELF_OF_G, heads=Reach(inner, reach * 0.5)))


@letter("J")
def draw_j(pen: Pen) -> Outline:
    """A stem with a cup, the left of it cut short."""
    least = pen.stem * (1.0 + LEAST_WHITE_OF_J) + max(pen.serif.ball, pen.side * pen.ending)
    right = max(pen.wide("J") - pen.serif.natural, least)
    tip = pen.side * pen.ending
    cup = pen.cup(0.0, -pen.over, right, 0.6, (tip, pen.stem), ends=(END_OF_J, None))
    stem = post_before(pen, right, 0.5, 1.0, heads=both(pen))
    return join(cup, stem, *balls(pen, HookEnd(0.0, False, END_OF_J)))


@letter("U")
def draw_u(pen: Pen) -> Outline:
    """A thick stem, a thin one, and the bend between them."""
    wide, natural, reach = pen.wide("U"), pen.serif.natural, pen.serif.reach
    inner = pen.serif.between(wide - 2.0 * natural - pen.stem - pen.hair)
    cup = pen.cup(natural, -pen.over, wide - natural, 0.8, (pen.stem, pen.hair), pen.crown)
    left = post(pen, natural, 0.7, heads=Reach(reach, inner))
    return join(cup, left, post_before(pen, wide - natural, 0.7, heads=Reach(inner, reach), thick=pen.hair))


@letter("Q")
def draw_q(pen: Pen) -> Outline:
    """O with a tail that leaves its counter clear and steps below the base line."""
    wide, low = pen.wide("O"), -0.17
    run, top = wide * 0.24, pen.crown * 0.7
    across = slope_width(run + pen.fall, top - low, pen.fall * 0.92)
    head = wide * 0.58
    tail = pen.slope(head + run, across, head, across * 0.85, low, top)
    return join(ring(pen, wide), tail)


@letter("S")
def draw_s(pen: Pen) -> Outline:
    """The spine falls through the middle; the upper hook is narrower and shorter."""
    return ess(pen, pen.wide("S"), 1.0, WAIST_OF_S)


def ess(pen: Pen, wide: float, top: float, waist: float) -> Outline:
    """An S of any height, with a beak at both ends."""
    tip, side, over = pen.side * pen.ending, pen.side * pen.sides_of_s, pen.over
    more = tip + wide * (0.05 + 0.25 * (pen.opening - 0.36))
    upper_right, upper_left, beak = wide * 0.945, wide * 0.03, pen.serif.beak * top
    high, low = waist + (top - waist) * 0.30, waist * 0.66
    upper = Hook(upper_left, upper_right + more, top + over, high)
    lower = Hook(-more, wide, -over, low)
    thick = pen.stem * pen.spine_of_s * math.hypot(1.0, FALL_OF_S)
    turn = DoubleTurn(upper, lower, waist, FALL_OF_S, side, pen.crown, thick, tip)
    body = cut(
        spine(pen, turn),
        rectangle(upper_right, waist, FAR, FAR),
        rectangle(-FAR, -FAR, 0.0, waist),
    )
    first = beaked(pen, body, BeakEnd(upper_right, True, top - beak * 1.02, True))
    return beaked(pen, first, BeakEnd(0.0, False, beak * 1.10, False))
