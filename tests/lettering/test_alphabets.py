"""Every alphabet of ours over its whole sound range: clean outlines, exact stems, open counters, figures in columns."""

from __future__ import annotations

import itertools
from functools import cache

import numpy as np
import pytest
import shapely

from heraldry.errors import LetteringError
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.lettering.alphabets import STYLES, LetterParameters, ParametricAlphabet
from heraldry.lettering.alphabets.parametric import FIGURES, shape
from heraldry.lettering.scan import ink_columns, ink_spans

CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
SMALL = "abcdefghijklmnopqrstuvwxyz"
REQUIRED = CAPITALS + SMALL + FIGURES + "&.,'-:;\"–—/()#$€£+*?!%№@=" + "ÆŒØŁĐÞÐßæœøłđþð"
WIDTHS = (0.55, 1.0, 1.8)

# Chords of curves, in cap heights; fine enough to find a crossing of a thousandth of a stem.
FLATTENED = 1e-5

# An outline must not have an edge shorter than this, nor a ring smaller: such things are leftovers of a set
# operation that went through two nearly equal edges, which differ by rounding. In cap heights.
SHORTEST_EDGE, SMALLEST_RING = 1e-5, 1e-3

COUNTERS = {
    **dict.fromkeys("ADOPQR04690abdegopqeÐĐÞØŒÆþðđ№@°#Ħ", 1),
    **dict.fromkeys("B8&%æœ", 2),
    "Ø": 2,
    "ø": 2,
}  # fmt: skip
PARTS = {**dict.fromkeys(':;"!?=ij«»“”„¡¿', 2), "%": 3, "№": 3}


def alphabet_of(style: str, **parameters) -> ParametricAlphabet:
    return ParametricAlphabet(style, STYLES[style], LetterParameters(**parameters))


def thirds(style: str, name: str) -> tuple[float, float, float]:
    span = STYLES[style].sound[name]
    return span.least, (span.least + span.most) / 2, span.most


def grid(style: str) -> list[tuple[int, dict]]:
    """The 27 corners and middles of stem, width and contrast, each with the sum of its places."""
    measures = (thirds(style, "stem"), WIDTHS, thirds(style, "contrast"))
    return [
        (
            sum(places),
            {name: row[i] for name, row, i in zip(("stem", "width", "contrast"), measures, places, strict=True)},
        )
        for places in itertools.product(range(3), repeat=3)
    ]


GRID = [pytest.param(style, *point, id=f"{style}-{i}") for style in STYLES for i, point in enumerate(grid(style))]
CORNERS = [(style, corner) for style in STYLES for corner in STYLES[style].corners or (None,)]


@cache
def bare_letters(style: str) -> str:
    letters = STYLES[style].letters
    return "".join(sorted(STYLES[style].proportions.rows.keys() & letters.keys())) + "ØøÐđłŁĦħŊŋȷ"


def rings_of(alphabet: ParametricAlphabet, character: str) -> list[shapely.Polygon]:
    outline, _ = shape(alphabet.style, alphabet.parameters, character)
    return [shapely.Polygon(ring) for ring in flatten(outline, FLATTENED)]


def faults_of(alphabet: ParametricAlphabet, character: str) -> list[str]:
    """What is wrong with a letter's outline."""
    outline, _ = shape(alphabet.style, alphabet.parameters, character)
    rings = rings_of(alphabet, character)
    shortest = np.hypot(*(outline.data[:, 3] - outline.data[:, 0]).T).min()
    holes = sum(not ring.exterior.is_ccw for ring in rings)
    parts = len(rings) - holes
    wrong = {
        "a ring crosses itself": not all(ring.is_valid for ring in rings),
        f"an edge of {shortest:.7f}": shortest < SHORTEST_EDGE,
        "a sliver": min(ring.area for ring in rings) < SMALLEST_RING,
        f"{holes} counters": holes != COUNTERS.get(character, 0),
        f"{parts} parts": parts != PARTS.get(character, 1),
    }
    return [f"{character}: {fault}" for fault, there in wrong.items() if there]


@pytest.mark.parametrize(("style", "corner"), [pair for pair in CORNERS if pair[1] not in (None, "round")])
def test_letters_with_other_corners_are_clean(style, corner):
    for i, (stem, width) in enumerate(itertools.product(thirds(style, "stem"), WIDTHS)):
        alphabet = alphabet_of(style, stem=stem, width=width, corner=corner)
        letters = CAPITALS + FIGURES if i % 2 == 0 else bare_letters(style)[i % 5 :: 5]
        assert not [fault for character in letters for fault in faults_of(alphabet, character)], (stem, width)


@pytest.mark.parametrize("style", [style for style in STYLES if "serif" in STYLES[style].sound])
@pytest.mark.parametrize("long", [0, 2])
@pytest.mark.parametrize("bracketed", [0, 2])
def test_letters_stay_clean_with_any_serif(style, long, bracketed):
    """And no serif ever comes off: every letter is of one part."""
    for i, (stem, width) in enumerate(itertools.product(thirds(style, "stem")[::2], WIDTHS[::2])):
        serif, bracket = thirds(style, "serif")[long], thirds(style, "bracket")[bracketed]
        alphabet = alphabet_of(style, stem=stem, width=width, serif=serif, bracket=bracket)
        letters = bare_letters(style)[i::4]
        assert not [fault for character in letters for fault in faults_of(alphabet, character)], (stem, width)


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize(("name", "place"), list(itertools.product(("aperture", "bar"), (0, 2))))
def test_letters_stay_clean_with_any_aperture_and_bar(style, name, place):
    for width in WIDTHS[::2]:
        stem = STYLES[style].sound["stem"].most
        value = thirds(style, name)[place] * (stem if name == "bar" else 1.0)
        alphabet = alphabet_of(style, stem=stem, width=width, **{name: value})
        assert not [fault for character in "CGSAEHaces235689&?" for fault in faults_of(alphabet, character)]


@pytest.mark.parametrize(("style", "corner"), CORNERS)
def test_letters_with_marks_are_clean_and_stand_like_their_bare_letters(style, corner):
    alphabet = alphabet_of(style, corner=corner)
    letters = STYLES[style].letters
    marked = [c for c, entry in letters.items() if entry.spaced_as != c]
    assert len(marked) > 170
    for character in marked if style == "gothic" and corner == "round" else marked[::3]:
        rings = rings_of(alphabet, character)
        assert all(ring.is_valid and ring.area > SMALLEST_RING / 2 for ring in rings), character
        bare = alphabet.set_line(letters[character].spaced_as, 1.0)
        assert alphabet.set_line(character, 1.0).advance_mm == bare.advance_mm


@pytest.mark.parametrize(("style", "place", "parameters"), GRID)
def test_counters_stay_open(style, place, parameters):
    """The largest circle in each counter of a capital or figure; the eye of & is the narrowest there is."""
    alphabet = alphabet_of(style, **parameters)
    for character in set(CAPITALS + FIGURES) & set(bare_letters(style)[place % 3 :: 3]):
        for ring in rings_of(alphabet, character):
            if not ring.exterior.is_ccw:
                radius = shapely.maximum_inscribed_circle(ring, tolerance=0.002).length
                assert 2 * radius > 0.055, (character, radius)


@pytest.mark.parametrize("cap_height_mm", [0.6, 2.3, 100.0])
@pytest.mark.parametrize(("style", "corner"), CORNERS)
def test_stems_are_as_thick_as_asked(style, corner, cap_height_mm):
    """To 1 µm and far below it. In every alphabet the left of U and both uprights of H are stems."""
    for stem, width in itertools.product(thirds(style, "stem"), WIDTHS):
        alphabet = alphabet_of(style, stem=stem, width=width, corner=corner)
        for character, level, uprights in (("H", 0.3, 2), ("I", 0.5, 1), ("L", 0.5, 1), ("U", 0.7, 1), ("T", 0.4, 1)):
            glyph = alphabet.set_line(character, cap_height_mm).glyphs[0]
            for left, right in ink_spans(glyph.outline, level * cap_height_mm)[:uprights]:
                assert right - left == pytest.approx(stem * cap_height_mm, abs=1e-3)
                assert right - left == pytest.approx(stem * cap_height_mm, rel=1e-9)


@pytest.mark.parametrize("style", STYLES)
def test_bar_is_as_thick_as_asked(style):
    alphabet = alphabet_of(style, stem=0.2, bar=0.2 * thirds(style, "bar")[1])
    outline, box = shape(STYLES[style], alphabet.parameters, "H")
    ((low, high),) = ink_columns(outline, box.centre.x)
    assert high - low == pytest.approx(0.2 * thirds(style, "bar")[1])


@pytest.mark.parametrize(("style", "corner"), CORNERS)
def test_rounds_pass_the_lines_and_flats_do_not(style, corner):
    alphabet = alphabet_of(style, corner=corner)
    over = {"gothic": 0.014, "slab": 0.015, "roman": 0.018}[style] if corner in (None, "round") else 0.0
    for character in "OCGQS03689":
        _, box = shape(STYLES[style], alphabet.parameters, character)
        assert box.top == pytest.approx(1 + over, abs=1e-9), character
    for character in "HEITLZKAVWXMN147":
        _, box = shape(STYLES[style], alphabet.parameters, character)
        assert (box.bottom, box.top) == pytest.approx((0, 1), abs=1e-9), character


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("width", WIDTHS)
def test_width_moves_the_whites_and_leaves_the_stems(style, width):
    narrow, wide = alphabet_of(style, width=width), alphabet_of(style, width=min(width + 0.1, 1.8))
    if width < 1.8:
        assert wide.set_line("HNOE", 1).advance_mm > narrow.set_line("HNOE", 1).advance_mm
    assert narrow.set_line("I", 1).glyphs[0].advance_mm > narrow.parameters.stem


@pytest.mark.parametrize("style", STYLES)
def test_tabular_figures_share_one_advance_and_are_not_kerned(style):
    line = alphabet_of(style, stem=0.2).set_line(FIGURES + "1174", 3.0, "tabular")
    advances = {glyph.advance_mm for glyph in line.glyphs}
    assert len(advances) == 1
    steps = np.diff([glyph.x_mm for glyph in line.glyphs])
    assert steps == pytest.approx(advances.pop())
    for glyph in line.glyphs:
        box = bounds(glyph.outline)
        assert box.left == pytest.approx(glyph.advance_mm - box.right)


@pytest.mark.parametrize("style", STYLES)
def test_open_pairs_are_kerned_and_straight_ones_are_not(style):
    alphabet = alphabet_of(style)

    def together(pair: str) -> float:
        apart = sum(alphabet.set_line(c, 1.0).advance_mm for c in pair)
        return alphabet.set_line(pair, 1.0).advance_mm - apart

    assert together("HH") == pytest.approx(0, abs=1e-9)
    for pair in ("AV", "AT", "LT", "LY", "PA", "TA", "VA", "WA", "YA", "FA"):
        assert together(pair) < -0.03, pair


@pytest.mark.parametrize("style", STYLES)
def test_same_parameters_draw_the_same_bytes(style):
    shape.cache_clear()
    first = alphabet_of(style, stem=0.19).set_line("KERN & S2358", 2.0).outline
    shape.cache_clear()
    again = alphabet_of(style, stem=0.19).set_line("KERN & S2358", 2.0).outline
    assert first.data.tobytes() == again.data.tobytes()
    assert first.kinds.tobytes() == again.kinds.tobytes()


@pytest.mark.parametrize("style", STYLES)
def test_slant_leans_and_keeps_heights(style):
    upright, leaning = (alphabet_of(style, slant_deg=lean).set_line("HILL", 5.0) for lean in (0.0, 12.0))
    assert leaning.advance_mm == upright.advance_mm
    box, upright_box = bounds(leaning.outline), bounds(upright.outline)
    assert (box.bottom, box.top) == pytest.approx((upright_box.bottom, upright_box.top))
    assert 0 <= box.right - upright_box.right < 5.0 * np.tan(np.radians(12))


@pytest.mark.parametrize(("style", "corner"), CORNERS)
def test_stencil_letters_have_no_counters(style, corner):
    plain, alphabet = (alphabet_of(style, stem=0.17, corner=corner, stencil=cut) for cut in (False, True))
    for character in "ABDOPQR04689&abdegopq%@":
        rings = rings_of(alphabet, character)
        assert all(ring.is_valid and ring.exterior.is_ccw for ring in rings), character
        before = sum(ring.area if ring.exterior.is_ccw else -ring.area for ring in rings_of(plain, character))
        assert 0.80 * before < sum(ring.area for ring in rings) < before


@pytest.mark.parametrize("style", STYLES)
def test_there_are_all_the_letters_asked_for(style):
    there = set(STYLES[style].letters)
    assert not set(REQUIRED) - there
    assert there == set(STYLES["gothic"].letters)
    # Capital and small letters of Czech, Polish, Hungarian, Romanian, Icelandic, Turkish, Latvian, Maltese, Welsh
    for letters in ("ÁČĎÉĚÍŇÓŘŠŤÚŮÝŽ", "ĄĆĘŁŃÓŚŹŻ", "ŐŰ", "ĂÂÎȘȚ", "ÐÞÆÖ", "ĞİŞÇ", "ĀĢĶĻŅŪ", "ĊĠĦŻ", "ŴŶ"):
        assert not set(letters) - there


@pytest.mark.parametrize("style", STYLES)
def test_a_missing_letter_is_named_with_what_there_is(style):
    with pytest.raises(
        LetteringError, match=rf"{style} has no letter 'Ж' \(U\+0416\); it has .*0–9 .*A–Z _ a–z and 2\d\d more"
    ):
        alphabet_of(style).set_line("ЖELEZNICE", 2.0)


@pytest.mark.parametrize(
    ("style", "asked", "message"),
    [
        ("gothic", {"stem": 0.25}, r"stem 0.25 was asked, its sound range is 0.1 to 0.222"),
        ("gothic", {"stem": 0.05}, r"stem 0.05 was asked, its sound range is 0.1 to 0.222"),
        ("gothic", {"width": 0.4}, r"width 0.4 was asked, its sound range is 0.55 to 1.8"),
        ("gothic", {"width": 2.5}, r"width 2.5 was asked, its sound range is 0.55 to 1.8"),
        ("gothic", {"stem": 0.2, "bar": 0.3}, r"bar 0.3 was asked, its sound range is 0.12 to 0.2"),
        ("gothic", {"contrast": 0.3}, r"contrast 0.3 was asked, its sound range is 0.75 to 1"),
        ("gothic", {"slant_deg": 40.0}, r"slant_deg 40 was asked"),
        ("gothic", {"serif": 0.2}, r"serif 0.2 was asked, but it has no serif"),
        ("gothic", {"stem": float("nan")}, r"stem nan was asked"),
        ("slab", {"stem": 0.25}, r"alphabet slab: stem 0.25 was asked, its sound range is 0.1 to 0.2"),
        ("slab", {"serif": 0.3}, r"alphabet slab: serif 0.3 was asked, its sound range is 0.03 to 0.16"),
        ("slab", {"corner": "square"}, r"alphabet slab: corner 'square' was asked, its corners are round, cut"),
        ("roman", {"contrast": 0.9}, r"alphabet roman: contrast 0.9 was asked, its sound range is 0.25 to 0.6"),
        ("roman", {"bracket": 0.5}, r"alphabet roman: bracket 0.5 was asked, its sound range is 0 to 0.12"),
        ("roman", {"corner": "cut"}, r"alphabet roman: corner 'cut' was asked, it has no corners to choose"),
    ],
)
def test_parameters_out_of_range_say_what_is_sound(style, asked, message):
    with pytest.raises(LetteringError, match=message):
        alphabet_of(style, **asked)
