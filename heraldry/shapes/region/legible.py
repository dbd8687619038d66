"""A coast that prints: no headland thinner, no inlet narrower than the printer holds, and still that coast.

What is thinner than a width is what an opening takes away (Serra, Image Analysis and Mathematical Morphology, 1982:
shrunk by half the width, and grown again). Of that, mere corners stay as they are. A neck that joins two lands, and
a spit that is long, are made as wide as they must be; other points are taken off. Water is treated as land is: straits
between large lands and long inlets are opened up, the rest of what is too narrow is filled, so that small islands grow
together with a shore that is near. In the end each part gets back the area of the land that it shows. Millimetres at
finished size.
"""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.shapes.region.drawing import polygons_of
from heraldry.shapes.region.fitting import Geometries, round_area
from heraldry.shapes.region.simplify import AREA_ROUNDS, MITRE_MAX

LINE_MM = 0.1
"""The finest land that is kept: a little more than dry toner holds, 0.25 pt. Common practice, no source."""

GAP_SHARE = 2.0
"""Water is kept open from twice that on: so do reversed lines compare with lines in print; no source."""

STEPS = (1.2, 1.0)
"""In shares of the widths: first a little coarser, so that what was widened and filled settles in the second."""

ROUGHNESS_MM = 0.03
"""What of arcs and joints is smoothed away after each step: less than the dot of a 600 dpi printer."""

CORNER_SHARE = 0.75
"""A corner's tip, and the bottom of a notch, may be thinner than the width, as far as this share of it."""

LONG_LAND, LONG_WATER = 3.0, 6.0
"""A spit or an inlet this many widths long belongs to what a land is known by, and is kept."""

APART_MM = 1.0
"""Islands as large as a disc of this width stay apart from a shore; smaller ones may grow together with it."""

MIDDLE_SHARE = 0.05
"""How far the middle line of a thin piece may stray, as a share of the width that it gets."""

ARC_CHORDS = 4
"""Chords to a quarter turn where an edge is moved: off by 2 % of half a width."""

BEYOND_MM = 2.0
"""How far the water is looked at beyond the land, at least; more than any width."""

TOUCH_MM = 1e-6
"""What is nearer than this touches: the grid of descriptions."""

AREA_CHANGE_MAX = 0.4
"""A part whose area would have to change by more than this share shows something else, and stays as it is."""


Mask = NDArray[np.bool_]


def legible(parts: Geometries, line_mm: float = LINE_MM) -> Geometries:
    """The parts of a land, those that grow together as one, without what is too thin or too narrow to print.

    Where no line is too thin, as they are.
    """
    if not line_mm or not len(parts):
        return parts
    roughness_mm = min(ROUGHNESS_MM, line_mm / 3)
    shown = shapely.coverage_simplify(parts, roughness_mm)
    for step in STEPS:
        settled = _land_and_water(shown, step * line_mm, step * line_mm * GAP_SHARE)
        settled = polygons_of(shapely.MultiPolygon(list(shapely.coverage_simplify(settled, roughness_mm))))
        if not len(settled):
            return parts
        settled = _without_new_lakes(settled, parts)
        shown = _with_areas_of(parts, settled)
    return np.asarray(shown)


def _land_and_water(parts: Geometries, line_mm: float, gap_mm: float) -> Geometries:
    """The parts with the water opened or filled first, and then the land that is left."""
    land = shapely.union_all(parts)
    frame = shapely.box(*land.bounds).buffer(max(BEYOND_MM, 4 * gap_mm), join_style="mitre")
    apart = parts[shapely.area(parts) >= round_area(APART_MM)]
    water = _settled(frame.difference(land), gap_mm, LONG_WATER, apart)
    return polygons_of(_settled(frame.difference(water), line_mm, LONG_LAND, None))


def _settled(area: shapely.Geometry, width_mm: float, long: float, apart: Geometries | None) -> shapely.Geometry:
    """An area whose thin pieces have been widened where they matter, and taken off where not.

    Passages matter that join two bodies of the area, or lie between two of the lands that stay ``apart``; without
    such lands all passages do.
    """
    core = area.buffer(-width_mm / 2, quad_segs=ARC_CHORDS).buffer(width_mm / 2 + TOUCH_MM, quad_segs=ARC_CHORDS)
    thin = polygons_of(area.difference(core))
    shapely.prepare(core)
    passage = _mouths(thin, core) > 1
    bad = passage | _reaches_out(thin, core, CORNER_SHARE * width_mm)
    if not bad.any():
        return area
    thin, passage = thin[bad], passage[bad]
    matters = passage if apart is None else passage & ((_met(thin, polygons_of(core)) > 1) | (_met(thin, apart) > 1))
    kept = matters | (shapely.length(thin) / 2 > long * width_mm)
    off = shapely.union_all(shapely.buffer(thin[~kept], 2 * TOUCH_MM, quad_segs=1))
    return shapely.union_all([area.difference(off), *(_widened(piece, width_mm) for piece in thin[kept])])


def _reaches_out(pieces: Geometries, core: shapely.Geometry, reach_mm: float) -> Mask:
    """Which pieces have a corner farther from the core than a reach."""
    xy, owner = shapely.get_coordinates(pieces, return_index=True)
    far = ~shapely.dwithin(core, shapely.points(xy), reach_mm)
    return np.bincount(owner[far], minlength=len(pieces)) > 0


def _mouths(pieces: Geometries, core: shapely.Geometry) -> NDArray[np.int64]:
    """At how many places each piece meets the core: the runs of its edges that lie on it."""
    rings, piece = shapely.get_rings(pieces, return_index=True)
    xy, ring = shapely.get_coordinates(rings, return_index=True)
    edge = np.flatnonzero(ring[1:] == ring[:-1])
    on_core = shapely.dwithin(core, shapely.points((xy[edge] + xy[edge + 1]) / 2), TOUCH_MM)
    first = np.flatnonzero(np.diff(ring[edge], prepend=-1))
    before = np.arange(len(edge)) - 1
    before[first] = np.append(first[1:], len(edge)) - 1
    begins = on_core & ~on_core[before]
    return np.bincount(piece[ring[edge[begins]]], minlength=len(pieces))


def _met(pieces: Geometries, bodies: Geometries) -> NDArray[np.int64]:
    """How many of the bodies each piece touches."""
    piece, _ = shapely.STRtree(bodies).query(pieces, predicate="dwithin", distance=TOUCH_MM)
    return np.bincount(piece, minlength=len(pieces))


def _widened(piece: shapely.Polygon, width_mm: float) -> shapely.Geometry:
    """A thin piece made as wide as asked: its middle line, drawn that wide."""
    middle = _middle_line(shapely.segmentize(piece, width_mm))
    middle = shapely.simplify(shapely.line_merge(middle), MIDDLE_SHARE * width_mm)
    return middle.buffer(width_mm / 2, quad_segs=ARC_CHORDS)


def _middle_line(piece: shapely.Polygon) -> shapely.Geometry:
    """The chordal axis of a polygon (Prasad, Morphological analysis of shapes, CNLS Newsletter 139, 1997).

    In a triangulation of the polygon it joins the middles of those edges that are not edges of the polygon, and goes on
    into the tips. Of a single triangle the middle is given.
    """
    triangles = shapely.get_coordinates(shapely.get_parts(shapely.constrained_delaunay_triangles(piece)))
    corners = triangles.reshape(-1, 4, 2)
    middles = (corners[:, :3] + corners[:, 1:]) / 2
    _, place, seen = np.unique(middles.reshape(-1, 2), axis=0, return_inverse=True, return_counts=True)
    inner = (seen[place] > 1).reshape(-1, 3)
    if not inner.any():
        return piece.centroid
    count = inner.sum(axis=1)[:, None]
    opposite = corners[:, [2, 0, 1]]
    among, across = ((places * inner[:, :, None]).sum(axis=1) for places in (middles, opposite))
    hubs = np.where(count == 1, across, among / np.maximum(1, count))
    ends = np.stack((middles, np.broadcast_to(hubs[:, None], middles.shape)), axis=2)
    return shapely.MultiLineString(list(ends[inner]))


def _without_new_lakes(after: Geometries, before: Geometries) -> Geometries:
    """The parts without the small waters that were sea before, and have been cut off from it."""
    lakes = [shapely.Polygon(ring) for part in before for ring in part.interiors]
    tree = shapely.STRtree(lakes)

    def stays(ring: shapely.LinearRing) -> bool:
        water = shapely.Polygon(ring)
        return bool(water.area >= round_area(APART_MM) or len(tree.query(water, predicate="intersects")))

    return np.array(
        [shapely.Polygon(part.exterior, [ring for ring in part.interiors if stays(ring)]) for part in after]
    )


def _with_areas_of(before: Geometries, after: Geometries) -> Geometries:
    """The parts with the area of those they came from, where they are still much the same."""
    source, part = shapely.STRtree(after).query(shapely.point_on_surface(before), predicate="intersects")
    wanted = np.bincount(part, weights=shapely.area(before)[source], minlength=len(after))
    alike = np.abs(wanted / shapely.area(after) - 1.0) < AREA_CHANGE_MAX
    moved = after
    for _ in range(AREA_ROUNDS):
        hair = np.where(alike, (wanted - shapely.area(moved)) / shapely.length(moved), 0.0)
        grown = shapely.buffer(moved, hair, join_style="mitre", mitre_limit=MITRE_MAX)
        moved = np.where(_still_whole(grown, moved, hair), grown, moved)
    return np.asarray(moved)


def _still_whole(grown: Geometries, before: Geometries, hair: NDArray[np.float64]) -> Mask:
    """Which parts are still one piece, and reach no farther than their hair: GEOS's mitres have been seen to."""
    whole = (shapely.get_type_id(grown) == shapely.GeometryType.POLYGON) & ~shapely.is_empty(grown)
    strayed = np.abs(shapely.bounds(grown) - shapely.bounds(before)).max(axis=1)
    return np.asarray(whole & (strayed <= MITRE_MAX * np.abs(hair) + TOUCH_MM))
