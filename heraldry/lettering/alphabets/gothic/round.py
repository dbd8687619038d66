"""Letters with bowls: B C D G J O P Q R S U."""

from __future__ import annotations

import math
from dataclasses import replace

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import rectangle
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.ink import cut, join
from heraldry.lettering.alphabets.pen import RIGHT, Pen, slope_width
from heraldry.lettering.alphabets.spine import DoubleTurn, Hook, spine

# Heights of the waists' centres: the upper half is smaller, or the letter falls over.
WAIST_OF_B = 0.527
WAIST_OF_P = 0.455
WAIST_OF_R = 0.478
WAIST_OF_S = 0.522

# The lower right bend of G is shorter than its others, so that the shelf stands on a piece of stem.
SPUR_OF_G = 0.74

# How far the tail of Q steps below the base line.
TAIL_OF_Q = 0.125

# Height at which the hook of J ends.
END_OF_J = 0.335

# Between the hook of J and its stem stands at least this much white, in stems: narrowed as far as the medians of
# condensed type, a heavy J would close.
LEAST_WHITE_OF_J = 0.40

# How far the spine of S falls for each unit of its run.
FALL_OF_S = 0.30

# Past every letter's ink, in cap heights: where a white that opens a round to the side ends.
FAR = 2.0


def ring(pen: Pen, wide: float) -> Outline:
    """The O that C, G and Q are made from."""
    return pen.bowl(0.0, -pen.over, wide, 1.0 + pen.over)


@letter("B")
def draw_b(pen: Pen) -> Outline:
    """Two bowls that share the bar of the waist; the upper one stands back."""
    wide, half = pen.wide("B"), pen.arm / 2.0
    levels, back = (pen.arm, pen.arm), wide * (1.0 - pen.standing_back)
    upper = pen.bowl(0.0, WAIST_OF_B - half, back, 1.0, RIGHT, (pen.stem, pen.side * 0.98), levels)
    lower = pen.bowl(0.0, 0.0, wide, WAIST_OF_B + half, RIGHT, (pen.stem, pen.side), levels)
    return pen.nicked(join(upper, lower), WAIST_OF_B, wide)


@letter("C")
def draw_c(pen: Pen) -> Outline:
    """A ring opened at the right, its ends cut level."""
    wide = pen.wide("C")
    low, high = 0.5 - pen.opening * 0.48, 0.5 + pen.opening * 0.52
    return cut(ring(pen, wide), rectangle(wide * 0.5, low, FAR, high))


@letter("D")
def draw_d(pen: Pen) -> Outline:
    """Straight from the stem, then one great bend; flat strokes need no overshoot.

    Among square letters its corners are cut all the same, or it would be an O.
    """
    told_apart = replace(pen, corner="cut") if pen.corner == "square" else pen
    return told_apart.bowl(0.0, 0.0, pen.wide("D"), 1.0, RIGHT, (pen.stem, pen.side), (pen.arm, pen.arm))


@letter("G")
def draw_g(pen: Pen) -> Outline:
    """C with a shelf: the bar comes in from the right and rests on the bowl."""
    wide = pen.wide("G")
    shelf, high = 0.495, 0.5 + pen.opening * 0.52
    whole = pen.bowl(0.0, -pen.over, wide, 1.0 + pen.over, tight={"br": SPUR_OF_G})
    opened = cut(whole, rectangle(wide * 0.5, shelf, FAR, high))
    return join(opened, pen.level(wide * 0.54, wide - pen.side / 2.0, shelf - pen.arm))


@letter("J")
def draw_j(pen: Pen) -> Outline:
    """A stem with a cup, the left of it cut short."""
    wide = max(pen.wide("J"), pen.side + pen.stem * (1.0 + LEAST_WHITE_OF_J))
    return pen.cup(0.0, -pen.over, wide, 1.0, (pen.side, pen.stem), ends=(END_OF_J, None))


@letter("O")
def draw_o(pen: Pen) -> Outline:
    """The measure of the rounds."""
    return ring(pen, pen.wide("O"))


@letter("P")
def draw_p(pen: Pen) -> Outline:
    """The largest of the one-sided bowls."""
    levels = (pen.arm, pen.arm)
    bottom = WAIST_OF_P - pen.arm / 2.0
    bowl = pen.bowl(0.0, bottom, pen.wide("P"), 1.0, RIGHT, (pen.stem, pen.side), levels)
    return join(pen.upright(0.0), bowl)


@letter("Q")
def draw_q(pen: Pen) -> Outline:
    """O with a tail that leaves its counter clear and steps a little below the base line."""
    wide = pen.wide("Q")
    top, run = pen.crown * 0.6, wide * 0.27
    across = slope_width(run + pen.stem, top + TAIL_OF_Q, pen.stem * 0.88)
    head = wide * 0.73 - across
    tail = pen.slope(head + run, across, head, across, -TAIL_OF_Q, top)
    return join(ring(pen, wide), tail)


@letter("R")
def draw_r(pen: Pen) -> Outline:
    """P with a smaller bowl and a straight leg that stands as far out as it can."""
    wide = pen.wide("R")
    bottom = WAIST_OF_R - pen.arm / 2.0
    bowl = pen.bowl(0.0, bottom, wide * 0.955, 1.0, RIGHT, (pen.stem, pen.side), (pen.arm, pen.arm))
    rise = WAIST_OF_R
    across = slope_width(wide * 0.56, rise, pen.fall)
    leg = pen.slope(wide - across, across, wide * 0.44, across * 0.94, 0.0, rise)
    return join(pen.upright(0.0), bowl, leg)


@letter("S")
def draw_s(pen: Pen) -> Outline:
    """The spine falls through the middle; the upper hook is narrower and shorter."""
    return s_shape(pen, pen.wide("S"), 1.0, WAIST_OF_S, 1.0)


def s_shape(pen: Pen, wide: float, top: float, waist: float, weight: float) -> Outline:
    """An S of any height, its ends opened by the alphabet's aperture."""
    round_ = pen.corner == "round"
    fall = FALL_OF_S if round_ else 0.0
    thick = weight * (pen.stem * math.hypot(1.0, fall) if round_ else pen.arm)
    high = waist + (top - waist) * (0.36 + 0.2 * (pen.opening - 0.36))
    low = waist * (0.63 - 0.2 * (pen.opening - 0.36))
    upper = Hook(wide * 0.035, wide * 0.965, top + pen.over, high)
    lower = Hook(0.0, wide, -pen.over, low)
    side = pen.side * weight
    return spine(pen, DoubleTurn(upper, lower, waist, fall, side, pen.crown * weight, thick, side))


@letter("U")
def draw_u(pen: Pen) -> Outline:
    """Two stems and the bend between them."""
    return pen.cup(0.0, -pen.over, pen.wide("U"), 1.0, (pen.stem, pen.stem))
