"""Load limit + light weight = what the axles may bring on the rail, against tables and cars as weighed.

Sources stand in each row of data/gross_rail_loads.csv and data/weighed_cars.csv. 286,000 lb from the 1990s: a
public glossary (liquisearch) and a public forum.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from heraldry.diagrams.freight import FreightCar, ReportingMark, StencilDate, Weighing, car_findings, weights_of
from heraldry.diagrams.freight.journals import AXLES, axle

DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


LOADS, CARS = rows("gross_rail_loads.csv"), rows("weighed_cars.csv")


def car(letter: str, year: int, light_lb: int, limit_lb: int | None = None) -> FreightCar:
    date = StencilDate(year, 6)
    weighing = Weighing(date=date, light_weight_lb=light_lb, load_limit_lb=limit_lb)
    return FreightCar(mark=ReportingMark("UMGR"), number="1", built=date, axle=letter, weighings=(weighing,))


def test_every_row_has_its_source():
    assert len(LOADS) == 11 and len(CARS) == 8
    assert all(row["source"] for row in (*LOADS, *CARS))


@pytest.mark.parametrize("row", LOADS, ids=lambda row: f"{row['axle']}-{row['first_year']}")
@pytest.mark.parametrize("end", ["first_year", "last_year"])
def test_a_row_of_the_table_holds_at_both_ends_of_its_years(row, end):
    known = axle(row["journal"])
    assert (known.letter, known.nominal_capacity_lb) == (row["axle"], int(row["nominal_lb"]))
    assert known.loads_in(int(row[end])) == (int(row["gross_lb"]),)


def test_the_table_is_silent_where_the_sources_are():
    assert {letter: AXLES[letter].loads_in(1970) for letter in "AB"} == {"A": (), "B": ()}
    assert AXLES["G"].loads_in(1962) == ()
    assert all(known.loads_in(1924) == () for known in AXLES.values())


def test_286000_lb_stands_beside_263000_from_the_1990s():
    assert axle("F").loads_in(1989) == (263_000,)
    assert axle("F").loads_in(1999) == (263_000, 286_000)


@pytest.mark.parametrize("row", CARS, ids=lambda row: f"{row['car']}-{row['year']}-{row['load_limit_lb']}")
def test_cars_as_weighed(row):
    year, light, limit = int(row["year"]), int(row["light_weight_lb"]), int(row["load_limit_lb"])
    agrees = row["adds_up"] == "yes"
    found = [finding.kind for finding in car_findings(car(row["axle"], year, light, limit), year)]
    assert ("load limit" not in found) is agrees
    assert (weights_of(car(row["axle"], year, light), year).load_limit_lb == limit) is agrees
