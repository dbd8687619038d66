"""What the printer, the paint and the eye will not allow of the items of a class.

What all cars share is looked at as plates. The lettering that each car has for itself is looked at by pairs of letters,
for a line has thin places and narrow gaps only in its letters and between neighbours: a class of a thousand cars has
some hundred pairs, each of which is looked at once. Colours are looked at once for each item, wherever it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from heraldry.artwork import Finding, Plate
from heraldry.diagrams.cars import Car
from heraldry.diagrams.grounds import Visible, grounds_of, in_printing_order
from heraldry.diagrams.layout import Place
from heraldry.diagrams.pieces import Coat, Piece
from heraldry.diagrams.subjects import ShapeSubject
from heraldry.geometry.affine import Affine
from heraldry.guard.colour import Film
from heraldry.guard.judge import of_colour, of_fineness, of_reading, of_whiteness
from heraldry.plates.turned_over import draw_shape
from heraldry.resolve.limits import PrinterLimits


@dataclass(frozen=True, eq=False)
class PrintReader:
    """Looks over one side of a class; what was looked at once is remembered."""

    film: Film
    printer: PrinterLimits
    inks: tuple[str, ...]
    paints: tuple[Visible, ...]
    _by_pair: dict[object, tuple[Finding, ...]] = field(default_factory=dict)
    _by_item: dict[str, tuple[Finding, ...]] = field(default_factory=dict)

    def of_shared(self, pieces: Sequence[Piece], coats: dict[str, Coat]) -> tuple[Finding, ...]:
        """What is found about the items that all cars have alike."""
        found: list[Finding] = []
        for coat in coats.values():
            plate = Plate(coat.ink.name, coat.ink, coat.outline)
            found += [*of_fineness(plate, self.printer), *of_whiteness(plate)]
        for piece in pieces:
            found += self._of_item(piece, pieces)
        return _once(found)

    def of_own(self, pieces: Sequence[Piece], shared: Sequence[Piece], car: Car) -> tuple[Finding, ...]:
        """What is found about the items that one car has for itself."""
        found: list[Finding] = []
        for piece in pieces:
            found += self._of_item(piece, [*shared, *pieces])
            found += self._of_fineness(piece, car)
        return _once(found)

    def _of_item(self, piece: Piece, all_pieces: Sequence[Piece]) -> tuple[Finding, ...]:
        """Reading and colours, which are the same on every car."""
        if piece.name not in self._by_item:
            notes = [Finding("note", f"{piece.name}: {note}", "note") for note in piece.notes]
            found = [*notes, *_of_reading(piece.place), *self._of_colours(piece, all_pieces)]
            self._by_item[piece.name] = tuple(found)
        return self._by_item[piece.name]

    def _of_colours(self, piece: Piece, all_pieces: Sequence[Piece]) -> Iterator[Finding]:
        printed = in_printing_order(all_pieces, self.inks)
        for layer in piece.layers:
            below = printed[: next(i for i, one in enumerate(printed) if one is layer)]
            for ground in grounds_of(layer, below, self.paints, self.film):
                plate = Plate(layer.ink.name, layer.ink, layer.outline)
                yield from of_colour(plate, ground.colour_hex, ground.film)

    def _of_fineness(self, piece: Piece, car: Car) -> Iterator[Finding]:
        """The finest place of each kind in a piece."""
        finest: dict[str, Finding] = {}
        for found in self._of_parts(piece, car):
            before = finest.get(found.kind)
            if before is None or (found.measured_mm or 0.0) < (before.measured_mm or 0.0):
                finest[found.kind] = found
        for found in finest.values():
            yield replace(found, message=f"{piece.name}: {found.message}", place=None)

    def _of_parts(self, piece: Piece, car: Car) -> Iterator[Finding]:
        subject = piece.place.item.subject
        if not isinstance(subject, ShapeSubject) or not subject.is_line or "round" in subject.arguments:
            for layer in piece.layers:
                yield from of_fineness(Plate(layer.ink.name, layer.ink, layer.outline), self.printer)
            return
        text = dict(zip(subject.templates, subject.key(car), strict=True))["text"]
        for pair in dict.fromkeys(one + other for one, other in pairwise(text)) or (text,):
            key = (piece.name, pair)
            if pair.strip() and key not in self._by_pair:
                self._by_pair[key] = self._of_pair(subject, pair, piece.place.enlarge)
            yield from self._by_pair.get(key, ())

    def _of_pair(self, subject: ShapeSubject, pair: str, enlarge: float) -> tuple[Finding, ...]:
        arguments = {key: value for key, value in subject.arguments.items() if key != "fit"}
        drawn = draw_shape(subject.kind, {**arguments, "text": pair})
        outline = drawn.outline.transformed(Affine.scale(enlarge))
        return tuple(of_fineness(Plate(subject.ink.name, subject.ink, outline), self.printer))


def _of_reading(place: Place) -> Iterator[Finding]:
    subject = place.item.subject
    if isinstance(subject, ShapeSubject) and subject.cap_height_mm is not None:
        yield from of_reading(place.item.name, subject.cap_height_mm * place.enlarge)


def _once(found: Sequence[Finding]) -> tuple[Finding, ...]:
    """The same thing said of two items is said once."""
    return tuple(dict.fromkeys(found))
