"""Other ways to the same results, for tests to compare with: dense polygons, and skia-pathops on cubics."""

from __future__ import annotations

import math

import numpy as np
import pathops
import shapely

from heraldry.geometry.boolean import Difference, Intersection, SetExpression, Union, to_polygon
from heraldry.geometry.outline import Outline
from heraldry.geometry.segments import Cubic

SKIA_ARC_RAD = math.radians(45.0)
"""Cubics of an eighth of a turn are what is fed to skia-pathops and what nodes are counted on."""

MOST_SAMPLES = 20_000


def as_polygons(expression: SetExpression, tolerance_mm: float) -> shapely.Geometry:
    """The expression worked out on flattened outlines alone."""
    if isinstance(expression, Outline):
        return to_polygon(expression, tolerance_mm)
    if isinstance(expression, Difference):
        cuts = shapely.union_all([as_polygons(cut, tolerance_mm) for cut in expression.cuts])
        return shapely.difference(as_polygons(expression.base, tolerance_mm), cuts)
    parts = [as_polygons(part, tolerance_mm) for part in expression.parts]
    return shapely.union_all(parts) if isinstance(expression, Union) else shapely.intersection_all(parts)


def farthest(one: shapely.Geometry, other: shapely.Geometry) -> float:
    """The greatest distance between the boundaries of two polygons, sampled at vertices both ways, mm."""
    return max(_farthest_vertex(one, other), _farthest_vertex(other, one))


def _farthest_vertex(one: shapely.Geometry, other: shapely.Geometry) -> float:
    loops = [shapely.get_coordinates(loop) for loop in shapely.get_parts(shapely.boundary(other))]
    edges = np.concatenate([np.stack((loop[:-1], loop[1:]), axis=1) for loop in loops])
    vertices = shapely.get_coordinates(one)
    vertices = vertices[:: max(1, len(vertices) // MOST_SAMPLES)]
    tree = shapely.STRtree(shapely.linestrings(edges))
    _, away = tree.query_nearest(shapely.points(vertices), return_distance=True, all_matches=False)
    return float(away.max())


def skia(expression: SetExpression) -> pathops.Path:
    """The expression worked out by skia-pathops on cubics."""
    if isinstance(expression, Outline):
        return _skia_path(expression)
    first, rest, operation = (
        (expression.base, expression.cuts, pathops.PathOp.DIFFERENCE)
        if isinstance(expression, Difference)
        else (
            expression.parts[0],
            expression.parts[1:],
            pathops.PathOp.INTERSECTION if isinstance(expression, Intersection) else pathops.PathOp.UNION,
        )
    )
    result = skia(first)
    for other in rest:
        result = pathops.op(result, skia(other), operation)
    return result


def _skia_path(outline: Outline) -> pathops.Path:
    path = pathops.Path()
    pen = path.getPen()
    for ring in outline.with_arcs_as_cubics(SKIA_ARC_RAD).paths:
        pen.moveTo(tuple(ring.segments[0].start))
        for segment in ring.segments:
            if isinstance(segment, Cubic):
                pen.curveTo(tuple(segment.control1), tuple(segment.control2), tuple(segment.end))
            else:
                pen.lineTo(tuple(segment.end))
        pen.closePath()
    return path


def skia_node_count(path: pathops.Path) -> int:
    """How many lines and curves bound the path, the closing lines that are not written included."""
    count, at, first = 0, None, None
    for verb, points in path.segments:
        if verb == "moveTo":
            at = first = points[0]
        elif verb == "closePath":
            count += at != first
        else:
            count, at = count + 1, points[-1]
    return count
