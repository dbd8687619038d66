"""Lines one over another, and letters one under another; millimetres, the first base line at y = 0."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, partial
from typing import Literal

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabet import Alphabet, SetLine
from heraldry.lettering.setting.lay import ink_reach
from heraldry.lettering.stack.composed import composed
from heraldry.lettering.stack.justify import justified
from heraldry.lettering.stack.manner import PLAIN, Manner

Align = Literal["left", "centre", "right", "justified"]

LEADING_CAPS = 1.3
"""From base line to base line in cap heights, where nothing else is asked: ISO 3098-0:1997, lettering type B with
capitals only, b3 = 13/10 h."""

LETTER_GAP_CAPS = 0.22
"""White between letters that stand one under another, in cap heights: as much as looks like one word. Common
practice, no source."""

_HELD = {"left": 0.0, "centre": 0.5, "right": 1.0, "justified": 0.0}


@dataclass(frozen=True, eq=False)
class Stacked:
    """Lines in their places, each a tuple of its letters, the first line on top."""

    lines: tuple[tuple[Outline, ...], ...]
    notes: tuple[str, ...] = ()

    @cached_property
    def outline(self) -> Outline:
        """All letters of all lines, gathered without a set operation."""
        return Outline.gather(letter for line in self.lines for letter in line)


def stacked(lines: Sequence[SetLine], leading_mm: float, align: Align = "centre") -> Stacked:
    """Lines under one another, the left end, the middle or the right end of their ink at x = 0."""
    if not leading_mm > 0:
        raise LetteringError(f"the leading from base line to base line is {leading_mm:g} mm, it must be more than 0")
    return Stacked(tuple(_placed(line, -i * leading_mm, align) for i, line in enumerate(lines)))


def _placed(line: SetLine, base_mm: float, align: Align) -> tuple[Outline, ...]:
    begin, end = ink_reach(line)
    home = Affine.move(-(begin + (end - begin) * _HELD[align]), base_mm)
    return tuple(glyph.placed.transformed(home) for glyph in line.glyphs)


def set_stack(
    texts: Sequence[str],
    alphabet: Alphabet,
    cap_mm: float,
    align: Align = "centre",
    leading_mm: float | None = None,
    width_mm: float | None = None,
    tracking_mm: float = 0.0,
    manner: Manner = PLAIN,
) -> Stacked:
    """Texts set and stacked; ``justified`` ones to a width, or to that of the widest.

    Raises LetteringError for a missing letter, an empty line, a leading or a width that is not above zero.
    """
    leading = LEADING_CAPS * cap_mm if leading_mm is None else leading_mm
    lines = [composed(text, alphabet, cap_mm, manner).tracked(tracking_mm) for text in texts]
    if align != "justified":
        return stacked(lines, leading, align)
    width = max(end - begin for begin, end in map(ink_reach, lines)) if width_mm is None else width_mm
    filled = [justified(partial(composed, text, cap_mm=cap_mm, manner=manner), alphabet, width) for text in texts]
    notes = tuple(f"'{text}': {note}" for text, fit in zip(texts, filled, strict=True) for note in fit.notes)
    return Stacked(stacked([fit.line for fit in filled], leading, align).lines, notes)


def upright_stack(text: str, alphabet: Alphabet, cap_mm: float, gap_mm: float | None = None) -> Stacked:
    """Letters one under another, each centred by its ink; a space leaves half a letter free.

    Base lines are evenly apart, so that round letters may reach over as they do in a line.
    """
    if not text.strip():
        raise LetteringError("a line of lettering has no letters")
    pitch = cap_mm + (LETTER_GAP_CAPS * cap_mm if gap_mm is None else gap_mm)
    letters: list[tuple[Outline, ...]] = []
    base = 0.0
    for character in text.strip():
        if character.isspace():
            base -= pitch / 2
            continue
        outline = alphabet.set_line(character, cap_mm).outline
        letters.append((outline.transformed(Affine.move(-bounds(outline).centre.x, base)),))
        base -= pitch
    return Stacked(tuple(letters))
