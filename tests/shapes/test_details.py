"""What single shapes promise besides: gaps between feathers, teeth that mesh, ties that recede."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry import boolean
from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.point import Point
from heraldry.shapes import SHAPES
from heraldry.shapes.arrows import arrow
from heraldry.shapes.nature import compass_rose, mountains, pine, sunrise, waves
from heraldry.shapes.ribbons import ribbon
from heraldry.shapes.wings import wings
from tests.cleanness import SIDEWAYS, differing_share, draw
from tests.shape_ranges import between

quickly = settings(max_examples=15, deadline=None, derandomize=True)


def test_a_tooth_stands_on_top():
    for count in (3, 5, 7):
        outline = draw("seal", seal=10.0, count=count)
        assert bounds(outline).top == pytest.approx(10.0)
        assert bounds(outline).bottom > -9.99


def test_beads_stand_free_of_one_another():
    outline = draw("beads", beads=10.0, size=1.0)
    assert len(outline.paths) == math.floor(math.tau * 9.5 / 1.45)
    with pytest.raises(GeometryError, match="run into one another, fewer than 59 stand free"):
        draw("beads", beads=10.0, size=1.0, count=60)


@pytest.mark.parametrize("ends", ["flat", "round"])
def test_pieces_of_a_ring_are_a_gap_apart(ends):
    outline = draw("broken_ring", broken_ring=10.0, width=1.0, count=5, gap=0.8, ends=ends)
    pieces = [shapely.Polygon(ring) for ring in flatten(outline)]
    distances = [one.distance(two) for i, one in enumerate(pieces) for two in pieces[:i]]
    assert min(distances) == pytest.approx(0.8, abs=2e-3)


def test_strands_of_a_rope_lie_close_and_never_touch():
    outline = draw("rope", rope=10.0, width=2.0, gap=0.25)
    strands = [shapely.Polygon(ring) for ring in flatten(outline)]
    nearest = [strands[i - 1].distance(strand) for i, strand in enumerate(strands)]
    assert 0.6 * 0.25 < min(nearest) <= max(nearest) < 0.25


def test_the_band_of_an_oval_is_even():
    outer, inner = (shapely.LinearRing(ring) for ring in flatten(draw("oval", oval=20.0, width=1.3)))
    distances = [outer.distance(shapely.Point(x, y)) for x, y in inner.coords]
    assert min(distances) == pytest.approx(1.3, abs=1e-3)
    assert max(distances) == pytest.approx(1.3, abs=1e-3)


def test_an_oval_has_its_arcs_joined_smoothly():
    drawn = SHAPES["oval"].draw(oval=20.0, height=12.0)
    arcs = drawn.outline.paths[0].segments
    for before, after in zip([arcs[-1], *arcs], arcs, strict=False):
        spoke, other = (before.end - before.centre).unit, (after.start - after.centre).unit
        assert abs(spoke.cross(other)) < 1e-12
    assert drawn.places["crown"] == arcs[1].centre
    assert drawn.places["keel"] == arcs[3].centre


def test_parts_of_a_ribbon_are_a_gap_apart():
    drawn = ribbon(24.0, height=4.0, drop=1.4, gap=0.3)
    parts = [shapely.Polygon(ring) for ring in flatten(drawn.outline)]
    assert len(parts) == 5
    apart = sorted(one.distance(two) for i, one in enumerate(parts) for two in parts[:i])
    assert apart[:6] == pytest.approx([0.3] * 6, abs=1e-6)


def test_a_ribbon_follows_its_arc():
    drawn = ribbon(24.0, height=4.0, radius=15.0, bends="down", centre=Point(3.0, 2.0))
    centre = Point(3.0, 2.0)
    assert drawn.places["centre"] == centre
    for name in ("start", "middle", "end"):
        assert abs(drawn.places[name] - centre) == pytest.approx(15.0)
    assert tuple(drawn.places["middle"]) == pytest.approx((3.0, 2.0 - 15.0))
    assert drawn.places["start"].x < 3.0 < drawn.places["end"].x
    front = drawn.outline.paths[0]
    radii = sorted(segment.radius for segment in front if hasattr(segment, "radius"))
    assert radii == pytest.approx([13.0, 17.0])
    assert len(Outline.of([front]).kinds) == 4


def test_tails_of_a_ribbon_rise_as_they_hang():
    hanging, rising = ribbon(24.0, drop=1.0).outline, ribbon(24.0, drop=-1.0).outline
    assert differing_share(hanging.transformed(Affine.mirror(0.0)), rising) < 1e-9
    assert len(ribbon(24.0, drop=0.0).outline.paths) == 3


@quickly
@given(feathers=st.integers(3, 10), rows=st.integers(1, 3), gap=between(0.05, 0.25))
def test_feathers_stand_free_and_none_is_missing(feathers, rows, gap):
    outline = draw("wing", wing=30.0, height=20.0, feathers=feathers, rows=rows, gap=gap)
    quills = [shapely.Polygon(ring) for ring in flatten(outline)]
    assert len(quills) == feathers * rows
    nearest = min(one.distance(two) for i, one in enumerate(quills) for two in quills[:i])
    assert 0.35 * gap < nearest < 1.3 * gap


def test_lower_feathers_are_shorter():
    tops = list(draw("wing", wing=30.0, feathers=6, rows=1).paths)
    reaches = [bounds(path).right for path in tops]
    assert reaches == sorted(reaches, reverse=True)
    assert bounds(wings(30.0, apart=0.0)).width == pytest.approx(30.0)


def test_a_double_arrow_looks_both_ways():
    outline = arrow(20.0, double=True)
    assert differing_share(outline, outline.transformed(SIDEWAYS)) < 1e-9


def test_a_turned_gear_meshes_with_its_twin():
    """Two equal gears a pitch diameter apart, one turned by half a pitch, touch but do not run into one another."""
    teeth, radius = 24, 13.0  # module 1
    left = draw("gear", gear=radius, teeth=teeth)
    half_pitch = 180.0 / teeth
    right = draw("gear", gear=radius, teeth=teeth, turn=half_pitch, centre=Point(24.0, 0.0))
    both = boolean.to_polygon(left).intersection(boolean.to_polygon(right))
    assert both.area < 5e-3
    assert boolean.to_polygon(left).distance(boolean.to_polygon(right)) < 0.01


def test_a_wheel_has_a_window_between_spokes_and_its_weight_below():
    plain, weighted = draw("wheel", wheel=20.0, spokes=9), draw("wheel", wheel=20.0, spokes=9, weight=90.0)
    assert len(plain.paths) == 1 + 1 + 9
    assert np.count_nonzero(plain.kinds == CUBIC) == 0
    assert area(weighted) > area(plain)
    below = boolean.subtract(weighted, plain)
    assert bounds(below).top < -20.0 * 0.6


def test_ties_run_to_the_vanishing_point():
    outline = draw("vanishing_track", vanishing_track=20.0, height=15.0, reach=0.8)
    for x, y in np.concatenate(flatten(outline)):
        assert abs(x) <= 10.0 * (1 - y / 15.0) + 1e-6
    assert bounds(outline).top == pytest.approx(0.8 * 15.0)


def test_the_bar_below_keeps_a_gap_to_the_bar_above():
    outline = draw("crossed", crossed=20.0, width=2.0, angle=70.0, gap=0.4)
    whole, *parts = [shapely.Polygon(ring) for ring in flatten(outline)]
    assert [whole.distance(part) for part in parts] == pytest.approx([0.4, 0.4], abs=1e-9)
    assert whole.area == pytest.approx(40.0)


@pytest.mark.parametrize("count", [2, 5, 8, 11])
def test_rays_lie_on_the_horizon_and_the_topmost_is_long(count):
    outline = sunrise(10.0, count=count, short=0.7)
    box = bounds(outline)
    assert box.bottom == pytest.approx(0.0, abs=1e-9)
    assert len(outline.paths) == 1 + count
    assert differing_share(outline, outline.transformed(SIDEWAYS)) < 1e-9
    if count % 2:
        assert box.top == pytest.approx(10.0)


def test_dark_and_light_points_take_turns_round_a_rose():
    dark, lined = (
        boolean.to_polygon(compass_rose(10.0, 4, line=0.0)),
        boolean.to_polygon(compass_rose(10.0, 4, line=0.2)),
    )
    assert lined.contains(dark.buffer(-1e-3))
    quarter = shapely.affinity.rotate(dark, 90, origin=(0, 0))
    assert quarter.symmetric_difference(dark).area < 1e-6
    mirrored = shapely.affinity.scale(dark, -1, 1, origin=(0, 0))
    assert mirrored.intersection(dark).area < 1e-6


def test_nearer_mountains_keep_a_line_to_those_behind():
    outline = mountains(40.0, peaks=(Point(-8.0, 12.0), Point(8.0, 8.0)), snow=0.0, line=0.5)
    behind, before = sorted(boolean.to_polygon(outline).geoms, key=lambda part: part.bounds[3], reverse=True)
    assert behind.bounds[3] == pytest.approx(12.0)
    assert before.bounds[3] == pytest.approx(8.0)
    assert behind.distance(before) == pytest.approx(0.5, abs=1e-6)


def test_snow_lies_on_peaks_only():
    bare, snowed = mountains(30.0, count=1, snow=0.0), mountains(30.0, count=1, snow=0.3)
    cap = boolean.subtract(bare, snowed)
    height = bounds(bare).height
    assert bounds(cap).top < height
    assert bounds(cap).bottom > height * (0.7 - 0.3 * 0.62) - 1e-6
    assert area(cap) > 0.02 * area(bare)


def test_a_rolling_wave_is_as_thick_everywhere():
    outline = waves(20.0, rows=1, count=3, height=1.6, width=0.9)
    assert set(outline.kinds.tolist()) == {0, 1}
    arcs = outline.data[outline.kinds == ARC]
    radii = np.unique(np.round(arcs[:, 2, 0], 9))
    assert radii[1] - radii[0] == pytest.approx(0.9)


def test_pines_of_a_stand_do_not_touch():
    parts = boolean.to_polygon(pine(20.0, count=5)).geoms
    assert len(parts) == 5
    assert min(one.distance(two) for i, one in enumerate(parts) for two in list(parts)[:i]) > 0.1
