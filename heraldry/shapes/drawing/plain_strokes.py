"""Lines along one straight segment or round one circle: their outlines are known without working out an offset."""

from __future__ import annotations

import math
from collections.abc import Sequence

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Line, Path, Segment
from heraldry.shapes.drawing.picture import Cap
from heraldry.shapes.rounds import circle_path


def plain_stroke(path: Path, width: float, cap: Cap) -> Outline | None:
    """The outline of a line along a chain; None where the chain is neither one straight segment nor one circle.

    >>> plain_stroke(Path((Line(Point(0, 0), Point(5, 0)),)), 1.0, "round").node_count
    6
    """
    if len(path.segments) == 1 and isinstance(path.segments[0], Line) and not path.closed:
        return Outline.of([_bar(path.segments[0], width / 2, cap)])
    circle = _circle(path.segments) if path.closed else None
    return None if circle is None else _ring(*circle, width / 2)


def _bar(line: Line, half: float, cap: Cap) -> Path:
    """A straight line with its two ends, counter-clockwise."""
    along = (line.end - line.start).unit * half
    start, end = (line.start - along, line.end + along) if cap == "square" else (line.start, line.end)
    right, left = -along.left, along.left
    if cap != "round":
        return Path.through([start + right, end + right, end + left, start + left], closed=True)
    segments = (
        Line(start + right, end + right),
        *_half_turn(end, right, along),
        Line(end + left, start + left),
        *_half_turn(start, left, -along),
    )
    return Path(segments, closed=True)


def _half_turn(centre: Point, first: Point, outward: Point) -> tuple[Arc, Arc]:
    """Half a circle about the end of a line, in two quarters."""
    tip, radius = centre + outward, abs(outward)
    quarter = math.pi / 2
    return Arc(centre + first, tip, centre, radius, quarter), Arc(tip, centre - first, centre, radius, quarter)


def _circle(segments: Sequence[Segment]) -> tuple[Point, float] | None:
    """Centre and radius, if segments are arcs that go once round one circle."""
    arcs = [segment for segment in segments if isinstance(segment, Arc)]
    if not arcs or len(arcs) < len(segments):
        return None
    one = arcs[0]
    same = all(arc.centre == one.centre and arc.radius == one.radius for arc in arcs)
    turned = sum(arc.sweep_rad for arc in arcs)
    return (one.centre, one.radius) if same and math.isclose(abs(turned), math.tau) else None


def _ring(centre: Point, radius: float, half: float) -> Outline:
    outer = circle_path(centre, radius + half)
    return Outline.of([outer] if half >= radius else [outer, circle_path(centre, radius - half).reversed()])
