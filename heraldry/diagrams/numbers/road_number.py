"""One road number: digits as they are painted, leading zeros and all."""

from __future__ import annotations

import re

from heraldry.errors import NumberError

NORTH_AMERICAN_DIGITS = 6
"""The most digits that the register of North American cars takes (a trade magazine's primer, 2006)."""
LONGEST_SHOWN = 30
"""Characters of a wrong number that a message repeats."""
_DIGITS = re.compile(r"[0-9]+")


def road_number(text: str, max_digits: int = NORTH_AMERICAN_DIGITS) -> str:
    """The road number in a text, without the spaces round it.

    Raises NumberError: nothing, anything but the digits 0 to 9, too many digits.

    >>> road_number(" 0301 ")
    '0301'
    """
    number = text.strip()
    if not _DIGITS.fullmatch(number):
        shown = f"'{number[:LONGEST_SHOWN]}'" if number else "nothing"
        raise NumberError(f"this is no road number, found {shown}, write digits only, such as 301")
    if len(number) > max_digits:
        shown = number if len(number) <= LONGEST_SHOWN else f"{number[:LONGEST_SHOWN]}…"
        raise NumberError(f"a road number of {len(number)} digits, found {shown}, at most {max_digits} are carried")
    return number
