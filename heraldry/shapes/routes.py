"""The line of a railroad: a band through places in order, in straight stretches or one smooth sweep.

Millimetres, y up. Cut out of a land, with its ends lengthened past the border, it shows where the trains run.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import unite
from heraldry.geometry.offset import stroke
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Cubic, Line, Path, Segment
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.rounds import circle_path
from heraldry.shapes.table import Drawn, Flag, Length, Places, shape


@shape
def route(
    route: Places,
    width: Length,
    ends: Literal["flat", "round"] = "flat",
    stops: Length = 0.0,
    smooth: Flag = False,
    extend: Length = 0.0,
) -> Drawn:
    """A line of a `width` through the places of `route` in order; a dot `stops` across marks each of them.

    `extend` lengthens both ends straight on, so that a cut through a land leaves it cleanly; `smooth` makes one sweep
    through all places instead of straight stretches. Its `ends` are flat or round, its places are `start` and `end`.
    """
    positive("width", width)
    at_least("stops", stops, 0.0)
    at_least("extend", extend, 0.0)
    points = distinct(route)
    middle = sweep(points) if smooth else Path.through(points)
    band = stroke(lengthened(middle, extend), width, ends=ends)
    dots = [Outline.of([circle_path(point, stops / 2)]) for point in points] if stops else []
    return Drawn(unite(band, *dots), {"start": points[0], "end": points[-1]})


def distinct(points: Places) -> list[Point]:
    """The points without those that repeat their neighbour; GeometryError when fewer than two are left."""
    kept = [*points[:1], *(point for before, point in pairwise(points) if point != before)]
    if len(kept) < 2:
        raise GeometryError(f"a route needs at least 2 different places, found {len(kept)}")
    return kept


def sweep(points: list[Point]) -> Path:
    """One smooth curve through all points: the centripetal Catmull-Rom curve, as cubics.

    It makes no loops or cusps within a stretch (Yuksel, Schaefer and Keyser, Parameterization and
    applications of Catmull–Rom curves, Computer-Aided Design 43, 2011). The curve begins and ends in the
    direction of its first and last stretch.
    """
    before, after = points[0] * 2 - points[1], points[-1] * 2 - points[-2]
    rim = [before, *points, after]
    cubics: list[Segment] = []
    for i in range(1, len(rim) - 2):
        start, end = rim[i], rim[i + 1]
        cubics.append(Cubic(start, _control(rim[i - 1], start, end), _control(rim[i + 2], end, start), end))
    return Path(tuple(cubics))


def _control(behind: Point, at: Point, ahead: Point) -> Point:
    """The control point next to ``at`` on the way to ``ahead``; knots lie roots of distances apart."""
    one, two = math.sqrt(abs(at - behind)), math.sqrt(abs(ahead - at))
    tangent = (at - behind) * (two / one) + (ahead - at) * (one / two)
    return at + tangent * (two / (3 * (one + two)))


def lengthened(path: Path, by_mm: float) -> Path:
    """An open path with both ends drawn out straight by a length."""
    if not by_mm:
        return path
    first, last = path.segments[0], path.segments[-1]
    start = first.start - _direction(first) * by_mm
    end = last.end - _direction(last.reversed()) * by_mm
    return Path((Line(start, first.start), *path.segments, Line(last.end, end)))


def _direction(segment: Segment) -> Point:
    """The unit vector in which a line or cubic sets out."""
    toward = segment.control1 if isinstance(segment, Cubic) else segment.end
    return (toward - segment.start).unit
