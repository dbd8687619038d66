"""A stem is as thick on the outline as it was asked for, to a micrometre, wherever the letters come from.

At three scales: 9 in of full size in N, HO and O, that is 1.42875, 2.625 and 4.7625 mm (9 · 25.4 over 160, over
304.8/3.5, over 48, worked by hand). What is measured is the outline that is laid, by its own crossings of a level
line; of a variable font also the glyph that fontTools makes at the place on the axis that was found.
"""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont

from heraldry.geometry.measure import bounds
from heraldry.geometry.point import ORIGIN
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.alphabets import STYLES, LetterParameters
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.fonts import font_from_file
from heraldry.lettering.scan import ink_spans
from heraldry.lettering.setting import straight
from tests.faces import face_file

CAP_HEIGHTS_MM = (1.42875, 2.625, 4.7625)
MICROMETRE_MM = 1e-3
LEVEL = 0.25
"""Above serifs and their brackets, below crossbars."""
MANROPE = face_file("font_manrope", "Manrope-VariableFont_wght.ttf")


def uprights(alphabet: Alphabet, letter: str, cap_height_mm: float) -> list[float]:
    laid = straight(alphabet.set_line(letter, cap_height_mm), ORIGIN).outline.quantised()
    return [right - left for left, right in ink_spans(laid, LEVEL * cap_height_mm, 1e-5)]


def steps(style: str, name: str, count: int) -> list[float]:
    span = STYLES[style].sound[name]
    return [float(value) for value in np.linspace(span.least, span.most, count)]


@pytest.mark.parametrize("style", STYLES)
def test_stems_of_ours_over_the_whole_range(style: str) -> None:
    for stem, width, cap_mm in product(steps(style, "stem", 5), steps(style, "width", 3), CAP_HEIGHTS_MM):
        alphabet = ours(style, LetterParameters(stem=stem, width=width))
        left, right = uprights(alphabet, "H", cap_mm)
        (alone,) = uprights(alphabet, "I", cap_mm)
        for measured in (left, right, alone):
            assert measured == pytest.approx(stem * cap_mm, abs=MICROMETRE_MM), (stem, width, cap_mm)


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("asked_mm", [0.25, 0.30, 0.40])
def test_a_stem_in_millimetres_is_that_thick(style: str, asked_mm: float) -> None:
    """As the key ``stem`` of a line of lettering asks for it, which the printer has to hold."""
    alphabet = ours(style).with_stem(asked_mm / 2.2)
    assert uprights(alphabet, "H", 2.2) == pytest.approx([asked_mm] * 2, abs=MICROMETRE_MM)


@pytest.mark.parametrize("style", STYLES)
def test_tabular_figures_have_one_advance_at_every_stem_and_width(style: str) -> None:
    for stem, width in product(steps(style, "stem", 3), steps(style, "width", 3)):
        line = ours(style, LetterParameters(stem=stem, width=width)).set_line("0123456789", 2.625, "tabular")
        origins = np.diff([glyph.x_mm for glyph in line.glyphs])
        assert origins == pytest.approx(line.glyphs[0].advance_mm, abs=1e-9)


@pytest.mark.parametrize("stem", [0.06, 0.10, 0.14, 0.185])
@pytest.mark.parametrize("cap_mm", CAP_HEIGHTS_MM)
def test_a_solved_stem_of_a_variable_font(stem: float, cap_mm: float) -> None:
    left, right = uprights(font_from_file(MANROPE, stem=stem), "H", cap_mm)
    assert left == pytest.approx(stem * cap_mm, abs=MICROMETRE_MM)
    assert right == pytest.approx(stem * cap_mm, abs=MICROMETRE_MM)


@pytest.mark.parametrize("stem", [0.06, 0.10, 0.14, 0.185])
def test_fonttools_finds_the_solved_stem_too(stem: float) -> None:
    """The H of fontTools at the found weight: its first upright ends where its second edge from the left is."""
    alphabet = font_from_file(MANROPE, stem=stem)
    glyphs = TTFont(MANROPE).getGlyphSet(location=dict(alphabet.location))
    pen = DecomposingRecordingPen(glyphs)
    glyphs["H"].draw(pen)
    points = np.array([point for _, given in pen.value for point in given])
    edges = np.unique(np.round(points[:, 0], 3))
    cap = points[:, 1].max()
    assert (edges[1] - edges[0]) / cap == pytest.approx(stem, abs=5e-4)
    assert bounds(alphabet.set_line("H", 1.0).outline).height == pytest.approx(1.0, abs=1e-9)
