"""A coast that prints: what is too thin is thickened, opened, filled or taken off, and the land keeps its area."""

from __future__ import annotations

import numpy as np
import pytest
import shapely

from heraldry.geometry import boolean
from heraldry.geometry.point import Point
from heraldry.guard.finest import narrow_gaps, thin_lines
from heraldry.shapes.region import region
from heraldry.shapes.region.drawing import outline_of
from heraldry.shapes.region.legible import GAP_SHARE, LINE_MM, legible

USUAL_LINE_MM, USUAL_GAP_MM = 0.09, 0.18
"""What a usual laser printer holds (see heraldry/resolve/limits.py)."""

GAP_MM = LINE_MM * GAP_SHARE
BLOCK = shapely.box(0, 0, 6, 4)


def shown(*parts):
    return legible(np.array([shapely.Polygon(part.exterior, part.interiors) for part in parts]))


def test_a_plain_land_stays_as_it_is():
    (part,) = shown(BLOCK)
    assert part.symmetric_difference(BLOCK).area < 1e-6


def test_corners_lose_no_more_than_their_tips():
    kite = shapely.Polygon([(0, 0), (3, 1), (6, 0), (3, 5)])
    (part,) = shown(kite)
    assert part.symmetric_difference(kite).area < 3 * LINE_MM**2
    assert shapely.hausdorff_distance(part, kite) < 2 * LINE_MM


def test_a_thin_point_is_taken_off():
    spike = shapely.box(6, 2, 6 + 2.5 * LINE_MM, 2 + LINE_MM / 2)
    (part,) = shown(BLOCK.union(spike))
    assert part.bounds[2] < 6 + 0.5 * LINE_MM


def test_a_long_spit_is_thickened_to_the_line():
    spit = shapely.box(6, 2, 6 + 20 * LINE_MM, 2 + LINE_MM / 4)
    (part,) = shown(BLOCK.union(spit))
    assert part.bounds[2] > 6 + 19 * LINE_MM
    assert not thin_lines(outline_of(np.array([part])), 0.9 * LINE_MM)


def test_a_narrow_neck_holds_two_lands_together():
    neck = shapely.box(5.9, 2, 6.4, 2.03)
    (part,) = shown(shapely.union_all([BLOCK, neck, shapely.box(6.3, 0, 9, 4)]))
    assert part.buffer(-0.45 * LINE_MM).geom_type == "Polygon"


def test_a_strait_between_large_lands_is_opened():
    parts = shown(BLOCK, shapely.box(6 + GAP_MM / 4, 0, 12, 4))
    assert len(parts) == 2
    assert parts[0].distance(parts[1]) > 0.9 * GAP_MM


def test_an_islet_near_the_shore_grows_together_with_it():
    (part,) = shown(BLOCK, shapely.box(6 + GAP_MM / 2, 1.8, 6.4 + GAP_MM / 2, 2.2))
    assert part.area == pytest.approx(BLOCK.area + 0.16, rel=0.005)


def test_an_islet_farther_off_stays_apart():
    assert len(shown(BLOCK, shapely.box(6 + 2 * GAP_MM, 1.8, 6.4 + 2 * GAP_MM, 2.2))) == 2


def test_a_slit_is_filled_and_a_long_inlet_opened():
    slit, inlet = shapely.box(6 - 3 * GAP_MM, 1, 6, 1 + GAP_MM / 3), shapely.box(6 - 15 * GAP_MM, 3, 6, 3 + GAP_MM / 2)
    (part,) = shown(BLOCK.difference(slit).difference(inlet))
    assert part.contains(shapely.Point(6 - 1.5 * GAP_MM, 1 + GAP_MM / 6))
    assert not part.intersects(shapely.LineString([(6 - 14 * GAP_MM, 3.05), (5.99, 3.05)]))
    assert not narrow_gaps(outline_of(np.array([part])), 0.9 * GAP_MM)


def test_a_bay_keeps_its_mouth():
    bay = shapely.Point(4, 2).buffer(1.0).union(shapely.box(4, 2, 6, 2.1))
    (part,) = shown(BLOCK.difference(bay))
    assert not part.interiors
    assert not narrow_gaps(outline_of(np.array([part])), 0.9 * GAP_MM)


def test_a_lake_stays_a_lake():
    (part,) = shown(BLOCK.difference(shapely.Point(3, 2).buffer(0.5)))
    assert len(part.interiors) == 1


def test_a_land_all_of_it_too_thin_is_thickened():
    (part,) = shown(shapely.box(0, 0, 5, LINE_MM / 2))
    assert part.area > 0.9 * 5 * LINE_MM


HARD = ("US-MI", "US-MD", "US-FL", "US-AK", "US-HI", "NO", "GB", "GR", "JP", "ID", "CL", "HR", "DK", "PH")


def spots(outline):
    return len(thin_lines(outline, USUAL_LINE_MM)) + len(narrow_gaps(outline, USUAL_GAP_MM))


@pytest.mark.parametrize("height", [8.0, 20.0])
def test_hard_coasts_lose_nearly_all_that_does_not_print(height):
    plain = sum(spots(region((code,), width=height, height=height, finest=0.0).outline) for code in HARD)
    ready = sum(spots(region((code,), width=height, height=height).outline) for code in HARD)
    assert ready < 0.15 * plain


@pytest.mark.parametrize("code", HARD)
@pytest.mark.parametrize("height", [8.0, 20.0])
def test_broad_land_stays_land_and_broad_water_stays_water(code, height):
    """Nothing moves farther than a narrow water is wide, but for islets near a shore."""
    before = boolean.to_polygon(region((code,), width=height, height=height, finest=0.0).outline)
    after = shapely.union_all(legible(shapely.get_parts(before)))
    assert before.buffer(-GAP_MM).difference(after.buffer(LINE_MM / 2)).area == 0.0
    assert after.buffer(-LINE_MM / 2).difference(before.buffer(GAP_MM)).area == 0.0


@pytest.mark.parametrize(
    ("code", "apart"),
    [
        ("US-MI", 2),  # the two peninsulas and, at this size, perhaps an island
        ("JP", 4),
        ("NZ", 2),
        ("GB", 2),
        ("DK", 3),
    ],
)
def test_large_lands_stay_apart_at_8_mm(code, apart):
    areas = np.sort(shapely.area(shapely.get_parts(boolean.to_polygon(region((code,), height=8.0).outline))))
    assert np.count_nonzero(areas > 0.3) >= apart


@pytest.mark.parametrize("code", ["US-VT", "US-MI", "IS", "NO", "JP", "GR", "33007"])
@pytest.mark.parametrize("height", [8.0, 20.0, 60.0])
def test_parts_that_are_kept_keep_their_area(code, height):
    before = shapely.get_parts(boolean.to_polygon(region((code,), height=height, finest=0.0).outline))
    after = legible(before)
    source, part = shapely.STRtree(after).query(shapely.point_on_surface(before), predicate="intersects")
    merged = np.bincount(part, weights=shapely.area(before)[source], minlength=len(after))
    same = np.abs(shapely.area(after) / np.maximum(merged, 1e-12) - 1) < 0.005
    assert merged[same].sum() > 0.95 * shapely.area(before).sum()


def test_places_stay_where_they_are():
    plain, ready = region(("US-MI",), height=20.0, finest=0.0), region(("US-MI",), height=20.0)
    from heraldry.shapes.table import LatLon

    spot = LatLon(44.3, -84.5)
    assert abs(plain.locate(spot) - ready.locate(spot)) < 0.15
    assert isinstance(ready.locate(spot), Point)
