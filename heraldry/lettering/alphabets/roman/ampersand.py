"""The ampersand of letters with serifs: that of the gothic, its arm ending in a serif."""

from __future__ import annotations

from dataclasses import replace

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.gothic.ampersand import ARM_END, ARM_LEAN, ARM_REACH, and_wide, arm_thick
from heraldry.lettering.alphabets.gothic.ampersand import draw_and as draw_bare_and
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.roman.letters import letter
from heraldry.lettering.alphabets.serifed.strokes import Flank, Reach, stroke

# The serif in serifs of stems, and at most in widths of the sign: the leg passes near.
SERIF_OF_AND, ROOM_FOR_SERIF = 0.8, 0.09

# So much of the arm is straight below its end: bracket and serif have to stand on it.
RULED = 0.15


@letter("&")
def draw_and(pen: Pen) -> Outline:
    """The bare sign with a serif on its arm."""
    right = and_wide(pen) * ARM_REACH
    thick, reach = arm_thick(pen), min(pen.serif.reach * SERIF_OF_AND, and_wide(pen) * ROOM_FOR_SERIF)
    near, far = (Flank(Point(x - ARM_LEAN * RULED, ARM_END - RULED), Point(x, ARM_END)) for x in (right - thick, right))
    short = replace(pen, serif=replace(pen.serif, bracket=min(pen.serif.bracket, RULED * 0.9 - pen.serif.thick)))
    return join(draw_bare_and(pen), stroke(short, near, far, heads=Reach(reach, reach)))
