"""The ampersand: a figure eight that does not close, since its arm rises across the leg that closes its loop.

It is one contour (loop, crossing stroke, bowl, arm) and one stroke (the leg). All of it is drawn lighter than
the letters, the more so the heavier they are: five strokes stand where a letter has three.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import INNER_TENSION, Bend, Knot, bent
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.ink import join
from heraldry.lettering.alphabets.pen import Pen, slope_width

# Thickness of the ampersand's strokes in those of the letters: 1 minus this much of the stem.
LIGHTER_BY_STEM = 0.55

# Height of the crossing's middle, of the arm's end, and of the corner in which the leg leaves the loop.
WAIST, ARM_END, LEG_CORNER = 0.555, 0.45, 0.66

# How far loop and leg overlap where the leg takes over, and how much of the leg its bend takes.
OVERLAP, BEND_OF_LEG = 0.01, 0.26

# Width of the bowl if it closed, and how far the arm reaches, in widths of the sign.
BOWL_WIDE, ARM_REACH = 0.76, 0.945

# The ampersand is at least this wide, in stems.
LEAST_WIDE = 3.75

# How far the arm leans for each unit of its rise.
ARM_LEAN = 0.30


@dataclass(frozen=True)
class _Frame:
    """The ruled lines of one ampersand.

    ``side`` and ``loop`` are the thicknesses of the bowl's and the loop's sides, ``rising`` that of the stroke
    that crosses, ``fall`` that of the leg.
    """

    pen: Pen
    wide: float
    side: float
    loop: float
    crown: float
    rising: float
    fall: float
    left: float
    right: float

    @property
    def top(self) -> float:
        return 1.0 + self.pen.over

    @property
    def foot(self) -> float:
        return -self.pen.over

    @property
    def leg_across(self) -> float:
        """Level width of the leg."""
        return slope_width(self.wide - self.left, LEG_CORNER, self.fall)

    @property
    def inner_corner(self) -> float:
        """Height at which the leg's inner edge, ruled straight, leaves the loop."""
        run = self.wide - self.leg_across - self.left
        return LEG_CORNER / run * (self.wide - self.left - self.loop)

    @property
    def turn(self) -> float:
        """Height at which the leg takes over from the loop: both bends of the eye are then alike."""
        return (self.top - self.crown + max(self.inner_corner, LEG_CORNER)) / 2.0

    @property
    def steepness(self) -> float:
        """Rise of the crossing stroke for each unit of run."""
        return 0.40 / (self.right - self.side)

    def edge(self, x: float, sense: float) -> float:
        """Height of the crossing stroke's lower (−1) or upper (+1) edge at ``x``."""
        half = self.rising * math.hypot(1.0, self.steepness) / 2.0
        return WAIST + (x - self.right / 2.0) * self.steepness + sense * half


def and_wide(pen: Pen) -> float:
    """Width of the ampersand: wide enough that its eye stays open."""
    return max(pen.wide("&"), pen.stem * LEAST_WIDE)


@letter("&")
def draw_and(pen: Pen) -> Outline:
    """Loop, bowl and arm in one, and the leg."""
    wide, lighter = and_wide(pen), 1.0 - LIGHTER_BY_STEM * pen.stem
    side, loop = pen.side * lighter, pen.side * lighter * pen.loop_of_and
    rising = pen.stem * lighter * pen.rising_of_and
    frame = _Frame(pen, wide, side, loop, pen.crown * lighter, rising, pen.fall * lighter, wide * 0.11, wide * 0.665)
    return join(_loop_and_bowl(frame), _leg(frame))


def _bends(frame: _Frame, width: float, height: float, inner: bool) -> Bend:
    """The bend of the loop (both sides round) or of the bowl, outside or inside."""
    pen = frame.pen
    if pen.corner == "round":
        return Bend(width / 2.0, height / 2.0, INNER_TENSION) if inner else Bend(width / 2.0, height / 2.0)
    outer = pen.bend(width + 2.0 * frame.side * inner, height + frame.crown * inner)
    return pen.inner_bend(outer, frame.side, frame.crown) if inner else outer


def _into_crossing(frame: _Frame, bend: Bend, edge: float) -> tuple[float, float]:
    """Reach of the bend between an upright ``edge`` and the crossing stroke: before it, along it."""
    run = frame.right - frame.side
    half = run * math.hypot(1.0, frame.steepness) / 2.0
    if frame.pen.corner == "round":
        return edge - bend.along, half
    return min(bend.along, edge - bend.along) * 0.6, min(bend.along * 0.6, half)


def _to_turn(frame: _Frame, bend: Bend, top: float) -> Bend:
    """The loop's bend on the left, where the leg takes over."""
    return replace(bend, along=min(bend.along, top - frame.turn)) if frame.pen.corner == "round" else bend


def _loop_and_bowl(frame: _Frame) -> Outline:
    return Outline.of([bent((*_lower_edge(frame), *_upper_edge(frame)), frame.pen.corner)])


def arm_thick(pen: Pen) -> float:
    """Level width of the arm."""
    side = pen.side * (1.0 - LIGHTER_BY_STEM * pen.stem)
    return side * 1.03 * pen.rising_of_and * math.hypot(1.0, ARM_LEAN)


def _lower_edge(frame: _Frame) -> tuple[Knot, ...]:
    """Outside the loop, along the crossing stroke's lower edge, inside the bowl and up the arm."""
    left, right, side, top, floor = frame.left, frame.right, frame.side, frame.top, frame.foot + frame.crown
    above, below = frame.edge(right, -1.0), frame.edge(side, -1.0)
    loop = _bends(frame, right - left, top - above, False)
    well = _bends(frame, frame.wide * BOWL_WIDE - 2 * side, below - floor, True)
    reach, arm = frame.wide * ARM_REACH, arm_thick(frame.pen)
    heel = reach - arm - ARM_LEAN * (ARM_END - floor)
    bend = (heel - side - well.across, 0.18) if frame.pen.corner == "round" else (0.0, 0.0)
    return (
        Knot.upright_first(left, top, _to_turn(frame, loop, top), cut=frame.turn - OVERLAP),
        Knot.level_first(right, top, loop),
        Knot(right, above, *_into_crossing(frame, loop, top - above)),
        Knot(side, below, *_into_crossing(frame, well, below - floor)[::-1], INNER_TENSION),
        Knot.upright_first(side, floor, well),
        Knot(heel, floor, *bend),
        Knot(reach - arm, ARM_END),
    )


def _upper_edge(frame: _Frame) -> tuple[Knot, ...]:
    """Down the arm, outside the bowl, along the crossing stroke's upper edge, inside the loop."""
    left, right, foot, roof = frame.left, frame.right, frame.foot, frame.top - frame.crown
    above, below, side = frame.edge(right - frame.loop, 1.0), frame.edge(0.0, 1.0), frame.loop
    eye = _bends(frame, right - left - 2 * side, roof - above, True)
    bowl = _bends(frame, frame.wide * BOWL_WIDE, below - foot, False)
    reach = frame.wide * ARM_REACH
    heel = reach - ARM_LEAN * (ARM_END - foot)
    bend = (0.30, heel - bowl.across) if frame.pen.corner == "round" else (0.0, 0.0)
    return (
        Knot(reach, ARM_END),
        Knot(heel, foot, *bend),
        Knot.level_first(0.0, foot, bowl),
        Knot(0.0, below, *_into_crossing(frame, bowl, below - foot)),
        Knot(right - side, above, *_into_crossing(frame, eye, roof - above)[::-1], INNER_TENSION),
        Knot.upright_first(right - side, roof, eye),
        Knot.level_first(left + side, roof, _to_turn(frame, eye, roof), cut=frame.turn - OVERLAP),
    )


def _leg(frame: _Frame) -> Outline:
    """The stroke that comes down from the loop's left side to the right of the base line."""
    wide, left, inside, turn = frame.wide, frame.left, frame.left + frame.loop, frame.turn
    upright, along = (1.0, BEND_OF_LEG) if frame.pen.corner == "round" else (0.05, 0.05)
    knots = (
        Knot(left, turn),
        Knot(left, LEG_CORNER, min(upright, turn - LEG_CORNER - 2 * OVERLAP), along),
        Knot(wide - frame.leg_across, 0.0),
        Knot(wide, 0.0),
        Knot(inside, frame.inner_corner, along, min(upright, turn - frame.inner_corner - 2 * OVERLAP)),
        Knot(inside, turn),
    )
    return Outline.of([bent(knots, frame.pen.corner)])
