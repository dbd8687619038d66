"""Fewer points, the same land: areas, parts, necks and shared borders are kept."""

from __future__ import annotations

import numpy as np
import pytest
import shapely

from heraldry.shapes.region import atlas
from heraldry.shapes.region.fitting import Box, fit
from heraldry.shapes.region.plan import dissolve, project
from heraldry.shapes.region.projection import choose
from heraldry.shapes.region.simplify import simplify

AREA_KEPT = 0.005
"""The share of its area that a part may lose or gain."""


CLEARANCE_MM = 0.02
"""An island nearer to other land than this cannot be given its area back: it would grow on to it."""


def clearances(parts):
    """How far each part lies from the nearest larger one, the first (the largest) infinitely far."""
    return np.array([np.inf, *(shapely.distance(part, parts[:i]).min() for i, part in enumerate(parts) if i)])


def parts_of(codes, height_mm, island_mm=0.3):
    """Parts and pieces of lands, scaled to size but with all of their points."""
    lands = [atlas.outlines(code) for code in codes]
    projection = choose(np.concatenate([shapely.get_coordinates(land.polygons) for land in lands]))
    plans, _ = project(lands, projection)
    fitted = fit(dissolve(plans, ["one"] * len(plans)), Box(None, height_mm), island_mm)
    to_size = lambda some: np.array(shapely.transform(np.array(some), lambda xy: xy * fitted.mm_per_km))  # noqa: E731
    return to_size(fitted.parts), to_size(plans)


@pytest.mark.parametrize("height", [8.0, 20.0, 60.0])
@pytest.mark.parametrize("code", ["US-VT", "US-MI", "US-AK", "IS", "LS", "NO", "JP", "CH", "GR", "33007"])
def test_each_part_keeps_its_area(code, height):
    parts, _ = parts_of([code], height)
    simple = simplify(parts, [], 0.05)
    assert len(simple.parts) == len(parts)
    clear = clearances(simple.parts) > CLEARANCE_MM
    assert shapely.area(simple.parts)[clear] == pytest.approx(shapely.area(parts)[clear], rel=AREA_KEPT)
    assert clear[0] and np.count_nonzero(~clear) <= 0.1 * len(clear) + 3
    assert shapely.get_num_coordinates(simple.parts).sum() <= shapely.get_num_coordinates(parts).sum()
    assert all(shapely.is_valid(simple.parts))


@pytest.mark.parametrize("code", ["US-VT", "US-MI", "IS", "NO"])
def test_nothing_moves_farther_than_can_be_seen(code):
    parts, _ = parts_of([code], 20.0)
    simple = simplify(parts, [], 0.05)
    far = [shapely.hausdorff_distance(one, two) for one, two in zip(parts, simple.parts, strict=True)]
    assert (
        max(far) < 0.35
    )  # a spike 0.35 mm long with the area of 0.05 mm squared is 0.014 mm wide: no printer shows it


def test_pieces_neither_overlap_nor_part():
    codes = ["50001", "50007", "50021", "50023", "50017", "50027"]
    parts, pieces = parts_of(codes, 20.0)
    coverage = shapely.coverage_simplify(pieces, 0.05)
    assert shapely.coverage_is_valid(coverage)
    assert shapely.area(coverage) == pytest.approx(shapely.area(pieces), rel=0.02)
    simple = simplify(parts, list(pieces), 0.05)
    assert shapely.area(simple.parts) == pytest.approx(shapely.area(parts), rel=AREA_KEPT)
    boundary = shapely.union_all(simple.parts)
    assert all(line.within(boundary.buffer(1e-6)) for line in simple.borders)


def test_a_narrow_neck_stays_whole():
    """Two squares joined by a bridge a tenth as wide as what is simplified away: still one part, still a bridge."""
    y = 0.0025
    bridge = shapely.Polygon(
        [
            (0, -5),
            (5, -5),
            (5, -y),
            (6, -y),
            (6, -5),
            (11, -5),
            (11, 5),
            (6, 5),
            (6, y),
            (5, y),
            (5, 5),
            (0, 5),
        ]
    )
    wiggly = shapely.segmentize(bridge, 0.05)
    (part,) = simplify(np.array([wiggly]), [], 0.05).parts
    assert part.is_valid
    assert part.buffer(-y / 4).geom_type == "MultiPolygon" or part.contains(shapely.LineString([(4, 0), (7, 0)]))
    assert part.geom_type == "Polygon"


def test_parts_that_touch_keep_their_places():
    one, two = shapely.Polygon([(0, 0), (3, 2), (3, -2)]), shapely.Polygon([(0, 0), (-3, 2), (-3, -2)])
    rough = np.array([shapely.segmentize(shape, 0.1) for shape in (one, two)])
    simple = simplify(rough, [], 0.05)
    assert shapely.MultiPolygon(list(simple.parts)).is_valid
