"""The gothic over its whole sound range: clean outlines, exact stems, open counters, columns of figures."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
import shapely

from heraldry.errors import LetteringError
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.lettering.alphabets import STYLES, LetterParameters, ParametricAlphabet
from heraldry.lettering.alphabets.parametric import FIGURES, shape
from heraldry.lettering.scan import ink_spans

GOTHIC = STYLES["gothic"]
CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
SMALL = "abcdefghijklmnopqrstuvwxyz"
REQUIRED = CAPITALS + SMALL + FIGURES + "&.,'-:;\"–—/()#$€£+*?!%№@=" + "ÆŒØŁĐÞÐßæœøłđþð"

STEMS, WIDTHS, CORNERS = (0.10, 0.16, 1 / 4.5), (0.55, 1.0, 1.8), ("round", "cut", "square")
# All corners and middles of stem and width with curves; the four corners and the very middle with the others.
RANGE = tuple(
    (stem, width, corner)
    for stem, width, corner in itertools.product(STEMS, WIDTHS, CORNERS)
    if corner == "round" or (stem == STEMS[1]) == (width == WIDTHS[1])
)

# Chords of curves, in cap heights; fine enough to find a crossing of a thousandth of a stem.
FLATTENED = 1e-5

# An outline must not have an edge shorter than this, nor a ring smaller: such things are leftovers of a set
# operation that went through two nearly equal edges, which differ by rounding. In cap heights.
SHORTEST_EDGE, SMALLEST_RING = 1e-5, 1e-3

COUNTERS = {
    **dict.fromkeys("ADOPQR04690abdegopqeÐĐÞØŒÆþðđ№@°#", 1),
    **dict.fromkeys("B8&%æœ", 2),
    "Ø": 2,
    "ø": 2,
}  # fmt: skip
PARTS = {**dict.fromkeys(':;"!?=ij«»“”„¡¿', 2), "%": 3, "№": 3}


def gothic(**parameters) -> ParametricAlphabet:
    return ParametricAlphabet("gothic", GOTHIC, LetterParameters(**parameters))


def rings_of(alphabet: ParametricAlphabet, character: str) -> list[shapely.Polygon]:
    outline, _ = shape(alphabet.style, alphabet.parameters, character)
    return [shapely.Polygon(ring) for ring in flatten(outline, FLATTENED)]


def bare_letters() -> str:
    return "".join(sorted(GOTHIC.proportions.rows.keys() & GOTHIC.letters.keys())) + "ØøÐđł"


@pytest.mark.parametrize(("stem", "width", "corner"), RANGE)
def test_every_letter_is_a_clean_outline(stem, width, corner):
    alphabet = gothic(stem=stem, width=width, corner=corner)
    faults = []
    for character in bare_letters():
        outline, _ = shape(alphabet.style, alphabet.parameters, character)
        rings = rings_of(alphabet, character)
        edges = np.hypot(*(outline.data[:, 3] - outline.data[:, 0]).T)
        holes = sum(not ring.exterior.is_ccw for ring in rings)
        if not all(ring.is_valid for ring in rings):
            faults.append((character, "a ring crosses itself"))
        elif edges.min() < SHORTEST_EDGE:
            faults.append((character, f"an edge of {edges.min():.6f}"))
        elif min(ring.area for ring in rings) < SMALLEST_RING:
            faults.append((character, "a sliver"))
        elif holes != COUNTERS.get(character, 0):
            faults.append((character, f"{holes} counters"))
        elif len(rings) - holes != PARTS.get(character, 1):
            faults.append((character, f"{len(rings) - holes} parts"))
    assert not faults


@pytest.mark.parametrize("corner", CORNERS)
def test_letters_with_marks_are_clean_and_stand_like_their_bare_letters(corner):
    alphabet = gothic(stem=0.18, corner=corner)
    marked = [c for c, entry in GOTHIC.letters.items() if entry.spaced_as != c]
    assert len(marked) > 170
    for character in marked:
        rings = rings_of(alphabet, character)
        assert all(ring.is_valid and ring.area > SMALLEST_RING / 2 for ring in rings), character
        bare = alphabet.set_line(GOTHIC.letters[character].spaced_as, 1.0)
        assert alphabet.set_line(character, 1.0).advance_mm == bare.advance_mm


@pytest.mark.parametrize(("stem", "width", "corner"), RANGE)
def test_counters_stay_open(stem, width, corner):
    """The largest circle in each counter of a capital or figure; the eye of & is the narrowest there is."""
    alphabet = gothic(stem=stem, width=width, corner=corner)
    for character in CAPITALS + FIGURES:
        for ring in rings_of(alphabet, character):
            if not ring.exterior.is_ccw:
                radius = shapely.maximum_inscribed_circle(ring, tolerance=0.002).length
                assert 2 * radius > 0.055, (character, radius)


@pytest.mark.parametrize("cap_height_mm", [0.6, 2.3, 100.0])
@pytest.mark.parametrize(("stem", "width", "corner"), RANGE)
def test_stems_are_as_thick_as_asked(stem, width, corner, cap_height_mm):
    alphabet = gothic(stem=stem, width=width, corner=corner)
    for character, level, uprights in (
        ("H", 0.25, 2),
        ("I", 0.5, 1),
        ("E", 0.3, 1),
        ("L", 0.5, 1),
        ("U", 0.8, 2),
        ("T", 0.4, 1),
    ):
        glyph = alphabet.set_line(character, cap_height_mm).glyphs[0]
        spans = ink_spans(glyph.outline, level * cap_height_mm)
        assert len(spans) == uprights
        for left, right in spans:
            assert right - left == pytest.approx(stem * cap_height_mm, abs=1e-3)
            assert right - left == pytest.approx(stem * cap_height_mm, rel=1e-9)


def test_bar_is_as_thick_as_asked():
    outline, _ = shape(GOTHIC, gothic(stem=0.2, bar=0.15).parameters, "H")
    heights = sorted({round(y, 9) for y in outline.data[:, 0, 1].tolist()})
    assert heights[2] - heights[1] == pytest.approx(0.15)


@pytest.mark.parametrize("corner", CORNERS)
def test_rounds_pass_the_lines_and_flats_do_not(corner):
    alphabet = gothic(corner=corner)
    over = 0.014 if corner == "round" else 0.0
    for character in "OCGQS03689":
        _, box = shape(GOTHIC, alphabet.parameters, character)
        assert box.top == pytest.approx(1 + over, abs=1e-9), character
    for character in "HEITLZKAVWXMN147":
        _, box = shape(GOTHIC, alphabet.parameters, character)
        assert (box.bottom, box.top) == pytest.approx((0, 1), abs=1e-12)


@pytest.mark.parametrize(("stem", "width", "corner"), RANGE)
def test_diagonals_of_z_and_7_leave_their_bars_at_the_very_ends(stem, width, corner):
    """No shelf stands out beyond them: a bar's edge toward the counter begins at the diagonal, inside the letter."""
    alphabet = gothic(stem=stem, width=width, corner=corner)
    for character in "Z7z":
        outline, box = shape(GOTHIC, alphabet.parameters, character)
        turns = {(round(x, 6), round(y, 6)) for x, y in outline.data[:, 0].tolist()}
        right = max(x for x, y in turns if y == round(box.top, 6))
        assert len([point for point in turns if point[0] == right]) == 2, character
        assert len(turns) == {"Z": 10, "z": 10, "7": 7}[character], character


def test_chamfers_share_one_angle():
    """Every edge of the octagonal rounds is level, upright or at 45 degrees, inside as outside."""
    alphabet = gothic(corner="cut", stem=0.17)
    for character in "OCDGJUBPS03689":
        outline, _ = shape(GOTHIC, alphabet.parameters, character)
        run = np.abs(outline.data[:, 3] - outline.data[:, 0])
        slanting = run[(run > 1e-9).all(axis=1)]
        assert len(slanting) >= 2, character
        assert slanting[:, 0] == pytest.approx(slanting[:, 1], abs=1e-9), character


def test_chamfered_stroke_keeps_its_thickness():
    """Between the outer and the inner chamfer of O lies the mean of its side and its crown."""
    alphabet = gothic(corner="cut", stem=0.15)
    pen = GOTHIC.make_pen(alphabet.parameters)
    outer, inner = (shapely.LinearRing(ring) for ring in flatten(shape(GOTHIC, alphabet.parameters, "O")[0], 1e-4))
    corner = outer.interpolate(0.5, normalized=True)
    slanting = [
        shapely.LineString(edge)
        for edge in itertools.pairwise(outer.coords)
        if abs(edge[1][0] - edge[0][0]) > 1e-9 and abs(edge[1][1] - edge[0][1]) > 1e-9
    ]
    assert len(slanting) == 4 and corner is not None
    for edge in slanting:
        thick = edge.interpolate(0.5, normalized=True).distance(inner)
        assert thick == pytest.approx((pen.side + pen.crown) / 2, rel=1e-6)


@pytest.mark.parametrize("width", WIDTHS)
def test_width_leaves_the_stems_and_moves_the_whites(width):
    narrow, wide = gothic(width=width), gothic(width=min(width + 0.1, 1.8))
    if width < 1.8:
        assert wide.set_line("HNOE", 1).advance_mm > narrow.set_line("HNOE", 1).advance_mm
    assert narrow.set_line("I", 1).glyphs[0].advance_mm > narrow.parameters.stem


def test_tabular_figures_share_one_advance_and_are_not_kerned():
    line = gothic(stem=0.2).set_line(FIGURES + "1174", 3.0, "tabular")
    advances = {glyph.advance_mm for glyph in line.glyphs}
    assert len(advances) == 1
    steps = np.diff([glyph.x_mm for glyph in line.glyphs])
    assert steps == pytest.approx(advances.pop())
    for glyph in line.glyphs:
        box = bounds(glyph.outline)
        assert box.left == pytest.approx(glyph.advance_mm - box.right)


def test_open_pairs_are_kerned_and_straight_ones_are_not():
    alphabet = gothic()

    def together(pair: str) -> float:
        apart = sum(alphabet.set_line(c, 1.0).advance_mm for c in pair)
        return alphabet.set_line(pair, 1.0).advance_mm - apart

    assert together("HH") == pytest.approx(0)
    for pair in ("AV", "AT", "LT", "LY", "PA", "TA", "VA", "WA", "YA", "FA"):
        assert together(pair) < -0.03, pair


def test_same_parameters_draw_the_same_bytes():
    shape.cache_clear()
    first = gothic(stem=0.19, corner="cut").set_line("KERN & S2358", 2.0).outline
    shape.cache_clear()
    again = gothic(stem=0.19, corner="cut").set_line("KERN & S2358", 2.0).outline
    assert first.data.tobytes() == again.data.tobytes()
    assert first.kinds.tobytes() == again.kinds.tobytes()


def test_slant_leans_and_keeps_heights():
    upright, leaning = (gothic(slant_deg=lean).set_line("HILL", 5.0) for lean in (0.0, 12.0))
    assert leaning.advance_mm == upright.advance_mm
    box, upright_box = bounds(leaning.outline), bounds(upright.outline)
    assert (box.bottom, box.top) == pytest.approx((upright_box.bottom, upright_box.top))
    assert box.right - upright_box.right == pytest.approx(0, abs=5.0 * np.tan(np.radians(12)))
    assert box.right > upright_box.right or box.left == pytest.approx(upright_box.left)


@pytest.mark.parametrize("corner", CORNERS)
def test_stencil_letters_have_no_counters(corner):
    alphabet = gothic(stem=0.17, corner=corner, stencil=True)
    plain = gothic(stem=0.17, corner=corner)
    for character in "ABDOPQR04689&abdegopq%@":
        rings = rings_of(alphabet, character)
        assert all(ring.is_valid and ring.exterior.is_ccw for ring in rings), character
        before = sum(ring.area if ring.exterior.is_ccw else -ring.area for ring in rings_of(plain, character))
        assert 0.80 * before < sum(ring.area for ring in rings) < before


def test_there_are_all_the_letters_asked_for():
    assert not set(REQUIRED) - set(GOTHIC.letters)
    # Capital and small letters of Czech, Polish, Hungarian, Romanian, Icelandic, Turkish, Latvian, Maltese, Welsh
    for letters in ("ÁČĎÉĚÍŇÓŘŠŤÚŮÝŽ", "ĄĆĘŁŃÓŚŹŻ", "ŐŰ", "ĂÂÎȘȚ", "ÐÞÆÖ", "ĞİŞÇ", "ĀĢĶĻŅŪ", "ĊĠĦŻ", "ŴŶ"):
        assert not set(letters) - set(GOTHIC.letters)


def test_a_missing_letter_is_named_with_what_there_is():
    with pytest.raises(LetteringError, match=r"gothic has no letter 'Ж' \(U\+0416\); it has .*0–9 .*A–Z a–z .*"):
        gothic().set_line("ЖELEZNICE", 2.0)


@pytest.mark.parametrize(
    ("asked", "message"),
    [
        ({"stem": 0.25}, r"stem 0.25 was asked, its sound range is 0.1 to 0.222"),
        ({"stem": 0.05}, r"stem 0.05 was asked, its sound range is 0.1 to 0.222"),
        ({"width": 0.4}, r"width 0.4 was asked, its sound range is 0.55 to 1.8"),
        ({"width": 2.5}, r"width 2.5 was asked, its sound range is 0.55 to 1.8"),
        ({"stem": 0.2, "bar": 0.3}, r"bar 0.3 was asked, its sound range is 0.12 to 0.2"),
        ({"contrast": 0.3}, r"contrast 0.3 was asked, its sound range is 0.75 to 1"),
        ({"slant_deg": 40.0}, r"slant_deg 40 was asked"),
        ({"serif": 0.2}, r"serif 0.2 was asked, but it has no serif"),
        ({"stem": float("nan")}, r"stem nan was asked"),
    ],
)
def test_parameters_out_of_range_say_what_is_sound(asked, message):
    with pytest.raises(LetteringError, match=message):
        gothic(**asked)
