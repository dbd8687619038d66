"""The swept region of a block shade against the Minkowski sum, computed in two other ways.

The Minkowski sum of a region A and a segment [0, v] is by definition the union of all translates A + t·v with
0 ≤ t ≤ 1. It distributes over unions; and the sum of a convex piece and a segment is the convex hull of the
piece and the piece moved by v. Both are computed here on flattened regions, by hulls and overlays alone.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from shapely.affinity import translate

from heraldry.geometry.boolean import to_polygon, unite
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Path
from heraldry.lettering.alphabets import STYLES, ParametricAlphabet
from heraldry.lettering.treatments import block_shade, swept

FLATTENED_MM = 0.002
"""The pieces summed are polygons this near to the letters."""

WAYS = [Point(0.9, 0.0), Point(-0.6, -0.6), Point(0.3, 1.1), Point(-0.7, 0.2), Point(0.0, -2.5)]


def letters(text: str) -> Outline:
    return unite(ParametricAlphabet("gothic", STYLES["gothic"]).set_line(text, 5.0).outline)


def convex_pieces(region: shapely.Geometry) -> list[shapely.Geometry]:
    """Slices between each two neighbouring levels of vertices: trapezia, all of them convex."""
    left, _, right, _ = region.bounds
    levels = np.unique(shapely.get_coordinates(region)[:, 1])
    slices = shapely.box(left - 1, levels[:-1], right + 1, levels[1:])
    cut = shapely.get_parts(shapely.get_parts(shapely.intersection(region, slices)))
    return [piece for piece in cut.tolist() if piece.area > 0]


def sum_of_pieces(region: shapely.Geometry, way: Point) -> shapely.Geometry:
    hulls = [
        shapely.convex_hull(shapely.union(piece, translate(piece, way.x, way.y))) for piece in convex_pieces(region)
    ]
    return shapely.union_all(hulls)


@pytest.mark.parametrize("way", WAYS, ids=str)
@pytest.mark.parametrize("text", ["S", "R&", "O8", "KA"])
def test_swept_region_is_the_sum_of_convex_pieces(text: str, way: Point) -> None:
    art = letters(text)
    found = to_polygon(swept(art, way), FLATTENED_MM / 4)
    reference = sum_of_pieces(to_polygon(art, FLATTENED_MM), way)
    assert shapely.difference(found, reference.buffer(2 * FLATTENED_MM)).area == 0.0
    assert shapely.difference(reference, found.buffer(2 * FLATTENED_MM)).area == 0.0
    assert shapely.symmetric_difference(found, reference).area < FLATTENED_MM * found.length


@pytest.mark.parametrize("way", WAYS, ids=str)
def test_swept_region_is_the_union_of_translates(way: Point) -> None:
    """Translates 1/400 of the way apart leave scallops no deeper than that step: the union fills all but those."""
    art = letters("G5")
    found = to_polygon(swept(art, way), FLATTENED_MM)
    region = to_polygon(art, FLATTENED_MM)
    steps = [translate(region, way.x * t, way.y * t) for t in np.linspace(0.0, 1.0, 401)]
    filled = shapely.union_all(steps)
    step = abs(way) / 400
    assert shapely.difference(filled, found).area < 2 * FLATTENED_MM * found.length
    assert shapely.difference(found, filled).area < step * found.length
    assert shapely.difference(found, filled.buffer(step + FLATTENED_MM)).area == 0.0


@pytest.mark.parametrize("way", WAYS, ids=str)
def test_a_convex_region_grows_by_its_width_across(way: Point) -> None:
    """Cavalieri's principle: along each line of the way the region gains the way's length, and no more."""
    disc = Outline.of([Path((Arc.about(Point(3.0, -1.0), 1.7, 0.4, math.tau),), closed=True)])
    assert area(swept(disc, way)) == pytest.approx(area(disc) + 2 * 1.7 * abs(way), rel=1e-9)


def test_the_shade_is_the_swept_region_without_the_letters() -> None:
    art = letters("HEK")
    way = Point(-1.0, -1.0) * (0.8 / math.sqrt(2.0))
    shade = block_shade(art, 0.8, 225)
    assert area(shade) == pytest.approx(area(swept(art, way)) - area(art), rel=1e-4)
    reference = sum_of_pieces(to_polygon(art, FLATTENED_MM), way)
    box = bounds(shade)
    assert (box.left, box.bottom) == pytest.approx(reference.bounds[:2], abs=FLATTENED_MM)
