"""Many curves at once, as rows of an ``Outline``'s arrays: points, velocities, nearest points, sub-curves.

Millimetres; every curve runs over t in [0, 1]: a line and an arc in proportion to length, a cubic as Bézier's.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry import bezier
from heraldry.geometry.outline import ARC, CUBIC

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

PROJECTION_STEPS = 6
"""Gauss–Newton steps to a nearest point: from within a micrometre of the curve four reach the last bit."""

SETTLED_T = 1e-14
"""A step of t that changes nothing that matters."""


@dataclass(frozen=True, eq=False)
class Curves:
    """Rows of curves; indexing with an array of rows picks them."""

    kinds: NDArray[np.uint8]
    data: Floats

    def __len__(self) -> int:
        return len(self.kinds)

    def __getitem__(self, rows: NDArray[np.generic]) -> Curves:
        return Curves(self.kinds[rows], self.data[rows])

    def points(self, t: Floats) -> Floats:
        """The point (n, 2) of each curve at its own parameter."""
        found = self.data[:, 0] + (self.data[:, 3] - self.data[:, 0]) * t[:, None]
        arc, cubic = np.flatnonzero(self.kinds == ARC), np.flatnonzero(self.kinds == CUBIC)
        if len(arc):
            found[arc] = self.data[arc, 1] + self._spokes(arc, t)
        if len(cubic):
            found[cubic] = bezier.points(self.data[cubic], t[cubic])
        return found

    def velocities(self, t: Floats) -> Floats:
        """The derivative (n, 2) by t of each curve at its own parameter."""
        found = self.data[:, 3] - self.data[:, 0]
        arc, cubic = np.flatnonzero(self.kinds == ARC), np.flatnonzero(self.kinds == CUBIC)
        if len(arc):
            spoke = self._spokes(arc, t) * self.data[arc, 2, 1:]
            found[arc, 0], found[arc, 1] = -spoke[:, 1], spoke[:, 0]
        if len(cubic):
            found[cubic] = bezier.velocities(self.data[cubic], t[cubic])
        return found

    def nearest(self, points: Floats, guess: Floats) -> Floats:
        """The parameter nearest to a point, from a guess that is near already; may leave [0, 1]."""
        t = guess
        for _ in range(PROJECTION_STEPS):
            velocity = self.velocities(t)
            square = np.maximum(np.sum(velocity**2, axis=1), np.finfo(float).tiny)
            step = np.sum((self.points(t) - points) * velocity, axis=1) / square
            t = t - step
            if np.all(np.abs(step) <= SETTLED_T):
                break
        return t

    def cubic_between(self, start: Floats, end: Floats) -> Floats:
        """The control points (n, 4, 2) of cubics cut to [start, end]; start > end turns them round.

        Each new control point is the cubic's polar form with start and end mixed, e.g. f(start, start, end).
        """
        polar = np.empty_like(self.data)
        for i, parameters in enumerate(
            ((start, start, start), (start, start, end), (start, end, end), (end, end, end))
        ):
            layer = self.data
            for t in parameters:
                layer = layer[:, :-1] + (layer[:, 1:] - layer[:, :-1]) * t[:, None, None]
            polar[:, i] = layer[:, 0]
        return polar

    def _spokes(self, arc: Ints, t: Floats) -> Floats:
        """From the centres of arcs to their points at t."""
        first = self.data[arc, 0] - self.data[arc, 1]
        angle = np.arctan2(first[:, 1], first[:, 0]) + t[arc] * self.data[arc, 2, 1]
        spoke = np.empty((len(arc), 2))
        spoke[:, 0], spoke[:, 1] = np.cos(angle), np.sin(angle)
        return spoke * self.data[arc, 2, :1]


def distances(a: Floats, b: Floats) -> Floats:
    """Distances (n,) between points (n, 2)."""
    return np.hypot(a[:, 0] - b[:, 0], a[:, 1] - b[:, 1])
