"""Letters made of two, and those with a shape of their own: Æ Œ Þ Ŋ ß ð and their small ones."""

from __future__ import annotations

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import polygon, rectangle
from heraldry.lettering.alphabets.gothic.diagonal import BAR_OF_A
from heraldry.lettering.alphabets.gothic.letters import GOTHIC, letter
from heraldry.lettering.alphabets.gothic.lower import ee, hook_and_bowl, queue
from heraldry.lettering.alphabets.gothic.straight import BAR_OF_E
from heraldry.lettering.alphabets.ink import cut, join, mirrored, moved
from heraldry.lettering.alphabets.pen import RIGHT, Pen, slope_width
from heraldry.lettering.alphabets.small import small, small_ring

FAR = 2.0


@letter("Æ")
def draw_ae(pen: Pen) -> Outline:
    """The leg of A leans on the stem of E."""
    wide, arm = pen.wide("Æ"), pen.arm
    stem = wide * 0.50
    lean = slope_width(stem + pen.stem * 0.4, 1.0, pen.climb)
    leg = pen.slope(0.0, lean, stem + pen.stem * 0.4 - lean * pen.joint, lean * pen.joint)
    inset = (stem - lean * 0.6) * BAR_OF_A + lean / 2.0
    arms = (
        pen.level(stem + pen.stem * 0.4 - lean, wide * 0.985, 1.0 - arm),
        pen.level(stem, wide * 0.96, BAR_OF_E - arm / 2.0),
        pen.level(stem, wide, 0.0),
    )
    return join(leg, pen.upright(stem), pen.level(inset, stem, BAR_OF_A - arm / 2.0), *arms)


@letter("Œ")
def draw_oe(pen: Pen) -> Outline:
    """The left of O and the arms of E."""
    wide, arm, over = pen.wide("Œ"), pen.arm, pen.over
    stem = wide * 0.52
    left = pen.bowl(0.0, -over, stem + pen.stem + wide * 0.18, 1.0 + over)
    half = cut(left, rectangle(stem + pen.stem / 2.0, -FAR, FAR, FAR))
    arms = (
        pen.level(stem, wide * 0.98, 1.0 - arm),
        pen.level(stem, wide * 0.955, BAR_OF_E - arm / 2.0),
        pen.level(stem, wide, 0.0),
    )
    return join(half, pen.upright(stem), *arms)


@letter("Þ")
def draw_thorn(pen: Pen) -> Outline:
    """A bowl in the middle of a stem."""
    levels = (pen.arm, pen.arm)
    return join(pen.upright(0.0), pen.bowl(0.0, 0.185, pen.wide("Þ"), 0.795, RIGHT, (pen.stem, pen.side), levels))


@letter("æ")
def draw_small_ae(pen: Pen) -> Outline:
    """a and e that share a side."""
    pen, wide = small(pen), pen.wide("æ")
    half = (wide + pen.side) / 2.0
    between = rectangle(half - pen.side * 0.9, pen.crown * 0.6, half - pen.side * 0.1, pen.x_height * 0.5)
    return join(hook_and_bowl(pen, half), moved(ee(pen, half), wide - half), between)


@letter("œ")
def draw_small_oe(pen: Pen) -> Outline:
    """o and e that share a side."""
    pen, wide = small(pen), pen.wide("œ")
    half = (wide + pen.side) / 2.0
    return join(small_ring(pen, half), moved(ee(pen, half), wide - half))


@letter("þ")
def draw_small_thorn(pen: Pen) -> Outline:
    """p with a tall stem."""
    pen, wide = small(pen), pen.wide("þ")
    return join(mirrored(queue(pen, wide), wide / 2.0), pen.upright(0.0, 0.0, pen.ascender))


@letter("ð")
def draw_small_eth(pen: Pen) -> Outline:
    """A ring whose right side runs on, leaning to the left, with a bar across it."""
    pen, wide = small(pen), pen.wide("ð")
    x = pen.x_height
    top = x * 0.93
    foot = top - pen.crown if pen.corner == "square" else x * 0.60
    neck = pen.slope(wide - pen.side * 1.02, pen.side, wide * 0.30, pen.side * 1.05, foot, pen.ascender)
    thin = min(pen.arm * 0.7, 0.09)
    middle = (x + pen.ascender) / 2.0 + 0.01
    bar = polygon(
        (wide * 0.22, middle - 0.06 - thin / 2), (wide * 0.86, middle + 0.06 - thin / 2),
        (wide * 0.86, middle + 0.06 + thin / 2), (wide * 0.22, middle - 0.06 + thin / 2),
    )  # fmt: skip
    return join(pen.bowl(0.0, -pen.over, wide, top), neck, bar)


@letter("ß")
def draw_sharp_s(pen: Pen) -> Outline:
    """A tall stem bent over into two bowls, the lower one open as far as the upper one is ruled straight."""
    pen, wide = small(pen), pen.wide("ß")
    waist, half = 0.535, pen.crown / 2.0
    upper = pen.bowl(0.0, waist - half, wide * 0.93, pen.ascender + pen.over, "tl tr br", (pen.stem, pen.side))
    lower = pen.bowl(0.0, -pen.over, wide, waist + half, "tr br", (pen.stem, pen.side))
    gap = min(max(wide * 0.44, pen.stem * 1.45), (wide * 0.93 + pen.stem - pen.side) / 2.0)
    opened = cut(join(upper, lower), rectangle(pen.stem, -FAR, gap, waist + half))
    return join(cut(opened, rectangle(-FAR, -FAR, pen.stem, 0.6)), pen.upright(0.0, 0.0, 0.65))


@letter("Ŋ", spaced_as="N")
def draw_eng(pen: Pen) -> Outline:
    """N whose right stem runs into a hook below the base line."""
    return tailed(pen, GOTHIC["N"].draw(pen), pen.wide("N"))


@letter("ŋ", spaced_as="n")
def draw_small_eng(pen: Pen) -> Outline:
    """n with the hook of g."""
    return tailed(small(pen), GOTHIC["n"].draw(pen), pen.wide("n"))


def tailed(pen: Pen, bare: Outline, wide: float) -> Outline:
    """A letter whose right stem is led down and bent to the left."""
    low = pen.descender - pen.over
    cup = pen.cup(wide - pen.stem * 2.9, low, wide, 0.1, (pen.stem, pen.stem))
    return join(bare, cut(cup, rectangle(-FAR, -FAR, wide - pen.stem * 1.75, FAR)))
