"""A drawn land and the map under it: where on the drawing a place on the Earth lies."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from heraldry.errors import RegionError
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Bounds
from heraldry.geometry.point import Point
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.picking import Pick
from heraldry.shapes.region.projection import Array, Projection
from heraldry.shapes.table import Drawn, File, LatLon

WINDOW_DOTS = 33
"""A box on the drawing is looked up on the Earth by this many places along each side, and within."""


@dataclass(frozen=True)
class Window:
    """A part of the globe, degrees: all longitudes between west and east, which may lie beyond 180."""

    west: float
    south: float
    east: float
    north: float


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

    def window(self, box: Bounds) -> Window:
        """The part of the globe that a box on the drawing shows, a little more of it."""
        across, up = np.linspace(box.left, box.right, WINDOW_DOTS), np.linspace(box.bottom, box.top, WINDOW_DOTS)
        dots = np.stack(np.meshgrid(across, up), axis=-1).reshape(-1, 2)
        degrees = self.projection.backward(self.onto_plane(dots))
        degrees = degrees[np.isfinite(degrees).all(axis=1)]
        middle = float(degrees[len(degrees) // 2, 0])
        east = (degrees[:, 0] - middle + 180.0) % 360.0 - 180.0
        margin = np.ptp(degrees[:, 1]) / 8 + 0.01
        south, north = degrees[:, 1].min() - margin, degrees[:, 1].max() + margin
        return _with_poles(middle + east.min() - 2 * margin, south, middle + east.max() + 2 * margin, north)

    def onto_plane(self, points: Array) -> Array:
        """Kilometres of points on the drawing."""
        origin, right, up = (self.onto_drawing(point) for point in (Point(0, 0), Point(1, 0), Point(0, 1)))
        columns = np.column_stack((tuple(right - origin), tuple(up - origin)))
        return np.asarray(np.linalg.solve(columns, (points - np.array(tuple(origin))).T).T)


def _with_poles(west: float, south: float, east: float, north: float) -> Window:
    """The window, round the whole globe where it reaches a pole or nearly round."""
    if north >= 90.0 or south <= -90.0 or east - west >= 360.0:
        west, east = -180.0, 180.0
    return Window(west, max(south, -90.0), east, min(north, 90.0))


@dataclass(frozen=True, eq=False)
class Asked:
    """What a region was drawn from."""

    lands: tuple[Land, ...]
    codes: tuple[str, ...]
    file: File | None
    pick: Pick
    fineness_mm: float
    """How fine its coast is kept."""


@dataclass(frozen=True, eq=False)
class DrawnRegion(Drawn):
    """A drawn land that knows where on it a place on the Earth lies."""

    land_map: LandMap = field(kw_only=True)
    asked: Asked = field(kw_only=True)

    def locate(self, place: LatLon) -> Point:
        """The point of a place, millimetres; raises RegionError for one off the globe or off the map."""
        return self.land_map.locate(place)


def drawn_region(drawn: Drawn, key: str) -> DrawnRegion:
    """The shape itself; raises RegionError unless it is a region."""
    if not isinstance(drawn, DrawnRegion):
        raise RegionError(f"{key} wants the name of a region of this file; the shape named is none")
    return drawn
