"""Lines of text against HarfBuzz itself, and outlines against fontTools', skia's and HarfBuzz's own.

Source of every expected figure here: the named library, asked directly in the test.
"""

from __future__ import annotations

import random
from pathlib import Path

import pathops
import pytest
import uharfbuzz as hb
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

from heraldry.geometry.measure import area, bounds
from heraldry.lettering.fonts import FontAlphabet, font_from_file
from tests.faces import face_file

FACES = [
    ("font_roboto", "Roboto-Regular.ttf"),
    ("font_roboto", "Roboto-BlackItalic.ttf"),
    ("font_lato", "Lato-Bold.ttf"),
    ("font_lato", "Lato-ThinItalic.ttf"),
    ("font_source_sans_pro", "SourceSansPro-Regular.otf"),
    ("font_source_sans_pro", "SourceSansPro-Black.ttf"),
    ("font_source_serif_pro", "SourceSerifPro-Bold.otf"),
    ("font_source_serif_pro", "SourceSerifPro-LightIt.ttf"),
    ("font_manrope", "Manrope-ExtraBold.ttf"),
    ("font_manrope", "Manrope-VariableFont_wght.ttf"),
    ("font_hanken_grotesk", "HankenGrotesk-Medium.otf"),
    ("font_fjallaone", "FjallaOne-Regular.ttf"),
]
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&"
SAMPLES = 200


def texts() -> list[str]:
    """Words as they stand on cars: capitals, capitals and small letters, numbers, pairs that kern."""
    rng = random.Random(1907)
    capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    made = ["AVATAR", "LTLYLV", "To Ya We Fa", "P. T. & W. Ry.", "1 1/2", "\u00c5ngstr\u00f6m", "", " "]
    while len(made) < SAMPLES:
        word = "".join(rng.choice(capitals) for _ in range(rng.randint(2, 9)))
        made.append(rng.choice([word, word.title(), f"{word} {rng.randint(1, 999999)}", f"{word}-{word.lower()}"]))
    return made


@pytest.fixture(scope="module", params=FACES, ids=lambda face: face[1])
def face(request) -> tuple[Path, FontAlphabet]:
    path = face_file(*request.param)
    return path, font_from_file(path)


def test_positions_are_those_of_harfbuzz(face):
    path, alphabet = face
    font = hb.Font(hb.Face(path.read_bytes()))
    if "Variable" in path.name:
        font.set_variations(alphabet.location)
    units = alphabet.cap_height
    for text in texts():
        buffer = hb.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        hb.shape(font, buffer, {"liga": False, "clig": False})
        line = alphabet.set_line(text, 1.0)
        positions = buffer.glyph_positions or []
        assert len(line.glyphs) == len(positions)
        pen = 0
        for glyph, position in zip(line.glyphs, positions, strict=True):
            assert glyph.x_mm * units == pytest.approx(pen + position.x_offset, abs=1e-6)
            assert glyph.y_mm * units == pytest.approx(position.y_offset, abs=1e-6)
            pen += position.x_advance
        assert line.advance_mm * units == pytest.approx(pen, abs=1e-6)


def test_areas_are_those_of_fonttools_where_contours_do_not_overlap(face):
    """fontTools' AreaPen sums signed contours, which is the inked area wherever skia finds nothing to unite."""
    path, alphabet = face
    font = TTFont(path)
    glyph_set, names = font.getGlyphSet(location=alphabet.location or None), font.getBestCmap()
    compared = 0
    for letter in LETTERS:
        drawn = pathops.Path()
        glyph_set[names[ord(letter)]].draw(drawn.getPen(glyphSet=glyph_set))
        united = pathops.simplify(drawn, fix_winding=True)
        ours = alphabet.set_line(letter, alphabet.cap_height).glyphs[0].outline
        signed = AreaPen(glyph_set)
        glyph_set[names[ord(letter)]].draw(signed)
        assert area(ours) == pytest.approx(abs(united.area), rel=2e-4)  # skia works in single precision
        if abs(abs(signed.value) - abs(united.area)) < 1e-3 * abs(united.area):
            assert area(ours) == pytest.approx(abs(signed.value), rel=1e-9)
            compared += 1
    assert compared >= 10


def test_bounds_are_those_of_fonttools(face):
    path, alphabet = face
    font = TTFont(path)
    glyph_set, names = font.getGlyphSet(location=alphabet.location or None), font.getBestCmap()
    for letter in LETTERS:
        theirs = BoundsPen(glyph_set)
        glyph_set[names[ord(letter)]].draw(theirs)
        ours = bounds(alphabet.set_line(letter, alphabet.cap_height).glyphs[0].outline)
        assert (ours.left, ours.bottom, ours.right, ours.top) == pytest.approx(theirs.bounds, abs=2e-3)


@pytest.mark.parametrize("weight", [200, 345, 500, 800])
def test_a_variable_font_is_interpolated_as_harfbuzz_does(weight):
    """HarfBuzz has an interpolator of its own; it rounds places on an axis to 1/16384 of their half."""
    path = face_file("font_manrope", "Manrope-VariableFont_wght.ttf")
    alphabet = font_from_file(path, axes={"weight": weight})
    font = hb.Font(hb.Face(path.read_bytes()))
    font.set_variations({"wght": weight})
    for letter in "HOSR8&":
        drawn = pathops.Path()
        font.draw_glyph_with_pen(font.get_nominal_glyph(ord(letter)), drawn.getPen())
        theirs = abs(pathops.simplify(drawn, fix_winding=True).area)
        ours = alphabet.set_line(letter, alphabet.cap_height).glyphs[0]
        assert area(ours.outline) == pytest.approx(theirs, rel=1e-3)
        assert ours.advance_mm == font.get_glyph_h_advance(font.get_nominal_glyph(ord(letter)))
