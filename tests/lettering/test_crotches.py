"""Crotches stay sharp where a wall is taken off letters."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.geometry.boolean import contains
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.treatments import inline_line, outline
from heraldry.lettering.treatments.crotches import LONGEST, walled


def notched(opening_deg: float, deep: float = 4.0) -> Outline:
    """A block 20 wide and 10 high, with a notch of an angle cut in the middle of its foot."""
    half = deep * math.tan(math.radians(opening_deg / 2))
    corners = [(-10, 0), (-half, 0), (0, deep), (half, 0), (10, 0), (10, 10), (-10, 10)]
    return Outline.of([Path.through([Point(x, y) for x, y in corners], closed=True)])


@settings(derandomize=True, deadline=None, max_examples=25)
@given(opening=st.floats(8.0, 100.0), wall=st.floats(0.05, 0.6))
def test_the_wall_is_mitred_in_a_crotch(opening, wall):
    reach = wall / math.sin(math.radians(opening / 2))
    if 4.0 + reach > 9.5 - wall:
        return
    core = walled(notched(opening), wall)
    assert set(core.kinds.tolist()) == {LINE}
    assert not contains(core, Point(0.0, 4.0 + reach - 1e-3))
    assert contains(core, Point(0.0, 4.0 + reach + 1e-3))


def test_a_slit_is_not_drawn_out_for_ever():
    wall, opening = 0.02, 1.0
    core = walled(notched(opening), wall)
    assert wall / math.sin(math.radians(opening / 2)) > LONGEST * wall
    assert contains(core, Point(0.0, 4.0 + 2 * wall))


@pytest.mark.parametrize("letter", "MNW")
def test_letters_with_crotches_are_let_into_without_arcs(letter):
    art = ours("gothic").set_line(letter, 6.0).outline
    line = inline_line(art, 0.25)
    assert set(line.kinds.tolist()) == {LINE}
    assert 0 < area(line) < area(art)
    assert set(outline(art, 0.2).kinds.tolist()) == {LINE}


def test_letters_without_crotches_are_inset_as_ever():
    ink = bounds(walled(notched(100.0), 0.5))
    assert (ink.left, ink.right, ink.bottom, ink.top) == pytest.approx((-9.5, 9.5, 0.5, 9.5))
