"""Monograms: letters apart where they cross, every stroke alike, the size that was asked for."""

from __future__ import annotations

import math
from itertools import combinations

import numpy as np
import pytest

from heraldry.errors import GeometryError, LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import contains, intersect, pieces, subtract, to_polygon, unite
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Path
from heraldry.lettering.adjusting import own_stem, with_stem_near
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.monogram import FRAMES, STYLES, Style, interlaced, monogram
from heraldry.lettering.monogram.clash import Window, likely_places
from heraldry.lettering.monogram.cleanness import looks
from heraldry.lettering.monogram.crossings import woven
from heraldry.lettering.monogram.frames import DIAMOND_WIDE, FRAME, FrameName
from heraldry.lettering.monogram.hand import Hand
from heraldry.lettering.monogram.interlacing import laid_out
from heraldry.lettering.treatments.strokes import strokes
from heraldry.shapes.monogram import monogram as monogram_shape
from heraldry.shapes.rounds import circle_path
from tests.faces import face

GOTHIC = ours("gothic")
HEIGHT = 12.0
GAP_HELD_MM = 5e-3
"""Gaps are cut exactly and then scaled with the letters by less than a thousandth, on gaps of some 0.6 mm."""


def bar(left: float, bottom: float, right: float, top: float) -> Outline:
    corners = (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
    return Outline.of([Path.through(corners, closed=True)])


@pytest.mark.parametrize("initials", ["HN", "UM", "CO", "HNR", "BAS", "U&M"])
def test_interlaced_letters_are_a_gap_apart_everywhere(initials: str) -> None:
    sign = monogram(initials, GOTHIC, HEIGHT, gap_mm=0.5)
    for one, other in combinations(sign.letters, 2):
        assert distance(one, other) > 0.5 - GAP_HELD_MM


@pytest.mark.parametrize("initials", ["HN", "UM", "HNR"])
def test_interlaced_letters_do_cross(initials: str) -> None:
    """Each pair of neighbours overlaps in its boxes, and at least one letter was cut in parts."""
    sign = monogram(initials, GOTHIC, HEIGHT)
    for one, other in zip(sign.letters[:-1], sign.letters[1:], strict=True):
        assert bounds(one).right > bounds(other).left
    assert sum(len(pieces(letter)) for letter in sign.letters) > len(initials)


def test_straps_go_over_and_under_by_turns() -> None:
    """Two upright straps across two level ones: along every strap over and under alternate."""
    uprights = Outline.gather([bar(2, 0, 3, 10), bar(7, 0, 8, 10)])
    levels = Outline.gather([bar(0, 2, 10, 3), bar(0, 7, 10, 8)])
    frame = bar(0, 9.5, 10, 10.5)
    letters = (unite(uprights, frame), levels)
    over_first, over_second = interlaced(letters, 0.2)
    on_top = {(x, y): contains(over_first, Point(x, y)) for x in (2.5, 7.5) for y in (2.5, 7.5)}
    assert on_top[2.5, 2.5] != on_top[2.5, 7.5]
    assert on_top[2.5, 2.5] != on_top[7.5, 2.5]
    assert on_top[2.5, 2.5] == on_top[7.5, 7.5]
    assert all(on_top[place] != contains(over_second, Point(*place)) for place in on_top)


def test_the_one_under_is_cut_back_on_both_sides_and_the_one_over_is_whole() -> None:
    upright, level = bar(4, 0, 5, 9), bar(0, 4, 9, 5)
    cut, whole = sorted(interlaced((upright, level), 0.25), key=lambda letter: -len(pieces(letter)))
    assert len(pieces(cut)) == 2 and len(pieces(whole)) == 1
    assert area(whole) == pytest.approx(9.0)
    assert area(cut) == pytest.approx(9.0 - 1.5)
    assert distance(cut, whole) == pytest.approx(0.25, abs=1e-4)


def test_a_stroke_that_ends_in_another_goes_under_it() -> None:
    """Were the upright over, it would only notch the level bar."""
    ending, level = bar(4, 0, 5, 4.6), bar(0, 4, 9, 5)
    for letters in ((ending, level), (level, ending)):
        woven = interlaced(letters, 0.25)
        assert area(woven[letters.index(level)]) == pytest.approx(9.0)
        assert bounds(woven[letters.index(ending)]).top == pytest.approx(3.75, abs=1e-3)


def test_letters_apart_stay_as_they_are() -> None:
    apart = (bar(0, 0, 1, 5), bar(3, 0, 4, 5))
    assert [area(letter) for letter in interlaced(apart, 0.3)] == pytest.approx([5.0, 5.0])


def test_crumbs_between_two_gaps_are_left_out() -> None:
    """Between the two uprights a crumb of the level bar 0.1 mm long would be left."""
    uprights = unite(bar(3, 0, 4, 9), bar(4.6, 0, 5.6, 9), bar(3, 0, 5.6, 1))
    woven = interlaced((uprights, bar(0, 4, 9, 5)), 0.25)
    assert all(area(piece) >= 0.25 for letter in woven for piece in pieces(letter))


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("frame", FRAMES)
def test_every_style_in_every_frame_is_as_high_as_asked_and_does_not_touch_it(style, frame) -> None:
    sign = monogram("NR", GOTHIC, HEIGHT, style, frame)
    box = bounds(sign.outline)
    assert box.height == pytest.approx(HEIGHT, abs=0.02)
    assert abs(box.centre - ORIGIN) < 0.02
    if frame != "none":
        letters = Outline.gather(sign.letters)
        assert distance(letters, sign.frame) > 0.1
        assert area(intersect(letters, sign.frame)) == 0.0


@pytest.mark.parametrize(("style", "stem"), [("interlaced", 1.5), ("stacked", 0.9), ("large", 1.5), ("row", 1.5)])
def test_stems_are_alike_at_every_size(style, stem: float) -> None:
    """H and I have plain stems; the small I beside a large H is drawn heavier, as far as its alphabet goes."""
    sign = monogram("HI", GOTHIC, HEIGHT, style, stem_mm=stem, gap_mm=0.5)
    for letter in sign.letters:
        assert strokes(letter).upright_mm == pytest.approx(stem, rel=0.03)


def test_a_frame_is_as_thick_as_the_stems() -> None:
    ring = monogram("HN", GOTHIC, HEIGHT, "row", "ring", stem_mm=0.8).frame
    assert area(ring) == pytest.approx(math.pi * (6.0**2 - 5.2**2), rel=1e-6)
    diamond = monogram("HN", GOTHIC, HEIGHT, "row", "diamond", stem_mm=0.8).frame
    outer, inner = (Outline.of([path]) for path in diamond.paths)
    assert bounds(outer).width == pytest.approx(DIAMOND_WIDE * HEIGHT)
    assert distance(subtract(bar(-20, -20, 20, 20), outer), inner) == pytest.approx(0.8, abs=1e-4)


def test_one_letter_is_large() -> None:
    heights = [bounds(letter).height for letter in monogram("HNR", GOTHIC, HEIGHT, "large").letters]
    assert heights[1] == pytest.approx(HEIGHT, rel=0.01)
    assert max(heights[0], heights[2]) < 0.65 * heights[1]
    first = [bounds(letter).height for letter in monogram("U&M", GOTHIC, HEIGHT, "large").letters]
    assert first[0] > 1.5 * max(first[1:])


def test_letters_in_a_row_are_brought_up_to_a_gap() -> None:
    one, two, three = monogram("HAR", GOTHIC, HEIGHT, "row", gap_mm=0.6).letters
    assert distance(one, two) == pytest.approx(0.6, abs=2e-3)
    assert distance(two, three) == pytest.approx(0.6, abs=2e-3)


def test_stacked_letters_are_centred_by_their_ink() -> None:
    letters = monogram("LIJ", GOTHIC, HEIGHT, "stacked").letters
    assert [bounds(letter).centre.x for letter in letters] == pytest.approx([0.0] * 3, abs=1e-6)
    tops = [bounds(letter).top for letter in letters]
    assert tops == sorted(tops, reverse=True)


def test_likely_places_avoid_stems_side_by_side_and_seek_crossings() -> None:
    """Two uprights wished upon each other part to the edge of what is free; a level bar crosses the upright."""
    upright, level = to_polygon(bar(-0.5, -5, 0.5, 5)), to_polygon(bar(-4, -0.5, 4, 0.5))
    window = Window((-3.0, 3.0), (0.0,), ORIGIN, 10.0)
    aside = likely_places(upright, upright, 1.0, window, 1)[0]
    assert abs(aside.at.x) > 2.5
    across = likely_places(upright, level, 1.0, window, 1)[0]
    assert abs(across.at.x) < 0.3
    assert across.along < aside.along


def test_the_same_twice() -> None:
    one, two = monogram("HNR", GOTHIC, HEIGHT).outline, monogram("HNR", GOTHIC, HEIGHT).outline
    assert np.array_equal(one.data, two.data)


def test_scales_with_its_height() -> None:
    small, large = monogram("UM", GOTHIC, 4.0).outline, monogram("UM", GOTHIC, 16.0).outline
    assert area(large) == pytest.approx(16 * area(small), rel=2e-3)


def test_a_stem_out_of_range_is_the_nearest_there_is() -> None:
    assert own_stem(with_stem_near(GOTHIC, 0.15)) == pytest.approx(0.15)
    assert own_stem(with_stem_near(GOTHIC, 0.50)) == pytest.approx(1 / 4.5, rel=0.02)
    assert own_stem(with_stem_near(GOTHIC, 0.01)) == pytest.approx(0.10, rel=0.05)


class OneStem:
    """An alphabet that cannot change its stem, as a font without a weight axis."""

    name = "one stem"

    def set_line(self, text, cap_height_mm, figures="proportional"):
        return GOTHIC.set_line(text, cap_height_mm, figures)

    def with_stem(self, stem):
        raise LetteringError("there is no weight axis")


def test_an_alphabet_of_one_stem_is_taken_as_it_is() -> None:
    sign = monogram("HNR", OneStem(), HEIGHT, "large")
    thick = [strokes(letter).upright_mm for letter in sign.letters]
    assert thick[0] < thick[1]


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (lambda: monogram("HNRX", GOTHIC, 9.0), "two or three initials are interlaced, found 4: H N R X"),
        (lambda: monogram("HNRXY", GOTHIC, 9.0, "row"), "a monogram has 1 to 4 initials, found 5"),
        (lambda: monogram("", GOTHIC, 9.0), "a monogram has 1 to 4 initials, found 0"),
        (lambda: monogram("HN", GOTHIC, 0.0), "a monogram's height is 0 mm"),
        (lambda: monogram("HN", GOTHIC, 9.0, "interlacd"), "did you mean 'interlaced'?"),
        (lambda: monogram("HN", GOTHIC, 9.0, "row", "rign"), "did you mean 'ring'?"),
        (lambda: monogram("HN", GOTHIC, 3.0, "row", "ring", stem_mm=1.4), "leave no room in 3 mm"),
        (lambda: monogram("H ", GOTHIC, 9.0), "an initial of a monogram is a letter with ink, found ' '"),
    ],
)
def test_what_cannot_be_done_is_said(asked, says: str) -> None:
    with pytest.raises(LetteringError, match=says.replace("?", r"\?")):
        asked()


def test_shape_takes_initials_as_they_are_written() -> None:
    plain = monogram_shape("HNR", 9.0, centre=Point(3, 4)).outline
    for written in ("H N R", "H.N.R.", "H·N·R"):
        assert np.array_equal(monogram_shape(written, 9.0, centre=Point(3, 4)).outline.data, plain.data)
    assert abs(bounds(plain).centre - Point(3, 4)) < 0.02
    moved = monogram_shape("HNR", 9.0).outline.transformed(Affine.move(3, 4))
    assert area(plain) == pytest.approx(area(moved))
    with pytest.raises(GeometryError, match="gap is 0"):
        monogram_shape("HN", 9.0, gap=0.0)


def test_every_frame_leaves_room_in_its_own_measure() -> None:
    for frame in FRAME.values():
        drawn = frame.draw(10.0, 0.5)
        assert drawn.is_empty or frame.reach(drawn) == pytest.approx(frame.room(10.0, 0.0, 0.0))


@pytest.mark.parametrize("style", ["row", "large"])
@pytest.mark.parametrize("frame", ["ring", "diamond"])
def test_letters_in_a_frame_are_narrowed_to_be_high(style: Style, frame: FrameName) -> None:
    free, framed = (monogram("UMR", ours("gothic"), 10.0, style, name) for name in ("none", frame))
    aspects = [box.width / box.height for box in (bounds(Outline.gather(one.letters)) for one in (free, framed))]
    assert 0.68 < aspects[1] / aspects[0] < 0.9


def test_an_alphabet_of_one_width_is_framed_as_it_is() -> None:
    lato = face("font_lato", "Lato-Bold.ttf")
    free, framed = (monogram("UMR", lato, 10.0, "row", name) for name in ("none", "ring"))
    one, other = (bounds(Outline.gather(mono.letters)) for mono in (free, framed))
    assert one.width / one.height == pytest.approx(other.width / other.height, rel=0.01)


@pytest.mark.parametrize("thick", [0.4, 2.0])
def test_where_nothing_else_decides_the_first_letter_goes_over_on_top(thick: float) -> None:
    rings = tuple(_ring(Point(x, 0), 5.0, 5.0 - thick) for x in (0, 5))
    for letters in (rings, rings[::-1]):
        woven = interlaced(letters, 0.3)
        upper = bar(-20, 0, 20, 20)
        lost = [
            area(intersect(one, upper)) - area(intersect(cut, upper)) for one, cut in zip(letters, woven, strict=True)
        ]
        assert lost[0] == pytest.approx(0, abs=1e-6)
        assert lost[1] > thick**2


def _ring(centre: Point, outer: float, inner: float) -> Outline:
    return Outline.of([circle_path(centre, outer), circle_path(centre, inner).reversed()])


MANY = ["HNR", "UMR", "XYZ", "WMN", "SOQ", "JPS", "FVR", "DBP", "U&M", "NR", "OO", "AA", "SS", "LT"]
INK_KEPT = 0.85
"""So much is left of every letter: a stroke that goes under twice still reads as one. Common practice, no source."""


@pytest.mark.parametrize("alphabet", ["gothic", "slab", "roman"])
@pytest.mark.parametrize("initials", MANY)
def test_interlaced_letters_stay_whole(alphabet: str, initials: str) -> None:
    """No piece is smaller than a square of the stem, no letter loses much, and strokes are a gap apart."""
    stem, gap = 0.075, 0.0375
    hand = Hand(ours(alphabet), stem)
    whole = [spot.drawn(hand, 1.0) for spot in laid_out(initials, hand, gap)]
    parted = interlaced(whole, gap, stem)
    for letter, cut in zip(whole, parted, strict=True):
        assert area(cut) >= INK_KEPT * area(letter)
        assert min(area(piece) for piece in pieces(cut)) >= stem**2
    for one, other in combinations(parted, 2):
        assert distance(one, other) >= gap * 0.99


@pytest.mark.parametrize("initials", ["HNR", "UMR", "XYZ", "JPS", "QUV", "UM", "SS", "HI"])
def test_nothing_is_left_out_for_being_a_crumb(initials: str) -> None:
    """What the weaving leaves is what is drawn: had there been crumbs, they would be missing."""
    stem, gap = 0.075, 0.0375
    hand = Hand(GOTHIC, stem)
    whole = [spot.drawn(hand, 1.0) for spot in laid_out(initials, hand, gap)]
    flat = woven([to_polygon(letter) for letter in whole], gap, stem)
    for cut, left in zip(interlaced(whole, gap, stem), flat, strict=True):
        assert area(cut) == pytest.approx(left.area, rel=2e-3)


@pytest.mark.parametrize("initials", ["NR", "VA", "HNR", "XYZ"])
def test_outer_letters_read_from_left_to_right(initials: str) -> None:
    letters = monogram(initials, GOTHIC, HEIGHT).letters
    middles = [bounds(letter).centre.x for letter in letters]
    assert middles == sorted(middles)


def test_letters_that_do_not_go_together_stand_beside_each_other() -> None:
    """Slabs on slabs would only clot: M and N keep all of their ink, or nearly so."""
    hand = Hand(ours("slab"), 0.075)
    whole = [spot.drawn(hand, 1.0) for spot in laid_out("MN", hand, 0.0375)]
    parted = interlaced(whole, 0.0375, 0.075)
    assert sum(map(area, parted)) >= 0.97 * sum(map(area, whole))


def test_a_stroke_is_untidy_at_a_joint_and_clean_away_from_it() -> None:
    """A level bar crosses the stem of a T high up, at its joint, or in the middle."""
    stem, gap = 1.0, 0.5
    tee = unite(bar(-0.5, -6, 0.5, 6), bar(-5, 5, 5, 6))
    for height, is_clean in ((0.0, True), (3.4, False)):
        level = bar(-6, height - 0.5, 6, height + 0.5)
        seen = looks(to_polygon(tee), to_polygon(level), [ORIGIN], stem, gap)
        assert (seen.crossings[0] > 0.9) == is_clean
        assert (seen.untidy[0] < 0.05) == is_clean


def test_letters_fixed_in_stem_and_gap_keep_both() -> None:
    sign = monogram("HNR", GOTHIC, HEIGHT, gap_mm=0.4, stem_mm=0.7)
    assert strokes(sign.letters[0]).upright_mm == pytest.approx(0.7, rel=0.01)
    assert strokes(sign.letters[2]).upright_mm == pytest.approx(0.7, rel=0.01)
    assert min(distance(one, other) for one, other in combinations(sign.letters, 2)) == pytest.approx(0.4, rel=0.02)
