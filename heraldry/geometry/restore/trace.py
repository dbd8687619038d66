"""Each edge of a result is traced to the curve it was cut from, and edges of one curve become runs.

Millimetres. Nearly all edges are whole chords and found by the key of their floats; the rest end in a new
crossing and are found by lying on a chord. A run goes on while the curve and the direction stay the same;
arcs of one circle and lines in one line count as the same curve.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.outline import ARC, LINE
from heraldry.geometry.restore.boxes import points_in_boxes
from heraldry.geometry.restore.chord_table import SAME_PLACE_MM, ChordTable, ring_successors
from heraldry.geometry.restore.curves import Curves, Floats, Ints, distances
from heraldry.geometry.restore.keys import edge_keys

SAME_T = 1e-6
"""Parameters nearer than this are one place on a curve; a loop crosses itself at parameters far apart."""

IN_LINE_MM = 2 * SAME_PLACE_MM
"""A vertex between two lines is no corner when it is this near to being in line: both may have been welded."""


@dataclass(frozen=True, eq=False)
class Edges:
    """Edges of result rings laid end to end; edge i runs on ``curve[i]`` from ``t0[i]`` to ``t1[i]``."""

    curves: Curves
    start: Floats
    end: Floats
    curve: Ints
    t0: Floats
    t1: Floats
    rings: Ints

    def reordered(self, order: Ints, rings: Ints) -> Edges:
        """The same edges in another order."""
        picked = (self.start[order], self.end[order], self.curve[order], self.t0[order], self.t1[order])
        return Edges(self.curves, *picked, rings)

    @property
    def pace(self) -> Floats:
        """How far a step of t goes on the curve of each edge: radians on an arc, t itself elsewhere."""
        data = self.curves.data[self.curve]
        return np.where(self.curves.kinds[self.curve] == ARC, data[:, 2, 1], 1.0)

    @property
    def length(self) -> Floats:
        """How far each edge goes on its curve; negative is backwards."""
        return (self.t1 - self.t0) * self.pace


@dataclass(frozen=True, eq=False)
class Runs:
    """Runs over edges: run k is edges ``first[k]..last[k]`` of ``edges``, ring i runs ``rings[i]:rings[i + 1]``.

    ``vertex`` says for each edge which vertex of the result it starts at.
    """

    edges: Edges
    first: Ints
    last: Ints
    rings: Ints
    vertex: Ints

    def sums(self, of_edges: Floats) -> Floats:
        """The sum over the edges of each run."""
        running = np.append(0.0, np.cumsum(of_edges))
        return np.asarray(running[self.last + 1] - running[self.first])

    @property
    def spans(self) -> Floats:
        """The distance from the start to the end of each run, mm; infinite for a run that is a ring."""
        span = distances(self.edges.start[self.first], self.edges.end[self.last])
        alone = np.repeat(np.diff(self.rings) == 1, np.diff(self.rings))
        return np.where(alone, np.inf, span)

    def without(self, chosen: NDArray[np.bool_]) -> Runs:
        """The runs without the chosen ones; a ring keeps at least two of its runs."""
        ring = np.repeat(np.arange(len(self.rings) - 1), np.diff(self.rings))
        left = np.bincount(ring[~chosen], minlength=len(self.rings) - 1)
        kept = ~chosen | (left[ring] < 2)
        return replace(
            self, first=self.first[kept], last=self.last[kept], rings=np.append(0, np.cumsum(kept))[self.rings]
        )


def trace(rings: Sequence[Floats], table: ChordTable) -> Edges:
    """Find the curve of each edge; an edge that lies on none gets a line of its own."""
    bounds = np.cumsum([0, *(len(ring) for ring in rings)])
    start = np.concatenate(rings)
    end = start[ring_successors(bounds)]
    chord, forward, found = _whole_chords(start, end, table)
    curve = np.where(found, table.owner[chord], -1)
    t0 = np.where(forward, table.t0[chord], table.t1[chord])
    t1 = np.where(forward, table.t1[chord], table.t0[chord])
    edges = Edges(table.curves, start, end, curve, t0, t1, bounds)
    missing = np.flatnonzero(~found)
    if len(missing):
        _locate(edges, missing, table)
    return with_own_lines(edges, edges.curve < 0)


def _whole_chords(start: Floats, end: Floats, table: ChordTable) -> tuple[Ints, NDArray[np.bool_], NDArray[np.bool_]]:
    """For each edge the chord with the same ends, whether it runs the same way, and whether there is one."""
    chord_keys = edge_keys(table.start, table.end)
    order = np.lexsort((table.rank[table.owner], chord_keys))
    place = np.searchsorted(chord_keys[order], edge_keys(start, end))
    chord = order[np.minimum(place, len(order) - 1)]
    forward = np.all((table.start[chord] == start) & (table.end[chord] == end), axis=1)
    backward = np.all((table.start[chord] == end) & (table.end[chord] == start), axis=1)
    return chord, forward, forward | backward


def _locate(edges: Edges, missing: Ints, table: ChordTable) -> None:
    """Fill in the edges that are parts of chords: both ends lie on one, to SAME_PLACE_MM."""
    low = np.minimum(table.start, table.end) - SAME_PLACE_MM
    high = np.maximum(table.start, table.end) + SAME_PLACE_MM
    chord, which = points_in_boxes(low, high, (edges.start[missing] + edges.end[missing]) / 2)
    edge = missing[which]
    f0, away0 = _share_along(table, chord, edges.start[edge])
    f1, away1 = _share_along(table, chord, edges.end[edge])
    fits = np.maximum(away0, away1) <= SAME_PLACE_MM
    edge, chord, f0, f1 = edge[fits], chord[fits], f0[fits], f1[fits]
    strange = ~_beside(edges, edge, table.owner[chord])
    order = np.lexsort((chord, table.rank[table.owner[chord]], strange, edge))
    first = order[np.unique(edge[order], return_index=True)[1]]
    edge, chord = edge[first], chord[first]
    span = table.t1[chord] - table.t0[chord]
    edges.curve[edge] = table.owner[chord]
    edges.t0[edge] = table.t0[chord] + f0[first] * span
    edges.t1[edge] = table.t0[chord] + f1[first] * span


def _share_along(table: ChordTable, chord: Ints, points: Floats) -> tuple[Floats, Floats]:
    """How far along its chord each point lies (0 to 1), and how far away from it (mm)."""
    start, along = table.start[chord], table.end[chord] - table.start[chord]
    square = np.maximum(np.sum(along**2, axis=1), np.finfo(float).tiny)
    share = np.clip(np.sum((points - start) * along, axis=1) / square, 0.0, 1.0)
    return share, distances(start + along * share[:, None], points)


def _beside(edges: Edges, edge: Ints, curve: Ints) -> NDArray[np.bool_]:
    """Whether a neighbour of each edge is known to lie on the curve."""
    following = ring_successors(edges.rings)
    before = np.empty_like(following)
    before[following] = np.arange(len(following))
    return np.asarray((edges.curve[before[edge]] == curve) | (edges.curve[following[edge]] == curve))


def with_own_lines(edges: Edges, chosen: NDArray[np.bool_]) -> Edges:
    """Chosen edges become lines of their own."""
    lost = np.flatnonzero(chosen)
    if len(lost) == 0:
        return edges
    start, end = edges.start[lost], edges.end[lost]
    rows = np.stack((start, start, end, end), axis=1)
    curve, t0, t1 = edges.curve.copy(), edges.t0.copy(), edges.t1.copy()
    curve[lost] = len(edges.curves) + np.arange(len(lost))
    t0[lost], t1[lost] = 0.0, 1.0
    curves = Curves(
        np.concatenate((edges.curves.kinds, np.full(len(lost), LINE, np.uint8))),
        np.concatenate((edges.curves.data, rows)),
    )
    return Edges(curves, edges.start, edges.end, curve, t0, t1, edges.rings)


def gather_runs(edges: Edges) -> Runs:
    """Break rings into runs; each ring starts at a break, and rings come in the order of their curves."""
    edges = replace(edges, rings=np.unique(edges.rings))  # rings without edges are none
    following = ring_successors(edges.rings)
    breaks = ~_goes_on(edges, following)
    starts_run = np.zeros(len(following), dtype=bool)
    starts_run[following] = breaks
    order, rings = _ring_order(edges, starts_run)
    edges, starts_run = edges.reordered(order, rings), starts_run[order]
    starts_run[rings[:-1]] = True
    first = np.flatnonzero(starts_run)
    last = np.append(first[1:], len(order)) - 1
    return Runs(edges, first, last, np.searchsorted(first, rings), order)


def _goes_on(edges: Edges, following: Ints) -> NDArray[np.bool_]:
    """Whether an edge and the one after it belong to one run."""
    curve, next_curve = edges.curve, edges.curve[following]
    kinds = edges.curves.kinds[curve]
    alike = kinds == edges.curves.kinds[next_curve]
    length = edges.length
    same_way = length * length[following] > 0
    same_curve = (curve == next_curve) & (np.abs(edges.t1 - edges.t0[following]) <= SAME_T)
    own, other = edges.curves.data[curve], edges.curves.data[next_curve]
    away = np.maximum(np.abs(own[:, 1] - other[:, 1]).max(axis=1), np.abs(own[:, 2, 0] - other[:, 2, 0]))
    same_circle = (kinds == ARC) & (away <= IN_LINE_MM)
    in_line = (kinds == LINE) & _in_line(edges.start, edges.end, edges.end[following])
    curved_on = same_way & (same_curve | same_circle)
    return np.asarray(alike & np.where(kinds == LINE, in_line, curved_on))


def _in_line(a: Floats, b: Floats, c: Floats) -> NDArray[np.bool_]:
    """Whether b lies between a and c on their line, to IN_LINE_MM."""
    there, on = b - a, c - b
    span = np.maximum(distances(a, c), SAME_PLACE_MM)
    off = np.abs(there[:, 0] * on[:, 1] - there[:, 1] * on[:, 0]) / span
    return np.asarray((off <= IN_LINE_MM) & (np.sum(there * on, axis=1) > 0))


def _ring_order(edges: Edges, starts_run: NDArray[np.bool_]) -> tuple[Ints, Ints]:
    """The order of edges that turns each ring to its best start and sorts rings by their first curve.

    The best start is a break, else an end of a curve, and of several the one of the earliest curve.
    """
    counts = np.diff(edges.rings)
    ring = np.repeat(np.arange(len(counts)), counts)
    at_end = (edges.t0 == 0.0) | (edges.t0 == 1.0)
    worth = np.where(starts_run, 0, np.where(at_end, 1, 2))
    ranked = np.lexsort((edges.curve, worth, ring))
    best = ranked[edges.rings[:-1]]
    earliest = np.minimum.reduceat(edges.curve, edges.rings[:-1])
    by_curve = np.argsort(earliest, kind="stable")
    turned = [np.roll(np.arange(edges.rings[i], edges.rings[i + 1]), edges.rings[i] - best[i]) for i in by_curve]
    return np.concatenate(turned), np.append(0, np.cumsum(counts[by_curve]))
