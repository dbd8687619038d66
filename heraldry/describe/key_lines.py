"""On which line of a TOML text each of its keys stands.

The standard library reads TOML well but forgets where. This room walks over the text a second time, once it
is known to be valid, and notes lines only: it steps over values with one pattern each and never reads them.
``depth_fault`` goes first, over text that may be anything: it finds brackets and dotted keys nested so deep
that readers, ours and others, would run out of stack or of patience.

The grammar is that of TOML 1.0.0 (toml.io); paths are tuples of keys, with numbers for the items of lists.
"""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right

KeyPath = tuple[str | int, ...]

MAX_NESTING = 40
"""Brackets inside one another, or dots in one key; descriptions need 5."""

_BASIC = r'"(?:[^"\\\n]|\\.)*+"'
_LITERAL = r"'[^'\n]*+'"
_BASIC_BLOCK = r'"""(?:[^"\\]|\\.|"(?!""))*+"{3,5}'
_LITERAL_BLOCK = r"'''(?:[^']|'(?!''))*+'{3,5}"
_SCALAR = r"[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9][^\s,\]}#]*+|[^\s,\]}#]++"
_VALUE = re.compile(f"{_BASIC_BLOCK}|{_LITERAL_BLOCK}|{_BASIC}|{_LITERAL}|{_SCALAR}", re.DOTALL)
_KEY = re.compile(rf"[A-Za-z0-9_-]+|{_BASIC}|{_LITERAL}")
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_EQUALS = re.compile(r"[ \t]*=[ \t]*")
_BLANK = re.compile(r"[ \t]*+")
_FILLING = re.compile(r"(?:\s|#[^\n]*+)*+")
"""What may stand between statements, and between the items of a list: white, line ends, comments."""


def key_lines(text: str) -> dict[KeyPath, int]:
    """The line, from 1, of every key, table and list item of a valid TOML text.

    >>> key_lines('unit = "mm"\\n[shape.line]\\nroute = [\\n  1,\\n  2]\\n')[("shape", "line", "route", 1)]
    5
    """
    return _Walk(text).statements()


class _Walk:
    """Walks over one valid text from start to end, noting lines."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.line_ends = [end.start() for end in re.finditer("\n", text)]
        self.lines: dict[KeyPath, int] = {}
        self.rows: dict[KeyPath, int] = {}
        """How many tables each array of tables has so far."""

    def statements(self) -> dict[KeyPath, int]:
        table: KeyPath = ()
        self.skip(_FILLING)
        while self.at < len(self.text):
            if self.text[self.at] == "[":
                table = self.header()
            else:
                self.key_and_value(table)
            self.skip(_FILLING)
        return self.lines

    def header(self) -> KeyPath:
        line = self.line()
        brackets = 2 if self.text.startswith("[[", self.at) else 1
        self.at += brackets
        self.skip(_BLANK)
        *outer, last = self.dotted_key()
        self.skip(_BLANK)
        self.at += brackets
        path = (*self.note_outer((), outer, line), last)
        self.note(path, line, implied=False)
        return self.next_row(path, line) if brackets == 2 else path

    def next_row(self, path: KeyPath, line: int) -> KeyPath:
        row = self.rows.get(path, 0)
        self.rows[path] = row + 1
        self.note((*path, row), line, implied=False)
        return (*path, row)

    def current_row(self, path: KeyPath) -> KeyPath:
        """The latest table of an array of tables; any other path is itself."""
        return (*path, self.rows[path] - 1) if path in self.rows else path

    def key_and_value(self, table: KeyPath) -> None:
        line = self.line()
        *outer, last = self.dotted_key()
        self.skip(_EQUALS)
        path = (*self.note_outer(table, outer, line), last)
        self.note(path, line, implied=False)
        self.value(path)

    def note_outer(self, table: KeyPath, outer: list[str], line: int) -> KeyPath:
        """Note the tables that a dotted key passes through, and return the innermost."""
        path = table
        for key in outer:
            self.note((*path, key), line, implied=True)
            path = self.current_row((*path, key))
        return path

    def note(self, path: KeyPath, line: int, implied: bool) -> None:
        """A key written out has its own line; one that is only passed through keeps the first."""
        if not implied and path not in self.rows:
            self.lines[path] = line
        else:
            self.lines.setdefault(path, line)

    def value(self, path: KeyPath) -> None:
        opening = self.text[self.at]
        if opening == "[":
            self.list_items(path)
        elif opening == "{":
            self.inline_table(path)
        else:
            self.skip(_VALUE)

    def list_items(self, path: KeyPath) -> None:
        self.at += 1
        self.skip(_FILLING)
        item = 0
        while self.text[self.at] != "]":
            self.note((*path, item), self.line(), implied=False)
            self.value((*path, item))
            self.skip(_FILLING)
            self.at += self.text[self.at] == ","
            self.skip(_FILLING)
            item += 1
        self.at += 1

    def inline_table(self, path: KeyPath) -> None:
        self.at += 1
        self.skip(_FILLING)
        while self.text[self.at] != "}":
            self.key_and_value(path)
            self.skip(_FILLING)
            self.at += self.text[self.at] == ","
            self.skip(_FILLING)
        self.at += 1

    def dotted_key(self) -> list[str]:
        keys = [self.key()]
        while dot := _DOT.match(self.text, self.at):
            self.at = dot.end()
            keys.append(self.key())
        return keys

    def key(self) -> str:
        start = self.at
        self.skip(_KEY)
        written = self.text[start : self.at]
        return str(tomllib.loads(f"key = {written}")["key"]) if written[0] in "\"'" else written

    def skip(self, pattern: re.Pattern[str]) -> None:
        found = pattern.match(self.text, self.at)
        if found:
            self.at = found.end()

    def line(self) -> int:
        return bisect_right(self.line_ends, self.at - 1) + 1


_LEAPS = re.compile(
    r"#[^\n]*"
    r'|"""(?:[^"\\]|\\.|"(?!""))*+(?:"{3,5}|)'
    r"|'''(?:[^']|'(?!''))*+(?:'{3,5}|)"
    r'|"(?:[^"\\\n]|\\.)*+"?'
    r"|'[^'\n]*+'?"
    r"|[\[\]{}.,=\n]",
    re.DOTALL,
)
"""Comments and strings, closed or not, which are leapt over; and the signs that count."""


def depth_fault(text: str) -> int | None:
    """The line, in any text, where brackets or dotted keys pass ``MAX_NESTING``; None if nowhere."""
    depth = dots = 0
    for leap in _LEAPS.finditer(text):
        sign = leap[0]
        if sign in "[{":
            depth += 1
        elif sign in "]}":
            depth = max(depth - 1, 0)
        dots = dots + 1 if sign == "." else dots if sign[0] in "\"'" else 0
        if depth > MAX_NESTING or dots > MAX_NESTING:
            return text.count("\n", 0, leap.start()) + 1
    return None
