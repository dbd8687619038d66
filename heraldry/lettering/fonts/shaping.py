"""Text becomes placed glyphs: HarfBuzz chooses them, kerns them and sets marks on their bases.

A ``Shape`` is one cluster of HarfBuzz: what moves as one letter when a line is spaced or bent, be it a
letter, a ligature, or a base with its marks. Lengths are font units, from the start of the line.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import groupby, pairwise
from typing import Any

from heraldry.errors import LetteringError
from heraldry.lettering.fonts.files import Face
from heraldry.lettering.fonts.who_has import who_has

Part = tuple[int, float, float]
"""A glyph number, and where it lies from the origin of its shape."""

LETTERS_STAY_APART: Mapping[str, bool] = {"liga": False, "clig": False}
"""Ligatures are off unless asked for: lettering is tracked and bent, a ligature would stay tight in it."""

NO_GLYPH = 0
"""Glyph 0 is the box that stands for whatever a font lacks (OpenType specification, 'Recommendations')."""


@dataclass(frozen=True)
class Shape:
    """One letter of shaped text; ``advance`` is its own, before kerning, ``x`` is after kerning."""

    text: str
    parts: tuple[Part, ...]
    x: float
    y: float
    advance: float


@dataclass(frozen=True, eq=False)
class Shaper:
    """HarfBuzz set up for a face at one place of its axes."""

    face: Face
    location: tuple[tuple[str, float], ...] = ()

    @cached_property
    def font(self) -> Any:
        """HarfBuzz's font, scaled to font units."""
        import uharfbuzz as hb  # imported where used: start-up time

        font = hb.Font(hb.Face(self.face.data, self.face.number))
        if self.location:
            font.set_variations(dict(self.location))
        return font

    def shape(self, text: str, features: Mapping[str, bool | int]) -> tuple[tuple[Shape, ...], float]:
        """The letters of one line in visual order, and the whole advance.

        Raises LetteringError for a letter that the font lacks, and for a text of several lines.
        """
        check_one_line(text)
        import uharfbuzz as hb  # imported where used: start-up time

        buffer = hb.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        hb.shape(self.font, buffer, dict(features))
        infos, positions = buffer.glyph_infos or (), buffer.glyph_positions or ()
        self._check_all_there(text, infos)
        shapes = tuple(self._shapes(text, infos, positions))
        return shapes, float(sum(position.x_advance for position in positions))

    def glyph(self, letter: str) -> int | None:
        """The number of a letter's plain glyph, if the font has one."""
        found = self.font.get_nominal_glyph(ord(letter))
        return int(found) if found else None

    def advance(self, glyph: int) -> float:
        """A glyph's own advance, without kerning."""
        return float(self.font.get_glyph_h_advance(glyph))

    def _shapes(self, text: str, infos: Any, positions: Any) -> Iterator[Shape]:
        ends = _cluster_ends(text, infos)
        pen = 0.0
        for cluster, members in groupby(zip(infos, positions, strict=True), key=lambda pair: pair[0].cluster):
            glyphs = list(members)
            first = glyphs[0][1]
            x, y = pen + first.x_offset, float(first.y_offset)
            parts: list[Part] = []
            own = 0.0
            for info, position in glyphs:
                parts.append((info.codepoint, pen + position.x_offset - x, position.y_offset - y))
                pen += position.x_advance
                own += self.advance(info.codepoint) if position.x_advance else 0.0
            letters = text[cluster : ends[cluster]]
            yield Shape(letters, tuple(parts), x, y, own)

    def _check_all_there(self, text: str, infos: Any) -> None:
        ends = _cluster_ends(text, infos)
        lacking = [text[info.cluster : ends[info.cluster]] for info in infos if info.codepoint == NO_GLYPH]
        if lacking:
            letters = ", ".join(f"{letter!r} ({_described(letter)})" for letter in dict.fromkeys(lacking))
            known = who_has("".join(dict.fromkeys("".join(lacking))))
            raise LetteringError(f"the font {self.face.name} has no letter {letters}, which {text!r} wants; {known}")


def check_one_line(text: str) -> None:
    """Raise LetteringError for a text that no single line can show."""
    breaks = [letter for letter in text if unicodedata.category(letter) in {"Cc", "Zl", "Zp", "Cs"}]
    if breaks:
        raise LetteringError(f"one line of text cannot hold {breaks[0]!r} ({_described(breaks[0])})")


def _cluster_ends(text: str, infos: Any) -> dict[int, int]:
    return dict(pairwise([*sorted({info.cluster for info in infos}), len(text)]))


def _described(letters: str) -> str:
    return " + ".join(f"U+{ord(letter):04X} {unicodedata.name(letter, '')}".rstrip() for letter in letters)
