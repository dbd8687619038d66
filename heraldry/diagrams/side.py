"""One side of a car: a flat face with its paints, panels, keep-outs and ribs; millimetres from its lower left corner.

A side and its mirror image are two sides: what is on the left of one is on the right of the other, and so is the
end that leads. The names of a side are the edges that places on it are written with.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point

Hand = Literal["left", "right"]
OTHER: Mapping[Hand, Hand] = {"left": "right", "right": "left"}

BARE_HEX = "#b0b0b0"
"""The grey of a side whose paint the file does not say: unpainted, and plainly so."""
EDGE_NAMES = ("left", "right", "bottom", "top", "width", "height", "centre_x", "centre_y")
"""What every side, panel and keep-out has; a side's own are written bare, those of others behind their name."""


@dataclass(frozen=True, eq=False)
class Area:
    """Part of a picture in a paint; it may reach beyond the side, as a roof or a truck does."""

    name: str
    outline: Outline
    paint: str
    paint_hex: str


@dataclass(frozen=True)
class RibRow:
    """Ribs, seams or rivets in a row, each an upright strip."""

    name: str
    strips: tuple[Bounds, ...]
    may_be_crossed: bool = False


@dataclass(frozen=True, eq=False)
class Side:
    """A measured side; ``front`` is the end that leads, as the side is seen. Without a paint it is bare."""

    name: str
    width_mm: float
    height_mm: float
    paint: str | None = None
    paint_hex: str = BARE_HEX
    front: Hand = "left"
    areas: tuple[Area, ...] = ()
    panels: Mapping[str, Bounds] = field(default_factory=dict)
    keepouts: Mapping[str, Outline] = field(default_factory=dict)
    ribs: tuple[RibRow, ...] = ()
    boxes: Mapping[str, Bounds] = field(default_factory=dict)
    """The box of every panel, keep-out and area, by its name."""

    @property
    def face(self) -> Bounds:
        """The whole side."""
        return Bounds(0.0, 0.0, self.width_mm, self.height_mm)

    def mirrored(self, name: str) -> Side:
        """The side across the car, which is this one seen in a mirror."""
        middle = Point(self.width_mm / 2, 0.0)
        return replace(
            self,
            name=name,
            front=OTHER[self.front],
            areas=tuple(replace(area, outline=area.outline.flipped(middle)) for area in self.areas),
            panels={key: self.mirrored_box(box) for key, box in self.panels.items()},
            keepouts={key: outline.flipped(middle) for key, outline in self.keepouts.items()},
            ribs=tuple(replace(row, strips=tuple(map(self.mirrored_box, row.strips))) for row in self.ribs),
            boxes={key: self.mirrored_box(box) for key, box in self.boxes.items()},
        )

    def edges(self) -> dict[str, float]:
        """Every edge by the name that a place is written with: ``left``, ``door.left``, ``A.centre_x``."""
        named = dict(edges_of(self.face))
        for name, box in self.boxes.items():
            named |= {f"{name}.{edge}": value for edge, value in edges_of(box)}
        return named

    def mirrored_box(self, box: Bounds) -> Bounds:
        """A box on this side as it lies on the side across the car."""
        return Bounds(self.width_mm - box.right, box.bottom, self.width_mm - box.left, box.top)


def edges_of(box: Bounds) -> Iterator[tuple[str, float]]:
    """The edges of a box, in the order of ``EDGE_NAMES``."""
    middle = box.centre
    values = (box.left, box.right, box.bottom, box.top, box.width, box.height, middle.x, middle.y)
    return zip(EDGE_NAMES, values, strict=True)
