"""A path measured by its own length: where one is after so many millimetres, and which way one faces there.

Text set along a path, dashes and ties laid on a line all ask this, for many lengths at a time. A closed path
goes round and round; an open one has ends, and asking beyond them is an error.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from heraldry.errors import GeometryError
from heraldry.geometry import bezier
from heraldry.geometry.bezier import Floats
from heraldry.geometry.measure.lengths import Pieces, lengths_until, pieces
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.segments import Path

# How far beyond an open path's end a length may lie and still mean the end: sums of advances round that much.
OVERRUN_MM = 1e-6
# Halving alone gains 1 bit a step, Newton doubles the bits: 40 guarded steps are never used up, 5 are usual.
MAX_STEPS = 40
FOUND_MM = 1e-12


@dataclass(frozen=True, eq=False)
class Stations:
    """Places along a path: points and unit tangents, shape (..., 2), for lengths of shape (...)."""

    points: Floats
    tangents: Floats

    @property
    def normals(self) -> Floats:
        """Unit vectors to the left of the tangents."""
        return np.stack((-self.tangents[..., 1], self.tangents[..., 0]), axis=-1)

    @property
    def angles_rad(self) -> Floats:
        """Directions of the tangents, counter-clockwise from the x axis, in (-pi, pi]."""
        return np.asarray(np.arctan2(self.tangents[..., 1], self.tangents[..., 0]))


@dataclass(frozen=True)
class ArcLength:
    """A path by its length; raises GeometryError for a path without length.

    >>> from heraldry.geometry.point import Point
    >>> along = ArcLength(Path.through([Point(0, 0), Point(3, 0), Point(3, 4)]))
    >>> along.total_mm
    7.0
    >>> along.at([1, 5]).points.tolist()
    [[1.0, 0.0], [3.0, 2.0]]
    """

    path: Path

    def __post_init__(self) -> None:
        if not self.total_mm > 0.0:
            raise GeometryError("a path without length has no places along it")

    @property
    def total_mm(self) -> float:
        """The path's length."""
        return float(self._marks[-1])

    @cached_property
    def _pieces(self) -> Pieces:
        return pieces(Outline.of((self.path,)))

    @cached_property
    def _marks(self) -> Floats:
        """The length at which each piece begins, and last the total."""
        return np.concatenate(([0.0], np.cumsum(self._pieces.lengths)))

    def at(self, lengths_mm: ArrayLike) -> Stations:
        """Points and tangents after lengths of any shape; at a corner the tangent is the leaving one.

        Raises GeometryError for a length beyond the ends of an open path.
        """
        asked = np.asarray(lengths_mm, dtype=np.float64)
        lengths = self._within(asked.ravel())
        chosen = np.searchsorted(self._marks, lengths, side="right") - 1
        chosen = np.minimum(chosen, self._last)
        local = lengths - self._marks[chosen]
        points, tangents = np.empty((len(lengths), 2)), np.empty((len(lengths), 2))
        kinds = self._pieces.kinds[chosen]
        for kind, walk in ((ARC, _on_arcs), (CUBIC, _on_cubics)):
            here = kinds == kind
            points[here], tangents[here] = walk(self._pieces.data[chosen[here]], local[here])
        here = (kinds != ARC) & (kinds != CUBIC)
        points[here], tangents[here] = _on_lines(self._pieces.data[chosen[here]], local[here])
        shape = (*asked.shape, 2)
        return Stations(points.reshape(shape), tangents.reshape(shape))

    def nearest(self, places: ArrayLike) -> Floats:
        """The lengths (...,) at which the path comes nearest to places (..., 2); the first of equals."""
        asked = np.asarray(places, dtype=np.float64)
        found = [self._nearest_one(place) for place in asked.reshape(-1, 2)]
        return np.array(found, dtype=np.float64).reshape(asked.shape[:-1])

    @cached_property
    def _last(self) -> int:
        """The last piece that has a length: the end of the path lies on it."""
        return int(np.flatnonzero(self._pieces.lengths > 0)[-1])

    def _within(self, lengths: Floats) -> Floats:
        if self.path.closed:
            return np.asarray(lengths % self.total_mm)
        beyond = (lengths < -OVERRUN_MM) | (lengths > self.total_mm + OVERRUN_MM) | ~np.isfinite(lengths)
        if np.any(beyond):
            asked = float(lengths[beyond][0])
            raise GeometryError(f"{asked:g} mm along a path lies beyond it, it is {self.total_mm:.6g} mm long")
        return np.clip(lengths, 0.0, self.total_mm)

    def _nearest_one(self, place: Floats) -> float:
        """Compare the closest points of all pieces."""
        kinds, data, lengths = self._pieces.kinds, self._pieces.data, self._pieces.lengths
        local = _project_on_lines(data, place) * lengths
        for kind, project in ((ARC, _project_on_arcs), (CUBIC, _project_on_cubics)):
            here = kinds == kind
            local[here] = project(data[here], place)
        along = np.minimum(self._marks[:-1] + local, self._marks[1:])
        reached = self._reached(kinds, data, local)
        return float(along[np.argmin(((reached - place) ** 2).sum(axis=1))])

    @staticmethod
    def _reached(kinds: NDArray[np.uint8], data: Floats, local: Floats) -> Floats:
        points = _on_lines(data, local)[0]
        for kind, walk in ((ARC, _on_arcs), (CUBIC, _on_cubics)):
            here = kinds == kind
            points[here] = walk(data[here], local[here])[0]
        return points


def _on_lines(data: Floats, local: Floats) -> tuple[Floats, Floats]:
    tangents = bezier.unit(data[:, 3] - data[:, 0])
    return data[:, 0] + tangents * local[:, None], tangents


def _on_arcs(data: Floats, local: Floats) -> tuple[Floats, Floats]:
    centre, radius, sweep = data[:, 1], data[:, 2, 0], data[:, 2, 1]
    way = np.sign(sweep)
    spoke = data[:, 0] - centre
    angle = np.arctan2(spoke[:, 1], spoke[:, 0]) + way * local / radius
    outward = np.stack((np.cos(angle), np.sin(angle)), axis=-1)
    tangents = np.stack((-outward[:, 1], outward[:, 0]), axis=-1) * way[:, None]
    return centre + outward * radius[:, None], tangents


def _on_cubics(data: Floats, local: Floats) -> tuple[Floats, Floats]:
    t = _parameter(data, local)
    return bezier.points(data, t), bezier.directions(data, t)


def _parameter(cubics: Floats, local: Floats) -> Floats:
    """Parameters at which the cubics have run their local lengths: Newton inside a shrinking bracket."""
    total = lengths_until(cubics, np.ones(len(cubics)))
    low, high = np.zeros(len(cubics)), np.ones(len(cubics))
    t = np.clip(local / np.where(total > 0, total, 1.0), 0.0, 1.0)
    for _ in range(MAX_STEPS):
        excess = lengths_until(cubics, t) - local
        if np.all(np.abs(excess) <= FOUND_MM):
            break
        low, high = np.where(excess < 0, t, low), np.where(excess > 0, t, high)
        speed = np.hypot(*np.moveaxis(bezier.velocities(cubics, t), -1, 0))
        step = t - excess / np.where(speed > 0, speed, np.inf)
        t = np.where((step > low) & (step < high), step, (low + high) / 2)
    return t


def _project_on_lines(data: Floats, place: Floats) -> Floats:
    """Shares of the chords (n,), in [0, 1], closest to a place."""
    span = data[:, 3] - data[:, 0]
    square = (span**2).sum(axis=1)
    share = ((place - data[:, 0]) * span).sum(axis=1) / np.where(square > 0, square, 1.0)
    return np.asarray(np.clip(share, 0.0, 1.0))


def _project_on_arcs(data: Floats, place: Floats) -> Floats:
    """Lengths along the arcs closest to a place; outside an arc's sector the nearer end."""
    centre, radius, sweep = data[:, 1], data[:, 2, 0], data[:, 2, 1]
    spoke, sight = data[:, 0] - centre, place - centre
    turned = np.arctan2(sight[:, 1], sight[:, 0]) - np.arctan2(spoke[:, 1], spoke[:, 0])
    turned = turned * np.sign(sweep) % (2 * np.pi)
    size = np.abs(sweep)
    nearer_end = np.where(turned - size < 2 * np.pi - turned, size, 0.0)
    return np.asarray(np.where(turned <= size, turned, nearer_end) * radius)


def _project_on_cubics(data: Floats, place: Floats) -> Floats:
    return lengths_until(data, bezier.closest(data, np.broadcast_to(place, (len(data), 2))))
