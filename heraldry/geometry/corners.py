"""Polygons whose corners are left square, cut off or rounded; millimetres.

A corner is cut or rounded by a size measured along its two sides for a cut, and as a radius for a round. The
tangent length of a round corner of interior angle φ is r / tan(φ/2).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Line, Path, Segment

Corner = Literal["square", "cut", "round"]

# Two corners of one side may use it up between them, and rounding must not refuse that by a hair.
SIDE_OVERRUN_MM = 1e-9
# Below this turn (radians) a corner is no corner, and a fillet would have no length.
STRAIGHT_RAD = 1e-9


def polygon(points: Sequence[Point], corner: Corner = "square", size_mm: float | Sequence[float] = 0.0) -> Path:
    """A closed polygon with all corners treated alike, of one size or of a size each.

    Raises GeometryError where the corners take more than a side has.

    >>> square = [Point(0, 0), Point(4, 0), Point(4, 4), Point(0, 4)]
    >>> len(polygon(square, "round", 1).segments)
    8
    """
    sizes = [float(size_mm)] * len(points) if isinstance(size_mm, int | float) else list(size_mm)
    if corner == "square" or not any(sizes):
        return Path.through(points, closed=True)
    if min(sizes) < 0:
        raise GeometryError(f"a corner size is {min(sizes):g} mm, it cannot be negative")
    trims = [_trim(points, i, corner, size) for i, size in enumerate(sizes)]
    _check_sides(points, trims, sizes)
    segments: list[Segment] = []
    for i, point in enumerate(points):
        before, after = (points[i - 1] - point).unit, (points[(i + 1) % len(points)] - point).unit
        start, end = point + before * trims[i], point + after * trims[i]
        if segments and segments[-1].end != start:
            segments.append(Line(segments[-1].end, start))
        if start != end:
            segments.append(Line(start, end) if corner == "cut" else _fillet(start, end, before, after, sizes[i]))
    if segments[-1].end != segments[0].start:
        segments.append(Line(segments[-1].end, segments[0].start))
    return Path(tuple(segments), closed=True)


def _turn_rad(points: Sequence[Point], i: int) -> float:
    arriving, leaving = points[i] - points[i - 1], points[(i + 1) % len(points)] - points[i]
    if not abs(arriving) or not abs(leaving):
        raise GeometryError(f"two corners of a polygon lie on one another at ({points[i].x:g}, {points[i].y:g}) mm")
    return math.atan2(arriving.cross(leaving), arriving.dot(leaving))


def _trim(points: Sequence[Point], i: int, corner: Corner, size_mm: float) -> float:
    turn = abs(_turn_rad(points, i))
    if turn < STRAIGHT_RAD:
        return 0.0
    return size_mm if corner == "cut" else size_mm * math.tan(turn / 2)


def _check_sides(points: Sequence[Point], trims: Sequence[float], sizes_mm: Sequence[float]) -> None:
    for i, point in enumerate(points):
        side, size = abs(point - points[i - 1]), max(sizes_mm[i], sizes_mm[i - 1])
        if trims[i] + trims[i - 1] > side + SIDE_OVERRUN_MM:
            largest = size * side / (trims[i] + trims[i - 1])
            raise GeometryError(
                f"corners of {size:g} mm do not fit on a side of {side:g} mm, at most {largest:.4g} mm does"
            )


def _fillet(start: Point, end: Point, before: Point, after: Point, radius_mm: float) -> Arc:
    turns_left = before.cross(after) < 0
    inward = (-before).left if turns_left else -(-before).left
    centre = start + inward * radius_mm
    sweep = math.pi - math.acos(max(-1.0, min(1.0, before.dot(after))))
    return Arc(start, end, centre, radius_mm, sweep if turns_left else -sweep)
