"""File names that every system takes, made from the names of artworks."""

from __future__ import annotations

import unicodedata
from itertools import count

# Device names of DOS, which Windows reserves in every folder, with any suffix.
_RESERVED = frozenset(["con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))])
# File systems allow 255 bytes; letters take up to four in UTF-8, and suffix and number come on top.
_MAX_LETTERS = 50


class FileStems:
    """File names without suffix for names that come one by one, all different on systems that ignore case.

    >>> stems = FileStems()
    >>> [stems.next(name) for name in ("Ball Signal Line", "ball/signal/line", "nul", "?")]
    ['Ball-Signal-Line', 'ball-signal-line-2', 'nul-', 'artwork']
    """

    def __init__(self) -> None:
        self._taken: set[str] = set()

    def next(self, name: str) -> str:
        """The file name for one more name."""
        stem = _free(_plain(name), self._taken)
        self._taken.add(stem.casefold())
        return stem


def _plain(name: str) -> str:
    """Letters and digits of any script and ``_ - .`` stay; everything between them becomes a hyphen."""
    composed = unicodedata.normalize("NFC", name)
    kept = "".join(letter if letter.isalnum() or letter in "_-." else " " for letter in composed)
    stem = "-".join(kept.split())[:_MAX_LETTERS].strip(".-")
    if not stem:
        return "artwork"
    return stem + "-" if stem.partition(".")[0].lower() in _RESERVED else stem


def _free(stem: str, taken: set[str]) -> str:
    if stem.casefold() not in taken:
        return stem
    return next(f"{stem}-{n}" for n in count(2) if f"{stem}-{n}".casefold() not in taken)
