"""Boxes: as outlines, grown, one round several, and how far one reaches out of another."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.geometry.measure import bounds, ring_areas
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path

CALM = settings(derandomize=True, deadline=None, max_examples=50)
PLACES, SIZES = st.floats(-100.0, 100.0), st.floats(0.1, 100.0)


@st.composite
def boxes(draw: st.DrawFn) -> Bounds:
    left, bottom = draw(PLACES), draw(PLACES)
    return Bounds(left, bottom, left + draw(SIZES), bottom + draw(SIZES))


@CALM
@given(boxes())
def test_the_outline_of_a_box_is_ink_that_fills_it(box: Bounds) -> None:
    assert bounds(box.outline) == box
    assert np.allclose(ring_areas(box.outline), box.width * box.height)


@CALM
@given(boxes(), boxes())
def test_neither_of_two_boxes_reaches_out_of_the_one_round_both(one: Bounds, other: Bounds) -> None:
    whole = Bounds.round((one, other))
    assert one.reach_over(whole) <= 0.0
    assert other.reach_over(whole) <= 0.0
    assert max(one.reach_over(whole), other.reach_over(whole)) == 0.0


@CALM
@given(boxes(), st.floats(0.01, 10.0))
def test_a_box_reaches_over_as_far_as_it_was_grown(box: Bounds, by_mm: float) -> None:
    assert np.isclose(box.grown(by_mm).reach_over(box), by_mm)
    assert np.isclose(box.grown(-by_mm).reach_over(box), -by_mm)


def test_a_flipped_outline_is_ink_still_and_comes_back_when_flipped_again() -> None:
    corners = [Point(0, 0), Point(4, 0), Point(1, 3)]
    drawn = Outline.of([Path.through(corners, closed=True)])
    flipped = drawn.flipped(Point(2.0, 0.0))
    assert bounds(flipped) == Bounds(0.0, 0.0, 4.0, 3.0)
    assert ring_areas(flipped)[0] == ring_areas(drawn)[0] == 6.0
    assert np.array_equal(flipped.flipped(Point(2.0, 0.0)).data, drawn.data)
