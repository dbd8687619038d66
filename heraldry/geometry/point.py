"""A point of the plane, which is also the vector to it; lengths in millimetres, y up."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Point:
    """An immutable point or vector: ``a - b`` is the vector from b to a.

    >>> Point(3, 4) - Point(0, 4)
    Point(x=3, y=0)
    >>> abs(Point(3, 4))
    5.0
    """

    x: float
    y: float

    def __add__(self, other: Point) -> Point:
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Point) -> Point:
        return Point(self.x - other.x, self.y - other.y)

    def __mul__(self, factor: float) -> Point:
        return Point(self.x * factor, self.y * factor)

    __rmul__ = __mul__

    def __truediv__(self, divisor: float) -> Point:
        return Point(self.x / divisor, self.y / divisor)

    def __neg__(self) -> Point:
        return Point(-self.x, -self.y)

    def __abs__(self) -> float:
        return math.hypot(self.x, self.y)

    def __iter__(self) -> Iterator[float]:
        yield self.x
        yield self.y

    def dot(self, other: Point) -> float:
        """Scalar product, mm²."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: Point) -> float:
        """The z of the vector product, mm²: positive when ``other`` lies to the left."""
        return self.x * other.y - self.y * other.x

    @property
    def direction_rad(self) -> float:
        """Angle from the x axis, counter-clockwise, in (-pi, pi]."""
        return math.atan2(self.y, self.x)

    @property
    def unit(self) -> Point:
        """The vector of length 1 in this direction; raises ZeroDivisionError for the origin."""
        return self / abs(self)

    @property
    def left(self) -> Point:
        """The vector turned a quarter turn counter-clockwise."""
        return Point(-self.y, self.x)

    @staticmethod
    def polar(radius: float, angle_rad: float) -> Point:
        """The point at a distance (mm) and an angle (rad) from the origin."""
        return Point(radius * math.cos(angle_rad), radius * math.sin(angle_rad))


ORIGIN = Point(0.0, 0.0)
