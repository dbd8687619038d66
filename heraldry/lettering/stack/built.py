"""Fractions and superior letters as one piece of lettering each; millimetres, base line at y = 0.

The small figures and letters are drawn with stems as near to those beside them as their alphabet goes, for merely
reduced they would look faint. All shares are of the cap height, and taken from the look of it: common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Sequence

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.lettering.adjusting import own_stem, with_stem_near
from heraldry.lettering.alphabet import Alphabet, SetGlyph

BUILT_FIGURE = 0.48
SLANTED_FIGURE = 0.56
SUPERIOR_LETTER = 0.60
"""The cap heights of the small figures and letters."""

SMALL_STEM = 0.78
"""Their stems, in the stems beside them."""

BAR_OF_STEM = 0.65
"""A bar's thickness in stems: a little less than a crossbar, since it is no stroke of a letter."""

CLEAR = 0.09
"""White between a bar and what stands on it."""

OVERHANG = 0.04
"""How far a level bar reaches beyond the wider of its figures."""

BEARING = 0.10
"""White before and after a fraction or a superior letter."""

SLANT_RUN = 0.40
"""How far a slanted bar leans over the cap height."""


def built_fraction(text: str, alphabet: Alphabet, cap_mm: float) -> SetGlyph:
    """``3/4`` as 3 over a level bar over 4, its middle at half the cap height."""
    over, under = (_small(part, alphabet, cap_mm, BUILT_FIGURE) for part in text.split("/"))
    thick, clear = _bar_thickness(alphabet, cap_mm), CLEAR * cap_mm
    half = max(bounds(over).width, bounds(under).width) / 2 + OVERHANG * cap_mm
    foot, head = (cap_mm - thick) / 2, (cap_mm + thick) / 2
    bar = _quadrilateral((-half, foot), (half, foot), (half, head), (-half, head))
    figures = (
        _put(over, -bounds(over).centre.x, head + clear - bounds(over).bottom),
        _put(under, -bounds(under).centre.x, foot - clear - bounds(under).top),
    )
    return _glyph(text, [*figures, bar], cap_mm)


def slanted_fraction(text: str, alphabet: Alphabet, cap_mm: float) -> SetGlyph:
    """``3/4`` as a 3 hung from the cap line, a slanting bar, and a 4 on the base line."""
    over, under = (_small(part, alphabet, cap_mm, SLANTED_FIGURE) for part in text.split("/"))
    run, clear = SLANT_RUN * cap_mm, CLEAR * cap_mm
    wide = _bar_thickness(alphabet, cap_mm) * (1.0 + SLANT_RUN**2) ** 0.5
    bar = _quadrilateral((0.0, 0.0), (wide, 0.0), (wide + run, cap_mm), (run, cap_mm))
    foot_of_over = cap_mm - bounds(over).height
    right_of_over = run * foot_of_over / cap_mm - clear
    left_of_under = wide + run * bounds(under).height / cap_mm + clear
    figures = (
        _put(over, right_of_over - bounds(over).right, cap_mm - bounds(over).top),
        _put(under, left_of_under - bounds(under).left, -bounds(under).bottom),
    )
    return _glyph(text, [*figures, bar], cap_mm)


def superior(text: str, alphabet: Alphabet, cap_mm: float, bar: bool) -> SetGlyph:
    """Small letters hung from the cap line, a bar under them where it is asked for."""
    letters = _small(text, alphabet, cap_mm, SUPERIOR_LETTER)
    hung = _put(letters, 0.0, cap_mm - bounds(letters).top)
    if not bar:
        return _glyph(text, [hung], cap_mm)
    ink, thick = bounds(hung), _bar_thickness(alphabet, cap_mm)
    top = ink.bottom - CLEAR * cap_mm
    under = _quadrilateral((ink.left, top - thick), (ink.right, top - thick), (ink.right, top), (ink.left, top))
    return _glyph(text, [hung, under], cap_mm)


def _small(text: str, alphabet: Alphabet, cap_mm: float, share: float) -> Outline:
    """Small letters; capitals where the alphabet has no others. Raises LetteringError where it has neither."""
    fitting = with_stem_near(alphabet, own_stem(alphabet) * SMALL_STEM / share)
    try:
        line = fitting.set_line(text, cap_mm * share)
    except LetteringError:
        line = fitting.set_line(text.upper(), cap_mm * share)
    return line.outline


def _bar_thickness(alphabet: Alphabet, cap_mm: float) -> float:
    return own_stem(alphabet) * BAR_OF_STEM * cap_mm


def _glyph(text: str, parts: Sequence[Outline], cap_mm: float) -> SetGlyph:
    """The parts as one letter, its bearings beside its ink."""
    whole = Outline.gather(parts)
    ink, bearing = bounds(whole), BEARING * cap_mm
    return SetGlyph(text, _put(whole, bearing - ink.left, 0.0), 0.0, ink.width + 2 * bearing)


def _put(outline: Outline, right: float, up: float) -> Outline:
    return outline.transformed(Affine.move(right, up))


def _quadrilateral(*corners: tuple[float, float]) -> Outline:
    return Outline.of([Path.through([Point(x, y) for x, y in corners], closed=True)])
