"""A line composed of runs: plain letters, large initials, fractions, superior letters, on one base line."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from heraldry.errors import LetteringError
from heraldry.lettering.adjusting import own_stem, with_stem_near
from heraldry.lettering.alphabet import Alphabet, SetGlyph, SetLine
from heraldry.lettering.stack.built import built_fraction, slanted_fraction, superior
from heraldry.lettering.stack.manner import Manner
from heraldry.lettering.stack.runs import Kind, Run, runs

SetRun = Callable[[Run, Alphabet, float, Manner], SetLine]

INITIAL_STEM_POWER = 0.5
"""A large initial's stem grows by this power of its height: in step with it, it would be a blot among the others;
not at all, a ghost. Common practice, no source."""


def composed(text: str, alphabet: Alphabet, cap_mm: float, manner: Manner) -> SetLine:
    """Set one line in a manner; raises LetteringError for a missing letter and a line without letters."""
    if not text.strip():
        raise LetteringError("a line of lettering has no letters")
    glyphs: list[SetGlyph] = []
    place, before = 0.0, Run("plain", "")
    for run in runs(text, manner):
        line = _SET[run.kind](run, alphabet, cap_mm, manner)
        place += _kern(before, run, alphabet, cap_mm)
        glyphs.extend(replace(glyph, x_mm=glyph.x_mm + place) for glyph in line.glyphs)
        place, before = place + line.advance_mm, run
    return SetLine(tuple(glyphs), place, cap_mm)


def _plain(run: Run, alphabet: Alphabet, cap_mm: float, manner: Manner) -> SetLine:
    return alphabet.set_line(run.text, cap_mm, manner.figures)


def _initial(run: Run, alphabet: Alphabet, cap_mm: float, manner: Manner) -> SetLine:
    ratio = manner.large_initials
    fitting = with_stem_near(alphabet, own_stem(alphabet) * ratio ** (INITIAL_STEM_POWER - 1.0))
    line = fitting.set_line(run.text, cap_mm * ratio)
    down = cap_mm * (ratio - 1.0) if manner.level == "heads" else 0.0
    return replace(line, glyphs=tuple(replace(glyph, y_mm=glyph.y_mm - down) for glyph in line.glyphs))


def _fraction(run: Run, alphabet: Alphabet, cap_mm: float, manner: Manner) -> SetLine:
    build = slanted_fraction if manner.fractions == "slanted" else built_fraction
    return _single(build(run.text, alphabet, cap_mm), cap_mm)


def _superior(run: Run, alphabet: Alphabet, cap_mm: float, manner: Manner) -> SetLine:
    return _single(superior(run.text, alphabet, cap_mm, manner.superior_bar), cap_mm)


def _single(glyph: SetGlyph, cap_mm: float) -> SetLine:
    return SetLine((glyph,), glyph.advance_mm, cap_mm)


_SET: dict[Kind, SetRun] = {"plain": _plain, "initial": _initial, "fraction": _fraction, "superior": _superior}


def _kern(before: Run, run: Run, alphabet: Alphabet, cap_mm: float) -> float:
    """What the alphabet adds between the last letter of a run and the first of the next, at the common size."""
    if not before.text or not {before.kind, run.kind} <= {"plain", "initial"}:
        return 0.0
    one, other = before.text[-1], run.text[0]
    both = alphabet.set_line(one + other, cap_mm).advance_mm
    return both - alphabet.set_line(one, cap_mm).advance_mm - alphabet.set_line(other, cap_mm).advance_mm
