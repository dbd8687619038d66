"""The names of the bundled areas, and how a word finds them.

Codes are ISO 3166-1 letters for countries (two or three), ISO 3166-2 for the states of the United States
(``US-VT``), and the Census Bureau's five digits for counties. A word is compared without regard to capitals
and accents: first with codes and whole names, then with beginnings, then with insides, and when nothing
holds it, with names spelt nearly so.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from pathlib import Path

DATA_DIR = Path(__file__).parent / "data"
NAMES_FILE = "names.tsv"

# How alike a misspelt name must be to be offered (difflib's ratio), and how many are offered.
LIKENESS_MIN, LIKE_NAMES_MAX = 0.7, 5


@dataclass(frozen=True)
class AreaName:
    """One line of the index; ``detail`` tells namesakes apart: a county's state, a country's letters."""

    code: str
    kind: str
    name: str
    detail: str
    also: tuple[str, ...] = ()
    """Other names it goes by on maps."""


def write_names(names: Iterable[AreaName], path: Path) -> None:
    """Write the index as tab-separated text, in the order of codes."""
    lines = [
        "\t".join((area.code, area.kind, area.name, area.detail, *area.also))
        for area in sorted(names, key=lambda area: (area.kind, area.code))
    ]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


def read_names(path: Path) -> tuple[AreaName, ...]:
    """Read such an index."""
    rows = [line.split("\t") for line in path.read_text(encoding="utf-8").splitlines()]
    return tuple(AreaName(code, kind, name, detail, tuple(also)) for code, kind, name, detail, *also in rows)


@cache
def all_names() -> tuple[AreaName, ...]:
    """Every bundled area; counties come with their state's name as detail."""
    names = read_names(DATA_DIR / NAMES_FILE)
    states = {area.code: area.name for area in names if area.kind == "state"}
    return tuple(
        AreaName(area.code, area.kind, area.name, states.get(area.detail, area.detail), area.also) for area in names
    )


@cache
def by_code() -> dict[str, AreaName]:
    """Every code, capitals only, with its area; a country's three letters lead to it as well."""
    table = {area.code.upper(): area for area in all_names()}
    long = {area.detail: area for area in all_names() if area.kind == "country" and len(area.detail) == 3}
    return {**long, **table}


def folded(text: str) -> str:
    """Small letters without accents, for comparing.

    >>> folded("Coös"), folded("Åland Islands")
    ('coos', 'aland islands')
    """
    parts = unicodedata.normalize("NFKD", text.casefold())
    return "".join(mark for mark in parts if not unicodedata.combining(mark)).strip()


def find(word: str) -> list[AreaName]:
    """The areas a word may mean, best first.

    >>> [(area.code, area.detail) for area in find("coos")][:2]
    [('33007', 'New Hampshire'), ('41011', 'Oregon')]
    """
    wanted = folded(word)
    if not wanted:
        return []
    lettered = [by_code().get(code) for code in (word.strip().upper(), f"US-{word.strip().upper()}")]
    exact = [area for area in lettered if area]
    return [*exact, *(area for area in _holding(wanted) if area not in exact)] or _like(wanted)


def _holding(wanted: str) -> list[AreaName]:
    """Areas whose names hold the word: whole names, then beginnings, then insides; large kinds first."""
    ranked = []
    for area, texts in _folded_names():
        ranks = [_rank(wanted, text) for text in texts if wanted in text]
        if ranks:
            ranked.append((min(ranks), _KIND_ORDER[area.kind], texts[0], area.detail, area.code, area))
    return [row[-1] for row in sorted(ranked, key=lambda row: row[:-1])]


def _like(wanted: str) -> list[AreaName]:
    texts = {text: area for area, names in _folded_names() for text in names}
    close = get_close_matches(wanted, list(texts), LIKE_NAMES_MAX, LIKENESS_MIN)
    return [area for text in close for area, names in _folded_names() if text in names]


def _rank(wanted: str, text: str) -> int:
    return 0 if text == wanted else 1 if text.startswith(wanted) else 2 if f" {wanted}" in text else 3


_KIND_ORDER = {"country": 0, "state": 1, "county": 2}


@cache
def _folded_names() -> Sequence[tuple[AreaName, tuple[str, ...]]]:
    return tuple((area, tuple(folded(text) for text in (area.name, *area.also))) for area in all_names())
