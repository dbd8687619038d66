"""Every letter of every alphabet of ours at the 27 corners and middles of stem, width and contrast.

What is published as sound is drawn here whole: no letter is left out. All letters of one alphabet are put into one
table of rings and judged together; letters with marks are known by their bare letter and their mark. Other corners and
stencils are drawn whole at two opposite ends of the range, narrow and heavy, wide and light.
"""

from __future__ import annotations

import itertools
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
import pytest
import shapely
from numpy.typing import NDArray

from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import LINE, Outline
from heraldry.geometry.polygons import linear_rings, nested
from heraldry.lettering.alphabets import STYLES, LetterParameters
from heraldry.lettering.alphabets.contour import Corner
from heraldry.lettering.alphabets.parametric import shape

FLATTENED = 1e-5
"""Chords of curves, in cap heights: fine enough to find a crossing of a thousandth of a stem."""

SHORTEST_EDGE = 1e-4
"""Cap heights: a tenth of a micrometre in letters 1 mm high. What is shorter is left over from a set operation."""

NARROWEST_RING = 0.012
"""Mean width of a ring (twice its area over its length) in cap heights: a narrower part or counter is a sliver."""

SHARPEST_DEG = 8.0
"""No corner, of ink or of white, is sharper: that would be a needle."""

COUNTERS = {
    **dict.fromkeys("ADOPQR04690abdegopqeÐĐÞÆþðđ№@°#Ħ", 1),
    **dict.fromkeys("B8&%æœØø", 2),
    "Œ": 1,
}
PARTS = {**dict.fromkeys(':;"!?=ij«»“”„¡¿', 2), "%": 3, "№": 3}

PARTS_OF_MARKS = {
    "\N{COMBINING DIAERESIS}": 2,
    "\N{COMBINING DOUBLE ACUTE ACCENT}": 2,
    "\N{COMBINING OGONEK}": 0,
    "\N{COMBINING CEDILLA}": 0,
}
COMMA_FOR_CEDILLA = "GKLNRgklnr"
"""Letters that wear a comma where Unicode says cedilla, as Latvian wants it."""


def expected(character: str) -> tuple[int, int]:
    """Counters and parts of a letter."""
    bare, *marks = unicodedata.normalize("NFD", character)
    counters, parts = COUNTERS.get(bare, 0), PARTS.get(bare, 1)
    for mark in marks:
        apart = mark == "\N{COMBINING CEDILLA}" and bare in COMMA_FOR_CEDILLA
        counters += mark == "\N{COMBINING RING ABOVE}"
        parts += 1 if apart else PARTS_OF_MARKS.get(mark, 1)
        parts -= bare in "ij" and unicodedata.combining(mark) == 230  # above: there the dot was
    return counters, parts


@dataclass(frozen=True, eq=False)
class Sheet:
    """All letters of an alphabet in one table, and the chords of their rings; ``owner`` is each ring's letter."""

    characters: str
    outline: Outline
    owner: NDArray[np.int64]
    rings: tuple[NDArray[np.float64], ...]

    @staticmethod
    def of(style: str, parameters: LetterParameters) -> Sheet:
        alphabet = STYLES[style]
        complete = alphabet.completed(parameters)
        characters = "".join(sorted(alphabet.letters))
        drawn = [shape(alphabet, complete, character)[0] for character in characters]
        owner = np.repeat(np.arange(len(drawn)), [len(outline.rings) - 1 for outline in drawn])
        whole = Outline.gather(drawn)
        return Sheet(characters, whole, owner, flatten(whole, FLATTENED))

    def faults(self) -> Iterator[str]:
        """What is wrong, each with its letter."""
        yield from self.rough_edges()
        for character, found in zip(self.characters, self.counted(), strict=True):
            if found != expected(character):
                yield f"{character}: {found} counters and parts, expected {expected(character)}"

    def rough_edges(self) -> Iterator[str]:
        """What is wrong with the rings as such."""
        solid = shapely.polygons(linear_rings(self.rings))
        width = 2.0 * shapely.area(solid) / shapely.length(solid)
        edges = self.outline.data[:, 3] - self.outline.data[:, 0]
        edge_of = self.owner[np.repeat(np.arange(len(self.rings)), np.diff(self.outline.rings))]
        yield from self._told("an edge is but {:.1e} long", edge_of, np.hypot(*edges.T), SHORTEST_EDGE)
        yield from self._told("a ring is but {:.1e} wide", self.owner, width, NARROWEST_RING)
        yield from self._told("a corner is but {:.1f}° wide", edge_of, self._corners_deg(), SHARPEST_DEG)
        yield from self._crossings()

    def counted(self) -> list[tuple[int, int]]:
        """Counters and parts of each letter."""
        is_hole = ~shapely.is_ccw(linear_rings(self.rings))
        return list(zip(self._count(is_hole), self._count(~is_hole), strict=True))

    def _count(self, which: NDArray[np.bool_]) -> list[int]:
        return np.bincount(self.owner[which], minlength=len(self.characters)).tolist()

    def _told(self, fault: str, owner: NDArray[np.int64], found: NDArray[np.float64], least: float) -> list[str]:
        return [f"{self.characters[owner[i]]}: {fault.format(found[i])}" for i in np.flatnonzero(found < least)]

    def _crossings(self) -> Iterator[str]:
        """Letters whose rings cross or touch themselves or one another, or do not lie in one another as they turn."""
        closed = [np.concatenate((ring, ring[:1])) for ring in self.rings]
        lines = shapely.linestrings(np.concatenate(closed), indices=np.repeat(*self._indices(closed)))
        apart = shapely.is_simple(shapely.multilinestrings(lines, indices=self.owner))
        for i, character in enumerate(self.characters):
            if not apart[i]:
                yield f"{character}: its edge crosses or touches itself"
            elif nested([self.rings[j] for j in np.flatnonzero(self.owner == i)]) is None:
                yield f"{character}: its counters do not lie in its ink"

    @staticmethod
    def _indices(arrays: list[NDArray[np.float64]]) -> tuple[NDArray[np.int64], list[int]]:
        return np.arange(len(arrays)), [len(array) for array in arrays]

    def _corners_deg(self) -> NDArray[np.float64]:
        """The angle between the edges that meet where each segment ends: 180° where it goes straight on."""
        kinds, data = self.outline.kinds, self.outline.data
        line = (kinds == LINE)[:, None]
        arrives = np.where(line, data[:, 3] - data[:, 0], data[:, 3] - data[:, 2])
        leaves = np.where(line, data[:, 3] - data[:, 0], data[:, 1] - data[:, 0])
        following = np.arange(1, len(kinds) + 1)
        following[self.outline.rings[1:] - 1] = self.outline.rings[:-1]
        leaves = leaves[following]
        cross = arrives[:, 0] * leaves[:, 1] - arrives[:, 1] * leaves[:, 0]
        return 180.0 - np.degrees(np.abs(np.arctan2(cross, (arrives * leaves).sum(axis=1))))


def points(style: str) -> Iterator[LetterParameters]:
    """The 27 corners and middles; the middle of the widths is the normal one."""
    sound = STYLES[style].sound
    stems, contrasts = (
        (sound[name].least, (sound[name].least + sound[name].most) / 2.0, sound[name].most)
        for name in ("stem", "contrast")
    )
    widths = (sound["width"].least, 1.0, sound["width"].most)
    for stem, width, contrast in itertools.product(stems, widths, contrasts):
        yield LetterParameters(stem=stem, width=width, contrast=contrast)


GRID = [
    pytest.param(style, at, id=f"{style}-{at.stem:.3g}-{at.width:.3g}-{at.contrast:.3g}")
    for style in STYLES
    for at in points(style)
]


def test_there_are_twenty_seven_points_for_each_alphabet() -> None:
    assert len(GRID) == len({param.id for param in GRID}) == 27 * len(STYLES)


@pytest.mark.parametrize(("style", "parameters"), GRID)
def test_every_letter_is_sound(style: str, parameters: LetterParameters) -> None:
    assert not list(Sheet.of(style, parameters).faults())


ENDS = {
    style: (
        LetterParameters(stem=found.sound["stem"].most, width=found.sound["width"].least),
        LetterParameters(stem=found.sound["stem"].least, width=found.sound["width"].most),
    )
    for style, found in STYLES.items()
}


@pytest.mark.parametrize("end", [0, 1])
@pytest.mark.parametrize(
    ("style", "corner"), [(style, c) for style in STYLES for c in STYLES[style].corners if c != "round"]
)
def test_every_letter_is_sound_with_other_corners(style: str, corner: Corner, end: int) -> None:
    assert not list(Sheet.of(style, replace(ENDS[style][end], corner=corner)).faults())


@pytest.mark.parametrize("end", [0, 1])
@pytest.mark.parametrize("style", STYLES)
def test_every_letter_falls_apart_cleanly_as_a_stencil(style: str, end: int) -> None:
    """No counter is left that would fall out, no bridge leaves a shred; what had none stays whole."""
    sheet = Sheet.of(style, replace(ENDS[style][end], stencil=True))
    assert not list(sheet.rough_edges())
    for character, (counters, parts) in zip(sheet.characters, sheet.counted(), strict=True):
        plain_counters, plain_parts = expected(character)
        assert counters == 0, character
        assert parts == plain_parts if plain_counters == 0 else parts >= plain_parts, character
