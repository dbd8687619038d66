"""What a diagram says of its cars, as texts to letter: a freight car's weights and dates, the number of a wagon.

The keys of ``[data]`` hold for every car of the class; what a row of the table of cars has in the column of that name
goes before them.
Texts are named ``data.…``; a line that cars of the year do not carry has no text.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from heraldry.artwork import Finding
from heraldry.describe.diagram_model import Data, Record
from heraldry.describe.text_references import fill
from heraldry.diagrams.containers import container_number, size_and_type
from heraldry.diagrams.europe.load_grid import load_grid
from heraldry.diagrams.europe.vehicle_number import engine_number, wagon_number
from heraldry.diagrams.freight import (
    Dimension,
    FreightCar,
    ReportingMark,
    ServiceRecord,
    StencilDate,
    Weighing,
    car_findings,
    data_block,
    weights_of,
)
from heraldry.errors import DataError
from heraldry.units import MM_PER_INCH, parse_length

FREIGHT_NEEDS = ("year", "built", "journal", "light_weight")
"""What a North American freight car cannot be lettered without, once one of them is given."""
POUNDS = ("light_weight", "load_limit", "capacity", "gross_rail_load")
WHOLE_NUMBERS = (*POUNDS, "year", "cubic_feet", "tare", "axles", "carries")
YES, NO = ("yes", "true", "1"), ("no", "false", "0")
"""What a column of a table may hold for a flag."""


@dataclass(frozen=True)
class CarData:
    """The texts of one car, the car itself where it is a freight car, and what does not add up on it."""

    texts: Mapping[str, str]
    freight: FreightCar | None = None
    year: int | None = None
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class CarKeys:
    """The keys of one car: those of ``[data]``, with the columns of its row put over them."""

    common: Data
    columns: Mapping[str, str]

    def __getitem__(self, key: str) -> Any:
        """The value of a key; raises DataError that begins with the key where a column cannot hold it."""
        cell = self.columns.get(key, "")
        return _read(key, cell) if cell else getattr(self.common, key)


def car_data(keys: CarKeys, mark: str | None, road_name: str, texts: Mapping[str, str]) -> CarData:
    """The data of one car; ``texts`` are those that its number and its road give.

    Raises DataError and NumberError for what no car could carry.
    """
    named = dict(_number_texts(keys, texts))
    if all(keys[key] is None for key in FREIGHT_NEEDS):
        return CarData(named)
    freight, year = _freight_car(keys, mark, texts.get("car.number", "1")), keys["year"]
    named |= dict(_freight_texts(freight, year))
    return CarData(named, freight, year, car_findings(freight, year, road_name))


def _read(key: str, cell: str) -> Any:
    if key in WHOLE_NUMBERS:
        plain = cell.replace(",", "")
        if not plain.isdecimal():
            raise DataError(f"{key}: a whole number is wanted, found '{cell[:30]}'")
        return int(plain)
    if key == "starred":
        if cell.lower() not in (*YES, *NO):
            raise DataError(f"{key}: yes or no is wanted, found '{cell[:30]}'")
        return cell.lower() in YES
    return cell


def _freight_car(keys: CarKeys, mark: str | None, number: str) -> FreightCar:
    missing = [key for key in FREIGHT_NEEDS if keys[key] is None]
    if missing:
        raise DataError(f"{missing[0]} is missing, a freight car's data begin with {', '.join(FREIGHT_NEEDS)}")
    if mark is None:
        raise DataError("the road has no reporting mark, a freight car needs one: mark = 'ABCD' in the road")
    built = _month("built", keys["built"])
    weighing = Weighing(
        date=built if keys["weighed"] is None else _month("weighed", keys["weighed"]),
        light_weight_lb=keys["light_weight"],
        station=keys["station"] or "",
        load_limit_lb=keys["load_limit"],
        starred=bool(keys["starred"]),
    )
    return FreightCar(
        mark=ReportingMark(mark),
        number=number,
        built=built,
        axle=keys["journal"],
        weighings=(weighing,),
        capacity_lb=keys["capacity"],
        gross_rail_load_lb=keys["gross_rail_load"],
        cubic_feet=keys["cubic_feet"],
        designation=keys["designation"] or "",
        dimensions=tuple(_dimension(name, text) for name, text in keys.common.dimension.items()),
        records=tuple(_record(record) for record in keys.common.record),
        rebuilt=None if keys["rebuilt"] is None else _month("rebuilt", keys["rebuilt"]),
        painted=None if keys["painted"] is None else _month("painted", keys["painted"]),
        body=keys["body"] or "steel",
        dot=keys["dot"] or "yellow",
    )


def _freight_texts(car: FreightCar, year: int) -> Iterator[tuple[str, str]]:
    """Whole lines by their role, and their figures alone, to be set in columns."""
    for line in data_block(car, year):
        if line.role not in ("mark", "number", "dimension", "service"):
            yield f"data.{line.role.replace(' ', '_')}", line.text
    weights = weights_of(car, year)
    for name, pounds in (
        ("capacity", weights.capacity_lb),
        ("load_limit", weights.load_limit_lb),
        ("light_weight", weights.light_weight_lb),
    ):
        if pounds is not None:
            yield f"data.{name}_lb", str(pounds)
    yield "data.weighed", weights.weighing.stencilled
    for dimension in car.dimensions:
        yield f"data.{dimension.abbreviation}", str(dimension)
    for record in car.records_in(year):
        yield f"data.{record.work}", str(record)


def _number_texts(keys: CarKeys, texts: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    if keys["wagon"] is not None:
        number = wagon_number(fill(keys["wagon"], texts))
        lines = number.lines(keys["exchange"] or "", keys["country"] or "", keys["keeper"] or "")
        yield from ((f"data.wagon_{i}", line) for i, line in enumerate(lines, start=1))
    if keys["tare"] is not None and keys["axles"] is not None:
        for limit in load_grid(keys["tare"], keys["axles"], keys["carries"]):
            yield f"data.load_{limit.line_class}", str(limit)
    if keys["engine"] is not None:
        yield "data.engine", str(engine_number(fill(keys["engine"], texts)))
    if keys["size_and_type"] is not None:
        yield "data.size_and_type", size_and_type(keys["size_and_type"])
    if keys["container"] is not None:
        container = container_number(fill(keys["container"], texts))
        yield "data.container", f"{container.owner}{container.category} {container.serial}"
        yield "data.container_owner", container.owner + container.category
        yield "data.container_serial", container.serial
        yield "data.container_check", container.check_digit


def _month(key: str, text: str) -> StencilDate:
    year, _, month = text.partition("-")
    if not (len(year) == 4 and year.isdecimal() and len(month) == 2 and month.isdecimal()):
        raise DataError(f"{key}: a month is written 1957-04, found '{text[:30]}'")
    try:
        return StencilDate(int(year), int(month))
    except DataError as error:
        raise DataError(f"{key}: {error}") from None


def _dimension(name: str, text: str) -> Dimension:
    return Dimension(name, parse_length(text).mm / MM_PER_INCH)


def _record(record: Record) -> ServiceRecord:
    return ServiceRecord(record.work, record.station, _month("record", record.date))
