"""What a description becomes when every word in it has its value: millimetres, colours, alphabets, parsed art.

Only places stay open here, since a point of a shape is known once that shape is drawn.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from heraldry.artwork import Ink
from heraldry.describe.description import Description
from heraldry.describe.expression import Expression
from heraldry.describe.models import Form
from heraldry.geometry.point import Point
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes.table import LatLon, ShapeKind
from heraldry.units import Scale


@dataclass(frozen=True)
class PlaceName:
    """A point of a shape, by name: ``land.junction``; a bare shape name means its centre."""

    name: str

    @property
    def shape(self) -> str:
        """The shape whose point it is."""
        return self.name.partition(".")[0]


@dataclass(frozen=True)
class MapSpot:
    """A point by latitude and longitude, on the map of the region named (or of the only one)."""

    spot: LatLon
    on: str | None = None


OpenPlace = Point | PlaceName | MapSpot


@dataclass(frozen=True)
class ShapeName:
    """Another shape of the same file."""

    name: str


@dataclass(frozen=True, eq=False)
class ResolvedShape:
    """A shape to be drawn: a kind with its arguments, or (``kind`` None) set arithmetic on other shapes.

    Where there is neither, a variant leaves the shape out.
    """

    name: str
    kind: ShapeKind | None
    arguments: Mapping[str, Any]
    art: Expression | None
    needs: tuple[str, ...]
    """The shapes that must be drawn before it, sorted."""


@dataclass(frozen=True, eq=False)
class ResolvedPlate:
    """A plate to be composed."""

    name: str
    ink: Ink
    art: Expression


@dataclass(frozen=True)
class ResolvedForm:
    """A form that is derived from the finished plates: what it is, in which ink, and by which measures."""

    word: Form
    ink: Ink
    ground_hex: str
    """What shows where the herald that it is derived from has no ink: its paint, or white film."""
    line_mm: float
    gap_mm: float
    bare: frozenset[str] | None
    """The plates that become bare; None: those that are like the ground."""
    field: Expression | None
    """What a reversed herald stands on; None: all that its plates enclose."""


@dataclass(frozen=True, eq=False)
class ResolvedHerald:
    """A herald ready to be drawn; shapes stand in an order in which each finds what it needs."""

    description: Description
    name: str
    scale: Scale | None
    yardstick: Yardstick
    """The file's named lengths and numbers, for the arguments of art functions."""
    width_mm: float | None
    height_mm: float | None
    film: Literal["clear", "white"]
    paint_hex: str | None
    shapes: tuple[ResolvedShape, ...]
    plates: tuple[ResolvedPlate, ...]
    form: ResolvedForm | None = None
    """The form that is derived from the plates, if one is asked for."""

    @property
    def variant(self) -> str:
        """Which variant it is; nothing for the herald itself."""
        variation = self.description.variation
        return variation.name if variation else ""

    @property
    def inks(self) -> tuple[Ink, ...]:
        """The inks that it is printed in, in their order."""
        return (self.form.ink,) if self.form else tuple(plate.ink for plate in self.plates)
