"""What encloses a monogram: nothing, a ring, or a diamond; millimetres, the middle at the origin.

A frame measures how far letters reach and how far they may, in one measure, so that the ratio of the two is what
letters are scaled by; and it draws itself.
"""

from __future__ import annotations

import math
from typing import Literal, Protocol, get_args

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Path

FrameName = Literal["none", "ring", "diamond"]
FRAMES: tuple[FrameName, ...] = get_args(FrameName)

DIAMOND_WIDE = 1.25
"""Width of a diamond in heights: wider than high, as letters side by side are. Common practice, no source."""


class Frame(Protocol):
    """What encloses letters; its line is as thick as their stems."""

    def reach(self, letters: Outline) -> float:
        """How far letters about the origin reach, in the measure that ``room`` is told in."""
        ...

    def room(self, height_mm: float, line_mm: float, air_mm: float) -> float:
        """How far they may reach, with air between them and the line."""
        ...

    def draw(self, height_mm: float, line_mm: float) -> Outline:
        """The frame itself, about the origin."""
        ...


class NoFrame:
    """Letters alone: half their height counts."""

    def reach(self, letters: Outline) -> float:
        """Half the height."""
        return float(_vertices(letters)[:, 1].max())

    def room(self, height_mm: float, line_mm: float, air_mm: float) -> float:  # noqa: ARG002
        """All of it."""
        return height_mm / 2

    def draw(self, height_mm: float, line_mm: float) -> Outline:  # noqa: ARG002
        """Nothing."""
        return EMPTY


class Ring:
    """A circle round the letters: their farthest point counts."""

    def reach(self, letters: Outline) -> float:
        """The distance of the farthest point."""
        return float(np.hypot(*_vertices(letters).T).max())

    def room(self, height_mm: float, line_mm: float, air_mm: float) -> float:
        """The inner radius less the air."""
        return height_mm / 2 - line_mm - air_mm

    def draw(self, height_mm: float, line_mm: float) -> Outline:
        """Two circles."""
        return Outline.of([_circle(height_mm / 2), _circle(height_mm / 2 - line_mm).reversed()])


class Diamond:
    """A square on its corner, drawn wide: half the height of the like one through the farthest point counts."""

    def reach(self, letters: Outline) -> float:
        """The half height of the diamond that just holds the letters."""
        x, y = _vertices(letters).T
        return float((x / DIAMOND_WIDE + y).max())

    def room(self, height_mm: float, line_mm: float, air_mm: float) -> float:
        """A side moved inward by d comes nearer by d·√(1 + 1/w²) along the upright axis, w the width in heights."""
        return height_mm / 2 - (line_mm + air_mm) * math.hypot(1.0, 1.0 / DIAMOND_WIDE)

    def draw(self, height_mm: float, line_mm: float) -> Outline:
        """Two diamonds, the line of one width all round."""
        inner = 2 * self.room(height_mm, line_mm, 0.0)
        return Outline.of([_rhombus(height_mm), _rhombus(inner).reversed()])


def _vertices(outline: Outline) -> NDArray[np.float64]:
    """Distances to the right or left and up or down, (n, 2)."""
    return np.asarray(np.abs(np.concatenate(flatten(outline))))


def _circle(radius: float) -> Path:
    right, left = Point(radius, 0.0), Point(-radius, 0.0)
    return Path((Arc(right, left, ORIGIN, radius, math.pi), Arc(left, right, ORIGIN, radius, math.pi)), closed=True)


def _rhombus(height: float) -> Path:
    up, right = height / 2, height / 2 * DIAMOND_WIDE
    return Path.through((Point(right, 0.0), Point(0.0, up), Point(-right, 0.0), Point(0.0, -up)), closed=True)


FRAME: dict[FrameName, Frame] = {"none": NoFrame(), "ring": Ring(), "diamond": Diamond()}
