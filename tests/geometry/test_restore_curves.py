"""Curves come back out of flattened results: table, traces, joints, spikes, and parts of cubics joined again."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import intersect, subtract, unite
from heraldry.geometry.measure import area
from heraldry.geometry.outline import ARC, CUBIC, LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.polygons import rings_of
from heraldry.geometry.restore.chord_table import SAME_PLACE_MM, tabulate
from heraldry.geometry.restore.curves import Curves, distances
from heraldry.geometry.restore.keys import edge_keys, point_keys
from heraldry.geometry.restore.recover import recover
from heraldry.geometry.restore.rejoin import rejoin_cubics
from heraldry.geometry.segments import Cubic, Line, Path
from tests.emblems import shield
from tests.strategies import blob, box, circle, polygon, ring, shapes

TOLERANCE_MM = 0.0005
properties = settings(derandomize=True, deadline=None, max_examples=40)


def split(cubic: Cubic, *cuts: float) -> tuple[Cubic, ...]:
    bounds = np.array([0.0, *cuts, 1.0])
    rows = np.array([[[*p] for p in (cubic.start, cubic.control1, cubic.control2, cubic.end)]], dtype=float)
    many = Curves(np.full(len(bounds) - 1, CUBIC, np.uint8), np.repeat(rows, len(bounds) - 1, axis=0))
    parts = many.cubic_between(bounds[:-1], bounds[1:])
    parts[1:, 0] = parts[:-1, 3]
    return tuple(Cubic(*(Point(*p) for p in part)) for part in parts.tolist())


# ---- curves in batches


@given(outline=shapes())
@properties
def test_batches_agree_with_single_segments(outline: Outline) -> None:
    curves = Curves(outline.kinds, outline.data)
    segments = [segment for path in outline.paths for segment in path]
    for t in (0.0, 0.3, 1.0):
        at = np.full(len(curves), t)
        assert np.allclose(curves.points(at), [[*segment.at(t)] for segment in segments], atol=1e-12)
        step = 1e-6
        slope = (curves.points(at + step) - curves.points(at - step)) / (2 * step)
        assert np.allclose(curves.velocities(at), slope, atol=1e-6)
        assert np.allclose(curves.nearest(curves.points(at), at + 0.01), at, atol=1e-9)


# ---- keys


def test_keys_know_both_ways_along_an_edge_and_both_zeros() -> None:
    a, b = np.array([[0.1, 0.2], [0.0, 1.0]]), np.array([[0.3, 0.4], [2.0, -0.0]])
    assert np.array_equal(edge_keys(a, b), edge_keys(b, a))
    assert np.array_equal(point_keys(b), point_keys(np.array([[0.3, 0.4], [2.0, 0.0]])))
    assert len(set(point_keys(np.random.default_rng(1).integers(0, 99, (4000, 2)) / 8).tolist())) > 3000
    assert edge_keys(a, b)[0] != edge_keys(a, np.nextafter(b, 9))[0]


# ---- the table


@given(outline=shapes())
@properties
def test_every_chord_lies_on_its_curve(outline: Outline) -> None:
    table = tabulate(outline, TOLERANCE_MM)
    for t, xy in ((table.t0, table.start), (table.t1, table.end)):
        assert distances(table.curves[table.owner].points(t), xy).max() <= 2 * SAME_PLACE_MM
    assert np.all(table.t1 > table.t0)
    assert np.all(distances(table.start, table.end) > 0)


def test_ends_on_other_curves_become_their_vertices() -> None:
    slanted = Affine.turn(17.3)
    table = tabulate(Outline.gather([box(0, 0, 10, 10), box(10, 2, 20, 8)]).transformed(slanted), TOLERANCE_MM)
    assert np.bincount(table.owner).tolist() == [1, 3, 1, 1, 1, 1, 1, 1]


def test_ends_a_picometre_apart_become_one() -> None:
    table = tabulate(Outline.gather([box(0, 0, 1, 1), box(1 + 1e-10, 1e-10, 2, 1)]), TOLERANCE_MM)
    assert len(np.unique(table.start, axis=0)) == 6


def test_arcs_of_one_circle_share_vertices_where_both_run() -> None:
    arcs = [intersect(circle(0, 0, 5), polygon((0, 0), (9, -a), (9, a))) for a in (3, 6.1)]
    table = tabulate(Outline.gather(arcs), TOLERANCE_MM)
    rows = np.flatnonzero(table.curves.kinds == ARC)
    shorter, longer = ({tuple(xy) for xy in table.start[table.owner == i].tolist()} for i in rows)
    assert shorter < longer and len(shorter) > 10


def test_a_part_of_a_cubic_shares_the_vertices_of_the_whole() -> None:
    whole = Cubic(Point(0, 0), Point(1, 3), Point(4, 3), Point(5, 0))
    part = split(whole, 0.23, 0.71)[1]
    rings = [Path((c, Line(c.end, c.start)), closed=True) for c in (whole, part)]
    table = tabulate(Outline.of(rings), TOLERANCE_MM)
    longer, shorter = ({tuple(xy) for xy in table.start[table.owner == i].tolist()} for i in (0, 2))
    assert shorter < longer and len(shorter) > 5


def test_touching_circles_have_a_vertex_where_they_touch() -> None:
    x, y = 8 * math.cos(0.3), 8 * math.sin(0.3)
    table = tabulate(Outline.gather([circle(0, 0, 5), circle(x, y, 3)]), TOLERANCE_MM)
    one, two = ({tuple(xy) for xy in table.start[table.owner == i].tolist()} for i in (0, 1))
    assert len(one & two) == 1


# ---- recovering


@given(outline=shapes())
@properties
def test_rings_that_nothing_happened_to_come_back_as_they_were(outline: Outline) -> None:
    table = tabulate(outline, TOLERANCE_MM)
    found = recover(table.ring_vertices(), table, TOLERANCE_MM)
    assert np.array_equal(found.outline.kinds, outline.kinds)
    assert np.array_equal(found.outline.data, outline.data + 0.0)
    assert (found.kept_joints, found.widest_gap_mm) == (0, 0.0)


def test_rings_marked_as_lines_stay_polylines() -> None:
    table = tabulate(ring(0, 0, 5, 3), TOLERANCE_MM)
    rings = table.ring_vertices()
    found = recover(rings, table, TOLERANCE_MM, as_lines=np.array([False, True]))
    assert np.sum(found.outline.kinds == ARC) == 1
    assert np.sum(found.outline.kinds == LINE) == len(rings[1])


def test_an_edge_of_no_curve_becomes_a_line() -> None:
    table = tabulate(circle(0, 0, 5), TOLERANCE_MM)
    sliced = shapely.Polygon(table.ring_vertices()[0][:100])
    found = recover(rings_of(sliced).rings, table, TOLERANCE_MM)
    assert sorted(found.outline.kinds.tolist()) == [LINE, ARC]


def test_a_spike_on_a_curve_is_cut_off() -> None:
    table = tabulate(box(0, 0, 10, 10), TOLERANCE_MM)
    spiked = np.array([[0.0, 0.0], [10.0, 0.0], [6.0, 0.0], [6.0, 5.0], [0.0, 5.0]])
    found = recover([spiked, np.array([[2.0, 10.0], [10.0, 10.0], [4.0, 10.0]])], table, TOLERANCE_MM)
    assert found.outline.node_count == 4 and area(found.outline) == pytest.approx(30)
    assert [len(vertices) for vertices in found.rings] == [4, 0]


def test_joints_lie_on_both_curves() -> None:
    cut = subtract(shield(), circle(3, -8, 6))
    curves = Curves(cut.kinds, cut.data)
    centre, radius = np.array([3.0, -8.0]), 6.0
    joints = [row[0] for row in cut.data if abs(np.hypot(*(row[0] - centre)) - radius) < 1e-6]
    assert len(joints) >= 2
    for joint in joints:
        assert np.hypot(*(joint - centre)) == pytest.approx(radius, abs=1e-10)
        others = Curves(shield().kinds, shield().data)
        many = others[np.repeat(np.arange(len(others)), 9)]
        near = many.nearest(np.tile(joint, (len(many), 1)), np.tile(np.linspace(0, 1, 9), len(others)))
        inside = (near >= 0) & (near <= 1)
        assert distances(many.points(near), np.tile(joint, (len(many), 1)))[inside].min() < 1e-10
    assert len(curves) == cut.node_count


def test_collinear_lines_and_arcs_of_one_circle_are_joined() -> None:
    assert unite(polygon((0, 0), (4, 0), (10, 0), (10, 5), (0, 5))).node_count == 4
    quarters = [intersect(circle(0, 0, 5), box(x, y, x + 9, y + 9)) for x in (-9, 0) for y in (-9, 0)]
    assert unite(*quarters).node_count == 1


# ---- parts of cubics


@pytest.mark.parametrize("cuts", ((0.5,), (0.1,), (0.2, 0.7), (0.25, 0.5, 0.75)))
def test_parts_of_a_cubic_are_joined(cuts: tuple[float, ...]) -> None:
    whole = Cubic(Point(0, 0), Point(1, 3), Point(4, 2.5), Point(5, 0))
    parts = split(whole, *cuts)
    closed = Outline.of([Path((*parts, Line(whole.end, whole.start)), closed=True)])
    joined = rejoin_cubics(closed)
    assert joined.kinds.tolist() == [CUBIC, LINE]
    assert joined.data[0] == pytest.approx(np.array([[0, 0], [1, 3], [4, 2.5], [5, 0]]), abs=1e-9)


def test_cubics_that_only_meet_smoothly_are_not_joined() -> None:
    smooth = blob(0, 0, [3.0, 4.0, 5.0, 4.0])
    assert rejoin_cubics(smooth).node_count == 4


def test_joining_goes_on_across_the_start_of_a_ring() -> None:
    whole = Cubic(Point(0, 0), Point(1, 3), Point(4, 2.5), Point(5, 0))
    first, second = split(whole, 0.4)
    around = Outline.of([Path((second, Line(whole.end, whole.start), first), closed=True)])
    assert sorted(rejoin_cubics(around).kinds.tolist()) == [LINE, CUBIC]
