"""The stage: shapes drawn so far, and the points of them that others may name; millimetres."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, fields, is_dataclass, replace
from typing import Any

from heraldry.errors import ExpressionError, nearest
from heraldry.geometry.measure import bounds, centroid
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.resolve.resolved import MapSpot, OpenPlace, PlaceName, ShapeName
from heraldry.shapes.region import DrawnRegion
from heraldry.shapes.table import Drawn

BOX_PLACES = ("centre", "centroid", "top", "bottom", "left", "right")
"""Points that every shape has; the map places of a region come on top of them."""


@dataclass(frozen=True)
class Stage:
    """Drawn shapes by name; ``with_shape`` gives the stage with one more on it."""

    drawn: Mapping[str, Drawn] = field(default_factory=dict)

    def with_shape(self, name: str, drawn: Drawn) -> Stage:
        """The stage with one more shape."""
        return Stage({**self.drawn, name: drawn})

    def shape(self, name: str, position: int = 0) -> Drawn:
        """A shape by name; raises ExpressionError for an unknown one."""
        if name not in self.drawn:
            raise ExpressionError(f"no shape is called '{name}', {nearest(name, self.drawn)}", position)
        return self.drawn[name]

    def _present(self, name: str, position: int = 0) -> Drawn:
        """A shape that others lean on; raises ExpressionError for one that a variant leaves out."""
        drawn = self.shape(name, position)
        if drawn.outline.is_empty:
            raise ExpressionError(f"'{name}' is left out here, but other shapes are placed by it", position)
        return drawn

    def settled(self, value: Any) -> Any:
        """An argument with its open places and shape names replaced by what they stand for."""
        if isinstance(value, PlaceName | MapSpot):
            return self.place(value)
        if isinstance(value, ShapeName):
            return self._present(value.name)
        if isinstance(value, tuple):
            return tuple(self.settled(item) for item in value)
        if _has_open_parts(value):
            return replace(value, **{one.name: self.settled(getattr(value, one.name)) for one in fields(value)})
        return value

    def place(self, place: OpenPlace, position: int = 0) -> Point:
        """The point that a place means; raises ExpressionError where there is none."""
        if isinstance(place, MapSpot):
            return self._region(place.on).locate(place.spot)
        if isinstance(place, PlaceName):
            return self._named(place, position)
        return place

    def _named(self, place: PlaceName, position: int) -> Point:
        if place.name == "origin":
            return ORIGIN
        drawn = self._present(place.shape, position)
        point = place.name.partition(".")[2] or "centre"
        if point in drawn.places:
            return drawn.places[point]
        if point not in BOX_PLACES:
            known = [*drawn.places, *BOX_PLACES]
            raise ExpressionError(f"'{place.shape}' has no point '{point}', {nearest(point, known)}", position)
        return box_place(drawn.outline, point)

    def _region(self, name: str | None) -> DrawnRegion:
        if name is not None:
            named = self._present(name)
            if isinstance(named, DrawnRegion):
                return named
            raise ExpressionError(f"'{name}' is no region, a latitude and longitude need one")
        regions = list(self._regions())
        if len(regions) != 1:
            raise ExpressionError(
                f'a latitude and longitude need one map, found {len(regions)} regions: add on = "…" with its name'
            )
        return regions[0]

    def _regions(self) -> Iterator[DrawnRegion]:
        return (drawn for drawn in self.drawn.values() if isinstance(drawn, DrawnRegion))


def _has_open_parts(value: Any) -> bool:
    """Whether a value is a table of keys, of which one is a place or a shape that is known by its name only."""
    if not is_dataclass(value) or isinstance(value, type):
        return False
    parts = (getattr(value, one.name) for one in fields(value))
    return any(_is_open(part) or (isinstance(part, tuple) and any(map(_is_open, part))) for part in parts)


def _is_open(value: Any) -> bool:
    return isinstance(value, PlaceName | MapSpot | ShapeName)


def box_place(outline: Outline, point: str) -> Point:
    """The middle, the centre of mass, or the middle of a side of the box of an outline."""
    if point == "centroid":
        return centroid(outline)
    box = bounds(outline)
    middle = box.centre
    return {
        "centre": middle,
        "top": Point(middle.x, box.top),
        "bottom": Point(middle.x, box.bottom),
        "left": Point(box.left, middle.y),
        "right": Point(box.right, middle.y),
    }[point]
