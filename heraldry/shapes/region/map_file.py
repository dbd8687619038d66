"""The one door to a user's own map files: GeoJSON (RFC 7946) and TopoJSON, both in degrees.

Nothing in such a file is trusted. It may be large, deep, of wrong types or full of nonsense; whatever is
wrong with it is said as a RegionError with what was found. Polygons that cross themselves are let through:
they are mended where they are projected.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NoReturn

import shapely

from heraldry.errors import RegionError, nearest
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.names import folded
from heraldry.shapes.region.positions import Array, GeoJsonRings
from heraldry.shapes.region.topojson import Arcs

SIZE_MAX_BYTES = 64 * 2**20
"""Larger map files are refused: an emblem shows some hundred points of them."""

DEPTH_MAX = 16
"""Collections within collections deeper than this are refused."""

RING_POINTS_MIN = 4
"""A ring of fewer positions (the first one again at the end, RFC 7946 section 3.1.6) bounds nothing."""

# How many names an error lists before it gives up.
OFFERS_MAX = 12

Rings = GeoJsonRings | Arcs


@dataclass(frozen=True)
class _Item:
    """A feature, or a geometry without one: what it may be picked by, and its geometry as found."""

    labels: tuple[str, ...]
    geometry: Any


def read(path: Path, feature: str | None = None) -> list[Land]:
    """The lands of a map file: all of them, or those with ``feature`` as their id or a property's value.

    Raises RegionError for whatever is wrong with the file.
    """
    document = _load(path)
    rings, items = _opened(document, path.name)
    picked = _picked(items, feature, path.name)
    kinds: set[str] = set()
    lands = []
    for item in picked:
        polygons = list(_polygons(item.geometry, rings, kinds, path.name))
        if polygons:
            name = item.labels[0] if item.labels else path.stem
            lands.append(Land(name, shapely.MultiPolygon(polygons), path.name, rings.grid_deg))
    if not lands:
        found = ", ".join(sorted(kinds)) or "nothing"
        raise RegionError(f"{path.name} holds no area, wanted Polygon or MultiPolygon, found {found}")
    return lands


def _load(path: Path) -> Mapping[str, Any]:
    try:
        size = path.stat().st_size
        if size > SIZE_MAX_BYTES:
            raise RegionError(f"{path.name} has {size / 2**20:.0f} MB, a map file may have {SIZE_MAX_BYTES >> 20} MB")
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


def _opened(document: Mapping[str, Any], file: str) -> tuple[Rings, list[_Item]]:
    """What reads the rings of a document, and its features."""
    if document.get("type") != "Topology":
        return GeoJsonRings(file), list(_features(document, file))
    objects = document.get("objects")
    if not isinstance(objects, dict):
        raise RegionError(f"{file}: a Topology needs objects, found {type(objects).__name__}")
    items = [item for name, thing in objects.items() for item in _topology_items(name, thing)]
    return Arcs(document, file), items


def _features(document: Mapping[str, Any], file: str) -> Iterator[_Item]:
    if document.get("type") != "FeatureCollection":
        yield _item(document, document.get("geometry") if document.get("type") == "Feature" else document)
        return
    for thing in _list_of(document, "features", file):
        if not isinstance(thing, dict) or thing.get("type") != "Feature":
            raise RegionError(f"{file}: a FeatureCollection holds Features, found {str(thing)[:40]}")
        yield _item(thing, thing.get("geometry"))


def _topology_items(name: str, thing: Any) -> Iterator[_Item]:
    members = thing.get("geometries") if isinstance(thing, dict) else None
    if isinstance(members, list):
        yield from (_item(member, member, (name,)) for member in members)
    else:
        yield _item(thing, thing, (name,))


def _item(thing: Any, geometry: Any, also: tuple[str, ...] = ()) -> _Item:
    """A feature with its labels: the values of its properties (its name first), and its id."""
    feature = thing if isinstance(thing, dict) else {}
    properties = feature.get("properties")
    values = properties if isinstance(properties, dict) else {}
    ordered = [values.get("name"), values.get("NAME"), *values.values(), feature.get("id"), *also]
    texts = [str(value) for value in ordered if isinstance(value, str | int) and not isinstance(value, bool)]
    return _Item(tuple(dict.fromkeys(texts)), geometry)


def _picked(items: Sequence[_Item], feature: str | None, file: str) -> list[_Item]:
    if feature is None:
        return list(items)
    wanted = folded(feature)
    picked = [item for item in items if wanted in map(folded, item.labels)]
    if not picked:
        raise RegionError(f"{file} has no feature '{feature}'; {_offer(feature, items)}")
    return picked


def _offer(feature: str, items: Iterable[_Item]) -> str:
    labels = dict.fromkeys(label for item in items for label in item.labels if not label.isdigit())
    if not labels:
        return "its features have no names; leave feature out to take all of them"
    offer = nearest(feature, labels)
    return (
        offer
        if len(labels) <= OFFERS_MAX or offer.startswith("did")
        else ("some of its names: " + ", ".join(list(labels)[:OFFERS_MAX]))
    )


def _polygons(geometry: Any, rings: Rings, kinds: set[str], file: str, depth: int = 0) -> Iterator[shapely.Polygon]:
    """The polygons of a geometry; the kinds of all that it is made of are noted in ``kinds``."""
    if geometry is None:
        return
    if not isinstance(geometry, dict) or not isinstance(geometry.get("type"), str):
        raise RegionError(f"{file}: wanted a geometry with its type, found {str(geometry)[:40]}")
    kind = geometry["type"]
    kinds.add(kind)
    if kind == "GeometryCollection":
        if depth == DEPTH_MAX:
            raise RegionError(f"{file}: geometry collections lie deeper than {DEPTH_MAX} within each other")
        for member in _list_of(geometry, "geometries", file):
            yield from _polygons(member, rings, kinds, file, depth + 1)
    elif kind in ("Polygon", "MultiPolygon"):
        found = _list_of(geometry, rings.member, file)
        for polygon in [found] if kind == "Polygon" else found:
            yield from _polygon(polygon, rings, file)


def _polygon(found: Any, rings: Rings, file: str) -> Iterator[shapely.Polygon]:
    """The polygon of a list of rings, unless it has no area."""
    if not isinstance(found, list):
        raise RegionError(f"{file}: a polygon is a list of rings, found {str(found)[:40]}")
    shells: list[Array] = [rings.ring(ring) for ring in found]
    if shells and len(shells[0]) >= RING_POINTS_MIN:
        yield shapely.Polygon(shells[0], [hole for hole in shells[1:] if len(hole) >= RING_POINTS_MIN])


def _list_of(thing: Mapping[str, Any], member: str, file: str) -> list[Any]:
    found = thing.get(member)
    if not isinstance(found, list):
        raise RegionError(f"{file}: {thing.get('type')} needs a list of {member}, found {str(found)[:40]}")
    return found
