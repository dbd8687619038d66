"""The one door to a user's own map files: GeoJSON, TopoJSON, Shapefile, GeoPackage, KML.

Polygons that cross themselves are let through: they are mended where they are projected.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import shapely

from heraldry.errors import RegionError
from heraldry.shapes.region import json_map, vector_file
from heraldry.shapes.region.features import Feature, FeatureSet
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.picking import Pick

SIZE_MAX_BYTES = 64 * 2**20
"""Larger map files are refused: an emblem shows some hundred points of them."""

PACKED = {".zip": "unpack it and name the .shp, .gpkg or .geojson in it", ".kmz": "unpack it and name the .kml in it"}

ALL = Pick()


def read(path: Path, pick: Pick = ALL) -> list[Land]:
    """The lands of a map file: all of them, or those picked.

    Raises RegionError for whatever is wrong with the file.
    """
    found = features(path, pick)
    lands = [
        Land(feature.name, shapely.MultiPolygon(list(feature.polygons)), path.name, found.grid_deg)
        for feature in found.features
        if feature.polygons
    ]
    kinds = _kinds(found.features)
    if not lands and "Polygon" in kinds:
        raise RegionError(f"{path.name} holds no area: its polygons have fewer than three corners")
    if not lands:
        raise RegionError(f"{path.name} holds no area, wanted Polygon or MultiPolygon, found {kinds}")
    return lands


def read_lines(path: Path, pick: Pick = ALL) -> list[shapely.LineString]:
    """The lines of a map file, degrees; raises RegionError when there are none, or as ``read`` does."""
    found = features(path, pick)
    lines = [line for feature in found.features for line in feature.lines]
    if not lines:
        kinds = _kinds(found.features)
        raise RegionError(f"{path.name} holds no lines, wanted LineString or MultiLineString, found {kinds}")
    return lines


def features(path: Path, pick: Pick = ALL) -> FeatureSet:
    """The features of a map file that are picked, with both their areas and their lines."""
    _check_size(path)
    suffix = path.suffix.lower()
    if suffix in PACKED:
        raise RegionError(f"{path.name} is packed: {PACKED[suffix]}")
    return vector_file.features(path, pick) if suffix in vector_file.BEGINNINGS else json_map.features(path, pick)


def _check_size(path: Path) -> None:
    try:
        size = path.stat().st_size
    except OSError as fault:
        raise RegionError(f"{path.name} cannot be read: {fault.strerror}") from None
    if size > SIZE_MAX_BYTES:
        raise RegionError(f"{path.name} has {size / 2**20:.0f} MB, a map file may have {SIZE_MAX_BYTES >> 20} MB")


def _kinds(features: Iterable[Feature]) -> str:
    return ", ".join(sorted({kind for feature in features for kind in feature.kinds})) or "nothing"
