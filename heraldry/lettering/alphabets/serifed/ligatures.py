"""Letters made of two, and those with a shape of their own: Æ Œ Þ Ŋ ß ð and their small ones."""

from __future__ import annotations

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import polygon, rectangle
from heraldry.lettering.alphabets.gothic.lower import ee, hook_and_bowl
from heraldry.lettering.alphabets.hook_end import HookEnd, balls
from heraldry.lettering.alphabets.ink import cut, join, moved
from heraldry.lettering.alphabets.pen import RIGHT, Pen, slope_width
from heraldry.lettering.alphabets.serifed.diagonal import bar_of_a, draw_n
from heraldry.lettering.alphabets.serifed.forks import LEANING_SERIF, inset
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.lower import arched, flag, full, hook_ball, right_bowl
from heraldry.lettering.alphabets.serifed.straight import BAR_OF_E, MIDDLE_BEAK
from heraldry.lettering.alphabets.serifed.strokes import Reach, arm, both, middle_arm, post
from heraldry.lettering.alphabets.serifed.terminals import FAR
from heraldry.lettering.alphabets.small import small


def arms_of_e(pen: Pen, left: float, wide: float) -> tuple[Outline, Outline, Outline]:
    """The three arms of the E in Æ and Œ."""
    beak = pen.serif.beak
    middle = middle_arm(pen, left, left + (wide - left) * 0.78, BAR_OF_E, beak * MIDDLE_BEAK)
    return arm(pen, left, wide * 0.98, 1.0, -1.0), middle, arm(pen, left, wide, 0.0, 1.0, beak * 1.08)


@letter("Æ")
def draw_ae(pen: Pen) -> Outline:
    """The thin leg of A leans on the stem of E."""
    wide, edge, reach = pen.wide("Æ"), inset(pen), pen.serif.reach
    stem = wide * 0.50
    top = stem + pen.stem * 0.5
    lean = slope_width(top - edge, 1.0, pen.climb)
    leg = pen.slope(edge, lean, top - lean, lean)
    gap = pen.serif.between(stem - edge - lean)
    serif = rectangle(edge - reach * LEANING_SERIF, 0.0, edge + lean + gap, pen.serif.thick)
    inside = (top - lean - edge) * bar_of_a(pen) + edge + lean / 2.0
    bar = pen.level(inside, stem + pen.stem / 2.0, bar_of_a(pen) - pen.arm / 2.0)
    upright = post(pen, stem, feet=Reach(gap))
    return join(leg, serif, upright, bar, *arms_of_e(pen, stem + pen.stem / 2.0, wide))


@letter("Œ")
def draw_oe(pen: Pen) -> Outline:
    """The left of O and the arms of E."""
    wide, over = pen.wide("Œ"), pen.over
    stem = wide * 0.50
    left = pen.bowl(0.0, -over, stem + pen.stem + wide * 0.18, 1.0 + over)
    half = cut(left, rectangle(stem + pen.stem / 2.0, -FAR, FAR, FAR))
    return join(half, pen.upright(stem), *arms_of_e(pen, stem + pen.stem / 2.0, wide))


@letter("Þ")
def draw_thorn(pen: Pen) -> Outline:
    """A bowl in the middle of a stem."""
    left, levels = pen.serif.natural, (pen.arm, pen.arm)
    bowl = pen.bowl(left, 0.185, pen.wide("Þ"), 0.795, RIGHT, (pen.stem, pen.side), levels)
    return join(post(pen, left, feet=both(pen), heads=both(pen)), bowl)


@letter("þ")
def draw_small_thorn(pen: Pen) -> Outline:
    """p with a tall stem."""
    pen, wide = small(pen), pen.wide("þ")
    return join(post(pen, pen.serif.natural, pen.descender, pen.ascender, full(pen), flag(pen)), right_bowl(pen, wide))


@letter("æ")
def draw_small_ae(pen: Pen) -> Outline:
    """a and e that share a side."""
    pen, wide = small(pen), pen.wide("æ")
    half = (wide + pen.side) / 2.0
    between = rectangle(half - pen.side * 0.9, pen.crown * 0.6, half - pen.side * 0.1, pen.x_height * 0.5)
    return join(hook_and_bowl(pen, half), moved(ee(pen, half), wide - half), between, *hook_ball(pen, half))


@letter("ß")
def draw_sharp_s(pen: Pen) -> Outline:
    """A tall stem bent over into two bowls, the lower one open as far as the upper one is ruled straight."""
    pen, wide = small(pen), pen.wide("ß")
    left, waist, half = pen.serif.natural, 0.535, pen.crown / 2.0
    sides = (pen.stem, pen.side)
    upper = pen.bowl(left, waist - half, wide * 0.95, pen.ascender + pen.over, "tl tr br", sides)
    lower = pen.bowl(left, -pen.over, wide, waist + half, "tr br", sides)
    bent_from = (left + wide * 0.95 + pen.stem - pen.side) / 2.0
    gap = min(left + max((wide - left) * 0.44, pen.stem * 1.45), bent_from)
    opened = cut(join(upper, lower), rectangle(left + pen.stem, -FAR, gap, waist + half))
    foot = post(pen, left, 0.0, 0.65, feet=Reach(pen.serif.reach, pen.serif.between(gap - left - pen.stem)))
    return join(cut(opened, rectangle(-FAR, -FAR, left + pen.stem, 0.6)), foot)


@letter("Ŋ", spaced_as="N")
def draw_eng(pen: Pen) -> Outline:
    """N whose right stem runs into a hook below the base line."""
    right = pen.wide("N") - pen.serif.natural
    return tailed(pen, draw_n(pen), right, pen.hair)


@letter("ŋ", spaced_as="n")
def draw_small_eng(pen: Pen) -> Outline:
    """n with a hook below the base line."""
    thin = small(pen)
    return tailed(
        thin, arched(thin, pen.wide("n"), pen.x_height, feet=1), pen.wide("n") - thin.serif.natural, thin.stem
    )


def tailed(pen: Pen, bare: Outline, right: float, thick: float) -> Outline:
    """A letter whose right stem is led down and bent to the left."""
    low, end = pen.descender - pen.over, pen.descender * 0.45
    left = right - max(pen.stem * 2.6, 0.36)
    hook = pen.cup(left, low, right, 0.1, (pen.side * pen.ending, thick), ends=(end, None))
    return join(bare, hook, *balls(pen, HookEnd(left, False, end)))


@letter("ð")
def draw_small_eth(pen: Pen) -> Outline:
    """A ring whose right side runs on, leaning to the left, with a bar across it."""
    pen, wide = small(pen), pen.wide("ð")
    x = pen.x_height
    neck = pen.slope(wide - pen.side * 1.06, pen.side, wide * 0.30, pen.side * 1.05, x * 0.52, pen.ascender)
    thin, middle = min(max(pen.arm * 0.7, pen.stem * 0.36), 0.09), (x + pen.ascender) / 2.0 + 0.01
    bar = polygon(
        (wide * 0.22, middle - 0.06 - thin / 2), (wide * 0.86, middle + 0.06 - thin / 2),
        (wide * 0.86, middle + 0.06 + thin / 2), (wide * 0.22, middle - 0.06 + thin / 2),
    )  # fmt: skip
    return join(pen.bowl(0.0, -pen.over, wide, x * 0.93), neck, bar)
