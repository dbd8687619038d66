"""The lines that are stencilled on a car, as text with full-size heights; where they stand is not said here.

    MARK                     designation
    number                   dimensions
    CAPY                     cubic capacity
    LD LMT    *LD LMT where the owner set it lower
    LT WT     NEW 4-57, or the station and date of the last weighing

The order of the weight lines is that of the American Railway Association's rule of 1926 (steam-era freight car
mailing list, message 148461); abbreviations are those of the trade. Figures stand without a comma or a gap, as on a
tank car of 263,000 lb that a public course on inspecting them reads out (aidtrain.com); for earlier years common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heraldry.diagrams.freight.car import FreightCar
from heraldry.diagrams.freight.service_marks import stencil_panels
from heraldry.diagrams.freight.weights import weights_of
from heraldry.diagrams.freight.years import (
    BUILT_IN,
    DESIGNATION_IN,
    DIMENSION_IN,
    END_IN,
    MARK_IN,
    NUMBER_IN,
    SERVICE_IN,
    Role,
    is_carried,
    weights_in,
)

STAR = "*"
"""Immediately left of LD LMT (mailing list, message 56171)."""


@dataclass(frozen=True, slots=True)
class DataLine:
    """One line to letter: its text, the full-size height of its capitals in inches, and what it is."""

    text: str
    height_in: float
    role: Role


def data_block(
    car: FreightCar, year: int, mark_in: float = MARK_IN, number_in: float = NUMBER_IN
) -> tuple[DataLine, ...]:
    """All lines on one side of a car, as the year has them; ``mark_in`` and ``number_in`` are full-size inches.

    Records of shop work that stand in black panels are not among them. Raises DataError for a year before the
    car, or weights that cannot be worked out.
    """
    lines = [
        DataLine(car.mark.painted, mark_in, "mark"),
        DataLine(car.number, number_in, "number"),
        *_weight_lines(car, year),
        *_date_lines(car, year),
        *(DataLine(str(dimension), DIMENSION_IN, "dimension") for dimension in car.dimensions),
        *_other_lines(car, year),
    ]
    return tuple(line for line in lines if is_carried(line.role, year))


def end_block(car: FreightCar) -> tuple[DataLine, ...]:
    """Mark and number as they stand on the car's ends."""
    return DataLine(car.mark.painted, END_IN, "mark"), DataLine(car.number, END_IN, "number")


def _weight_lines(car: FreightCar, year: int) -> Iterator[DataLine]:
    weights, height = weights_of(car, year), weights_in(year)
    if weights.capacity_lb is not None:
        yield DataLine(f"CAPY {weights.capacity_lb}", height, "capacity")
    if car.designation:
        yield DataLine(car.designation, DESIGNATION_IN, "designation")
    if weights.load_limit_lb is not None:
        star = STAR if weights.weighing.starred else ""
        yield DataLine(f"{star}LD LMT {weights.load_limit_lb}", height, "load limit")
    yield DataLine(f"LT WT {weights.light_weight_lb} {weights.weighing.stencilled}", height, "light weight")


def _date_lines(car: FreightCar, year: int) -> Iterator[DataLine]:
    yield DataLine(f"BLT {car.built}", BUILT_IN, "built")
    if car.rebuilt and car.rebuilt.year <= year:
        yield DataLine(f"RBLT {car.rebuilt}", BUILT_IN, "rebuilt")


def _other_lines(car: FreightCar, year: int) -> Iterator[DataLine]:
    if car.cubic_feet is not None:
        yield DataLine(f"CU FT {car.cubic_feet}", DIMENSION_IN, "cubic capacity")
    in_panels = {record for panel in stencil_panels(car, year) for record in panel.records}
    for record in car.records_in(year):
        if record not in in_panels:
            yield DataLine(str(record), SERVICE_IN, "service")
