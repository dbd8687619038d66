"""A feature of a map file once it is decoded: its areas and its lines, in degrees."""

from __future__ import annotations

from dataclasses import dataclass

import shapely


@dataclass(frozen=True, eq=False)
class Feature:
    """One feature, longitude and latitude in degrees (WGS 84); its polygons need not be valid."""

    name: str
    polygons: tuple[shapely.Polygon, ...]
    lines: tuple[shapely.LineString, ...]
    kinds: tuple[str, ...]
    """The kinds of geometry that it was made of, as the file calls them."""


@dataclass(frozen=True, eq=False)
class FeatureSet:
    """The features that were picked in a file."""

    features: tuple[Feature, ...]
    grid_deg: tuple[float, float] = (0.0, 0.0)
    """The steps of the grid that the file's points were rounded to; 0 where it has none."""
