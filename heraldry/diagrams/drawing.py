"""Draws a class, car by car and side by side, one artwork at a time: nothing that is drawn is kept.

What all cars share is drawn, united and looked over once for each side; of a further car only what it has for itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from heraldry.artwork import Artwork, Finding
from heraldry.describe.text_references import references
from heraldry.diagrams.cars import CAR, DATA, Car
from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.clearances import clearances
from heraldry.diagrams.grounds import visible_paints
from heraldry.diagrams.joints import jointed
from heraldry.diagrams.layout import Layout, Place
from heraldry.diagrams.loose_figures import loose_figures, numbers_alike
from heraldry.diagrams.pieces import Coat, Piece, coats, piece, plates, shared_pieces
from heraldry.diagrams.print_findings import PrintReader
from heraldry.diagrams.stencil_heights import height_findings
from heraldry.diagrams.subjects import ShapeSubject
from heraldry.errors import DescriptionError, Fault, HeraldryError
from heraldry.geometry.outline import Bounds
from heraldry.resolve.limits import USUAL_PRINTER, PrinterLimits


@dataclass(frozen=True, eq=False)
class SharedSide:
    """What all cars have alike on one side, and where the items stand that each car has for itself."""

    layout: Layout
    pieces: tuple[Piece, ...]
    coats: dict[str, Coat]
    findings: tuple[Finding, ...]
    own_places: tuple[Place, ...]
    reader: PrintReader


def artworks(
    cars: ClassOfCars, numbers: Sequence[str] = (), printer: PrinterLimits = USUAL_PRINTER
) -> Iterator[Artwork]:
    """Every side of every car, or of those whose numbers are given; then what is spare.

    Raises HeraldryError for a number that no car has; and, once the sound cars are drawn, DescriptionError with the
    faults of the others.
    """
    faults = list(() if numbers else cars.roster.faults)
    wanted = cars.roster.named(tuple(numbers)) if numbers else cars.roster.cars
    sides = shared_sides(cars, printer)
    for drawn, wrong in (drawn_car(cars, sides, car) for car in wanted):
        yield from drawn
        faults += wrong
    if not numbers:
        yield from extras(cars, sides)
    if faults:
        raise DescriptionError(faults)


def shared_sides(cars: ClassOfCars, printer: PrinterLimits = USUAL_PRINTER) -> list[SharedSide]:
    """What all cars have alike, for each side on which there is anything."""
    return [_shared(cars, layout, printer) for layout in cars.layouts if layout.places]


def drawn_car(cars: ClassOfCars, sides: Sequence[SharedSide], car: Car) -> tuple[list[Artwork], tuple[Fault, ...]]:
    """The sides of one car; or none, and why it cannot be drawn."""
    try:
        drawn = [_artwork(cars, side, car) for side in sides]
        return [artwork for artwork in drawn if artwork.plates], ()
    except DescriptionError as error:
        return [], error.faults


def extras(cars: ClassOfCars, sides: Sequence[SharedSide]) -> Iterator[Artwork]:
    """What is not one car's: more sets of what all cars share, with loose figures, and long stripes in pieces."""
    numbers = numbers_alike(place for side in sides for place in side.own_places)
    for i in range(1, cars.roster.spares + 1):
        yield from (_spare(cars, side, i) for side in sides if side.coats)
        for place in numbers:
            paint_hex = sides[0].layout.side.paint_hex
            yield loose_figures(place, f"{cars.name} spare {i}", cars.scale_name, paint_hex)
    for side in sides:
        for long in (one for one in side.pieces if one.place.item.longest_mm is not None):
            name = f"{cars.name} {side.layout.side.name}"
            yield from jointed(long, name, cars.scale_name, side.layout.side.paint_hex)


def own_pieces(cars: ClassOfCars, side: SharedSide, car: Car) -> tuple[Piece, ...]:
    """The pieces that one car has for itself; raises DescriptionError with all that cannot be drawn on it."""
    made: list[Piece] = []
    faults: list[Fault] = []
    for place in side.own_places:
        try:
            made.append(piece(place, car, cars.studio))
        except HeraldryError as error:
            faults.append(_fault(cars, car, place, error))
    if faults:
        raise DescriptionError(faults)
    return tuple(made)


def _shared(cars: ClassOfCars, layout: Layout, printer: PrinterLimits) -> SharedSide:
    pieces = shared_pieces(layout, cars.roster.cars[0], cars.studio)
    covered = coats(piece for piece in pieces if piece.place.item.longest_mm is None)
    inks = tuple(ink.name for ink in cars.inks)
    reader = PrintReader(cars.film, printer, inks, visible_paints(layout.side), cars.roster.cars)
    is_long = layout.side.width_mm == max(one.side.width_mm for one in cars.layouts)
    heights = height_findings(layout, cars.scale, cars.roster.cars[0].year) if is_long else ()
    found = (*heights, *clearances(layout.side, pieces, ()), *reader.of_shared(pieces, covered))
    own = tuple(place for place in layout.places if cars.studio.differs(place.item))
    return SharedSide(layout, pieces, covered, found, own, reader)


def _artwork(cars: ClassOfCars, side: SharedSide, car: Car) -> Artwork:
    own = own_pieces(cars, side, car)
    found = (
        *(car.findings if side.layout is cars.layouts[0] else ()),
        *side.findings,
        *clearances(side.layout.side, own, side.pieces),
        *side.reader.of_own(own, side.pieces),
    )
    return _made(cars, side, car.number or "", own, found)


def _spare(cars: ClassOfCars, side: SharedSide, count: int) -> Artwork:
    return _made(cars, side, f"spare {count}", (), side.findings)


def _made(
    cars: ClassOfCars, side: SharedSide, which: str, own: tuple[Piece, ...], found: tuple[Finding, ...]
) -> Artwork:
    return Artwork(
        name=" ".join(filter(None, (cars.name, which, side.layout.side.name))),
        page=_page(side, own),
        plates=plates(cars.inks, side.coats, coats(own)),
        scale_name=cars.scale_name,
        paint_hex=side.layout.side.paint_hex,
        findings=found,
    )


def _page(side: SharedSide, own: tuple[Piece, ...]) -> Bounds:
    """The side itself, so that places can be measured on the page; larger only where ink reaches over its edge."""
    return Bounds.round(
        [
            side.layout.side.face,
            *(box for coat in side.coats.values() for box in coat.boxes),
            *(piece.box for piece in own),
        ]
    )


def _fault(cars: ClassOfCars, car: Car, place: Place, error: HeraldryError) -> Fault:
    """What cannot be drawn: at the key of the item that it is about, which is told once for all cars.

    Else it is one car's, at the column of the table that it comes from, or in the series.
    """
    message, table = f"item.{place.item.name}: {error}", ("item", place.item.name)
    path = cars.file.description.path_told(table, str(error))
    if path != table:
        return cars.file.description.fault(path, message)
    columns = _columns_of(place) if car.row is not None else ()
    return cars.roster.fault(car, cars.file, f"column {columns[0]}: {message}" if columns else message)


def _columns_of(place: Place) -> tuple[str, ...]:
    subject = place.item.subject
    texts = subject.templates.values() if isinstance(subject, ShapeSubject) else ()
    names = [name for text in texts for name in references(text)]
    return tuple(name.partition(".")[2] for name in names if name.startswith((CAR, DATA)))
