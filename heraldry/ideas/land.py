"""The land of a railroad, measured once: how wide and how high it is, and the circle round it, at a height of 1."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import shapely

from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds, centroid
from heraldry.shapes.region import region
from heraldry.shapes.table import as_drawn

MEASURED_MM = 20.0
MOST_LENGTHY = 2.6
"""A land longer than this for its width is no field of a herald."""


@dataclass(frozen=True)
class Land:
    """Codes of a land, its ``wide`` width, the radius of the circle round it, and where that circle's middle lies."""

    codes: tuple[str, ...]
    wide: float
    radius: float
    aside: float
    above: float
    """The middle of the circle round the land, from the middle of its box."""
    heavy_aside: float
    heavy_above: float
    """The centre of its area, from the middle of its box."""

    @property
    def is_handy(self) -> bool:
        """Whether it is no longer than a herald can hold."""
        return 1 / MOST_LENGTHY <= self.wide <= MOST_LENGTHY


@lru_cache(maxsize=32)
def measured(codes: tuple[str, ...]) -> Land:
    """The measures of a land; raises RegionError for codes that no map has."""
    outline = as_drawn(region(codes, height=MEASURED_MM)).outline
    box, heavy = bounds(outline), centroid(outline)
    points = shapely.MultiPoint([point for ring in flatten(outline) for point in ring])
    circle = shapely.minimum_bounding_circle(points)
    middle, radius = circle.centroid, shapely.minimum_bounding_radius(points)
    return Land(
        codes,
        box.width / box.height,
        radius / box.height,
        (middle.x - box.centre.x) / box.height,
        (middle.y - box.centre.y) / box.height,
        (heavy.x - box.centre.x) / box.height,
        (heavy.y - box.centre.y) / box.height,
    )
