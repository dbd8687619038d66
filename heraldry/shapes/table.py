"""The one table of shape kinds, and the value kinds that their parameters are made of.

A shape is a function with the ``@shape`` decorator. Its name is the key that makes a ``[shape.…]`` table of
that kind, its first parameter bears the same name, and its other parameters are the other keys. The
annotation of a parameter is one of the value kinds below and decides how the key's text is read: what a value
is follows from its key, never from how it looks. Lengths arrive in millimetres, angles in degrees, places as
points, texts with their references filled in.
"""

from __future__ import annotations

import inspect
import types
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, is_dataclass, replace
from functools import wraps
from pathlib import Path as FilePath
from typing import Annotated, Any, Literal, Self, Union, get_args, get_origin, get_type_hints

from heraldry.errors import GeometryError
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabet import Alphabet
from heraldry.shapes.checks import drawable, positive

Length = Annotated[float, "length"]
"""A length in millimetres; may be zero or negative where that has a meaning."""
Number = Annotated[float, "number"]
Count = Annotated[int, "count"]
Angle = Annotated[float, "angle"]
"""Degrees, counter-clockwise from the right."""
Direction = Annotated[float, "direction"]
"""An angle, or one of the words of ``DIRECTIONS``."""
DIRECTIONS = {"right": 0.0, "top": 90.0, "left": 180.0, "bottom": 270.0}
Place = Annotated[Point, "place"]
Text = Annotated[str, "text"]
Flag = Annotated[bool, "flag"]
File = Annotated[FilePath, "file"]
Lettering = Annotated[Alphabet, "alphabet"]
Codes = Annotated[tuple[str, ...], "codes"]
"""Codes of lands on the map: ISO 3166-1, ISO 3166-2 or five digits of a county."""
Places = Annotated[tuple[Point, ...], "places"]
"""Points in order: named places, ``{ x, y }``, or ``{ lat, lon }`` on the map of a named region."""


@dataclass(frozen=True, eq=False)
class Drawn:
    """A drawn shape: its outline, and the points of it that other shapes may name."""

    outline: Outline
    places: Mapping[str, Point] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    """What the shape has to say about itself: islands dropped, tracking opened…"""

    def with_outline(self, outline: Outline) -> Self:
        """The same shape with another outline."""
        return replace(self, outline=outline)


def as_drawn(result: Outline | Drawn) -> Drawn:
    """What a shape's function gives, be it an outline alone or one with places and notes."""
    return result if isinstance(result, Drawn) else Drawn(result)


ShapeRef = Annotated[Drawn, "shape"]
"""Another shape of the same file, named."""


@dataclass(frozen=True)
class LatLon:
    """A place on the map: degrees north, degrees east (WGS 84)."""

    lat: float
    lon: float


MapPlaces = Annotated[Mapping[str, LatLon], "map places"]
"""Named places on a map: a table of ``{ lat, lon }``."""
MapPoints = Annotated[tuple[LatLon, ...], "map points"]
"""Places on a map in order, each ``[longitude, latitude]`` as map files have them."""


@dataclass(frozen=True)
class ShapeKind:
    """One row of the table."""

    name: str
    draw: Callable[..., Outline | Drawn]
    summary: str
    parameters: Mapping[str, inspect.Parameter]
    annotations: Mapping[str, Any]


SHAPES: dict[str, ShapeKind] = {}


def shape(function: Callable[..., Outline | Drawn]) -> Callable[..., Outline | Drawn]:
    """Enter a function into the table of shapes; its docstring's first line becomes its summary.

    What comes back asks first that all numbers can be drawn and the main length is more than 0, and at last that
    there is something to see, so that no shape need ask it again.
    """
    name = function.__name__.rstrip("_")
    parameters = {key.rstrip("_"): value for key, value in inspect.signature(function).parameters.items()}
    annotations = {key.rstrip("_"): value for key, value in get_type_hints(function, include_extras=True).items()}
    summary = (inspect.getdoc(function) or "").partition("\n")[0]
    if next(iter(parameters)) != name:
        raise TypeError(f"the first parameter of shape {name} must be called {name}")
    guarded = _guarded(name, function, annotations)
    SHAPES[name] = ShapeKind(name, guarded, summary, parameters, annotations)
    return guarded


def _guarded(
    name: str, function: Callable[..., Outline | Drawn], annotations: Mapping[str, Any]
) -> Callable[..., Outline | Drawn]:
    signature = inspect.signature(function)
    kinds = {key: value_kind(annotation)[0] for key, annotation in annotations.items() if key != "return"}

    @wraps(function)
    def draw(*values: Any, **keys: Any) -> Outline | Drawn:
        given = signature.bind(*values, **keys).arguments
        sound = {key: drawable(key.rstrip("_"), one, kinds[key.rstrip("_")]) for key, one in given.items()}
        if kinds[name] == "length":
            positive(name, next(iter(sound.values())))
        drawn = function(**sound)
        if as_drawn(drawn).outline.is_empty:
            raise GeometryError(f"nothing is left of this {name}, it covers no area")
        return drawn

    return draw


def value_kind(annotation: Any) -> tuple[str, Any]:
    """The value kind of an annotation, and the words of a choice or the class of a table."""
    if get_origin(annotation) is Annotated:
        return get_args(annotation)[1], None
    if get_origin(annotation) in (Union, types.UnionType):
        return value_kind(next(part for part in get_args(annotation) if part is not type(None)))
    if is_choice(annotation):
        return "choice", annotation
    if is_dataclass(annotation):
        return "table", annotation
    raise TypeError(f"{annotation} is no value kind")


def is_choice(annotation: Any) -> bool:
    """Whether a parameter takes one of a few words."""
    return get_origin(annotation) is Literal


def choices(annotation: Any) -> tuple[str, ...]:
    """The words a choice parameter takes."""
    return get_args(annotation)
