"""GeoJSON (RFC 7946) and TopoJSON files: their features, decoded.

Nothing in such a file is trusted. It may be large, deep, of wrong types or full of nonsense; whatever is
wrong with it is said as a RegionError with what was found. GeoJSON is in degrees, unless a member ``crs`` (GeoJSON
of 2008, section 3) names another coordinate system; TopoJSON is always in degrees.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NoReturn

import shapely

from heraldry.errors import RegionError, nearest
from heraldry.shapes.region.coordinates import ToDegrees, as_they_are, degrees_from
from heraldry.shapes.region.features import Feature, FeatureSet
from heraldry.shapes.region.picking import Item, Pick, labels_of, picked, plain
from heraldry.shapes.region.positions import Array, GeoJsonRings
from heraldry.shapes.region.topojson import Arcs

DEPTH_MAX = 16
"""Collections within collections deeper than this are refused."""

RING_POINTS_MIN, LINE_POINTS_MIN = 4, 2
"""A ring of fewer positions (the first one again at the end, RFC 7946 section 3.1.6) bounds nothing."""

Rings = GeoJsonRings | Arcs


def features(path: Path, pick: Pick) -> FeatureSet:
    """The features picked; raises RegionError for whatever is wrong with the file."""
    rings, items = _opened(_load(path), pick.layer, path.name)
    chosen = [_decoded(item, rings, path) for item in picked(items, pick, path.name)]
    return FeatureSet(tuple(chosen), rings.grid_deg)


def _load(path: Path) -> Mapping[str, Any]:
    try:
        document = json.loads(path.read_bytes(), parse_constant=_refuse_constant)
    except OSError as fault:
        raise RegionError(f"{path.name} cannot be read: {fault.strerror}") from None
    except RecursionError:
        raise RegionError(f"{path.name} is nested too deep for a map file") from None
    except ValueError as fault:
        raise RegionError(f"{path.name} is no JSON: {fault}") from None
    if not isinstance(document, dict):
        raise RegionError(f"{path.name} is no map: wanted a GeoJSON or TopoJSON object")
    return document


def _refuse_constant(word: str) -> NoReturn:
    raise ValueError(f"{word} is no number")


def _opened(document: Mapping[str, Any], layer: str | None, file: str) -> tuple[Rings, list[Item]]:
    """What reads the rings of a document, and its features."""
    if document.get("type") != "Topology":
        if layer is not None:
            raise RegionError(f"{file} has no layers, found layer = '{layer}'; leave it out")
        return GeoJsonRings(file, _to_degrees(document.get("crs"), file)), list(_features(document, file))
    objects = document.get("objects")
    if not isinstance(objects, dict):
        raise RegionError(f"{file}: a Topology needs objects, a table of what is on the map")
    if layer is not None and layer not in objects:
        raise RegionError(f"{file} has no layer '{layer}', {nearest(layer, objects)}")
    wanted = objects if layer is None else {layer: objects[layer]}
    return Arcs(document, file), [item for name, thing in wanted.items() for item in _topology_items(name, thing)]


def _to_degrees(crs: Any, file: str) -> ToDegrees:
    if crs is None:
        return as_they_are
    properties = crs.get("properties") if isinstance(crs, dict) else None
    name = properties.get("name") if isinstance(properties, dict) else None
    if not isinstance(name, str):
        raise RegionError(f"{file}: crs names no coordinate system, found {str(crs)[:40]}")
    return degrees_from(name, file)


def _features(document: Mapping[str, Any], file: str) -> Iterator[Item]:
    if document.get("type") != "FeatureCollection":
        yield _item(document, document.get("geometry") if document.get("type") == "Feature" else document)
        return
    for thing in _list_of(document, "features", file):
        if not isinstance(thing, dict) or thing.get("type") != "Feature":
            raise RegionError(f"{file}: a FeatureCollection holds Features, found {str(thing)[:40]}")
        yield _item(thing, thing.get("geometry"))


def _topology_items(name: str, thing: Any) -> Iterator[Item]:
    members = thing.get("geometries") if isinstance(thing, dict) else None
    if isinstance(members, list):
        yield from (_item(member, member, name) for member in members)
    else:
        yield _item(thing, thing, name)


def _item(thing: Any, geometry: Any, *also: str) -> Item:
    feature = thing if isinstance(thing, dict) else {}
    found = feature.get("properties")
    properties = plain(found) if isinstance(found, dict) else {}
    number = feature.get("id")
    return Item(properties, labels_of(properties, None if isinstance(number, bool) else number, *also), geometry)


def _decoded(item: Item, rings: Rings, path: Path) -> Feature:
    found = list(_geometries(item.geometry, rings, path.name))
    polygons = tuple(geometry for _, geometry in found if isinstance(geometry, shapely.Polygon))
    lines = tuple(geometry for _, geometry in found if isinstance(geometry, shapely.LineString))
    kinds = tuple(dict.fromkeys(kind for kind, _ in found))
    return Feature(item.labels[0] if item.labels else path.stem, polygons, lines, kinds)


Found = tuple[str, shapely.Geometry | None]


def _geometries(geometry: Any, rings: Rings, file: str, depth: int = 0) -> Iterator[Found]:
    """The kinds of all that a geometry is made of, with the polygons and lines among them."""
    if geometry is None:
        return
    if not isinstance(geometry, dict) or not isinstance(geometry.get("type"), str):
        raise RegionError(f"{file}: wanted a geometry with its type, found {str(geometry)[:40]}")
    kind = geometry["type"]
    yield kind, None
    if kind == "GeometryCollection":
        if depth == DEPTH_MAX:
            raise RegionError(f"{file}: geometry collections lie deeper than {DEPTH_MAX} within each other")
        for member in _list_of(geometry, "geometries", file):
            yield from _geometries(member, rings, file, depth + 1)
    elif kind.removeprefix("Multi") in ("Polygon", "LineString"):
        found = _list_of(geometry, rings.member, file)
        for part in found if kind.startswith("Multi") else [found]:
            yield kind, _polygon(part, rings, file) if kind.endswith("Polygon") else _line(part, rings)


def _polygon(found: Any, rings: Rings, file: str) -> shapely.Polygon | None:
    """The polygon of a list of rings, unless it has no area."""
    if not isinstance(found, list):
        raise RegionError(f"{file}: a polygon is a list of rings, found {str(found)[:40]}")
    shells: list[Array] = [rings.ring(ring) for ring in found]
    if not shells or len(shells[0]) < RING_POINTS_MIN:
        return None
    return shapely.Polygon(shells[0], [hole for hole in shells[1:] if len(hole) >= RING_POINTS_MIN])


def _line(found: Any, rings: Rings) -> shapely.LineString | None:
    points = rings.ring(found)
    return shapely.LineString(points) if len(points) >= LINE_POINTS_MIN else None


def _list_of(thing: Mapping[str, Any], member: str, file: str) -> list[Any]:
    found = thing.get(member)
    if not isinstance(found, list):
        raise RegionError(f"{file}: {thing.get('type')} needs a list of {member}, found {str(found)[:40]}")
    return found
