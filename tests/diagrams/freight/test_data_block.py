"""The lines of a car, year by year, with their full-size heights."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.diagrams.freight import (
    DataLine,
    FreightCar,
    ReportingMark,
    ServiceRecord,
    StencilDate,
    Weighing,
    data_block,
    end_block,
    stencil_panels,
)
from heraldry.errors import DataError

BOUNDED = settings(derandomize=True, deadline=None, max_examples=150)


def weighed(year: int, month: int, pounds: int, **more) -> Weighing:
    return Weighing(date=StencilDate(year, month), light_weight_lb=pounds, **more)


def texts(lines) -> list[str]:
    return [line.text for line in lines]


def test_a_box_car_of_1957(car):
    assert data_block(car(), 1957) == (
        DataLine("UMGR", 9, "mark"),
        DataLine("0301", 7, "number"),
        DataLine("CAPY 100000", 3, "capacity"),
        DataLine("LD LMT 124000", 3, "load limit"),
        DataLine("LT WT 45000 NEW 4-57", 3, "light weight"),
        DataLine("BLT 4-57", 2, "built"),
        DataLine("IL 40-6", 2, "dimension"),
        DataLine("IW 9-2 1/2", 2, "dimension"),
        DataLine("CU FT 3898", 2, "cubic capacity"),
    )


def test_the_same_car_later_in_life(car):
    history = (weighed(1957, 4, 45_000), weighed(1964, 9, 45_449, station="UB-2"))
    lines = data_block(car(weighings=history, rebuilt=StencilDate(1964, 8)), 1965)
    assert texts(lines)[2:7] == ["CAPY 100000", "XM", "LD LMT 131600", "LT WT 45400 UB-2 9-64", "BLT 4-57"]
    assert texts(lines)[7] == "RBLT 8-64"
    assert next(line for line in lines if line.role == "designation").height_in == 3


def test_a_car_before_the_load_limit(car):
    old = car(built=StencilDate(1912, 6), weighings=(weighed(1912, 6, 38_440),), axle="C")
    assert data_block(old, 1915)[2:5] == (
        DataLine("CAPY 80000", 4, "capacity"),
        DataLine("LT WT 38400 NEW 6-12", 4, "light weight"),
        DataLine("BLT 6-12", 2, "built"),
    )
    assert "LD LMT 97600" in texts(data_block(old, 1930))
    assert "CU FT 3898" not in texts(data_block(old, 1915))
    assert "CU FT 3898" in texts(data_block(old, 1926))


def test_capacity_ends_in_1987_unless_given(car):
    assert "CAPY 100000" in texts(data_block(car(), 1987))
    assert "capacity" not in [line.role for line in data_block(car(), 1988)]
    assert "CAPY 110000" in texts(data_block(car(capacity_lb=110_000), 1995))


def test_capacity_gives_way_to_a_small_load_limit(car):
    heavy = car(weighings=(weighed(1957, 4, 75_250),))
    assert texts(data_block(heavy, 1957))[2:4] == ["CAPY 93000", "LD LMT 93700"]


def test_a_star_stands_immediately_left_of_its_load_limit(car):
    limited = car(weighings=(weighed(1957, 4, 45_000, load_limit_lb=110_000, starred=True),))
    assert "*LD LMT 110000" in texts(data_block(limited, 1957))


def test_a_286000_lb_car_says_so(car):
    heavy = {"built": StencilDate(1996, 1), "axle": "F", "weighings": (weighed(1996, 1, 52_000),)}
    assert "LD LMT 211000" in texts(data_block(car(**heavy), 1996))
    assert "LD LMT 234000" in texts(data_block(car(**heavy, gross_rail_load_lb=286_000), 1996))


@pytest.mark.parametrize(
    ("changed", "year", "said"),
    [
        ({"axle": "B"}, 1970, "no gross rail load is known for 4 1/4 x 8 in journals in 1970, give"),
        ({}, 1956, "cannot be shown in 1956"),
        (
            {"axle": "A", "gross_rail_load_lb": 45_000},
            1957,
            "a car of 45,000 lb on axles for 45,000 lb carries nothing",
        ),
    ],
)
def test_weights_that_cannot_be_worked_out(car, changed, year, said):
    weighing = weighed(max(year, 1957), 4, 45_000)
    with pytest.raises(DataError) as caught:
        data_block(car(weighings=(weighing,), **changed), year)
    assert said in str(caught.value)


def test_records_stand_outside_until_there_are_panels(car):
    records = (ServiceRecord("COTS", "UB", StencilDate(1970, 5)), ServiceRecord("RPKD", "MG", StencilDate(1971, 2)))
    old = car(records=records)
    assert texts(data_block(old, 1971))[-2:] == ["COTS UB 5-70", "RPKD MG 2-71"]
    assert data_block(old, 1971)[-1].height_in == 1.5  # rule 60 of 1952 (modelingthesp.blogspot.com, 17 April 2014)
    assert "service" not in [line.role for line in data_block(old, 1975)]


def test_ends_are_lettered_smaller(car):
    assert end_block(car()) == (DataLine("UMGR", 4, "mark"), DataLine("0301", 4, "number"))


@BOUNDED
@given(
    year=st.integers(1926, 1962),
    axle=st.sampled_from("ABCDEF"),
    light=st.integers(20_000, 60_000),
    later=st.integers(0, 5),
)
def test_limit_and_weight_always_add_up(year, axle, light, later):
    date = StencilDate(year, 6)
    car = FreightCar(
        mark=ReportingMark("UMGR"),
        number="7",
        built=date,
        axle=axle,
        weighings=(Weighing(date=date, light_weight_lb=light),),
    )
    figures = {
        line.role: int(line.text.split()[2]) for line in data_block(car, year + later) if line.text.startswith("L")
    }
    sums = {"A": 66_000, "B": 103_000, "C": 136_000, "D": 169_000, "E": 210_000, "F": 251_000}
    assert figures["load limit"] + figures["light weight"] == sums[axle]
    assert abs(figures["light weight"] - light) <= 50
    assert all(figure % 100 == 0 for figure in figures.values())


@BOUNDED
@given(
    st.integers(1957, 2050),
    st.lists(st.tuples(st.sampled_from(["COTS", "IDT", "LUB", "RPKD", "INSP"]), st.integers(1957, 2050))),
)
def test_every_record_is_lettered_once(year, works):
    built = StencilDate(1957, 1)
    car = FreightCar(
        mark=ReportingMark("UMGR"),
        number="7",
        built=built,
        axle="D",
        weighings=(Weighing(date=built, light_weight_lb=45_000),),
        records=tuple(ServiceRecord(work, "UB", StencilDate(then, 3)) for work, then in works),
    )
    outside = [line.text for line in data_block(car, year) if line.role == "service"]
    inside = [str(record) for panel in stencil_panels(car, year) for record in panel.records]
    assert sorted(outside + inside) == sorted(str(record) for record in car.records_in(year))
