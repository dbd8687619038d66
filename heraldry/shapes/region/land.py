"""What the atlas and a user's file both give: pieces of land in degrees.

A piece keeps its polygons as its map has them. They may be cut at the 180th meridian, jump over it, hold a
pole, or be invalid in the plane of degrees; all of that is settled where they are projected.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import shapely

EARTH_RADIUS_KM = 6371.0088
"""The Earth's mean radius (IUGG R1, from memory); used only where a sphere is near enough."""


@dataclass(frozen=True, eq=False)
class Land:
    """One named piece of land, longitude and latitude in degrees (WGS 84)."""

    name: str
    polygons: shapely.MultiPolygon
    source: str
    """Pieces of one source share their borders to the last bit; those of two need not."""
    grid_deg: tuple[float, float] = (0.0, 0.0)
    """The steps of the grid that its map's points were rounded to; 0 when that is not known."""

    @property
    def grid_km(self) -> float:
        """The larger step of that grid, at the middle latitude of the land."""
        _, south, _, north = self.polygons.bounds
        narrowing = math.cos(math.radians((south + north) / 2))
        return math.radians(max(self.grid_deg[0] * narrowing, self.grid_deg[1])) * EARTH_RADIUS_KM
