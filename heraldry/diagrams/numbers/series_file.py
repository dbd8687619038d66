"""A table of cars: CSV text (RFC 4180) with a header row, one row a car.

The column ``number`` holds the road number; every other column holds what a diagram may letter from it (a
name, a date). UTF-8, commas or semicolons between the cells, and no line breaks within them, so that a row is
a line: a broken row is one fault, and all other rows are read as ever.
"""

from __future__ import annotations

import csv
import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from heraldry.diagrams.numbers.road_number import NORTH_AMERICAN_DIGITS, road_number
from heraldry.errors import Fault, NumberError, nearest

NUMBER = "number"
MAX_BYTES = 1_000_000
"""A table of ten thousand cars with a hundred letters each."""
MAX_ROWS = 10_000
MAX_COLUMNS = 100
MAX_CELL = 200
"""Characters of one cell: more than the longest line ever lettered on a car."""
MAX_FAULTS = 100
"""After so many faults the file is something else than a table of cars, and the rest would only hide them."""
_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]*")
_LINE_END = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True, slots=True)
class SeriesRow:
    """One car: its number, what its other columns say, and the row (the header is row 1)."""

    number: str
    values: Mapping[str, str]
    row: int


@dataclass(frozen=True, slots=True)
class SeriesTable:
    """The sound rows of a table, and everything wrong with the others."""

    rows: tuple[SeriesRow, ...] = ()
    faults: tuple[Fault, ...] = ()


def read_series(path: Path, max_digits: int = NORTH_AMERICAN_DIGITS) -> SeriesTable:
    """Read a table of cars; whatever is wrong comes back as faults, with the sound rows beside them.

    A number given twice, a cell too many or too few, a control character, a number that is none: the fault of
    a row. No such file, no UTF-8, no header row, no column ``number``: the fault of the file, and no rows.
    """
    try:
        content = _content(path)
    except (OSError, ValueError) as error:  # ValueError: a path with a null character
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        return _refused(path, 1, "the table cannot be read", reason, "name a .csv file")
    if len(content) > MAX_BYTES:
        return _refused(path, 1, "the table is too large", f"over {MAX_BYTES:,} bytes", "divide it")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        return _refused(path, line, "the text is not UTF-8", f"byte 0x{content[error.start]:02X}", "save it as UTF-8")
    return _Reading(str(path), max_digits).table(_LINE_END.split(text))


def _content(path: Path) -> bytes:
    """At most one byte more than allowed, for a file may be a pipe without an end."""
    with path.open("rb") as file:
        return file.read(MAX_BYTES + 1)


def _refused(path: Path, line: int, what: str, found: str, wanted: str) -> SeriesTable:
    return SeriesTable((), (Fault(str(path), line, what, found, wanted),))


class _RowError(Exception):
    """Why one row is no car: what, found, wanted."""


class _Reading:
    """One pass through the lines of one file; it gathers rows and faults."""

    def __init__(self, file: str, max_digits: int) -> None:
        self.file, self.max_digits = file, max_digits
        self.rows: list[SeriesRow] = []
        self.faults: list[Fault] = []
        self.row_of_number: dict[int, int] = {}

    def table(self, lines: Sequence[str]) -> SeriesTable:
        filled = [(row, line) for row, line in enumerate(lines, start=1) if line.strip(" \t,;")]
        if not filled:
            self._fault(1, "the table is empty", "no header row", f"begin with a row of column names, such as {NUMBER}")
            return self._done()
        header_row, header = filled[0]
        delimiter = ";" if header.count(";") > header.count(",") else ","
        try:
            columns = self._columns(self._cells(header, delimiter))
        except _RowError as error:
            self._fault(header_row, *error.args)
            return self._done()
        self._read_rows(filled[1:], columns, delimiter)
        return self._done()

    def _read_rows(self, lines: Sequence[tuple[int, str]], columns: Sequence[str], delimiter: str) -> None:
        if not lines:
            self._fault(1, "the table has no cars", "a header row alone", "write a row for each car")
        for count, (row, line) in enumerate(lines):
            if count == MAX_ROWS:
                self._fault(row, "the table has too many cars", f"{len(lines):,}", f"at most {MAX_ROWS:,} are read")
                return
            if len(self.faults) == MAX_FAULTS:
                self._fault(row, "the table is not read any further", f"{MAX_FAULTS} faults", "mend those first")
                return
            try:
                self._read_row(row, self._cells(line, delimiter), columns)
            except _RowError as error:
                self._fault(row, *error.args)

    def _read_row(self, row: int, cells: Sequence[str], columns: Sequence[str]) -> None:
        if len(cells) < len(columns):
            raise _RowError(
                f"row {row}, column {columns[len(cells)]}: there is no such cell",
                f"{len(cells)} of {len(columns)} cells",
                "leave a cell empty, but write its comma",
            )
        if any(cells[len(columns) :]):
            found = f"'{next(filter(None, cells[len(columns) :]))}'"
            raise _RowError(
                f"row {row}: a cell beyond the last column, {columns[-1]}", found, "quote a text with commas"
            )
        values = {name: _checked(row, name, cell) for name, cell in zip(columns, cells, strict=False)}
        number = self._number(row, values.pop(NUMBER))
        self.rows.append(SeriesRow(number, MappingProxyType(values), row))

    def _number(self, row: int, text: str) -> str:
        try:
            number = road_number(text, self.max_digits)
        except NumberError as error:
            raise _RowError(f"row {row}, column {NUMBER}: {error}") from None
        first = self.row_of_number.setdefault(int(number), row)
        if first != row:
            raise _RowError(
                f"row {row}, column {NUMBER}: a number given twice", number, f"it is in row {first} already"
            )
        return number

    def _cells(self, line: str, delimiter: str) -> list[str]:
        try:
            cells = next(csv.reader([line], delimiter=delimiter, strict=True))
        except csv.Error:
            raise _RowError(
                "a quotation mark out of place",
                f"'{line[:60]}'",
                'write "a, b" round a whole cell, and "" for a mark in it',
            ) from None
        return [cell.strip() for cell in cells]

    def _columns(self, cells: Sequence[str]) -> list[str]:
        names = list(cells)
        while names and not names[-1]:  # spreadsheets write empty columns at the end
            names.pop()
        if len(names) > MAX_COLUMNS:
            raise _RowError("the table has too many columns", f"{len(names):,}", f"at most {MAX_COLUMNS}")
        for i, name in enumerate(names, start=1):
            if not _NAME.fullmatch(name):
                found = f"'{name[:60]}'" if name else "nothing"
                raise _RowError(f"column {i} has no proper name", found, "write letters, digits and _")
            if name in names[: i - 1]:
                raise _RowError("two columns have one name", f"'{name}'", "name them apart")
        if NUMBER not in names:
            raise _RowError(f"there is no column '{NUMBER}'", ", ".join(names), nearest(NUMBER, [NUMBER]))
        return names

    def _fault(self, line: int, what: str, found: str = "", wanted: str = "") -> None:
        self.faults.append(Fault(self.file, line, what, found, wanted))

    def _done(self) -> SeriesTable:
        return SeriesTable(tuple(self.rows), tuple(self.faults))


def _checked(row: int, name: str, cell: str) -> str:
    if len(cell) > MAX_CELL:
        raise _RowError(
            f"row {row}, column {name}: the cell is too long", f"{len(cell):,} characters", f"at most {MAX_CELL}"
        )
    control = next((letter for letter in cell if unicodedata.category(letter) == "Cc"), None)
    if control:
        raise _RowError(
            f"row {row}, column {name}: a character that cannot be lettered", f"U+{ord(control):04X}", "remove it"
        )
    return cell
