"""What the printer, the paint and the eye will not allow of the items of a class.

What all cars share is looked at as plates. The lettering that each car has for itself is looked at by pairs of letters,
for a line has thin places and narrow gaps only in its letters and between neighbours: a class of a thousand cars has
some hundred pairs, each of which is looked at once. The class is printed alike, so the finest place of a line on any of
its cars is told of all of them. Colours are looked at once for each item, wherever it is.
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
from heraldry.errors import HeraldryError
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
    cars: tuple[Car, ...] = ()
    """All cars of the class, whichever of them are drawn."""
    _by_item: dict[str, tuple[Finding, ...]] = field(default_factory=dict)
    _fineness_by_line: dict[str, tuple[Finding, ...]] = field(default_factory=dict)

    def of_shared(self, pieces: Sequence[Piece], coats: dict[str, Coat]) -> tuple[Finding, ...]:
        """What is found about the items that all cars have alike."""
        found: list[Finding] = []
        for coat in coats.values():
            plate = Plate(coat.ink.name, coat.ink, coat.outline)
            found += [*of_fineness(plate, self.printer), *of_whiteness(plate)]
        for piece in pieces:
            found += self._of_item(piece, pieces)
        return _once(found)

    def of_own(self, pieces: Sequence[Piece], shared: Sequence[Piece]) -> tuple[Finding, ...]:
        """What is found about the items that one car has for itself."""
        found: list[Finding] = []
        for piece in pieces:
            found += self._of_item(piece, [*shared, *pieces])
            found += self._of_fineness(piece)
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
                plate = layer.plate
                yield from of_colour(plate, ground.colour_hex, ground.film)

    def _of_fineness(self, piece: Piece) -> tuple[Finding, ...]:
        """The finest place of each kind: in a line on any car, in anything else as it is here."""
        subject = piece.place.item.subject
        if not isinstance(subject, ShapeSubject) or not subject.is_line or "round" in subject.arguments:
            plates = [layer.plate for layer in piece.layers]
            return _finest(piece.name, [one for plate in plates for one in of_fineness(plate, self.printer)])
        if piece.name not in self._fineness_by_line:
            pairs = dict.fromkeys(pair for car in self.cars for pair in _pairs(subject, car))
            found = [one for pair in pairs for one in self._of_pair(subject, pair, piece.place.enlarge)]
            self._fineness_by_line[piece.name] = _finest(piece.name, found)
        return self._fineness_by_line[piece.name]

    def _of_pair(self, subject: ShapeSubject, pair: str, enlarge: float) -> tuple[Finding, ...]:
        arguments = {key: value for key, value in subject.arguments.items() if key != "fit"}
        try:
            drawn = draw_shape(subject.kind, {**arguments, "text": pair})
        except HeraldryError:
            return ()  # a car that cannot be lettered has a fault of its own
        outline = drawn.outline.transformed(Affine.scale(enlarge))
        return tuple(of_fineness(Plate(subject.ink.name, subject.ink, outline), self.printer))


def _pairs(subject: ShapeSubject, car: Car) -> Iterator[str]:
    """A line's neighbours in turn, or its only letter."""
    text = dict(zip(subject.templates, subject.key(car), strict=True))["text"]
    yield from (pair for pair in ([one + other for one, other in pairwise(text)] or [text]) if pair.strip())


def _finest(name: str, found: Sequence[Finding]) -> tuple[Finding, ...]:
    """The finest of each kind, told of an item."""
    finest: dict[str, Finding] = {}
    for one in found:
        before = finest.get(one.kind)
        if before is None or (one.measured_mm or 0.0) < (before.measured_mm or 0.0):
            finest[one.kind] = one
    return tuple(replace(one, message=f"{name}: {one.message}", place=None) for one in finest.values())


def _of_reading(place: Place) -> Iterator[Finding]:
    subject = place.item.subject
    if isinstance(subject, ShapeSubject) and subject.cap_height_mm is not None:
        yield from of_reading(place.item.name, subject.cap_height_mm * place.enlarge)


def _once(found: Sequence[Finding]) -> tuple[Finding, ...]:
    """The same thing said of two items is said once."""
    return tuple(dict.fromkeys(found))
