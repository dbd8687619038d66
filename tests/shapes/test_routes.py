"""A route: a band through places, with stops, and ends that leave the land."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry import boolean
from heraldry.geometry.point import Point
from heraldry.shapes.region import region
from heraldry.shapes.routes import route, sweep
from heraldry.shapes.table import LatLon

CORNER = (Point(0, 0), Point(10, 0), Point(10, 5))


def area(drawn):
    return boolean.to_polygon(drawn.outline).area


def test_a_straight_route_is_a_band():
    drawn = route((Point(0, 0), Point(10, 0)), 0.8)
    assert area(drawn) == pytest.approx(8.0, abs=1e-9)
    assert drawn.places == {"start": Point(0, 0), "end": Point(10, 0)}


def test_round_ends_add_a_disc():
    drawn = route((Point(0, 0), Point(10, 0)), 0.8, ends="round")
    assert area(drawn) == pytest.approx(8.0 + math.pi * 0.16, abs=1e-3)


def test_it_is_lengthened_at_both_ends():
    drawn = route((Point(0, 0), Point(10, 0)), 0.8, extend=2.0)
    assert boolean.to_polygon(drawn.outline).bounds == pytest.approx((-2.0, -0.4, 12.0, 0.4), abs=1e-9)
    assert drawn.places["start"] == Point(0, 0)


def test_stops_are_dots_on_every_place():
    drawn = route(CORNER, 0.5, stops=2.0)
    plain = route(CORNER, 0.5)
    shape = boolean.to_polygon(drawn.outline)
    assert all(shape.contains(shapely.Point(*place).buffer(0.99)) for place in CORNER)
    assert area(plain) < area(drawn) < area(plain) + 3 * math.pi


@pytest.mark.parametrize("smooth", [False, True])
def test_it_goes_through_every_place(smooth):
    places = (Point(0, 0), Point(3, 4), Point(7, 1), Point(12, 6))
    shape = boolean.to_polygon(route(places, 0.4, smooth=smooth, ends="round").outline)
    assert shape.is_valid
    assert all(shape.contains(shapely.Point(*place).buffer(0.19)) for place in places)


POINTS = st.lists(st.builds(Point, st.integers(-9, 9), st.integers(-9, 9)), min_size=2, max_size=7)


@settings(derandomize=True, deadline=None, max_examples=80)
@given(POINTS)
def test_a_sweep_is_smooth_at_its_places(points):
    kept = [point for i, point in enumerate(points) if i == 0 or point != points[i - 1]]
    assume(len(kept) >= 3)
    path = sweep(kept)
    assert [s.start for s in path] + [path.segments[-1].end] == kept
    for one, two in zip(path.segments[:-1], path.segments[1:], strict=True):
        into, out = one.end - one.control2, two.control1 - two.start
        assert abs(into.cross(out)) <= 1e-9 * (1 + abs(into) * abs(out))
        assert into.dot(out) >= -1e-9


def test_a_sweep_through_places_in_line_is_straight():
    path = sweep([Point(0, 0), Point(1, 1), Point(5, 5), Point(6, 6)])
    assert all(abs(s.control1.x - s.control1.y) < 1e-12 for s in path)


def test_a_sweep_follows_barry_and_goldman():
    """The centripetal curve by its own pyramid of interpolations (Barry and Goldman, A recursive evaluation
    algorithm for a class of Catmull-Rom splines, SIGGRAPH 1988), against our cubics."""
    points = [Point(0, 0), Point(2, 3), Point(7, 1), Point(9, 5)]
    middle = sweep(points).segments[1]
    knots = np.cumsum([0.0] + [math.sqrt(abs(b - a)) for a, b in zip(points[:-1], points[1:], strict=True)])
    for u in np.linspace(0, 1, 9):
        t, level = knots[1] + u * (knots[2] - knots[1]), list(points)
        while len(level) > 1:
            width = {4: 1, 3: 2, 2: 1}[len(level)]
            first = {4: 0, 3: 0, 2: 1}[len(level)]
            level = [
                level[i] * ((knots[first + i + width] - t) / (knots[first + i + width] - knots[first + i]))
                + level[i + 1] * ((t - knots[first + i]) / (knots[first + i + width] - knots[first + i]))
                for i in range(len(level) - 1)
            ]
        assert abs(middle.at(float(u)) - level[0]) < 1e-12


def test_a_cut_from_border_to_border_parts_the_land():
    land = region(("US-VT",), height=12.5)
    line = [
        land.locate(LatLon(43.0, -73.27)),
        land.locate(LatLon(44.0, -72.7)),
        land.locate(LatLon(44.3, -72.06)),
    ]
    cut = route(tuple(line), 0.8, extend=1.0)
    left = boolean.to_polygon(boolean.subtract(land.outline, cut.outline))
    assert len([part for part in shapely.get_parts(left) if part.area > 0.01]) == 2


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ({"route": ()}, "a route needs at least 2 different places, found 0"),
        ({"route": (Point(1, 1), Point(1, 1))}, "a route needs at least 2 different places, found 1"),
        ({"width": 0.0}, "width is 0, it must be more than 0"),
        ({"width": float("nan")}, "width is nan"),
        ({"stops": -1.0}, "stops is -1, it must be at least 0"),
        ({"extend": -1.0}, "extend is -1, it must be at least 0"),
    ],
)
def test_wrong_numbers_are_said(arguments, words):
    with pytest.raises(GeometryError, match=words):
        route(**{"route": CORNER, "width": 0.5, **arguments})
