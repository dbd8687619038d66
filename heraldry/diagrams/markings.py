"""Markings of fixed form and colours: panels of shop stencils, the wheel-inspection dot, the colour-bar plate.

They are as large as on the real thing, in inks that bear the names of their colours unless the item names others.
Where the year of a car has no such marking, there is nothing to draw, and asking for it is a fault.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from heraldry.artwork import Ink
from heraldry.diagrams.cars import Car
from heraldry.diagrams.colour_bars.code import bars, is_worn_in
from heraldry.diagrams.colour_bars.plate import draw_plate
from heraldry.diagrams.freight import FreightCar, ServiceRecord, stencil_panels, wheel_dot
from heraldry.diagrams.freight.years import SERVICE_IN
from heraldry.diagrams.sketch import Hold, Layer, Sketch, held_by_ink
from heraldry.errors import DataError
from heraldry.geometry.boolean import subtract
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting import straight
from heraldry.shapes.rounds import circle_path
from heraldry.units import MM_PER_INCH, Scale

Marking = Literal["stencil panels", "wheel dot", "colour bars"]
Parts = Mapping[str, Outline]
"""What each colour covers."""

# The forms of stencil panels differed between roads: but for the black ground and white letters, common practice, no
# source. That the panels kept the letters of other shop stencils is ours.
PANEL_WIDTH_IN, PANEL_HEIGHT_IN = 14.0, 18.0
PANEL_GAP_IN = 1.0
BORDER_IN, BORDER_INSET_IN = 0.5, 0.5
STENCIL_PITCH_IN = 2.4
"""From one base line to the next."""


@dataclass(frozen=True)
class MarkingKind:
    """How a marking is drawn, in full-size inches enlarged to the scale, and the inks it needs, first one first."""

    draw: Callable[[MarkingSubject, Car], Parts]
    inks: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class MarkingSubject:
    """A marking on the cars of a class."""

    marking: Marking
    ink_by_colour: Mapping[str, Ink]
    scale: Scale
    owner: str | None = None
    equipment: int = 0
    """What the colour-bar plate says besides the number: whose car it is, and of which kind."""

    @property
    def depends_on_car(self) -> bool:
        """Plates differ by number; what shops stencil may differ by car."""
        return True

    @property
    def inks(self) -> tuple[Ink, ...]:
        """The inks of its colours."""
        return tuple(self.ink_by_colour.values())

    def key(self, car: Car) -> Hashable:
        """Cars of one history look alike, but for their numbers on the plate."""
        return (car.number, car.freight, car.year) if self.marking == "colour bars" else (car.freight, car.year)

    def sketch(self, car: Car, hold: Hold) -> Sketch:
        """Drawn at the scale; raises DataError where a car of its year has no such marking."""
        parts = MARKINGS[self.marking].draw(self, car)
        layers = [Layer(ink, parts[name]) for name, ink in self.ink_by_colour.items() if not parts[name].is_empty]
        return held_by_ink(layers, hold)

    def mm(self, inches: float) -> float:
        """Full-size inches at model size."""
        return self.scale.model_mm(inches * float(MM_PER_INCH))

    def box(self, left: float, bottom: float, width: float, height: float) -> Outline:
        """A rectangle given in full-size inches."""
        edges = (self.mm(edge) for edge in (left, bottom, left + width, bottom + height))
        return Bounds(*edges).outline


def _colour_bars(subject: MarkingSubject, car: Car) -> Parts:
    if car.number is None or subject.owner is None:
        missing = "a number" if car.number is None else "its owner's code, [data] owner = '942'"
        raise DataError(f"a colour-bar plate says whose a car is and which: it needs {missing}")
    if car.year is not None and not is_worn_in(
        car.year, car.freight.last_painted(car.year).year if car.freight else None
    ):
        raise DataError(f"no car painted like this wears a colour-bar plate in {car.year}, they are of 1967 to 1977")
    art = draw_plate(bars(subject.equipment, subject.owner, car.number), subject.scale)
    return {"black": art.black, "blue": art.blue, "red": art.red, "white": art.white}


def _wheel_dot(subject: MarkingSubject, car: Car) -> Parts:
    dot = wheel_dot(*_freight(car))
    if dot is None:
        raise DataError(f"a car like this has no wheel dot in {car.year}")
    square = subject.box(-dot.square_in / 2, -dot.square_in / 2, dot.square_in, dot.square_in)
    circle = Outline.of([circle_path(ORIGIN, subject.mm(dot.dot_in / 2))])
    return {
        "black": subtract(square, circle),
        **{name: Outline.gather(()) for name in ("yellow", "white")},
        dot.colour: circle,
    }


def _stencil_panels(subject: MarkingSubject, car: Car) -> Parts:
    panels = stencil_panels(*_freight(car))
    if not panels:
        raise DataError(f"a car like this has no stencil panels in {car.year}")
    grounds, whites = [], []
    for i, panel in enumerate(panels):
        left = i * (PANEL_WIDTH_IN + PANEL_GAP_IN)
        grounds.append(subject.box(left, 0.0, PANEL_WIDTH_IN, PANEL_HEIGHT_IN))
        whites += [_border(subject, left), *_lines(subject, left + PANEL_WIDTH_IN / 2, panel.records)]
    white = Outline.gather(whites)
    return {"black": subtract(Outline.gather(grounds), white), "white": white}


def _border(subject: MarkingSubject, left: float) -> Outline:
    outer, inner = (
        subject.box(left + inset, inset, PANEL_WIDTH_IN - 2 * inset, PANEL_HEIGHT_IN - 2 * inset)
        for inset in (BORDER_INSET_IN, BORDER_INSET_IN + BORDER_IN)
    )
    return subtract(outer, inner)


def _lines(subject: MarkingSubject, middle: float, records: tuple[ServiceRecord, ...]) -> Iterator[Outline]:
    """Work, station and date under one another, from the top of the panel."""
    foot = PANEL_HEIGHT_IN - BORDER_INSET_IN - BORDER_IN - STENCIL_PITCH_IN
    for record in records:
        for text in (record.work, record.station, str(record.date)):
            line = ours("gothic").set_line(text, subject.mm(SERVICE_IN))
            yield straight(line, Point(subject.mm(middle), subject.mm(foot)), "middle").outline
            foot -= STENCIL_PITCH_IN


def _freight(car: Car) -> tuple[FreightCar, int]:
    if car.freight is None or car.year is None:
        raise DataError(
            "this marking follows from the car's data, write [data] with year, built, journal, light_weight"
        )
    return car.freight, car.year


MARKINGS: Mapping[str, MarkingKind] = {
    "stencil panels": MarkingKind(_stencil_panels, ("black", "white")),
    "wheel dot": MarkingKind(_wheel_dot, ("black", "yellow", "white")),
    "colour bars": MarkingKind(_colour_bars, ("black", "blue", "red", "white")),
}
"""Every marking; a new one is a row of it."""
