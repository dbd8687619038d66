"""Positions of a map file in degrees, whatever coordinate system the file says it is in.

PROJ knows the systems (EPSG numbers, WKT, its own words); the datum shifts that it makes without a network are good
to some metres, which no emblem shows.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from heraldry.errors import RegionError
from heraldry.shapes.region.positions import Array

ToDegrees = Callable[[Array], Array]

NAME_MAX = 20_000
"""Letters in the name or definition of a coordinate system; the longest of WKT need a few thousand."""


def as_they_are(points: Array) -> Array:
    """Positions that are degrees already."""
    return points


def degrees_from(system: str, file: str) -> ToDegrees:
    """What turns x, y of a coordinate system into longitude and latitude (WGS 84).

    Raises RegionError for a system that is not known.

    >>> degrees_from("EPSG:3857", "my.shp")(np.array([[-8015003.338, 5465442.183]])).round(3).tolist()
    [[-72.0, 44.0]]
    """
    from pyproj import Transformer  # imported where used: start-up time
    from pyproj.exceptions import ProjError

    try:
        to_degrees = Transformer.from_crs(system[:NAME_MAX], "EPSG:4326", always_xy=True)
    except ProjError:
        raise RegionError(f"{file}: its coordinate system is not known, found {system[:60]}") from None
    return lambda points: np.column_stack(to_degrees.transform(points[:, 0], points[:, 1]))
