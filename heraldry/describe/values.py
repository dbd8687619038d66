"""The raw values of a description, before they are read: what TOML may hold for each value kind.

Which of these a key takes follows from the key. A length may be a bare number (in the file's unit) or a text
with arithmetic; a place is a name, a pair, a table of x and y, or a spot on the map.
"""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Discriminator, Field, Tag


class Strict(BaseModel):
    """A table of a description: unknown keys are faults, and nothing changes once read."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


RawLength = Annotated[
    int | float | str,
    Field(description="a length: '2.6 mm', '1/8 in', '9 in full', a bare number, or arithmetic on named lengths"),
]
RawNumber = Annotated[int | float | str, Field(description="a number, or arithmetic on named numbers")]
RawText = Annotated[str, Field(description="text; {road.name} and the like are filled in")]
RawColour = Annotated[str, Field(pattern=r"^#[0-9A-Fa-f]{6}$", description="a colour as #rrggbb (sRGB), six digits")]


class RawXY(Strict):
    """A point by its two lengths."""

    x: RawLength
    y: RawLength


class RawLatLon(Strict):
    """A place on the map, in degrees north and east (WGS 84), on the region named (or the only one)."""

    lat: Annotated[int | float, Field(ge=-90, le=90)]
    lon: Annotated[int | float, Field(ge=-180, le=180)]
    on: str | None = None


MAP_KEYS = frozenset(RawLatLon.model_fields)
RawLonLat = Annotated[
    list[int | float], Field(min_length=2, max_length=2, description="degrees east and north: [lon, lat]")
]
RawPair = Annotated[list[RawLength], Field(min_length=2, max_length=2, description="x and y")]


def _place_form(table: Any) -> str:
    """Which of the two tables of a place is meant, so that what is wrong with it is told of that one alone."""
    is_on_map = isinstance(table, RawLatLon) or (isinstance(table, dict) and not table.keys().isdisjoint(MAP_KEYS))
    return "RawLatLon" if is_on_map else "RawXY"


RawPlaceTable = Annotated[
    Annotated[RawXY, Tag("RawXY")] | Annotated[RawLatLon, Tag("RawLatLon")], Discriminator(_place_form)
]
RawPlace = Annotated[
    str | RawPair | RawPlaceTable,
    Field(description="a place: 'land.junction', [x, y], { x, y } or { lat, lon }"),
]

RAW: dict[str, Any] = {
    "length": RawLength,
    "number": RawNumber,
    "count": Annotated[int | str, Field(description="a whole number")],
    "angle": Annotated[int | float | str, Field(description="degrees, counter-clockwise from the right")],
    "direction": Annotated[
        int | float | str,
        Field(description="top, bottom, left, right, or degrees, counter-clockwise from the right"),
    ],
    "place": RawPlace,
    "places": Annotated[list[RawPlace], Field(min_length=1, max_length=10_000)],
    "codes": str | Annotated[list[str], Field(max_length=5_000)],
    "text": RawText,
    "flag": bool,
    "file": Annotated[str, Field(min_length=1, description="a file, named from this file's folder")],
    "alphabet": Annotated[str, Field(description="an alphabet of this file or its road, or 'gothic'")],
    "shape": Annotated[str, Field(description="another shape of this file")],
    "map places": dict[str, RawLatLon],
    "map points": Annotated[list[RawLonLat], Field(min_length=2, max_length=10_000)],
}
"""What TOML may hold for each value kind of ``heraldry.shapes.table``."""
