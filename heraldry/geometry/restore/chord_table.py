"""The table that remembers: every chord of every outline of an expression, and the curve it was cut from.

Millimetres. Before chords are cut, what should meet is made to meet to the last bit, because the overlays
compare floats: ends a picometre apart become one point, an end that lies on another curve becomes a vertex of
it, circles get a vertex where they touch, and curves that run together get the same vertices in between.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import GeometryError
from heraldry.geometry.flatten import GRID_CLEARANCE, Chords, divide
from heraldry.geometry.outline import ARC, LINE, Outline
from heraldry.geometry.restore.boxes import points_in_boxes
from heraldry.geometry.restore.curves import Curves, Floats, Ints, distances
from heraldry.geometry.restore.shared import share_vertices
from heraldry.geometry.restore.tangents import tangent_points

SAME_PLACE_MM = 1e-9
"""Places nearer than this are one place: a thousandth of the grid that descriptions are rounded to, and far
above the rounding of double precision on drawings of some metres."""

RING_GAP_MM = 1e-6
"""A ring whose segments miss each other by more than this is broken, not merely rounded."""

TOUCH_CLEARANCE_MM = 1e-6
"""A touch this near to another node is the same event seen twice."""

END, TOUCH, GRID = range(3)
"""What a vertex is, in the order of what stays where they crowd."""

SWEEP_DIRECTION = np.array([0.7548776662466927, 0.5698402909980532])
"""A direction in which no drawing is aligned: two points level in it are, nearly always, one point."""


@dataclass(frozen=True, eq=False)
class ChordTable:
    """Chord i runs from ``start[i]`` to ``end[i]`` on curve ``owner[i]`` from ``t0[i]`` to ``t1[i]``."""

    curves: Curves
    owner: Ints
    t0: Floats
    t1: Floats
    start: Floats
    end: Floats
    rings: Ints
    """Ring i of the outline is chords ``rings[i]:rings[i + 1]``."""
    rank: Ints
    """For each curve its place in the order of length; where curves run together the longest speaks."""

    def ring_vertices(self) -> list[Floats]:
        """The vertices of each ring of the outline; none for a ring that shrank to a point."""
        return np.split(self.start, self.rings[1:-1])


def tabulate(outline: Outline, tolerance_mm: float) -> ChordTable:
    """Cut the rings of an outline into chords; raises GeometryError for a broken ring."""
    curves, rings = _welded(outline)
    chords = divide(curves.kinds, curves.data, tolerance_mm)
    touches = tangent_points(curves, tolerance_mm, SAME_PLACE_MM)
    ends = _ends_on_curves(curves, chords, rings, tolerance_mm)
    chords, is_node = _inserted(chords, ends, touches)
    rank = _rank_by_length(chords, _following(chords, rings), len(curves))
    chords = share_vertices(curves, chords, is_node, _following(chords, rings), rank, SAME_PLACE_MM)
    following = _following(chords, rings)
    goes_on = np.append(chords.owner[1:] == chords.owner[:-1], False)[: len(chords.owner)]
    return ChordTable(
        curves,
        chords.owner,
        chords.t,
        np.where(goes_on, np.roll(chords.t, -1), 1.0),
        chords.xy,
        chords.xy[following],
        np.searchsorted(chords.owner, rings),
        rank,
    )


def ring_successors(rings: Ints) -> Ints:
    """For each element of rings laid end to end, the one after it, round and round."""
    following = np.arange(1, rings[-1] + 1)
    filled = rings[1:] > rings[:-1]
    following[rings[1:][filled] - 1] = rings[:-1][filled]
    return following


def _following(chords: Chords, rings: Ints) -> Ints:
    return ring_successors(np.searchsorted(chords.owner, rings))


def _welded(outline: Outline) -> tuple[Curves, Ints]:
    """The segments with their ends made one where they nearly are, without those that shrink to a point."""
    data = outline.data + 0.0  # also turns -0.0 into 0.0, which differ in their bits
    following = ring_successors(outline.rings)
    gap = distances(data[:, 3], data[following, 0])
    if np.any(gap > RING_GAP_MM):
        broken = data[np.argmax(gap), 3]
        raise GeometryError(f"a ring is broken by {gap.max():.3g} mm at {broken[0]:.6g}, {broken[1]:.6g}")
    data[:, 0] = _one_point_for_near_ones(data[:, 0])
    data[:, 3] = data[following, 0]
    straight = outline.kinds == LINE
    data[straight, 1], data[straight, 2] = data[straight, 0], data[straight, 3]
    size = np.abs(data - data[:, :1]).max(axis=(1, 2), initial=0.0)
    turned = outline.kinds == ARC
    size[turned] = np.abs(np.prod(data[turned, 2], axis=1))
    kept = size > SAME_PLACE_MM
    return Curves(outline.kinds[kept], data[kept]), np.append(0, np.cumsum(kept))[outline.rings]


def _one_point_for_near_ones(points: Floats) -> Floats:
    """Points nearer than SAME_PLACE_MM take the bits of the first of them."""
    level = np.sum(points * SWEEP_DIRECTION, axis=1)
    order = np.argsort(level, kind="stable")
    apart = distances(points[order[1:]], points[order[:-1]])
    if not np.any((apart > 0) & (apart <= SAME_PLACE_MM)):
        return points
    first = np.append(0, np.flatnonzero(apart > SAME_PLACE_MM) + 1)
    cluster = np.searchsorted(first, np.arange(len(points)), side="right") - 1
    found = np.empty_like(points)
    found[order] = points[np.minimum.reduceat(order, first)[cluster]]
    return found


def _ends_on_curves(curves: Curves, chords: Chords, rings: Ints, tolerance_mm: float) -> Chords:
    """The ends of segments that lie inside other segments, as vertices of those."""
    ends = np.unique(curves.data[:, 0], axis=0)
    start, end = chords.xy, chords.xy[_following(chords, rings)]
    reach = np.where(curves.kinds[chords.owner] == LINE, SAME_PLACE_MM, tolerance_mm)[:, None]
    chord, point = points_in_boxes(np.minimum(start, end) - reach, np.maximum(start, end) + reach, ends)
    near = _off_line(ends[point], start[chord], end[chord]) <= reach[chord, 0]
    chord, point = chord[near], point[near]
    owner = chords.owner[chord]
    own = np.any(np.all(curves.data[owner][:, [0, 3]] == ends[point, None], axis=2), axis=1)
    pair, first = np.unique(np.stack((owner, point))[:, ~own], axis=1, return_index=True)
    owner, point = pair
    t = curves[owner].nearest(ends[point], chords.t[chord[~own][first]])
    on_it = (distances(curves[owner].points(t), ends[point]) <= SAME_PLACE_MM) & (t > 0) & (t < 1)
    return Chords(owner[on_it], t[on_it], ends[point[on_it]])


def _off_line(points: Floats, start: Floats, end: Floats) -> Floats:
    """Distances of points from the lines through chords."""
    along, there = end - start, points - start
    length = np.maximum(np.hypot(along[:, 0], along[:, 1]), SAME_PLACE_MM)
    return np.abs(along[:, 0] * there[:, 1] - along[:, 1] * there[:, 0]) / length


def _join(one: Chords, other: Chords) -> Chords:
    return Chords(
        np.concatenate((one.owner, other.owner)),
        np.concatenate((one.t, other.t)),
        np.concatenate((one.xy, other.xy)),
    )


def _inserted(chords: Chords, ends: Chords, touches: Chords) -> tuple[Chords, NDArray[np.bool_]]:
    """Chords with ends of others and touches put in, and which vertices are nodes.

    Where several vertices crowd, an end of a segment stays rather than a touch, and either rather than one of
    the grid.
    """
    merged = _join(_join(chords, ends), touches)
    grade = np.repeat((GRID, END, TOUCH), (len(chords.owner), len(ends.owner), len(touches.owner)))
    grade[merged.t == 0.0] = END
    if len(merged.owner) == len(chords.owner):
        return chords, grade == END
    order = np.lexsort((grade, merged.t, merged.owner))
    merged = Chords(merged.owner[order], merged.t[order], merged.xy[order])
    kept = ~_crowded(merged, grade[order], GRID_CLEARANCE / np.bincount(chords.owner)[merged.owner])
    return Chords(merged.owner[kept], merged.t[kept], merged.xy[kept]), (grade[order] < GRID)[kept]


def _crowded(chords: Chords, grade: Ints, clearance_t: Floats) -> NDArray[np.bool_]:
    """Vertices of the grid beside nodes, and touches beside ends and other touches."""
    crowded = np.zeros(len(grade), dtype=bool)
    for shift in (1, -1):
        other = np.roll(grade, shift)
        close = np.where(
            grade == GRID,
            np.abs(np.roll(chords.t, shift) - chords.t) < clearance_t,
            distances(np.roll(chords.xy, shift, axis=0), chords.xy) <= TOUCH_CLEARANCE_MM,
        )
        close &= np.roll(chords.owner, shift) == chords.owner
        crowded |= close & ((other < grade) | ((other == TOUCH) & (grade == TOUCH) & (shift == 1)))
    return crowded


def _rank_by_length(chords: Chords, following: Ints, count: int) -> Ints:
    lengths = np.bincount(chords.owner, distances(chords.xy, chords.xy[following]), minlength=count)
    rank = np.empty(count, dtype=np.int64)
    rank[np.argsort(-lengths, kind="stable")] = np.arange(count)
    return rank
