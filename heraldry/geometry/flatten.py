"""Curves become chords here: every vertex lies on its curve, and no chord strays from it by more than asked.

Millimetres. Three habits make two flattenings of one curve share their vertices to the last bit, which is
what lets the set operations see that they are one curve:

* the ends of a segment are copied, never computed;
* circles are divided on one absolute grid of angles, 2πk/N with N = 24, 48, 96…, so that equal circles share
  vertices wherever they start, and circles that are concentric or touch from inside never cross: the polygon
  of the smaller has every second (or fourth…) vertex of the larger, on a smaller scale;
* a cubic is evaluated from its lexicographically smaller end, so that walking it backwards changes nothing.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry import bezier
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.segments import Path

FLATTEN_TOLERANCE_MM = 0.0005
"""Half a micrometre: a tenth of the finest dot of a film setter, and 2000 vertices for a full emblem."""

SMALL_CURVE_SHARE = 1 / 200
"""A curve smaller than the tolerance can see is flattened to this share of its own length instead."""

COARSEST_CIRCLE = 24
"""The least number of chords on a full circle; finer ones have twice, four times… as many."""

GRID_CLEARANCE = 1e-3
"""Grid vertices nearer to an arc's end than this share of a chord are left out, for the end stands for them."""


@dataclass(frozen=True, eq=False)
class Chords:
    """Chord starts of many segments in order: ``xy[i]`` lies on segment ``owner[i]`` at parameter ``t[i]``."""

    owner: NDArray[np.int64]
    t: NDArray[np.float64]
    xy: NDArray[np.float64]


def flatten(outline: Outline, tolerance_mm: float = FLATTEN_TOLERANCE_MM) -> tuple[NDArray[np.float64], ...]:
    """The rings as arrays of vertices (n, 2), the first not repeated, off by at most ``tolerance_mm``."""
    chords = divide(outline.kinds, outline.data, tolerance_mm)
    first = np.searchsorted(chords.owner, outline.rings[1:-1])
    return tuple(np.split(chords.xy, first)) if len(outline.rings) > 1 else ()


def flatten_path(path: Path, tolerance_mm: float = FLATTEN_TOLERANCE_MM) -> NDArray[np.float64]:
    """The vertices (n, 2) of an open or closed path, both ends included.

    >>> from heraldry.geometry.point import Point
    >>> flatten_path(Path.through([Point(0, 0), Point(2, 1)])).tolist()
    [[0.0, 0.0], [2.0, 1.0]]
    """
    row = Outline.of([path])
    return np.concatenate((divide(row.kinds, row.data, tolerance_mm).xy, row.data[-1:, 3]))


def divide(kinds: NDArray[np.uint8], data: NDArray[np.float64], tolerance_mm: float) -> Chords:
    """Chord starts of segments given as the arrays of an ``Outline``."""
    counts = np.ones(len(kinds), dtype=np.int64)
    arcs, cubics = np.flatnonzero(kinds == ARC), np.flatnonzero(kinds == CUBIC)
    grid = _ArcGrid.over(data[arcs], tolerance_mm)
    counts[arcs] += grid.inner
    counts[cubics] = _cubic_counts(data[cubics], tolerance_mm)
    owner = np.repeat(np.arange(len(kinds)), counts)
    step = np.arange(len(owner)) - np.repeat(np.cumsum(counts) - counts, counts)
    t = step / counts[owner]
    xy = data[owner, 0]
    on_arc = np.flatnonzero((kinds[owner] == ARC) & (step > 0))
    t[on_arc], xy[on_arc] = grid.vertices(np.searchsorted(arcs, owner[on_arc]), step[on_arc])
    on_cubic = np.flatnonzero((kinds[owner] == CUBIC) & (step > 0))
    xy[on_cubic] = _on_cubics(data[owner[on_cubic]], step[on_cubic], counts[owner[on_cubic]])
    return Chords(owner, t, xy)


def _cubic_counts(data: NDArray[np.float64], tolerance_mm: float) -> NDArray[np.int64]:
    """Equal steps of t: a chord of step h is off by at most h²/8 of the greatest second derivative."""
    legs = np.diff(data, axis=1)
    bend = np.hypot(*np.moveaxis(np.diff(legs, axis=1), -1, 0)).max(axis=1, initial=0.0)
    length = np.hypot(legs[..., 0], legs[..., 1]).sum(axis=1)
    tolerance = np.minimum(tolerance_mm, length * SMALL_CURVE_SHARE)
    with np.errstate(invalid="ignore", divide="ignore"):
        counts = np.ceil(np.sqrt(0.75 * bend / tolerance))
    return np.asarray(np.maximum(np.nan_to_num(counts, nan=1.0), 1), dtype=np.int64)


def _on_cubics(data: NDArray[np.float64], step: NDArray[np.int64], count: NDArray[np.int64]) -> NDArray[np.float64]:
    """Points at t = step/count, evaluated from the smaller end."""
    ahead = data.reshape(-1, 8)
    back = data[:, ::-1].reshape(-1, 8)
    unlike = ahead != back
    first = np.argmax(unlike, axis=1)
    row = np.arange(len(data))
    turned = ahead[row, first] > back[row, first]
    controls = np.where(turned[:, None, None], data[:, ::-1], data)
    return bezier.points(controls, np.where(turned, count - step, step) / count)


@dataclass(frozen=True, eq=False)
class _ArcGrid:
    """Where arcs meet the absolute grid of angles: inner vertices are k = first, first ± 1, …"""

    centre: NDArray[np.float64]
    radius: NDArray[np.float64]
    start_rad: NDArray[np.float64]
    sweep_rad: NDArray[np.float64]
    per_turn: NDArray[np.int64]
    first: NDArray[np.int64]
    inner: NDArray[np.int64]

    @staticmethod
    def over(data: NDArray[np.float64], tolerance_mm: float) -> _ArcGrid:
        centre, radius, sweep = data[:, 1], data[:, 2, 0], data[:, 2, 1]
        spoke = data[:, 0] - centre
        start = np.arctan2(spoke[:, 1], spoke[:, 0])
        per_turn = chords_per_turn(radius, tolerance_mm)
        ends = np.stack((start, start + sweep)) * per_turn / (2 * np.pi)
        lowest = np.floor(ends.min(axis=0) + GRID_CLEARANCE).astype(np.int64) + 1
        highest = np.ceil(ends.max(axis=0) - GRID_CLEARANCE).astype(np.int64) - 1
        first = np.where(sweep > 0, lowest, highest)
        return _ArcGrid(centre, radius, start, sweep, per_turn, first, np.maximum(highest - lowest + 1, 0))

    def vertices(
        self, arc: NDArray[np.int64], step: NDArray[np.int64]
    ) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Parameter and place of the ``step``-th inner vertex (from 1) of each arc."""
        k = self.first[arc] + (step - 1) * np.where(self.sweep_rad[arc] > 0, 1, -1)
        unit = 2 * np.pi / self.per_turn[arc]
        t = (k * unit - self.start_rad[arc]) / self.sweep_rad[arc]
        angle = (k % self.per_turn[arc]) * unit
        spoke = np.stack((np.cos(angle), np.sin(angle)), axis=-1) * self.radius[arc, None]
        return t, self.centre[arc] + spoke


def chords_per_turn(radius: NDArray[np.float64], tolerance_mm: float) -> NDArray[np.int64]:
    """The least doubling of the coarsest count whose sagitta is within the tolerance."""
    with np.errstate(divide="ignore"):
        half_angle = np.arccos(np.clip(1.0 - tolerance_mm / radius, -1.0, 1.0))
        needed = np.pi / np.maximum(half_angle, 1e-9) / COARSEST_CIRCLE
    return (COARSEST_CIRCLE * 2 ** np.ceil(np.log2(np.maximum(needed, 1.0)))).astype(np.int64)
