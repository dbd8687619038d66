"""A sketch: one item drawn about the point where it is held, before it has a place on a side; millimetres.

A line of lettering is held by its base line and its capitals, not by its ink: O swings below the base line and Q hangs
under it, and neither may move the line. Everything else is held by the box round its ink.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from heraldry.artwork import Ink, Plate
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.lettering.setting.lay import SHARE, Anchor
from heraldry.shapes.text import SHARE_UP, Level


@dataclass(frozen=True)
class Hold:
    """Which point of an item is held, and whether the item is turned over."""

    anchor: Anchor = "middle"
    level: Level = "foot"
    turned_over: bool = False


@dataclass(frozen=True, eq=False)
class Layer:
    """What one ink covers."""

    ink: Ink
    outline: Outline

    @property
    def plate(self) -> Plate:
        """The same as the plate of its ink."""
        return Plate(self.ink.name, self.ink, self.outline)


@dataclass(frozen=True, eq=False)
class Sketch:
    """Layers in printing order about the origin, and the box that the item is measured by."""

    layers: tuple[Layer, ...]
    box: Bounds
    notes: tuple[str, ...] = ()

    def placed(self, enlarge: float, right: float, up: float) -> Sketch:
        """The sketch enlarged about the point where it is held, and moved there; on the nanometre grid."""
        affine = Affine.move(right, up) @ Affine.scale(enlarge)
        layers = tuple(Layer(layer.ink, layer.outline.transformed(affine).quantised()) for layer in self.layers)
        return replace(self, layers=layers, box=moved_box(self.box, enlarge, right, up))

    @property
    def ink_box(self) -> Bounds:
        """The box round all ink."""
        return Bounds.round(bounds(layer.outline) for layer in self.layers)


def moved_box(box: Bounds, enlarge: float, right: float, up: float) -> Bounds:
    """A box enlarged about the origin and moved."""
    return Bounds(
        box.left * enlarge + right, box.bottom * enlarge + up, box.right * enlarge + right, box.top * enlarge + up
    )


def held_by_ink(layers: Sequence[Layer], hold: Hold) -> Sketch:
    """Layers moved so that the held point of the box round all their ink is at the origin."""
    box = Bounds.round(bounds(layer.outline) for layer in layers)
    right = -(box.left + SHARE[hold.anchor] * box.width)
    up = -(box.bottom + SHARE_UP[hold.level] * box.height)
    moved = tuple(Layer(one.ink, one.outline.transformed(Affine.move(right, up))) for one in layers)
    return Sketch(moved, moved_box(box, 1.0, right, up))
