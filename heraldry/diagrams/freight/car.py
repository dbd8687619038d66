"""A freight car as its owner knows it: what was true of it, when, in pounds, inches and months.

The same car can be shown in any year of its life: of its weighings and shop records the latest one that the
year has seen is the one it carries.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from heraldry.diagrams.freight.journals import axle
from heraldry.diagrams.freight.reporting_mark import ReportingMark
from heraldry.diagrams.numbers.road_number import road_number
from heraldry.errors import DataError

YEARS = range(1850, 2100)
"""From the first cars with stencilled data to beyond any that is modelled."""
MOST_POUNDS = 1_000_000
"""Heavier than any freight car, loaded."""
MOST_CUBIC_FEET = 50_000
LONGEST_STATION = 8
"""Letters of a station symbol with its hyphen; common practice, no source."""
FINEST_INCH = 16
"""Dimensions are stencilled to a sixteenth of an inch at the finest; common practice, no source."""
_STATION = re.compile(rf"[A-Z0-9][A-Z0-9-]{{0,{LONGEST_STATION - 1}}}")

Body = Literal["steel", "wood"]
DotColour = Literal["yellow", "white"]


@dataclass(frozen=True, slots=True, order=True)
class StencilDate:
    """A month, as it is stencilled: ``str(StencilDate(1957, 4))`` is ``4-57``.

    >>> str(StencilDate(1904, 11))
    '11-04'
    """

    year: int
    month: int

    def __post_init__(self) -> None:
        if self.year not in YEARS:
            raise DataError(f"a year is {YEARS[0]} to {YEARS[-1]}, found {self.year}")
        if not 1 <= self.month <= 12:
            raise DataError(f"a month is 1 to 12, found {self.month}")

    def __str__(self) -> str:
        return f"{self.month}-{self.year % 100:02d}"

    def months_until(self, year: int) -> int:
        """Whole months from here to the January of a year."""
        return (year - self.year) * 12 + 1 - self.month


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """One weighing of the empty car; the builder's own has no ``station``.

    ``load_limit_lb`` is what was stencilled, where it is not what the axles allow; ``starred`` says that the
    owner set it lower on purpose.
    """

    date: StencilDate
    light_weight_lb: int
    station: str = ""
    load_limit_lb: int | None = None
    starred: bool = False

    def __post_init__(self) -> None:
        _in_range("a light weight", self.light_weight_lb, MOST_POUNDS, "lb")
        if self.load_limit_lb is not None:
            _in_range("a load limit", self.load_limit_lb, MOST_POUNDS, "lb")
        if self.station:
            _station(self.station)
        if self.starred and self.load_limit_lb is None:
            raise DataError("a star marks a load limit set by the owner, found a star alone, give the load limit too")

    @property
    def stencilled(self) -> str:
        """Where and when, as it follows the light weight: ``NEW 4-57``, or a station's symbol and the date."""
        return f"{self.station or 'NEW'} {self.date}"


@dataclass(frozen=True, slots=True)
class Dimension:
    """A length of the car under its trade abbreviation (IL, IW, IH, EW, EH…), in inches.

    >>> str(Dimension("IL", Fraction(606))), str(Dimension("IW", Fraction(221, 2)))
    ('IL 50-6', 'IW 9-2 1/2')
    """

    abbreviation: str
    inches: Fraction

    def __post_init__(self) -> None:
        if not re.fullmatch("[A-Z]{1,4}", self.abbreviation):
            raise DataError(
                f"a dimension is named by 1 to 4 capital letters, found '{self.abbreviation[:20]}', write IL"
            )
        if not 0 < self.inches < 12 * 1000 or FINEST_INCH % self.inches.denominator:
            raise DataError(f"a dimension is whole inches or sixteenths of one, found {self.inches} in")

    def __str__(self) -> str:
        feet, inches = divmod(self.inches, 12)
        whole, part = divmod(inches, 1)
        return f"{self.abbreviation} {feet}-{whole}" + (f" {part}" if part else "")


@dataclass(frozen=True, slots=True)
class ServiceRecord:
    """Work of a shop that is stencilled on the car: its abbreviation (COTS, RPKD…), where and when."""

    work: str
    station: str
    date: StencilDate

    def __post_init__(self) -> None:
        _station(self.work)
        _station(self.station)

    def __str__(self) -> str:
        return f"{self.work} {self.station} {self.date}"


@dataclass(frozen=True, slots=True, kw_only=True)
class FreightCar:
    """One car. Weighings and records may stand in any order; at least one weighing there must be.

    ``gross_rail_load_lb`` is wanted where the table of journals is silent or leaves a choice; ``capacity_lb``
    left out is the nominal one of the axle. ``designation`` is the mechanical designation (a letter code of
    the kind of car). Raises DataError and NumberError for what no car could carry.
    """

    mark: ReportingMark
    number: str
    built: StencilDate
    axle: str
    weighings: tuple[Weighing, ...]
    capacity_lb: int | None = None
    gross_rail_load_lb: int | None = None
    cubic_feet: int | None = None
    designation: str = ""
    dimensions: tuple[Dimension, ...] = ()
    records: tuple[ServiceRecord, ...] = ()
    rebuilt: StencilDate | None = None
    painted: StencilDate | None = None
    body: Body = "steel"
    dot: DotColour = "yellow"

    def __post_init__(self) -> None:
        road_number(self.number)
        axle(self.axle)
        if not self.weighings:
            raise DataError("a car is weighed before it runs, found no weighing, give its light weight when new")
        for what, pounds in (("a capacity", self.capacity_lb), ("a gross rail load", self.gross_rail_load_lb)):
            if pounds is not None:
                _in_range(what, pounds, MOST_POUNDS, "lb")
        if self.cubic_feet is not None:
            _in_range("a cubic capacity", self.cubic_feet, MOST_CUBIC_FEET, "cu ft")
        if self.designation and not re.fullmatch("[A-Z]{1,4}", self.designation):
            raise DataError(f"a designation is 1 to 4 capital letters, found '{self.designation[:20]}'")
        self._check_dates()

    def _check_dates(self) -> None:
        events = [("weighed", weighing.date) for weighing in self.weighings]
        events += [(f"stencilled {record.work}", record.date) for record in self.records]
        events += [(what, date) for what, date in (("rebuilt", self.rebuilt), ("painted", self.painted)) if date]
        for what, date in events:
            if date < self.built:
                raise DataError(f"a car built {self.built} cannot have been {what} before, found {date}")

    def weighing_in(self, year: int) -> Weighing:
        """The latest weighing that a year has seen; raises DataError for a year before the first one."""
        seen = [weighing for weighing in self.weighings if weighing.date.year <= year]
        if year < self.built.year or not seen:
            first = min(weighing.date for weighing in self.weighings)
            raise DataError(f"a car built {self.built} and first weighed {first} cannot be shown in {year}")
        return max(seen, key=lambda weighing: weighing.date)

    def records_in(self, year: int) -> tuple[ServiceRecord, ...]:
        """The latest record of each kind of work that a year has seen, in the order of their first mention."""
        latest: dict[str, ServiceRecord] = {}
        for record in self.records:
            before = latest.get(record.work)
            if record.date.year <= year and (before is None or before.date <= record.date):
                latest[record.work] = record
        return tuple(latest.values())

    def last_shopped(self, year: int) -> StencilDate:
        """When it was last built or rebuilt, as far as a year has seen."""
        return self.rebuilt if self.rebuilt and self.rebuilt.year <= year else self.built

    def last_painted(self, year: int) -> StencilDate:
        """When it was last painted all over, as far as a year has seen; a rebuilt car is painted."""
        shopped = self.last_shopped(year)
        return max(shopped, self.painted) if self.painted and self.painted.year <= year else shopped


def _in_range(what: str, value: int, most: int, unit: str) -> None:
    if not 0 < value <= most:
        raise DataError(f"{what} of {value:,} {unit} is on no car, write 1 to {most:,} {unit}")


def _station(text: str) -> None:
    if not _STATION.fullmatch(text):
        raise DataError(
            f"a stencilled abbreviation is at most {LONGEST_STATION} capital letters, digits and hyphens, "
            f"found '{text[:30]}'"
        )
