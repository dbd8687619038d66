"""Edges that go forth and back on one curve cancel: what remains where a chord was cut twice.

A cut puts a new point on a chord, rounded to the nearest float; a second cut along the same curve then sees the
chord pass the point by some 1e-16 mm, and the ring runs out to the end of the chord and back to the point.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.restore.chord_table import ring_successors
from heraldry.geometry.restore.curves import Floats
from heraldry.geometry.restore.trace import SAME_T, Edges


def without_spikes(edges: Edges) -> Edges:
    """The edges with every forth and back on one curve replaced by the way that is left."""
    following = ring_successors(edges.rings)
    turns = (edges.curve == edges.curve[following]) & (edges.length * edges.length[following] < 0)
    turns &= np.abs(edges.t1 - edges.t0[following]) <= SAME_T
    if not np.any(turns):
        return edges
    kept: list[int] = []
    end, t1 = edges.end.copy(), edges.t1.copy()
    counts = [0]
    for first, last in zip(edges.rings[:-1].tolist(), edges.rings[1:].tolist(), strict=True):
        ring = list(range(first, last))
        kept += _cancelled(ring, edges, end, t1) if np.any(turns[first:last]) else ring
        counts.append(len(kept))
    order = np.array(kept, dtype=np.int64)
    return Edges(
        edges.curves, edges.start[order], end[order], edges.curve[order], edges.t0[order], t1[order], np.array(counts)
    )


def _cancelled(ring: list[int], edges: Edges, end: Floats, t1: Floats) -> list[int]:
    """The edges of a ring that remain; an edge that swallows its follower takes over the follower's end."""
    remaining: list[int] = []
    for edge in ring:
        remaining.append(edge)
        while len(remaining) > 1 and _is_turn(remaining[-2], remaining[-1], edges, t1):
            _swallow(remaining, -2, -1, edges, end, t1)
    while len(remaining) > 1 and _is_turn(remaining[-1], remaining[0], edges, t1):
        _swallow(remaining, -1, 0, edges, end, t1)
    return remaining if len(remaining) > 1 else []


def _swallow(remaining: list[int], one: int, other: int, edges: Edges, end: Floats, t1: Floats) -> None:
    first, second = remaining[one], remaining.pop(other)
    end[first], t1[first] = end[second], t1[second]
    if np.array_equal(edges.start[first], end[first]):
        remaining.remove(first)


def _is_turn(one: int, other: int, edges: Edges, t1: NDArray[np.float64]) -> bool:
    way, back = t1[one] - edges.t0[one], t1[other] - edges.t0[other]
    return bool(edges.curve[one] == edges.curve[other] and way * back < 0 and abs(t1[one] - edges.t0[other]) <= SAME_T)
