"""North American marks, numbers, letter heights and dated stencils against what is published of them.

Sources: a trade magazine's primer on freight car markings (trains.com, 2006) for marks and numbers; U and Z as
last letters from memory; 49 CFR 215.301 (44 FR 77340, 31 December 1979), read in a public copy; the steam-era
freight car mailing list (messages 90553, 148461, 176762, 17167076) for the years of rules; public forum topics
310082 (panels) and 203097 (wheel dot) on freight cars. Marks are invented.
"""

from __future__ import annotations

import pytest

from heraldry.diagrams.freight import (
    DataLine,
    FreightCar,
    ReportingMark,
    StencilDate,
    Weighing,
    data_block,
    end_block,
    line_findings,
    stencil_panels,
    wheel_dot,
)
from heraldry.diagrams.numbers import road_number
from heraldry.errors import DataError, NumberError


def car(year: int = 1957, station: str = "", axle: str = "D") -> FreightCar:
    built = StencilDate(1957, 4)
    weighing = Weighing(date=StencilDate(year, 4), light_weight_lb=45_000, station=station)
    return FreightCar(mark=ReportingMark("UMGR"), number="301", built=built, axle=axle, weighings=(weighing,))


def heights(lines: tuple[DataLine, ...]) -> dict[str, float]:
    return {line.role: line.height_in for line in lines}


@pytest.mark.parametrize("letters", range(1, 7))
def test_marks_have_two_to_four_letters(letters):
    """The primer of 2006."""
    mark = "UMGRUM"[:letters]
    if 2 <= letters <= 4:
        assert ReportingMark(mark).letters == mark
    else:
        with pytest.raises(DataError):
            ReportingMark(mark)


@pytest.mark.parametrize("digits", range(1, 10))
def test_numbers_have_up_to_six_digits(digits):
    """The primer of 2006."""
    if digits <= 6:
        assert road_number("1" * digits) == "1" * digits
    else:
        with pytest.raises(NumberError):
            road_number("1" * digits)


@pytest.mark.parametrize(
    ("mark", "owner"),
    [
        ("UMGX", "private owner"),  # the primer of 2006
        ("UMGR", "railroad"),  # the primer: common carriers' marks do not end in X
        ("UMGU", "container owner"),  # from memory
        ("UMGZ", "trailer owner"),  # from memory
    ],
)
def test_last_letters(mark, owner):
    assert ReportingMark(mark).owner == owner


def test_heights_of_the_letter_ballot():
    """In force from 1 March 1960: sides 9 in mark and 7 in number, ends 4 in (message 90553)."""
    side = heights(data_block(car(), 1960))
    assert (side["mark"], side["number"]) == (9, 7)
    assert [line.height_in for line in end_block(car())] == [4, 4]


def test_least_heights_of_the_federal_rule():
    """49 CFR 215.301: mark and number not under 7 in, built date not under 1 in."""
    exact = (DataLine("UMGR", 7, "mark"), DataLine("301", 7, "number"), DataLine("BLT 4-57", 1, "built"))
    under = tuple(DataLine(line.text, line.height_in - 0.1, line.role) for line in exact)
    assert line_findings(exact, 1980) == ()
    assert len(line_findings(under, 1980)) == 3


def test_order_of_the_block():
    """Capacity, load limit, light weight: the rule of 1926, for all cars from 1933 (message 148461)."""
    order = [line.role for line in data_block(car(), 1957)]
    assert [role for role in order if role in ("capacity", "load limit", "light weight")] == order[2:5]
    assert order[2:5] == ["capacity", "load limit", "light weight"]


@pytest.mark.parametrize(
    ("year", "station", "ending"),
    [
        (1957, "", "NEW 4-57"),  # public forum on freight cars, topic 202726
        (1983, "UB-AB", "UB-AB 4-83"),  # a station's symbol with a hyphen in it, as in the same topic
    ],
)
def test_new_gives_way_to_a_station(year, station, ending):
    text = next(line.text for line in data_block(car(year, station), year) if line.role == "light weight")
    assert text == f"LT WT 45000 {ending}"


@pytest.mark.parametrize(
    ("year", "panels"),
    [(1971, 0), (1973, 0), (1974, 2), (1981, 2), (1982, 3), (2016, 3), (2017, 0)],
)
def test_panels_of_a_car_of_1957(year, panels):
    """One in 1972 on new and rebuilt cars, two in 1974 on all, three in 1982, none after 2016 (topic 310082)."""
    assert len(stencil_panels(car(), year)) == panels


@pytest.mark.parametrize(("year", "axle", "has_one"), [(1977, "D", False), (1978, "D", True), (1978, "F", False)])
def test_wheel_dot(year, axle, has_one):
    """6 in in a 12 in square, from 31 March 1978, on cars of 70 tons or less (topic 203097)."""
    dot = wheel_dot(car(axle=axle), year)
    assert (dot is not None) is has_one
    assert dot is None or (dot.dot_in, dot.square_in) == (6, 12)
