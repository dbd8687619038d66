"""Bands, warning slants and runs: areas in closed form, exact sizes, corners that do not fit."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import intersect
from heraldry.geometry.measure import area, bounds, ring_areas
from heraldry.geometry.outline import ARC
from heraldry.geometry.point import Point
from heraldry.shapes.bands import band, run, slants


@pytest.mark.parametrize(
    ("end", "lost"),
    [
        ("square", 0.0),
        ("slant", 3 * 4 / 2),
        ("backslant", 3 * 4 / 2),
        ("point", 3 * 4 / 2),
        ("hollow", 3 * 4 / 2),
    ],
)
def test_an_end_takes_what_its_form_says(end: str, lost: float) -> None:
    drawn = band(20, 4, right=end, reach=3)  # type: ignore[arg-type]
    assert area(drawn) == pytest.approx(20 * 4 - lost)
    assert area(band(20, 4, left=end, right=end, reach=3)) == pytest.approx(80 - 2 * lost)  # type: ignore[arg-type]
    box = bounds(drawn)
    assert (box.left, box.right, box.width, box.height) == pytest.approx((-10, 10, 20, 4))


def test_round_ends_are_half_circles_by_themselves() -> None:
    drawn = band(20, 4, left="round", right="round")
    assert area(drawn) == pytest.approx(16 * 4 + math.pi * 4)
    assert (drawn.kinds == ARC).sum() == 2
    assert ring_areas(drawn).tolist() == [pytest.approx(area(drawn))]


def test_a_slanted_left_end_is_a_right_one_turned_half_round() -> None:
    assert area(intersect(band(20, 4, left="slant", reach=3), band(20, 4, right="slant", reach=3, turn=180))) == (
        pytest.approx(74)
    )


@settings(derandomize=True, deadline=None, max_examples=30)
@given(st.integers(10, 60), st.integers(2, 8), st.integers(1, 5), st.integers(1, 5), st.integers(-60, 60))
def test_slants_fill_their_box_and_ink_their_share(length: int, height: int, stripe: int, gap: int, slant: int) -> None:
    drawn = slants(length, height, stripe, gap, slant)
    box = bounds(drawn)
    assert box.right <= length / 2 + 1e-6
    assert box.left >= -length / 2 - 1e-6
    assert box.height == pytest.approx(height)
    whole_periods = length % (stripe + gap) == 0
    if whole_periods:
        assert area(drawn) == pytest.approx(length * height * stripe / (stripe + gap), rel=1e-6)


def test_meeting_slants_are_alike_on_both_sides_of_the_middle() -> None:
    drawn = slants(40, 6, 3, 3, 45, meeting=True)
    flipped = slants(40, 6, 3, 3, 45, meeting=True, turn=180)
    assert area(drawn) == pytest.approx(area(flipped))
    left = intersect(drawn, slants(20, 6, 30, 1, 0, centre=Point(-10, 0)))
    assert area(left) == pytest.approx(area(drawn) / 2)


def test_a_run_is_its_middle_line_times_its_width() -> None:
    drawn = run((Point(0, 0), Point(20, 0), Point(20, 10)), 2, 4)
    middle = 16 + 6 + math.pi / 2 * 4
    assert area(drawn) == pytest.approx(middle * 2)  # Pappus: the middle line's length times the width
    assert sorted(drawn.data[drawn.kinds == ARC, 2, 0].tolist()) == pytest.approx([3, 5])
    assert ring_areas(drawn).min() > 0
    right_turn = run((Point(0, 0), Point(20, 0), Point(20, -10)), 2, 4)
    assert area(right_turn) == pytest.approx(middle * 2)


@pytest.mark.parametrize(
    ("work", "told"),
    [
        (lambda: band(4, 4, left="point", right="point", reach=3), "do not fit a band"),
        (lambda: slants(1000, 4, 0.1), "more than 1000"),
        (lambda: slants(10, 4, 1, slant=85), "between -80 and 80"),
        (lambda: run((Point(0, 0), Point(0, 0)), 1), "at least 2 different points"),
        (lambda: run((Point(0, 0), Point(5, 0), Point(5, 5)), 2, 1), "a radius above 1 mm"),
        (lambda: run((Point(0, 0), Point(3, 0), Point(3, 9)), 2, 4), "do not fit between points 1 and 2"),
    ],
)
def test_what_cannot_be_drawn_is_refused(work, told: str) -> None:
    with pytest.raises(GeometryError, match=told):
        work()
