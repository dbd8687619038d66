"""What encloses a monogram: nothing, a ring, or a diamond; millimetres, the middle at the origin.

A frame says how large letters are for it (``reach``: the same measure that tells its own size, so that their
ratio is what letters must be scaled by), and draws itself.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np

from heraldry.geometry.boolean import subtract
from heraldry.geometry.flatten import flatten
from heraldry.geometry.offset import inset
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Path

FrameName = Literal["none", "ring", "diamond"]
FRAMES: tuple[FrameName, ...] = get_args(FrameName)

DIAMOND_WIDE = 1.25
"""Width of a diamond in heights: wider than high, as letters side by side are. Common practice, no source."""


@dataclass(frozen=True)
class Frame:
    """``reach`` of an outline in units in which the frame's inside is ``inside`` (height, width of line, air)."""

    reach: Callable[[Outline], float]
    inside: Callable[[float, float, float], float]
    draw: Callable[[float, float], Outline]


def _vertices(outline: Outline) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    return np.abs(np.concatenate(flatten(outline)))


def _half_height(outline: Outline) -> float:
    return float(_vertices(outline)[:, 1].max())


def _radius(outline: Outline) -> float:
    return float(np.hypot(*_vertices(outline).T).max())


def _diamond_reach(outline: Outline) -> float:
    """Half the height of the diamond through the farthest point."""
    x, y = _vertices(outline).T
    return float((x / DIAMOND_WIDE + y).max())


def _ring(height_mm: float, line_mm: float) -> Outline:
    def circle(radius: float) -> Path:
        right, left = Point(radius, 0.0), Point(-radius, 0.0)
        return Path((Arc(right, left, ORIGIN, radius, math.pi), Arc(left, right, ORIGIN, radius, math.pi)), closed=True)

    return Outline.of([circle(height_mm / 2), circle(height_mm / 2 - line_mm).reversed()])


def _diamond(height_mm: float, line_mm: float) -> Outline:
    up, right = height_mm / 2, height_mm / 2 * DIAMOND_WIDE
    corners = (Point(right, 0.0), Point(0.0, up), Point(-right, 0.0), Point(0.0, -up))
    outer = Outline.of([Path.through(corners, closed=True)])
    return subtract(outer, inset(outer, line_mm, "sharp"))


def _inside_diamond(height_mm: float, line_mm: float, air_mm: float) -> float:
    """A side moved inward by d comes nearer by d·√(1 + 1/w²) along the upright axis, w the width in heights."""
    return height_mm / 2 - (line_mm + air_mm) * math.hypot(1.0, 1.0 / DIAMOND_WIDE)


FRAME: dict[FrameName, Frame] = {
    "none": Frame(_half_height, lambda height, line, air: height / 2, lambda height, line: EMPTY),
    "ring": Frame(_radius, lambda height, line, air: height / 2 - line - air, _ring),
    "diamond": Frame(_diamond_reach, _inside_diamond, _diamond),
}
