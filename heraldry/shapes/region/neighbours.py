"""The shape ``neighbours``: the lands around a region, fitting its borders to the last bit.

Region and neighbours are drawn apart, and each loses points of its own. What that leaves between them is given to
the neighbours: the gaps that touch both are filled, and the region itself is cut out of the result. So they neither
overlap nor part, whatever was done to the region. Millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

import numpy as np
import shapely

from heraldry.errors import RegionError
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.region.around import lands_around
from heraldry.shapes.region.borders import gaps, inner_borders
from heraldry.shapes.region.drawing import outline_of, polygons_of, smoothed
from heraldry.shapes.region.fitting import ISLAND_MIN_MM, Geometries, round_area, without_small_holes, without_specks
from heraldry.shapes.region.land_map import DrawnRegion, drawn_region
from heraldry.shapes.region.legible import LINE_MM, legible
from heraldry.shapes.region.plan import SEAM_KM, dissolve, project
from heraldry.shapes.region.projection import Array
from heraldry.shapes.region.simplify import simplify
from heraldry.shapes.table import Codes, Drawn, Flag, Length, ShapeRef, shape

TOUCH_MM = 1e-6
"""Areas nearer than this touch."""

BEYOND_MM = 1.0
"""Lands are cut this far outside the frame, and cut true when they are simple."""


@shape
def neighbours(
    neighbours: ShapeRef,
    reach: Length | None = None,
    only: Codes = (),
    borders: Length = 0.0,
    islands: Length = ISLAND_MIN_MM,
    finest: Length = LINE_MM,
    smooth: Flag = False,
) -> Drawn:
    """The lands around a region, as far as `reach` beyond its box; `neighbours` is the region's name.

    They are those of the same map (around states other states and countries), the other features of the region's
    file, or those of the codes in `only`. `borders` is the width of gaps between them; cut the shape with a frame, and
    with a margin round the region (``around & disc - offset(land, 0.3 mm)``). Raises RegionError.
    """
    region = drawn_region(neighbours, "neighbours")
    at_least("borders", borders, 0.0)
    at_least("finest", finest, 0.0)
    box = bounds(region.outline)
    reach = max(box.width, box.height) if reach is None else positive("reach", reach)
    frame = box.grown(reach)
    around = Around.of(region, only, frame)
    own = to_polygon(region.outline)
    area = around.fitted(own, islands, finest).difference(own).intersection(_rectangle(frame))
    if borders:
        area = area.difference(gaps(around.borders(), borders))
    parts = polygons_of(area)
    left = parts[(shapely.area(parts) >= round_area(islands)) | shapely.dwithin(parts, own, TOUCH_MM)]
    if not len(left):
        raise RegionError("the lands around this region are too small to show at this size")
    outline = outline_of(left)
    return Drawn(smoothed(outline, region.asked.fineness_mm) if smooth else outline)


@dataclass(frozen=True, eq=False)
class Around:
    """The lands around a region, on its plane, kilometres; what is asked of them comes in millimetres."""

    region: DrawnRegion
    plans: Geometries
    sources: tuple[str, ...]

    @staticmethod
    def of(region: DrawnRegion, only: Codes, frame: Bounds) -> Around:
        """The lands that a frame on the drawing shows, cut a little outside it."""
        lands = lands_around(region.asked, only, region.land_map.window(frame))
        wider = _rectangle(frame).buffer(BEYOND_MM, join_style="mitre")
        on_plane = shapely.transform(wider, region.land_map.onto_plane)
        plans = shapely.intersection(project(lands, region.land_map.projection)[0], on_plane)
        return Around(region, plans, tuple(land.source for land in lands))

    def fitted(self, own: shapely.Geometry, islands_mm: float, finest_mm: float) -> shapely.Geometry:
        """The lands as one, simplified, with what lies between them and the region; millimetres."""
        lands = self.region.asked.lands
        home = project(lands, self.region.land_map.projection)[0]
        together = dissolve([*self.plans, *home], [*self.sources, *(land.source for land in lands)])
        others = polygons_of(self._drawn(dissolve(self.plans, self.sources)))
        parts = without_small_holes(without_specks(shapely.union_all(others), islands_mm), islands_mm)
        if not len(parts):
            raise RegionError(f"the lands around this region are finished smaller than islands, {islands_mm:g} mm")
        simple = simplify(parts, [], self.region.asked.fineness_mm).parts
        shown = shapely.union_all(legible(simple, finest_mm))
        left_over = polygons_of(self._drawn(together).difference(shapely.union(shown, own)))
        between = left_over[shapely.dwithin(left_over, own, TOUCH_MM) & shapely.dwithin(left_over, shown, TOUCH_MM)]
        around = shapely.union_all([shown, *shapely.buffer(between, TOUCH_MM, join_style="mitre")])
        return shapely.union_all([around, *_cracks(shapely.union(around, own), islands_mm)])

    @property
    def area(self) -> shapely.Geometry:
        """All of the lands, with all of their points; millimetres."""
        return self._drawn(shapely.union_all(self.plans))

    def borders(self) -> Geometries:
        """The borders between the lands, those between two maps as the first of them has it; millimetres."""
        by_source = [self.plans[[its == source for its in self.sources]] for source in sorted(set(self.sources))]
        lines = [line for plans in by_source for line in self._inner(plans)]
        wholes = [shapely.union_all(plans) for plans in by_source]
        for one, other in combinations(wholes, 2):
            seam = one.boundary.intersection(other.buffer(SEAM_KM, quad_segs=2))
            lines += [part for part in shapely.get_parts(self._drawn(seam)) if part.length > 0]
        return np.array(lines)

    def _inner(self, plans: Geometries) -> Geometries:
        pieces = [shapely.MultiPolygon(list(polygons_of(plan))) for plan in shapely.transform(plans, self._on_array)]
        return inner_borders(shapely.coverage_simplify(pieces, self.region.asked.fineness_mm))

    def _drawn(self, area: shapely.Geometry) -> shapely.Geometry:
        return shapely.transform(area, self._on_array)

    def _on_array(self, points: Array) -> Array:
        return self.region.land_map.onto_drawing.on_array(points)


def _cracks(land: shapely.Geometry, smallest_mm: float) -> list[shapely.Polygon]:
    """The holes in a land that are too small for lakes: they are left where three coasts meet."""
    rings = [ring for part in shapely.get_parts(land) for ring in part.interiors]
    holes = [shapely.Polygon(ring) for ring in rings]
    return [hole.buffer(TOUCH_MM) for hole in holes if hole.area < round_area(smallest_mm)]


def _rectangle(box: Bounds) -> shapely.Polygon:
    return shapely.box(box.left, box.bottom, box.right, box.top)
