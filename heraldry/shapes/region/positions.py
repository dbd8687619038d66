"""Positions of a map file as arrays, checked: numbers, pairs, finite, and degrees."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import RegionError

Array = NDArray[np.float64]

LONGITUDE_MAX, LATITUDE_MAX = 360.0, 90.0
"""RFC 7946 wants longitudes to 180; lands across the 180th meridian are often written past it."""


class GeoJsonRings:
    """Rings of GeoJSON geometries, which hold their positions themselves."""

    member = "coordinates"
    """Where a geometry keeps its rings."""
    grid_deg = (0.0, 0.0)

    def __init__(self, file: str, to_degrees: Callable[[Array], Array]) -> None:
        self._file = file
        self._to_degrees = to_degrees

    def ring(self, positions: Any) -> Array:
        """The points of a ring or line; raises RegionError unless they are positions on the globe."""
        return degrees_checked(self._to_degrees(numbers(positions, self._file)), self._file)


def numbers(positions: Any, file: str) -> Array:
    """The first two numbers of each position, shape (n, 2); raises RegionError for anything else."""
    if not isinstance(positions, list) or not positions:
        raise _wrong(positions, file)
    try:
        table = np.array(positions)
    except ValueError:  # positions with and without a height may stand side by side
        pairs = [position[:2] if isinstance(position, list) else position for position in positions]
        table = _table(pairs, positions, file)
    if table.dtype.kind not in "iuf" or table.ndim != 2 or table.shape[1] < 2:
        raise _wrong(positions, file)
    return table[:, :2].astype(np.float64)


def degrees_checked(points: Array, file: str) -> Array:
    """The points themselves; raises RegionError unless all lie on the globe."""
    if not np.isfinite(points).all():
        raise RegionError(f"{file}: a position is not a finite number")
    beyond = np.abs(points) > (LONGITUDE_MAX, LATITUDE_MAX)
    if beyond.any():
        x, y = points[np.flatnonzero(beyond.any(axis=1))[0]].tolist()
        raise RegionError(
            f"{file}: position {x:g}, {y:g} is not longitude and latitude in degrees; "
            "the file must say its coordinate system, or be in degrees (WGS 84)"
        )
    return points


def _table(pairs: list[Any], positions: list[Any], file: str) -> NDArray[Any]:
    try:
        return np.array(pairs)
    except ValueError:
        raise _wrong(positions, file) from None


def _wrong(positions: Any, file: str) -> RegionError:
    return RegionError(f"{file}: wanted a list of positions [longitude, latitude], found {str(positions)[:40]}")
