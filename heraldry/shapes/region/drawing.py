"""Areas on a map as outlines: cut, smoothed, clipped. Millimetres."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import clean
from heraldry.geometry.fit import fit_outline
from heraldry.geometry.outline import LINE, Outline
from heraldry.shapes.region.fitting import Geometries
from heraldry.shapes.region.simplify import DETAIL_MM

SMOOTH_SHARE = 0.5
"""Curves stray up to twice their tolerance; half the detail is then no farther off than the detail itself."""


CRUMB_MM = 1e-3
"""Set operations on a coast leave edges shorter than this, far too short to see."""


def moved(geometries: Sequence[shapely.Geometry] | Geometries, affine: Affine) -> Geometries:
    """The geometries under an affine map."""
    return np.array(shapely.transform(np.array(geometries, dtype=object), affine.on_array))


def outline_of(land: Geometries) -> Outline:
    """Polygons as an outline of straight lines: outer rings counter-clockwise, holes clockwise."""
    rings = shapely.get_rings(shapely.orient_polygons(land, exterior_cw=False))
    xy, ring = shapely.get_coordinates(rings, return_index=True)
    within = ring[1:] == ring[:-1]
    one, two = xy[:-1][within], xy[1:][within]
    ends = np.concatenate(([0], np.cumsum(np.bincount(ring[:-1][within]))))
    data = np.stack((one, one, two, two), axis=1)
    return Outline(np.full(len(data), LINE, np.uint8), data, ends.astype(np.int64))


def smoothed(outline: Outline, fineness_mm: float) -> Outline:
    """The coast as curves no farther off than the points that were taken away; what crosses is made clean."""
    tolerance_mm = max(fineness_mm, DETAIL_MM) * SMOOTH_SHARE
    return clean(fit_outline(outline, tolerance_mm), "evenodd")


def without_crumbs(parts: Geometries) -> Geometries:
    """The parts brought to a grid, which leaves no edge too short to see, and nothing that crosses."""
    return polygons_of(shapely.set_precision(shapely.union_all(parts), CRUMB_MM))


def polygons_of(area: shapely.Geometry) -> Geometries:
    """The polygons of an area that have one."""
    parts = shapely.get_parts(shapely.get_parts([area]))
    return np.asarray(parts[(shapely.get_type_id(parts) == shapely.GeometryType.POLYGON) & (shapely.area(parts) > 0)])
