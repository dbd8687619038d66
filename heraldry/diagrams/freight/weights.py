"""What the weight lines of a car say in a year.

load limit = gross rail load − light weight, the light weight rounded to 100 lb (a trade magazine's primer on
freight car markings, 2006: load limit and light weight to 100 lb, capacity to 1,000 lb). A load limit that the
owner stencilled goes before the sum.
"""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.diagrams.freight.car import FreightCar, Weighing
from heraldry.diagrams.freight.journals import FIRST_TABLE_YEAR, axle
from heraldry.diagrams.freight.years import CAPACITY_WANTED, is_carried
from heraldry.errors import DataError

WEIGHT_STEP_LB = 100
CAPACITY_STEP_LB = 1_000


@dataclass(frozen=True, slots=True)
class StencilledWeights:
    """The figures as stencilled, in pounds; ``None`` where a car of the year carries no such line."""

    capacity_lb: int | None
    load_limit_lb: int | None
    light_weight_lb: int
    weighing: Weighing


def weights_of(car: FreightCar, year: int) -> StencilledWeights:
    """The weight lines of a car in a year.

    Raises DataError: a year before the car, axles whose gross rail load is not known in that year and not
    given, a car that weighs more than its axles carry.
    """
    weighing = car.weighing_in(year)
    light = to_hundred(weighing.light_weight_lb)
    limit = _load_limit(car, weighing, light) if is_carried("load limit", year) else None
    return StencilledWeights(_capacity(car, year, limit), limit, light, weighing)


def to_hundred(pounds: int) -> int:
    """Pounds to the nearest 100; halves go up.

    >>> to_hundred(45_049), to_hundred(45_050)
    (45000, 45100)
    """
    return (pounds + WEIGHT_STEP_LB // 2) // WEIGHT_STEP_LB * WEIGHT_STEP_LB


def allowed_loads(car: FreightCar, weighing: Weighing) -> tuple[int, ...]:
    """The gross rail loads of the car's axles when it was weighed, in pounds, the usual one first.

    A car weighed before there was a table got its load limit from the first one.
    """
    return axle(car.axle).loads_in(max(weighing.date.year, FIRST_TABLE_YEAR))


def gross_rail_load(car: FreightCar, weighing: Weighing) -> int:
    """The car's own gross rail load, else the usual one of its axles; raises DataError where there is neither."""
    if car.gross_rail_load_lb is not None:
        return car.gross_rail_load_lb
    allowed = allowed_loads(car, weighing)
    if not allowed:
        raise DataError(
            f"no gross rail load is known for {axle(car.axle).journal} in journals in {weighing.date.year}, "
            "give the car's gross_rail_load_lb"
        )
    return allowed[0]


def _load_limit(car: FreightCar, weighing: Weighing, light_lb: int) -> int:
    if weighing.load_limit_lb is not None:
        return weighing.load_limit_lb
    gross = gross_rail_load(car, weighing)
    if gross <= light_lb:
        raise DataError(
            f"a car of {light_lb:,} lb on axles for {gross:,} lb carries nothing, "
            "check the light weight and the size of the journals"
        )
    return gross - light_lb


def _capacity(car: FreightCar, year: int, limit_lb: int | None) -> int | None:
    """As given; else the axles' nominal one, or less where the load limit is less; none once not required."""
    if car.capacity_lb is not None:
        return car.capacity_lb
    if year not in CAPACITY_WANTED:
        return None
    nominal = axle(car.axle).nominal_capacity_lb
    if limit_lb is None or nominal <= limit_lb:
        return nominal
    return limit_lb // CAPACITY_STEP_LB * CAPACITY_STEP_LB
