"""The distance between outlines, against what can be reckoned by hand."""

import math

import pytest

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.distance import distance
from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Path

PROMISED_MM = 1e-4


def disc(radius, centre=ORIGIN):
    return Outline.of([Path((Arc.about(centre, radius, 0.1, math.tau),), closed=True)])


@pytest.mark.parametrize("angle", [0.0, 17.0, 90.0, 211.3])
def test_two_discs_are_as_far_apart_as_their_centres_less_their_radii(angle):
    there = disc(4.0, Point(20.0, 0.0)).transformed(Affine.turn(angle))
    assert distance(disc(12.0), there) == pytest.approx(4.0, abs=PROMISED_MM)
    assert distance(there, disc(12.0)) == pytest.approx(4.0, abs=PROMISED_MM)


def test_discs_as_cubics_are_as_far_apart_as_discs():
    cubics = disc(5.0).with_arcs_as_cubics(math.pi / 12)
    assert distance(cubics, disc(5.0, Point(10.02, 0))) == pytest.approx(0.02, abs=PROMISED_MM)


def test_in_the_hole_of_a_ring_the_distance_is_to_the_rim():
    ring = Outline.gather([disc(9.0), Outline.of([disc(8.0).paths[0].reversed()])])
    assert distance(ring, disc(1.0, Point(6.0, 0.0))) == pytest.approx(1.0, abs=PROMISED_MM)


def test_what_nests_touches_or_overlaps_has_no_distance():
    assert distance(disc(9.0), disc(1.0)) == 0.0
    assert distance(disc(2.0), disc(2.0, Point(3.0, 0.0))) == 0.0
    assert distance(disc(2.0), disc(2.0, Point(4.0, 0.0))) <= PROMISED_MM


def test_to_nothing_there_is_no_distance():
    with pytest.raises(GeometryError, match="empty outline"):
        distance(disc(1.0), EMPTY)
