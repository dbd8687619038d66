"""Optical spacing: the white between letters, against the work of type designers and as one grey."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path as Chain
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.fonts import FontAlphabet
from heraldry.lettering.scan import band_reach, ink_spans
from heraldry.lettering.spacing import DEPTH_CAPS, FLOOR_CAPS, Profile, Spacing, bearings, kern
from tests.faces import GOTHIC_FACES, SERIF_FACES, face
from tests.greyness import WORDS, greyness

CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
OPEN_PAIRS = ["AV", "AT", "LT", "LY", "PA", "TA", "VA", "WA", "YA", "FA"]
KERNED_PAIRS = [
    *OPEN_PAIRS,
    "AY",
    "TO",
    "OT",
    "RV",
    "RT",
    "LV",
    "LO",
    "KO",
    "AO",
    "OA",
    "OV",
    "VO",
    "OY",
    "YO",
    "OO",
    "AA",
    "TT",
    "PO",
    "DA",
    "AD",
]
FACES = [name for name in GOTHIC_FACES if name[0] != "font_fjallaone"] + list(SERIF_FACES)
"""Faces with kerning of their own to be compared with."""


def profiles(alphabet: FontAlphabet) -> dict[str, Profile]:
    drawn = {letter: alphabet.set_line(letter, 1.0).glyphs[0] for letter in CAPITALS}
    return {letter: Profile.of(glyph.outline, 1.0, glyph.advance_mm) for letter, glyph in drawn.items()}


@pytest.fixture(scope="module")
def all_profiles() -> list[tuple[FontAlphabet, dict[str, Profile]]]:
    return [(alphabet, profiles(alphabet)) for alphabet in (face(*name) for name in FACES)]


@pytest.fixture(scope="module")
def lato() -> dict[str, Profile]:
    return profiles(face("font_lato", "Lato-Bold.ttf"))


def shape(*corners: tuple[float, float]) -> Outline:
    return Outline.of([Chain.through([Point(*corner) for corner in corners], closed=True)])


# ---- scans


def test_ink_spans_of_a_ring_are_its_chords():
    outer = shape((0, 0), (10, 0), (10, 10), (0, 10))
    inner = shape((4, 4), (4, 6), (6, 6), (6, 4))
    assert ink_spans(Outline.gather((outer, inner)), 5.0) == ((0.0, 4.0), (6.0, 10.0))
    assert ink_spans(outer, 11.0) == ()


def test_bands_reach_as_far_as_the_ink_in_them():
    triangle = shape((0, 0), (4, 0), (2, 4))
    left, right = band_reach(triangle, np.array([-1.0, 0.0, 1.0, 2.0, 4.0, 5.0]), 0.001)
    assert left.tolist() == [0.0, 0.0, 0.5, 1.0, 2.0]
    assert right.tolist() == [4.0, 4.0, 3.5, 3.0, 2.0]
    left, right = band_reach(triangle, np.array([5.0, 6.0]), 0.001)
    assert (left.tolist(), right.tolist()) == ([np.inf], [-np.inf])


# ---- kerning


def test_two_h_are_the_measure_of_all(all_profiles):
    for _, known in all_profiles:
        assert kern(known["H"], known["H"], known["H"]) == pytest.approx(0.0, abs=1e-12)


def test_open_pairs_close_and_rounds_never_open(all_profiles):
    """Source Sans sets A, V and W so near by their bearings that nothing is left to kern."""
    for alphabet, known in all_profiles:
        kerns = {pair: kern(known[pair[0]], known[pair[1]], known["H"]) for pair in [*OPEN_PAIRS, "OO"]}
        assert kerns["OO"] <= 0.0
        assert all(amount <= 0.0 for amount in kerns.values())
        if "Sans" not in alphabet.name and "Light" not in alphabet.name:
            assert all(kerns[pair] < -0.02 for pair in OPEN_PAIRS), (alphabet.name, kerns)
        assert min(kerns["LT"], kerns["FA"], kerns["AT"]) < -0.03


def test_the_white_of_a_kerned_pair_is_that_of_two_h(lato):
    """The formula of the module, evaluated here anew."""
    for left, right in ["AV", "LT", "PA", "TO"]:
        a, b = lato[left], lato[right]
        gap = a.white_right + b.ink_left + kern(a, b, lato["H"])
        white = np.mean((a.right_recess + b.left_recess + gap) ** -2.0) ** -0.5
        assert white == pytest.approx(lato["H"].own_white, abs=1e-9)


def test_kerning_does_not_depend_on_size(lato):
    alphabet = face("font_lato", "Lato-Bold.ttf")
    for height in (0.4, 2.3, 250.0):
        a, v, h = (alphabet.set_line(letter, height).glyphs[0] for letter in "AVH")
        large = [Profile.of(glyph.outline, height, glyph.advance_mm) for glyph in (a, v, h)]
        assert kern(*large) == pytest.approx(kern(lato["A"], lato["V"], lato["H"]), abs=2e-3)


def test_no_two_letters_come_nearer_than_the_floor(all_profiles):
    for alphabet, known in all_profiles[::3]:
        floor = min(FLOOR_CAPS, known["H"].own_gap)
        drawn = {letter: alphabet.set_line(letter, 1.0).glyphs[0] for letter in CAPITALS}
        for left, right in ["LA", "TT", "AA", "RA", "KJ", "QY", "LT", "FJ"]:
            shift = drawn[left].advance_mm + kern(known[left], known[right], known["H"])
            moved = drawn[right].outline.transformed(Affine.move(shift, 0.0))
            assert distance(drawn[left].outline, moved) >= floor - 0.002, (alphabet.name, left + right)


def test_an_open_counter_does_not_count_wholly():
    """A C twice as deep is kerned no more once its opening is deeper than the eye looks."""
    h = Profile.of(shape((0.1, 0), (0.8, 0), (0.8, 1), (0.1, 1)), 1.0, 0.9)

    def letter_c(depth: float) -> Profile:
        corners = (0.1, 0), (1, 0), (1, 0.2), (1 - depth, 0.2), (1 - depth, 0.8), (1, 0.8), (1, 1), (0.1, 1)
        return Profile.of(shape(*corners), 1.0, 1.1)

    shallow, seen, deep = (kern(letter_c(depth), h, h) for depth in (0.1, DEPTH_CAPS, 0.6))
    assert seen == pytest.approx(deep, abs=1e-12)
    assert deep < shallow < 0.0


# ---- against the work of type designers


def test_bearings_come_near_those_of_designers(all_profiles):
    """Designers' bearings: read from the faces themselves, J and Q left out for their tails."""
    off = []
    for _, known in all_profiles:
        for letter in set(CAPITALS) - set("JQ"):
            left, right = bearings(known[letter], known["H"])
            off += [left - known[letter].ink_left, right - known[letter].white_right]
    assert np.sqrt(np.mean(np.square(off))) < 0.016
    assert abs(np.mean(off)) < 0.004


def test_kerning_comes_near_that_of_designers(all_profiles):
    """Designers' kerning: read from the faces themselves, by HarfBuzz."""
    off, unkerned = [], []
    for alphabet, known in all_profiles:
        for left, right in KERNED_PAIRS:
            line = alphabet.set_line(left + right, 1.0)
            theirs = line.advance_mm - sum(glyph.advance_mm for glyph in line.glyphs)
            off.append(kern(known[left], known[right], known["H"]) - theirs)
            unkerned.append(theirs)
    assert np.sqrt(np.mean(np.square(off))) < 0.038
    assert np.sqrt(np.mean(np.square(unkerned))) > 0.068


def test_letters_set_by_our_bearings_look_like_their_designers(lato):
    left, right = bearings(lato["H"], lato["H"])
    assert (left, right) == pytest.approx((lato["H"].ink_left, lato["H"].white_right), abs=1e-9)
    assert bearings(lato["O"], lato["H"])[0] < lato["H"].ink_left
    assert bearings(lato["A"], lato["H"])[0] < bearings(lato["O"], lato["H"])[0]


# ---- one grey


@pytest.mark.parametrize(
    "name", [FACES[1], FACES[5], ("font_fjallaone", "FjallaOne-Regular.ttf")], ids=lambda name: name[1]
)
def test_words_look_as_one_grey(name):
    """Fifty words: greyer than unkerned, and at least as grey as by the font's own kerning."""
    ways = face(*name, features=["-kern"]), face(*name), face(*name, optical=True)
    unkerned, designed, optical = (np.mean([greyness(way.set_line(w, 1.0)) for w in WORDS[:50]]) for way in ways)
    assert optical < 0.96 * unkerned
    assert optical < 1.01 * designed


def test_greyness_sees_a_gap():
    """The measure itself: a gap in the middle of a word is a light band."""
    line = face("font_lato", "Lato-Bold.ttf").set_line("HHHHHH", 1.0)
    gaping = SetLine(
        tuple(
            glyph if i < 3 else type(glyph)(glyph.text, glyph.outline, glyph.x_mm + 0.3, glyph.advance_mm)
            for i, glyph in enumerate(line.glyphs)
        ),
        line.advance_mm + 0.3,
        1.0,
    )
    assert greyness(gaping) > 1.8 * greyness(line)


# ---- the object that keeps them


def test_profiles_and_pairs_are_kept(lato):
    asked: list[str] = []
    alphabet = face("font_lato", "Lato-Bold.ttf")

    def draw(letter: str) -> tuple[Outline, float]:
        asked.append(letter)
        glyph = alphabet.set_line(letter, 1.0).glyphs[0]
        return glyph.outline, glyph.advance_mm

    spacing = Spacing(draw, 1.0)
    for pair in pairwise("SALT VALLEY"):
        spacing.kern(*pair)
    assert sorted(asked) == sorted(set("HSALT VEY"))
    assert spacing.kern("A", "V") == kern(lato["A"], lato["V"], lato["H"])
    assert spacing.kern("A", " ") == 0.0


def test_a_letter_without_ink_has_no_profile():
    with pytest.raises(LetteringError, match="without ink"):
        Profile.of(EMPTY, 1.0)
    with pytest.raises(LetteringError, match="measures whites by the letter H"):
        Spacing(lambda letter: (EMPTY, 0.5), 1.0)


def test_optical_lines_keep_their_letters(lato):
    plain = face("font_lato", "Lato-Bold.ttf", features=["-kern"]).set_line("AVA TO", 3.0)
    optical = face("font_lato", "Lato-Bold.ttf", optical=True).set_line("AVA TO", 3.0)
    moved = np.diff([glyph.x_mm for glyph in optical.glyphs]) - np.diff([glyph.x_mm for glyph in plain.glyphs])
    expected = [3.0 * kern(lato["A"], lato["V"], lato["H"]), 3.0 * kern(lato["V"], lato["A"], lato["H"]), 0.0, 0.0]
    assert moved[:4] == pytest.approx(expected, abs=1e-6)
    assert optical.advance_mm == pytest.approx(plain.advance_mm + moved.sum())
    assert bounds(optical.outline).top == pytest.approx(bounds(plain.outline).top)
