"""Lettering of technical drawings, ISO 3098-0:1997, type B, reproduced by the gothic with one setting.

With h the height of capitals the standard gives, for type B: stroke d = h/10, space between characters a = 2h/10,
between words e = 6h/10, small letters c = 7h/10, and the nominal sizes h below (read in an extract of the French
edition NF EN ISO 3098-0).

Ours follows strokes and spaces. Its rounds and diagonals keep their optical corrections, which the standard's even
stroke does not know, and its small letters are 0.735 h: open type is as high, and 0.7 h is not offered.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.alphabets import LetterParameters
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.scan import ink_spans

NOMINAL_SIZES_MM = (1.8, 2.5, 3.5, 5.0, 7.0, 10.0, 14.0, 20.0)
STROKE, LETTER_GAP, WORD_GAP = 0.1, 0.2, 0.6

TYPE_B = ours("gothic", LetterParameters(stem=0.1, bar=0.1, letter_gap=0.2, word_gap=0.6))
"""The setting as ``LetterParameters`` documents it."""

# Optical corrections of a stroke in round and slanting letters, as a share of it.
CORRECTED_BY = 0.06


def across(line: SetLine, level: float) -> list[float]:
    """Thickness of every stroke that a level line meets, in cap heights."""
    h = line.cap_height_mm
    return [(right - left) / h for left, right in ink_spans(line.outline, level * h, 1e-6 * h)]


def upward(line: SetLine, place: float) -> list[float]:
    """Thickness of every stroke that an upright line meets at a part of the ink's width, in cap heights."""
    outline, h = line.outline, line.cap_height_mm
    box = bounds(outline)
    turned = Outline(outline.kinds, outline.data[..., ::-1].copy(), outline.rings)
    return [(top - foot) / h for foot, top in ink_spans(turned, box.left + place * box.width, 1e-6 * h)]


@pytest.mark.parametrize("h", NOMINAL_SIZES_MM)
@pytest.mark.parametrize(("letter", "level", "count"), [("H", 0.25, 2), ("I", 0.5, 1), ("L", 0.5, 1), ("E", 0.3, 1)])
def test_uprights_are_a_tenth_of_the_height(h: float, letter: str, level: float, count: int) -> None:
    assert across(TYPE_B.set_line(letter, h), level) == pytest.approx([STROKE] * count, abs=1e-9)


@pytest.mark.parametrize("h", NOMINAL_SIZES_MM)
@pytest.mark.parametrize(
    ("letter", "place", "count"), [("H", 0.5, 1), ("E", 0.7, 3), ("F", 0.7, 2), ("L", 0.7, 1), ("T", 0.2, 1)]
)
def test_bars_are_a_tenth_of_the_height(h: float, letter: str, place: float, count: int) -> None:
    assert upward(TYPE_B.set_line(letter, h), place) == pytest.approx([STROKE] * count, abs=1e-9)


def test_rounds_and_slants_are_a_tenth_but_for_their_optical_corrections() -> None:
    for letter in "ODQU":
        assert across(TYPE_B.set_line(letter, 10.0), 0.6) == pytest.approx([STROKE] * 2, rel=CORRECTED_BY), letter
    assert upward(TYPE_B.set_line("O", 10.0), 0.5) == pytest.approx([STROKE] * 2, rel=CORRECTED_BY)
    first, *_ = across(TYPE_B.set_line("V", 10.0), 0.8)
    box = bounds(TYPE_B.set_line("V", 10.0).outline)
    lean = math.atan2(box.height, (box.width - STROKE * 10.0) / 2)  # of a leg, from its run and rise
    assert first * math.sin(lean) == pytest.approx(STROKE, rel=CORRECTED_BY)


@pytest.mark.parametrize("h", NOMINAL_SIZES_MM)
def test_upright_strokes_stand_two_tenths_apart(h: float) -> None:
    first, second = (bounds(glyph.placed) for glyph in TYPE_B.set_line("HH", h).glyphs)
    assert (second.left - first.right) / h == pytest.approx(LETTER_GAP, abs=1e-9)
    boxes = [bounds(glyph.placed) for glyph in TYPE_B.set_line("HIHNMBHEI", h).glyphs]
    from_stem_to_stem = [(boxes[i + 1].left - boxes[i].right) / h for i in (0, 1, 2, 3, 4)]
    assert from_stem_to_stem == pytest.approx([LETTER_GAP] * 5, abs=0.006)


@pytest.mark.parametrize("h", NOMINAL_SIZES_MM)
def test_words_stand_six_tenths_apart(h: float) -> None:
    line = TYPE_B.set_line("HIH HIH", h)
    boxes = [bounds(glyph.placed) for glyph in line.glyphs if glyph.text != " "]
    assert (boxes[3].left - boxes[2].right) / h == pytest.approx(WORD_GAP, abs=1e-9)


def test_no_letters_stand_farther_apart_than_two_tenths() -> None:
    """Rounds and slants are brought nearer, as the eye wants it and as the standard allows (from memory)."""
    for left, right in [*pairwise("HONDKLOVELYTAXIBUFJGPQRSWZCEM"), ("L", "A"), ("T", "V")]:
        line = TYPE_B.set_line(left + right, 1.0)
        one, other = (bounds(glyph.placed) for glyph in line.glyphs)
        assert other.left - one.right <= LETTER_GAP + 0.006, left + right


def test_small_letters_stand_a_little_higher_than_seven_tenths() -> None:
    x_height = bounds(TYPE_B.set_line("x", 1.0).outline).top
    assert x_height == pytest.approx(0.735, abs=1e-9)
    assert 0.7 < x_height < 0.7 * 1.06
