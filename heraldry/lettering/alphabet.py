"""What an alphabet is, wherever its letters come from: drawn by our own code, or read from a font file.

An alphabet sets a text as one ``SetLine``: letters with their advances, kerned, on a straight base line. How
that line is then laid (straight, round a circle, along a path) is none of the alphabet's business.
Millimetres at finished model size, y up, base line at y = 0.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal, Protocol

from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline

Figures = Literal["proportional", "tabular"]


@dataclass(frozen=True, eq=False)
class SetGlyph:
    """One letter in a set line: its outline about its own origin, and where that origin lies."""

    text: str
    outline: Outline
    x_mm: float
    advance_mm: float
    y_mm: float = 0.0

    @property
    def placed(self) -> Outline:
        """The outline where the straight line has it."""
        return self.outline.transformed(Affine.move(self.x_mm, self.y_mm))


@dataclass(frozen=True, eq=False)
class SetLine:
    """A line of set text that knows its advances; ``advance_mm`` reaches from origin to end."""

    glyphs: tuple[SetGlyph, ...]
    advance_mm: float
    cap_height_mm: float

    def tracked(self, extra_mm: float) -> SetLine:
        """The line with ``extra_mm`` more (or, negative, less) white between each two letters."""
        glyphs = tuple(replace(glyph, x_mm=glyph.x_mm + i * extra_mm) for i, glyph in enumerate(self.glyphs))
        gaps = max(len(self.glyphs) - 1, 0)
        return SetLine(glyphs, self.advance_mm + gaps * extra_mm, self.cap_height_mm)

    @property
    def outline(self) -> Outline:
        """All letters on the straight base line, gathered without a set operation."""
        return Outline.gather(glyph.placed for glyph in self.glyphs)


class Alphabet(Protocol):
    """A set of letter shapes that can set a line of text."""

    @property
    def name(self) -> str:
        """What the user calls it."""
        ...

    def set_line(self, text: str, cap_height_mm: float, figures: Figures = "proportional") -> SetLine:
        """Set one line of text, kerned, at a cap height; raises LetteringError for a missing letter."""
        ...

    def with_stem(self, stem: float) -> Alphabet:
        """The same alphabet with uprights of another thickness, in cap heights; LetteringError out of range."""
        ...
