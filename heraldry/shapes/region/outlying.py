"""Parts of a land that lie so far off that they would make a speck of the land itself.

A country's map holds all that belongs to it, over seas as well. A herald shows the land that the trains run
on. So the part with most area comes first, and what lies near to what is already there joins it: near means
no farther than a quarter of its present size, so that chains of islands hang together; specks join, but
nothing joins by way of a speck. Where that would leave out much of the area (a land in two halves, islands
all of one size), near is taken twice as wide, and so on. The rest is left out, and said.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.shapes.region.land import Land
from heraldry.shapes.region.projection import Array, middle, stereographic_km

NEAR_SHARE = 1 / 4
"""How far off a part may lie, as a share of the size of what is there; no source, tried on the world."""

LEFT_OUT_MAX = 0.25
"""The share of all area that may be left out."""

# A part with less than this share of all area is a speck.
SPECK_SHARE = 0.001

# Coasts are looked at as dots this share of the largest part's size apart: wiggles do not matter here.
DOT_SPACING = 0.02


def near_parts(land: Land) -> tuple[Land, int]:
    """The land without its far parts, and how many were left out."""
    parts = land.polygons.geoms
    if len(parts) < 2:
        return land, 0
    kept = _look(parts).near()
    if kept.all():
        return land, 0
    polygons = shapely.MultiPolygon([part for part, keep in zip(parts, kept, strict=True) if keep])
    return replace(land, polygons=polygons), int(np.count_nonzero(~kept))


@dataclass(frozen=True, eq=False)
class _Look:
    """Parts as dots and areas in a plane about the largest of them, kilometres."""

    dots: Array
    owner: NDArray[np.int64]
    """The part that each dot belongs to."""
    areas: Array
    """Of the parts within their outer rings, km²."""

    def near(self) -> NDArray[np.bool_]:
        """Which parts are near enough to show."""
        share = NEAR_SHARE
        kept = self._joined(share)
        while self.areas[kept].sum() < (1.0 - LEFT_OUT_MAX) * self.areas.sum():
            share *= 2.0
            kept = self._joined(share)
        return kept

    def _joined(self, share: float) -> NDArray[np.bool_]:
        """Which parts hang together with the largest one, a step being ``share`` of the size so far."""
        solid = self.areas >= SPECK_SHARE * self.areas.sum()
        kept = np.zeros(len(self.areas), dtype=bool)
        new = np.arange(len(self.areas)) == np.argmax(self.areas)
        distance = np.full(len(self.dots), np.inf)
        while (new & solid).any():
            kept |= new
            distance = np.minimum(distance, self._distance_to(new & solid))
            reach = share * float(np.hypot(*np.ptp(self.dots[(kept & solid)[self.owner]], axis=0)))
            new = np.isin(np.arange(len(kept)), self.owner[distance <= reach]) & ~kept
        return np.asarray(kept | new)

    def _distance_to(self, parts: NDArray[np.bool_]) -> Array:
        targets = self.dots[parts[self.owner]]
        steps = self.dots[:, None, :] - targets[None, :, :]
        return np.asarray(np.hypot(steps[..., 0], steps[..., 1]).min(axis=1))


def _look(parts: Sequence[shapely.Polygon]) -> _Look:
    degrees, owner = shapely.get_coordinates(shapely.get_exterior_ring(list(parts)), return_index=True)
    starts = np.flatnonzero(np.diff(owner, prepend=-1))
    areas = _areas(stereographic_km(degrees, degrees[starts][owner]), starts)
    in_largest = owner == np.argmax(areas)
    plane = stereographic_km(degrees, middle(degrees[in_largest]))
    spacing = DOT_SPACING * float(np.hypot(*np.ptp(plane[in_largest], axis=0)))
    dotted = (np.arange(len(owner)) - starts[owner]) % _strides(plane, starts, spacing)[owner] == 0
    return _Look(plane[dotted], owner[dotted], areas)


def _strides(plane: Array, starts: NDArray[np.int64], spacing: float) -> NDArray[np.int64]:
    """Each how manieth vertex of a ring to take, for dots about ``spacing`` apart round the ring's box."""
    sides = np.maximum.reduceat(plane, starts) - np.minimum.reduceat(plane, starts)
    wanted = 1.0 + 2.0 * sides.sum(axis=1) / spacing
    return np.asarray(np.maximum(1, np.diff(starts, append=len(plane)) / wanted), dtype=np.int64)


def _areas(plane: Array, starts: NDArray[np.int64]) -> Array:
    """Areas within closed rings (shoelace formula), unsigned; each ring is about an origin of its own."""
    x, y = plane.T
    swept = np.zeros(len(plane))
    swept[:-1] = x[:-1] * y[1:] - x[1:] * y[:-1]
    swept[starts[1:] - 1] = 0.0
    return np.asarray(np.abs(np.add.reduceat(swept, starts)) / 2.0)
