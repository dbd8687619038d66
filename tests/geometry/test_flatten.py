"""Chords stay near their curves, and two flattenings of one curve share their vertices to the last bit."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.geometry.flatten import FLATTEN_TOLERANCE_MM, divide, flatten, flatten_path
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Path
from tests.strategies import circle, polygon, ring, shapes, steps

TOLERANCES = (0.01, 0.0005, 0.00002)
points = st.builds(Point, steps(-10, 10, 0.001), steps(-10, 10, 0.001))


def open_path(*segments: Arc | Cubic) -> Path:
    return Path(segments)


def bits(array: np.ndarray) -> list[bytes]:
    return sorted(row.tobytes() for row in array + 0.0)


@pytest.mark.parametrize("tolerance", TOLERANCES)
@pytest.mark.parametrize("radius", (0.001, 0.3, 12.5, 1000.0))
def test_chords_of_a_circle_stray_no_farther_than_asked(radius: float, tolerance: float) -> None:
    (vertices,) = flatten(circle(3, -4, radius), tolerance)
    middles = (vertices + np.roll(vertices, -1, axis=0)) / 2
    sagitta = radius - np.hypot(*(middles - [3, -4]).T)
    assert 0 < sagitta.max() <= tolerance
    assert np.allclose(np.hypot(*(vertices - [3, -4]).T), radius, rtol=1e-12)


@pytest.mark.parametrize("tolerance", TOLERANCES)
@given(a=points, b=points, c=points, d=points)
@settings(derandomize=True, deadline=None, max_examples=40)
def test_chords_of_a_cubic_stray_no_farther_than_asked(
    a: Point, b: Point, c: Point, d: Point, tolerance: float
) -> None:
    cubic = Cubic(a, b, c, d)
    table = Outline.of([Path((cubic,))])
    chords = divide(table.kinds, table.data, tolerance)
    ends, t_ends = np.vstack((chords.xy[1:], table.data[0, 3])), np.append(chords.t[1:], 1.0)
    for start, end, t0, t1 in zip(chords.xy, ends, chords.t, t_ends, strict=True):
        for share in (0.25, 0.5, 0.75):
            on_curve = np.array([*cubic.at(t0 + share * (t1 - t0))])
            along, there = end - start, on_curve - start
            length = np.hypot(*along)
            off = abs(along[0] * there[1] - along[1] * there[0]) / length if length else np.hypot(*there)
            assert off <= tolerance * (1 + 1e-9)


@given(a=points, b=points, c=points, d=points)
@settings(derandomize=True, deadline=None, max_examples=60)
def test_a_cubic_walked_backwards_has_the_same_vertices(a: Point, b: Point, c: Point, d: Point) -> None:
    cubic = Cubic(a, b, c, d)
    there, back = flatten_path(open_path(cubic)), flatten_path(open_path(cubic.reversed()))
    assert np.array_equal(there, back[::-1])


@given(start=steps(-3, 3, 0.1), sweep=steps(0.5, 6, 0.1))
@settings(derandomize=True, deadline=None, max_examples=60)
def test_an_arc_has_the_vertices_of_its_circle(start: float, sweep: float) -> None:
    (whole,) = flatten(circle(1, 2, 5))
    arc = Arc.about(Point(1, 2), 5, start, sweep)
    for path in (open_path(arc), open_path(arc.reversed())):
        inner = flatten_path(path)[1:-1]
        assert set(bits(inner)) <= set(bits(whole))
        assert len(inner) >= (len(whole) * sweep / math.tau) - 2


def test_a_smaller_circle_of_one_centre_has_every_second_direction() -> None:
    outer, inner = flatten(ring(0, 0, 12.5, 1.5))
    assert len(outer) % len(inner) == 0 and len(inner) < len(outer)


@given(outline=shapes())
@settings(derandomize=True, deadline=None, max_examples=40)
def test_rings_keep_the_ends_of_segments_bit_for_bit(outline: Outline) -> None:
    rings = flatten(outline)
    assert len(rings) == len(outline.rings) - 1
    for vertices, path in zip(rings, outline.paths, strict=True):
        assert {tuple(segment.start) for segment in path} <= {tuple(vertex) for vertex in vertices.tolist()}


def test_straight_lines_get_no_vertices() -> None:
    (vertices,) = flatten(polygon((0, 0), (4, 0), (4, 3)))
    assert vertices.tolist() == [[0, 0], [4, 0], [4, 3]]


def test_nothing_flattens_to_no_rings() -> None:
    assert flatten(EMPTY) == ()


def test_a_tiny_curve_is_still_round() -> None:
    micrometre = Arc.about(Point(0, 0), 0.001, 0.0, math.pi)
    assert len(flatten_path(open_path(micrometre), FLATTEN_TOLERANCE_MM)) >= 12
