"""The small letters with bowls and arches: a b c d e f g h j m n o p q r t u, and i and l."""

from __future__ import annotations

from dataclasses import replace

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import rectangle
from heraldry.lettering.alphabets.gothic.diagonal import cross, double_vee, kay, vee, zed
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.gothic.round import s_shape
from heraldry.lettering.alphabets.ink import cut, join, mirrored, turned
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.signs.punctuation import POINT_OF_STEM, point
from heraldry.lettering.alphabets.small import (
    SPRING,
    bar_left,
    crest_end,
    hook_wide,
    shoulder,
    side_bowl,
    small,
    small_ring,
)

FAR = 2.0

# Height of the bar of e, of the bowl of a, and of t, in x-heights.
BAR_OF_E, BOWL_OF_A, TOP_OF_T = 0.525, 0.60, 1.27


@letter("a")
def draw_a(pen: Pen) -> Outline:
    """Two storeys: a bowl that leans on the stem, and a hook above."""
    pen, wide = small(pen), pen.wide("a")
    return join(pen.upright(wide - pen.stem, 0.0, pen.x_height * 0.6), hook_and_bowl(pen, wide))


def hook_and_bowl(pen: Pen, wide: float) -> Outline:
    """The a without its foot, as æ needs it too."""
    x = pen.x_height
    bowl = side_bowl(pen, wide, x * BOWL_OF_A)
    end = x - pen.crown - (x * (1.0 - BOWL_OF_A) - pen.crown) * 0.42
    hook = pen.arch(wide * 0.05, x * 0.45, wide, x + pen.over, (pen.side * pen.ending, pen.stem), ends=(end, None))
    return join(bowl, hook)


@letter("b")
def draw_b(pen: Pen) -> Outline:
    """d in a mirror."""
    wide = pen.wide("b")
    return mirrored(dee(small(pen), wide), wide / 2.0)


@letter("c")
def draw_c(pen: Pen) -> Outline:
    """A small ring opened at the right."""
    pen, wide = small(pen), pen.wide("c")
    x = pen.x_height
    low, high = x * 0.5 - pen.opening * 0.34, x * 0.5 + pen.opening * 0.37
    return cut(small_ring(pen, wide), rectangle(wide * 0.5, low, FAR, high))


@letter("d")
def draw_d(pen: Pen) -> Outline:
    """A bowl that leans on a tall stem."""
    return dee(small(pen), pen.wide("d"))


def dee(pen: Pen, wide: float) -> Outline:
    """d, and b in a mirror."""
    bowl = side_bowl(pen, wide, pen.x_height + pen.over)
    return join(bowl, pen.upright(wide - pen.stem, 0.0, pen.ascender))


@letter("e")
def draw_e(pen: Pen) -> Outline:
    """A ring with a bar, opened below it."""
    pen = small(pen)
    return ee(pen, pen.wide("e"))


def ee(pen: Pen, wide: float) -> Outline:
    """The e, as æ and œ need it too."""
    bar = pen.x_height * BAR_OF_E - pen.arm / 2.0
    low = bar - (bar - pen.crown) * (0.50 + 0.9 * (pen.opening - 0.36))
    right = pen.side * (1.0 + pen.ending) / 2.0
    ring = pen.bowl(0.0, -pen.over, wide, pen.x_height + pen.over, sides=(pen.side, right))
    opened = cut(ring, rectangle(wide * 0.5, low, FAR, bar))
    return join(opened, pen.level(pen.side / 2.0, wide - right / 2.0, bar, pen.arm * 0.94))


@letter("f")
def draw_f(pen: Pen) -> Outline:
    """A stem bent over to the right, with a bar on the x-line."""
    pen, wide = small(pen), hook_wide(pen, "f")
    left = bar_left(pen, wide)
    far = crest_end(pen, left, wide)
    arch = pen.arch(left, 0.0, far, pen.ascender + pen.over, (pen.stem, pen.stem))
    hook = cut(arch, rectangle(wide, -FAR, FAR, FAR))
    return join(hook, pen.level(0.0, wide * 0.95, pen.x_height - pen.arm))


@letter("g")
def draw_g(pen: Pen) -> Outline:
    """One storey: q with a hook to the left."""
    pen, wide = small(pen), pen.wide("g")
    x, low = pen.x_height, pen.descender
    bowl = side_bowl(pen, wide, x + pen.over)
    end = low + pen.crown + (-low - pen.crown) * 0.42
    return join(bowl, pen.cup(wide * 0.05, low - pen.over, wide, x, (pen.side, pen.stem), ends=(end, None)))


@letter("h")
def draw_h(pen: Pen) -> Outline:
    """n with a tall stem."""
    pen, wide = small(pen), pen.wide("h")
    return join(pen.upright(0.0, 0.0, pen.ascender), shoulder(pen, 0.0, wide))


@letter("ı", spaced_as="i")
def draw_dotless_i(pen: Pen) -> Outline:
    """The stem of i, which carries any mark."""
    pen = small(pen)
    return pen.upright(0.0, 0.0, pen.x_height)


@letter("i")
def draw_i(pen: Pen) -> Outline:
    """A stem and a point."""
    return join(draw_dotless_i(pen), dot(small(pen), 0.0))


def dot(pen: Pen, left: float) -> Outline:
    """The point over a small stem that stands at ``left``, its top on the ascenders' height."""
    size = pen.stem * POINT_OF_STEM
    return point(pen, left - (size - pen.stem) / 2.0, pen.ascender - size)


@letter("ȷ", spaced_as="j")
def draw_dotless_j(pen: Pen) -> Outline:
    """A stem with a hook below the base line."""
    pen = small(pen)
    wide = hook_wide(pen, "j")
    low = pen.descender - pen.over
    far = wide - crest_end(pen, 0.0, wide)
    cup = pen.cup(far, low, wide, pen.x_height, (pen.stem, pen.stem))
    return cut(cup, rectangle(-FAR, -FAR, 0.0, FAR))


@letter("j")
def draw_j(pen: Pen) -> Outline:
    """The hook and a point."""
    wide = hook_wide(small(pen), "j")
    return join(draw_dotless_j(pen), dot(small(pen), wide - small(pen).stem))


@letter("k")
def draw_k(pen: Pen) -> Outline:
    """K with a tall stem."""
    return kay(small(pen), pen.wide("k"), pen.ascender, pen.x_height)


@letter("l")
def draw_l(pen: Pen) -> Outline:
    """The tall stem."""
    return small(pen).upright(0.0, 0.0, pen.ascender)


@letter("m")
def draw_m(pen: Pen) -> Outline:
    """Two arches, a little narrower than that of n and their stems a little lighter."""
    pen, wide = small(pen), pen.wide("m")
    pen = replace(pen, stem=pen.stem * 0.97)
    middle = (wide + pen.stem) / 2.0
    stem = pen.upright(0.0, 0.0, pen.x_height)
    return join(stem, shoulder(pen, 0.0, middle), shoulder(pen, middle - pen.stem, wide))


@letter("n")
def draw_n(pen: Pen) -> Outline:
    """A stem and an arch."""
    pen, wide = small(pen), pen.wide("n")
    return join(pen.upright(0.0, 0.0, pen.x_height), shoulder(pen, 0.0, wide))


@letter("o")
def draw_o(pen: Pen) -> Outline:
    """The small ring."""
    return small_ring(small(pen), pen.wide("o"))


@letter("p")
def draw_p(pen: Pen) -> Outline:
    """q in a mirror."""
    wide = pen.wide("p")
    return mirrored(queue(small(pen), wide), wide / 2.0)


@letter("q")
def draw_q(pen: Pen) -> Outline:
    """A bowl that leans on a stem with a descender."""
    return queue(small(pen), pen.wide("q"))


def queue(pen: Pen, wide: float) -> Outline:
    """q, and p in a mirror."""
    bowl = side_bowl(pen, wide, pen.x_height + pen.over)
    return join(bowl, pen.upright(wide - pen.stem, pen.descender, pen.x_height))


@letter("r")
def draw_r(pen: Pen) -> Outline:
    """A stem and the beginning of an arch."""
    pen, wide = small(pen), hook_wide(pen, "r")
    arch = shoulder(pen, 0.0, crest_end(pen, pen.stem * SPRING, wide))
    return join(pen.upright(0.0, 0.0, pen.x_height), cut(arch, rectangle(wide, -FAR, FAR, FAR)))


@letter("s")
def draw_s(pen: Pen) -> Outline:
    """S at the height of x."""
    pen = small(pen)
    return s_shape(pen, pen.wide("s"), pen.x_height, pen.x_height * 0.518, 1.0)


@letter("t")
def draw_t(pen: Pen) -> Outline:
    """A stem bent to the right at its foot, with a bar on the x-line."""
    pen, wide = small(pen), hook_wide(pen, "t")
    left = bar_left(pen, wide)
    far = crest_end(pen, left, wide)
    cup = pen.cup(left, -pen.over, far, pen.x_height * TOP_OF_T, (pen.stem, pen.stem))
    foot = cut(cup, rectangle(wide, -FAR, FAR, FAR))
    return join(foot, pen.level(0.0, wide * 0.96, pen.x_height - pen.arm))


@letter("u")
def draw_u(pen: Pen) -> Outline:
    """n upside down."""
    wide = pen.wide("u")
    return turned(draw_n(replace(pen, widths={**pen.widths, "n": wide})), wide / 2.0, pen.x_height / 2.0)


@letter("v")
def draw_v(pen: Pen) -> Outline:
    """V at the height of x."""
    return vee(small(pen), pen.wide("v"), pen.x_height)


@letter("w")
def draw_w(pen: Pen) -> Outline:
    """W at the height of x."""
    return double_vee(small(pen), pen.wide("w"), pen.x_height)


@letter("x")
def draw_x(pen: Pen) -> Outline:
    """X at the height of x."""
    return cross(small(pen), pen.wide("x"), pen.x_height)


@letter("y")
def draw_y(pen: Pen) -> Outline:
    """v whose right stroke runs on below the base line."""
    pen, wide = small(pen), pen.wide("y")
    x, low = pen.x_height, pen.descender
    climb, fall = slope_width(wide / 2.0, x, pen.climb), slope_width(wide / 2.0, x, pen.fall)
    tip = (fall + climb) / 2.0 * pen.joint
    foot = (wide + tip) / 2.0
    lean = (wide - foot) / x
    left = pen.slope(foot - tip, tip, 0.0, fall, 0.0, x)
    return join(left, pen.slope(foot + lean * low - climb, climb, wide - climb, climb, low, x))


@letter("z")
def draw_z(pen: Pen) -> Outline:
    """Z at the height of x."""
    return zed(small(pen), pen.wide("z"), pen.x_height)
