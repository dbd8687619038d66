"""Curves that run together get the same vertices, so that the overlays see one edge and not a sliver.

Millimetres. Once curves are divided at each other's ends, stretches that run together have the same two nodes.
Among stretches between the same nodes, those that lie on the curve of a longer one take over its vertices.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.flatten import Chords
from heraldry.geometry.outline import LINE
from heraldry.geometry.restore.curves import Curves, Floats, Ints, distances
from heraldry.geometry.restore.keys import edge_keys, point_keys

PROBES = np.array([0.25, 0.75])
"""Where a stretch is compared with another; two cubics that agree at both ends and here are one curve."""


@dataclass(frozen=True, eq=False)
class _Stretches:
    """Parts of curves between nodes: vertices ``first[i]:last[i]``, the first of which is a node."""

    curves: Curves
    chords: Chords
    first: Ints
    last: Ints
    end_t: Floats

    def inner(self, i: int) -> Floats:
        """The vertices between the nodes."""
        return self.chords.xy[self.first[i] + 1 : self.last[i]]

    def curve(self, i: int) -> NDArray[np.int64]:
        """The row of the curve, as an array of one."""
        return self.chords.owner[self.first[i] : self.first[i] + 1]

    def probes(self, i: int) -> Floats:
        """Points inside the stretch."""
        start = self.chords.t[self.first[i]]
        t = start + (self.end_t[i] - start) * PROBES
        return self.curves[np.repeat(self.curve(i), len(t))].points(t)


def share_vertices(
    curves: Curves,
    chords: Chords,
    is_node: NDArray[np.bool_],
    following: Ints,
    rank: Ints,
    within_mm: float,
) -> Chords:
    """Chords with the vertices between nodes made one where curves run together."""
    if not len(is_node):
        return chords
    first = np.flatnonzero(is_node)
    last = np.append(first[1:], len(is_node))
    keys = edge_keys(chords.xy[first], chords.xy[following[last - 1]])
    same_owner = np.append(chords.owner[first[1:]] == chords.owner[first[:-1]], False)[: len(first)]
    end_t = np.where(same_owner, np.roll(chords.t[first], -1), 1.0)
    stretches = _Stretches(curves, chords, first, last, end_t)
    unlike = _unlike_groups(stretches, keys)
    takes: dict[int, Floats] = {}
    for group in unlike:
        by_rank = group[np.argsort(rank[chords.owner[first[group]]], kind="stable")]
        takes.update(_taken_over(stretches, by_rank.tolist(), within_mm))
    return _rebuilt(stretches, takes) if takes else chords


def _unlike_groups(stretches: _Stretches, keys: NDArray[np.uint64]) -> list[Ints]:
    """Groups of curved stretches between the same nodes whose vertices in between are not the same."""
    owner = stretches.chords.owner[stretches.first]
    curved = np.flatnonzero(stretches.curves.kinds[owner] != LINE)
    order = curved[np.argsort(keys[curved], kind="stable")]
    sums = np.append(np.zeros(1, np.uint64), np.cumsum(point_keys(stretches.chords.xy), dtype=np.uint64))
    inner = sums[stretches.last] - sums[stretches.first + 1]
    groups = np.split(order, np.flatnonzero(np.diff(keys[order]) != 0) + 1)
    return [group for group in groups if len(group) > 1 and np.any(inner[group] != inner[group[0]])]


def _taken_over(stretches: _Stretches, group: list[int], within_mm: float) -> dict[int, Floats]:
    """For each stretch that runs along an earlier one of its group, the inner vertices it takes."""
    leaders: list[int] = []
    takes: dict[int, Floats] = {}
    for i in group:
        for leader in leaders:
            t = _parameters_on(stretches, leader, stretches.probes(i), within_mm)
            if t is not None:
                inner = stretches.inner(leader)
                takes[i] = inner if t[0] < t[-1] else inner[::-1]
                break
        else:
            leaders.append(i)
    return takes


def _parameters_on(stretches: _Stretches, leader: int, probes: Floats, within_mm: float) -> Floats | None:
    """Where probes lie on the leading stretch, or None when they do not."""
    vertices = slice(stretches.first[leader], stretches.last[leader])
    xy, t = stretches.chords.xy[vertices], stretches.chords.t[vertices]
    away = np.hypot(*(probes[:, None] - xy[None]).transpose(2, 0, 1))
    curve = stretches.curves[np.repeat(stretches.curve(leader), len(probes))]
    found = curve.nearest(probes, t[np.argmin(away, axis=1)])
    on_it = distances(curve.points(found), probes) <= within_mm
    between = (found > t[0]) & (found < stretches.end_t[leader])
    return found if np.all(on_it & between) else None


def _rebuilt(stretches: _Stretches, takes: dict[int, Floats]) -> Chords:
    """The chords again, with inner vertices taken over; their parameters only keep them in order."""
    chords = stretches.chords
    owner, t, xy = [], [], []
    for i, (first, last) in enumerate(zip(stretches.first, stretches.last, strict=True)):
        if i in takes:
            count = len(takes[i]) + 1
            owner.append(np.full(count, chords.owner[first]))
            t.append(np.linspace(chords.t[first], stretches.end_t[i], count, endpoint=False))
            xy.append(np.concatenate((chords.xy[first : first + 1], takes[i])))
        else:
            owner.append(chords.owner[first:last])
            t.append(chords.t[first:last])
            xy.append(chords.xy[first:last])
    return Chords(np.concatenate(owner), np.concatenate(t), np.concatenate(xy))
