"""A car as its owner knows it: what is latest in a year, and what no car could carry."""

from fractions import Fraction

import pytest

from heraldry.diagrams.freight import Dimension, ServiceRecord, StencilDate, Weighing
from heraldry.errors import DataError, HeraldryError, NumberError

APRIL_1957 = StencilDate(1957, 4)


def weighed(year: int, month: int, pounds: int = 45_000, **more) -> Weighing:
    return Weighing(date=StencilDate(year, month), light_weight_lb=pounds, **more)


def test_the_latest_weighing_of_a_year_whatever_their_order(car):
    history = (weighed(1960, 2, 45_400, station="UB"), weighed(1957, 4), weighed(1960, 11, 45_300, station="MG"))
    seen = car(weighings=history)
    assert seen.weighing_in(1959) is history[1]
    assert seen.weighing_in(1960) is history[2]
    assert seen.weighing_in(1985) is history[2]


def test_the_latest_record_of_each_work(car):
    records = (
        ServiceRecord("RPKD", "MG", StencilDate(1961, 5)),
        ServiceRecord("RPKD", "UB", StencilDate(1958, 5)),
        ServiceRecord("COTS", "UB", StencilDate(1959, 1)),
    )
    assert car(records=records).records_in(1957) == ()
    assert car(records=records).records_in(1959) == (records[1], records[2])
    assert [str(record) for record in car(records=records).records_in(1970)] == ["RPKD MG 5-61", "COTS UB 1-59"]


def test_paint_and_rebuilding_count_once_they_are_done(car):
    seen = car(rebuilt=StencilDate(1970, 3), painted=StencilDate(1965, 8))
    assert seen.last_shopped(1969) == APRIL_1957
    assert seen.last_painted(1964) == APRIL_1957
    assert seen.last_painted(1965) == StencilDate(1965, 8)
    assert seen.last_painted(1970) == StencilDate(1970, 3) == seen.last_shopped(1970)


@pytest.mark.parametrize("year", [1800, 1956])
def test_no_car_before_it_was_built(car, year):
    with pytest.raises(DataError, match=f"built 4-57 and first weighed 4-57 cannot be shown in {year}"):
        car().weighing_in(year)


@pytest.mark.parametrize(
    ("inches", "text"), [(606, "50-6"), (Fraction(221, 2), "9-2 1/2"), (Fraction(1, 16), "0-0 1/16"), (120, "10-0")]
)
def test_feet_and_inches(inches, text):
    assert str(Dimension("IL", Fraction(inches))) == f"IL {text}"


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"weighings": ()}, "found no weighing"),
        ({"weighings": (weighed(1957, 3),)}, "built 4-57 cannot have been weighed before, found 3-57"),
        ({"painted": StencilDate(1950, 1)}, "cannot have been painted before, found 1-50"),
        ({"rebuilt": StencilDate(1956, 12)}, "cannot have been rebuilt before"),
        ({"records": (ServiceRecord("COTS", "UB", StencilDate(1957, 3)),)}, "cannot have been stencilled COTS before"),
        ({"axle": "H"}, "unknown axle journal, found 'H', known: A (3 3/4 x 7), B"),
        ({"number": "1234567"}, "a road number of 7 digits"),
        ({"number": "301A"}, "no road number"),
        ({"capacity_lb": 0}, "a capacity of 0 lb is on no car"),
        ({"capacity_lb": 2_000_000}, "a capacity of 2,000,000 lb"),
        ({"gross_rail_load_lb": -1}, "a gross rail load of -1 lb"),
        ({"cubic_feet": 60_000}, "a cubic capacity of 60,000 cu ft"),
        ({"designation": "xm"}, "found 'xm'"),
    ],
)
def test_what_no_car_could_carry(car, changed, said):
    with pytest.raises(HeraldryError) as caught:
        car(**changed)
    assert isinstance(caught.value, DataError | NumberError)
    assert said in str(caught.value)


@pytest.mark.parametrize(
    ("build", "said"),
    [
        (lambda: StencilDate(1957, 13), "a month is 1 to 12, found 13"),
        (lambda: StencilDate(57, 4), "a year is 1850 to 2099, found 57"),
        (lambda: weighed(1957, 4, 0), "a light weight of 0 lb"),
        (lambda: weighed(1957, 4, starred=True), "found a star alone"),
        (lambda: weighed(1957, 4, load_limit_lb=-5), "a load limit of -5 lb"),
        (lambda: weighed(1957, 4, station="ub"), "found 'ub'"),
        (lambda: weighed(1957, 4, station="UMBAGOG-YARD"), "at most 8 capital letters"),
        (lambda: ServiceRecord("", "UB", APRIL_1957), "found ''"),
        (lambda: Dimension("Length", Fraction(9)), "found 'Length', write IL"),
        (lambda: Dimension("IL", Fraction(1, 3)), "found 1/3 in"),
        (lambda: Dimension("IL", Fraction(0)), "found 0 in"),
        (lambda: Dimension("IL", Fraction(12_000)), "found 12000 in"),
    ],
)
def test_parts_that_cannot_be(build, said):
    with pytest.raises(DataError) as caught:
        build()
    assert said in str(caught.value)
