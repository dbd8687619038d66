"""The cars of a class: each with its number, the texts that it alone has, and where the file says it.

A car that cannot be lettered is a fault of its row or of the series; the others are cars as ever.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import cast

from heraldry.artwork import Finding
from heraldry.describe.diagram_model import Data, DiagramBase, Series
from heraldry.diagrams.car_data import CarData, CarKeys, car_data
from heraldry.diagrams.freight import FreightCar
from heraldry.diagrams.numbers import SeriesRow, parse_series, read_series
from heraldry.errors import Fault, HeraldryError, nearest
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile

NOTHING: Mapping[str, str] = MappingProxyType({})
CAR, DATA = "car.", "data."
"""How the texts that differ by car begin."""


@dataclass(frozen=True)
class Car:
    """One car, or the only one of a class without numbers."""

    number: str | None
    texts: Mapping[str, str] = field(default_factory=dict)
    row: int | None = None
    """Where it stands in the table of cars."""
    freight: FreightCar | None = None
    year: int | None = None
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class Roster:
    """All sound cars of a class, and the faults of the others."""

    cars: tuple[Car, ...]
    faults: tuple[Fault, ...] = ()
    spares: int = 0
    table: str | None = None
    """The file that the cars stand in."""

    def named(self, numbers: tuple[str, ...]) -> tuple[Car, ...]:
        """Those cars alone whose numbers are asked for; raises HeraldryError for one that is not there."""
        by_number = {car.number: car for car in self.cars if car.number is not None}
        for number in numbers:
            if number not in by_number:
                raise HeraldryError(f"no car of the class has the number {number}, {nearest(number, by_number)}")
        return tuple(by_number[number] for number in dict.fromkeys(numbers))

    def fault(self, car: Car, file: DrawnFile, what: str) -> Fault:
        """A fault of one car: in its row, or in the series."""
        if car.row is not None and self.table is not None:
            return Fault(self.table, car.row, f"row {car.row}: {what}")
        of = f"car {car.number}: " if car.number else ""
        return file.description.fault(("series",) if car.number else ("item",), of + what)


def roster_of(file: DrawnFile, reader: Reader) -> Roster:
    """The cars of a diagram file; what is wrong with the series itself goes to the ledger, with a car to its faults."""
    model = cast(DiagramBase, file.model)
    series, common = model.series or Series(), model.data or Data()
    rows, faults, table = _rows(file, series)
    cars: list[Car] = []
    roster = Roster((), (), series.spares, table)
    mark = file.description.identity.mark
    for row in rows:
        texts = _car_texts(row)
        try:
            keys = CarKeys(common, row.values if row and model.data else NOTHING)
            data = car_data(keys, mark, reader.texts.get("road.name", ""), {**reader.texts, **texts})
            cars.append(_car(row, table is not None, texts, data))
        except HeraldryError as error:
            car = _car(row, table is not None, texts, CarData(NOTHING))
            faults.append(_data_fault(file, roster, car, row, str(error)))
    return Roster(tuple(cars), tuple(faults), series.spares, table)


def _rows(file: DrawnFile, series: Series) -> tuple[list[SeriesRow | None], list[Fault], str | None]:
    given = [key for key in ("numbers", "cars") if getattr(series, key) is not None]
    if len(given) > 1:
        file.ledger.add(file.description, ("series",), "give numbers or cars, not both", " and ".join(given))
    if series.cars is not None:
        path = file.description.folder / series.cars
        table = read_series(path)
        return list(table.rows), list(table.faults), str(path)
    if series.numbers is not None:
        with file.ledger.at(file.description, ("series", "numbers")):
            numbers = parse_series(series.numbers)
            return [SeriesRow(number, NOTHING, 0) for number in numbers], [], None
        return [], [], None
    return [None], [], None


def _car_texts(row: SeriesRow | None) -> dict[str, str]:
    if row is None:
        return {}
    return {f"{CAR}number": row.number, **{f"{CAR}{name}": value for name, value in row.values.items()}}


def _car(row: SeriesRow | None, in_table: bool, texts: Mapping[str, str], data: CarData) -> Car:
    return Car(
        number=row.number if row else None,
        texts={**texts, **data.texts},
        row=row.row if row and in_table else None,
        freight=data.freight,
        year=data.year,
        findings=data.findings,
    )


def _data_fault(file: DrawnFile, roster: Roster, car: Car, row: SeriesRow | None, message: str) -> Fault:
    """What is wrong with a car's data, at the column that it comes from if one is named, else at ``[data]``."""
    column = next(_columns_named(message, row), None)
    if column:
        return roster.fault(car, file, f"column {column}: {message.removeprefix(f'{column}: ')}")
    if car.row is not None:
        return roster.fault(car, file, message)
    return file.description.fault(("data",), f"data: {message}")


def _columns_named(message: str, row: SeriesRow | None) -> Iterator[str]:
    if row is not None:
        yield from (name for name in row.values if message.startswith(f"{name}: "))
