"""A class drawn by several workers: any executor of ``concurrent.futures``, each worker drawing some of the cars.

Workers read the description for themselves, for it is small and what is made of it is not; the artworks come back in
the order of the cars, the same as one worker makes them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass
from pathlib import Path

from heraldry.artwork import Artwork
from heraldry.describe.description import load
from heraldry.diagrams.class_of_cars import ClassOfCars, class_of_cars
from heraldry.diagrams.drawing import drawn_car, extras, shared_sides
from heraldry.errors import DescriptionError, Fault
from heraldry.resolve.limits import PrinterLimits
from heraldry.units import Scale


@dataclass(frozen=True)
class Crew:
    """An executor, and into how many parts a class is divided for it."""

    executor: Executor
    workers: int


@dataclass(frozen=True)
class Part:
    """What one worker is told: a file, and the numbers of its cars."""

    path: Path
    asked: Scale | None
    printer: PrinterLimits
    numbers: tuple[str, ...]


def artworks_by(crew: Crew, cars: ClassOfCars, numbers: Sequence[str], printer: PrinterLimits) -> Iterator[Artwork]:
    """The artworks of a class, as ``drawing.artworks`` makes them; raises what it raises."""
    wanted = cars.roster.named(tuple(numbers)) if numbers else cars.roster.cars
    faults = list(() if numbers else cars.roster.faults)
    named = tuple(car.number for car in wanted if car.number is not None)
    parts = [
        Part(cars.file.description.source.path, cars.file.asked, printer, some)
        for some in _divided(named, crew.workers)
    ]
    for drawn, wrong in crew.executor.map(draw_part, parts):
        yield from drawn
        faults += wrong
    if not numbers:
        sides = shared_sides(cars, printer)
        for car in (car for car in wanted if car.number is None):
            drawn, wrong = drawn_car(cars, sides, car)
            yield from drawn
            faults += wrong
        yield from extras(cars, sides)
    if faults:
        raise DescriptionError(faults)


def draw_part(part: Part) -> tuple[list[Artwork], tuple[Fault, ...]]:
    """What one worker does: the cars of its part, and what is wrong with those that it cannot draw."""
    cars = class_of_cars(load(part.path), part.asked)
    sides = shared_sides(cars, part.printer)
    made = [drawn_car(cars, sides, car) for car in cars.roster.named(part.numbers)]
    return [artwork for drawn, _ in made for artwork in drawn], tuple(fault for _, wrong in made for fault in wrong)


def _divided(numbers: tuple[str, ...], parts: int) -> Iterator[tuple[str, ...]]:
    """Numbers in as many runs of about one length, none of them empty."""
    ends = [round(len(numbers) * i / parts) for i in range(parts + 1)]
    return (numbers[first:last] for first, last in zip(ends[:-1], ends[1:], strict=True) if first < last)
