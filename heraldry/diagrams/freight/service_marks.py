"""Marks that date a car to a few years: black panels of shop stencils, and the wheel-inspection dot.

Panels stood low at the right end of each side from 1972 to 2016. The first held air brake work, the second
lubrication (public forum on one road's freight, quoting trade magazines of 1978 and 1982); that other work
goes in the third is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from heraldry.diagrams.freight.car import DotColour, FreightCar, ServiceRecord
from heraldry.diagrams.freight.journals import axle
from heraldry.diagrams.freight.years import LAST_PAINTED_WITH_DOT, PANELS, WHEEL_DOT, Panels
from heraldry.errors import DataError

PANEL_OF_WORK: Mapping[str, int] = MappingProxyType({"COTS": 0, "IDT": 0, "LUB": 1, "RPKD": 1})
"""Air brakes cleaned, oiled, tested, stencilled; in-date test; lubricated; repacked. All else goes in the last."""
DOT_IN = 6
SQUARE_IN = 12
"""A 6 in dot in a 12 in black square (public forum on freight cars, topic 203097)."""
HEAVIEST_WITH_DOT_LB = 140_000
"""Cars of 70 tons or less, on 33 in wheels (the same topic)."""


@dataclass(frozen=True, slots=True)
class StencilPanel:
    """One black panel with what stands in it; none is a panel still blank."""

    records: tuple[ServiceRecord, ...]


@dataclass(frozen=True, slots=True)
class WheelDot:
    """The wheel-inspection dot; yellow: the wheels are sound, white: suspect ones. Full-size inches."""

    colour: DotColour
    dot_in: int = DOT_IN
    square_in: int = SQUARE_IN


def stencil_panels(car: FreightCar, year: int) -> tuple[StencilPanel, ...]:
    """The panels that a car carries in a year, left to right; none before 1972 and after 2016."""
    panels = next((panels for panels in PANELS if year in panels.years), None)
    if panels is None or (panels.new_cars_only and car.last_shopped(year).year not in panels.years):
        return ()
    records = car.records_in(year)
    return tuple(
        StencilPanel(tuple(record for record in records if _panel_of(record, panels) == i)) for i in range(panels.count)
    )


def _panel_of(record: ServiceRecord, panels: Panels) -> int | None:
    """Which panel a record stands in; with one panel, which is for air brakes, other work stands outside it."""
    place = PANEL_OF_WORK.get(record.work, panels.count - 1 if panels.count > 1 else 1)
    return place if place < panels.count else None


def wheel_dot(car: FreightCar, year: int) -> WheelDot | None:
    """The dot that a car carries in a year, if it carries one; raises DataError for a year before the car."""
    if year < car.built.year:
        raise DataError(f"a car built {car.built} cannot be shown in {year}")
    light_enough = axle(car.axle).nominal_capacity_lb <= HEAVIEST_WITH_DOT_LB
    if year not in WHEEL_DOT or not light_enough or car.last_painted(year).year > LAST_PAINTED_WITH_DOT:
        return None
    return WheelDot(car.dot)
