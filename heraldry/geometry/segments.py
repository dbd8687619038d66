"""The three strokes that bound every outline: straight line, circular arc, cubic Bézier; and chains of them.

Segments are values: immutable, in millimetres, y up, angles in radians counter-clockwise. Their ends are
stored, never recomputed, so that neighbours meet to the last bit.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from heraldry.errors import GeometryError
from heraldry.geometry.point import Point


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line from ``start`` to ``end``."""

    start: Point
    end: Point

    def reversed(self) -> Line:
        """The same line walked the other way."""
        return Line(self.end, self.start)

    def at(self, t: float) -> Point:
        """The point at parameter t in [0, 1]."""
        return self.start + (self.end - self.start) * t


@dataclass(frozen=True, slots=True)
class Arc:
    """An arc of a circle: ``sweep_rad`` is positive counter-clockwise, at most a full turn either way."""

    start: Point
    end: Point
    centre: Point
    radius: float
    sweep_rad: float

    @staticmethod
    def about(centre: Point, radius: float, start_rad: float, sweep_rad: float) -> Arc:
        """The arc of a circle from an angle, by a sweep (radians)."""
        start = centre + Point.polar(radius, start_rad)
        full = math.isclose(abs(sweep_rad), math.tau)
        end = start if full else centre + Point.polar(radius, start_rad + sweep_rad)
        return Arc(start, end, centre, radius, sweep_rad)

    @property
    def start_rad(self) -> float:
        """Angle of the start as seen from the centre."""
        return (self.start - self.centre).direction_rad

    def reversed(self) -> Arc:
        """The same arc walked the other way."""
        return Arc(self.end, self.start, self.centre, self.radius, -self.sweep_rad)

    def at(self, t: float) -> Point:
        """The point at parameter t in [0, 1], which is in proportion to arc length."""
        if t in (0.0, 1.0):
            return self.end if t else self.start
        return self.centre + Point.polar(self.radius, self.start_rad + t * self.sweep_rad)


@dataclass(frozen=True, slots=True)
class Cubic:
    """A cubic Bézier curve with its two control points."""

    start: Point
    control1: Point
    control2: Point
    end: Point

    def reversed(self) -> Cubic:
        """The same curve walked the other way."""
        return Cubic(self.end, self.control2, self.control1, self.start)

    def at(self, t: float) -> Point:
        """The point at parameter t in [0, 1] (de Casteljau's sum written out)."""
        s = 1.0 - t
        return (
            self.start * (s * s * s)
            + self.control1 * (3 * s * s * t)
            + self.control2 * (3 * s * t * t)
            + self.end * (t * t * t)
        )


Segment = Line | Arc | Cubic


@dataclass(frozen=True, slots=True)
class Path:
    """A chain of segments, each starting where the one before it ends; open, or closed into a ring."""

    segments: tuple[Segment, ...]
    closed: bool = False

    def __post_init__(self) -> None:
        for one, following in pairwise(self.segments):
            if one.end != following.start:
                raise GeometryError(f"a path is broken between {one.end} and {following.start}")
        if self.closed and self.segments and self.segments[-1].end != self.segments[0].start:
            raise GeometryError(f"a closed path ends at {self.segments[-1].end}, not where it began")

    @staticmethod
    def through(points: Iterable[Point], closed: bool = False) -> Path:
        """Straight lines through points; points that repeat their neighbour are passed over."""
        kept: list[Point] = []
        for point in points:
            if not kept or point != kept[-1]:
                kept.append(point)
        if closed and len(kept) > 1 and kept[0] == kept[-1]:
            kept.pop()
        corners = [*kept, kept[0]] if closed and kept else kept
        return Path(tuple(Line(a, b) for a, b in pairwise(corners)), closed)

    def __iter__(self) -> Iterator[Segment]:
        return iter(self.segments)

    def reversed(self) -> Path:
        """The same path walked the other way."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)), self.closed)
