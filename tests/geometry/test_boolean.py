"""Set operations: what people draw, what nearly touches, what repeats itself, and the laws of sets."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import (
    Combined,
    Difference,
    Intersection,
    SetExpression,
    Union,
    clean,
    combine,
    contains,
    fill,
    intersect,
    pieces,
    subtract,
    to_polygon,
    unite,
)
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import area, ring_areas
from heraldry.geometry.outline import ARC, CUBIC, EMPTY, LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Cubic, Line, Path
from tests.emblems import shield, straight_text, stripes
from tests.reference import as_polygons, farthest
from tests.strategies import blob, box, circle, nests, polygon, ring, rounded_box, shapes, star

EXACT_MM2 = 1e-9
TILT = (math.cos(0.3), math.sin(0.3))
properties = settings(derandomize=True, deadline=None, max_examples=60)


def clean_rings(outline: Outline) -> bool:
    """Whether the rings are as promised: a valid region whose signed areas are those of the region."""
    return math.isclose(float(ring_areas(outline).sum()), to_polygon(outline, 1e-5).area, rel_tol=1e-4, abs_tol=1e-8)


def same_nodes(one: Outline, other: Outline) -> bool:
    return (
        np.array_equal(one.kinds, other.kinds)
        and np.array_equal(one.rings, other.rings)
        and np.array_equal(one.data, other.data)
    )


# ---- the laws of sets, on random nests


@given(left=nests(3), right=nests(3))
@properties
def test_areas_obey_inclusion_and_exclusion(left: list[Outline], right: list[Outline]) -> None:
    a, b = unite(*left), unite(*right)
    both, common, rest = unite(a, b), intersect(a, b), subtract(a, b)
    assert area(both) == pytest.approx(area(a) + area(b) - area(common), abs=EXACT_MM2)
    assert area(rest) == pytest.approx(area(a) - area(common), abs=EXACT_MM2)
    for outline in (a, b, both, common, rest):
        assert clean_rings(outline)


@given(parts=nests(5))
@properties
def test_order_does_not_matter(parts: list[Outline]) -> None:
    for combined in (unite, intersect):
        there, back = combined(*parts), combined(*reversed(parts))
        assert area(there) == pytest.approx(area(back), abs=EXACT_MM2)
        assert there.node_count == back.node_count


@given(a=shapes(), b=shapes())
@properties
def test_what_is_cut_away_is_gone_and_comes_back_whole(a: Outline, b: Outline) -> None:
    rest, common = subtract(a, b), intersect(a, b)
    assert area(intersect(rest, b)) == pytest.approx(0.0, abs=EXACT_MM2)
    whole = unite(rest, common)
    assert area(whole) == pytest.approx(area(unite(a)), abs=EXACT_MM2)
    assert whole.node_count <= unite(a).node_count


@given(outline=shapes())
@properties
def test_a_shape_with_itself(outline: Outline) -> None:
    once = unite(outline)
    assert subtract(outline, outline).is_empty
    assert same_nodes(unite(once, once), once)
    assert same_nodes(intersect(once, once), once)
    assert subtract(outline, EMPTY).node_count == once.node_count
    assert intersect(outline, EMPTY).is_empty


@given(parts=nests(4))
@properties
def test_nested_expressions_are_what_their_steps_are(parts: list[Outline]) -> None:
    first, *others = parts
    at_once = combine(Difference(Union((first, box(-2, -2, 2, 2))), (Intersection((Union(tuple(others)), first)),)))
    in_steps = subtract(unite(first, box(-2, -2, 2, 2)), intersect(unite(*others), first))
    assert area(at_once.outline) == pytest.approx(area(in_steps), abs=1e-6)


@given(parts=nests(4))
@properties
def test_the_same_again_gives_the_same_bits(parts: list[Outline]) -> None:
    assert same_nodes(unite(*parts), unite(*parts))


# ---- tangent, touching, nearly touching


@pytest.mark.parametrize("x, y", (TILT, (1.0, 0.0), (0.6, -0.8)))
@pytest.mark.parametrize("miss", (0.0, 1e-9, 1e-7, 1e-5, 1e-4))
def test_discs_that_touch_or_just_miss_stay_two(x: float, y: float, miss: float) -> None:
    reach = 8 + miss
    result = combine(Union((circle(0, 0, 5), circle(reach * x, reach * y, 3))))
    assert (result.outline.node_count, len(pieces(result.outline)), result.kept_joints) == (2, 2, 0)
    assert area(result.outline) == pytest.approx(34 * math.pi, abs=EXACT_MM2)


@pytest.mark.parametrize("overlap", (1e-7, 1e-5, 1e-4, 1e-3))
def test_discs_that_overlap_by_less_than_the_tolerance_become_one(overlap: float) -> None:
    reach = 8 - overlap
    joined = unite(circle(0, 0, 5), circle(reach * TILT[0], reach * TILT[1], 3))
    assert len(joined.rings) == 2 and joined.kinds.tolist() == [ARC, ARC]
    assert area(joined) == pytest.approx(34 * math.pi - lens_area(5, 3, reach), abs=EXACT_MM2)


def lens_area(r: float, s: float, d: float) -> float:
    """What two circles have in common (MathWorld, Circle-Circle Intersection, formula 14)."""
    first = r * r * math.acos((d * d + r * r - s * s) / (2 * d * r))
    second = s * s * math.acos((d * d + s * s - r * r) / (2 * d * s))
    return first + second - math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2


@pytest.mark.parametrize("inner", (3.0, 4.5, 4.9, 0.5))
@pytest.mark.parametrize("x, y", (TILT, (1.0, 0.0), (0.6, -0.8)))
def test_a_hole_that_touches_the_rim_from_inside(x: float, y: float, inner: float) -> None:
    away = 5 - inner
    result = combine(Difference(circle(0, 0, 5), (circle(away * x, away * y, inner),)))
    assert result.outline.node_count == 2 and result.kept_joints == 0
    assert area(result.outline) == pytest.approx(math.pi * (25 - inner**2), abs=EXACT_MM2)


def test_a_disc_that_touches_the_rim_from_inside_adds_nothing() -> None:
    assert same_nodes(unite(circle(0, 0, 5), circle(2 * TILT[0], 2 * TILT[1], 3)), circle(0, 0, 5))


@pytest.mark.parametrize("gap", (-1e-3, -1e-5, 0.0, 1e-5))
def test_a_line_that_nearly_touches_a_circle(gap: float) -> None:
    result = combine(Difference(box(-7, -5 - gap, 7, 6), (circle(0, 0, 5),)))
    cut = 0.0 if gap >= 0 else 25 * math.acos(1 + gap / 5) - (5 + gap) * math.sqrt(-gap * (10 + gap))
    assert area(result.outline) == pytest.approx(14 * (11 + gap) - 25 * math.pi + cut, abs=EXACT_MM2)
    assert len(result.outline.rings) - 1 == (2 if gap >= 0 else 1)


def test_a_crescent_of_a_micrometre_is_a_crescent() -> None:
    crescent = subtract(circle(0, 0, 5), circle(0.001, 0, 5))
    assert crescent.kinds.tolist() == [ARC, ARC]
    assert area(crescent) == pytest.approx(25 * math.pi - lens_area(5, 5, 0.001), abs=EXACT_MM2)


@pytest.mark.parametrize("shift", (1e-9, 1e-8, 1e-6))
def test_circles_a_picometre_apart_make_no_confetti(shift: float) -> None:
    one, other = circle(0, 0, 5), circle(shift, 0, 5)
    assert unite(one, other).node_count <= 2 and subtract(one, other).node_count <= 2
    assert area(unite(one, other)) == pytest.approx(25 * math.pi, abs=20 * shift)
    assert area(subtract(one, other)) == pytest.approx(10 * shift, abs=1e-8)


def test_a_free_curve_that_runs_close_to_a_circle() -> None:
    nearly_round = blob(0, 0, [5.0] * 4, fullness=1.0)
    result = combine(Difference(circle(0, 0, 5), (nearly_round,)))
    assert (
        farthest(
            as_polygons(Union((result.outline, intersect(circle(0, 0, 5), nearly_round))), 1e-5),
            to_polygon(circle(0, 0, 5), 1e-5),
        )
        < 1e-4
    )


# ---- coincident edges, corners, T-junctions


@pytest.mark.parametrize("angle", (0.0, 17.3, 90.0))
def test_boxes_that_share_an_edge_unite_without_a_seam(angle: float) -> None:
    turn = Affine.turn(angle, about=Point(3, 4))
    same = unite(box(0, 0, 10, 10).transformed(turn), box(10, 0, 20, 10).transformed(turn))
    part = unite(box(0, 0, 10, 10).transformed(turn), box(10, 2, 20, 8).transformed(turn))
    assert (same.node_count, part.node_count) == (4, 8)
    assert area(same) == pytest.approx(200, abs=EXACT_MM2) and area(part) == pytest.approx(160, abs=EXACT_MM2)


def test_edges_that_differ_by_rounding_are_one_edge() -> None:
    about = Point(3, 4)
    turned_once = box(10, 0, 20, 10).transformed(Affine.turn(7.3, about)).transformed(Affine.turn(10, about))
    assert unite(box(0, 0, 10, 10).transformed(Affine.turn(17.3, about)), turned_once).node_count == 4


def test_bars_a_hundredth_of_a_nanometre_apart_stay_two() -> None:
    assert len(pieces(unite(box(0, 0, 10, 1), box(0, 1 + 1e-8, 10, 2)))) == 2


def test_a_t_junction() -> None:
    assert unite(box(0, 0, 1, 10), box(-5, 10, 6, 11)).node_count == 8


def test_a_hole_that_touches_its_rim_with_a_corner() -> None:
    result = subtract(box(0, 0, 10, 10), polygon((0, 5), (3, 3), (3, 7)))
    assert area(result) == pytest.approx(94, abs=EXACT_MM2)
    assert contains(result, Point(0.01, 8)) and not contains(result, Point(2, 5))


def test_halves_of_a_disc_make_the_disc_again() -> None:
    left, right = (intersect(circle(0, 0, 5), half) for half in (box(-9, -9, 0, 9), box(0, -9, 9, 9)))
    whole = unite(left, right)
    assert whole.kinds.tolist() == [ARC]
    assert abs(whole.data[0, 2, 1]) == pytest.approx(math.tau, abs=1e-15)


def test_arcs_cut_to_different_lengths_are_one_edge() -> None:
    wide, narrow = (intersect(ring(0, 0, 6, 5), polygon((0, 0), (9, -a), (9, a))) for a in (6, 3))
    inner = intersect(circle(0, 0, 5), polygon((0, 0), (9, -5), (9, 5)))
    assert area(intersect(inner, wide)) == pytest.approx(0.0, abs=EXACT_MM2)
    assert area(unite(inner, narrow)) == pytest.approx(area(inner) + area(narrow), abs=EXACT_MM2)
    assert len(pieces(unite(inner, narrow))) == 1


def test_letters_overlapping_a_bar_come_back_whole() -> None:
    letters, bar = straight_text("SRGBQ&"), box(-1, 0.8, 20, 1.4)
    outside, inside = subtract(letters, bar), intersect(letters, bar)
    whole = unite(outside, inside)
    assert whole.node_count == letters.node_count
    assert area(whole) == pytest.approx(area(letters), abs=EXACT_MM2)
    assert same_nodes(subtract(letters, outside), inside) or subtract(letters, outside).node_count == inside.node_count
    assert intersect(outside, bar).is_empty and subtract(outside, letters).is_empty
    assert np.sum(whole.kinds == CUBIC) == np.sum(letters.kinds == CUBIC)


def test_many_stripes_clipped_by_a_circle() -> None:
    clipped = combine(Intersection((stripes(120), circle(0, 0, 12.5))))
    assert len(clipped.outline.rings) - 1 == 120 and clipped.kept_joints == 0
    assert set(clipped.outline.kinds.tolist()) == {LINE, ARC}


# ---- sizes, slivers, failures


@pytest.mark.parametrize("size", (0.001, 0.05, 1.0, 100.0, 1000.0))
def test_results_scale_with_the_shapes(size: float) -> None:
    result = combine(
        Difference(circle(0, 0, size), (circle(size / 2, 0, 0.8 * size), star(0, 0, size / 3, size / 7, 5)))
    )
    unit = combine(Difference(circle(0, 0, 1), (circle(0.5, 0, 0.8), star(0, 0, 1 / 3, 1 / 7, 5))))
    assert result.outline.node_count == unit.outline.node_count
    assert area(result.outline) / size**2 == pytest.approx(area(unit.outline), rel=1e-6)


def test_slivers_are_dropped_only_when_asked_and_counted() -> None:
    expression = Union((Difference(circle(0, 0, 5), (circle(0.001, 0, 5),)), box(10, 10, 11, 11)))
    assert combine(expression).slivers_dropped == 0
    without = combine(expression, sliver_width_mm=0.002)
    assert without.slivers_dropped == 1 and without.outline.node_count == 4


def test_nothing_is_empty() -> None:
    for expression in (
        EMPTY,
        Union(()),
        Intersection(()),
        Difference(EMPTY, (circle(0, 0, 1),)),
        Union((EMPTY, EMPTY)),
    ):
        result = combine(expression)
        assert isinstance(result, Combined) and result.outline.is_empty
    assert pieces(EMPTY) == () and not contains(EMPTY, Point(0, 0)) and clean(EMPTY).is_empty
    assert intersect(circle(0, 0, 1), circle(9, 0, 1)).is_empty


def test_a_broken_ring_is_refused_with_its_place() -> None:
    data = box(0, 0, 1, 1).data.copy()
    data[1, 3] = 1.5, 1.5
    broken = Outline(np.full(4, LINE, np.uint8), data, np.array([0, 4]))
    with pytest.raises(GeometryError, match=r"broken by 0\.707 mm at 1\.5, 1\.5"):
        unite(broken)


# ---- clean, pieces, contains


def test_crossing_rings_by_both_rules() -> None:
    crossing = Outline.gather([circle(0, 0, 3), circle(2, 0, 3)])
    lens = lens_area(3, 3, 2)
    assert area(clean(crossing, "nonzero")) == pytest.approx(18 * math.pi - lens, abs=EXACT_MM2)
    assert area(clean(crossing, "evenodd")) == pytest.approx(18 * math.pi - 2 * lens, abs=EXACT_MM2)
    assert clean(crossing, "nonzero").kinds.tolist() == [ARC, ARC]


def test_a_pentagram_by_both_rules() -> None:
    tips = [Point.polar(1.0, math.pi / 2 + i * 2 * math.tau / 5) for i in range(5)]
    pentagram = Outline.of([Path.through(tips, closed=True)])
    full, hollow = clean(pentagram, "nonzero"), clean(pentagram, "evenodd")
    assert full.node_count == 10 and len(pieces(full)) == 1
    assert hollow.node_count == 15 and len(pieces(hollow)) == 5
    inner = math.cos(math.radians(72)) / math.cos(math.radians(36))
    assert area(full) == pytest.approx(10 * 0.5 * inner * math.sin(math.radians(36)), abs=EXACT_MM2)


def test_rings_that_run_the_wrong_way_are_turned() -> None:
    inside_out = Outline.gather([circle(0, 0, 5, ccw=False), circle(0, 0, 3, ccw=True)])
    result = clean(inside_out, "evenodd")
    assert ring_areas(result) == pytest.approx([25 * math.pi, -9 * math.pi])
    assert area(clean(inside_out, "nonzero")) == pytest.approx(16 * math.pi)


def test_overlapping_strokes_of_one_letter() -> None:
    strokes = Outline.gather([rounded_box(0, 0, 1, 7, 0.3), rounded_box(0, 6, 5, 7, 0.3), rounded_box(0, 3, 4, 4, 0.3)])
    assert area(clean(strokes)) == pytest.approx(area(unite(*(Outline.of([p]) for p in strokes.paths))), abs=EXACT_MM2)


@given(parts=nests(5))
@properties
def test_cleaning_a_heap_is_uniting_it_and_cleaning_again_changes_nothing(parts: list[Outline]) -> None:
    filled = [
        Outline.of([path])
        for outline in parts
        for path in outline.paths
        if float(ring_areas(Outline.of([path])).sum()) > 0
    ]
    heap = clean(Outline.gather(filled), "nonzero")
    assert area(heap) == pytest.approx(area(unite(*filled)), abs=EXACT_MM2)
    assert same_nodes(clean(heap), clean(clean(heap)))


@given(parts=nests(5))
@properties
def test_pieces_are_the_whole(parts: list[Outline]) -> None:
    whole = unite(*parts)
    found = pieces(whole)
    assert sum(area(piece) for piece in found) == pytest.approx(area(whole), abs=EXACT_MM2)
    for piece in found:
        assert int(np.sum(ring_areas(piece) > 0)) == 1


@given(outline=shapes(), x=st.integers(-90, 90), y=st.integers(-90, 90))
@properties
def test_contains_agrees_with_the_even_odd_rule(outline: Outline, x: int, y: int) -> None:
    place = Point(x / 10 + 0.0137, y / 10 + 0.0071)
    windings = fill(flatten(outline), "evenodd")
    edges = [(a, b) for ring in flatten(outline) for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True)]
    crossings = sum(
        (a[1] > place.y) != (b[1] > place.y) and place.x < a[0] + (place.y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        for a, b in edges
    )
    assert contains(outline, place) == (crossings % 2 == 1)
    assert windings.is_valid


def test_a_polyline_through_the_same_points_is_left_alone() -> None:
    ragged = Outline.of(
        [Path.through([Point(0, 0), Point(4, 0), Point(4, 1), Point(3.9, 1.3), Point(0, 2)], closed=True)]
    )
    assert same_nodes(unite(ragged), ragged)
    assert all(isinstance(segment, Line) for segment in unite(ragged).paths[0])


@pytest.mark.parametrize("expression", (Union((shield(),)), Intersection((shield(),)), Difference(shield(), ())))
def test_one_outline_alone_is_itself(expression: SetExpression) -> None:
    result = combine(expression)
    assert result.outline.node_count == shield().node_count
    assert area(result.outline) == pytest.approx(area(shield()), abs=EXACT_MM2)


@pytest.mark.parametrize("size", [2, 8, 25, 90])
def test_a_straight_cubic_that_runs_back_over_itself_bounds_nothing(size):
    """Its chords lie on one another but for the last bit, which had lost the whole region."""
    points = [Point(x * size / 15, y * size / 15) for x, y in [(8, -11.5), (7, -11.5), (10, -11.5), (6, -11.5)]]
    there_and_back, top = Cubic(*points), Point(7 * size / 15, -5 * size / 15)
    ring = Path((there_and_back, Line(points[3], top), Line(top, points[0])), closed=True)
    assert area(clean(Outline.of([ring]))) == pytest.approx(6.5 * (size / 15) ** 2)
