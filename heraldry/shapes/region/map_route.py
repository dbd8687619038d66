"""The shape ``map_route``: a line through towns given in degrees, as map files give them; millimetres."""

from __future__ import annotations

from typing import Literal

from heraldry.geometry.outline import Outline
from heraldry.shapes.region.land_map import drawn_region
from heraldry.shapes.routes import route
from heraldry.shapes.table import Drawn, Flag, Length, MapPoints, ShapeRef, shape


@shape
def map_route(
    map_route: MapPoints,
    on: ShapeRef,
    width: Length,
    ends: Literal["flat", "round"] = "flat",
    stops: Length = 0.0,
    smooth: Flag = False,
    extend: Length = 0.0,
) -> Outline | Drawn:
    """A `route` through towns by their degrees, each [longitude, latitude]; `on` is the region on whose map they lie.

    A line of a `width`, with a dot `stops` across at each town; `extend` lengthens both ends, which are flat or round
    as `ends` says; `smooth` makes one sweep through all towns. Raises RegionError for a town that is off the map.
    """
    land = drawn_region(on, "on")
    return route(tuple(land.locate(town) for town in map_route), width, ends, stops, smooth, extend)
