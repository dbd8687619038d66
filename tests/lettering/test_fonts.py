"""Font files: what is read from sound ones, and what is said about the others."""

from __future__ import annotations

import struct
from pathlib import Path

import numpy as np
import pytest
from fontTools.ttLib import TTCollection, TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import LetteringError
from heraldry.geometry.measure import area, bounds, ring_areas
from heraldry.lettering.fonts import font_from_file, who_has
from heraldry.lettering.fonts.files import FONT_FILE_MAX_BYTES
from heraldry.lettering.stack import justified
from tests.box_font import built_font
from tests.faces import face_file

ROBOTO = face_file("font_roboto", "Roboto-Regular.ttf")
LATO = face_file("font_lato", "Lato-Regular.ttf")
FJALLA = face_file("font_fjallaone", "FjallaOne-Regular.ttf")
SERIF_OTF = face_file("font_source_serif_pro", "SourceSerifPro-Regular.otf")
SANS_TTF = face_file("font_source_sans_pro", "SourceSansPro-Regular.ttf")
MANROPE_VARIABLE = face_file("font_manrope", "Manrope-VariableFont_wght.ttf")
SOUND = [ROBOTO, LATO, FJALLA, SERIF_OTF, SANS_TTF, MANROPE_VARIABLE]


def changed(tmp_path: Path, source: Path, **os2: int) -> Path:
    font = TTFont(source)
    for key, value in os2.items():
        setattr(font["OS/2"], key, value)
    path = tmp_path / source.name
    font.save(path)
    return path


# ---- what a sound font gives


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_an_h_is_as_high_as_asked(path):
    h = font_from_file(path).set_line("H", 2.625).glyphs[0].outline
    assert bounds(h).top == pytest.approx(2.625, abs=1e-12)
    assert bounds(h).bottom == pytest.approx(0.0, abs=1e-12)


def test_a_stated_cap_height_counts_where_there_is_no_h(tmp_path):
    line = font_from_file(built_font(tmp_path, "IX", False, cap_stated=500)).set_line("I", 5.0)
    assert bounds(line.glyphs[0].outline).top == pytest.approx(7.0)


def test_a_font_that_cannot_be_sized_is_refused(tmp_path):
    with pytest.raises(LetteringError, match="no H and states no cap height"):
        font_from_file(built_font(tmp_path, "IX", False)).set_line("I", 5.0)


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_outer_rings_run_counter_clockwise_and_holes_clockwise(path):
    alphabet = font_from_file(path)
    for letter, rings in {"H": 1, "O": 2, "B": 3, "8": 3}.items():
        signs = np.sign(ring_areas(alphabet.set_line(letter, 10.0).glyphs[0].outline))
        assert sorted(signs) == [-1.0] * (rings - 1) + [1.0]


def test_overlapping_contours_are_united(tmp_path):
    x = font_from_file(built_font(tmp_path)).set_line("X", 700.0).glyphs[0].outline
    assert len(x.rings) == 2
    assert area(x) == pytest.approx(100 * 700 + 100 * 500 - 100 * 100, rel=1e-9)
    assert x.node_count == 12


def test_a_base_and_its_mark_are_one_letter():
    line = font_from_file(ROBOTO).set_line("E\u0301A\u030a", 3.0)
    assert [glyph.text for glyph in line.glyphs] == ["E\u0301", "A\u030a"]
    assert bounds(line.glyphs[0].outline).top > 3.5


def test_letters_know_their_own_advance_and_kerning_moves_origins():
    kerned, plain = font_from_file(LATO), font_from_file(LATO, features=["-kern"])
    with_kerning, without = kerned.set_line("AVA", 2.0), plain.set_line("AVA", 2.0)
    assert [g.advance_mm for g in with_kerning.glyphs] == [g.advance_mm for g in without.glyphs]
    assert with_kerning.glyphs[1].x_mm < without.glyphs[1].x_mm == without.glyphs[0].advance_mm


def test_ligatures_only_on_request():
    assert len(font_from_file(LATO).set_line("fi", 2.0).glyphs) == 2
    joined = font_from_file(LATO, features=["liga"]).set_line("fi", 2.0).glyphs
    assert [glyph.text for glyph in joined] == ["fi"]


@pytest.mark.parametrize("optical", [False, True])
@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_tabular_figures_stand_in_columns(path, optical):
    alphabet = font_from_file(path, optical=optical)
    for number in ("1714074 8", "1111111 1"):
        line = alphabet.set_line(number, 2.0, figures="tabular")
        middles = [glyph.x_mm + glyph.advance_mm / 2 for glyph in line.glyphs]
        assert np.ptp(np.diff(middles[:7])) < 1e-9
    assert alphabet.set_line("1714074", 2.0, "tabular").advance_mm == pytest.approx(
        alphabet.set_line("8888888", 2.0, "tabular").advance_mm
    )


def test_proportional_figures_do_not():
    line = font_from_file(FJALLA).set_line("17140", 2.0)
    assert np.ptp([glyph.advance_mm for glyph in line.glyphs]) > 0.1


def test_an_empty_text_is_an_empty_line():
    line = font_from_file(ROBOTO).set_line("", 2.0)
    assert (line.glyphs, line.advance_mm) == ((), 0.0)


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_the_same_font_gives_the_same_outlines(path):
    one, other = (font_from_file(path).set_line("Ring & 88", 2.3).outline for _ in range(2))
    assert one.data.tobytes() == other.data.tobytes()
    assert one.rings.tolist() == other.rings.tolist()


# ---- files of every kind


@pytest.mark.parametrize("flavor", ["woff", "woff2"])
@pytest.mark.parametrize("source", [SERIF_OTF, FJALLA], ids=lambda path: path.stem)
def test_a_packed_font_draws_as_the_plain_one(tmp_path, source, flavor):
    font = TTFont(source)
    font.flavor = flavor
    font.save(tmp_path / "packed")
    packed = font_from_file(tmp_path / "packed").set_line("Hamburg 42", 3.0)
    plain = font_from_file(source).set_line("Hamburg 42", 3.0)
    assert packed.advance_mm == plain.advance_mm
    assert area(packed.outline) == pytest.approx(area(plain.outline), rel=1e-12)


def test_a_face_is_chosen_from_a_collection(tmp_path):
    collection = TTCollection()
    collection.fonts = [TTFont(ROBOTO), TTFont(FJALLA)]
    collection.save(tmp_path / "two.ttc")
    second = font_from_file(tmp_path / "two.ttc", face=1)
    assert second.name == "Fjalla One"
    assert second.set_line("HO", 2.0).advance_mm == font_from_file(FJALLA).set_line("HO", 2.0).advance_mm
    with pytest.raises(LetteringError, match="no face number 2, it has faces 0 to 1"):
        font_from_file(tmp_path / "two.ttc", face=2)


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "it is empty"),
        (b"\x89PNG\r\n\x1a\n", "a PNG picture"),
        (b"%!PS-AdobeFont-1.0", "Type 1 font; take the OpenType"),
        (b"PK\x03\x04....", "a zip archive"),
        (b"hello, world", "something that starts with 'hell'; wanted TTF"),
        (b"OTTO", "a broken font file"),
        (b"\0\1\0\0\0\x0c", "a broken font file"),
        (b"wOF2" + b"\0" * 60, "cannot be unpacked"),
        (b"wOF2" + b"\0" * 12 + struct.pack(">I", 2**31), "would unpack to 2048 MB"),
        (b"ttcf" + b"\0" * 8, "no face number 0"),
    ],
)
def test_what_is_no_font_is_named(tmp_path, content, said):
    (tmp_path / "thing.ttf").write_bytes(content)
    with pytest.raises(LetteringError) as caught:
        font_from_file(tmp_path / "thing.ttf")
    assert said in str(caught.value)
    assert "thing.ttf" in str(caught.value)


def test_a_missing_file_a_folder_and_a_giant_are_refused(tmp_path):
    with pytest.raises(LetteringError, match="cannot be read"):
        font_from_file(tmp_path / "none.ttf")
    with pytest.raises(LetteringError, match="cannot be read"):
        font_from_file(tmp_path)
    with (tmp_path / "giant.ttf").open("wb") as giant:
        giant.truncate(FONT_FILE_MAX_BYTES + 1)
    with pytest.raises(LetteringError, match="at most 96 MB are read"):
        font_from_file(tmp_path / "giant.ttf")


@settings(derandomize=True, deadline=None, max_examples=40)
@given(cut=st.floats(0.0, 0.999), source=st.sampled_from([FJALLA, SERIF_OTF]))
def test_a_cut_off_font_never_fails_otherwise_than_in_words(tmp_path_factory, cut, source):
    data = source.read_bytes()
    path = tmp_path_factory.mktemp("cut") / "cut.font"
    path.write_bytes(data[: int(len(data) * cut)])
    _draws_or_says_why(path)


@settings(derandomize=True, deadline=None, max_examples=60)
@given(seed=st.integers(0, 2**32 - 1), source=st.sampled_from([FJALLA, SERIF_OTF]))
def test_a_damaged_font_never_fails_otherwise_than_in_words(tmp_path_factory, seed, source):
    rng = np.random.default_rng(seed)
    data = bytearray(source.read_bytes())
    for place in rng.integers(0, len(data), 2000):
        data[place] = rng.integers(0, 256)
    path = tmp_path_factory.mktemp("damaged") / "damaged.font"
    path.write_bytes(bytes(data))
    _draws_or_says_why(path)


def _draws_or_says_why(path: Path) -> None:
    try:
        line = font_from_file(path).set_line("HAMBURG 42", 2.0)
    except LetteringError as error:
        assert str(error).strip()
    else:
        assert len(line.glyphs) == 10


@pytest.mark.parametrize("bits", [0x0002, 0x0102])
def test_a_restricted_font_wants_a_licence(tmp_path, bits):
    path = changed(tmp_path, FJALLA, fsType=bits)
    with pytest.raises(LetteringError, match=f"Restricted License.*fsType {bits}.*licensed = true"):
        font_from_file(path)
    assert font_from_file(path, licensed=True).set_line("H", 2.0).glyphs


@pytest.mark.parametrize("bits", [0x0000, 0x0004, 0x0008, 0x0006])
def test_other_embedding_bits_allow_drawing(tmp_path, bits):
    """0x0006 sets two usage bits: the least restrictive holds (OpenType specification, OS/2, fsType)."""
    assert font_from_file(changed(tmp_path, FJALLA, fsType=bits)).set_line("H", 2.0).glyphs


# ---- what is asked for and cannot be


def test_missing_letters_are_named():
    with pytest.raises(LetteringError) as caught:
        font_from_file(FJALLA).set_line("A中B中", 2.0)
    assert "Fjalla One has no letter '中' (U+4E2D CJK UNIFIED IDEOGRAPH-4E2D)" in str(caught.value)


@pytest.mark.parametrize("text", ["two\nlines", "tab\there", "a\u2028b"])
def test_a_line_is_one_line(text):
    with pytest.raises(LetteringError, match="one line of text cannot hold"):
        font_from_file(FJALLA).set_line(text, 2.0)


@pytest.mark.parametrize("height", [0.0, -2.0, float("nan"), float("inf")])
def test_a_cap_height_is_more_than_zero(height):
    with pytest.raises(LetteringError, match="cap height is more than zero"):
        font_from_file(FJALLA).set_line("H", height)


def test_a_feature_has_four_letters():
    with pytest.raises(LetteringError, match="four letters or digits, found 'smallcaps'"):
        font_from_file(FJALLA, features=["smallcaps"])


# ---- variable fonts


def test_an_axis_is_found_by_tag_name_or_word(tmp_path):
    path = built_font(tmp_path)
    stems = [font_from_file(path, axes={name: 900}).stem for name in ("wght", "Weight", "WEIGHT")]
    assert stems == pytest.approx([220 / 700] * 3)


@pytest.mark.parametrize("stem", [100 / 700, 0.2, 220 / 700])
def test_a_stem_is_solved_on_the_weight_axis(tmp_path, stem):
    alphabet = font_from_file(built_font(tmp_path), stem=stem)
    assert alphabet.stem == pytest.approx(stem, abs=1e-5)
    assert alphabet.location["wght"] == pytest.approx(400 + 500 * (stem * 700 - 100) / 120, abs=0.05)


def test_a_stem_is_solved_on_a_real_font():
    alphabet = font_from_file(MANROPE_VARIABLE, stem=0.16)
    assert alphabet.stem == pytest.approx(0.16, abs=1e-4)
    h = bounds(alphabet.set_line("H", 10.0).glyphs[0].outline)
    assert h.top == pytest.approx(10.0)


def test_stem_and_width_are_solved_together(tmp_path):
    alphabet = font_from_file(built_font(tmp_path), stem=0.2, width=1.2)
    assert alphabet.stem == pytest.approx(0.2, abs=1e-5)
    assert alphabet.h_width == pytest.approx(1.2 * 600 / 700, abs=1e-5)


@pytest.mark.parametrize("factor", [0.95, 1.1, 1.2])
def test_a_font_is_widened_with_its_stems_as_they_are(tmp_path, factor):
    usual = font_from_file(built_font(tmp_path), stem=0.2, width=1.1)
    wide = usual.widened(factor)
    assert wide.h_width == pytest.approx(factor * usual.h_width, abs=1e-5)
    assert wide.stem == pytest.approx(0.2, abs=1e-5)


def test_a_line_is_justified_on_the_width_axis(tmp_path):
    usual = font_from_file(built_font(tmp_path, letters="HI"), stem=0.2)
    wide = justified(lambda alphabet: alphabet.set_line("HHHH", 7.0), usual, 32.5)
    ink = bounds(wide.line.outline)
    assert ink.width == pytest.approx(32.5, abs=1e-6)
    assert wide.widened > 1.02
    first = wide.line.glyphs[0].outline
    assert first.data[first.data[:, 0, 1] == 0][:, [0, 3], 0].min() == pytest.approx(bounds(first).left)
    stems = sorted({round(x, 6) for x in first.data[:, :, 0].ravel().tolist()})
    assert stems[1] - stems[0] == pytest.approx(0.2 * 7.0, abs=1e-3)


@pytest.mark.parametrize(
    ("listed", "letters", "said"),
    [
        ("", "AÉ", "our gothic, our slab and our roman have them"),
        ("Fen Sans\nGone Sans\n", "Ж", "Fen Sans has it"),
        ("Fen Sans\nDell Serif\nFen Sans\n", "Жж", "Dell Serif and Fen Sans have them"),
        ("", "Ж", "no alphabet of ours and no installed family has it"),
    ],
)
def test_who_has_a_letter_is_told(monkeypatch, tmp_path, listed, letters, said):
    lister = tmp_path / "fc-list"
    lister.write_text(f"#!/bin/sh\nprintf '{listed}'\n")
    lister.chmod(0o755)
    who_has._families_with.cache_clear()
    monkeypatch.setattr(who_has.shutil, "which", lambda _: str(lister))
    monkeypatch.setattr(who_has, "installed_families", lambda: ("Dell Serif", "Fen Sans"))
    assert who_has.who_has(letters) == said
    who_has._families_with.cache_clear()


def test_a_font_of_one_width_says_so():
    with pytest.raises(LetteringError, match="have one width only, the font has no width axis"):
        font_from_file(FJALLA).widened(1.1)


def test_another_stem_keeps_the_width_that_was_wished(tmp_path):
    heavier = font_from_file(built_font(tmp_path), stem=0.15, width=1.2).with_stem(0.25)
    assert heavier.stem == pytest.approx(0.25, abs=1e-5)
    assert heavier.h_width == pytest.approx(1.2 * 600 / 700, abs=1e-5)


def test_a_fixed_font_has_the_stem_it_has():
    fjalla = font_from_file(FJALLA)
    assert fjalla.with_stem(fjalla.stem).stem == fjalla.stem
    with pytest.raises(LetteringError, match=r"cannot take a stem of 0\.1,"):
        fjalla.with_stem(0.1)


def test_a_stem_out_of_reach_is_told_with_the_reach(tmp_path):
    with pytest.raises(LetteringError, match=r"reaches a stem from 0\.143 to 0\.314, found 0\.5"):
        font_from_file(built_font(tmp_path), stem=0.5)


def test_a_font_without_the_axis_tells_its_own_measure():
    with pytest.raises(LetteringError, match=r"cannot take a stem of 0.3, it has no axis 'wght'; its own is 0\.\d"):
        font_from_file(FJALLA, stem=0.3)


@pytest.mark.parametrize(
    ("axes", "said"),
    [
        ({"wgth": 400}, "has no axis 'wgth', did you mean 'wght'"),
        ({"wght": 1000}, "runs from 100 to 900, found 1000"),
    ],
)
def test_axes_that_are_not_there(tmp_path, axes, said):
    with pytest.raises(LetteringError, match=said):
        font_from_file(built_font(tmp_path), axes=axes)


def test_a_fixed_font_has_no_axes():
    with pytest.raises(LetteringError, match="has no axes, it is not variable"):
        font_from_file(FJALLA, axes={"weight": 400})
