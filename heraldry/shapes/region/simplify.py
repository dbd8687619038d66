"""Fewer points, as few as the finished size can show, with every border and every area kept.

GEOS takes away vertices of a whole coverage by the area of the triangle they make with their neighbours
(Visvalingam and Whyatt, Line generalisation by repeated elimination of points, The Cartographic Journal 30,
1993), never so that lines cross: shared borders stay shared, and a narrow neck stays open. Where the coast
is all fjords that adds more land than it takes. So each part gets its area back, by moving its coast out or
in by the same hair all along: the area missing over the length of the coast, some micrometres.
Millimetres at finished size.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.shapes.region.borders import inner_borders
from heraldry.shapes.region.fitting import Geometries

Array = NDArray[np.float64]

DETAIL_MM = 0.05
"""Default of how fine a coast is kept: a little more than the dot of a 600 dpi printer, 0.042 mm."""

AREA_ROUNDS = 4
"""Each round leaves of an area's error only what bends and mitres make of it, a tenth or less."""

MITRE_MAX = 3.0
"""No vertex moves more than this times the hair: at a needle's tip the mitre would run away."""


@dataclass(frozen=True, eq=False)
class Simple:
    """The parts of a land with fewer points, and its inner borders where they were asked for."""

    parts: Geometries
    borders: Geometries


def simplify(parts: Geometries, pieces: Sequence[shapely.Geometry], detail_mm: float) -> Simple:
    """Take away every vertex whose triangle is smaller than ``detail_mm`` squared.

    ``pieces`` are the coverage that the parts were dissolved from, or none where its borders do not matter.
    """
    if not pieces:
        fewer = shapely.coverage_simplify(parts, detail_mm)
        return Simple(with_areas(fewer, shapely.area(parts)), parts[:0])
    coverage = shapely.coverage_simplify(np.array(pieces), detail_mm)
    fewer = shapely.get_parts(shapely.coverage_union_all(coverage))
    before = parts[shapely.STRtree(parts).nearest(shapely.point_on_surface(fewer))]
    return Simple(with_areas(fewer, shapely.area(before)), inner_borders(coverage))


def with_areas(parts: Geometries, areas: Array) -> Geometries:
    """The parts with their coasts moved so that they have these areas.

    A part stays as it is where that would spoil it, or make it meet a larger one a hair off.
    """
    former = shapely.orient_polygons(parts, exterior_cw=False)
    moved = former
    for _ in range(AREA_ROUNDS):
        hair = (areas - shapely.area(moved)) / shapely.length(moved)
        moved = _moved_out(moved, hair)
    stays = ~shapely.is_valid(moved)
    while (meeting := _smaller_of_meeting(np.where(stays, former, moved), stays)).any():
        stays = stays | meeting
    return np.asarray(np.where(stays, former, moved))


def _moved_out(parts: Geometries, hair: Array) -> Geometries:
    """Each part with its vertices moved outward along their mitres; where two parts touch they stay."""
    xy, part = shapely.get_coordinates(parts, return_index=True)
    before, after = _neighbours(parts)
    one, two = _outward(xy - xy[before]), _outward(xy[after] - xy)
    mitre = (one + two) / np.maximum(1.0 + np.sum(one * two, axis=1), 2.0 / MITRE_MAX**2)[:, None]
    steps = mitre * hair[part, None]
    steps[_touching(xy, part)] = 0.0
    return np.asarray(shapely.set_coordinates(parts.copy(), xy + steps))


def _neighbours(parts: Geometries) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """For each coordinate of closed rings the one before and the one after, the last one being the first again."""
    _, ring = shapely.get_coordinates(shapely.get_rings(parts), return_index=True)
    count = np.arange(len(ring))
    starts = np.flatnonzero(np.diff(ring, prepend=-1))
    ends = np.append(starts[1:], len(ring)) - 1
    before, after = count - 1, count + 1
    before[starts], after[ends] = ends - 1, starts + 1
    return before, after


def _outward(edges: Array) -> Array:
    """Unit vectors to the right of edges: out of a ring that runs counter-clockwise."""
    lengths = np.hypot(edges[:, 0], edges[:, 1])
    return np.column_stack((edges[:, 1], -edges[:, 0])) / np.where(lengths > 0, lengths, 1.0)[:, None]


def _touching(xy: Array, part: NDArray[np.int64]) -> NDArray[np.bool_]:
    """Which vertices lie where one of another part lies."""
    _, place = np.unique(xy, axis=0, return_inverse=True)
    pairs = np.unique(np.column_stack((place, part)), axis=0)
    return np.asarray((np.bincount(pairs[:, 0]) > 1)[place])


def _smaller_of_meeting(parts: Geometries, stays: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Of each two parts that share more than points, the smaller one, or the other where that stays already."""
    one, other = shapely.STRtree(parts).query(parts, predicate="intersects")
    meet = (one < other) & ~shapely.touches(parts[one], parts[other])
    areas = shapely.area(parts)
    small = np.where(areas[one[meet]] < areas[other[meet]], one[meet], other[meet])
    large = one[meet] + other[meet] - small
    chosen = np.where(stays[small], large, small)
    return np.isin(np.arange(len(parts)), chosen) & ~stays
