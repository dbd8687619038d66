"""Pieces: items in place on one side of one car, and the plates that they come to; millimetres."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations

from heraldry.artwork import Ink, Plate
from heraldry.diagrams.cars import Car
from heraldry.diagrams.layout import Layout, Place
from heraldry.diagrams.sketch import Layer
from heraldry.diagrams.studio import Studio
from heraldry.geometry.boolean import unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline


@dataclass(frozen=True, eq=False)
class Piece:
    """An item in place; ``box`` is the box round its ink, ``measured`` the one that it is measured by.

    The two differ for lettering, which is measured from its base line to the heads of its capitals.
    """

    place: Place
    layers: tuple[Layer, ...]
    box: Bounds
    measured: Bounds
    notes: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The item's name."""
        return self.place.item.name

    @property
    def outline(self) -> Outline:
        """All its ink, gathered."""
        return Outline.gather(layer.outline for layer in self.layers)


def piece(place: Place, car: Car, studio: Studio) -> Piece:
    """An item in place on a car; raises HeraldryError for what cannot be drawn."""
    sketch = studio.sketch(place.item, car, place.hold)
    placed = sketch.placed(place.enlarge, place.at.x, place.at.y)
    return Piece(place, placed.layers, placed.ink_box, placed.box, placed.notes)


def shared_pieces(layout: Layout, car: Car, studio: Studio) -> tuple[Piece, ...]:
    """The pieces that all cars have alike."""
    return tuple(piece(place, car, studio) for place in layout.places if not studio.differs(place.item))


@dataclass(frozen=True, eq=False)
class Coat:
    """What one ink covers: an outline, and the boxes of the parts that it is made of."""

    ink: Ink
    outline: Outline
    boxes: tuple[Bounds, ...]


def coats(pieces: Iterable[Piece]) -> dict[str, Coat]:
    """All pieces by ink, in the order in which inks first appear."""
    layers: dict[str, list[Layer]] = {}
    for one in pieces:
        for layer in one.layers:
            layers.setdefault(layer.ink.name, []).append(layer)
    return {name: _coat(of_ink) for name, of_ink in layers.items()}


def _coat(layers: Sequence[Layer]) -> Coat:
    outlines = [layer.outline for layer in layers]
    return Coat(layers[0].ink, unite_where_they_meet(outlines), tuple(bounds(outline) for outline in outlines))


def plates(order: Iterable[Ink], shared: dict[str, Coat], own: dict[str, Coat]) -> tuple[Plate, ...]:
    """The plates of a car, in printing order: what it shares with all cars, and its own."""
    made = []
    for ink in order:
        parts = [coat[ink.name] for coat in (shared, own) if ink.name in coat]
        if parts:
            overlap = len(parts) == 2 and any(meet(a, b) for a in parts[0].boxes for b in parts[1].boxes)
            made.append(Plate(ink.name, ink, _together([part.outline for part in parts], overlap)))
    return tuple(made)


def unite_where_they_meet(outlines: Sequence[Outline]) -> Outline:
    """Outlines as one region, by a set operation only where the boxes of two of them meet."""
    boxes = [bounds(outline) for outline in outlines]
    return _together(list(outlines), any(meet(a, b) for a, b in combinations(boxes, 2)))


def _together(outlines: list[Outline], overlap: bool) -> Outline:
    """Outlines side by side need no set operation, and those of a thousand cars are worth sparing it."""
    return unite(*outlines) if overlap else Outline.gather(outlines)


def meet(one: Bounds, other: Bounds, apart_mm: float = 0.0) -> bool:
    """Whether two boxes come nearer than so far apart."""
    across = one.left - other.right, other.left - one.right
    upright = one.bottom - other.top, other.bottom - one.top
    return max(*across, *upright) <= apart_mm
