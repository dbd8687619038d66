"""Where a letter stands beside another so that their strokes cross and do not clot; millimetres.

Ink that lies within a clear distance of other ink is lost to the eye, be it covered or merely too near. Where two
strokes cross at an angle little of it is, where they run together much. How much is lost is found for all
places at once: both letters are grown by half of the clear distance and laid on a raster, and the correlation of
the two rasters is the ground they share, for every shift of one against the other.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point

CELLS_TO_GAP = 4
"""Raster cells to the gap: a place is told to a quarter of it. Two cells are added where ink must not be cut, so that
strokes side by side are not shaved by what the raster does not see."""

CUT_WEIGHT = 6.0
"""Ink that is cut away against ink that clots: a stem that runs within a gap of a stem takes a letter away."""

CLEAR_OF_GAP = 2.2
"""Strokes nearer than so many gaps clot, where they do not cross."""

CORNER_CHORDS = 6
"""Chords to a quarter turn where a raster's letters are grown: a hundredth of the distance off."""

LEAST_CELLS = 64
"""The raster is at least so wide, whatever is laid on it."""


@dataclass(frozen=True)
class Window:
    """Where a letter may stand against another, middle of ink to middle of ink; ``pull`` draws it to ``wished``.

    The pull is in square millimetres of lost ink for each square millimetre of distance.
    """

    wished: Point
    across_mm: float
    up_mm: float
    pull: float


def best_place(standing: Outline, moving: Outline, gap_mm: float, window: Window) -> Point:
    """The shift, middle to middle, at which the least ink is lost; the first of equals, from the lower left."""
    cell = gap_mm / CELLS_TO_GAP
    lost = _lost(standing, moving, gap_mm, cell)
    shifts = (np.arange(len(lost)) - len(lost) // 2) * cell
    across, up = np.abs(shifts - window.wished.x), np.abs(shifts - window.wished.y)
    cost = lost + window.pull * (across[None, :] ** 2 + up[:, None] ** 2)
    within = (across <= window.across_mm + cell / 2)[None, :] & (up <= window.up_mm + cell / 2)[:, None]
    row, column = np.unravel_index(np.argmin(np.where(within, cost, np.inf)), cost.shape)
    return Point(float(shifts[column]), float(shifts[row]))


def _lost(standing: Outline, moving: Outline, gap_mm: float, cell: float) -> NDArray[np.float64]:
    """Lost ink in mm² by shift of ``moving``: [up, across], no shift in the middle."""
    reach = max(max(box.width, box.height) for box in (bounds(standing), bounds(moving)))
    needed = 2 * (reach + CLEAR_OF_GAP * gap_mm) / cell
    cells = int(2 ** np.ceil(np.log2(max(needed, LEAST_CELLS))))
    clots = _shared(standing, moving, CLEAR_OF_GAP * gap_mm, cells, cell)
    return clots + CUT_WEIGHT * _shared(standing, moving, gap_mm + 2 * cell, cells, cell)


def _shared(standing: Outline, moving: Outline, apart_mm: float, cells: int, cell: float) -> NDArray[np.float64]:
    """Ground in mm² within a distance of both, by shift: the correlation of rasters, by way of their spectra."""
    spectra = [np.fft.rfft2(_raster(outline, apart_mm / 2, cells, cell)) for outline in (standing, moving)]
    shared = np.fft.irfft2(spectra[0] * np.conj(spectra[1]), (cells, cells))
    return np.asarray(np.fft.fftshift(np.rint(shared)) * cell**2)


def _raster(outline: Outline, grown_mm: float, cells: int, cell: float) -> NDArray[np.float64]:
    """1 where a cell's middle is inked when the outline is grown, its middle in the middle: crossings by parity.

    A raster asks for no curves: the flattened outline is grown, in chords.
    """
    middle = bounds(outline).centre
    home = outline.transformed(Affine.move(-middle.x, -middle.y))
    edges = shapely.boundary(shapely.buffer(to_polygon(home, cell / 4), grown_mm, quad_segs=CORNER_CHORDS))
    start, end = _chords(shapely.get_parts(edges))
    levels = (np.arange(cells) - cells / 2 + 0.5) * cell
    edge, row = np.nonzero((start[:, 1, None] <= levels) != (end[:, 1, None] <= levels))
    share = (levels[row] - start[edge, 1]) / (end[edge, 1] - start[edge, 1])
    x = start[edge, 0] + (end[edge, 0] - start[edge, 0]) * share
    crossings = np.zeros((cells, cells))
    np.add.at(crossings, (row, np.ceil(x / cell + cells / 2 - 0.5).astype(np.int64)), 1.0)
    return np.asarray(np.cumsum(crossings, axis=1) % 2)


def _chords(rings: NDArray[np.object_]) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """The starts and the ends of all chords of closed rings."""
    xy, ring = shapely.get_coordinates(rings, return_index=True)
    follows = ring[1:] == ring[:-1]
    return xy[:-1][follows], xy[1:][follows]
