"""What lies under the lettering: the paints that can be seen of a side, each with what is left of it by those above.

A layer of ink lies on an opaque layer printed before it, where that covers most of it; else on the paints below it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from heraldry.diagrams.pieces import Piece, meet
from heraldry.diagrams.side import Side
from heraldry.diagrams.sketch import Layer
from heraldry.geometry.boolean import intersect, subtract
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.guard.colour import Film
from heraldry.guard.judge import COVERED


@dataclass(frozen=True, eq=False)
class Visible:
    """What can be seen of a paint: its outline and the box round it; ``name`` is None where the side is bare."""

    name: str | None
    paint_hex: str
    outline: Outline
    box: Bounds


@dataclass(frozen=True, eq=False)
class Ground:
    """The part of a layer that lies on one colour, and the film that is between them."""

    colour_hex: str
    part: Outline
    film: Film
    on_ink: bool = False


def visible_paints(side: Side) -> tuple[Visible, ...]:
    """The side itself, then its areas in the order in which they are painted, each without what covers it."""
    coats = [(side.paint, side.paint_hex, side.face.outline)]
    coats += [(area.paint, area.paint_hex, area.outline) for area in side.areas]
    seen: list[Visible] = []
    for i, (name, paint_hex, outline) in enumerate(coats):
        box = bounds(outline)
        covers = [cover for _, _, cover in coats[i + 1 :] if meet(bounds(cover), box)]
        left = subtract(outline, *covers) if covers else outline
        if not left.is_empty:
            seen.append(Visible(name, paint_hex, left, bounds(left)))
    return tuple(seen)


def grounds_of(layer: Layer, below: Sequence[Layer], paints: Sequence[Visible], film: Film) -> Iterator[Ground]:
    """The grounds of a layer, part by part; ``below`` are the layers that were printed before it."""
    box = bounds(layer.outline)
    for under in reversed(below):
        if under.ink.opaque and meet(bounds(under.outline), box):
            shared = intersect(layer.outline, under.outline)
            if not shared.is_empty and area(shared) >= COVERED * area(layer.outline):
                yield Ground(under.ink.colour_hex, layer.outline, "clear", on_ink=True)
                return
    near = [paint for paint in paints if meet(paint.box, box)]
    if len(near) == 1:
        yield Ground(near[0].paint_hex, layer.outline, film)
        return
    for paint in near:
        part = intersect(layer.outline, paint.outline)
        if not part.is_empty:
            yield Ground(paint.paint_hex, part, film)


def in_printing_order(pieces: Sequence[Piece], inks: Sequence[str]) -> list[Layer]:
    """All layers of some pieces, ink after ink."""
    return [layer for name in inks for piece in pieces for layer in piece.layers if layer.ink.name == name]
