"""The shapes ``map_lines`` and ``map_areas``: rivers, roads, lakes and what else a map file has, on a region's map.

Both are drawn by a region that is named, at its scale. What lies beyond a reach round it is left out before it is
projected. Millimetres.
"""

from __future__ import annotations

import numpy as np
import shapely

from heraldry.errors import RegionError
from heraldry.geometry.boolean import unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.offset import stroke
from heraldry.geometry.outline import Bounds
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.region import map_file
from heraldry.shapes.region.around import seen_of, seen_parts
from heraldry.shapes.region.drawing import outline_of, polygons_of, smoothed
from heraldry.shapes.region.fitting import ISLAND_MIN_MM, without_small_holes, without_specks
from heraldry.shapes.region.land_map import DrawnRegion, drawn_region
from heraldry.shapes.region.legible import LINE_MM, legible
from heraldry.shapes.region.picking import Pick
from heraldry.shapes.region.plan import EDGE_MAX_DEG, dissolve, project
from heraldry.shapes.region.projection import Array
from heraldry.shapes.region.simplify import DETAIL_MM, simplify
from heraldry.shapes.routes import sweep
from heraldry.shapes.table import Drawn, File, Flag, Length, ShapeRef, Text, shape

END_CHORDS = 12
"""Chords to a quarter turn at ends and bends: a line of 1 mm is off by 1 µm at most."""


@shape
def map_lines(
    map_lines: File,
    on: ShapeRef,
    width: Length,
    feature: Text | None = None,
    where: Text | None = None,
    layer: Text | None = None,
    detail: Length = DETAIL_MM,
    shortest: Length = 0.0,
    smooth: Flag = False,
) -> Drawn:
    """Lines of a map file, such as rivers, a `width` wide; `on` is the region on whose map they are drawn.

    `feature`, `where` and `layer` pick as they do for a region; pieces shorter than `shortest` are left out, and what
    `detail` cannot show is made simpler; `smooth` makes one sweep of each. Raises RegionError.
    """
    positive("width", width)
    at_least("detail", detail, 0.0)
    region = drawn_region(on, "on")
    window = region.land_map.window(_surroundings(region))
    found = map_file.read_lines(map_lines, Pick(feature, where, layer))
    seen = [part for line in found for part in seen_parts(line, window) if part.geom_type == "LineString"]
    lines = shapely.get_parts(shapely.line_merge(shapely.MultiLineString(_on_drawing(region, seen))))
    lines = shapely.simplify(lines[shapely.length(lines) >= shortest], detail)
    if not len(lines):
        raise RegionError(f"no line of {map_lines.name} lies on the map of this region and is long enough to show")
    if smooth:
        return Drawn(unite(*(stroke(_swept(line), width, ends="round") for line in lines)))
    band = shapely.union_all(shapely.buffer(lines, width / 2, quad_segs=END_CHORDS))
    return Drawn(outline_of(polygons_of(band)))


@shape
def map_areas(
    map_areas: File,
    on: ShapeRef,
    feature: Text | None = None,
    where: Text | None = None,
    layer: Text | None = None,
    islands: Length = ISLAND_MIN_MM,
    detail: Length = DETAIL_MM,
    finest: Length = LINE_MM,
    smooth: Flag = False,
) -> Drawn:
    """Areas of a map file, such as lakes; `on` is the region on whose map they are drawn.

    `feature`, `where` and `layer` pick as they do for a region. Areas finished smaller than a disc of `islands` across
    are left out, as are holes in them. Raises RegionError.
    """
    at_least("islands", islands, 0.0)
    at_least("finest", finest, 0.0)
    region = drawn_region(on, "on")
    window = region.land_map.window(_surroundings(region))
    found = map_file.read(map_areas, Pick(feature, where, layer))
    seen = [land for land in (seen_of(one, window) for one in found) if land is not None]
    if not seen:
        raise RegionError(f"no area of {map_areas.name} lies on the map of this region")
    plans = project(seen, region.land_map.projection)[0]
    whole = dissolve(plans, [land.source for land in seen])
    parts = without_specks(shapely.transform(whole, region.land_map.onto_drawing.on_array), islands)
    if not len(parts):
        raise RegionError(f"the areas of {map_areas.name} are finished smaller than islands, {islands:g} mm")
    simple = simplify(without_small_holes(parts, islands), [], at_least("detail", detail, 0.0)).parts
    outline = outline_of(polygons_of(shapely.union_all(legible(simple, finest))))
    return Drawn(smoothed(outline, detail) if smooth else outline)


def _surroundings(region: DrawnRegion) -> Bounds:
    """As far round a region as its own size: where any frame of a herald ends."""
    box = bounds(region.outline)
    return box.grown(max(box.width, box.height))


def _swept(line: shapely.LineString) -> Path:
    return sweep([Point(x, y) for x, y in shapely.get_coordinates(line).tolist()])


def _on_drawing(region: DrawnRegion, lines: list[shapely.LineString]) -> list[shapely.LineString]:
    """Lines in degrees as lines on the drawing, long steps divided; those that cannot be shown are left out."""

    def moved(degrees: Array) -> Array:
        return region.land_map.onto_drawing.on_array(region.land_map.projection.forward(degrees))

    drawn = [shapely.transform(shapely.segmentize(line, EDGE_MAX_DEG), moved) for line in lines]
    return [line for line in drawn if np.isfinite(shapely.get_coordinates(line)).all()]
