"""Fine lines and narrow gaps in one ink's artwork: where, and how wide.

Millimetres; widths are right to ``WIDTH_ACCURACY_MM``. A *line* is a place where the ink is narrow, a *gap*
one where the white between ink is narrow; a gap is a line of the white, and both are found by looking
across from edge to edge (``crossings``).

What counts as narrow. Every corner is narrow at its tip, and no corner is a fine line. So a place counts
when all three hold:

1. the look across is shorter than the limit;
2. its two sides run within ``PARALLEL_RAD`` of parallel: a tip that opens wider is narrower than the limit
   over less than five times the limit, which nobody misses;
3. it lies deeper than ``END_ALLOWANCE`` limits from the end of its spur, measured as half the way along the
   edge from one side of it to the other: the ends of strokes, serifs and small bumps are no lines. A neck
   has no such end and always counts.

A part that is too small for a line and lost as a whole (a dot, a pinhole) counts as well, with the diameter
of the largest disc that it holds. A long needle counts by 2 and 3, with the width that it has at its
allowance.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.guard.crossings import Crossings, Edge, Floats, Indices, corner_pairs, crossings

WIDTH_ACCURACY_MM = 0.002
"""Each side is flattened to half a micrometre and the nearest pair of chords is measured exactly."""

PARALLEL_RAD = 2 * math.atan(1 / (2 * 5))
"""11.4°: a straight tip of this angle is narrower than a limit over five times the limit."""

END_ALLOWANCE = 1.5
"""In limits: a butt end half a limit deep, and one limit for what hangs on it (a serif, a rounding)."""

LOOKS_PER_LIMIT = 2.0
"""Looks start half a limit apart, so that even a neck no longer than the limit is met twice."""

LOOK_BEYOND = 1.15
"""Looks reach this many limits: the narrowest spot lies between two looks that may both miss the limit."""

LINK = 1.5
"""Looks whose middles lie within this many spacings of each other belong to one spot."""

DISC_TOLERANCE_MM = 0.0005
"""How near the largest disc in a small part is found."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A place where ink or white is narrow: its least width, the middle of that, and how far it goes on."""

    kind: Literal["line", "gap"]
    width_mm: float
    place: Point
    extent_mm: float


def thin_lines(outline: Outline, limit_mm: float) -> tuple[Spot, ...]:
    """The places where ink is narrower than a limit, each once, the narrowest first.

    >>> from heraldry.geometry.segments import Path
    >>> bar = Path.through([Point(0, 0), Point(5, 0), Point(5, 0.1), Point(0, 0.1)], closed=True)
    >>> [(spot.width_mm, spot.kind) for spot in thin_lines(Outline.of([bar]), limit_mm=0.2)]
    [(0.1, 'line')]
    """
    return _narrow(outline, "line", limit_mm)


def narrow_gaps(outline: Outline, limit_mm: float) -> tuple[Spot, ...]:
    """The places where the white between ink is narrower than a limit, each once, the narrowest first."""
    return _narrow(outline, "gap", limit_mm)


def _narrow(outline: Outline, kind: Literal["line", "gap"], limit_mm: float) -> tuple[Spot, ...]:
    if not limit_mm > 0.0:
        raise GeometryError(f"the limit for a {kind} is {limit_mm:g} mm, it must be more than 0")
    if outline.is_empty:
        return ()
    region = _Region.of(outline, kind)
    spots = region.spots(limit_mm)
    return _worst_first([*spots, *region.lost_parts(limit_mm, spots)])


def _worst_first(spots: list[Spot]) -> tuple[Spot, ...]:
    return tuple(sorted(spots, key=lambda spot: (spot.width_mm, spot.place.x, spot.place.y)))


@dataclass(frozen=True, eq=False)
class _Region:
    """What is measured, ink or white: its edge, and the parts of it that are bounded."""

    kind: Literal["line", "gap"]
    edge: Edge
    parts: NDArray[np.object_]

    @staticmethod
    def of(outline: Outline, kind: Literal["line", "gap"]) -> _Region:
        """Ink lies to the left of its edge; walked backwards, the same edge has the white on its left."""
        polygons = shapely.get_parts(shapely.orient_polygons(to_polygon(outline)))
        rings = shapely.get_rings(polygons)
        if kind == "gap":
            holes = rings[~shapely.is_ccw(rings)]
            return _Region(kind, _edge_of(shapely.reverse(rings)), shapely.polygons(holes))
        return _Region(kind, _edge_of(rings), polygons)

    def spots(self, limit_mm: float) -> list[Spot]:
        """The spots narrower than a limit, each deep enough in its spur."""
        spacing = limit_mm / LOOKS_PER_LIMIT
        across = self._countable(spacing, limit_mm * LOOK_BEYOND, END_ALLOWANCE * limit_mm)
        middles = (across.near + across.far) / 2
        groups = _neighbours_joined(middles, LINK * spacing)
        measured = [self._measured(across, middles, group, spacing) for group in groups]
        return [spot for spot in measured if spot.width_mm < limit_mm]

    def lost_parts(self, limit_mm: float, spots: list[Spot]) -> list[Spot]:
        """Parts without a spot that hold no disc of the limit's diameter.

        Every place of a part lies within the largest disc's radius r of its edge, so area ≤ r · perimeter:
        that settles most parts without looking for the disc.
        """
        slim = 2 * shapely.area(self.parts) < limit_mm * shapely.length(self.parts)
        places = shapely.multipoints(np.array([tuple(spot.place) for spot in spots]).reshape(-1, 2))
        untold = self.parts[slim & ~shapely.intersects(self.parts, places)]
        discs = [self.largest_disc(part) for part in untold]
        return [disc for disc in discs if disc.width_mm < limit_mm]

    def largest_disc(self, part: shapely.Geometry) -> Spot:
        """The largest disc inside a part, as a spot."""
        spoke = shapely.maximum_inscribed_circle(part, tolerance=DISC_TOLERANCE_MM)
        x, y = shapely.get_coordinates(spoke)[0].tolist()
        diameter = 2 * float(shapely.length(spoke))
        return Spot(self.kind, diameter, Point(x, y), diameter)

    def _countable(self, spacing_mm: float, reach_mm: float, end_mm: float) -> Crossings:
        """The looks across whose sides are parallel and which lie deep enough."""
        found = Crossings.joined(
            crossings(self.edge, spacing_mm, reach_mm, PARALLEL_RAD), corner_pairs(self.edge, reach_mm)
        )
        return found.chosen(self._depth(found) > np.maximum(end_mm, END_ALLOWANCE * found.width_mm))

    def _depth(self, across: Crossings) -> Floats:
        way = self.edge.apart_mm(across.near_chord, across.near_along_mm, across.far_chord, across.far_along_mm)
        return way / 2

    def _measured(self, across: Crossings, middles: Floats, group: Indices, spacing_mm: float) -> Spot:
        """A group's narrowest look, drawn straight between the nearest points of the two sides there."""
        best = group[np.argmin(across.width_mm[group])]
        reach = min(spacing_mm / 2, float(self._depth(across.chosen(np.array([best])))[0]) / 2)
        near = self.edge.stretch(int(across.near_chord[best]), float(across.near_along_mm[best]), reach)
        far = self.edge.stretch(int(across.far_chord[best]), float(across.far_along_mm[best]), reach)
        link = shapely.shortest_line(near, far)
        x, y = shapely.get_coordinates(link).mean(axis=0).tolist()
        extent = float(np.hypot(*np.ptp(middles[group], axis=0)))
        return Spot(self.kind, float(shapely.length(link)), Point(x, y), extent)


def _edge_of(rings: NDArray[np.object_]) -> Edge:
    return Edge.of([shapely.get_coordinates(ring)[:-1] for ring in rings])


def _neighbours_joined(points: Floats, within_mm: float) -> list[Indices]:
    """Groups of points that hang together by steps of at most ``within_mm``, each as indices.

    Points of one cell whose diagonal is a step hang together anyhow, so cells are joined, not points: each has at
    most two dozen neighbours, however many points crowd there.
    """
    if not len(points):
        return []
    cells = np.floor(points * (math.sqrt(2) / within_mm))
    _, cell = np.unique(cells, axis=0, return_inverse=True)
    crowd = np.argsort(cell, kind="stable")
    crowds = shapely.multipoints(shapely.points(points[crowd]), indices=cell[crowd])
    one, other = shapely.STRtree(crowds).query(crowds, predicate="dwithin", distance=within_mm)
    label = _joined(len(crowds), one, other)[cell]
    order = np.argsort(label, kind="stable")
    return np.split(order, np.flatnonzero(np.diff(label[order])) + 1)


def _joined(count: int, one: Indices, other: Indices) -> Indices:
    """For each of ``count`` things the least one that it hangs together with, by pairs given both ways."""
    label = np.arange(count)
    while True:
        lower = label.copy()
        np.minimum.at(lower, one, label[other])
        lower = lower[lower]
        if np.array_equal(lower, label):
            return label
        label = lower
