"""Cuts along the 180th meridian, which maps make so that longitudes stay within 180 degrees.

The land on both sides of a cut has an edge on the meridian, on one side at 180 and on the other at −180, and
the two need not be divided at the same latitudes. Here each such edge gets the points of all others, and all
of them the same longitude: then the edges of the two sides are the same to the last bit, and vanish where the
sides are united.
"""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray

Array = NDArray[np.float64]

HALF_TURN_DEG = 180.0
"""No ring of a map is wider, unless it jumps over the 180th meridian or holds a pole."""


def with_cuts_alike(polygons: shapely.MultiPolygon) -> shapely.MultiPolygon:
    """The polygons in degrees with both sides of every cut divided alike; others are given back as they are."""
    degrees = shapely.get_coordinates(polygons)
    on_cut = np.abs(degrees[:, 0]) == 180.0
    if not on_cut.any():
        return polygons
    latitudes = np.unique(degrees[on_cut, 1])
    return shapely.MultiPolygon([_divided(polygon, latitudes) for polygon in polygons.geoms])


def _divided(polygon: shapely.Polygon, latitudes: Array) -> shapely.Polygon:
    shell, *holes = [_ring(shapely.get_coordinates(ring), latitudes) for ring in shapely.get_rings(polygon)]
    return shapely.Polygon(shell, holes)


def _ring(ring: Array, latitudes: Array) -> Array:
    """A closed ring whose edges on the meridian have a point at each of the latitudes."""
    on_cut = np.abs(ring[:, 0]) == 180.0
    plain = np.where(on_cut[:, None], np.column_stack((np.full(len(ring), 180.0), ring[:, 1])), ring)
    edges = np.flatnonzero(on_cut[:-1] & on_cut[1:])
    between = [_between(ring[edge, 1], ring[edge + 1, 1], latitudes) for edge in edges]
    places = np.repeat(edges + 1, [len(some) for some in between])
    extra = np.concatenate([np.zeros(0), *between])
    return np.insert(plain, places, np.column_stack((np.full(len(extra), 180.0), extra)), axis=0)


def _between(one: float, other: float, latitudes: Array) -> Array:
    """The latitudes strictly between two, in the order of walking from one to the other."""
    inner = latitudes[(latitudes > min(one, other)) & (latitudes < max(one, other))]
    return inner if one < other else inner[::-1]


def without_jumps(geometry: shapely.Geometry) -> shapely.Geometry:
    """A polygon or line whose longitudes run on beyond 180 where they jumped to the other side.

    What reaches round a pole cannot, and is given back as it is.
    """
    if np.ptp(shapely.get_coordinates(geometry)[:, 0]) <= HALF_TURN_DEG:
        return geometry
    if not isinstance(geometry, shapely.Polygon):
        return shapely.transform(geometry, _running_on)
    shell, *holes = [_running_on(shapely.get_coordinates(ring)) for ring in shapely.get_rings(geometry)]
    if not np.isclose(shell[0, 0], shell[-1, 0]):
        return geometry
    west = shell[:, 0].min()
    return shapely.Polygon(shell, [hole - np.array([360.0 * ((hole[0, 0] - west) // 360.0), 0.0]) for hole in holes])


def _running_on(degrees: Array) -> Array:
    return np.column_stack((np.unwrap(degrees[:, 0], period=360.0), degrees[:, 1]))
