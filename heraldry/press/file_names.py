"""File names that every system takes, made from the names of artworks."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from itertools import count

# Device names of DOS, which Windows reserves in every folder, with any suffix.
_RESERVED = frozenset(
    ["con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))]
)
# File systems allow 255 bytes; letters take up to four in UTF-8, and suffix and number come on top.
_MAX_LETTERS = 50


def file_stems(names: Iterable[str]) -> list[str]:
    """A file name without suffix for each name, all different on systems that ignore case.

    >>> file_stems(["Ball Signal Line", "ball/signal/line", "nul", "?"])
    ['Ball-Signal-Line', 'ball-signal-line-2', 'nul-', 'artwork']
    """
    taken: set[str] = set()
    stems = []
    for name in names:
        stem = _free(_plain(name), taken)
        taken.add(stem.casefold())
        stems.append(stem)
    return stems


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
