"""Where circles touch circles and lines, or nearly do: a vertex on each, so that flattening keeps the touch.

Millimetres. Two polygons inscribed in touching circles cross, or part, beside the touch unless both have a
vertex there; and two circles that overlap by less than the flattening tolerance are seen to overlap only with a
vertex where the overlap is deepest. A circle that touches from inside shares the grid of angles with the outer
one, and would share its two chords at the touch: the outer one gets a vertex more on both, to stand clear of it.
"""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.geometry.flatten import GRID_CLEARANCE, Chords, chords_per_turn
from heraldry.geometry.outline import ARC, LINE
from heraldry.geometry.restore.curves import Curves, Floats, Ints, distances

END_CLEARANCE_MM = 1e-4
"""A touch this near to an end is the end's own: a fillet and its line touch where they are joined."""

NEAR_IN_TOLERANCES = 2.0
"""Circles nearer than this may seem to cross, or to miss, on account of both being flattened."""

TOUCH_SHARE = 1 / 4
"""Circles that nearly coincide cross at large angles from the line of their centres, and touch nowhere: a touch
from inside misses by at most this share of the distance of the centres."""


def tangent_points(curves: Curves, tolerance_mm: float, same_place_mm: float) -> Chords:
    """Vertices for arcs and lines where they touch, or miss or overlap by less than flattening shows."""
    one, two = _neighbours(curves)
    if len(one) == 0:
        return Chords(one, np.zeros(0), np.zeros((0, 2)))
    on_circles = curves.kinds[two] == ARC
    near = NEAR_IN_TOLERANCES * tolerance_mm
    found = [
        *_circle_touches(one[on_circles], two[on_circles], curves, near, same_place_mm, tolerance_mm),
        *_line_touches(one[~on_circles], two[~on_circles], curves, near, same_place_mm),
    ]
    owner = np.concatenate([owner for owner, _ in found])
    points = np.concatenate([points for _, points in found])
    t = _inner_parameter(curves[owner], points)
    inside = np.isfinite(t)
    return Chords(owner[inside], t[inside], points[inside])


Found = tuple[Ints, Floats]
"""Rows of curves, and a point for each."""


def _neighbours(curves: Curves) -> tuple[Ints, Ints]:
    """Pairs (arc, arc or line) whose boxes meet, each pair once."""
    arcs = np.flatnonzero(curves.kinds == ARC)
    others = np.flatnonzero((curves.kinds == ARC) | (curves.kinds == LINE))
    if len(arcs) == 0:
        return arcs, arcs
    boxes = _boxes(curves)
    first, second = shapely.STRtree(boxes[others]).query(boxes[arcs])
    one, two = arcs[first], others[second]
    once = (curves.kinds[two] == LINE) | (one < two)
    return one[once], two[once]


def _boxes(curves: Curves) -> NDArray[np.object_]:
    """Boxes round segments; round the whole circle for an arc."""
    low, high = curves.data.min(axis=1), curves.data.max(axis=1)
    arc = curves.kinds == ARC
    centre, radius = curves.data[arc, 1], curves.data[arc, 2, :1]
    low[arc], high[arc] = centre - radius, centre + radius
    return np.asarray(shapely.box(low[:, 0], low[:, 1], high[:, 0], high[:, 1]))


def _circle_touches(
    one: Ints, two: Ints, curves: Curves, near_mm: float, same_place_mm: float, tolerance_mm: float
) -> list[Found]:
    """On the line of the centres, where their distance is about the sum or the difference of the radii."""
    larger = curves.data[one, 2, 0] >= curves.data[two, 2, 0]
    one, two = np.where(larger, one, two), np.where(larger, two, one)
    radius_one, radius_two = curves.data[one, 2, 0], curves.data[two, 2, 0]
    apart = curves.data[two, 1] - curves.data[one, 1]
    distance = np.maximum(np.hypot(apart[:, 0], apart[:, 1]), same_place_mm)
    outside, inside = distance - (radius_one + radius_two), radius_one - radius_two - distance
    within = np.minimum(near_mm, distance * TOUCH_SHARE)
    touches_inside = (np.abs(inside) <= within) & (distance > same_place_mm)
    touching = touches_inside | (np.abs(outside) <= near_mm)
    way = apart / distance[:, None]
    on_one = curves.data[one, 1] + way * radius_one[:, None]
    on_two = curves.data[two, 1] + way * np.where(touches_inside, radius_two, -radius_two)[:, None]
    on_two = np.where((distances(on_one, on_two) <= same_place_mm)[:, None], on_one, on_two)
    clear = one[touches_inside]
    beside = _beside_touch(curves[clear], way[touches_inside], tolerance_mm)
    return [
        (one[touching], on_one[touching]),
        (two[touching], on_two[touching]),
        *((clear, points) for points in beside),
    ]


def _beside_touch(circles: Curves, way: Floats, tolerance_mm: float) -> list[Floats]:
    """On circles, halfway from a touch to the grid vertices before and after it."""
    centre, radius = circles.data[:, 1], circles.data[:, 2, 0]
    unit = 2 * np.pi / chords_per_turn(radius, tolerance_mm)
    place = np.arctan2(way[:, 1], way[:, 0]) / unit
    found = []
    for vertex in (np.ceil(place - GRID_CLEARANCE) - 1, np.floor(place + GRID_CLEARANCE) + 1):
        angle = (place + vertex) / 2 * unit
        found.append(centre + np.stack((np.cos(angle), np.sin(angle)), axis=-1) * radius[:, None])
    return found


def _line_touches(one: Ints, two: Ints, curves: Curves, near_mm: float, same_place_mm: float) -> list[Found]:
    """At the foot of the centre on the line, where it is about a radius away."""
    centre, radius = curves.data[one, 1], curves.data[one, 2, 0]
    foot = curves.data[two, 0] + _along(curves.data[two], centre)[:, None] * (curves.data[two, 3] - curves.data[two, 0])
    away = np.maximum(distances(foot, centre), same_place_mm)
    on_circle = centre + (foot - centre) * (radius / away)[:, None]
    same = np.abs(away - radius) <= same_place_mm
    touching = np.abs(away - radius) <= near_mm
    on_line = np.where(same[:, None], on_circle, foot)
    return [(one[touching], on_circle[touching]), (two[touching], on_line[touching])]


def _along(data: Floats, points: Floats) -> Floats:
    """The share of lines at which points stand beside them."""
    start, along = data[:, 0], data[:, 3] - data[:, 0]
    square = np.maximum(np.sum(along**2, axis=1), np.finfo(float).tiny)
    return np.asarray(np.sum((points - start) * along, axis=1) / square)


def _inner_parameter(curves: Curves, points: Floats) -> Floats:
    """Where a point lies inside a segment; not-a-number where it lies outside or at an end."""
    data, is_arc = curves.data, curves.kinds == ARC
    spoke, first = points - data[:, 1], data[:, 0] - data[:, 1]
    turn = np.arctan2(spoke[:, 1], spoke[:, 0]) - np.arctan2(first[:, 1], first[:, 0])
    sweep = np.where(is_arc, data[:, 2, 1], 1.0)
    t = np.where(is_arc, np.mod(turn * np.sign(sweep), 2 * np.pi) / np.abs(sweep), _along(data, points))
    near_end = np.minimum(distances(points, data[:, 0]), distances(points, data[:, 3]))
    return np.where((t > 0) & (t < 1) & (near_end > END_CLEARANCE_MM), t, np.nan)
