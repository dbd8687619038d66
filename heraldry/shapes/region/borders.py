"""Inner borders: the lines along which pieces of one land meet, cut as thin gaps. Millimetres."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.shapes.region.fitting import Geometries

QUARTER_CHORDS = 8
"""Chords to a quarter turn at a gap's corners: a gap of 1 mm is then off by 2.4 µm at most."""


def pieces_within(plans: Iterable[shapely.Geometry], parts: Geometries) -> list[shapely.Geometry]:
    """The plans' polygons that belong to the parts of the land that are drawn."""
    kept = [_polygons_within(shapely.get_parts(plan), parts) for plan in plans]
    return [shapely.MultiPolygon(polygons) for polygons in kept if polygons]


def _polygons_within(polygons: Geometries, parts: Geometries) -> list[shapely.Polygon]:
    found, _ = shapely.STRtree(parts).query(shapely.point_on_surface(polygons), predicate="intersects")
    return [polygons[index] for index in np.unique(found)]


def inner_borders(pieces: Sequence[shapely.Geometry]) -> Geometries:
    """The edges that two pieces of a coverage share, to the last bit, chained into lines."""
    edges = np.concatenate([_edges(piece) for piece in pieces])
    distinct, counts = np.unique(edges, axis=0, return_counts=True)
    shared = shapely.linestrings(distinct[counts > 1].reshape(-1, 2, 2))
    return np.asarray(shapely.get_parts(shapely.line_merge(shapely.MultiLineString(list(shared)))))


def gaps(borders: Geometries, width_mm: float) -> shapely.Geometry:
    """The borders as an area of a width; round all about, so that three that meet leave no tooth."""
    return shapely.MultiLineString(list(borders)).buffer(width_mm / 2, quad_segs=QUARTER_CHORDS)


def lengthened(borders: Geometries, by_mm: float) -> Geometries:
    """The borders with their loose ends, which lie at the coast, drawn out straight by a length."""
    xy, line = shapely.get_coordinates(borders, return_index=True)
    first, last = np.flatnonzero(np.diff(line, prepend=-1)), np.flatnonzero(np.diff(line, append=-1))
    ends, inward = xy[np.append(first, last)], xy[np.append(first + 1, last - 1)]
    _, place, seen = np.unique(ends, axis=0, return_inverse=True, return_counts=True)
    loose = seen[place] == 1
    steps = ends[loose] - inward[loose]
    steps *= by_mm / np.hypot(steps[:, 0], steps[:, 1])[:, None]
    return np.append(borders, shapely.linestrings(np.stack((ends[loose], ends[loose] + steps), axis=1)))


def _edges(piece: shapely.Geometry) -> NDArray[np.float64]:
    """Edges of all rings, shape (n, 4), each from its lesser end."""
    rings = shapely.get_rings(shapely.get_parts(piece))
    xy, ring = shapely.get_coordinates(rings, return_index=True)
    within = ring[1:] == ring[:-1]
    one, two = xy[:-1][within], xy[1:][within]
    turned = (one[:, 0] > two[:, 0]) | ((one[:, 0] == two[:, 0]) & (one[:, 1] > two[:, 1]))
    return np.where(turned[:, None], np.hstack((two, one)), np.hstack((one, two)))
