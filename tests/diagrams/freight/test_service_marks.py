"""Marks that date a car: panels by year, and the wheel-inspection dot."""

import pytest

from heraldry.diagrams.freight import (
    ServiceRecord,
    StencilDate,
    StencilPanel,
    Weighing,
    WheelDot,
    stencil_panels,
    wheel_dot,
)
from heraldry.errors import DataError

RECORDS = tuple(ServiceRecord(work, "UB", StencilDate(1972, 5)) for work in ("COTS", "RPKD", "INSP"))
AIR, GREASE, OTHER = RECORDS


def of(*records: ServiceRecord) -> StencilPanel:
    return StencilPanel(records)


def test_panels_through_the_years_of_a_rebuilt_car(car):
    seen = car(records=RECORDS, rebuilt=StencilDate(1972, 2))
    assert stencil_panels(seen, 1971) == ()
    assert stencil_panels(seen, 1972) == (of(AIR),)
    assert stencil_panels(seen, 1974) == (of(AIR), of(GREASE, OTHER))
    assert stencil_panels(seen, 1981) == (of(AIR), of(GREASE, OTHER))
    assert stencil_panels(seen, 1982) == (of(AIR), of(GREASE), of(OTHER))
    assert stencil_panels(seen, 2016) == (of(AIR), of(GREASE), of(OTHER))
    assert stencil_panels(seen, 2017) == ()


def test_the_first_panel_was_for_new_cars_only(car):
    assert stencil_panels(car(records=RECORDS), 1973) == ()
    assert stencil_panels(car(records=RECORDS), 1974) != ()


def test_panels_without_records_are_blank(car):
    assert stencil_panels(car(), 1980) == (of(), of())


@pytest.mark.parametrize(
    ("year", "painted", "axle", "dot"),
    [
        (1977, None, "D", None),
        (1978, None, "D", WheelDot("yellow")),
        (1990, None, "E", WheelDot("yellow")),
        (1990, StencilDate(1978, 12), "D", WheelDot("yellow")),
        (1990, StencilDate(1979, 1), "D", None),
        (1978, StencilDate(1985, 1), "D", WheelDot("yellow")),
        (1980, None, "F", None),
    ],
)
def test_who_wears_a_wheel_dot(car, year, painted, axle, dot):
    assert wheel_dot(car(axle=axle, painted=painted), year) == dot


def test_the_dot_at_full_size(car):
    dot = wheel_dot(car(dot="white"), 1978)
    assert (dot.colour, dot.dot_in, dot.square_in) == ("white", 6, 12)


def test_a_car_built_in_1979_has_no_dot(car):
    built = StencilDate(1979, 1)
    new = car(built=built, weighings=(Weighing(date=built, light_weight_lb=60_000),))
    assert wheel_dot(new, 1980) is None
    with pytest.raises(DataError, match="a car built 1-79 cannot be shown in 1978"):
        wheel_dot(new, 1978)
