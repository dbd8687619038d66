"""The shape ``region``: from codes or a file to the outline of the land at its finished size.

The function ``region`` is the list of calls; each stage is a file of this room. Kilometres north up until
the land is fitted, then millimetres, y up.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from types import MappingProxyType

import numpy as np
import shapely

from heraldry.errors import RegionError, nearest
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.shapes.checks import at_least
from heraldry.shapes.region import atlas, map_file
from heraldry.shapes.region.borders import gaps, lengthened, pieces_within
from heraldry.shapes.region.drawing import moved, outline_of, polygons_of, smoothed, without_crumbs
from heraldry.shapes.region.fitting import (
    ISLAND_MIN_MM,
    Box,
    fit,
    without_small_holes,
    without_specks,
)
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.land_map import Asked, DrawnRegion, LandMap
from heraldry.shapes.region.legible import GAP_SHARE, LINE_MM, legible
from heraldry.shapes.region.outlying import near_parts
from heraldry.shapes.region.picking import Pick
from heraldry.shapes.region.plan import dissolve, project
from heraldry.shapes.region.projection import choose
from heraldry.shapes.region.simplify import DETAIL_MM, Simple, simplify
from heraldry.shapes.table import Angle, Codes, File, Flag, LatLon, Length, MapPlaces, Place, Text, shape

NO_PLACES: Mapping[str, LatLon] = MappingProxyType({})

LENGTHENED = 2 * GAP_SHARE
"""In finest lines: how far borders are drawn out at the coast, which filled inlets may have moved by a gap or two."""

SLIVER_MM = 0.01
"""Coasts are moved by less than this where they are not filled."""

NAMES_MAX = 5
"""How many names a note lists."""


@shape
def region(
    region: Codes = (),
    file: File | None = None,
    feature: Text | None = None,
    where: Text | None = None,
    layer: Text | None = None,
    height: Length | None = None,
    width: Length | None = None,
    centre: Place = ORIGIN,
    held_by: Text | None = None,
    turn: Angle = 0.0,
    borders: Length = 0.0,
    islands: Length = ISLAND_MIN_MM,
    lakes: Flag = True,
    outlying: Flag = False,
    detail: Length | None = None,
    finest: Length = LINE_MM,
    smooth: Flag = False,
    place: MapPlaces = NO_PLACES,
) -> DrawnRegion:
    """The outline of a land, by map codes (``US-VT``, ``IS``, county ``33007``) or from a map file; north up.

    `file` is GeoJSON, TopoJSON, Shapefile, GeoPackage or KML; `feature` picks in it by a property's value, `where`
    by conditions (``kind = state and rank <= 2``), `layer` by a layer's name. The land fits inside `width` and
    `height` about `centre`, after a `turn`; `held_by` names that of its places which lies there instead. `borders`
    is the width of gaps along inner borders. Islands finished smaller than a disc of `islands` across are left out,
    as are far parts without `outlying`. `lakes = false` fills holes; `detail` is how fine a coast is kept, `finest`
    the thinnest land that prints (water is kept twice as wide), and `smooth` makes curves of it. Raises RegionError,
    GeometryError.
    """
    box = Box(width, height)
    at_least("borders", borders, 0.0)
    at_least("islands", islands, 0.0)
    at_least("finest", finest, 0.0)
    pick = Pick(feature, where, layer)
    lands = _lands(region, file, pick)
    near, far_count = _near(lands, outlying)
    projection = choose(np.concatenate([shapely.get_coordinates(land.polygons) for land in near]))
    flat, mended = project(near, projection)
    plans = moved(flat, Affine.turn(turn))
    fitted = fit(dissolve(plans, [land.source for land in near]), box, islands)
    to_size = Affine.scale(fitted.mm_per_km)
    parts = without_small_holes(moved(fitted.parts, to_size), islands if lakes else math.inf)
    fineness = _fineness(detail, near, fitted.mm_per_km)
    pieces = pieces_within(moved(plans, to_size), parts) if borders > 0 else []
    whole = not pieces or bool(shapely.coverage_is_valid(pieces))
    simple = simplify(parts, pieces if whole else [], fineness)
    outline = _finished(simple, borders, islands, finest)
    outline = smoothed(outline, fineness) if smooth else outline
    last = _last_fit(bounds(outline), box, centre)
    if held_by is not None:
        there = LandMap(projection, last @ to_size @ Affine.turn(turn)).locate(_own_place(place, held_by))
        last = Affine.move(centre.x - there.x, centre.y - there.y) @ last
    land_map = LandMap(projection, last @ to_size @ Affine.turn(turn))
    places = {name: land_map.locate(where) for name, where in place.items()}
    notes = (
        *_left_out(fitted.dropped, far_count, islands),
        *_about_map(near, mended, whole, fineness),
    )
    drawn = outline.transformed(last)
    asked = Asked(tuple(near), tuple(region), file, pick, fineness)
    return DrawnRegion(drawn, places, notes, land_map=land_map, asked=asked)


def _lands(codes: Sequence[str], file: File | None, pick: Pick) -> list[Land]:
    if not codes and file is None:
        raise RegionError('a region needs land: give codes (region = ["US-VT"]) or a map file (file = "my.geojson")')
    if file is None and (asked := [name for name, value in vars(pick).items() if value is not None]):
        raise RegionError(f"{asked[0]} picks from a map file, but no file is given")
    named = [atlas.outlines(code) for code in dict.fromkeys(code.strip().upper() for code in codes)]
    return named if file is None else [*named, *map_file.read(file, pick)]


def _near(lands: Sequence[Land], outlying: bool) -> tuple[list[Land], int]:
    if outlying:
        return list(lands), 0
    near = [near_parts(land) for land in lands]
    return [land for land, _ in near], sum(count for _, count in near)


def _fineness(detail: float | None, lands: Sequence[Land], mm_per_km: float) -> float:
    """How fine to keep the coast: as asked, else as print can show and the map knows."""
    if detail is None:
        return max(DETAIL_MM, *(land.grid_km * mm_per_km for land in lands))
    return at_least("detail", detail, 0.0)


def _finished(simple: Simple, borders_mm: float, islands_mm: float, finest_mm: float) -> Outline:
    """The parts as they print, with the inner borders cut out."""
    shown = legible(simple.parts, finest_mm)
    land = shapely.MultiPolygon(list(shown))
    land = land if land.is_valid else shapely.union_all(shown)
    if len(simple.borders):
        waters = _border_waters(simple, land) if finest_mm else shapely.MultiPolygon()
        cuts = gaps(lengthened(simple.borders, LENGTHENED * finest_mm), borders_mm)
        land = land.difference(shapely.union(cuts, waters.buffer(borders_mm / 4)))
    left = without_specks(land, islands_mm)
    if not len(left) and len(simple.borders):
        raise RegionError(f"borders of {borders_mm:g} mm leave no land at this size; make them thinner")
    left = left if len(left) else polygons_of(land)
    return outline_of(without_crumbs(left) if finest_mm else left)


def _border_waters(simple: Simple, shown: shapely.Geometry) -> shapely.Geometry:
    """Inlets at which a border ends, as rivers do: filled to print well, they would bridge the border."""
    filled = shown.difference(shapely.union_all(simple.parts))
    broad = polygons_of(filled.buffer(-SLIVER_MM).buffer(2 * SLIVER_MM))
    ends = shapely.union_all(simple.borders)
    return shapely.union_all(broad[shapely.dwithin(broad, ends, LENGTHENED * LINE_MM)])


def _last_fit(land: Bounds, box: Box, centre: Point) -> Affine:
    """What brings the land into its box to the last bit; a lost cape has made it a trifle smaller."""
    ratio, middle = float(box.scale_to(land.width, land.height)), land.centre
    return Affine.move(centre.x, centre.y) @ Affine.scale(ratio) @ Affine.move(-middle.x, -middle.y)


def _own_place(places: Mapping[str, LatLon], name: str) -> LatLon:
    """One of the region's places by name; raises RegionError for another name."""
    if name not in places:
        offer = nearest(name, places) if places else f"give it: place.{name} = {{ lat = …, lon = … }}"
        raise RegionError(f"held_by names a place of the region's own, found '{name}'; {offer}")
    return places[name]


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
