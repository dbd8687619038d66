"""The one door for description files: TOML 1.0 text in, nested values and the line of every key out.

The standard library's ``tomllib`` reads the values, ``key_lines`` finds the lines, and a file that is no
text, no TOML or no description is turned away here, in words for a modeller and not for a programmer. No more
of a file is read than a description may have, so that a hostile one costs neither memory nor patience.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from heraldry.describe.key_lines import MAX_NESTING, KeyPath, depth_fault, key_lines
from heraldry.errors import DescriptionError, Fault, nearest

MAX_BYTES = 1_000_000
"""A long description is some 20,000 bytes; maps and drawings are files of their own."""
MAX_KEYS = 5_000
"""Tables, keys and list items apart: what a key misses is compared with all that there are."""
MAX_SHOWN = 60
"""Characters of the user's text that a fault repeats."""
BYTE_ORDER_MARK = "\ufeff"


@dataclass(frozen=True, eq=False)
class Source:
    """A file that has been read: its values as TOML has them, and where each key stands."""

    path: Path
    data: Mapping[str, Any]
    lines: Mapping[KeyPath, int] = field(repr=False)

    def line(self, path: KeyPath) -> int:
        """The line of a key; of the nearest table around it if the key is not in the file; at least 1."""
        while path and path not in self.lines:
            path = path[:-1]
        return self.lines.get(path, 1)

    def fault(self, path: KeyPath, what: str, found: str = "", wanted: str = "") -> Fault:
        """A fault at the line of a key, or of the table where a missing key would be."""
        return Fault(str(self.path), self.line(path), what, found, wanted)


def read_toml(path: Path, kinds: Iterable[str]) -> Source:
    """Read a description file whose ``kind`` is one of ``kinds``.

    Raises DescriptionError: no such file, a folder, unreadable, too large, no UTF-8 text, no TOML, nested too
    deep, too many keys, ``kind`` missing or unknown.
    """
    return parse_toml(_decoded(path, _bytes(path)), path, kinds)


def parse_toml(text: str, path: Path, kinds: Iterable[str]) -> Source:
    """The same for text that has been read already; ``path`` is what its faults call it.

    >>> source = parse_toml('kind = "road"\\nname = "Fern Hollow"', Path("road.toml"), ["road", "herald"])
    >>> source.data["name"], source.line(("name",))
    ('Fern Hollow', 2)
    """
    text = text.removeprefix(BYTE_ORDER_MARK).replace("\r\n", "\n")
    too_deep = depth_fault(text)
    if too_deep:
        raise _refusal(path, too_deep, "brackets or dotted keys nested too deep", "", f"at most {MAX_NESTING}")
    source = Source(path, _values(text, path), key_lines(text))
    keys = sum(isinstance(where[-1], str) for where in source.lines)
    if keys > MAX_KEYS:
        raise _refusal(path, 1, "too many keys", str(keys), f"write at most {MAX_KEYS} in one file")
    _check_kind(source, sorted(kinds))
    return source


def _refusal(path: Path, line: int, what: str, found: str = "", wanted: str = "") -> DescriptionError:
    return DescriptionError([Fault(str(path), line, what, found, wanted)])


# --- the file ----------------------------------------------------------------------------------------------


def _bytes(path: Path) -> bytes:
    try:
        if path.is_dir():
            raise _refusal(path, 1, "this is a folder", "", "name a .toml file in it")
        if not path.exists():
            raise _missing(path)
        if not path.is_file():
            raise _refusal(path, 1, "this is no ordinary file", "a device or a pipe", "name a .toml file")
        with path.open("rb") as file:
            content = file.read(MAX_BYTES + 1)
    except (OSError, ValueError) as error:  # ValueError: a path with a null character
        reason = getattr(error, "strerror", None) or str(error)
        raise _refusal(path, 1, "the file cannot be read", reason.lower(), "") from None
    if len(content) > MAX_BYTES:
        size = path.stat().st_size
        raise _refusal(path, 1, "the file is too large for a description", f"{size:,} bytes", f"at most {MAX_BYTES:,}")
    return content


def _missing(path: Path) -> DescriptionError:
    beside = sorted(other.name for other in path.parent.glob("*.toml")) if path.parent.is_dir() else []
    where = f"in {path.parent}: {nearest(path.name, beside)}" if beside else "check the name and the folder"
    return _refusal(path, 1, "there is no such file", f"'{path.name}'", where)


def _decoded(path: Path, content: bytes) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _refusal(path, 1, "the text is not UTF-8", "UTF-16", "save it as UTF-8")
    null = content.find(b"\x00")
    if null >= 0:
        line = content.count(b"\n", 0, null) + 1
        raise _refusal(path, line, "this is no text file", "a byte of value 0", "name a .toml file")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        column = error.start - content.rfind(b"\n", 0, error.start)
        found = f"byte 0x{content[error.start]:02X} at place {column} of the line"
        raise _refusal(path, line, "the text is not UTF-8", found, "save it as UTF-8") from None


# --- the text ----------------------------------------------------------------------------------------------

_PLACE = re.compile(r" \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)$")
_TOO_LONG_A_NUMBER = re.compile(r"[0-9_]{1000}")
_WORD = re.compile(r"#[0-9A-Fa-f]{3,8}|[^\s,\]}#=]+(?: +[^\s,\]}#=]+)*")
_DECIMAL_COMMA = re.compile(r"([-+]?[0-9]+),([0-9]+)")
_NO_FIGURE_BEFORE_POINT = re.compile(r"([-+]?)(\.[0-9]+)")
_CURLY_MARKS = "“”„‟«»‘’"
_STRANGE_KEY = "Invalid initial character for a key part"
_WORDS_FOR: dict[str, tuple[str, str]] = {
    "Invalid statement": ("this line is no key and no table", 'write key = "value" or [table]'),
    _STRANGE_KEY: (
        "a key is missing or has a sign in it that wants quotation marks",
        "keys are the letters a to z, digits, _ and -",
    ),
    "Expected '=' after a key": ("a key without its value", 'write key = "value"'),
    "Expected newline or end of document": (
        "something is left over after the value",
        'one key a line, and text in quotation marks: key = "value"',
    ),
    "Expected ']' at the end of a table": ("a table's name is not closed", "write [name]"),
    "Expected ']]' at the end of an array": ("a table's name is not closed", "write [[name]]"),
    "Unclosed array": ("a list is not closed or lacks a comma", "write [1, 2, 3]"),
    "Unclosed inline table": ("braces are not closed or lack a comma", "write { x = 1, y = 2 } on one line"),
    "Cannot declare": ("this table is there twice", "join the two"),
    "Cannot overwrite a value": ("this key is there twice", "leave one of them out"),
    "Cannot redefine namespace": ("this table is there twice", "join the two"),
    "Cannot mutate immutable namespace": ("this table is closed already", "write its keys in one place"),
    "Duplicate inline table key": ("this key is there twice", "leave one of them out"),
    "Unescaped '\\' in a string": (
        "a backslash that stands for nothing",
        "write \\\\, or put the text in 'single' quotation marks",
    ),
    "Invalid hex value": ("a letter's number after \\u or \\U is wrong", "write \\u and 4 digits 0-9 A-F"),
    "Escaped character is not a Unicode": ("no such letter", "write \\u and the 4 digits of a letter"),
    "Unterminated string": ("text is not closed", 'end it with " (or """ over several lines)'),
    "Illegal character '\\n'": ("text is not closed on its line", 'end it with ", or write it between """'),
    "Illegal character": ("a character that may not stand in text", "write it as \\u and 4 digits"),
    'Expected "': ("text is not closed", "end it with the quotation mark it begins with"),
    "Found invalid character": ("a character that may not stand here", "leave it out"),
    "Invalid date or datetime": ("no such date", "put it in quotation marks if it is text"),
}
"""How a message of ``tomllib`` begins, and what a modeller is told instead: what is wrong, what is right."""

_SLIPS: tuple[tuple[str, re.Pattern[str], tuple[str, str]], ...] = (
    (
        "Expected ']",
        re.compile(r"^\s*\[[^\]]*\s[^\]]*\]"),
        ("a table's name has no space in it", "write it of letters, digits and _, as [shape.big_disc]"),
    ),
    (
        "Expected '='",
        re.compile(r"^\s*[\w.-]+(?:[ \t]+[\w.-]+)+[ \t]*="),
        ("a key has no space in it", "write it of letters, digits and _, as big_disc = 3"),
    ),
    (
        _STRANGE_KEY,
        re.compile(r"\{[^}]*$"),
        ("braces go on over the end of their line", "write { x = 1, y = 2 } on one line"),
    ),
    (
        "Expected newline or end",
        re.compile(r"""=\s*(?:"[^"]*[0-9]"[^"]*"|'[^']*[0-9]'[^']*')"""),
        (
            "a foot or inch mark within the same quotation marks, which ends the text",
            "write ft and in, or put it between three single marks: '''5' 6\" full'''",
        ),
    ),
)
"""Slips that a message of ``tomllib`` alone does not tell: how it begins, what its line looks like, and the words."""


def _values(text: str, path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise DescriptionError([_syntax_fault(text, path, str(error))]) from None
    except ValueError:  # Python converts no whole number of more than 4,300 figures
        number = _TOO_LONG_A_NUMBER.search(text)
        line = text.count("\n", 0, number.start() if number else 0) + 1
        raise _refusal(path, line, "a number is too long", "more than 4,300 figures", "") from None


def _syntax_fault(text: str, path: Path, message: str) -> Fault:
    lines = text.split("\n")
    place = _PLACE.search(message)
    if place and place["line"]:
        line, column = int(place["line"]), int(place["column"])
    else:
        line = len(text.rstrip().split("\n"))
        column = len(lines[line - 1]) + 1
    what, wanted = _in_words(_PLACE.sub("", message), lines[line - 1], column - 1)
    found = _shown(lines[line - 1].strip())
    return Fault(str(path), line, what, f"'{found}'" if found else "the end of the file", wanted)


def _in_words(message: str, line: str, start: int) -> tuple[str, str]:
    """What is wrong and what would be right, for a message and the place in the line that it is about."""
    if message.startswith("Invalid value"):
        return _of_bare_value(line[start:])
    value = line.partition("=")[2].lstrip()
    if message.startswith("Expected newline or end") and value[:1] not in "\"'[{":
        return _of_bare_value(value)
    if message.startswith("Expected") and not line[start : start + 1].isascii():
        return _WORDS_FOR[_STRANGE_KEY]
    for beginning, slip, words in _SLIPS:
        if message.startswith(beginning) and slip.search(line):
            return words
    for beginning, words in _WORDS_FOR.items():
        if message.startswith(beginning):
            return words
    return f"this is not TOML ({message[:MAX_SHOWN]})", 'write key = "value"'


def _of_bare_value(written: str) -> tuple[str, str]:
    """The words for a value without quotation marks that is no number: ``ochre``, ``#cc9900``, ``2,5``."""
    if comma := _DECIMAL_COMMA.match(written):
        return "a comma between figures", f"write {comma[1]}.{comma[2]} with a decimal point"
    if point := _NO_FIGURE_BEFORE_POINT.match(written):
        return "a number begins with a figure", f"write {point[1]}0{point[2]}"
    word = _WORD.match(written)
    if not word:
        return "a value is missing", 'write key = "text" or key = 2.6'
    return "text needs straight quotation marks", f'write "{_shown(word[0].strip(_CURLY_MARKS))}"'


def _shown(text: str) -> str:
    """The beginning of a user's text, fit for a terminal: what does not print is spelled out."""
    return "".join(sign if sign.isprintable() else f"<U+{ord(sign):04X}>" for sign in text[:MAX_SHOWN])


# --- the kind ----------------------------------------------------------------------------------------------


def _check_kind(source: Source, kinds: list[str]) -> None:
    kind = source.data.get("kind")
    if kind in kinds:
        return
    if kind is None:
        fault = source.fault((), "'kind' is missing", "", f'begin with kind = "…"; known: {", ".join(kinds)}')
    elif not isinstance(kind, str):
        fault = source.fault(("kind",), "'kind' is no text", _shown(str(kind)), f'write kind = "{kinds[0]}"')
    else:
        fault = source.fault(("kind",), "unknown kind", f"'{_shown(kind)}'", nearest(kind, kinds))
    raise DescriptionError([fault])
