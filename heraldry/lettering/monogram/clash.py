"""Where a letter may stand beside another, told roughly for a whole field of places at once.

Two letters go together where their strokes cross and do not run along each other, and where no stroke of one lies on a
joint of the other. All three are correlations, found for every shift of one letter against the other by their spectra:

* edges are strewn over a raster with their directions. Two edges θ apart run along each other by cos⁴θ, which is 3/8 +
  cos(2θ)/2 + cos(4θ)/8, and across by sin²θ, which is 1/2 - cos(2θ)/2: five rasters, each correlated with its like and
  blurred, say how much of either there is;
* a concave corner of an outline marks a joint. Joints of one letter, blurred to the width of a stroke, are correlated
  with the ink of the other.

Measures are in stems, so that they say the same at all sizes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.geometry.point import Point

Raster = NDArray[np.float64]
Spectrum = NDArray[np.complex128]

CELLS_TO_STEM = 4
"""Raster cells to a stem: fine enough to rank places, which are then looked at closely."""

CELLS_STEP = 32
"""A raster is a multiple of so many cells wide: spectra of such widths are quick."""

NEAR_STEMS = 1.0
"""Edges this far apart, in stems, still belong to each other by exp(-1/2)."""

JOINT_STEMS = 0.9
"""And a stroke this far from a joint still lies on it by exp(-1/2)."""

CONCAVE = 0.35
"""An outline that turns outward by more radians than these has a joint there; chords of a curve turn by less."""

CROSSED = 4 * 2 * np.pi * NEAR_STEMS**2
"""What the edges of two strokes that cross at a right angle come to."""

ALONG = 0.1
"""What it costs that edges run along each other, for each stem of it; the unit is that of all costs of a place."""

ON_JOINT = 1.0
"""And for each square stem of a stroke that lies on a joint."""

CROSSINGS, WORTH = (0.0, 1.0, 2.0, 3.0), (0.0, 3.2, 5.0, 6.0)
"""What so many crossings are worth; more than three are worth no more."""

FAR = 14.0
"""What it costs to stand a letter's width away from where one is wished, by its square."""

EACH = 4
"""So many places at each height at most."""

APART_CELLS = 2
"""Places are at least so far apart: half a stem."""

HARMONICS = ((0, 3 / 8), (2, 1 / 2), (4, 1 / 8))
"""cos⁴θ as a sum of shares of cos(nθ)."""


@dataclass(frozen=True)
class Window:
    """The places that are looked at, middle of ink to middle of ink, mm.

    ``wished`` is how far across a letter had best stand, and how far up or down it may without being away from there.
    """

    across_mm: tuple[float, float]
    up_mm: tuple[float, ...]
    wished: Point
    width_mm: float

    def away(self, x: NDArray[np.floating[Any]], y: NDArray[np.float64]) -> NDArray[np.float64]:
        """What it costs to stand at these places, far from the wished one."""
        off = (x - self.wished.x) ** 2 + np.maximum(np.abs(y) - self.wished.y, 0.0) ** 2
        return np.asarray(FAR * off / self.width_mm**2)


@dataclass(frozen=True)
class Place:
    """Where the moving letter stands, and how many stems of edges run along each other there."""

    at: Point
    along: float


def likely_places(
    standing: shapely.Geometry, moving: shapely.Geometry, stem_mm: float, window: Window, count: int
) -> tuple[Place, ...]:
    """So many places, the best first, and then for each height the one that is farthest away.

    Both letters have the middle of their ink at the origin.
    """
    cell = stem_mm / CELLS_TO_STEM
    field = _Field(standing, moving, stem_mm, cell, max(map(abs, (*window.across_mm, *window.up_mm))))
    shifts = np.arange(round(window.across_mm[0] / cell), round(window.across_mm[1] / cell) + 1)
    farthest = int(np.argmax(np.abs(shifts)))
    likely: list[tuple[float, Place]] = []
    apart: list[Place] = []
    for up in window.up_mm:
        along, joints, crossings = field.at(shifts, round(up / cell))
        away = window.away(shifts * cell, np.full(len(shifts), up, dtype=np.float64))
        cost = ALONG * along + ON_JOINT * joints - np.interp(crossings, CROSSINGS, WORTH) + away
        places = [Place(Point(float(shift * cell), up), float(much)) for shift, much in zip(shifts, along, strict=True)]
        likely += [(float(cost[i]), places[i]) for i in _least(cost)]
        apart.append(places[farthest])
    likely.sort(key=lambda one: one[0])
    return (*(place for _, place in likely[:count]), *apart)


def _least(cost: Raster) -> list[int]:
    """Where the cost is least, the least first, no two places too near each other."""
    left = cost.copy()
    found: list[int] = []
    while len(found) < EACH and np.isfinite(left).any():
        best = int(np.argmin(left))
        found.append(best)
        left[max(best - APART_CELLS + 1, 0) : best + APART_CELLS] = np.inf
    return found


class _Field:
    """How two letters go together, by shift of the second: rasters [up, across], no shift in the middle."""

    def __init__(
        self, standing: shapely.Geometry, moving: shapely.Geometry, stem_mm: float, cell: float, shift_mm: float
    ) -> None:
        boxes = np.abs([shapely.bounds(letter) for letter in (standing, moving)])
        needed = shift_mm + max(shift_mm, 2 * float(boxes.max())) + NEAR_STEMS * stem_mm
        self._cells = CELLS_STEP * int(np.ceil(needed / cell / CELLS_STEP))
        one, other = (_Signs(letter, self._cells, cell) for letter in (standing, moving))
        pairs = [a * np.conj(b) for a, b in zip(one.edges, other.edges, strict=True)]
        near = _blur(self._cells, NEAR_STEMS * CELLS_TO_STEM)
        on_joints = one.joints * np.conj(other.ink) + one.ink * np.conj(other.joints)
        all_of_them, doubled = pairs[0] / HARMONICS[0][1], (pairs[1] + pairs[2]) / HARMONICS[1][1]
        self._along = self._unfolded(np.sum(pairs, axis=0) * near)
        self._joints = self._unfolded(on_joints * _blur(self._cells, JOINT_STEMS * CELLS_TO_STEM))
        self._crossings = self._unfolded((all_of_them - doubled) / 2 * near) / CROSSED

    def at(self, across: NDArray[np.int64], up: int) -> tuple[Raster, Raster, Raster]:
        """What runs along in stems, strokes on joints in square stems, and crossings: one row, shifts in cells."""
        row, columns = self._cells // 2 + up, self._cells // 2 + across
        return self._along[row, columns], self._joints[row, columns], self._crossings[row, columns]

    def _unfolded(self, spectrum: Spectrum) -> Raster:
        shape = (self._cells, self._cells)
        return np.asarray(np.fft.fftshift(np.fft.irfft2(spectrum, shape)) / CELLS_TO_STEM**2)


class _Signs:
    """The spectra of a letter's edges by direction, its joints, and its ink."""

    def __init__(self, letter: shapely.Geometry, cells: int, cell: float) -> None:
        start, end = _chords(letter)
        along = end - start
        length, angle = np.hypot(*along.T), np.arctan2(along[:, 1], along[:, 0])
        dots = np.maximum(np.ceil(length / cell), 1).astype(np.int64)
        owner = np.repeat(np.arange(len(dots)), dots)
        share = (np.arange(len(owner)) - np.repeat(np.cumsum(dots) - dots, dots) + 0.5) / dots[owner]
        xy = start[owner] + along[owner] * share[:, None]
        weight = (length / dots / cell)[owner]
        self.edges = [
            _spectrum(xy, weight * wave(order * angle[owner]) * part**0.5, cells, cell)
            for order, part in HARMONICS
            for wave in ((np.cos, np.sin) if order else (np.cos,))
        ]
        corners = joints_of(letter)
        self.joints = _spectrum(corners, np.ones(len(corners)), cells, cell)
        self.ink = np.fft.rfft2(_inked(start, end, cells, cell))


def _spectrum(xy: NDArray[np.float64], weight: NDArray[np.float64], cells: int, cell: float) -> Spectrum:
    column, row = (np.floor(xy / cell).astype(np.int64) + cells // 2).T
    laid = np.bincount(row * cells + column, weights=weight, minlength=cells * cells)
    return np.asarray(np.fft.rfft2(laid.reshape(cells, cells)))


def _blur(cells: int, spread_cells: float) -> Raster:
    """The spectrum of exp(-d²/2s²), d and s in cells, 1 in the middle."""
    down, across = np.fft.fftfreq(cells)[:, None], np.fft.rfftfreq(cells)[None, :]
    waves = (2 * np.pi * spread_cells) ** 2 * (down**2 + across**2) / 2
    return np.asarray(2 * np.pi * spread_cells**2 * np.exp(-waves))


def _inked(start: NDArray[np.float64], end: NDArray[np.float64], cells: int, cell: float) -> Raster:
    """1 where a cell's middle is inked: crossings of each row by parity."""
    levels = (np.arange(cells) - cells / 2 + 0.5) * cell
    edge, row = np.nonzero((start[:, 1, None] <= levels) != (end[:, 1, None] <= levels))
    share = (levels[row] - start[edge, 1]) / (end[edge, 1] - start[edge, 1])
    x = start[edge, 0] + (end[edge, 0] - start[edge, 0]) * share
    column = np.ceil(x / cell + cells / 2 - 0.5).astype(np.int64)
    crossed = np.bincount(row * cells + column, minlength=cells * cells).reshape(cells, cells)
    return np.asarray(np.cumsum(crossed, axis=1) % 2, dtype=np.float64)


def _chords(letter: shapely.Geometry) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """The starts and the ends of all chords of its rings."""
    xy, ring = shapely.get_coordinates(shapely.get_rings(shapely.get_parts(letter)), return_index=True)
    follows = ring[1:] == ring[:-1]
    return xy[:-1][follows], xy[1:][follows]


def joints_of(letter: shapely.Geometry) -> NDArray[np.float64]:
    """Where its strokes meet: the corners at which its outline turns away from the ink, (n, 2)."""
    return np.concatenate([np.zeros((0, 2)), *_concave_corners(letter)])


def _concave_corners(letter: shapely.Geometry) -> Iterator[NDArray[np.float64]]:
    for ring in shapely.get_rings(shapely.orient_polygons(shapely.get_parts(letter))):
        xy = shapely.get_coordinates(ring)[:-1]
        into, out = xy - np.roll(xy, 1, axis=0), np.roll(xy, -1, axis=0) - xy
        turn = np.arctan2(into[:, 0] * out[:, 1] - into[:, 1] * out[:, 0], (into * out).sum(axis=1))
        yield xy[turn < -CONCAVE]
