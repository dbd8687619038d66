"""Affine maps of the plane: x' = a·x + c·y + e, y' = b·x + d·y + f; they compose with ``@``.

The same elementwise formula is used for one point and for arrays of points, so that a vertex computed
alone and a vertex computed in a batch are the same to the last bit (a matrix product would round otherwise).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.point import ORIGIN, Point


@dataclass(frozen=True, slots=True)
class Affine:
    """An immutable affine map; ``(f @ g)(p)`` is ``f(g(p))``.

    >>> (Affine.move(1, 0) @ Affine.turn(90))(Point(1, 0))
    Point(x=1.0, y=1.0)
    """

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    @staticmethod
    def move(dx: float, dy: float) -> Affine:
        """Translation by millimetres."""
        return Affine(e=dx, f=dy)

    @staticmethod
    def turn(angle_deg: float, about: Point = ORIGIN) -> Affine:
        """Rotation counter-clockwise by degrees; exact at multiples of 90."""
        quarter, rest = divmod(angle_deg, 90.0)
        if rest == 0.0:
            cos, sin = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[int(quarter) % 4]
        else:
            cos, sin = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
        return Affine(cos, sin, -sin, cos).about(about)

    @staticmethod
    def scale(sx: float, sy: float | None = None, about: Point = ORIGIN) -> Affine:
        """Scaling by factors along x and y (the same along both when ``sy`` is left out)."""
        return Affine(sx, 0.0, 0.0, sx if sy is None else sy).about(about)

    @staticmethod
    def mirror(axis_deg: float = 90.0, about: Point = ORIGIN) -> Affine:
        """Reflection in the line through ``about`` at ``axis_deg``: 90 swaps left and right."""
        spin = Affine.turn(axis_deg)
        back = Affine.turn(-axis_deg)
        return (spin @ Affine(1.0, 0.0, 0.0, -1.0) @ back).about(about)

    @staticmethod
    def slant(angle_deg: float) -> Affine:
        """Shear to the right by degrees from upright: x grows with y, y is kept."""
        return Affine(c=math.tan(math.radians(angle_deg)))

    def about(self, centre: Point) -> Affine:
        """The same map with ``centre`` in the place of the origin."""
        if centre == ORIGIN:
            return self
        return Affine.move(centre.x, centre.y) @ self @ Affine.move(-centre.x, -centre.y)

    def __matmul__(self, first: Affine) -> Affine:
        return Affine(
            self.a * first.a + self.c * first.b,
            self.b * first.a + self.d * first.b,
            self.a * first.c + self.c * first.d,
            self.b * first.c + self.d * first.d,
            self.a * first.e + self.c * first.f + self.e,
            self.b * first.e + self.d * first.f + self.f,
        )

    def __call__(self, point: Point) -> Point:
        return Point(
            self.a * point.x + self.c * point.y + self.e,
            self.b * point.x + self.d * point.y + self.f,
        )

    def on_array(self, xy: NDArray[np.float64]) -> NDArray[np.float64]:
        """Map an array of shape (..., 2), in millimetres."""
        x, y = xy[..., 0], xy[..., 1]
        return np.stack((self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f), axis=-1)

    @property
    def determinant(self) -> float:
        """Signed ratio of areas; negative when the map turns the plane over."""
        return self.a * self.d - self.b * self.c

    @property
    def ratio(self) -> float:
        """Ratio of lengths; meaningful where ``is_similarity``."""
        return math.sqrt(abs(self.determinant))

    @property
    def is_similarity(self) -> bool:
        """Whether circles stay circles (to 1e-12 of the map's own size)."""
        size = max(abs(self.a), abs(self.b), abs(self.c), abs(self.d))
        kept = abs(self.a - self.d) + abs(self.b + self.c)
        turned_over = abs(self.a + self.d) + abs(self.b - self.c)
        return min(kept, turned_over) <= 1e-12 * size


IDENTITY = Affine()
