"""The shape ``region``: from codes or a file to the outline of the land at its finished size.

The function ``region`` is the list of calls; each stage is a file of this room. Kilometres north up until
the land is fitted, then millimetres, y up.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType

import numpy as np
import shapely

from heraldry.errors import RegionError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import clean
from heraldry.geometry.fit import fit_outline
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import LINE, Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.shapes.checks import at_least
from heraldry.shapes.region import atlas, map_file
from heraldry.shapes.region.borders import gaps, pieces_within
from heraldry.shapes.region.fitting import (
    ISLAND_MIN_MM,
    Box,
    Geometries,
    fit,
    without_small_holes,
    without_specks,
)
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.outlying import near_parts
from heraldry.shapes.region.plan import dissolve, project
from heraldry.shapes.region.projection import Projection, choose
from heraldry.shapes.region.simplify import DETAIL_MM, Simple, simplify
from heraldry.shapes.table import (
    Angle,
    Codes,
    Drawn,
    File,
    Flag,
    LatLon,
    Length,
    MapPlaces,
    Place,
    Text,
    shape,
)

NO_PLACES: Mapping[str, LatLon] = MappingProxyType({})

SMOOTH_SHARE = 0.5
"""Curves stray up to twice their tolerance; half the detail is then no farther off than the detail itself."""

NAMES_MAX = 5
"""How many names a note lists."""


@dataclass(frozen=True)
class LandMap:
    """Where on a drawing a place on the Earth lies."""

    projection: Projection
    onto_drawing: Affine
    """From the projection's kilometres to finished millimetres."""

    def locate(self, place: LatLon) -> Point:
        """The point of a place, millimetres; raises RegionError for one off the globe or off the map."""
        if not (abs(place.lat) <= 90.0 and abs(place.lon) <= 360.0):
            raise RegionError(f"lat {place.lat:g}, lon {place.lon:g} is no place: lat is -90 to 90, lon -180 to 180")
        x, y = self.projection.forward(np.array([[place.lon, place.lat]]))[0].tolist()
        if not (math.isfinite(x) and math.isfinite(y)):
            raise RegionError(f"lat {place.lat:g}, lon {place.lon:g} lies too far from this land to be on its map")
        return self.onto_drawing(Point(x, y))


@dataclass(frozen=True, eq=False)
class DrawnRegion(Drawn):
    """A drawn land that knows where on it a place on the Earth lies."""

    land_map: LandMap = field(kw_only=True)

    def locate(self, place: LatLon) -> Point:
        """The point of a place, millimetres; raises RegionError for one off the globe or off the map."""
        return self.land_map.locate(place)


@shape
def region(
    region: Codes = (),
    file: File | None = None,
    feature: Text | None = None,
    height: Length | None = None,
    width: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
    borders: Length = 0.0,
    islands: Length = ISLAND_MIN_MM,
    lakes: Flag = True,
    outlying: Flag = False,
    detail: Length | None = None,
    smooth: Flag = False,
    place: MapPlaces = NO_PLACES,
) -> DrawnRegion:
    """The outline of a land, by map codes (``US-VT``, ``IS``, county ``33007``) or from a map file; north up.

    `file` is GeoJSON or TopoJSON in degrees, `feature` picks in it by a property's value. The land fits
    inside `width` and `height` about `centre`, after a `turn`. `borders` is the width of gaps along inner
    borders. Islands finished smaller than a disc of `islands` across are left out, as are far parts without
    `outlying`. `lakes = false` fills holes; `detail` is how fine a coast is kept, and `smooth` makes curves
    of it. Raises RegionError, GeometryError.
    """
    box = Box(width, height)
    at_least("borders", borders, 0.0)
    at_least("islands", islands, 0.0)
    lands = _lands(region, file, feature)
    near, far_count = _near(lands, outlying)
    projection = choose(np.concatenate([shapely.get_coordinates(land.polygons) for land in near]))
    flat, mended = project(near, projection)
    plans = _moved(flat, Affine.turn(turn))
    fitted = fit(dissolve(plans, [land.source for land in near]), box, islands)
    to_size = Affine.scale(fitted.mm_per_km)
    parts = without_small_holes(_moved(fitted.parts, to_size), islands if lakes else math.inf)
    fineness = _fineness(detail, near, fitted.mm_per_km)
    pieces = pieces_within(_moved(plans, to_size), parts) if borders > 0 else []
    whole = not pieces or bool(shapely.coverage_is_valid(pieces))
    simple = simplify(parts, pieces if whole else [], fineness)
    outline = _outline(_cut(simple, borders, islands))
    outline = _smoothed(outline, fineness) if smooth else outline
    last = _last_fit(bounds(outline), box, centre)
    land_map = LandMap(projection, last @ to_size @ Affine.turn(turn))
    places = {name: land_map.locate(where) for name, where in place.items()}
    notes = (
        *_left_out(fitted.dropped, far_count, islands),
        *_about_map(near, mended, whole, fineness),
    )
    return DrawnRegion(outline.transformed(last), places, notes, land_map=land_map)


def _lands(codes: Sequence[str], file: File | None, feature: str | None) -> list[Land]:
    if not codes and file is None:
        raise RegionError('a region needs land: give codes (region = ["US-VT"]) or a map file (file = "my.geojson")')
    if feature is not None and file is None:
        raise RegionError(f"feature '{feature}' is picked from a map file, but no file is given")
    named = [atlas.outlines(code) for code in dict.fromkeys(code.strip().upper() for code in codes)]
    return named if file is None else [*named, *map_file.read(file, feature)]


def _near(lands: Sequence[Land], outlying: bool) -> tuple[list[Land], int]:
    if outlying:
        return list(lands), 0
    near = [near_parts(land) for land in lands]
    return [land for land, _ in near], sum(count for _, count in near)


def _moved(geometries: Sequence[shapely.Geometry] | Geometries, affine: Affine) -> Geometries:
    return np.array(shapely.transform(np.array(geometries, dtype=object), affine.on_array))


def _fineness(detail: float | None, lands: Sequence[Land], mm_per_km: float) -> float:
    """How fine to keep the coast: as asked, else as print can show and the map knows."""
    if detail is None:
        return max(DETAIL_MM, *(land.grid_km * mm_per_km for land in lands))
    return at_least("detail", detail, 0.0)


def _cut(simple: Simple, borders_mm: float, part_min_mm: float) -> Geometries:
    """The parts as one clean area, with the inner borders cut out."""
    land = shapely.MultiPolygon(list(simple.parts))
    land = land if land.is_valid else shapely.union_all(simple.parts)
    if not len(simple.borders):
        return np.asarray(shapely.get_parts(land))
    left = without_specks(shapely.difference(land, gaps(simple.borders, borders_mm)), part_min_mm)
    if not len(left):
        raise RegionError(f"borders of {borders_mm:g} mm leave no land at this size; make them thinner")
    return left


def _smoothed(outline: Outline, fineness_mm: float) -> Outline:
    """The coast as curves no farther off than the points that were taken away; what crosses is made clean."""
    tolerance_mm = max(fineness_mm, DETAIL_MM) * SMOOTH_SHARE
    return clean(fit_outline(outline, tolerance_mm), "evenodd")


def _last_fit(land: Bounds, box: Box, centre: Point) -> Affine:
    """What brings the land into its box to the last bit; a lost cape has made it a trifle smaller."""
    ratio, middle = float(box.scale_to(land.width, land.height)), land.centre
    return Affine.move(centre.x, centre.y) @ Affine.scale(ratio) @ Affine.move(-middle.x, -middle.y)


def _left_out(small: int, far: int, islands_mm: float) -> list[str]:
    notes = []
    if small:
        notes.append(f"islands smaller than {islands_mm:g} mm across left out: {small}")
    if far:
        notes.append(f"parts that lie far off left out: {far}; outlying = true keeps them")
    return notes


def _about_map(lands: Sequence[Land], mended: Sequence[bool], whole: bool, fineness_mm: float) -> list[str]:
    notes = []
    own = [land.name for land, was in zip(lands, mended, strict=True) if was and not atlas.is_bundled(land)]
    if own:
        notes.append(f"areas of the map file that were not valid have been mended: {_some(own)}")
    if not whole:
        notes.append("pieces of the land overlap, so no borders between them are kept")
    if fineness_mm > DETAIL_MM and any(land.grid_km for land in lands):
        notes.append(f"at this size the map shows no more than {fineness_mm:.2g} mm")
    return notes


def _some(names: Sequence[str]) -> str:
    return ", ".join(names[:NAMES_MAX]) + (", …" if len(names) > NAMES_MAX else "")


def _outline(land: Geometries) -> Outline:
    """Polygons as an outline of straight lines: outer rings counter-clockwise, holes clockwise."""
    rings = shapely.get_rings(shapely.orient_polygons(land, exterior_cw=False))
    xy, ring = shapely.get_coordinates(rings, return_index=True)
    within = ring[1:] == ring[:-1]
    one, two = xy[:-1][within], xy[1:][within]
    ends = np.concatenate(([0], np.cumsum(np.bincount(ring[:-1][within]))))
    data = np.stack((one, one, two, two), axis=1)
    return Outline(np.full(len(data), LINE, np.uint8), data, ends.astype(np.int64))
