"""Strokes that several families draw with: an arc over a chord, rings turned the right way, halves made whole.

Millimetres, y up. A ring of ink is walked counter-clockwise, so that what lies to the right is outside.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import ring_areas
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment
from heraldry.shapes.rounds import circle_path

SAME_PLACE_MM = 1e-9
"""Far above what two ways to work out one corner differ by, far below anything that prints."""


def bow(start: Point, end: Point, rise: float) -> Segment:
    """The arc over a chord that rises to the right of its direction by so much (negative: to the left).

    Circular segment of chord c and rise h: R = c²/8h + h/2, sweep = 4·atan(2h/c). No rise gives a line.

    >>> bow(Point(1, 0), Point(-1, 0), 1.0).centre
    Point(x=0.0, y=0.0)
    """
    if rise == 0.0:
        return Line(start, end)
    chord = end - start
    radius = abs(chord) ** 2 / (8 * abs(rise)) + abs(rise) / 2
    side = math.copysign(1.0, rise)
    centre = (start + end) / 2 + chord.unit.left * (side * (radius - abs(rise)))
    return Arc(start, end, centre, radius, 4 * math.atan(2 * rise / abs(chord)))


def setting_out(start: Point, way: Point, end: Point) -> Segment:
    """The arc that sets out in a direction and ends at a place; it turns by twice the angle from there to its chord.

    >>> round(setting_out(Point(1, 0), Point(0, 1), Point(0, 1)).radius, 9)
    1.0
    """
    chord = end - start
    return bow(start, end, abs(chord) / 2 * math.tan(math.atan2(way.cross(chord), way.dot(chord)) / 2))


def arriving(start: Point, end: Point, way: Point) -> Segment:
    """The arc that begins at a place and arrives at another in a direction."""
    return setting_out(end, -way, start).reversed()


def closed(segments: Iterable[Segment]) -> Path:
    """A ring of strokes; where one does not begin at the end of the one before, a straight line joins them."""
    strokes = list(segments)
    ring: list[Segment] = []
    for before, stroke in zip([strokes[-1], *strokes], strokes, strict=False):
        if abs(before.end - stroke.start) > SAME_PLACE_MM:
            ring.append(Line(before.end, stroke.start))
            ring.append(stroke)
        else:
            ring.append(replace(stroke, start=before.end))
    return Path(tuple(ring), closed=True)


def islands(paths: Iterable[Path]) -> Outline:
    """Rings of ink side by side, each turned counter-clockwise."""
    rings = tuple(paths)
    areas = ring_areas(Outline.of(rings)).tolist()
    return Outline.of(ring if area > 0 else ring.reversed() for ring, area in zip(rings, areas, strict=True))


def corners(*places: Point | tuple[float, float]) -> Outline:
    """The island between straight lines through places, given as points or as (x, y)."""
    return islands([Path.through((Point(x, y) for x, y in places), closed=True)])


def smooth_wave(places: Sequence[Point], slopes: Sequence[float]) -> list[Segment]:
    """Cubics through places that run one way along x, with a slope dy/dx at each (Hermite form)."""
    return [
        Cubic(a, a + Point(1.0, u) * ((b.x - a.x) / 3), b - Point(1.0, v) * ((b.x - a.x) / 3), b)
        for (a, u), (b, v) in pairwise(zip(places, slopes, strict=True))
    ]


def both_sides(right: Sequence[Segment]) -> list[Segment]:
    """Strokes on the right of the y axis, walked upward, and their mirror images walked down again."""
    return [*right, *(mirrored(stroke).reversed() for stroke in reversed(right))]


def mirrored(stroke: Segment) -> Segment:
    """A stroke as seen in a mirror along the y axis."""
    return moved(stroke, Affine(a=-1.0))


def half_turned(stroke: Segment) -> Segment:
    """A stroke turned half round about the origin."""
    return moved(stroke, Affine.turn(180.0))


def moved(stroke: Segment, affine: Affine) -> Segment:
    """A stroke under a map that keeps circles circles."""
    start, end = affine(stroke.start), affine(stroke.end)
    match stroke:
        case Arc():
            sweep = math.copysign(stroke.sweep_rad, stroke.sweep_rad * affine.determinant)
            return Arc(start, end, affine(stroke.centre), stroke.radius * affine.ratio, sweep)
        case Cubic():
            return Cubic(start, affine(stroke.control1), affine(stroke.control2), end)
    return Line(start, end)


def placed(outline: Outline, centre: Point, turn: float = 0.0) -> Outline:
    """An outline drawn about the origin, turned by degrees and moved to its place."""
    return outline.transformed(Affine.move(centre.x, centre.y) @ Affine.turn(turn))


def bored(path: Path, centre: Point, bore: float) -> Outline:
    """A ring of ink with a round hole of a radius in it; none for a radius of 0."""
    if bore < 0:
        raise GeometryError(f"a hole has the radius {bore:g} mm, it must be at least 0")
    return Outline.of([path] if bore == 0 else [path, circle_path(centre, bore).reversed()])
