"""Strokes that end in serifs: stems, leaning strokes, arms with a beak, and the balls of hooks.

A stem's two flanks are walked from end to end; where a serif is wanted, the walk goes out to its tip and comes
back through the bracket. Flank, bracket and serif are one contour, so nothing can come off. Lengths in cap heights.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import CIRCLE_TENSION, Knot, bent
from heraldry.lettering.alphabets.pen import Pen

# A bracket leaves this much of its serif's upper edge straight, so that the tip keeps its thickness.
BRACKET_OF_SERIF = 0.94

# The bracket of a beak is longer than that of a serif: the arm it hangs from is longer too.
BEAK_BRACKET = 1.7


# A beak that would show less than this beyond its arm is left away.
LEAST_BEAK = 0.055


class Reach(NamedTuple):
    """How far the serif at one end of a stroke reaches out to the left and to the right."""

    left: float = 0.0
    right: float = 0.0


BARE = Reach()


@dataclass(frozen=True)
class Flank:
    """One ruled side of a stroke, from its foot to its head."""

    foot: Point
    head: Point

    def at(self, y: float) -> float:
        """Where the side is at a height."""
        return self.foot.x + (self.head.x - self.foot.x) * (y - self.foot.y) / (self.head.y - self.foot.y)

    @property
    def steep(self) -> float:
        """Length of the side for each unit of its rise."""
        return abs(self.head - self.foot) / abs(self.head.y - self.foot.y)


def both(pen: Pen, part: float = 1.0) -> Reach:
    """A serif on both sides, or a part of one."""
    return Reach(pen.serif.reach * part, pen.serif.reach * part)


def _end(pen: Pen, flank: Flank, corner: Point, reach: float, inward: float, outward: float) -> list[Knot]:
    """From the serif's tip to where the flank is ruled: ``inward`` up or down, ``outward`` right or left."""
    if reach <= 0.0:
        return [Knot(corner.x, corner.y)]
    shoulder = corner.y + inward * pen.serif.thick
    root = flank.at(shoulder)
    tip = max(outward * corner.x, outward * root) * outward + outward * reach
    across = min(pen.serif.bracket, abs(tip - root) * BRACKET_OF_SERIF)
    along = pen.serif.bracket * flank.steep
    return [Knot(tip, corner.y), Knot(tip, shoulder), Knot(root, shoulder, across, along, CIRCLE_TENSION)]


def _walked_back(knots: Sequence[Knot]) -> list[Knot]:
    return [knot.turned for knot in reversed(knots)]


def stroke(pen: Pen, left: Flank, right: Flank, feet: Reach = BARE, heads: Reach = BARE) -> Outline:
    """A stroke between two flanks, level at both ends, with serifs."""
    sides = []
    for flank, foot, head, outward in ((right, feet.right, heads.right, 1.0), (left, feet.left, heads.left, -1.0)):
        below = _end(pen, flank, flank.foot, foot, 1.0, outward)
        above = _end(pen, flank, flank.head, head, -1.0, outward)
        sides.append([*below, *_walked_back(above)])
    return Outline.of([bent([*sides[0], *_walked_back(sides[1])], "round")])


def post(pen: Pen, left: float, bottom: float = 0.0, top: float = 1.0, feet: Reach = BARE, heads: Reach = BARE,
         thick: float | None = None) -> Outline:  # fmt: skip
    """An upright with serifs at its foot and its head."""
    return _between(pen, left, left + (pen.stem if thick is None else thick), (bottom, top), feet, heads)


def post_before(pen: Pen, right: float, bottom: float = 0.0, top: float = 1.0, feet: Reach = BARE, heads: Reach = BARE,
                thick: float | None = None) -> Outline:  # fmt: skip
    """The same, standing before ``right``: where it lies on a round that ends there, their edges are the same."""
    return _between(pen, right - (pen.stem if thick is None else thick), right, (bottom, top), feet, heads)


def _between(pen: Pen, left: float, right: float, levels: tuple[float, float], feet: Reach, heads: Reach) -> Outline:
    near, far = (Flank(*(Point(x, y) for y in levels)) for x in (left, right))
    return stroke(pen, near, far, feet, heads)


def limb(pen: Pen, left: Flank, right: Flank, ends: Sequence[Point], serifs: Reach, down: bool = False) -> Outline:
    """A leaning stroke with a serif at its level end, and an end cut to fit at its joint.

    The level end is its foot, or its head where it hangs ``down``; ``ends`` goes from the right to the left.
    """

    def start(flank: Flank) -> Point:
        return flank.head if down else flank.foot

    inward = -1.0 if down else 1.0
    outer = _end(pen, right, start(right), serifs.right, inward, 1.0)
    inner = _end(pen, left, start(left), serifs.left, inward, -1.0)
    return Outline.of([bent([*outer, *(Knot(p.x, p.y) for p in ends), *_walked_back(inner)], "round")])


def arm(pen: Pen, left: float, right: float, edge: float, inward: float, beak: float | None = None) -> Outline:
    """A crossbar with a beak at its right end.

    ``edge`` is the height of its outer edge and ``inward`` the way its beak points: 1 up, −1 down.
    """
    serif, length = pen.serif, pen.serif.beak if beak is None else beak
    if length < pen.arm + LEAST_BEAK:
        return pen.level(left, right, min(edge, edge + inward * pen.arm))
    root = right - serif.tip - serif.flare
    bracket = min(serif.bracket * BEAK_BRACKET, (root - left) * 0.6)
    along = min(serif.bracket * BEAK_BRACKET, (length - pen.arm) * 0.9)
    under = edge + inward * pen.arm
    knots = (
        Knot(left, edge), Knot(right - serif.flare * 0.25, edge), Knot(right, edge + inward * length),
        Knot(right - serif.tip, edge + inward * length), Knot(root, under, along, bracket, CIRCLE_TENSION),
        Knot(left, under),
    )  # fmt: skip
    return Outline.of([bent(knots, "round")])


def middle_arm(pen: Pen, left: float, right: float, middle: float, half: float) -> Outline:
    """A crossbar with a beak up and a beak down, ``half`` long each from the middle."""
    serif, arm_ = pen.serif, pen.arm / 2.0
    tip = serif.tip * 0.85
    root = right - tip - serif.flare * 0.5
    bracket = min(serif.bracket * 0.8, (root - left) * 0.6)
    along = min(bracket, (half - arm_) * 0.9)
    knots = (
        Knot(left, middle - arm_), Knot(root, middle - arm_, bracket, along, CIRCLE_TENSION),
        Knot(right - tip, middle - half), Knot(right, middle - half), Knot(right, middle + half),
        Knot(right - tip, middle + half), Knot(root, middle + arm_, along, bracket, CIRCLE_TENSION),
        Knot(left, middle + arm_),
    )  # fmt: skip
    return Outline.of([bent(knots, "round")])
