"""Which line of data a car carries in which years, and how high its letters are, each with its source.

Years are the calendar years in which a line is found; both ends are included.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

Role = Literal[
    "mark",
    "number",
    "capacity",
    "designation",
    "load limit",
    "light weight",
    "built",
    "rebuilt",
    "dimension",
    "cubic capacity",
    "service",
]
PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Span:
    """The years in which something is carried; an open end is ``None``."""

    first: int | None
    last: int | None
    source: str

    def __contains__(self, year: int) -> bool:
        return (self.first is None or self.first <= year) and (self.last is None or year <= self.last)


_ALWAYS = Span(None, None, PRACTICE)
_ARA_1926 = "rule of the American Railway Association of 1926, for all cars from 1 January 1933 (mailing list, 148461)"
CARRIED: Mapping[Role, Span] = MappingProxyType(
    {
        "mark": _ALWAYS,
        "number": _ALWAYS,
        "capacity": _ALWAYS,
        "designation": Span(1959, None, "interchange rule 3(s)(9), from 1 January 1959 (mailing list, 176762)"),
        "load limit": Span(1926, None, _ARA_1926),
        "light weight": _ALWAYS,
        "built": _ALWAYS,
        "rebuilt": _ALWAYS,
        "dimension": _ALWAYS,
        "cubic capacity": Span(1926, None, _ARA_1926),
        "service": _ALWAYS,
    }
)
"""By role. The mailing list is the one on steam-era freight cars; the number is its message's."""

CAPACITY_WANTED = Span(None, 1987, "no longer required from 1988 (mailing list, 17167076)")
WHEEL_DOT = Span(1978, None, "inspection from 31 March 1978 (public forum on freight cars, topic 203097)")
LAST_PAINTED_WITH_DOT = 1978
"""Cars built or painted from 1979 have none (the same topic)."""
WHITE_DOT = Span(1978, 1978, "cars with suspect wheels were barred from 31 December 1978 (the same topic)")


@dataclass(frozen=True, slots=True)
class Panels:
    """How many black panels of shop stencils a car carries in some years."""

    count: int
    years: Span
    new_cars_only: bool = False


_PANELS = "public forum on freight cars, topic 310082; a society's page of 2016"
PANELS: tuple[Panels, ...] = (
    Panels(1, Span(1972, 1973, f"{_PANELS}: new and rebuilt cars only, air brake work only"), new_cars_only=True),
    Panels(2, Span(1974, 1981, f"{_PANELS}: with lubrication, on all cars")),
    Panels(3, Span(1982, 2016, _PANELS)),
)


# Mark and number: Master Car Builders 1916, and again a letter ballot of 1959, in force from 1 March 1960, with
# 4 in at the ends (mailing list, 90553). Ends before 1960: common practice, no source.
MARK_IN, NUMBER_IN, END_IN = 9, 7, 4
DESIGNATION_IN = 3
"""Interchange rule 3(s)(9), 1959."""
DIMENSION_IN = 2
"""From memory."""
BUILT_IN = 2
"""From memory: 1 to 2 in."""
SERVICE_IN = 1.5
"""Of air brake work: interchange rules of 1952, rule 60 (modelingthesp.blogspot.com, 17 April 2014). That other shops
and years used the same letters: common practice, no source."""
FIRST_YEAR_OF_SMALLER_WEIGHTS = 1933
"""Weight lines of 3 in, of 4 in on older cars: from memory, and so is the year that parts them."""

FEDERAL_LEAST_IN: Mapping[Role, int] = MappingProxyType({"mark": 7, "number": 7, "built": 1})
"""49 CFR 215.301, letter heights on each side (44 FR 77340, 31 December 1979)."""
FEDERAL_HEIGHTS = Span(1980, None, "49 CFR 215.301")


def weights_in(year: int) -> int:
    """The letter height of the weight lines, in inches.

    >>> weights_in(1915), weights_in(1957)
    (4, 3)
    """
    return 3 if year >= FIRST_YEAR_OF_SMALLER_WEIGHTS else 4


def is_carried(role: Role, year: int) -> bool:
    """Whether cars carry a line of this role in a year.

    >>> is_carried("load limit", 1915), is_carried("load limit", 1933)
    (False, True)
    """
    return year in CARRIED[role]
