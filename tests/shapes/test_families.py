"""Every family of shapes over the range of its measures: clean, within its box, even where it should be."""

from __future__ import annotations

import math
from typing import Any, get_args

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry import boolean
from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import area, bounds, ring_areas
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.point import Point
from heraldry.shapes import SHAPES
from heraldry.shapes.arrows import arrow
from heraldry.shapes.catalogue import EXAMPLES, example, examples
from heraldry.shapes.nature import compass_rose, mountains, pine, sunrise, waves
from heraldry.shapes.ribbons import ribbon
from heraldry.shapes.shield_outlines import CrestOutline
from heraldry.shapes.table import Drawn
from heraldry.shapes.wings import wings

quickly = settings(max_examples=15, deadline=None, derandomize=True)

SIDEWAYS = Affine.mirror(90.0)
"""Left becomes right."""


def draw(kind: str, **arguments: Any) -> Outline:
    drawn = SHAPES[kind].draw(**arguments)
    return drawn.outline if isinstance(drawn, Drawn) else drawn


def assert_clean(outline: Outline) -> None:
    """Rings that neither cross nor overlap, outer ones counter-clockwise, holes clockwise, joints closed."""
    assert not outline.is_empty
    assert np.isfinite(outline.data).all()
    rings = [shapely.Polygon(ring) for ring in flatten(outline)]
    assert all(ring.is_valid for ring in rings)
    filled = boolean.to_polygon(outline)
    signed = sum(math.copysign(ring.area, turn) for ring, turn in zip(rings, ring_areas(outline), strict=True))
    assert filled.area == pytest.approx(signed, rel=1e-9)
    assert_arcs_round(outline)


def assert_arcs_round(outline: Outline) -> None:
    """Both ends of every arc lie on its circle, and its sweep leads from one to the other."""
    arcs = outline.data[outline.kinds == ARC]
    if not len(arcs):
        return
    start, end = arcs[:, 0] - arcs[:, 1], arcs[:, 3] - arcs[:, 1]
    radius, sweep = arcs[:, 2, 0], arcs[:, 2, 1]
    assert np.hypot(*start.T) == pytest.approx(radius, rel=1e-9)
    turned = np.stack((np.cos(sweep), np.sin(sweep)))
    swept = np.stack(
        (start[:, 0] * turned[0] - start[:, 1] * turned[1], start @ [0, 1] * turned[0] + start[:, 0] * turned[1])
    )
    assert np.abs(swept.T - end).max() <= 1e-7 * max(1.0, radius.max())


def differing_share(one: Outline, two: Outline) -> float:
    """The area that lies in only one of both, as a share of the first."""
    a, b = boolean.to_polygon(one), boolean.to_polygon(two)
    return a.symmetric_difference(b).area / a.area


# Main measure first: width or radius, and what it promises to be: box width and height over it (None: not said).
PROPORTIONED = {
    "rope": (2.0, 2.0),
    "beads": (2.0, 2.0),
    "scallop": (2.0, 2.0),
    "seal": (2.0, 2.0),
    "oval": (1.0, 0.64),
    "octagon": (1.0, 1.0),
    "cartouche": (1.0, 0.4),
    "flag": (1.0, 0.6),
    "pennant": (1.0, 0.42),
    "ribbon": (1.0, None),
    "arrow": (1.0, 0.42),
    "chevron": (1.0, None),
    "wings": (1.0, None),
    "wing": (1.0, 0.56),
    "speed_wings": (1.0, 0.26),
    "gear": (2.0, 2.0),
    "wheel": (2.0, 2.0),
    "rail_section": (0.86, 1.0),
    "track": (1.0, None),
    "vanishing_track": (1.0, None),
    "crossed": (None, None),
    "sunrise": (2.0, 1.0),
    "mountains": (1.0, 0.52),
    "waves": (1.0, None),
    "pine": (0.56, 1.0),
    "compass_rose": (2.0, 2.0),
    "crest": (1.0, 1.2),
}
EVEN = {
    *("oval", "octagon", "cartouche", "ribbon", "chevron", "wings", "speed_wings", "gear", "wheel", "seal"),
    *("rail_section", "track", "vanishing_track", "sunrise", "pine", "crest", "scallop", "waves", "beads"),
}
"""Kinds whose left half is the mirror image of their right half."""


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


SHARE = st.floats(0.0, 1.0).map(lambda value: round(value, 3))


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return SHARE.map(lambda share: low + share * (high - low))


# Ranges in which every combination has to come out; each main measure is 20 mm.
RANGES: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "rope": {"width": between(0.6, 6.0), "gap": between(0.02, 0.12)},
    "beads": {"size": between(0.3, 4.0)},
    "broken_ring": {
        "width": between(0.3, 5.0),
        "count": st.integers(1, 12),
        "gap": between(0.1, 2.0),
        "ends": st.sampled_from(("flat", "round")),
    },
    "scallop": {
        "count": st.integers(6, 60),
        "width": between(9.0, 15.0),
        "lobes": st.sampled_from(("outward", "inward")),
    },
    "seal": {"count": st.integers(8, 120), "notch": st.sampled_from(("pointed", "square")), "width": between(8, 15)},
    "oval": {"height": between(8.0, 19.0), "width": between(0.1, 1.2)},
    "octagon": {"height": between(10.0, 30.0), "cut": between(0.5, 9.0), "rise": between(0.5, 4.5)},
    "trapezoid": {"height": between(2.0, 10.0), "left": between(-30, 40), "right": between(-40, 30)},
    "cartouche": {"height": between(6.0, 14.0), "ends": st.sampled_from(("hollow", "stepped", "round", "pointed"))},
    "flag": {"tip": between(4.0, 12.0), "notch": between(0.0, 12.0), "wave": between(-3, 3), "swings": between(0.2, 3)},
    "pennant": {"tip": between(0.0, 8.0), "notch": between(0.0, 9.0), "wave": between(-2, 2)},
    "ribbon": {
        "height": between(2.0, 4.0),
        "tail": between(1.5, 4.0),
        "drop": between(-1.0, 1.0),
        "radius": st.one_of(st.none(), between(8.0, 60.0)),
        "bends": st.sampled_from(("up", "down")),
    },
    "arrow": {"width": between(0.5, 6.0), "head": between(6.5, 14.0), "barb": between(0, 3), "double": st.booleans()},
    "chevron": {"rise": between(0.5, 20.0), "width": between(0.3, 6.0), "count": st.integers(1, 6)},
    "wings": {"height": between(4.0, 14.0), "feathers": st.integers(3, 12), "rows": st.integers(1, 3)},
    "wing": {"height": between(6.0, 20.0), "feathers": st.integers(3, 12), "rows": st.integers(1, 3)},
    "speed_wings": {"height": between(2.0, 6.0), "count": st.integers(1, 6), "taper": between(0.0, 1.0)},
    "gear": {"teeth": st.integers(8, 120), "bore": between(0.0, 12.0), "pressure": between(14.0, 22.0)},
    "wheel": {"spokes": st.integers(3, 24), "rim": between(1.0, 4.0), "weight": between(20.0, 120.0)},
    "rail_section": {"foot": between(8.0, 20.0), "head": between(5.0, 12.0), "web": between(1.0, 3.0)},
    "track": {"gauge": between(3.0, 8.0), "count": st.integers(1, 16), "gap": between(0.0, 0.4)},
    "vanishing_track": {"height": between(8, 40), "count": st.integers(1, 24), "reach": between(0.3, 0.93)},
    "crossed": {
        "width": between(0.5, 3.0),
        "angle": between(40.0, 140.0),
        "ends": st.sampled_from(("flat", "round")),
        "over": st.sampled_from(("rising", "falling")),
    },
    "sunrise": {"count": st.integers(2, 25), "share": between(0.1, 0.9), "short": between(0.3, 1.0)},
    "compass_rose": {"points": st.sampled_from((4, 8, 16)), "waist": between(3.0, 7.0), "line": between(0.0, 0.4)},
    "mountains": {"count": st.integers(1, 5), "snow": between(0.0, 0.6), "line": between(0.1, 0.5)},
    "waves": {
        "rows": st.integers(1, 5),
        "count": st.integers(1, 8),
        "form": st.sampled_from(("rolling", "crested")),
    },
    "pine": {"tiers": st.integers(1, 9), "trunk": between(0.0, 8.0), "count": st.integers(1, 5)},
    "crest": {"height": between(21.2, 39.8), "outline": st.sampled_from(get_args(CrestOutline))},
}
NEEDED = {"broken_ring": 1.0, "trapezoid": 1.0}


@pytest.mark.parametrize("kind", sorted(RANGES))
@quickly
@given(data=st.data())
def test_all_measures_of_a_range_come_out_clean(kind, data):
    arguments = data.draw(st.fixed_dictionaries(RANGES[kind]))
    assert_clean(draw(kind, **{kind: 20.0}, **arguments))


ROUND = ("rope", "beads", "broken_ring", "scallop", "seal", "gear", "wheel", "compass_rose")


@pytest.mark.parametrize("kind", ROUND)
@quickly
@given(data=st.data())
def test_round_shapes_keep_within_their_radius(kind, data):
    outline = draw(kind, **{kind: 20.0}, **data.draw(st.fixed_dictionaries(RANGES[kind])))
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
    box = bounds(draw(kind, **{kind: 20.0}, **arguments))
    if kind != "trapezoid":  # says its width below; its ends lean where they will
        assert box.width == pytest.approx(20.0, abs=1e-6)
    if "height" in arguments and kind not in ("flag", "pennant"):
        assert box.height == pytest.approx(arguments["height"], abs=1e-6)


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


NONSENSE = [
    ("rope", {"rope": 10.0, "width": 12.0}, "width is 12 mm"),
    ("rope", {"rope": 10.0, "strands": 200, "gap": 1.0}, "leave nothing of the strands"),
    ("beads", {"beads": 1.0, "size": 3.0}, "need a radius of more than 1.5 mm"),
    ("broken_ring", {"broken_ring": 10.0, "width": 1.0, "count": 40, "gap": 2.0}, "40 gaps of 2 mm leave nothing"),
    ("broken_ring", {"broken_ring": 10.0, "width": 10.0}, "less than the radius 10 mm"),
    ("scallop", {"scallop": 10.0, "count": 2}, "count is 2, it must be at least 3"),
    ("scallop", {"scallop": 10.0, "depth": 10.0}, "depth is 10 mm"),
    ("scallop", {"scallop": 10.0, "width": 0.1}, "more than the depth"),
    ("seal", {"seal": 10.0, "depth": 11.0}, "less than the radius 10 mm"),
    ("oval", {"oval": 10.0, "height": 10.0}, "an oval lies"),
    ("oval", {"oval": 10.0, "width": 4.0}, "width is 4 mm"),
    ("octagon", {"octagon": 10.0, "cut": 5.0}, "cut less off"),
    ("trapezoid", {"trapezoid": 10.0, "height": 20.0, "left": 45.0, "right": -45.0}, "meet below the height"),
    ("trapezoid", {"trapezoid": 10.0, "height": 2.0, "left": 85.0}, "between -80 and 80"),
    ("cartouche", {"cartouche": 10.0, "height": 4.0, "ends": "hollow", "depth": 3.0}, "at most 2 mm do"),
    ("flag", {"flag": 10.0, "notch": 10.0}, "less than the length 10 mm"),
    ("flag", {"flag": 10.0, "wave": 1.0, "swings": 20.0}, "swings is 20"),
    ("pennant", {"pennant": 10.0, "tip": 6.0}, "between 0 and the height 4.2 mm"),
    ("ribbon", {"ribbon": 10.0, "tail": 5.0}, "has no room for tails of 5 mm"),
    ("ribbon", {"ribbon": 24.0, "radius": 3.0}, "bends round more than"),
    ("arrow", {"arrow": 10.0, "width": 6.0, "head": 5.0}, "more than the width of the shaft"),
    ("arrow", {"arrow": 10.0, "point": 9.0, "barb": 2.0}, "leave no shaft"),
    ("arrow", {"arrow": 10.0, "double": True, "notch": 1.0}, "a double arrow has no notch"),
    ("chevron", {"chevron": 10.0, "count": 0}, "count is 0"),
    ("wings", {"wings": 10.0, "apart": 12.0}, "less than the span 10 mm"),
    ("wing", {"wing": 10.0, "rows": 4}, "1 to 3 rows"),
    ("wing", {"wing": 10.0, "gap": 2.0}, "leave nothing of 7 feathers"),
    ("speed_wings", {"speed_wings": 10.0, "count": 9, "step": 3.0}, "make it longer"),
    ("gear", {"gear": 10.0, "teeth": 3}, "6 to 240"),
    ("gear", {"gear": 10.0, "bore": 9.5}, "less than the radius at the roots"),
    ("gear", {"gear": 10.0, "pressure": 35.0}, "between 10 and 30"),
    ("wheel", {"wheel": 10.0, "hub": 9.0}, "must grow in this order"),
    ("wheel", {"wheel": 10.0, "spokes": 60, "spoke": 1.0}, "leave no room"),
    ("wheel", {"wheel": 10.0, "weight": 200.0}, "to clear the hub"),
    ("rail_section", {"rail_section": 10.0, "web": 5.0}, "well below the head"),
    ("track", {"track": 10.0, "count": 30, "tie": 0.5}, "30 ties"),
    ("vanishing_track", {"vanishing_track": 10.0, "reach": 1.0}, "within 0 and 1"),
    ("vanishing_track", {"vanishing_track": 10.0, "gauge": 9.0}, "needs ties longer than"),
    ("crossed", {"crossed": 10.0, "angle": 5.0}, "15 to 165 degrees"),
    ("crossed", {"crossed": 10.0, "width": 6.0}, "too short to cross"),
    ("sunrise", {"sunrise": 10.0, "disc": 9.8}, "must be smaller than 10 mm"),
    ("mountains", {"mountains": 10.0, "count": 9}, "1 to 5 mountains"),
    ("mountains", {"mountains": 10.0, "peaks": (Point(9.0, 4.0),)}, "a peak at \\(9, 4\\) mm"),
    ("mountains", {"mountains": 10.0, "snow": 1.0}, "snow is 1"),
    ("waves", {"waves": 10.0, "count": 12, "width": 2.0, "height": 0.8}, "cannot follow waves"),
    ("pine", {"pine": 10.0, "tiers": 0}, "1 to 12 tiers"),
    ("pine", {"pine": 10.0, "count": 6}, "1 to 5 pines"),
    ("compass_rose", {"compass_rose": 10.0, "points": 6}, "4, 8 or 16"),
    ("compass_rose", {"compass_rose": 10.0, "line": 2.0}, "make it thinner"),
    ("crest", {"crest": 10.0, "height": 30.0}, "10.5 to 20 mm tall"),
]


@pytest.mark.parametrize(("kind", "arguments", "message"), NONSENSE, ids=lambda value: str(value)[:40])
def test_nonsense_is_told_what_would_be_right(kind, arguments, message):
    with pytest.raises(GeometryError, match=message):
        draw(kind, **arguments)


def test_every_family_has_had_nonsense():
    assert {kind for kind, _, _ in NONSENSE} == set(RANGES)


@pytest.mark.parametrize("kind", sorted(SHAPES))
def test_every_kind_has_an_example_that_draws(kind):
    assert next(iter(EXAMPLES[kind])) == kind
    outline = example(kind)
    assert_clean(outline)
    box = bounds(outline)
    assert 10.0 < max(box.width, box.height) < 30.0


def test_the_examples_are_all_kinds_in_order():
    rows = examples()
    assert [name for name, _, _ in rows] == sorted(SHAPES)
    assert all(summary and not outline.is_empty for _, summary, outline in rows)


def test_no_key_of_the_new_families_is_the_name_of_a_kind():
    """A table of a description is told by the key that names its kind, so no other key may be such a name."""
    for kind in RANGES:
        _, *others = SHAPES[kind].parameters
        assert set(others).isdisjoint(SHAPES)


@pytest.mark.parametrize("kind", sorted(RANGES))
def test_the_summary_says_what_the_main_key_is(kind):
    assert f"`{kind}`" in SHAPES[kind].summary
