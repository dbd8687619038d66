"""The weight that a four-axle car may bring on the rail, by the size of its axle journals and the year.

It is the sum of load limit and light weight, and it rose twice. Where the figures were read:

- 1925 to 1962: steam-era freight car mailing list, message 56171, from the last page of the Official Railway
  Equipment Register; the column of nominal capacities beside it.
- from 1963: D from message 55948 of the same list (which gives both of its values and the years), E from
  public discussions of 70-ton cars, F and G from cars as photographed (see the tests); C from memory.
- 286,000 lb: a public glossary, "from the 1990s"; cars of 263,000 lb went on beside it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from heraldry.errors import DataError

FIRST_TABLE_YEAR = 1925
LAST_YEAR_OF_OLD_LOADS = 1962
FIRST_YEAR_OF_286000 = 1990


@dataclass(frozen=True, slots=True)
class AllowedLoad:
    """Pounds on the rail that were allowed in some years, both included."""

    pounds: int
    first_year: int
    last_year: int | None = None

    def holds_in(self, year: int) -> bool:
        """Whether it was allowed in a year."""
        return self.first_year <= year and (self.last_year is None or year <= self.last_year)


@dataclass(frozen=True, slots=True)
class Axle:
    """One row of the table: the journal's letter, diameter × length in inches, and what four axles carry."""

    letter: str
    journal: str
    nominal_capacity_lb: int
    loads: tuple[AllowedLoad, ...]

    def loads_in(self, year: int) -> tuple[int, ...]:
        """Every gross rail load allowed in a year, the usual one first; none where the table is silent."""
        return tuple(load.pounds for load in self.loads if load.holds_in(year))


def _until_1962(pounds: int) -> AllowedLoad:
    return AllowedLoad(pounds, FIRST_TABLE_YEAR, LAST_YEAR_OF_OLD_LOADS)


def _from_1963(pounds: int) -> AllowedLoad:
    return AllowedLoad(pounds, LAST_YEAR_OF_OLD_LOADS + 1)


AXLES: Mapping[str, Axle] = MappingProxyType(
    {
        axle.letter: axle
        for axle in (
            Axle("A", "3 3/4 x 7", 40_000, (_until_1962(66_000),)),
            Axle("B", "4 1/4 x 8", 60_000, (_until_1962(103_000),)),
            Axle("C", "5 x 9", 80_000, (_until_1962(136_000), _from_1963(142_000))),
            Axle("D", "5 1/2 x 10", 100_000, (_until_1962(169_000), _from_1963(177_000))),
            Axle("E", "6 x 11", 140_000, (_until_1962(210_000), _from_1963(220_000))),
            Axle(
                "F",
                "6 1/2 x 12",
                200_000,
                (_until_1962(251_000), _from_1963(263_000), AllowedLoad(286_000, FIRST_YEAR_OF_286000)),
            ),
            Axle("G", "7 x 12", 250_000, (_from_1963(315_000),)),
        )
    }
)
"""By letter. The letter G, and its nominal 125 tons as pounds, are from memory."""


def axle(name: str) -> Axle:
    """An axle by the letter of its journal, or by the journal's size in inches.

    Raises DataError for any other, with all that there are.

    >>> axle("5-1/2 x 10").letter
    'D'
    >>> axle("D").loads_in(1955), axle("D").loads_in(1963)
    ((169000,), (177000,))
    """
    asked = name.strip().upper()
    if asked in AXLES:
        return AXLES[asked]
    size = " ".join(re.findall(r"[0-9]+/[0-9]+|[0-9]+|X", asked.replace("×", "X")))
    for known in AXLES.values():
        if known.journal.upper() == size:
            return known
    listed = ", ".join(f"{known.letter} ({known.journal})" for known in AXLES.values())
    raise DataError(f"unknown axle journal, found '{name[:30]}', known: {listed}")
