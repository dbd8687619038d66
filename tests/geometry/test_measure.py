"""Measures on outlines and paths: laws that hold for every outline, and the edges of what can be asked."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry import bezier
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import (
    ArcLength,
    area,
    bounds,
    centroid,
    length,
    perimeter,
    ring_areas,
)
from heraldry.geometry.outline import EMPTY, Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path

CALM = settings(derandomize=True, deadline=None, max_examples=60)
FAR = st.floats(-200, 200)
ANGLES = st.floats(-180, 180)
FACTORS = st.floats(0.05, 20)


def disc(radius=1.0, centre=ORIGIN):
    return Path((Arc.about(centre, radius, 0.3, math.tau),), closed=True)


def leaf():
    """A ring with one stroke of each kind and a corner at every joint."""
    a, b, c = Point(0, 0), Point(6, 1), Point(5, 5)
    return Path(
        (
            Line(a, b),
            Arc(b, c, b + (c - b) / 2, abs(c - b) / 2, math.pi),
            Cubic(c, Point(2, 9), Point(-4, 3), a),
        ),
        closed=True,
    )


@st.composite
def outlines(draw):
    """Rings of lines, arcs and cubics round a star of points, with or without a hole."""
    radii = draw(st.lists(st.floats(3, 9), min_size=3, max_size=8))
    nodes = [Point.polar(r, math.tau * i / len(radii)) for i, r in enumerate(radii)]
    strokes = []
    for start, end in zip(nodes, nodes[1:] + nodes[:1], strict=True):
        strokes.append(draw(st.sampled_from([straight, round_, waved]))(start, end))
    rings = [Path(tuple(strokes), closed=True)]
    if draw(st.booleans()):
        rings.append(disc(0.5).reversed())
    return Outline.of(rings)


def straight(start, end):
    return Line(start, end)


def round_(start, end):
    """An arc of 60 degrees on the chord."""
    chord = end - start
    centre = start + chord / 2 + chord.left * (math.sqrt(3) / 2)
    return Arc(start, end, centre, abs(chord), math.pi / 3)


def waved(start, end):
    chord = end - start
    side = chord.left * 0.1
    return Cubic(start, start + chord / 3 + side, end - chord / 3 - side, end)


@CALM
@given(outlines(), FAR, FAR, ANGLES)
def test_a_moved_and_turned_outline_measures_the_same(outline, dx, dy, angle):
    there = Affine.move(dx, dy) @ Affine.turn(angle)
    moved = outline.transformed(there)
    assert area(moved) == pytest.approx(area(outline), rel=1e-10)
    assert perimeter(moved) == pytest.approx(perimeter(outline), rel=1e-10)
    assert tuple(centroid(moved)) == pytest.approx(tuple(there(centroid(outline))), abs=1e-9)


@CALM
@given(outlines(), ANGLES)
def test_a_mirror_flips_the_sign_of_nothing(outline, axis):
    mirrored = outline.transformed(Affine.mirror(axis))
    assert area(mirrored) == pytest.approx(area(outline), rel=1e-11)
    assert perimeter(mirrored) == pytest.approx(perimeter(outline), rel=1e-11)
    assert np.allclose(ring_areas(mirrored), -ring_areas(outline), rtol=1e-10)


@CALM
@given(outlines(), FACTORS)
def test_areas_grow_with_the_square_of_the_scale(outline, factor):
    scaled = outline.transformed(Affine.scale(factor))
    assert area(scaled) == pytest.approx(area(outline) * factor**2, rel=1e-11)
    assert perimeter(scaled) == pytest.approx(perimeter(outline) * factor, rel=1e-9)
    before, after = bounds(outline), bounds(scaled)
    assert after.width == pytest.approx(before.width * factor, rel=1e-11)


@CALM
@given(outlines())
def test_bounds_hold_every_point_and_are_touched_on_all_sides(outline):
    box = bounds(outline)
    along = [ArcLength(path) for path in outline.paths]
    sampled = [a.at(np.linspace(0, a.total_mm, 4001)).points for a in along]
    reached = np.concatenate([*sampled, outline.data[:, 0]])
    low, high = reached.min(axis=0), reached.max(axis=0)
    assert np.all(low >= np.array([box.left, box.bottom]) - 1e-9)
    assert np.all(high <= np.array([box.right, box.top]) + 1e-9)
    assert np.allclose([*low, *high], [box.left, box.bottom, box.right, box.top], atol=1e-3)


@CALM
@given(outlines(), st.lists(st.floats(0, 1), min_size=1, max_size=6))
def test_a_length_along_a_path_is_found_again_from_its_point(outline, shares):
    path = outline.paths[0]
    along = ArcLength(path)
    lengths = np.array(shares) * along.total_mm
    places = along.at(lengths)
    again = along.at(along.nearest(places.points))
    assert np.allclose(again.points, places.points, atol=1e-8)


@CALM
@given(outlines())
def test_steps_along_a_path_add_up_to_it_and_tangents_point_along_it(outline):
    along = ArcLength(outline.paths[0])
    lengths = np.linspace(0, along.total_mm, 2001)
    places = along.at(lengths)
    steps = np.diff(places.points, axis=0)
    assert np.hypot(*steps.T).sum() == pytest.approx(along.total_mm, rel=1e-3)
    assert along.total_mm == pytest.approx(length(outline.paths[0]), rel=1e-14)
    ahead = (steps * places.tangents[:-1]).sum(axis=1) / (lengths[1] - lengths[0])
    corners = len(outline.paths[0].segments)
    assert np.sort(ahead)[corners] > 0.99
    assert np.allclose((places.normals * places.tangents).sum(axis=1), 0, atol=1e-15)
    assert np.allclose(np.hypot(*places.tangents.T), 1.0)


def test_half_way_along_a_cubic_is_half_its_length():
    curve = np.array([[0, 0], [0, 9], [1, -7], [8, 0]], dtype=float)
    along = ArcLength(Path((Cubic(*(Point(*node) for node in curve.tolist())),)))
    t = np.linspace(0, 1, 1_000_001)
    chain = bezier.points(curve, t)
    run = np.concatenate(([0], np.cumsum(np.hypot(*np.diff(chain, axis=0).T))))
    shares = np.array([0.1, 0.5, 0.77])
    nodes = np.searchsorted(run, shares * run[-1])
    assert np.allclose(along.at(run[nodes]).points, chain[nodes], atol=1e-8)


def test_a_cusp_has_its_true_length():
    """x = t², y = t³ from t = −1 to 1 (Neile's parabola): 2 (13√13 − 8)/27, the handbook's integral."""
    start, end = Point(1, -1), Point(1, 1)
    cusp = Cubic(start, start + Point(-4 / 3, 2), end - Point(4 / 3, 2), end)
    assert length(Path((cusp,))) == pytest.approx(2 * (13 * math.sqrt(13) - 8) / 27, abs=1e-9)


def test_a_tangent_is_found_where_a_control_point_lies_on_an_end():
    curve = Cubic(Point(0, 0), Point(0, 0), Point(2, 2), Point(4, 0))
    still = Cubic(Point(4, 0), Point(4, 0), Point(8, 0), Point(8, 0))
    along = ArcLength(Path((curve, still)))
    tangents = along.at([0.0, along.total_mm]).tangents
    assert tangents[0] == pytest.approx([math.sqrt(0.5), math.sqrt(0.5)])
    assert tangents[1] == pytest.approx([1, 0])


def test_at_a_corner_one_faces_the_way_that_leaves():
    along = ArcLength(Path.through([Point(0, 0), Point(2, 0), Point(2, 2)]))
    assert along.at(2.0).tangents.tolist() == [0.0, 1.0]
    assert along.at(4.0).points.tolist() == [2.0, 2.0]


def test_a_closed_path_goes_round_and_round():
    along = ArcLength(disc(2.0))
    assert along.total_mm == pytest.approx(4 * math.pi, rel=1e-15)
    twice = along.at([1.0, 1.0 + along.total_mm, 1.0 - along.total_mm]).points
    assert np.allclose(twice, twice[0], atol=1e-12)


def test_stations_keep_the_shape_that_was_asked():
    along = ArcLength(disc())
    assert along.at(0.5).points.shape == (2,)
    assert along.at(np.zeros((3, 4))).angles_rad.shape == (3, 4)
    assert along.nearest(np.zeros((3, 4, 2))).shape == (3, 4)


@pytest.mark.parametrize("beyond", [-0.1, 5.1, math.nan, math.inf])
def test_beyond_the_end_of_an_open_path_is_refused(beyond):
    along = ArcLength(Path.through([Point(0, 0), Point(5, 0)]))
    with pytest.raises(GeometryError, match="lies beyond it, it is 5 mm long"):
        along.at([1.0, beyond])


def test_the_end_of_a_path_is_met_though_sums_of_advances_round():
    along = ArcLength(Path.through([Point(0, 0), Point(5, 0)]))
    assert along.at(5 + 1e-9).points.tolist() == [5.0, 0.0]


def test_a_place_outside_an_arc_is_nearest_to_an_end():
    along = ArcLength(Path((Arc.about(ORIGIN, 2, 0, math.pi / 2),)))
    assert float(along.nearest([3, -1])) == 0.0
    assert float(along.nearest([-1, 3])) == pytest.approx(math.pi)
    assert float(along.nearest([5, 5])) == pytest.approx(math.pi / 2)


def test_a_ring_has_a_hole_of_the_other_sign():
    ring = Outline.of([disc(3), disc(2).reversed()])
    assert ring_areas(ring) == pytest.approx([9 * math.pi, -4 * math.pi])
    assert area(ring) == pytest.approx(5 * math.pi)
    assert tuple(centroid(ring)) == pytest.approx((0, 0), abs=1e-12)


def test_a_ring_of_all_three_strokes_keeps_its_measures_far_from_the_origin():
    near = Outline.of([leaf()])
    far = near.transformed(Affine.move(1e5, -1e5))
    assert area(far) == pytest.approx(area(near), rel=1e-9)
    assert abs(centroid(far) - centroid(near) - Point(1e5, -1e5)) < 1e-8


def test_bounds_of_an_open_arc_reach_only_as_far_as_the_arc():
    assert bounds(Path((Arc.about(ORIGIN, 2, -math.pi / 4, math.pi / 2),))) == Bounds(
        pytest.approx(math.sqrt(2)), pytest.approx(-math.sqrt(2)), 2.0, pytest.approx(math.sqrt(2))
    )


def test_bounds_of_a_cubic_do_not_reach_its_control_points():
    box = bounds(Path((Cubic(Point(0, 0), Point(0, 4), Point(4, 4), Point(4, 0)),)))
    assert box == Bounds(0.0, 0.0, 4.0, 3.0)


def test_bounds_of_a_straight_cubic_are_its_ends():
    box = bounds(Path((Cubic(Point(0, 0), Point(1, 1), Point(2, 2), Point(3, 3)),)))
    assert box == Bounds(0.0, 0.0, 3.0, 3.0)


def test_nothing_has_no_area_and_no_bounds():
    assert area(EMPTY) == 0.0
    assert perimeter(EMPTY) == 0.0
    assert len(ring_areas(EMPTY)) == 0
    with pytest.raises(GeometryError, match="empty outline has no bounds"):
        bounds(EMPTY)
    with pytest.raises(GeometryError, match="empty outline has no centre"):
        centroid(EMPTY)


def test_a_sliver_has_no_centre():
    flat = Outline.of([Path.through([Point(0, 0), Point(5, 0), Point(2, 0)], closed=True)])
    with pytest.raises(GeometryError, match="too thin"):
        centroid(flat)


def test_a_path_without_length_has_no_places():
    with pytest.raises(GeometryError, match="without length"):
        ArcLength(Path((Line(Point(1, 1), Point(1, 1)),)))
    with pytest.raises(GeometryError, match="without length"):
        ArcLength(Path(()))
