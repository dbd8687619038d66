"""A frame that follows a shape: at its distance, easy, in few curves."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry import boolean
from heraldry.geometry.outline import EMPTY, LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.shapes.following import FIT_MM, follow
from heraldry.shapes.region import region
from heraldry.shapes.rounds import circle, ring
from heraldry.shapes.table import Drawn


def polygon(*corners):
    return Outline.of([Path.through([Point(x, y) for x, y in corners], closed=True)])


def area(outline):
    return boolean.to_polygon(outline)


def test_round_a_disc_it_is_a_disc():
    frame = follow(Drawn(circle(5.0)), 1.0)
    assert area(frame).area == pytest.approx(math.pi * 36, rel=0.002)
    line = follow(Drawn(circle(5.0)), 1.0, 0.5)
    assert area(line).area == pytest.approx(math.pi * (6.5**2 - 6**2), rel=0.01)


def test_holes_do_not_matter():
    assert area(follow(Drawn(ring(5.0, 1.0)), 1.0)).equals(area(follow(Drawn(circle(5.0)), 1.0)))


def test_a_notch_is_bridged_and_a_wide_bay_followed():
    notched = polygon((0, 0), (10, 0), (10, 10), (5.5, 10), (5, 2), (4.5, 10), (0, 10))
    assert area(follow(Drawn(notched), 1.0)).contains(shapely.Point(5, 10.5))
    wide = polygon((0, 0), (40, 0), (40, 20), (30, 20), (30, 4), (10, 4), (10, 20), (0, 20))
    assert not area(follow(Drawn(wide), 1.0, ease=1.0)).intersects(shapely.Point(20, 12))


def test_parts_apart_keep_frames_of_their_own():
    two = Outline.gather([polygon((0, 0), (4, 0), (4, 4)), polygon((30, 0), (34, 0), (34, 4))])
    assert len(shapely.get_parts(area(follow(Drawn(two), 1.0)))) == 2
    near = Outline.gather([polygon((0, 0), (4, 0), (4, 4)), polygon((8, 0), (12, 0), (12, 4))])
    assert len(shapely.get_parts(area(follow(Drawn(near), 1.0)))) == 1


@pytest.mark.parametrize("code", ["US-MI", "IS", "US-ME", "NO", "US-HI"])
@pytest.mark.parametrize("by", [0.5, 1.5])
def test_round_a_land_it_keeps_its_distance_and_is_smooth(code, by):
    land = region((code,), height=20.0, width=20.0)
    frame = follow(land, by)
    inside = area(land.outline)
    assert shapely.distance(inside, area(frame).boundary) == pytest.approx(by, abs=3 * FIT_MM)
    assert area(frame).contains(inside)
    assert (frame.kinds != LINE).mean() > 0.5
    assert frame.node_count < 200


@settings(derandomize=True, deadline=None, max_examples=30)
@given(st.floats(0.2, 3.0), st.floats(0.2, 8.0), st.floats(0.1, 2.0))
def test_a_line_is_as_wide_as_asked(by, ease, width):
    shape = Drawn(polygon((0, 0), (10, 0), (7, 3), (10, 8), (2, 8)))
    line = area(follow(shape, by, width, ease))
    assert line.is_valid
    assert 2 * line.area / line.length == pytest.approx(width, rel=0.02)
    assert shapely.distance(area(shape.outline), line) == pytest.approx(by, abs=3 * FIT_MM)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [((0.0,), "by is 0"), ((1.0, 0.0), "width is 0"), ((1.0, 1.0, -1.0), "ease is -1"), ((float("nan"),), "by")],
)
def test_wrong_numbers_are_said(arguments, words):
    with pytest.raises(GeometryError, match=words):
        follow(Drawn(circle(5.0)), *arguments)


def test_nothing_cannot_be_followed():
    with pytest.raises(GeometryError, match="is empty"):
        follow(Drawn(EMPTY), 1.0)
