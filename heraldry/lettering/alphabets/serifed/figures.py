"""The figures, as high as the capitals: 1 2 3 4 5 6 7 9, their hooks ending in balls where the pen has them.

0 and 8 are rings and nothing else, as in the gothic.
"""

from __future__ import annotations

import math

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import polygon
from heraldry.lettering.alphabets.gothic.figures import WAIST_OF_3, end_of_6, five, neck_of_2, side, six, two
from heraldry.lettering.alphabets.hook_end import HookEnd, balls
from heraldry.lettering.alphabets.ink import join, mirrored, turned
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.serif import LEAST_GAP
from heraldry.lettering.alphabets.serifed.letters import letter
from heraldry.lettering.alphabets.serifed.strokes import Reach, arm, post

# Serifs of figures in those of capitals: they have less room.
FIGURE_SERIF = 0.82

# The foot of 1 is as wide as the letter, but no longer than this, in serifs.
LONGEST_OF_1 = 1.45

# Where the flag of 1 ends.
FOOT_OF_FLAG = 0.76

# Thickness of the bars of 5 and 7 in stems, at least: thinner, they would leave their corner empty.
BAR_OF_STEM = 0.42


@letter("1")
def draw_1(pen: Pen) -> Outline:
    """A stem with a flag, on a serif."""
    wide, stem = pen.wide("1"), pen.stem
    left = (wide - stem) / 2.0
    serif = min(left * pen.serif.reach / pen.serif.natural, pen.serif.reach * LONGEST_OF_1)
    tip, inside, low = left * 0.05, left + stem / 2.0, FOOT_OF_FLAG
    flag = polygon(
        (tip, low), (left, low + 0.095), (inside, low + 0.095), (inside, 1.0), (left, 1.0),
        (tip, low + max(pen.arm * 0.9, stem * 0.36)),
    )  # fmt: skip
    return join(post(pen, left, feet=Reach(serif, serif)), flag)


@letter("2")
def draw_2(pen: Pen) -> Outline:
    """A hook whose neck runs down to a foot with a beak."""
    wide = pen.wide("2")
    _, _, above, below = neck_of_2(pen, wide * 0.975)
    free = wide - pen.serif.tip - pen.serif.flare - LEAST_GAP - below.x
    room = pen.arm + free * (above.y - below.y) / (above.x - below.x)
    foot = arm(pen, wide * 0.3, wide, 0.0, 1.0, min(max(pen.serif.beak * 0.9, pen.arm * 1.6), room))
    end = 0.5 + pen.opening * 0.5
    return join(two(pen, wide, wide * 0.8), foot, *balls(pen, HookEnd(wide * 0.02, False, end)))


@letter("3")
def draw_3(pen: Pen) -> Outline:
    """Two bowls opened at the left; the bar of the waist reaches half way in."""
    wide, half, over, thick = pen.wide("3"), pen.crown / 2.0, pen.over, side(pen)
    right, bar = wide * (1.0 - pen.standing_back * 0.7), wide * 0.33
    clear = half + pen.serif.ball / 2.0 + LEAST_GAP
    low, high = min(0.5 - pen.opening * 0.62, WAIST_OF_3 - clear), max(0.5 + pen.opening * 0.62, WAIST_OF_3 + clear)
    upper = pen.hook(wide * 0.03, right, 1.0 + over, WAIST_OF_3 - half, bar, high, thick)
    lower = pen.hook(0.0, wide, -over, WAIST_OF_3 + half, bar, low, thick)
    return join(upper, lower, *balls(pen, HookEnd(wide * 0.03, False, high), HookEnd(0.0, False, low)))


@letter("4")
def draw_4(pen: Pen) -> Outline:
    """The thin diagonal rises from the bar to the top of the stem, which stands on a serif."""
    wide, stem, low = pen.wide("4"), pen.stem, 0.24
    serif = pen.serif.reach * FIGURE_SERIF
    left, high = wide * 0.88 - stem, low + pen.arm
    lean = (left + stem) / (1.0 - high)
    across = pen.climb * 0.96 * math.hypot(1.0, lean * 0.8)
    head = left + stem - across
    diagonal = polygon((0.0, low), (across, low), (across, high), (left + stem, 1.0), (head, 1.0), (0.0, high))
    return join(post(pen, left, feet=Reach(serif, serif)), pen.level(0.0, wide, low), diagonal)


@letter("5")
def draw_5(pen: Pen) -> Outline:
    """A bar, a thin stem, and a bowl opened at the left."""
    wide = pen.wide("5")
    body = five(pen, wide, min(pen.hair, pen.stem * 0.94), max(pen.arm, pen.stem * BAR_OF_STEM))
    return join(body, *balls(pen, HookEnd(0.0, False, 0.5 - pen.opening * 0.67)))


@letter("6")
def draw_6(pen: Pen) -> Outline:
    """A ring with a hook over it that shares its left side."""
    return six_with_ball(pen, pen.wide("6"))


def six_with_ball(pen: Pen, wide: float) -> Outline:
    """6, and 9 upside down."""
    return join(six(pen, wide), *balls(pen, HookEnd(wide * 0.975, True, end_of_6(pen))))


@letter("7")
def draw_7(pen: Pen) -> Outline:
    """A bar with a beak, and a stroke that falls from its end, thickening."""
    wide, bar = pen.wide("7"), max(pen.arm, pen.stem * BAR_OF_STEM)
    foot, thin = wide * 0.20, max(pen.climb, pen.stem * 0.5)
    below, above = slope_width(wide - foot, 1.0, pen.stem * 1.02), slope_width(wide - foot, 1.0, thin)
    falling = polygon((foot, 0.0), (foot + below, 0.0), (wide, 1.0), (wide - above, 1.0))
    left, slant = wide * 0.05 + pen.serif.tip * 0.5, (wide - foot - below) * bar
    roof = polygon((left, 1.0 - bar), (wide - slant, 1.0 - bar), (wide, 1.0), (left, 1.0))
    beak = mirrored(arm(pen, wide * 0.5, wide, 1.0, -1.0, max(pen.serif.beak, bar * 1.6)), wide / 2.0)
    return join(falling, beak, roof)


@letter("9")
def draw_9(pen: Pen) -> Outline:
    """6 upside down."""
    wide = pen.wide("9")
    return turned(six_with_ball(pen, wide), wide / 2.0, 0.5)
