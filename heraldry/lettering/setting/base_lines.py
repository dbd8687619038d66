"""Base lines that text goes along: an arc through three points, the edge of a shape, and any of them raised.

A letter's up is the left of its base line. ``outside`` therefore means a line walked clockwise, with the letters'
heads away from what it goes round, and ``inside`` one walked counter-clockwise. An open line goes round what lies
between it and its chord. Millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from heraldry.errors import LetteringError
from heraldry.geometry.flatten import flatten_path
from heraldry.geometry.measure import ArcLength, Stations, bounds, ring_areas
from heraldry.geometry.offset import offset, stroke
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Line, Path, Segment
from heraldry.lettering.setting.lay import Reads

SAME_PLACE_MM = 1e-3
"""A raised line is found again in a stroke's outline, which is true to 0.2 µm, where its ends lie this near."""

SAME_WAY = 0.99
"""Cosine of the angle between a path's end and its raised line's: they are parallel but for what a stroke is off by."""

STRAIGHT_MM = 1e-6
"""Three points whose middle one is nearer than this to the line of the others are on a line."""


def arc_through(start: Point, middle: Point, end: Point) -> Path:
    """The arc of a circle from one point through a second to a third; a straight line where they lie on one.

    Raises LetteringError for points that coincide.

    >>> arc_through(Point(-5, 0), Point(0, 5), Point(5, 0)).segments[0].centre
    Point(x=0.0, y=0.0)
    """
    one, two = middle - start, end - start
    doubled = 2 * one.cross(two)
    if min(abs(one), abs(two), abs(end - middle)) < STRAIGHT_MM:
        raise LetteringError("an arc goes through three different places, two of them are the same")
    if abs(doubled) < 2 * STRAIGHT_MM * abs(two):
        return Path((Line(start, end),))
    toward = Point(
        (two.y * one.dot(one) - one.y * two.dot(two)) / doubled,
        (one.x * two.dot(two) - two.x * one.dot(one)) / doubled,
    )
    centre = start + toward
    return Path((Arc(start, end, centre, abs(toward), _sweep(start - centre, end - centre, doubled > 0)),))


def _sweep(start: Point, end: Point, left_turning: bool) -> float:
    turn = float(np.arctan2(start.cross(end), start.dot(end)))
    if left_turning:
        return turn if turn > 0 else turn + 2 * np.pi
    return turn if turn < 0 else turn - 2 * np.pi


def edge_line(outline: Outline, smooth_mm: float, lift_mm: float, reads: Reads) -> Path:
    """The edge round a shape as a base line, lifted off it to the side of the letters' heads.

    Corners and bays of it that a circle of the radius ``smooth_mm`` does not enter are passed over.
    Raises LetteringError where nothing is left of the shape.
    """
    lifted = offset(outline, lift_mm if reads == "outside" else -lift_mm) if lift_mm else outline
    if smooth_mm > 0:  # bays closed, then headlands opened
        lifted = offset(offset(offset(lifted, smooth_mm), -2 * smooth_mm), smooth_mm)
    if lifted.is_empty:
        raise LetteringError("nothing is left of the edge that the text goes along; smooth it less, lift it less")
    widest = int(np.argmax(ring_areas(lifted)))
    ring = lifted.paths[widest]
    return ring.reversed() if reads == "outside" else ring


def read_along(path: Path, reads: Reads) -> Path:
    """A path walked the way in which its letters stand outside it, or inside.

    Raises LetteringError for a straight one.
    """
    area = _area_to_chord(path)
    if abs(area) < STRAIGHT_MM:
        raise LetteringError(f"a straight path has no {reads}, leave reads out and it is read as it is drawn")
    return path if (area < 0) == (reads == "outside") else path.reversed()


def raised(path: Path, by_mm: float) -> Path:
    """An open path a distance to its left (negative: to its right), round outer corners, inner ones cut off.

    Raises LetteringError where the path bends too tightly to be followed at that distance.
    """
    if not by_mm:
        return path
    ends = _ends(path)
    first, last = (Point(*xy) for xy in (ends.points + by_mm * ends.normals).tolist())
    begin, end = (last, first) if by_mm > 0 else (first, last)
    for ring in stroke(path, 2 * abs(by_mm)).paths:
        run = _run_between(ring.segments, begin, end)
        if run:
            found = Path(run).reversed() if by_mm > 0 else Path(run)
            if np.all((_ends(found).tangents * ends.tangents).sum(axis=1) > SAME_WAY):
                return found
    raise LetteringError(f"the path bends too tightly for a base line {abs(by_mm):.3g} mm off it")


def _ends(path: Path) -> Stations:
    """An open path's two ends."""
    track = ArcLength(path)
    return track.at([0.0, track.total_mm])


def place_over(path: Path, reads: Reads) -> float:
    """How far along a ring it lies right over its middle, or under it for text inside, mm."""
    middle = bounds(path).centre
    flat = flatten_path(path)
    start, end = flat, np.roll(flat, -1, axis=0)
    crosses = (start[:, 0] <= middle.x) != (end[:, 0] <= middle.x)
    span = end[crosses] - start[crosses]
    heights = start[crosses, 1] + span[:, 1] * (middle.x - start[crosses, 0]) / span[:, 0]
    reached = heights.max() if reads == "outside" else heights.min()
    return float(ArcLength(path).nearest([middle.x, reached]))


def _area_to_chord(path: Path) -> float:
    if path.closed:
        return float(ring_areas(Outline.of([path]))[0])
    back = Line(path.segments[-1].end, path.segments[0].start)
    return float(ring_areas(Outline.of([Path((*path.segments, back), closed=True)]))[0])


def _run_between(ring: Sequence[Segment], begin: Point, end: Point) -> tuple[Segment, ...]:
    """The segments of a ring from one of its corners to another; none where they are no corners of it."""
    starts = [i for i, segment in enumerate(ring) if abs(segment.start - begin) < SAME_PLACE_MM]
    if not starts:
        return ()
    turned = [*ring[starts[0] :], *ring[: starts[0]]]
    stops = [i for i, segment in enumerate(turned) if abs(segment.end - end) < SAME_PLACE_MM]
    return tuple(turned[: stops[0] + 1]) if stops else ()
