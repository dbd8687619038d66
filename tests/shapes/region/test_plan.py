"""Lands on the plane: edges divided alike from both sides, cuts closed, seams sewn."""

from __future__ import annotations

import numpy as np
import pytest
import shapely

from heraldry.errors import RegionError
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.outlying import near_parts
from heraldry.shapes.region.plan import dissolve, project
from heraldry.shapes.region.projection import Projection, choose


def land(*boxes, source="one"):
    return Land("any", shapely.MultiPolygon([shapely.box(*box) for box in boxes]), source)


def on_plane(*lands):
    projection = choose(np.concatenate([shapely.get_coordinates(one.polygons) for one in lands]))
    return project(lands, projection)


def test_neighbours_share_the_points_of_a_divided_edge():
    (one, two), mended = on_plane(land((0, 40, 7, 45)), land((7, 40, 14, 45)))
    assert mended == [False, False]
    assert shapely.coverage_is_valid([one, two])
    shared = set(map(tuple, shapely.get_coordinates(one).tolist())) & set(
        map(tuple, shapely.get_coordinates(two).tolist())
    )
    assert len(shared) == 21  # 5 degrees in steps of a quarter


def test_a_cut_at_the_180th_meridian_closes():
    (plan,), _ = on_plane(land((175, -20, 180, -15), (-180, -20, -176, -15)))
    whole = dissolve([plan], ["one"])
    assert len(shapely.get_parts(whole)) == 1
    (other,), _ = on_plane(land((175, -20, 184, -15)))
    assert whole.area == pytest.approx(other.area, rel=1e-5)


@pytest.mark.parametrize("north", [1, -1])
def test_a_cap_over_the_pole_is_one_land(north):
    """Area of a cap of 10 degrees on the ellipsoid: 3,863,000 km² within a thousandth, 2πR²(1 − cos 10°) with R the
    radius of curvature at the pole, 6,399.594 km (WGS 84: a²/b)."""
    ring = [(lon, 80 * north) for lon in range(-180, 181, 5)] + [(180, 90 * north), (-180, 90 * north)]
    cap = Land("cap", shapely.MultiPolygon([shapely.Polygon(ring)]), "one")
    (plan,), _ = on_plane(cap)
    assert len(shapely.get_parts(plan)) == 1
    expected = 2 * np.pi * 6399.594**2 * (1 - np.cos(np.radians(10)))
    assert plan.area == pytest.approx(expected, rel=0.02)  # the stereographic is conformal: larger outward by (c/2)²


@pytest.mark.parametrize("gap", [0.005, -0.005])
def test_a_seam_between_two_sources_is_closed(gap):
    one, two = land((0, 45, 1, 46)), land((1 + gap, 45, 2, 46), source="two")
    plans, _ = on_plane(one, two)
    whole = dissolve(plans, ["one", "two"])
    (part,) = shapely.get_parts(whole)
    assert not part.interiors
    assert part.area == pytest.approx(sum(plan.area for plan in plans), rel=0.01)


def test_a_strait_between_two_sources_stays_open():
    plans, _ = on_plane(land((0, 45, 1, 46)), land((1.1, 45, 2, 46), source="two"))
    assert len(shapely.get_parts(dissolve(plans, ["one", "two"]))) == 2


def test_a_land_without_width_is_said():
    line = shapely.MultiPolygon([shapely.Polygon([(0, 0), (1, 0), (2, 0)])])
    with pytest.raises(RegionError, match="holds no area"):
        project([Land("line", line, "one")], Projection("+proj=merc +units=km"))


def test_a_land_all_round_the_globe_is_one_too_many():
    with pytest.raises(RegionError, match="too much of the globe"):
        on_plane(land((-170, -80, -10, 80), (10, -80, 170, 80)))


@pytest.mark.parametrize(
    ("boxes", "left_out"),
    [
        ([(0, 0, 1, 1)], 0),
        ([(0, 0, 10, 10), (11, 0, 12, 1)], 0),  # near
        ([(0, 0, 10, 10), (40, 0, 42, 2)], 1),  # far and small
        ([(0, 0, 10, 10), (40, 0, 50, 10)], 0),  # far and half of it
        ([(0, 0, 10, 10), (12, 0, 14, 2), (16, 0, 18, 2), (20, 0, 22, 2)], 0),  # a chain of stepping stones
        ([(0, 0, 10, 10), (12.9, 0, 13, 0.1), (15.9, 0, 18, 2)], 1),  # no way by a speck
        ([(i * 9, 0, i * 9 + 1, 1) for i in range(6)], 0),  # islands all of one size
    ],
)
def test_far_parts(boxes, left_out):
    near, count = near_parts(land(*boxes))
    assert count == left_out
    assert len(near.polygons.geoms) == len(boxes) - left_out
