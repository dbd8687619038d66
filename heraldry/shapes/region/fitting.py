"""How large the land becomes, and which of its islands that leaves large enough to print.

The two hang together: an island kept far out makes all the rest smaller, and may thereby make itself too
small. Taken from the largest down, each further part can only shrink the scale, and is itself smaller than
the one before; so the smallest part's finished size falls steadily, and there is exactly one last part that
can be kept. Planes are kilometres; finished sizes are millimetres.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.errors import RegionError

Geometries = NDArray[np.object_]
Sizes = NDArray[np.float64] | float

ISLAND_MIN_MM = 0.3
"""The smallest island kept by default, as the width of a round one of its area.

It is the finest line that screen-printed transfers hold; common practice, no source.
"""


@dataclass(frozen=True)
class Box:
    """The finished width and height that the land is to fill, millimetres; None leaves one free."""

    width_mm: float | None
    height_mm: float | None

    def __post_init__(self) -> None:
        if self.width_mm is None and self.height_mm is None:
            raise RegionError("a region needs its finished size: give height, width or both")
        for name, value in (("width", self.width_mm), ("height", self.height_mm)):
            if value is not None and not (value > 0 and math.isfinite(value)):
                raise RegionError(f"{name} of a region is {value:g} mm, it must be more than 0")

    def scale_to(self, width: Sizes, height: Sizes) -> NDArray[np.float64]:
        """The largest scales at which lands of these sizes fit inside, without distortion."""
        across = np.inf if self.width_mm is None else self.width_mm / width
        up = np.inf if self.height_mm is None else self.height_mm / height
        return np.asarray(np.minimum(across, up))


@dataclass(frozen=True, eq=False)
class Fitted:
    """The parts to draw, largest first, and the scale that this gives."""

    parts: Geometries
    mm_per_km: float
    dropped: int


def fit(land: shapely.Geometry, box: Box, island_min_mm: float) -> Fitted:
    """Fit a land into a box, without the islands that are finished smaller than ``island_min_mm``."""
    parts = shapely.get_parts(land)
    parts = parts[np.argsort(-shapely.area(parts), kind="stable")]
    reach = shapely.bounds(parts)
    width = np.maximum.accumulate(reach[:, 2]) - np.minimum.accumulate(reach[:, 0])
    height = np.maximum.accumulate(reach[:, 3]) - np.minimum.accumulate(reach[:, 1])
    scales = box.scale_to(width, height)
    round_widths_mm = scales * 2.0 * np.sqrt(shapely.area(parts) / np.pi)
    kept = max(1, int(np.count_nonzero(round_widths_mm >= island_min_mm)))
    return Fitted(parts[:kept], float(scales[kept - 1]), len(parts) - kept)


def without_small_holes(parts: Geometries, hole_min_mm: float) -> Geometries:
    """The parts, in millimetres, with holes filled that are smaller than a round one of ``hole_min_mm``."""
    return np.array([_filled(part, round_area(hole_min_mm)) for part in parts])


def without_specks(land: shapely.Geometry, part_min_mm: float) -> Geometries:
    """The parts of a land, in millimetres, that are no smaller than a round one of ``part_min_mm``."""
    parts = shapely.get_parts(land)
    return np.asarray(parts[shapely.area(parts) >= round_area(part_min_mm)])


def round_area(width_mm: float) -> float:
    """The area of a disc of a width, mm²."""
    return math.pi / 4 * width_mm * width_mm


def _filled(part: shapely.Polygon, area_min: float) -> shapely.Polygon:
    holes = [ring for ring in part.interiors if shapely.Polygon(ring).area >= area_min]
    return part if len(holes) == len(part.interiors) else shapely.Polygon(part.exterior, holes)
