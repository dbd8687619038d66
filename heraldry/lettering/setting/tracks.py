"""Base lines by their arc length: where one is after so many millimetres, and which way one faces there.

A letter's up is the left of its track. Round the outside of a circle the track therefore runs clockwise, with
the letters' feet toward the centre; round the inside it runs counter-clockwise, with their heads toward it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Protocol

import numpy as np

from heraldry.errors import LetteringError
from heraldry.geometry.bezier import Floats
from heraldry.geometry.measure import ArcLength, Stations, length
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path

SMOOTH_RAD = np.radians(1.0)
"""A path that turns by more at a joint has a corner there, and letters bent over it would break."""

JUST_BEFORE_MM = 1e-7
"""Where the direction before a joint is read: nearer than anything is drawn."""


class Track(Protocol):
    """A base line by its arc length."""

    def at(self, lengths_mm: Floats) -> Stations:
        """Points and unit tangents after lengths of any shape."""
        ...


@dataclass(frozen=True)
class CircleTrack:
    """A circle from ``start_rad`` on, clockwise or counter-clockwise."""

    centre: Point
    radius_mm: float
    start_rad: float
    clockwise: bool

    def at(self, lengths_mm: Floats) -> Stations:
        """Points and unit tangents; lengths may be negative and go round more than once."""
        way = -1.0 if self.clockwise else 1.0
        angle = self.start_rad + way * np.asarray(lengths_mm) / self.radius_mm
        cos, sin = np.cos(angle), np.sin(angle)
        points = np.stack((self.centre.x + self.radius_mm * cos, self.centre.y + self.radius_mm * sin), axis=-1)
        return Stations(points, np.stack((-sin * way, cos * way), axis=-1))


@dataclass(frozen=True)
class PathTrack:
    """A path; beyond the ends of an open one (by a bearing, no more) the ends hold."""

    path: Path

    @cached_property
    def _arc_length(self) -> ArcLength:
        return ArcLength(self.path)

    @property
    def total_mm(self) -> float:
        """The path's length."""
        return self._arc_length.total_mm

    def at(self, lengths_mm: Floats) -> Stations:
        """Points and unit tangents; a closed path goes round and round."""
        asked = np.asarray(lengths_mm)
        return self._arc_length.at(asked if self.path.closed else np.clip(asked, 0.0, self.total_mm))

    def check_smooth(self, start_mm: float, end_mm: float) -> None:
        """Raise LetteringError for a corner between two lengths."""
        joints = np.cumsum([length(Path((segment,))) for segment in self.path.segments])
        if not self.path.closed:
            joints = joints[:-1]
        inside = joints[(joints > start_mm) & (joints < end_mm)]
        before, after = self.at(inside - JUST_BEFORE_MM), self.at(inside)
        turns = np.abs(np.angle(np.exp(1j * (after.angles_rad - before.angles_rad))))
        if np.any(turns > SMOOTH_RAD):
            worst = int(np.argmax(turns))
            raise LetteringError(
                f"bent letters want a smooth path, this one turns by {np.degrees(turns[worst]):.3g}° "
                f"after {inside[worst]:.4g} mm; lay them turned, or round the corner"
            )
