"""Letters with serifs: serifs of the length and curve asked for, thick and thin where a broad pen has them."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from heraldry.geometry.measure import bounds
from heraldry.lettering.alphabets import STYLES, LetterParameters, ParametricAlphabet
from heraldry.lettering.alphabets.parametric import shape
from heraldry.lettering.scan import ink_columns, ink_spans

SERIFED = [style for style in STYLES if "serif" in STYLES[style].sound]

# White that two serifs leave between them, in cap heights, less what rounding takes.
LEAST_GAP = 0.065 - 1e-9


def outline_of(style: str, character: str, **parameters):
    alphabet = ParametricAlphabet(style, STYLES[style], LetterParameters(**parameters))
    return shape(alphabet.style, alphabet.parameters, character)


def strokes(style: str, character: str, level: float, **parameters) -> list[float]:
    outline, _ = outline_of(style, character, **parameters)
    return [right - left for left, right in ink_spans(outline, level)]


@pytest.mark.parametrize("style", SERIFED)
@pytest.mark.parametrize("serif", [0.05, 0.10, 0.15])
def test_a_serif_is_as_long_as_asked_beyond_its_stem(style, serif):
    outline, box = outline_of(style, "I", serif=serif, stem=0.16)
    ((left, right),) = ink_spans(outline, 0.5)
    assert (left - box.left, box.right - right) == pytest.approx((serif, serif))
    ((low, high),) = ink_spans(outline, 1e-4)
    assert high - low == pytest.approx(0.16 + 2 * serif)


@pytest.mark.parametrize("style", SERIFED)
def test_a_bracket_reaches_as_far_up_the_stem_as_asked_and_bends_one_way(style):
    bracket, stem = 0.07, 0.16
    outline, _ = outline_of(style, "I", bracket=bracket, serif=0.14, stem=stem)
    foot = max(low for (low, high), *_ in [ink_spans(outline, y) for y in (1e-4,)])
    assert foot < 0.14
    serif_top = min(high for low, high in ink_columns(outline, 0.01))
    widths = np.array([np.diff(ink_spans(outline, serif_top + y))[0, 0] for y in np.linspace(1e-4, bracket * 1.5, 40)])
    assert (np.diff(widths) <= 1e-9).all()
    assert (np.diff(widths, 2) >= -1e-6).all()
    level = np.linspace(1e-4, bracket * 1.5, 40)
    assert (widths[level > bracket + 1e-3] == pytest.approx(stem)) and (
        widths[level < bracket - 1e-2] > stem + 1e-4
    ).all()


@pytest.mark.parametrize("style", SERIFED)
def test_without_a_bracket_serifs_are_square(style):
    outline, _ = outline_of(style, "I", bracket=0.0)
    assert len(outline.kinds) == 12
    edges = outline.data[:, 3] - outline.data[:, 0]
    assert (np.abs(edges) < 1e-12).any(axis=1).all()


@pytest.mark.parametrize("style", SERIFED)
@pytest.mark.parametrize(("width", "serif"), list(itertools.product((0.55, 1.0, 1.8), (None, 0.15))))
def test_serifs_that_point_at_one_another_leave_a_white(style, width, serif):
    stem = STYLES[style].sound["stem"].most
    for character, level in (("H", 0.01), ("H", 0.99), ("N", 0.99), ("A", 0.01), ("X", 0.01), ("K", 0.01), ("n", 0.01)):
        outline, _ = outline_of(style, character, stem=stem, width=width, serif=serif)
        spans = ink_spans(outline, level)
        assert len(spans) == 2, character
        assert spans[1][0] - spans[0][1] > LEAST_GAP, character


def test_slab_serifs_are_as_thick_as_bars():
    outline, box = outline_of("slab", "H")
    ((low, high),) = ink_columns(outline, box.centre.x)
    (foot, top), *_ = ink_columns(outline, 0.01)
    assert top - foot == pytest.approx(high - low, rel=0.05)


@pytest.mark.parametrize("contrast", [0.25, 0.36, 0.5])
def test_roman_strokes_are_thick_where_a_broad_pen_has_them(contrast):
    """Left leg of A, left stem of M, both of N and right of U thin; what falls to the right, and Z's diagonal, thick."""
    stem = 0.15

    def pens(character: str, level: float) -> str:
        found = strokes("roman", character, level, stem=stem, contrast=contrast)
        return "".join("thin" if width < 0.75 * stem else "THICK" for width in found)

    assert pens("H", 0.3) == pens("I", 0.5) * 2 == "THICKTHICK"
    assert pens("A", 0.15) == "thinTHICK"
    assert pens("M", 0.15).startswith("thin") and pens("M", 0.15).endswith("THICK")
    assert pens("N", 0.5) == "thinTHICKthin"
    assert pens("U", 0.7) == "THICKthin"
    assert pens("V", 0.6) == pens("Y", 0.75) == pens("X", 0.75) == "THICKthin"
    assert pens("W", 0.4) == "THICKthinTHICKthin"
    assert pens("Z", 0.5) == "THICK"


def test_roman_rounds_are_stressed_upright():
    outline, box = outline_of("roman", "O", stem=0.15)
    sides = [right - left for left, right in ink_spans(outline, 0.5)]
    levels = [high - low for low, high in ink_columns(outline, box.centre.x)]
    assert sides[0] == pytest.approx(sides[1]) and levels[0] == pytest.approx(levels[1])
    assert sides[0] > 2 * levels[0]


@pytest.mark.parametrize("style", SERIFED)
def test_a_longer_serif_leaves_the_white_beside_the_letters(style):
    def white(serif: float) -> float:
        alphabet = ParametricAlphabet(style, STYLES[style], LetterParameters(serif=serif))
        line = alphabet.set_line("II", 1.0)
        first, second = (bounds(glyph.placed) for glyph in line.glyphs)
        return second.left - first.right

    assert white(0.05) == pytest.approx(white(0.15))
