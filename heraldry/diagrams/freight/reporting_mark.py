"""Reporting marks: the two to four letters that a car is registered under.

A mark is painted as its road likes it, with ampersand, points or spaces; what is registered are its letters.
The last letter tells whose the car is.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from heraldry.errors import DataError

Owner = Literal["railroad", "private owner", "container owner", "trailer owner"]

LETTERS = range(2, 5)
"""How many letters a mark has: a trade magazine's primer on freight car markings, 2006."""
LONGEST_PAINTED = 16
"""Characters of a painted mark: four letters, each with a point and a space, and two ampersands."""
OWNER_BY_LAST_LETTER: dict[str, Owner] = {
    "X": "private owner",  # the same primer: common carriers' marks do not end so
    "U": "container owner",  # from memory
    "Z": "trailer owner",  # from memory
}
_PAINTED = re.compile(r"[A-Z&. ]+")


@dataclass(frozen=True, slots=True)
class ReportingMark:
    """A reporting mark as it is painted.

    Raises DataError: letters other than A to Z, fewer than two of them or more than four.

    >>> mark = ReportingMark("U.& M.X.")
    >>> mark.letters, mark.owner
    ('UMX', 'private owner')
    """

    painted: str

    def __post_init__(self) -> None:
        shown = f"'{self.painted[:LONGEST_PAINTED]}'" if self.painted else "nothing"
        if not _PAINTED.fullmatch(self.painted) or len(self.painted) > LONGEST_PAINTED:
            raise DataError(
                f"this is no reporting mark, found {shown}, write capital letters A to Z (with & or points)"
            )
        if len(self.letters) not in LETTERS:
            raise DataError(f"a reporting mark has 2 to 4 letters, found {len(self.letters)} in {shown}")

    @property
    def letters(self) -> str:
        """The letters that are registered."""
        return re.sub("[^A-Z]", "", self.painted)

    @property
    def owner(self) -> Owner:
        """Whose the car is."""
        return OWNER_BY_LAST_LETTER.get(self.letters[-1], "railroad")
