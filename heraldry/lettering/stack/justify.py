"""A line brought to a width: by tracking as far as that looks well, then by wider or narrower letters.

Stems are never squeezed: letters of another width are drawn anew by their alphabet, which keeps them as thick as they
were. What the letters' width does not reach to the last hundredth, tracking does. Millimetres.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heraldry.errors import LetteringError
from heraldry.lettering.adjusting import Widening, widened
from heraldry.lettering.alphabet import Alphabet, SetLine
from heraldry.lettering.setting import fit_to_width
from heraldry.lettering.setting.lay import ink_width

LOOSEST_CAPS = 0.12
"""Tracking in cap heights that a word bears before it falls apart. It is never tightened: where whites are right, less
of them crowds a word. Common practice, no source."""

WIDTH_ROUNDS = 8
"""Ink widens nearly in a straight line with the letters' width, so that the secant meets it in three rounds or four."""

WIDTH_REACHED_SHARE = 1e-3
"""Letters are drawn for an ink short of the width by this share, and found to half of it; tracking does the rest."""

Setter = Callable[[Alphabet], SetLine]


@dataclass(frozen=True, eq=False)
class Justified:
    """A line of the width asked for, or as near to it as letters and tracking go.

    ``widened`` is how many times as wide as usual its letters are.
    """

    line: SetLine
    widened: float
    notes: tuple[str, ...] = ()


def justified(set_line: Setter, alphabet: Alphabet, width_mm: float) -> Justified:
    """A line whose ink is ``width_mm`` wide; ``set_line`` sets it in an alphabet."""
    if not width_mm > 0:
        raise LetteringError(f"a line is justified to a width above zero, found {width_mm:g} mm")
    line = set_line(alphabet)
    wanted = _ink_to_draw(line, width_mm)
    factor = 1.0
    if wanted is not None and isinstance(alphabet, Widening):
        factor = factor_for(set_line, alphabet, wanted)
        line = set_line(widened(alphabet, factor)) if factor != 1.0 else line
    fitted = fit_to_width(line, width_mm)
    return Justified(fitted.line, factor, fitted.notes)


def factor_for(set_line: Setter, alphabet: Alphabet, ink_mm: float) -> float:
    """How many times as wide letters are when the ink of a line, untracked, is so wide; the nearest there is."""
    factor, ink = 1.0, ink_width(set_line(alphabet))
    slope = ink  # ink for each whole factor: at first as if letters were white alone, then as found
    for _ in range(WIDTH_ROUNDS):
        if abs(ink - ink_mm) <= WIDTH_REACHED_SHARE / 2 * ink_mm:
            break
        tried = factor + (ink_mm - ink) / slope
        try:
            found = ink_width(set_line(widened(alphabet, tried)))
        except LetteringError:
            return _farthest(set_line, alphabet, factor, tried)
        slope = (found - ink) / (tried - factor)
        factor, ink = tried, found
    return factor


def _farthest(set_line: Setter, alphabet: Alphabet, able: float, unable: float) -> float:
    """The factor nearest to one that is out of range."""
    for _ in range(WIDTH_ROUNDS):
        middle = (able + unable) / 2
        try:
            set_line(widened(alphabet, middle))
            able = middle
        except LetteringError:
            unable = middle
    return able


def _ink_to_draw(line: SetLine, width_mm: float) -> float | None:
    """The untracked ink that letters are to be drawn for; None where tracking alone does it.

    It is a hair short of the width, so that there is always something left to track, and nothing to tighten.
    """
    loosest = max(len(line.glyphs) - 1, 0) * LOOSEST_CAPS * line.cap_height_mm
    missing = width_mm - ink_width(line)
    if 0.0 <= missing <= loosest:
        return None
    return (width_mm - (loosest if missing > 0 else 0.0)) * (1.0 - WIDTH_REACHED_SHARE)
