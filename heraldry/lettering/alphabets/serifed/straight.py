"""Letters of upright and level strokes alone: E F H I L T."""

from __future__ import annotations

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.ink import join, mirrored
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.strokes import Reach, arm, both, middle_arm, post, post_before

# Heights of the crossbars' centres: true halves look low.
BAR_OF_H = 0.513
BAR_OF_E = 0.513
BAR_OF_F = 0.493

# How far the beaks of the middle arm reach from its centre, in beaks.
MIDDLE_BEAK = 0.52


def outer_reach(pen: Pen) -> Reach:
    """A serif on the left only."""
    return Reach(pen.serif.reach, 0.0)


def spine_of(pen: Pen, feet: Reach) -> Outline:
    """The stem of E, F and L; its head has its serif on the left, arms grow from the rest."""
    return post(pen, pen.serif.natural, feet=feet, heads=outer_reach(pen))


def side_arms(pen: Pen, wide: float, middle: float, foot: bool) -> list[Outline]:
    """The arms of E, or of F where there is no foot."""
    left = pen.serif.natural + pen.stem / 2.0
    top = arm(pen, left, wide * (0.955 if foot else 1.0), 1.0, -1.0)
    second = middle_arm(pen, left, wide * 0.80, middle, pen.serif.beak * MIDDLE_BEAK)
    return [top, second, arm(pen, left, wide, 0.0, 1.0, pen.serif.beak * 1.08)] if foot else [top, second]


@letter("E")
def draw_e(pen: Pen) -> Outline:
    """The top arm a trace shorter than the foot, the middle one shorter still."""
    return join(spine_of(pen, outer_reach(pen)), *side_arms(pen, pen.wide("E"), BAR_OF_E, foot=True))


@letter("F")
def draw_f(pen: Pen) -> Outline:
    """The second arm hangs lower than that of E, to fill the empty foot."""
    return join(spine_of(pen, both(pen)), *side_arms(pen, pen.wide("F"), BAR_OF_F, foot=False))


@letter("H")
def draw_h(pen: Pen) -> Outline:
    """The measure of all others."""
    wide, natural, stem = pen.wide("H"), pen.serif.natural, pen.stem
    left, right = two_posts(pen, wide)
    bar = pen.level(natural + stem / 2.0, wide - natural - stem / 2.0, BAR_OF_H - pen.arm / 2.0)
    return join(left, right, bar)


def two_posts(pen: Pen, wide: float) -> tuple[Outline, Outline]:
    """Two stems whose serifs do not meet."""
    outer, natural = pen.serif.reach, pen.serif.natural
    inner = pen.serif.between(wide - 2.0 * (natural + pen.stem))
    first, second = Reach(outer, inner), Reach(inner, outer)
    return post(pen, natural, feet=first, heads=first), post_before(pen, wide - natural, feet=second, heads=second)


@letter("I")
def draw_i(pen: Pen) -> Outline:
    """The stem."""
    return post(pen, pen.serif.natural, feet=both(pen), heads=both(pen))


@letter("L")
def draw_l(pen: Pen) -> Outline:
    """Narrow, since its white is its own."""
    left = pen.serif.natural
    foot = arm(pen, left + pen.stem / 2.0, pen.wide("L"), 0.0, 1.0, pen.serif.beak * 1.15)
    return join(post(pen, left, feet=outer_reach(pen), heads=both(pen)), foot)


@letter("T")
def draw_t(pen: Pen) -> Outline:
    """A stem hung in the middle of its bar, which has a beak at both ends."""
    wide = pen.wide("T")
    half = arm(pen, wide / 2.0, wide, 1.0, -1.0, pen.serif.beak * 1.05)
    stem = post(pen, (wide - pen.stem) / 2.0, feet=both(pen, 0.95))
    return join(stem, half, mirrored(half, wide / 2.0))
