"""The small letters with serifs: flags at the heads of their stems, full serifs at their feet."""

from __future__ import annotations

from dataclasses import replace

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import polygon, rectangle
from heraldry.lettering.alphabets.gothic.lower import TOP_OF_T, dot, hook_and_bowl
from heraldry.lettering.alphabets.hook_end import HookEnd, balls
from heraldry.lettering.alphabets.ink import cut, join, mirrored, moved, turned
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serifed.diagonal import cross, double_vee, vee, vee_fork, vee_serifs, zed
from heraldry.lettering.alphabets.serifed.forks import inset
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.round import ess
from heraldry.lettering.alphabets.serifed.strokes import Flank, Reach, limb, post, post_before
from heraldry.lettering.alphabets.serifed.terminals import FAR
from heraldry.lettering.alphabets.small import SPRING, bar_left, crest_end, shoulder, side_bowl, small

# A hooked stem and the white beside it, in stems: narrower, the hook would close on its ball.
LEAST_HOOK = 2.4

# The hooks of f, j and r end this far from their crest, in balls.
HOOK_OF_BALL = 0.66


def flag(pen: Pen) -> Reach:
    """The serif at the head of a small stem: on the left only."""
    return Reach(pen.serif.reach)


def full(pen: Pen, white: float | None = None) -> Reach:
    """The serif at a foot; its right side shares a white with the next stem's where there is one."""
    return Reach(pen.serif.reach, pen.serif.reach if white is None else min(pen.serif.reach, pen.serif.between(white)))


def hooked_wide(pen: Pen, character: str) -> float:
    """Width of a letter whose stem is bent over: wide enough that its hook stays open."""
    return max(pen.wide(character), pen.serif.natural + pen.stem * LEAST_HOOK)


@letter("a")
def draw_a(pen: Pen) -> Outline:
    """Two storeys: a bowl that leans on the stem, and a hook above; the foot reaches out to the right."""
    pen, wide = small(pen), pen.wide("a")
    right = wide - pen.serif.natural * 0.75
    stem = post_before(pen, right, 0.0, pen.x_height * 0.6, feet=Reach(0.0, pen.serif.reach * 0.75))
    return join(stem, hook_and_bowl(pen, right), *hook_ball(pen, right))


def hook_ball(pen: Pen, wide: float) -> list[Outline]:
    """The ball of a and æ."""
    x = pen.x_height
    end = x - pen.crown - (x * 0.40 - pen.crown) * 0.42
    return list(balls(pen, HookEnd(wide * 0.05, False, end)))


@letter("b")
def draw_b(pen: Pen) -> Outline:
    """A tall stem and a bowl."""
    pen, wide = small(pen), pen.wide("b")
    return join(post(pen, pen.serif.natural, 0.0, pen.ascender, heads=flag(pen)), right_bowl(pen, wide))


def right_bowl(pen: Pen, wide: float) -> Outline:
    """A bowl that leans on a stem at its left, behind that stem's serif."""
    room = wide - pen.serif.natural
    return moved(mirrored(side_bowl(pen, room, pen.x_height + pen.over), room / 2.0), pen.serif.natural)


@letter("c")
def draw_c(pen: Pen) -> Outline:
    """A small round opened at the right."""
    pen, wide = small(pen), pen.wide("c")
    x = pen.x_height
    low, high = x * 0.5 - pen.opening * 0.34, x * 0.5 + pen.opening * 0.40
    whole = pen.bowl(0.0, -pen.over, wide, x + pen.over, sides=(pen.side, pen.side * pen.ending))
    return join(cut(whole, rectangle(wide * 0.5, low, FAR, high)), *balls(pen, HookEnd(wide, True, high)))


@letter("d")
def draw_d(pen: Pen) -> Outline:
    """A bowl that leans on a tall stem."""
    pen, wide = small(pen), pen.wide("d")
    right = wide - pen.serif.natural
    stem = post_before(pen, right, 0.0, pen.ascender, Reach(0.0, pen.serif.reach), flag(pen))
    return join(side_bowl(pen, right, pen.x_height + pen.over), stem)


@letter("f")
def draw_f(pen: Pen) -> Outline:
    """A stem bent over to the right, with a bar on the x-line."""
    pen, wide = small(pen), hooked_wide(small(pen), "f")
    left, top = pen.serif.natural, pen.ascender + pen.over
    bar = pen.level(left - bar_left(pen, wide - left), max(wide * 0.9, left + pen.stem * 1.5), pen.x_height - pen.arm)
    stem = post(pen, left, 0.0, pen.x_height, full(pen))
    if pen.serif.ball <= 0.0:
        arch = pen.arch(left, 0.4, crest_end(pen, left, wide), top, (pen.stem, pen.stem))
        return join(stem, cut(arch, rectangle(wide, -FAR, FAR, FAR)), bar)
    end = top - pen.serif.ball * HOOK_OF_BALL
    hook = pen.arch(left, 0.4, wide, top, (pen.stem, pen.side * pen.ending), ends=(None, end))
    return join(stem, hook, bar, *balls(pen, HookEnd(wide, True, end)))


@letter("g")
def draw_g(pen: Pen) -> Outline:
    """One storey: a bowl, and a stem with a hook to the left."""
    pen, wide = small(pen), pen.wide("g")
    x, low = pen.x_height, pen.descender
    end = low + pen.crown + (-low - pen.crown) * 0.42
    hook = pen.cup(wide * 0.05, low - pen.over, wide, x, (pen.side * pen.ending, pen.stem), ends=(end, None))
    return join(side_bowl(pen, wide, x + pen.over), hook, *balls(pen, HookEnd(wide * 0.05, False, end)))


def arched(pen: Pen, wide: float, top: float, feet: int = 2) -> Outline:
    """A stem and an arch: n, and h with a tall stem; the right stem may go without its foot."""
    left, right = pen.serif.natural, wide - pen.serif.natural
    inner = full(pen, right - left - 2.0 * pen.stem).right
    first = post(pen, left, 0.0, top, Reach(pen.serif.reach, inner), flag(pen))
    if feet == 1:
        return join(first, shoulder(pen, left, right))
    last = post_before(pen, right, 0.0, pen.x_height * 0.4, Reach(inner, pen.serif.reach))
    return join(first, shoulder(pen, left, right), last)


@letter("h")
def draw_h(pen: Pen) -> Outline:
    """n with a tall stem."""
    return arched(small(pen), pen.wide("h"), pen.ascender)


@letter("ı", spaced_as="i")
def draw_dotless_i(pen: Pen) -> Outline:
    """The stem of i, which carries any mark."""
    pen = small(pen)
    return post(pen, pen.serif.natural, 0.0, pen.x_height, full(pen), flag(pen))


@letter("i")
def draw_i(pen: Pen) -> Outline:
    """A stem and a point."""
    return join(draw_dotless_i(pen), dot(small(pen), small(pen).serif.natural))


@letter("ȷ", spaced_as="j")
def draw_dotless_j(pen: Pen) -> Outline:
    """A stem with a hook below the base line."""
    pen = small(pen)
    right, low = jay_right(pen), pen.descender - pen.over
    head = post_before(pen, right, 0.2, pen.x_height, heads=flag(pen))
    if pen.serif.ball <= 0.0:
        far = right - crest_end(pen, 0.0, right)
        return join(head, cut(pen.cup(far, low, right, 0.5, (pen.stem, pen.stem)), rectangle(-FAR, -FAR, 0.0, FAR)))
    end = low + pen.serif.ball * HOOK_OF_BALL
    hook = pen.cup(0.0, low, right, 0.5, (pen.side * pen.ending, pen.stem), ends=(end, None))
    return join(head, hook, *balls(pen, HookEnd(0.0, False, end)))


def jay_right(pen: Pen) -> float:
    """The right of the stem of j, where its hook begins at 0."""
    return max(pen.wide("j"), pen.stem * LEAST_HOOK)


@letter("j")
def draw_j(pen: Pen) -> Outline:
    """The hook and a point."""
    thin = small(pen)
    return join(draw_dotless_j(pen), dot(thin, jay_right(thin) - thin.stem))


@letter("l")
def draw_l(pen: Pen) -> Outline:
    """The tall stem."""
    pen = small(pen)
    return post(pen, pen.serif.natural, 0.0, pen.ascender, full(pen), flag(pen))


@letter("m")
def draw_m(pen: Pen) -> Outline:
    """Two arches, their stems a little lighter."""
    pen, wide = small(pen), pen.wide("m")
    pen = replace(pen, stem=pen.stem * 0.97)
    left, right = pen.serif.natural, wide - pen.serif.natural
    middle = (left + right + pen.stem) / 2.0
    inner = full(pen, middle - left - 2.0 * pen.stem).right
    x, reach, low = pen.x_height, pen.serif.reach, pen.x_height * 0.4
    stems = (
        post(pen, left, 0.0, x, Reach(reach, inner), flag(pen)),
        post_before(pen, middle, 0.0, low, Reach(inner, inner)),
        post_before(pen, right, 0.0, low, Reach(inner, reach)),
    )
    return join(*stems, shoulder(pen, left, middle), shoulder(pen, middle - pen.stem, right))


@letter("n")
def draw_n(pen: Pen) -> Outline:
    """A stem and an arch."""
    return arched(small(pen), pen.wide("n"), pen.x_height)


@letter("p")
def draw_p(pen: Pen) -> Outline:
    """A stem with a descender and a bowl."""
    pen, wide = small(pen), pen.wide("p")
    return join(post(pen, pen.serif.natural, pen.descender, pen.x_height, full(pen), flag(pen)), right_bowl(pen, wide))


@letter("q")
def draw_q(pen: Pen) -> Outline:
    """A bowl that leans on a stem with a descender."""
    pen, wide = small(pen), pen.wide("q")
    right = wide - pen.serif.natural
    stem = post_before(pen, right, pen.descender, pen.x_height, full(pen))
    return join(side_bowl(pen, right, pen.x_height + pen.over), stem)


@letter("r")
def draw_r(pen: Pen) -> Outline:
    """A stem and the beginning of an arch."""
    pen, wide = small(pen), hooked_wide(small(pen), "r")
    left, top = pen.serif.natural, pen.x_height + pen.over
    stem = post(pen, left, 0.0, pen.x_height, full(pen), flag(pen))
    if pen.serif.ball <= 0.0:
        arch = shoulder(pen, left, crest_end(pen, left + pen.stem * SPRING, wide))
        return join(stem, cut(arch, rectangle(wide, -FAR, FAR, FAR)))
    end, spring = top - pen.serif.ball * HOOK_OF_BALL, pen.stem * SPRING
    sides = (pen.stem - spring, pen.side * pen.ending)
    hook = pen.arch(left + spring, 0.1, wide, top, sides, ends=(None, end))
    return join(stem, hook, *balls(pen, HookEnd(wide, True, end)))


@letter("s")
def draw_s(pen: Pen) -> Outline:
    """S at the height of x."""
    return ess(small(pen), pen.wide("s"), pen.x_height, pen.x_height * 0.518)


@letter("t")
def draw_t(pen: Pen) -> Outline:
    """A stem bent to the right at its foot, with a bar on the x-line."""
    pen, wide = small(pen), max(pen.wide("t"), small(pen).stem * LEAST_HOOK)
    left = bar_left(pen, wide)
    cup = pen.cup(left, -pen.over, crest_end(pen, left, wide), pen.x_height * TOP_OF_T, (pen.stem, pen.stem))
    top = pen.x_height * TOP_OF_T
    slanted = polygon(
        (left - FAR, top), (left, top - pen.stem), (left + pen.stem, top), (left + pen.stem, FAR), (left - FAR, FAR)
    )
    foot = cut(cup, rectangle(wide, -FAR, FAR, FAR), *([slanted] if pen.serif.ball else []))
    return join(foot, pen.level(0.0, wide * 0.96, pen.x_height - pen.arm))


@letter("u")
def draw_u(pen: Pen) -> Outline:
    """Two stems with flags, joined below; the right one stands on a foot."""
    pen, wide = small(pen), pen.wide("u")
    left, right, x = pen.serif.natural, wide - pen.serif.natural, pen.x_height
    inner = full(pen, right - left - 2.0 * pen.stem).right
    joined = turned(shoulder(pen, left, right), (left + right) / 2.0, x / 2.0)
    first = post(pen, left, x * 0.6, x, heads=flag(pen))
    return join(first, joined, post_before(pen, right, 0.0, x, Reach(0.0, pen.serif.reach), Reach(inner)))


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
    """v whose thin stroke runs on below the base line, to a ball where the pen has them."""
    pen, wide = small(pen), pen.wide("y")
    x, low, edge = pen.x_height, pen.descender, inset(pen)
    whole = vee_fork(pen, wide, x)
    climb = slope_width(wide / 2.0 - edge, x, pen.climb)
    end = low + pen.serif.ball * 0.35
    reach_down = (x - end) / x * (wide - edge - whole.middle - whole.tip / 2.0)
    outer = Flank(Point(wide - edge - reach_down, end), Point(wide - edge, x))
    inner = Flank(Point(outer.foot.x - climb, end), Point(outer.head.x - climb, x))
    serifs = vee_serifs(pen, wide, x)
    left = whole.limbs(pen, serifs)[0]
    right = limb(pen, inner, outer, [outer.foot, inner.foot], serifs[1], down=True)
    return join(
        left, right, *balls(pen, HookEnd(inner.foot.x - pen.serif.ball * 0.62, False, low + pen.serif.ball / 2.0))
    )


@letter("z")
def draw_z(pen: Pen) -> Outline:
    """Z at the height of x."""
    return zed(small(pen), pen.wide("z"), pen.x_height)
