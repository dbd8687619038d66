"""The shape ``coast``: lines along the shore of a region, in the land or in the water before it. Millimetres.

Shore is what of the region's edge no other land of its map lies beyond.
"""

from __future__ import annotations

import shapely

from heraldry.errors import RegionError
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.measure import bounds
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.region.drawing import outline_of, polygons_of, smoothed
from heraldry.shapes.region.land_map import DrawnRegion, drawn_region
from heraldry.shapes.region.neighbours import Around
from heraldry.shapes.table import Count, Drawn, Flag, Length, ShapeRef, shape

SHORE_DETAILS = 4.0
"""Edge farther from other land than this many details of the coast is shore: simplified borders stray less."""

SHORT_WIDTHS = 2.0
"""Pieces of line shorter than this many widths are left out: they are the mouths of border rivers."""

ARC_CHORDS = 8
"""Chords to a quarter turn round the corners of a coast: a line 1 mm off is out by 5 µm at most."""


@shape
def coast(
    coast: ShapeRef,
    width: Length,
    inside: Length = 0.0,
    count: Count = 1,
    gap: Length | None = None,
    all_round: Flag = False,
    smooth: Flag = False,
) -> Drawn:
    """Lines along the shore of a region, `width` wide; `coast` is the region's name.

    They begin `inside` of the edge, or outside where that is negative; `count` lines lie `gap` apart, each farther
    from the edge than the one before. `all_round` follows borders with other lands as well. Raises RegionError.
    """
    positive("width", width)
    at_least("count", count, 1)
    pitch = width + (width if gap is None else positive("gap", gap))
    region = drawn_region(coast, "coast")
    own = to_polygon(region.outline)
    reach = abs(inside) + count * pitch
    lines = shapely.union_all([_line(own, inside, width, i * pitch) for i in range(count)])
    if not all_round:
        lines = lines.intersection(_shore(region, own).buffer(reach, cap_style="flat", quad_segs=ARC_CHORDS))
    parts = polygons_of(lines)
    parts = parts[shapely.length(parts) / 2 >= SHORT_WIDTHS * width]
    if not len(parts):
        raise RegionError("this region has no shore at this size; all_round = true draws the line along all its edge")
    outline = outline_of(parts)
    return Drawn(smoothed(outline, region.asked.fineness_mm) if smooth else outline)


def _line(own: shapely.Geometry, inside_mm: float, width_mm: float, farther_mm: float) -> shapely.Geometry:
    """A line that begins at a distance inside of the edge (outside, where negative), and goes on away from it."""
    if inside_mm >= 0:
        return _grown(own, -inside_mm - farther_mm).difference(_grown(own, -inside_mm - farther_mm - width_mm))
    return _grown(own, -inside_mm + farther_mm + width_mm).difference(_grown(own, -inside_mm + farther_mm))


def _grown(own: shapely.Geometry, by_mm: float) -> shapely.Geometry:
    return own.buffer(by_mm, quad_segs=ARC_CHORDS) if by_mm else own


def _shore(region: DrawnRegion, own: shapely.Geometry) -> shapely.Geometry:
    """The lines of the region's edge that lie away from all other land."""
    margin = SHORE_DETAILS * region.asked.fineness_mm
    try:
        others = Around.of(region, (), bounds(region.outline).grown(margin)).area
    except RegionError:  # an island: nothing lies around it
        return own.boundary
    return own.boundary.difference(others.buffer(margin, quad_segs=2))
