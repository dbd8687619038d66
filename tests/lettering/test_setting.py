"""Lines laid straight, round circles and along paths; fitted to widths and angles."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import LetteringError
from heraldry.geometry.distance import distance
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import ArcLength, area, bounds, length
from heraldry.geometry.outline import CUBIC, EMPTY, LINE, Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path
from heraldry.lettering.alphabet import SetGlyph, SetLine
from heraldry.lettering.fonts import FontAlphabet
from heraldry.lettering.setting import Block, along, fit_to_angle, fit_to_width, ink_angles, on_circle, straight, whites
from heraldry.lettering.setting.whites import LEAST_WHITE_CAPS
from tests.faces import face

CENTRE = Point(31.0, -7.0)
WAVE = Path(
    (
        Cubic(Point(0, 0), Point(12, 10), Point(20, -12), Point(34, 4)),
        Cubic(Point(34, 4), Point(39.25, 10), Point(48, 8), Point(52, 2)),
    )
)


@pytest.fixture(scope="module")
def lato() -> FontAlphabet:
    return face("font_lato", "Lato-Bold.ttf")


@pytest.fixture(scope="module")
def serif() -> FontAlphabet:
    return face("font_source_serif_pro", "SourceSerifPro-Bold.otf")


def bars(count: int, thick: float = 0.4, gap: float = 1.0, height: float = 2.0) -> SetLine:
    """Letters that are plain upright bars in the middle of their advances: all about them is known."""
    bar = Bounds(gap / 2, 0.0, gap / 2 + thick, height).outline
    advance = thick + gap
    glyphs = tuple(SetGlyph("I", bar, i * advance, advance) for i in range(count))
    return SetLine(glyphs, count * advance, height)


def feet(letter: Outline) -> np.ndarray:
    """The middle of a bar's foot: its first side is the foot."""
    return (letter.data[0, 0] + letter.data[0, 3]) / 2


# ---- straight


@pytest.mark.parametrize(("anchor", "edge"), [("start", "left"), ("end", "right")])
def test_ink_starts_or_ends_at_the_point(lato, anchor, edge):
    box = bounds(straight(lato.set_line("ATLAS", 2.3), Point(5, 7), anchor).outline)
    assert getattr(box, edge) == pytest.approx(5.0, abs=1e-9)


def test_ink_is_centred_on_the_point(lato):
    box = bounds(straight(lato.set_line("LATVIA", 2.3), Point(5, 7), "middle").outline)
    assert box.centre.x == pytest.approx(5.0, abs=1e-9)
    assert box.bottom == pytest.approx(7.0, abs=1e-9)


def test_a_turned_line_is_the_line_turned(lato):
    line = lato.set_line("TURN", 2.3)
    flat, steep = straight(line, ORIGIN), straight(line, Point(3, 4), turn_deg=90)
    box, turned = bounds(flat.outline), bounds(steep.outline)
    assert (turned.bottom, turned.right) == pytest.approx((4.0, 3.0 - box.bottom))
    assert (turned.height, turned.width) == pytest.approx((box.width, box.height))


def test_letters_that_touch_are_united():
    overlapping = bars(3, gap=1.0).tracked(-1.2)
    assert area(straight(overlapping, ORIGIN).outline) == pytest.approx(2.0 * (0.4 + 2 * 0.2))
    assert len(straight(overlapping, ORIGIN).outline.rings) == 2


def test_a_line_of_spaces_is_laid_empty(lato):
    for line in (lato.set_line("   ", 2.0), lato.set_line("", 2.0)):
        for laid in (straight(line, ORIGIN), on_circle(line, ORIGIN, 9.0), along(line, WAVE)):
            assert laid.outline.is_empty
            assert len(laid.letters) == len(line.glyphs)
            assert laid.notes == ()


# ---- round a circle


@settings(derandomize=True, deadline=None, max_examples=30)
@given(count=st.integers(2, 12), radius=st.floats(4.0, 40.0), inside=st.booleans())
def test_arc_length_along_the_base_line_is_kept(count, radius, inside):
    line = bars(count)
    if line.advance_mm > math.tau * radius * 0.9:
        return
    laid = on_circle(line, CENTRE, radius, "inside" if inside else "outside")
    spokes = np.array([feet(letter) for letter in laid.letters]) - [CENTRE.x, CENTRE.y]
    assert np.hypot(*spokes.T) == pytest.approx(radius, abs=1e-9)
    angles = np.unwrap(np.arctan2(spokes[:, 1], spokes[:, 0]))
    origins = np.diff([glyph.x_mm for glyph in laid.line.glyphs])
    assert np.diff(angles) * radius * (1 if inside else -1) == pytest.approx(origins, abs=1e-9)


def test_origins_of_a_kerned_line_keep_their_distances(lato):
    """Each letter stands on the circle at the middle of its advance, and is turned about it."""
    line = lato.set_line("AVATAR", 2.3)
    laid = on_circle(line, ORIGIN, 20.0)
    for glyph, letter in zip(laid.line.glyphs, laid.letters, strict=True):
        flat = glyph.outline.data[0, 0] - [glyph.advance_mm / 2, 0.0]
        assert math.hypot(*letter.data[0, 0]) == pytest.approx(math.hypot(flat[0], flat[1] + 20.0), abs=1e-9)


def test_outside_reads_clockwise_with_feet_in_and_inside_the_other_way():
    outside, inside = on_circle(bars(5), ORIGIN, 10), on_circle(bars(5), ORIGIN, 10, "inside")
    assert bounds(outside.letters[2]).bottom == pytest.approx(math.sqrt(100 - 0) - 0.0, abs=0.01)
    assert bounds(outside.letters[2]).top == pytest.approx(12.0, abs=1e-9)
    assert feet(outside.letters[0])[0] < feet(outside.letters[4])[0]
    assert bounds(inside.letters[2]).bottom == pytest.approx(-10.0, abs=1e-9)
    assert bounds(inside.letters[2]).top == pytest.approx(-8.0, abs=1e-9)
    assert feet(inside.letters[0])[0] < feet(inside.letters[4])[0]


@pytest.mark.parametrize("reads", ["outside", "inside"])
@pytest.mark.parametrize("angle", ["top", "bottom", "left", 0.0, 33.0, -400.0])
@pytest.mark.parametrize("text", ["LATVIA", "AT & L", "I"])
def test_ink_is_held_at_the_angle(lato, reads, angle, text):
    """Ink, not advances: L begins with a stem and A ends in a slant, and the middle is of what is seen."""
    line = lato.set_line(text, 2.3)
    wanted = {"top": 90.0, "bottom": 270.0, "left": 180.0}.get(angle, angle)
    for anchor, read in (("middle", "middle_deg"), ("start", "start_deg"), ("end", "end_deg")):
        laid = on_circle(line, CENTRE, 15.0, reads, **{anchor: angle})
        found = getattr(ink_angles(laid, CENTRE), read)
        assert (found - wanted + 180) % 360 - 180 == pytest.approx(0.0, abs=1e-6)


def test_ink_angles_of_a_bar_are_known():
    laid = on_circle(bars(1), ORIGIN, 10.0)
    ink = ink_angles(laid, ORIGIN)
    assert ink.span_deg == pytest.approx(2 * math.degrees(math.atan2(0.2, 10.0)))
    assert (ink.start_deg > ink.end_deg) is False or ink.middle_deg == pytest.approx(90.0)


def test_text_stands_at_the_top_or_at_the_bottom_unless_told(lato):
    line = lato.set_line("RING", 2.0)
    assert ink_angles(on_circle(line, CENTRE, 9), CENTRE).middle_deg % 360 == pytest.approx(90)
    assert ink_angles(on_circle(line, CENTRE, 9, "inside"), CENTRE).middle_deg % 360 == pytest.approx(270)


def test_letters_on_a_tight_inside_are_opened_and_it_is_said(lato):
    line = lato.set_line("RAILWAY", 2.3)
    laid = on_circle(line, ORIGIN, 7.0, "inside")
    assert np.all(whites(laid.block) >= LEAST_WHITE_CAPS * 2.3 - 0.002)
    (note,) = laid.notes
    assert "'RAILWAY' would touch on this curve" in note
    opened = float(np.diff([glyph.x_mm for glyph in laid.line.glyphs])[0] - line.glyphs[1].x_mm)
    assert f"tracking opened by {opened:.3f} mm" in note
    (barely,) = on_circle(line.tracked(opened - 0.02), ORIGIN, 7.0, "inside").notes
    assert "would stand 0.1" in barely


def test_a_wide_circle_leaves_the_line_as_it_was_set(lato):
    line = lato.set_line("RAILWAY", 2.3)
    laid = on_circle(line, ORIGIN, 30.0, "inside")
    assert laid.notes == ()
    assert laid.line is line


@pytest.mark.parametrize(
    ("text", "radius", "reads", "said"),
    [
        ("LONG NAMES DO NOT FIT", 4.0, "outside", "the circle of radius 4 mm only 25.13 mm round"),
        ("WWWWWWWW", 2.6, "inside", "the circle of radius 2.6 mm only"),
        ("WAWAWA", 2.4, "inside", "no room to set them wide enough"),
        ("H", 0.0, "outside", "a radius above zero, found 0 mm"),
    ],
)
def test_circles_that_are_too_small_are_refused(lato, text, radius, reads, said):
    with pytest.raises(LetteringError) as caught:
        on_circle(lato.set_line(text, 2.0), ORIGIN, radius, reads)
    assert said in str(caught.value)


def test_a_full_circle_may_not_meet_itself():
    with pytest.raises(LetteringError, match="its end would meet its start"):
        on_circle(bars(10, gap=0.5), ORIGIN, 8.56 / math.tau)


def test_a_line_is_held_at_one_place(lato):
    with pytest.raises(LetteringError, match="held at one place, found start and end"):
        on_circle(lato.set_line("H", 2.0), ORIGIN, 9.0, start=0.0, end=90.0)


# ---- along a path


def test_on_a_straight_path_the_line_is_straight(serif):
    line = serif.set_line("Along a line", 2.3)
    laid = along(line, Path((Line(Point(1, 2), Point(41, 2)),)), "start")
    flat = straight(line, Point(1, 2))
    assert np.abs(laid.outline.data - flat.outline.data).max() < 1e-9


@pytest.mark.parametrize("letters", ["turned", "bent"])
def test_on_a_circular_path_the_line_is_round(serif, letters):
    """One and the same by two ways: the circle's formula, and arc length along a path of one arc."""
    line = serif.set_line("Round", 2.3)
    circle = Path((Arc.about(ORIGIN, 12.0, math.pi, -math.pi),))
    by_path, by_circle = along(line, circle, letters=letters), on_circle(line, ORIGIN, 12.0, letters=letters)
    middle = bounds(straight(line, ORIGIN, "middle").outline)
    assert middle.centre.x == pytest.approx(0.0)
    turned = (ink_angles(by_circle, ORIGIN).middle_deg - ink_angles(by_path, ORIGIN).middle_deg) % 360
    assert min(turned, 360 - turned) < 0.6  # held by its straight ink there, by its angles here
    assert by_path.outline.node_count == by_circle.outline.node_count
    assert area(by_path.outline) == pytest.approx(area(by_circle.outline), rel=1e-6)


@pytest.mark.parametrize("letters", ["turned", "upright"])
@pytest.mark.parametrize(("anchor", "at"), [("start", 0.0), ("middle", None), ("end", 40.0)])
def test_letters_stand_on_the_path_at_their_lengths(letters, anchor, at):
    line = bars(8)
    laid = along(line, WAVE, anchor, at, letters)
    track = ArcLength(WAVE)
    total = track.total_mm
    ink = 8 * 1.4 - 1.0 + (laid.line.advance_mm - line.advance_mm)
    held = {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
    begin = ((total * held) if at is None else at) - ink * held
    lengths = begin + 0.2 + np.array([glyph.x_mm for glyph in laid.line.glyphs])
    assert np.array([feet(letter) for letter in laid.letters]) == pytest.approx(track.at(lengths).points, abs=1e-6)
    sides = np.array([letter.data[1, 3] - letter.data[1, 0] for letter in laid.letters])
    if letters == "upright":
        assert sides == pytest.approx(np.tile([0.0, 2.0], (8, 1)), abs=1e-12)
    else:
        assert np.hypot(*sides.T) == pytest.approx(2.0)
        assert np.abs((sides * track.at(lengths).tangents).sum(axis=1)).max() < 0.05


def test_a_corner_turns_its_letter_half_way():
    corner = Path.through([Point(-20, 0), Point(0, 0), Point(0, -20)])
    laid = along(bars(1), corner, "middle", 20.0)
    foot = laid.letters[0].data[0, 3] - laid.letters[0].data[0, 0]
    assert math.degrees(math.atan2(foot[1], foot[0])) == pytest.approx(-45.0)


def test_only_where_a_path_crowds_its_letters_they_are_opened():
    valley = Path.through([Point(-20, 12), Point(0, 0), Point(20, 12)])
    line = bars(14, gap=0.5)
    laid = along(line, valley)
    assert np.all(whites(laid.block) >= LEAST_WHITE_CAPS * 2.0 - 0.002)
    gaps = np.diff([glyph.x_mm for glyph in laid.line.glyphs])
    assert np.count_nonzero(gaps > 0.9 + 1e-9) in (1, 2)
    (note,) = laid.notes
    assert "opened there" in note


@pytest.mark.parametrize(
    ("anchor", "at", "said"),
    [("start", 45.0, "beyond its path of 58"), ("end", 2.0, "beyond its path"), ("middle", 57.0, "beyond its path")],
)
def test_text_may_not_run_beyond_its_path(lato, anchor, at, said):
    with pytest.raises(LetteringError, match=said):
        along(lato.set_line("TOO FAR OUT", 2.3), WAVE, anchor, at)


def test_a_closed_path_goes_round_but_not_twice(lato):
    ring = Path((Arc.about(ORIGIN, 5.0, math.pi / 2, -math.tau),), closed=True)
    laid = along(lato.set_line("ROUND", 2.0), ring, "middle", 0.0)
    assert ink_angles(laid, ORIGIN).middle_deg == pytest.approx(90.0, abs=2.0)
    with pytest.raises(LetteringError, match="beyond its path"):
        along(lato.set_line("ROUND AND ROUND AND ROUND", 2.0), ring)


# ---- bent


def test_bent_outlines_stray_from_the_true_image_by_two_micrometres_at_most(serif):
    """Points all round the letters are mapped one by one, and compared with what was drawn."""
    line = serif.set_line("Bend & 8", 4.0)
    radius = 6.0
    laid = on_circle(line, ORIGIN, radius, letters="bent", start=180.0)
    shift = -laid.line.glyphs[0].x_mm - bounds(laid.line.outline).left
    ring = np.concatenate(flatten(laid.line.outline, 0.00002))
    angle = math.pi - (ring[:, 0] + shift) / radius
    truth = np.stack((np.cos(angle), np.sin(angle)), axis=1) * (radius + ring[:, 1])[:, None]
    drawn = flatten(laid.outline, 0.00002)
    starts, ends = np.concatenate(drawn), np.concatenate([np.roll(r, -1, axis=0) for r in drawn])
    assert _farthest(truth[::40], starts, ends) < 0.002


def _farthest(points: np.ndarray, starts: np.ndarray, ends: np.ndarray) -> float:
    """The greatest distance of a point from the nearest of many chords, mm."""
    tree = shapely.STRtree(shapely.linestrings(np.stack((starts, ends), axis=1)))
    _, off = tree.query_nearest(shapely.points(points), return_distance=True, all_matches=False)
    return float(off.max())


def test_bending_keeps_stems_straight_and_rings_closed(serif):
    laid = on_circle(serif.set_line("HI", 3.0), ORIGIN, 8.0, letters="bent")
    assert set(laid.outline.kinds) == {LINE, CUBIC}
    for path in laid.outline.paths:
        assert path.segments[-1].end == path.segments[0].start
    for row in laid.outline.data[laid.outline.kinds == LINE]:
        start, end = row[0], row[3]
        assert abs(start[0] * end[1] - start[1] * end[0]) < 1e-9  # uprights point to the centre


def test_the_area_of_a_bent_bar_is_that_of_a_ring_sector():
    laid = on_circle(bars(1, thick=3.0), ORIGIN, 5.0, letters="bent")
    assert area(laid.outline) == pytest.approx(((5.0 + 2.0) ** 2 - 5.0**2) / 2 * (3.0 / 5.0), rel=5e-5)


def test_bent_letters_want_a_smooth_path(serif):
    corner = Path.through([Point(0, 0), Point(20, 0), Point(40, 5)])
    with pytest.raises(LetteringError, match=r"turns by 14° after 20 mm"):
        along(serif.set_line("Bent at a corner", 2.0), corner, letters="bent")
    assert along(serif.set_line("short", 2.0), corner, "start", letters="bent").letters


# ---- fitting


@settings(derandomize=True, deadline=None, max_examples=25)
@given(width=st.floats(11.0, 30.0))
def test_ink_fills_the_width(lato, width):
    fitted = fit_to_width(lato.set_line("WIDTH", 2.3), width)
    assert bounds(fitted.line.outline).width == pytest.approx(width, abs=1e-9)
    assert fitted.reached == pytest.approx(width, abs=1e-9)


@settings(derandomize=True, deadline=None, max_examples=25)
@given(angle=st.floats(40.0, 340.0), radius=st.floats(10.0, 30.0), reads=st.sampled_from(["outside", "inside"]))
def test_ink_fills_the_angle(lato, angle, radius, reads):
    line = lato.set_line("ANGLES", 1.5)
    fitted = fit_to_angle(line, radius, angle, reads)
    laid = on_circle(fitted.line, ORIGIN, radius, reads)
    if fitted.notes and "touch" in fitted.notes[0]:
        assert fitted.reached > angle
    else:
        assert ink_angles(laid, ORIGIN).span_deg == pytest.approx(angle, abs=1e-6)
        assert laid.line is fitted.line


def test_letters_are_never_set_until_they_touch(lato):
    fitted = fit_to_width(lato.set_line("NARROW", 2.3), 5.0)
    assert whites(Block.straight(fitted.line)).min() == pytest.approx(LEAST_WHITE_CAPS * 2.3, abs=0.003)
    assert fitted.reached > 5.0
    assert fitted.notes == (f"the letters would touch at 5 mm: tracked to {fitted.reached:.4g} mm, no nearer",)


def test_wide_tracking_and_single_letters_are_spoken_of(lato):
    (loose,) = fit_to_width(lato.set_line("AB", 2.0), 20.0).notes
    assert "more than the letters are high" in loose
    single = fit_to_width(lato.set_line("A", 2.0), 20.0)
    assert single.tracking_mm == 0.0
    assert "a single letter" in single.notes[0]


@pytest.mark.parametrize("width", [0.0, -1.0, float("nan")])
def test_widths_and_angles_are_above_zero(lato, width):
    line = lato.set_line("AB", 2.0)
    with pytest.raises(LetteringError, match="above zero"):
        fit_to_width(line, width)
    with pytest.raises(LetteringError, match="above 0"):
        fit_to_angle(line, 10.0, width)


# ---- whites


def test_whites_are_the_distances_of_neighbours(lato):
    laid = on_circle(lato.set_line("AT & O", 2.3), ORIGIN, 9.0)
    inked = [letter for letter in laid.letters if not letter.is_empty]
    true = [distance(one, other) for one, other in zip(inked[:-1], inked[1:], strict=True)]
    assert whites(laid.block) == pytest.approx(true, abs=0.003)
    assert len(whites(Block.of([EMPTY, EMPTY]))) == 0


def test_the_same_line_is_laid_the_same(serif):
    one, other = (along(serif.set_line("Twice", 2.3), WAVE, letters="bent").outline for _ in range(2))
    assert one.data.tobytes() == other.data.tobytes()


def test_the_wave_is_as_long_as_it_says():
    assert ArcLength(WAVE).total_mm == pytest.approx(length(WAVE))
