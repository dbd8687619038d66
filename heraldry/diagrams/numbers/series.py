"""A series of road numbers, as one line of text: which cars of a class there are.

=============================  ======================================================
``301-325``                    all of them (a hyphen or an en dash)
``301-325 by 2``               every second one
``301, 305, 310-320``          several parts, in the order written
``301-325 skip 313, 320-322``  all but those; one ``skip``, at the end
``0301-0325``                  leading zeros are painted, so both ends are written in full
=============================  ======================================================

0301 and 301 are one number: a register that counts would not tell the two cars apart.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from heraldry.diagrams.numbers.road_number import LONGEST_SHOWN, NORTH_AMERICAN_DIGITS, road_number
from heraldry.errors import NumberError

MAX_TEXT = 2_000
"""Characters of one series; a longer list belongs in a table."""
MAX_NUMBERS = 10_000
"""Cars of one series: more than any class ever had, few enough to draw in one sitting."""
MOST_LISTED = 5
"""Numbers that a message names before it only counts them."""
HOW_TO_WRITE = "write 301-325, 301-325 by 2, or 301, 305, 310-320 skip 313"

_PART = re.compile(r"(?P<first>[^\s–-]+)(?:\s*[–-]\s*(?P<last>[^\s–-]+)(?:\s+by\s+(?P<step>\S+))?)?", re.IGNORECASE)
_SKIP = re.compile(r"\bskip\b", re.IGNORECASE)
_OTHER_RANGE = re.compile(r"(?P<first>[0-9]+)\s*(?:\.\.+|…|:|/|~|—|−|\bto\b|\bthrough\b)\s*(?P<last>[0-9]+)")


@dataclass(frozen=True, slots=True)
class _Part:
    """Evenly spaced numbers, painted with at least so many digits; where they stand in the text."""

    values: range
    digits: int
    position: int
    written: str

    def painted(self) -> Iterator[str]:
        return (f"{value:0{self.digits}d}" for value in self.values)


def parse_series(text: str, max_digits: int = NORTH_AMERICAN_DIGITS) -> tuple[str, ...]:
    """The road numbers of a series, in the order written.

    Raises NumberError with the position in the text: a part that is neither number nor range, a range that
    runs backwards, a step that is none, a number twice, a skip of what is not there, nothing left, too many.

    >>> parse_series("301-309 by 2 skip 305")
    ('301', '303', '307', '309')
    >>> parse_series("098, 099–101")
    ('098', '099', '100', '101')
    """
    if len(text) > MAX_TEXT:
        raise NumberError(f"a series of {len(text):,} characters, at most {MAX_TEXT:,}: put the numbers in a table")
    wanted, skipped = _halves(text, max_digits)
    total = sum(len(part.values) for part in wanted)
    if total > MAX_NUMBERS:
        raise NumberError(f"a series of {total:,} numbers, at most {MAX_NUMBERS:,} are drawn at once")
    _refuse_twins(wanted)
    gone = _skipped(wanted, skipped)
    numbers = tuple(number for part in wanted for number in part.painted() if int(number) not in gone)
    if not numbers:
        raise NumberError("every number of the series is skipped, leave at least one", skipped[0].position)
    return numbers


def _halves(text: str, max_digits: int) -> tuple[list[_Part], list[_Part]]:
    """The parts before ``skip``, and those after it."""
    words = list(_SKIP.finditer(text))
    if len(words) > 1:
        raise NumberError("'skip' stands twice, write it once, with all that is skipped after it", words[1].start())
    if not words:
        return _parts(text, 0, len(text), max_digits), []
    before = _parts(text, 0, words[0].start(), max_digits)
    return before, _parts(text, words[0].end(), len(text), max_digits)


def _parts(text: str, start: int, end: int, max_digits: int) -> list[_Part]:
    parts = []
    for piece in text[start:end].split(","):
        lead = len(piece) - len(piece.lstrip())
        parts.append(_part(piece.strip(), start + lead, max_digits))
        start += len(piece) + 1
    return parts


def _part(written: str, position: int, max_digits: int) -> _Part:
    match = _PART.fullmatch(written)
    if not match or _OTHER_RANGE.search(written):
        raise NumberError(_no_part(written), position)
    try:
        first = road_number(match["first"], max_digits)
        last = road_number(match["last"] or first, max_digits)
    except NumberError as error:
        raise NumberError(str(error), position) from None
    step = _step(match["step"], position)
    _check_ends(first, last, position)
    return _Part(range(int(first), int(last) + 1, step), len(first), position, written)


def _no_part(written: str) -> str:
    other = _OTHER_RANGE.search(written)
    if other:
        return f"a range is written with a hyphen, found '{other[0]}', write {other['first']}-{other['last']}"
    shown = f"'{written[:LONGEST_SHOWN]}'" if written else "nothing between two commas or at an end"
    return f"this is neither a number nor a range, found {shown}, {HOW_TO_WRITE}"


def _step(text: str | None, position: int) -> int:
    if text is None:
        return 1
    if not re.fullmatch(r"[1-9][0-9]{0,5}", text):
        raise NumberError(f"a step is a whole number from 1, found 'by {text[:LONGEST_SHOWN]}', write by 2", position)
    return int(text)


def _check_ends(first: str, last: str, position: int) -> None:
    if int(last) < int(first):
        raise NumberError(f"a range runs upwards, found {first}-{last}, write {last}-{first}", position)
    leading_zeros = any(len(end) > 1 and end[0] == "0" for end in (first, last))
    if leading_zeros and len(first) != len(last):
        digits = max(len(first), len(last))
        better = f"{int(first):0{digits}d}-{int(last):0{digits}d}"
        raise NumberError(
            f"ends of a range with leading zeros have as many digits, found {first}-{last}, write {better}", position
        )


def _refuse_twins(parts: Sequence[_Part]) -> None:
    seen: set[int] = set()
    twice: set[int] = set()
    places: list[int] = []
    for part in parts:
        again = seen.intersection(part.values)
        twice |= again
        places += [part.position] if again else []
        seen.update(part.values)
    if twice:
        raise NumberError(f"no number is given twice, found {_listed(sorted(twice))} again", places[0])


def _skipped(wanted: Sequence[_Part], skipped: Sequence[_Part]) -> set[int]:
    """All that is skipped; every part of it must meet the series, else it is a slip of the pen."""
    there = {value for part in wanted for value in part.values}
    gone: set[int] = set()
    for part in skipped:
        met = {value for value in there if value in part.values}  # a skipped range may be far longer than the series
        if not met:
            raise NumberError(
                f"only numbers of the series are skipped, found {part.written}, which is not in it", part.position
            )
        gone |= met
    return gone


def _listed(values: Sequence[int]) -> str:
    more = f" and {len(values) - MOST_LISTED} more" if len(values) > MOST_LISTED else ""
    return ", ".join(map(str, values[:MOST_LISTED])) + more
