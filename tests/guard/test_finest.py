"""Fine lines and narrow gaps: found where they were put, as wide as they were made, and nowhere else."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Path
from heraldry.guard.finest import (
    WIDTH_ACCURACY_MM,
    _neighbours_joined,
    narrow_gaps,
    thin_lines,
)

CALM = settings(derandomize=True, deadline=None, max_examples=40)
LIMIT = 0.2


def polygon(*corners):
    return Outline.of([Path.through([Point(*corner) for corner in corners], closed=True)])


def box(left, bottom, right, top):
    return polygon((left, bottom), (right, bottom), (right, top), (left, top))


def circle(radius, centre=ORIGIN):
    return Path((Arc.about(centre, radius, 0.3, math.tau),), closed=True)


def ring(outer, inner):
    return Outline.of([circle(outer), circle(inner).reversed()])


def tip(angle_deg, length=10.0):
    half = math.tan(math.radians(angle_deg / 2)) * length
    return polygon((0, 0), (length, -half), (length, half))


def dumbbell(neck):
    """Two squares joined by a bar of a width, all one outline."""
    h = neck / 2
    return polygon(
        (0, 0),
        (2, 0),
        (2, 1 - h),
        (3, 1 - h),
        (3, 0),
        (5, 0),
        (5, 2),
        (3, 2),
        (3, 1 + h),
        (2, 1 + h),
        (2, 2),
        (0, 2),
    )


def comb(slot, depth, count=3):
    """A block with slots cut into its top side."""
    corners = [(0, 0), (2 * count + 1, 0), (2 * count + 1, 5)]
    for i in reversed(range(count)):
        left = 2 * i + 1
        corners += [(left + slot, 5), (left + slot, 5 - depth), (left, 5 - depth), (left, 5)]
    return polygon(*corners, (0, 5))


@CALM
@given(st.floats(0.02, 0.19), st.floats(-90, 90), st.floats(-20, 20))
def test_a_thin_bar_is_found_with_its_width_whichever_way_it_lies(width, angle, away):
    bar = box(0, 0, 5, width).transformed(Affine.move(away, 3) @ Affine.turn(angle))
    (spot,) = thin_lines(bar, LIMIT)
    assert spot.width_mm == pytest.approx(width, abs=WIDTH_ACCURACY_MM)
    assert shapely.distance(to_polygon(bar), shapely.Point(*spot.place)) == pytest.approx(0, abs=1e-9)
    assert spot.extent_mm > 3.5


@CALM
@given(st.floats(0.5, 12), st.floats(0.03, 0.19))
def test_a_thin_ring_is_one_spot_and_its_hole_no_gap(radius, width):
    (spot,) = thin_lines(ring(radius, radius - width), LIMIT)
    assert spot.width_mm == pytest.approx(width, abs=WIDTH_ACCURACY_MM)
    assert abs(spot.place) == pytest.approx(radius - width / 2, abs=WIDTH_ACCURACY_MM)
    assert narrow_gaps(ring(radius, radius - width), LIMIT) == ()


@CALM
@given(st.floats(0.01, 0.18), st.floats(-180, 180), st.floats(0.3, 5))
def test_the_gap_between_two_discs_is_found_at_its_narrowest(gap, angle, radius):
    pair = Outline.of([circle(1.0), circle(radius, Point.polar(1.0 + radius + gap, math.radians(angle)))])
    (spot,) = narrow_gaps(pair, LIMIT)
    assert spot.width_mm == pytest.approx(gap, abs=WIDTH_ACCURACY_MM)
    assert abs(spot.place - Point.polar(1.0 + gap / 2, math.radians(angle))) < 0.02
    assert thin_lines(pair, LIMIT) == ()


@CALM
@given(st.floats(0.01, 0.14), st.floats(-0.1, 0.1))
def test_two_tips_that_point_at_each_other_leave_a_gap(gap, shift):
    pair = Outline.gather([polygon((0, 0), (-1, 1), (-1, -1)), polygon((gap, shift), (2, -1), (2, 1))])
    spots = narrow_gaps(pair, LIMIT)
    assert [spot.width_mm for spot in spots] == [pytest.approx(nearest_of(pair), abs=WIDTH_ACCURACY_MM)]


def nearest_of(pair):
    return shapely.distance(*shapely.get_parts(to_polygon(pair)))


@CALM
@given(st.floats(0.25, 4.0))
def test_places_and_widths_grow_with_the_scale(factor):
    small, large = (
        thin_lines(dumbbell(0.1), LIMIT),
        thin_lines(dumbbell(0.1).transformed(Affine.scale(factor)), LIMIT * factor),
    )
    assert [spot.width_mm * factor for spot in small] == pytest.approx([spot.width_mm for spot in large], abs=1e-9)


@CALM
@given(st.floats(-90, 90))
def test_a_mirror_changes_no_width(axis):
    comb_ = comb(0.12, 2.0)
    mirrored = narrow_gaps(comb_.transformed(Affine.mirror(axis)), LIMIT)
    assert [spot.width_mm for spot in mirrored] == pytest.approx(
        [spot.width_mm for spot in narrow_gaps(comb_, LIMIT)], abs=1e-9
    )


def test_a_neck_is_found_and_what_it_joins_is_not():
    (spot,) = thin_lines(dumbbell(0.1), LIMIT)
    assert spot.width_mm == pytest.approx(0.1, abs=1e-9)
    assert 2 <= spot.place.x <= 3
    assert spot.place.y == pytest.approx(1.0)
    assert thin_lines(dumbbell(0.25), LIMIT) == ()


def test_a_neck_without_length_is_found():
    bow = polygon((0, 0), (1, 1), (2, 0), (2, 2.1), (1, 1.1), (0, 2.1))
    (spot,) = thin_lines(bow, LIMIT)
    assert spot.width_mm == pytest.approx(0.1, abs=1e-9)
    assert tuple(spot.place) == pytest.approx((1, 1.05))


def test_each_slot_is_one_gap_and_no_line():
    spots = narrow_gaps(comb(0.15, 2.0), LIMIT)
    assert [spot.width_mm for spot in spots] == pytest.approx([0.15] * 3, abs=1e-9)
    assert [round(spot.place.x, 3) for spot in spots] == [1.075, 3.075, 5.075]
    assert thin_lines(comb(0.15, 2.0), LIMIT) == ()


def test_the_narrowest_comes_first():
    bars = Outline.gather([box(0, 3 * i, 4, 3 * i + width) for i, width in enumerate((0.15, 0.05, 0.19, 0.1))])
    assert [spot.width_mm for spot in thin_lines(bars, LIMIT)] == pytest.approx([0.05, 0.1, 0.15, 0.19])


@pytest.mark.parametrize("angle", [12, 20, 40, 60, 90])
def test_the_tip_of_a_corner_is_no_thin_line(angle):
    assert thin_lines(tip(angle), LIMIT) == ()


@pytest.mark.parametrize("angle", [4, 8, 11])
def test_a_needle_is_thin_where_its_allowance_ends(angle):
    (spot,) = thin_lines(tip(angle), LIMIT)
    allowance = 1.5 * LIMIT
    assert spot.width_mm == pytest.approx(2 * math.tan(math.radians(angle / 2)) * allowance, rel=0.1)
    assert spot.place.x == pytest.approx(allowance, rel=0.05)
    length_lost = LIMIT / (2 * math.tan(math.radians(angle / 2)))
    assert spot.extent_mm == pytest.approx(length_lost - allowance, rel=0.2)


@pytest.mark.parametrize("angle", [15, 30, 60])
def test_the_crotch_of_a_v_is_no_narrow_gap(angle):
    t = math.tan(math.radians(angle / 2))
    v = polygon((0, 0), (8 * t, 8), (8 * t + 1, 8), (0.5, -1), (-0.5, -1), (-8 * t - 1, 8), (-8 * t, 8))
    assert narrow_gaps(v, LIMIT) == ()
    assert thin_lines(v, LIMIT) == ()


def test_short_spurs_and_notches_are_passed_over_and_long_ones_are_not():
    def spur(length):
        return polygon((0, 0), (5, 0), (5, 2), (2.6, 2), (2.6, 2 + length), (2.5, 2 + length), (2.5, 2), (0, 2))

    assert thin_lines(spur(0.2), LIMIT) == ()
    assert [spot.width_mm for spot in thin_lines(spur(1.0), LIMIT)] == pytest.approx([0.1])
    assert narrow_gaps(comb(0.1, 0.2), LIMIT) == ()
    assert len(narrow_gaps(comb(0.1, 1.0), LIMIT)) == 3


def test_a_dot_and_a_pinhole_are_lost_as_a_whole():
    (dot,) = thin_lines(Outline.of([circle(0.07, Point(3, 4))]), LIMIT)
    assert dot.width_mm == pytest.approx(0.14, abs=WIDTH_ACCURACY_MM)
    assert tuple(dot.place) == pytest.approx((3, 4), abs=0.01)
    (pinhole,) = narrow_gaps(Outline.of([circle(4.0), circle(0.05, Point(1, 0)).reversed()]), LIMIT)
    assert pinhole.width_mm == pytest.approx(0.1, abs=WIDTH_ACCURACY_MM)
    assert pinhole.kind == "gap"


def test_a_small_square_is_lost_and_one_as_wide_as_the_limit_is_not():
    assert [s.width_mm for s in thin_lines(box(0, 0, 0.15, 0.15), LIMIT)] == [
        pytest.approx(0.15, abs=WIDTH_ACCURACY_MM)
    ]
    assert thin_lines(box(0, 0, 0.21, 0.21), LIMIT) == ()


def test_what_has_no_thin_line_survives_an_opening_but_for_its_corners():
    """An opening by half the limit (Serra 1982) keeps every place that a disc of that diameter reaches."""
    stout = dumbbell(0.3)
    ink = to_polygon(stout)
    opened = ink.buffer(-LIMIT / 2).buffer(LIMIT / 2)
    corners_lost = 8 * (1 - math.pi / 4) * (LIMIT / 2) ** 2
    assert thin_lines(stout, LIMIT) == ()
    assert ink.difference(opened).area == pytest.approx(corners_lost, rel=0.05)


def test_the_same_artwork_gives_the_same_spots():
    mixed = Outline.gather([dumbbell(0.1), ring(9, 8.9), comb(0.1, 2).transformed(Affine.move(0, 20))])
    assert thin_lines(mixed, LIMIT) == thin_lines(mixed, LIMIT)
    assert narrow_gaps(mixed, LIMIT) == narrow_gaps(mixed, LIMIT)


def test_empty_artwork_has_no_spots():
    assert thin_lines(EMPTY, LIMIT) == ()
    assert narrow_gaps(EMPTY, LIMIT) == ()


@pytest.mark.parametrize("limit", [0.0, -1.0, math.nan])
def test_a_limit_that_is_no_width_is_refused(limit):
    with pytest.raises(GeometryError, match="must be more than 0"):
        thin_lines(box(0, 0, 1, 1), limit)


def test_looks_that_crowd_are_joined_without_their_pairs():
    """Sixty thousand looks at two places: their pairs, near two milliard, would fill the memory."""
    crowd = np.random.default_rng(1).uniform(0.0, 0.01, (30_000, 2))
    groups = _neighbours_joined(np.concatenate((crowd, crowd + 1.0)), within_mm=0.1)
    assert [len(group) for group in groups] == [30_000, 30_000]


@pytest.mark.parametrize("within", [0.02, 0.05, 0.2])
def test_looks_hang_together_by_steps_as_their_pairs_say(within):
    points = np.random.default_rng(2).uniform(-1.0, 1.0, (400, 2))
    near = np.hypot(*(points[:, None] - points).transpose(2, 0, 1)) <= within
    label = np.arange(400)
    for _ in label:
        label = np.where(near, label, 400).min(axis=1)
    expected = {tuple(np.flatnonzero(label == one).tolist()) for one in np.unique(label)}
    assert {tuple(sorted(group.tolist())) for group in _neighbours_joined(points, within)} == expected
