"""Which lands lie around a region: those of the same map, or the other features of its file. Degrees.

Around states lie the other states and, beyond the border, countries; around counties the other counties; around
countries the others. Only what a window of the globe shows is taken: lands are cut at it, so that none has to be
projected where the map of the region does not reach.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np
import shapely

from heraldry.errors import RegionError
from heraldry.shapes.region import atlas, map_file
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.land_map import Asked, Window
from heraldry.shapes.region.meridian import without_jumps
from heraldry.shapes.region.names import AreaName, all_names
from heraldry.shapes.region.picking import Pick

HOME = "US"
"""The country whose states and counties the atlas has."""

ALSO_STATES = ("PR", "GU", "VI", "AS", "MP")
"""Territories that the atlas has twice, as states and as countries."""


def lands_around(asked: Asked, only: Sequence[str], window: Window) -> list[Land]:
    """The other lands in a window, or of them those of the codes in ``only``; RegionError when there are none."""
    if only:
        others = [atlas.outlines(code) for code in dict.fromkeys(only)]
    elif asked.codes:
        others = [atlas.outlines(area.code) for area in _others(asked.codes)]
    else:
        others = _rest_of_file(asked)
    seen = [land for land in (seen_of(other, window) for other in others) if land is not None]
    if not seen:
        raise RegionError("no other land lies around this region; a larger reach may show some")
    return seen


def seen_of(land: Land, window: Window) -> Land | None:
    """What a window shows of a land, cut at it a little outside; None for nothing."""
    parts = [part for polygon in land.polygons.geoms for part in seen_parts(polygon, window)]
    polygons = [part for part in parts if part.geom_type == "Polygon"]
    return replace(land, polygons=shapely.MultiPolygon(polygons)) if polygons else None


def seen_parts(geometry: shapely.Geometry, window: Window) -> Iterable[shapely.Geometry]:
    """The parts of a geometry in degrees that a window shows, whichever way longitudes are counted."""
    south, north = geometry.bounds[1::2]
    if south > window.north or north < window.south:
        return
    geometry = without_jumps(geometry)
    west, _, east, _ = geometry.bounds
    for turns in (-360.0, 0.0, 360.0):
        left, right = window.west + turns, window.east + turns
        if west >= left and east <= right and south >= window.south and north <= window.north:
            yield geometry
            return
        if west <= right and east >= left:
            yield from shapely.get_parts(shapely.clip_by_rect(geometry, left, window.south, right, window.north))


def _others(codes: Iterable[str]) -> list[AreaName]:
    own = {atlas.named(code).code for code in codes}
    kinds = {atlas.named(code).kind for code in codes}
    inner = "county" if "county" in kinds else "state" if "state" in kinds else None
    if inner is None:
        return [area for area in all_names() if area.kind == "country" and area.code not in own]
    left_out = {HOME, *ALSO_STATES, *own}
    return [
        area
        for area in all_names()
        if (area.kind == inner and area.code not in own) or (area.kind == "country" and area.code not in left_out)
    ]


def _rest_of_file(asked: Asked) -> list[Land]:
    """The features of the region's own file that it does not show."""
    assert asked.file is not None  # a region has codes or a file
    shown = {_key(land) for land in asked.lands}
    rest = [land for land in map_file.read(asked.file, Pick(layer=asked.pick.layer)) if _key(land) not in shown]
    if not rest:
        raise RegionError(
            f'{asked.file.name} holds no land beside the region; name the lands around it: only = ["US-VT"]'
        )
    return rest


def _key(land: Land) -> tuple[str, bytes]:
    return land.name, np.asarray(land.polygons.bounds).tobytes()
