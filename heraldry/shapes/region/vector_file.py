"""Shapefile, GeoPackage and KML files: their features, read by pyogrio (GDAL), which is an extra.

A file is opened only when it begins as its kind does: GDAL looks at content, and knows kinds of files that fetch
others. Positions are turned into degrees from the coordinate system that the file names.
"""

from __future__ import annotations

import warnings
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path
from types import ModuleType

import numpy as np
import shapely

from heraldry.errors import RegionError, nearest
from heraldry.shapes.region.coordinates import ToDegrees, as_they_are, degrees_from
from heraldry.shapes.region.features import Feature, FeatureSet
from heraldry.shapes.region.picking import Item, Pick, labels_of, picked, plain
from heraldry.shapes.region.positions import LATITUDE_MAX, LONGITUDE_MAX, Array, degrees_checked

BEGINNINGS: Mapping[str, tuple[str, bytes]] = {
    ".shp": ("Shapefile", b"\x00\x00\x27\x0a"),
    ".gpkg": ("GeoPackage", b"SQLite format 3\x00"),
    ".kml": ("KML file", b"<kml"),
}
"""By a file's ending: what it is called, and what stands at its beginning (for KML, in its first letters)."""

HEAD_BYTES = 4096
"""Within these a KML file opens its first element, after what an XML file begins with."""

SHAPEFILE_PARTS = (".shx", ".dbf")
"""What a Shapefile cannot be read without; its .prj names its coordinate system."""

EXTRA = "pip install 'heraldry[maps]'"


def features(path: Path, pick: Pick) -> FeatureSet:
    """The features picked; raises RegionError for a file that is none, or when pyogrio is not there."""
    _check_beginning(path)
    pyogrio = _pyogrio(path.name)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of GDAL, on what does not matter here (heights, measures)
            layers = _layers(pyogrio, path, pick.layer)
            items = [item for layer in layers for item in _items(pyogrio, path, layer)]
    except (RuntimeError, ValueError) as fault:  # what pyogrio raises is of these
        raise RegionError(f"{path.name} cannot be read: {str(fault)[:160]}") from None
    return FeatureSet(tuple(_decoded(item, path) for item in picked(items, pick, path.name)))


def _check_beginning(path: Path) -> None:
    kind, beginning = BEGINNINGS[path.suffix.lower()]
    try:
        with path.open("rb") as file:
            head = file.read(HEAD_BYTES)
    except OSError as fault:
        raise RegionError(f"{path.name} cannot be read: {fault.strerror}") from None
    if not (beginning in head if kind == "KML file" else head.startswith(beginning)):
        raise RegionError(f"{path.name} is no {kind}: it does not begin as one")
    if kind == "Shapefile":
        missing = [part for part in SHAPEFILE_PARTS if not _beside(path, part)]
        if missing:
            raise RegionError(f"{path.name} needs {path.stem}{' and '.join(missing)} beside it, of the same Shapefile")


def _beside(path: Path, suffix: str) -> bool:
    return any(path.with_suffix(ending).is_file() for ending in (suffix, suffix.upper()))


def _pyogrio(file: str) -> ModuleType:
    try:
        import_module("pyogrio.raw")  # imported where used: an extra, 80 MB
        return import_module("pyogrio")
    except ImportError:
        raise RegionError(
            f"{file} needs the extra for such maps: {EXTRA}; GeoJSON and TopoJSON files need none"
        ) from None


def _layers(pyogrio: ModuleType, path: Path, wanted: str | None) -> list[str]:
    """The layer wanted, the only one, or of a KML file, whose folders are layers, all of them."""
    names = [str(name) for name in pyogrio.list_layers(path)[:, 0]]
    if wanted is not None:
        if wanted not in names:
            raise RegionError(f"{path.name} has no layer '{wanted}', {nearest(wanted, names)}")
        return [wanted]
    if len(names) > 1 and path.suffix.lower() != ".kml":
        raise RegionError(f'{path.name} has several layers, choose with layer = "…": {", ".join(sorted(names))}')
    return names


def _items(pyogrio: ModuleType, path: Path, layer: str) -> list[Item]:
    """The features of a layer; their geometry is well-known binary, with what turns it into degrees."""
    meta, numbers, geometries, columns = pyogrio.raw.read(path, layer=layer, return_fids=True)
    if geometries is None:
        return []
    to_degrees = degrees_from(meta["crs"], path.name) if meta["crs"] else None
    fields = [str(name) for name in meta["fields"]]
    rows = zip(*(column.tolist() for column in columns), strict=True) if fields else [()] * len(geometries)
    items = []
    for number, geometry, row in zip(numbers.tolist(), geometries, rows, strict=True):
        properties = plain(dict(zip(fields, row, strict=True)))
        items.append(Item(properties, labels_of(properties, number), (geometry, to_degrees)))
    return items


def _decoded(item: Item, path: Path) -> Feature:
    packed, to_degrees = item.geometry
    geometry = shapely.from_wkb(packed, on_invalid="ignore")
    parts = shapely.get_parts(shapely.get_parts(shapely.force_2d([geometry]))) if geometry is not None else []
    degrees = [shapely.transform(part, _checked(to_degrees, path.name)) for part in parts if not part.is_empty]
    return Feature(
        item.labels[0] if item.labels else path.stem,
        tuple(part for part in degrees if isinstance(part, shapely.Polygon)),
        tuple(part for part in degrees if type(part) is shapely.LineString),
        () if geometry is None else (geometry.geom_type,),
    )


def _checked(to_degrees: ToDegrees | None, file: str) -> ToDegrees:
    """What turns positions into degrees and refuses those off the globe; without a system, degrees are assumed."""

    def checked(points: Array) -> Array:
        if to_degrees is None and (np.abs(points) > (LONGITUDE_MAX, LATITUDE_MAX)).any():
            raise RegionError(
                f"{file} does not say its coordinate system, and is not in degrees; of a Shapefile it stands in "
                f"{Path(file).stem}.prj beside it"
            )
        return degrees_checked((to_degrees or as_they_are)(points), file)

    return checked
