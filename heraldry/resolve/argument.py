"""Reads the raw value of one key into what its value kind says: one reader a kind, in one table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any, get_type_hints

from pydantic import BaseModel

from heraldry.describe.expression import Name, parse
from heraldry.describe.text_references import fill
from heraldry.describe.values import RawLatLon, RawXY
from heraldry.errors import ExpressionError, nearest
from heraldry.geometry.point import Point
from heraldry.lettering.alphabet import Alphabet
from heraldry.resolve.resolved import MapSpot, OpenPlace, PlaceName, ShapeName
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes.table import DIRECTIONS, LatLon, value_kind

LONGEST_FILE_NAME = 255
"""No file system in use has longer ones, and some raise where they are asked (NAME_MAX of Linux; from memory)."""


@dataclass(frozen=True)
class Reader:
    """What the values of one file are read with."""

    yardstick: Yardstick
    texts: dict[str, str]
    alphabet: Callable[[str], Alphabet]
    folder: Path
    shapes: frozenset[str]

    def read(self, annotation: Any, raw: Any) -> Any:
        """The value that a raw value means under an annotation of the table of shapes."""
        kind, held = value_kind(annotation)
        if kind == "choice":
            return raw
        if kind == "table":
            return self._table(held, raw)
        return READERS[kind](self, raw)

    def place(self, raw: Any) -> OpenPlace:
        """A point, or the name of one that is known later."""
        if isinstance(raw, RawLatLon):
            return MapSpot(LatLon(float(raw.lat), float(raw.lon)), self._on(raw))
        if isinstance(raw, RawXY):
            return Point(self.yardstick.length_mm(raw.x), self.yardstick.length_mm(raw.y))
        if isinstance(raw, list):
            return Point(*(self.yardstick.length_mm(part) for part in raw))
        return self._place_name(raw)

    def _place_name(self, raw: str) -> PlaceName:
        expression = parse(raw)
        if not isinstance(expression, Name):
            raise ExpressionError("a place is wanted, write a name like land.centre, or [x, y]", expression.position)
        place = PlaceName(expression.name)
        if place.name != "origin" and place.shape not in self.shapes:
            raise ExpressionError(f"no shape is called '{place.shape}', {nearest(place.shape, self.shapes)}")
        return place

    def shape(self, raw: str) -> ShapeName:
        """Another shape of the file."""
        if raw not in self.shapes:
            raise ExpressionError(f"no shape is called '{raw}', {nearest(raw, self.shapes)}")
        return ShapeName(raw)

    def file(self, raw: str) -> Path:
        """A file beside the description."""
        path = self.folder / raw
        if len(path.name) > LONGEST_FILE_NAME or not path.is_file():
            raise ExpressionError(f"the file is not there, found '{raw}', looked for {path}")
        return path

    def _on(self, raw: RawLatLon) -> str | None:
        return self.shape(raw.on).name if raw.on is not None else None

    def _map_places(self, raw: dict[str, RawLatLon]) -> dict[str, LatLon]:
        return {name: LatLon(float(spot.lat), float(spot.lon)) for name, spot in raw.items()}

    def _table(self, table: type, raw: BaseModel) -> Any:
        hints = get_type_hints(table, include_extras=True)
        given = {one.name: getattr(raw, one.name) for one in fields(table)}
        return table(**{key: self.read(hints[key], value) for key, value in given.items() if value is not None})


READERS: dict[str, Callable[[Reader, Any], Any]] = {
    "length": lambda reader, raw: reader.yardstick.length_mm(raw),
    "number": lambda reader, raw: reader.yardstick.number(raw),
    "angle": lambda reader, raw: reader.yardstick.number(raw),
    "direction": lambda reader, raw: DIRECTIONS[raw] if raw in DIRECTIONS else reader.yardstick.number(raw),
    "count": lambda reader, raw: reader.yardstick.count(raw),
    "place": Reader.place,
    "places": lambda reader, raw: tuple(reader.place(one) for one in raw),
    "codes": lambda _, raw: (raw,) if isinstance(raw, str) else tuple(raw),
    "text": lambda reader, raw: fill(raw, reader.texts),
    "flag": lambda _, raw: raw,
    "file": Reader.file,
    "alphabet": lambda reader, raw: reader.alphabet(raw),
    "shape": Reader.shape,
    "map places": Reader._map_places,
    "map points": lambda _, raw: tuple(LatLon(float(lat), float(lon)) for lon, lat in raw),
}
"""How the raw value of each value kind is read."""
