"""Every family of shapes over the range of its measures: clean, within its box, even where it should be."""

from __future__ import annotations

import inspect
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.geometry.point import Point
from heraldry.shapes import SHAPES
from heraldry.shapes.catalogue import arguments_of, example
from tests.cleanness import SIDEWAYS, assert_clean, differing_share, draw
from tests.shape_ranges import EVEN, PROPORTIONED, RANGES

quickly = settings(max_examples=15, deadline=None, derandomize=True)


@pytest.mark.parametrize("kind", sorted(PROPORTIONED))
def test_one_measure_is_enough(kind):
    outline = draw(kind, **{kind: 20.0})
    assert_clean(outline)
    box = bounds(outline)
    reach = 0.02 * 20.0 if kind in ("rope", "beads") else 1e-6  # round things that seldom touch their box's sides
    for promised, found in zip(PROPORTIONED[kind], (box.width, box.height), strict=True):
        if promised is not None:
            assert promised * 20.0 - reach <= found <= promised * 20.0 + 1e-6


@pytest.mark.parametrize("kind", sorted(PROPORTIONED))
def test_what_is_left_out_grows_with_the_main_measure(kind):
    small, large = draw(kind, **{kind: 8.0}), draw(kind, **{kind: 24.0})
    assert large.node_count == small.node_count
    assert differing_share(small.transformed(Affine.scale(3.0)), large) < 2e-4


@pytest.mark.parametrize("kind", sorted(EVEN))
def test_left_is_the_mirror_image_of_right(kind):
    outline = draw(kind, **{kind: 18.0})
    assert differing_share(outline, outline.transformed(SIDEWAYS)) < 1e-6


@pytest.mark.parametrize("kind", sorted(EVEN))
def test_every_node_has_its_twin_to_the_nanometre(kind):
    drawn = draw(kind, **{kind: 18.0}).quantised()
    here = drawn.data[:, 0]
    there = here * (-1.0, 1.0)
    apart = np.abs(here[:, None, :] - there[None, :, :]).max(axis=2).min(axis=1)
    assert apart.max() <= 1.5e-6


@pytest.mark.parametrize("kind", sorted(PROPORTIONED))
@pytest.mark.parametrize("nonsense", [0.0, -3.0, math.nan])
def test_no_shape_without_a_size(kind, nonsense):
    with pytest.raises(GeometryError):
        draw(kind, **{kind: nonsense})


@pytest.mark.parametrize("kind", sorted(PROPORTIONED))
def test_centre_moves_it_and_nothing_else(kind):
    here, there = draw(kind, **{kind: 10.0}), draw(kind, **{kind: 10.0, "centre": Point(30.0, -7.0)})
    moved = here.transformed(Affine.move(30.0, -7.0))
    assert there.data == pytest.approx(moved.data, abs=1e-9)


TURNING = sorted(kind for kind in PROPORTIONED if "turn" in SHAPES[kind].parameters)


@pytest.mark.parametrize("kind", TURNING)
def test_turn_turns_it_about_its_centre(kind):
    turned = draw(kind, **{kind: 10.0, "turn": 35.0, "centre": Point(4.0, 5.0)})
    upright = draw(kind, **{kind: 10.0, "centre": Point(4.0, 5.0)})
    assert turned.data == pytest.approx(upright.transformed(Affine.turn(35.0, Point(4.0, 5.0))).data, abs=1e-9)


def test_same_measures_same_drawing():
    for kind in PROPORTIONED:
        one, two = draw(kind, **{kind: 13.7}), draw(kind, **{kind: 13.7})
        assert one.data.tobytes() == two.data.tobytes()


@pytest.mark.parametrize("kind", sorted(RANGES))
@quickly
@given(data=st.data())
def test_all_measures_of_a_range_come_out_clean(kind, data):
    arguments = data.draw(st.fixed_dictionaries(RANGES[kind]))
    assert_clean(draw(kind, **{kind: 20.0, **arguments}))


ROUND = ("rope", "beads", "broken_ring", "scallop", "seal", "gear", "wheel", "compass_rose")


@pytest.mark.parametrize("kind", ROUND)
@quickly
@given(data=st.data())
def test_round_shapes_keep_within_their_radius(kind, data):
    outline = draw(kind, **{kind: 20.0, **data.draw(st.fixed_dictionaries(RANGES[kind]))})
    farthest = max(float(np.hypot(*ring.T).max()) for ring in flatten(outline))
    assert farthest == pytest.approx(20.0, abs=0.01)
    assert farthest <= 20.0 + 1e-9


WIDE = {"oval", "octagon", "cartouche", "flag", "pennant", "chevron", "wings", "wing", "speed_wings", "mountains"}


@pytest.mark.parametrize("kind", sorted(WIDE | {"waves", "crest", "track", "arrow", "trapezoid"}))
@quickly
@given(data=st.data())
def test_wide_shapes_are_as_wide_as_they_say(kind, data):
    arguments = data.draw(st.fixed_dictionaries(RANGES[kind]))
    if kind == "mountains":
        arguments["count"] = max(2, arguments["count"])  # one mountain alone keeps its own slopes
    box = bounds(draw(kind, **{kind: 20.0, **arguments}))
    if kind != "trapezoid":  # says its width below; its ends lean where they will
        assert box.width == pytest.approx(20.0, abs=1e-6)
    if "height" in arguments and kind not in ("flag", "pennant"):
        assert box.height == pytest.approx(arguments["height"], abs=1e-6)


@pytest.mark.parametrize("kind", sorted(SHAPES))
def test_every_kind_has_an_example_that_draws(kind):
    assert next(iter(arguments_of(kind))) == kind
    outline = example(kind)
    assert_clean(outline)
    box = bounds(outline)
    if "on" not in SHAPES[kind].parameters:  # what lies on the map of a land is as large as it is there
        assert 10.0 < max(box.width, box.height) < 30.0


def test_no_key_of_the_new_families_is_the_name_of_a_kind():
    """A table of a description is told by the key that names its kind, so no other key may be such a name."""
    for kind in RANGES:
        _, *others = SHAPES[kind].parameters
        assert set(others).isdisjoint(SHAPES)


@pytest.mark.parametrize("kind", sorted(RANGES))
def test_the_summary_says_what_the_main_key_is(kind):
    assert f"`{kind}`" in SHAPES[kind].summary


USUAL_KEYS = {"centre", "turn"}


@pytest.mark.parametrize("kind", sorted(RANGES))
def test_every_key_is_explained_where_a_modeller_looks(kind):
    said = inspect.getdoc(SHAPES[kind].draw)
    for key in set(SHAPES[kind].parameters) - USUAL_KEYS:
        assert f"`{key}`" in said
