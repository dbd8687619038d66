"""Offsets, edges and strokes: exact where there is a formula, else every point of the result at the distance.

The reference is the definition: a point of the result's edge is at the distance from the source, and a point is
inside just when it is nearer. (Buffers of very fine polygons are no reference: GEOS fills holes in them.)
"""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import contains, pieces, subtract, to_polygon, unite
from heraldry.geometry.flatten import flatten, flatten_path
from heraldry.geometry.measure import area, length
from heraldry.geometry.offset import edge, inset, offset, stroke
from heraldry.geometry.outline import ARC, CUBIC, EMPTY, LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path
from tests.emblems import coast, keystone, shield, straight_text, waves
from tests.strategies import blob, box, circle, nests, polygon, ring, rounded_box, shapes, star

OFFSET_MM = 0.0002
EXACT_MM2 = 1e-9
properties = settings(derandomize=True, deadline=None, max_examples=25)
distances = st.sampled_from((0.01, 0.1, 0.25, 0.5, 1.0, 2.0))


def edge_tree(rings: tuple[np.ndarray, ...] | list[np.ndarray]) -> shapely.STRtree:
    chords = np.concatenate([np.stack((ring, np.roll(ring, -1, axis=0)), axis=1) for ring in rings])
    return shapely.STRtree(shapely.linestrings(chords))


def distances_to_edge(source: Outline, points: np.ndarray) -> np.ndarray:
    tree = edge_tree(flatten(source, 2e-6))
    found = tree.query_nearest(shapely.points(points), return_distance=True, all_matches=False)[1]
    return np.asarray(found)


def worst_distance(result: Outline, source: Outline, distance: float) -> float:
    """How far any point of the result's edge is from being at the distance, mm."""
    points = np.concatenate(flatten(result, 2e-5))
    return float(np.abs(distances_to_edge(source, points) - abs(distance)).max())


def wrongly_judged(result: Outline, source: Outline, distance: float, count: int = 2000) -> int:
    """How many random points are inside and should not be, or the other way; those at the very edge aside."""
    x0, y0, x1, y1 = to_polygon(source).buffer(max(distance, 0.0) + 0.5).bounds
    points = np.random.default_rng(7).uniform((x0, y0), (x1, y1), (count, 2))
    away = distances_to_edge(source, points)
    inside = shapely.contains_xy(to_polygon(source), points[:, 0], points[:, 1])
    wanted = inside | (away < distance) if distance > 0 else inside & (away > -distance)
    found = shapely.contains_xy(to_polygon(result), points[:, 0], points[:, 1])
    clear = np.abs(away - abs(distance)) > 0.002
    return int(np.sum((wanted != found) & clear))


# ---- formulas: a convex region grown by d has A + d·P + π d² (Steiner)


@pytest.mark.parametrize("d", (0.001, 0.3, 1.0, 20.0))
def test_a_convex_region_grows_by_steiners_formula(d: float) -> None:
    for region, edge_length in ((circle(1, 2, 5), 10 * math.pi), (box(0, 0, 10, 4), 28.0)):
        wanted = area(region) + d * edge_length + math.pi * d * d
        assert area(offset(region, d)) == pytest.approx(wanted, abs=EXACT_MM2)


def test_nodes_are_those_that_a_draughtsman_would_draw() -> None:
    assert offset(circle(0, 0, 5), 1).kinds.tolist() == [ARC]
    assert sorted(offset(box(0, 0, 10, 4), 1).kinds.tolist()) == [LINE] * 4 + [ARC] * 4
    assert offset(box(0, 0, 10, 4), 1, "sharp").kinds.tolist() == [LINE] * 4
    assert offset(box(0, 0, 10, 4), -1).kinds.tolist() == [LINE] * 4
    assert offset(rounded_box(0, 0, 10, 6, 1), 0.5).node_count == 8
    assert offset(rounded_box(0, 0, 10, 6, 1), -1.5).kinds.tolist() == [LINE] * 4
    assert offset(keystone(1, 1.5), -0.7).node_count == 8


@pytest.mark.parametrize(("d", "wanted"), ((0.5, 5.5**2 - 2.5**2), (3.5, 8.5**2), (-0.99, 4.01**2 - 3.99**2)))
def test_a_ring(d: float, wanted: float) -> None:
    assert area(offset(ring(0, 0, 5, 3), d)) == pytest.approx(math.pi * wanted, abs=EXACT_MM2)


def test_a_hole_closes_at_its_radius() -> None:
    assert len(offset(ring(0, 0, 5, 3), 2.999).rings) - 1 == 2
    assert len(offset(ring(0, 0, 5, 3), 3.0).rings) - 1 == 1


def test_what_is_too_thin_vanishes() -> None:
    assert offset(ring(0, 0, 5, 3), -1.2).is_empty
    assert inset(circle(0, 0, 5), 5).is_empty and inset(box(0, 0, 10, 4), 2.001).is_empty
    assert area(inset(circle(0, 0, 5), 4.999)) == pytest.approx(math.pi * 1e-6, rel=1e-3)


def test_parts_come_apart_and_grow_together() -> None:
    dumbbell = unite(circle(0, 0, 3), circle(10, 0, 3), box(0, -0.5, 10, 0.5))
    assert len(pieces(inset(dumbbell, 0.6))) == 2
    assert len(pieces(offset(unite(circle(0, 0, 3), circle(10, 0, 3)), 2.1))) == 1


def test_sharp_corners_stay_sharp_up_to_four_distances() -> None:
    assert area(offset(box(0, 0, 10, 4), 1, "sharp")) == pytest.approx(72, abs=EXACT_MM2)
    needle = polygon((0, 0), (10, -0.5), (10, 0.5))
    assert np.sum(offset(needle, 0.5, "sharp").kinds == ARC) == 1
    tip = 0.5 / math.sin(math.pi / 6)
    equilateral = polygon((0, 0), (10, 0), (5, 10 * math.sin(math.pi / 3)))
    grown = offset(equilateral, 0.5, "sharp")
    assert grown.node_count == 3
    assert grown.data[:, 0, 0].min() == pytest.approx(-tip * math.cos(math.pi / 6), abs=1e-9)


def test_inner_corners_of_an_inset_are_rounded_or_sharp() -> None:
    ell = polygon((0, 0), (10, 0), (10, 4), (4, 4), (4, 10), (0, 10))
    assert area(inset(ell, 1, "sharp")) == pytest.approx(8 * 2 + 2 * 6, abs=EXACT_MM2)
    assert area(inset(ell, 1)) == pytest.approx(8 * 2 + 2 * 6 + (1 - math.pi / 4), abs=EXACT_MM2)


# ---- every point at the distance


@pytest.mark.parametrize("d", (0.2, 0.05, 0.001, -0.05, -0.1))
def test_letters(d: float) -> None:
    letters = straight_text("RS&B")
    result = offset(letters, d)
    assert worst_distance(result, letters, d) <= OFFSET_MM
    assert wrongly_judged(result, letters, d) == 0
    assert result.node_count <= 2 * letters.node_count


@pytest.mark.parametrize("d", (0.7, -0.7, -3.0))
@pytest.mark.parametrize("region", (shield(), keystone(1, 1.5), star(0, 0, 7, 2.8, 5), coast(), waves(3)), ids=str)
def test_emblem_shapes(region: Outline, d: float) -> None:
    result = offset(region, d)
    if not result.is_empty:
        assert worst_distance(result, region, d) <= OFFSET_MM
    assert wrongly_judged(result, region, d) == 0


@given(parts=nests(3), d=distances, inwards=st.booleans())
@properties
def test_random_nests(parts: list[Outline], d: float, inwards: bool) -> None:
    region = unite(*parts)
    distance = -d if inwards else d
    result = offset(region, distance)
    if not result.is_empty:
        assert worst_distance(result, region, distance) <= OFFSET_MM
    assert wrongly_judged(result, region, distance, count=400) == 0


@pytest.mark.parametrize("d", (0.5, 1.0, 2.0))
def test_curves_tighter_than_the_distance(d: float) -> None:
    pinched = blob(0, 0, [2.0, 0.5, 2.5, 0.75, 1.5])
    for distance in (d, -d):
        result = offset(pinched, distance)
        assert result.is_empty or worst_distance(result, pinched, distance) <= OFFSET_MM
        assert wrongly_judged(result, pinched, distance) == 0


def test_growing_and_shrinking_a_smooth_shape_gives_it_back() -> None:
    there_and_back = inset(offset(shield(), 0.5), 0.5)
    assert area(there_and_back) == pytest.approx(area(shield()), abs=OFFSET_MM * 60)
    assert np.sum(there_and_back.kinds == CUBIC) >= 2


@given(outline=shapes())
@properties
def test_what_is_grown_holds_what_was(outline: Outline) -> None:
    assert subtract(unite(outline), offset(outline, 0.1)).is_empty
    assert subtract(inset(outline, 0.1), unite(outline)).is_empty


def test_a_distance_of_nothing_changes_nothing() -> None:
    assert offset(shield(), 0.0).node_count == shield().node_count
    assert offset(EMPTY, 1.0).is_empty


def test_rings_that_run_the_wrong_way_are_cleaned_first() -> None:
    inside_out = Outline.gather([circle(0, 0, 5, ccw=False), circle(0, 0, 3, ccw=True)])
    assert area(offset(inside_out, 0.5)) == pytest.approx(math.pi * (5.5**2 - 2.5**2), abs=EXACT_MM2)


def test_offsets_repeat_to_the_last_bit() -> None:
    one, two = offset(straight_text("RB"), 0.2), offset(straight_text("RB"), 0.2)
    assert np.array_equal(one.data, two.data) and np.array_equal(one.rings, two.rings)


# ---- edges


@pytest.mark.parametrize(("side", "wanted"), (("inside", 25 - 16), ("outside", 36 - 25), ("middle", 5.5**2 - 4.5**2)))
def test_edges_of_a_disc(side: str, wanted: float) -> None:
    assert area(edge(circle(0, 0, 5), 1, side)) == pytest.approx(math.pi * wanted, abs=EXACT_MM2)


def test_a_broad_inside_edge_is_all_of_the_shape() -> None:
    assert area(edge(box(0, 0, 10, 4), 2.5)) == pytest.approx(40, abs=EXACT_MM2)


@pytest.mark.parametrize("width", (0.0, -1.0))
def test_an_edge_and_a_line_need_a_width(width: float) -> None:
    with pytest.raises(GeometryError, match=f"{width:g} mm wide"):
        edge(circle(0, 0, 5), width)
    with pytest.raises(GeometryError, match=f"{width:g} mm wide"):
        stroke(Path.through([Point(0, 0), Point(1, 0)]), width)


# ---- strokes

STRAIGHT = Path((Line(Point(0, 0), Point(10, 0)),))
ELL = Path.through([Point(0, 0), Point(10, 0), Point(10, 7)])
BEND = Path((Arc.about(Point(0, 0), 5, 0.3, 2.0),))
WAVE = Path((Cubic(Point(0, 0), Point(4, 9), Point(6, -8), Point(10, 2)),))
LOOP = Path((Cubic(Point(0, 0), Point(12, 8), Point(-4, 8), Point(8, 0)),))
ZIGZAG = Path.through([Point(0, 0), Point(5, 0.3), Point(0, 0.6), Point(5, 0.9), Point(2, 3)])


@pytest.mark.parametrize(("ends", "wanted"), (("flat", 20), ("round", 20 + math.pi), ("square", 24)))
def test_a_straight_line(ends: str, wanted: float) -> None:
    result = stroke(STRAIGHT, 2, ends)
    assert result.node_count == 4 and area(result) == pytest.approx(wanted, abs=EXACT_MM2)


@pytest.mark.parametrize(("corner", "wanted"), (("sharp", 34), ("round", 33 + math.pi / 4)))
def test_a_line_with_a_corner(corner: str, wanted: float) -> None:
    assert area(stroke(ELL, 2, corner=corner)) == pytest.approx(wanted, abs=EXACT_MM2)


def test_a_bent_line_is_as_long_as_its_middle() -> None:
    """Pappus: a band of width w along a smooth path of length s has the area s·w."""
    assert stroke(BEND, 1).kinds.tolist().count(ARC) == 2
    assert area(stroke(BEND, 1)) == pytest.approx(10, abs=EXACT_MM2)
    assert area(stroke(WAVE, 0.4)) == pytest.approx(0.4 * length(WAVE), abs=OFFSET_MM * 2 * length(WAVE))


def test_a_track_of_lines_and_arcs_keeps_both() -> None:
    quarter = Arc(Point(4, 0), Point(6, 2), Point(4, 2), 2, math.pi / 2)
    track = Path((Line(Point(0, 0), Point(4, 0)), quarter, Line(Point(6, 2), Point(6, 5))))
    result = stroke(track, 1)
    assert result.node_count == 8 and area(result) == pytest.approx(7 + math.pi, abs=EXACT_MM2)


def test_closed_paths_have_two_edges() -> None:
    square = Path.through([Point(0, 0), Point(5, 0), Point(5, 5), Point(0, 5)], closed=True)
    assert area(stroke(square, 1, corner="sharp")) == pytest.approx(20, abs=EXACT_MM2)
    round_path = Path((Arc.about(Point(0, 0), 5, 0.3, math.tau),), closed=True)
    assert stroke(round_path, 1).kinds.tolist() == [ARC, ARC]
    assert area(stroke(round_path, 1)) == pytest.approx(10 * math.pi, abs=EXACT_MM2)
    assert len(stroke(round_path, 11).rings) - 1 == 1


def test_a_way_back_on_itself_is_rounded_where_it_turns() -> None:
    there_and_back = Path.through([Point(0, 0), Point(5, 0), Point(2, 0)])
    assert area(stroke(there_and_back, 1)) == pytest.approx(5 + math.pi / 8, abs=EXACT_MM2)
    assert area(stroke(there_and_back, 1, "round")) == pytest.approx(5 + math.pi / 4, abs=EXACT_MM2)


@pytest.mark.parametrize("width", (0.001, 1.0))
def test_short_and_thin_lines(width: float) -> None:
    short = Path((Line(Point(0, 0), Point(0.001, 0)),))
    assert area(stroke(short, width)) == pytest.approx(0.001 * width, rel=1e-6)
    assert area(stroke(short, width, "round")) == pytest.approx(0.001 * width + math.pi * width**2 / 4, rel=1e-6)


def test_a_path_of_no_length_draws_nothing() -> None:
    assert stroke(Path(()), 1).is_empty


@pytest.mark.parametrize("width", (0.3, 0.8, 3.0))
@pytest.mark.parametrize("path", (WAVE, LOOP, ZIGZAG, BEND, ELL), ids=("wave", "loop", "zigzag", "bend", "ell"))
def test_round_strokes_are_all_points_near_the_path(path: Path, width: float) -> None:
    result = stroke(path, width, "round")
    line = shapely.LineString(flatten_path(path, 2e-6))
    edge_points = shapely.points(np.concatenate(flatten(result, 1e-4)))
    assert np.abs(shapely.distance(line, edge_points) - width / 2).max() <= OFFSET_MM
    x0, y0, x1, y1 = line.buffer(width).bounds
    points = np.random.default_rng(5).uniform((x0, y0), (x1, y1), (2000, 2))
    away = shapely.distance(line, shapely.points(points))
    found = shapely.contains_xy(to_polygon(result), points[:, 0], points[:, 1])
    assert not np.any((found != (away < width / 2)) & (np.abs(away - width / 2) > 0.002))


@pytest.mark.parametrize("path", (WAVE, ZIGZAG, BEND, ELL), ids=("wave", "zigzag", "bend", "ell"))
def test_ends_are_flat_or_square_and_nothing_else_differs(path: Path) -> None:
    flat, square, full = (stroke(path, 0.5, ends) for ends in ("flat", "square", "round"))
    assert area(square) - area(flat) == pytest.approx(2 * 0.5 * 0.25, abs=1e-6)
    assert area(full) - area(flat) == pytest.approx(math.pi * 0.0625, abs=1e-6)
    last = path.segments[-1].at(1.0)
    assert contains(square, last) and contains(full, last)


def test_what_runs_back_over_itself_has_nothing_to_grow():
    there_and_back = Outline.of([Path.through([Point(0, 0), Point(10, 0)], closed=True)])
    assert offset(there_and_back, 1.0).is_empty
