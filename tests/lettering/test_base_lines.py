"""Base lines: arcs through three points, edges of shapes, and lines raised off a path."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from heraldry.errors import LetteringError
from heraldry.geometry.distance import distance
from heraldry.geometry.flatten import flatten_path
from heraldry.geometry.measure import ArcLength, length
from heraldry.geometry.offset import stroke
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Path
from heraldry.lettering.setting.base_lines import arc_through, edge_line, place_over, raised, read_along
from heraldry.shapes.rounds import circle_path

NEAR_MM = 1e-3
WAVE = Path((Cubic(Point(0, 0), Point(12, 10), Point(20, -12), Point(34, 4)),))
ANGLE = Path.through([Point(0, 0), Point(10, 0), Point(10, 10)])
BOX = Outline.of([Path.through([Point(-5, 0), Point(5, 0), Point(5, 6), Point(-5, 6)], closed=True)])


@settings(derandomize=True, deadline=None, max_examples=60)
@given(
    centre=st.tuples(st.floats(-20, 20), st.floats(-20, 20)),
    radius=st.floats(0.5, 60),
    start=st.floats(-3, 3),
    sweep=st.floats(0.1, 6.1),
    left=st.booleans(),
)
def test_an_arc_goes_through_its_points_in_order(centre, radius, start, sweep, left):
    way = 1 if left else -1
    points = [Point(*centre) + Point.polar(radius, start + way * sweep * share) for share in (0.0, 0.4, 1.0)]
    arc = arc_through(*points).segments[0]
    assert isinstance(arc, Arc)
    assert arc.sweep_rad == pytest.approx(way * sweep, rel=1e-6)
    assert abs(arc.centre - Point(*centre)) < 1e-6 * max(radius, 1.0)
    assert abs(arc.at(0.4) - points[1]) < 1e-6 * max(radius, 1.0)


def test_points_on_a_line_make_a_line_and_equal_ones_nothing():
    assert length(arc_through(Point(0, 0), Point(2, 2), Point(3, 3))) == pytest.approx(math.hypot(3, 3))
    with pytest.raises(LetteringError, match="two of them are the same"):
        arc_through(Point(0, 0), Point(2, 2), Point(0, 0))


@settings(derandomize=True, deadline=None, max_examples=30)
@given(by=st.floats(-4, 4))
def test_a_raised_line_keeps_its_distance_and_its_side(by):
    assume(abs(by) > 0.05)
    track, line = ArcLength(WAVE), raised(WAVE, by)
    points = flatten_path(line)
    foot = track.at(track.nearest(points))
    aside = ((points - foot.points) * foot.normals).sum(axis=1)
    assert np.abs(np.hypot(*(points - foot.points).T) - abs(by)).max() < NEAR_MM
    assert np.abs(aside - by).max() < NEAR_MM
    ends = track.at([0.0, track.total_mm])
    reached = np.array([[*line.segments[0].start], [*line.segments[-1].end]])
    assert np.abs(reached - (ends.points + by * ends.normals)).max() < NEAR_MM


def test_corners_are_rounded_outside_and_cut_off_inside():
    assert length(raised(ANGLE, 1.0)) == pytest.approx(18.0)
    assert length(raised(ANGLE, -1.0)) == pytest.approx(20.0 + math.pi / 2)
    assert raised(ANGLE, 0.0) is ANGLE


def test_a_path_too_tight_is_refused():
    half_turn = arc_through(Point(-1, 0), Point(0, 1), Point(1, 0))
    assert length(raised(half_turn, 0.5)) == pytest.approx(1.5 * math.pi, abs=NEAR_MM)
    with pytest.raises(LetteringError, match=r"bends too tightly for a base line 1\.5 mm off it"):
        raised(half_turn, -1.5)


@pytest.mark.parametrize("reads", ["outside", "inside"])
def test_an_edge_is_read_round_and_lifted_to_the_heads(reads):
    line = edge_line(BOX, 0.0, 1.0, reads)
    left = ArcLength(line).at(0.1).normals
    away = ArcLength(line).at(0.1).points - np.array([0.0, 3.0])
    assert float(left @ away) * (1 if reads == "outside" else -1) > 0
    assert length(line) == pytest.approx(32 + math.tau if reads == "outside" else 24.0)
    assert place_over(line, reads) == pytest.approx(ArcLength(line).nearest([0, 7.0 if reads == "outside" else 1.0]))


def test_a_smoothed_edge_bends_no_tighter_than_it_is_asked_to():
    cross = Outline.of([Path.through([Point(x, y) for x, y in _CROSS], closed=True)])
    line = edge_line(cross, 1.5, 0.0, "outside")
    assert min(segment.radius for segment in line.segments if isinstance(segment, Arc)) == pytest.approx(1.5, abs=1e-3)
    here, ahead = ArcLength(line).at(np.arange(0, length(line), 0.01)), 0.01 / 1.5
    turns = np.angle(np.exp(1j * np.diff(here.angles_rad)))
    assert np.abs(turns).max() < ahead * 1.05
    assert distance(Outline.of([line]), cross) == 0.0


_CROSS = [(-2, -6), (2, -6), (2, -2), (6, -2), (6, 2), (2, 2), (2, 6), (-2, 6), (-2, 2), (-6, 2), (-6, -2), (-2, -2)]


def test_an_edge_of_which_nothing_is_left_is_refused():
    with pytest.raises(LetteringError, match="nothing is left of the edge"):
        edge_line(BOX, 0.0, 4.0, "inside")


def test_the_way_of_reading_follows_the_side_that_an_open_path_bulges_to():
    hill = arc_through(Point(-5, 0), Point(0, 2), Point(5, 0))
    assert read_along(hill, "outside") == hill
    assert read_along(hill, "inside") == hill.reversed()
    assert read_along(hill.reversed(), "outside") == hill
    with pytest.raises(LetteringError, match="a straight path has no inside"):
        read_along(Path.through([Point(0, 0), Point(4, 4)]), "inside")


def test_a_place_over_the_middle_is_found_in_a_dip():
    notched = Path.through([Point(x, y) for x, y in [(-4, 0), (4, 0), (4, 5), (0, 3), (-4, 5)]], closed=True)
    top = ArcLength(notched).at(place_over(notched, "outside")).points
    assert top.tolist() == pytest.approx([0.0, 3.0])


def test_a_ring_through_a_stroke_is_the_edge_itself():
    """A circle raised as a closed edge, and the outside of a stroke along it, are one line."""
    circle = circle_path(Point(1, 2), 5.0)
    lifted = edge_line(Outline.of([circle]), 0.0, 0.75, "outside")
    rings = stroke(circle, 1.5).paths
    assert length(lifted) == pytest.approx(max(length(ring) for ring in rings), abs=NEAR_MM)
