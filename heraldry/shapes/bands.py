"""Bands along a side: with shaped ends, round corners, or cut into warning slants; millimetres."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import intersect
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Path, Segment
from heraldry.shapes.checks import MOST_PIECES, positive
from heraldry.shapes.curves import bow, closed, half_turned, placed
from heraldry.shapes.table import Angle, Flag, Length, Place, Places, shape

End = Literal["square", "slant", "backslant", "point", "hollow", "round"]

STRAIGHT_RAD = 1e-9
"""Below this turn two legs of a run are one."""


@shape
def band(
    band: Length,
    height: Length | None = None,
    left: End = "square",
    right: End = "square",
    reach: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A stripe with shaped ends; `band` is its length over all, `reach` how far a slant, a point or a hollow goes.

    `height` is its thickness; `left` and `right` name the forms of its ends.
    """
    half = band / 2
    tall = 0.12 * half if height is None else positive("height", height) / 2
    depth = tall if reach is None else positive("reach", reach)
    if depth * sum(end != "square" for end in (left, right)) > band:
        raise GeometryError(f"ends that reach {depth:g} mm do not fit a band {band:g} mm long")
    going_up = _end(right, half, tall, depth)
    going_down = [half_turned(stroke) for stroke in _end(left, half, tall, depth)]
    return placed(Outline.of([closed([*going_up, *going_down])]), centre, turn)


def _end(kind: End, half: float, tall: float, depth: float) -> list[Segment]:
    """The strokes of a right end, from the lower edge up to the upper one."""
    inner, low, high = half - depth, Point(half, -tall), Point(half, tall)
    back_low, back_high = Point(inner, -tall), Point(inner, tall)
    if kind == "slant":
        return [Line(back_low, high)]
    if kind == "backslant":
        return [Line(low, back_high)]
    if kind == "point":
        return [Line(back_low, Point(half, 0.0)), Line(Point(half, 0.0), back_high)]
    if kind == "hollow":
        return [Line(low, Point(inner, 0.0)), Line(Point(inner, 0.0), high)]
    if kind == "round":
        return [bow(back_low, back_high, depth)]
    return [Line(low, high)]


@shape
def slants(
    slants: Length,
    height: Length | None = None,
    stripe: Length | None = None,
    gap: Length | None = None,
    slant: Angle = 45.0,
    meeting: Flag = False,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """Warning stripes; `slants` is the length that they fill, `stripe` and `gap` are measured along it.

    `height` is that of the band; `slant` is how far they lean from upright, to the right; `meeting` ones lean toward
    the middle from both ends.
    """
    length = slants
    tall = 0.16 * length if height is None else positive("height", height)
    usual = length / max(1, round(length / (1.4 * tall))) / 2  # whole periods, so that both ends are cut alike
    stripe = usual if stripe is None else positive("stripe", stripe)
    pitch = stripe + (stripe if gap is None else positive("gap", gap))
    if not -80 <= slant <= 80:
        raise GeometryError(f"slant is {slant:g} degrees, it must be between -80 and 80")
    lean = tall / 2 * math.tan(math.radians(slant))
    if (length + 2 * abs(lean)) / pitch > MOST_PIECES:
        raise GeometryError(f"stripes of {pitch:g} mm over {length:g} mm are more than {MOST_PIECES}")
    if meeting:
        half = _leaning(length / 2, tall, stripe, pitch, lean)
        sides = [placed(half, Point(-length / 4, 0.0)), placed(half.flipped(), Point(length / 4, 0.0))]
        return placed(Outline.gather(sides), centre, turn)
    return placed(_leaning(length, tall, stripe, pitch, lean), centre, turn)


def _leaning(length: float, tall: float, stripe: float, pitch: float, lean: float) -> Outline:
    """Leaning stripes in a box about the origin, the first one in its lower left corner."""
    first = math.floor(-2 * abs(lean) / pitch)
    last = math.ceil((length + 2 * abs(lean)) / pitch)
    start = -length / 2 + lean
    bars = [_leaning_bar(start + i * pitch, stripe, tall, lean) for i in range(first, last + 1)]
    left, right, low, high = -length / 2, length / 2, -tall / 2, tall / 2
    corners = [Point(left, low), Point(right, low), Point(right, high), Point(left, high)]
    return intersect(Outline.of([Path.through(corners, closed=True)]), Outline.of(bars))


def _leaning_bar(left: float, stripe: float, tall: float, lean: float) -> Path:
    low, high = -tall / 2, tall / 2
    corners = [
        Point(left - lean, low),
        Point(left + stripe - lean, low),
        Point(left + stripe + lean, high),
        Point(left + lean, high),
    ]
    return Path.through(corners, closed=True)


@shape
def run(run: Places, width: Length, radius: Length = 0.0) -> Outline:
    """A stripe through points, which `run` lists in their order, round corners of a `radius` (of its middle line).

    `width` is its thickness.
    """
    points = [point for i, point in enumerate(run) if i == 0 or point != run[i - 1]]
    if len(points) < 2:
        raise GeometryError("a run needs at least 2 different points")
    half = positive("width", width) / 2
    if len(points) > 2 and radius <= half:
        raise GeometryError(f"a run {width:g} mm wide needs corners of a radius above {half:g} mm, found {radius:g} mm")
    right, left = _beside(points, radius, -half), _beside(points, radius, half)
    return Outline.of([closed([*right, *(stroke.reversed() for stroke in reversed(left))])])


def _beside(points: Sequence[Point], radius: float, aside: float) -> list[Segment]:
    """The line that runs along points so far to their left (negative: to their right), with round corners."""
    legs = [(after - before).unit for before, after in pairwise(points)]
    turns = [math.atan2(one.cross(other), one.dot(other)) for one, other in pairwise(legs)]
    trims = [0.0, *(radius * math.tan(abs(turn) / 2) for turn in turns), 0.0]
    strokes: list[Segment] = []
    for i, leg in enumerate(legs):
        shift = leg.left * aside
        start, end = points[i] + leg * trims[i] + shift, points[i + 1] - leg * trims[i + 1] + shift
        if abs(points[i + 1] - points[i]) < trims[i] + trims[i + 1]:
            raise GeometryError(f"corners of {radius:g} mm do not fit between points {i + 1} and {i + 2} of a run")
        if strokes and abs(turns[i - 1]) > STRAIGHT_RAD:
            strokes.append(_corner(strokes[-1].end, start, legs[i - 1], turns[i - 1], radius, aside))
        strokes.append(Line(start, end))
    return strokes


def _corner(start: Point, end: Point, arriving: Point, turn: float, radius: float, aside: float) -> Arc:
    inward = math.copysign(1.0, turn)
    own_radius = radius - aside * inward
    return Arc(start, end, start + arriving.left * (own_radius * inward), own_radius, turn)
