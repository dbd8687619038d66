"""Runs become segments again: whole curves as they were, parts of them exactly, and lines across kept gaps.

Millimetres.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.outline import ARC, CUBIC, LINE, Outline
from heraldry.geometry.restore.chord_table import SAME_PLACE_MM, ring_successors
from heraldry.geometry.restore.curves import Curves, Floats, Ints
from heraldry.geometry.restore.joints import RunEnds
from heraldry.geometry.restore.trace import Runs


def emit(runs: Runs, ends: RunEnds) -> Outline:
    """The outline of runs between their ends."""
    source = runs.edges.curves[runs.edges.curve[runs.first]]
    rows = np.stack((ends.start, ends.start, ends.end, ends.end), axis=1)
    cubic, arc = np.flatnonzero(source.kinds == CUBIC), np.flatnonzero(source.kinds == ARC)
    rows[cubic, 1:3] = source[cubic].cubic_between(ends.t_start[cubic], ends.t_end[cubic])[:, 1:3]
    rows[arc, 1], rows[arc, 2, 0] = source.data[arc, 1], source.data[arc, 2, 0]
    rows[arc, 2, 1] = _sweeps(runs, ends, rows)[arc]
    _copy_whole(rows, source, runs, ends)
    return without_points(*_with_bridges(source.kinds, rows, runs.rings, ends))


def _sweeps(runs: Runs, ends: RunEnds, rows: Floats) -> Floats:
    """Angles of runs on circles: the sum over the edges says how often round, the ends say the rest."""
    edges = runs.edges
    sweep = edges.curves.data[edges.curve, 2, 1]
    total = runs.sums((edges.t1 - edges.t0) * sweep)
    total += (ends.t_end - edges.t1[runs.last]) * sweep[runs.last]
    total -= (ends.t_start - edges.t0[runs.first]) * sweep[runs.first]
    one, two = rows[:, 0] - rows[:, 1], rows[:, 3] - rows[:, 1]
    between = np.arctan2(two[:, 1], two[:, 0]) - np.arctan2(one[:, 1], one[:, 0])
    return np.asarray(between + 2 * np.pi * np.rint((total - between) / (2 * np.pi)))


def _copy_whole(rows: Floats, source: Curves, runs: Runs, ends: RunEnds) -> None:
    """Runs over the whole of one curve take its numbers as they stand."""
    single = runs.edges.curve[runs.first] == runs.edges.curve[runs.last]
    ahead = single & (ends.t_start == 0.0) & (ends.t_end == 1.0)
    back = single & (ends.t_start == 1.0) & (ends.t_end == 0.0)
    cubic, arc = source.kinds == CUBIC, source.kinds == ARC
    rows[ahead & cubic, 1:3] = source.data[ahead & cubic, 1:3]
    rows[back & cubic, 1:3] = source.data[back & cubic, 2:0:-1]
    rows[ahead & arc, 2, 1] = source.data[ahead & arc, 2, 1]
    rows[back & arc, 2, 1] = -source.data[back & arc, 2, 1]


def _with_bridges(
    kinds: NDArray[np.uint8], rows: Floats, rings: Ints, ends: RunEnds
) -> tuple[NDArray[np.uint8], Floats, Ints]:
    """Segments in order, with a line after each run that does not reach the following one."""
    leave, enter = ends.end, ends.start[ends.following]
    open_ = np.flatnonzero(np.any(leave != enter, axis=1))
    bridges = np.stack((leave, leave, enter, enter), axis=1)[open_]
    shift = np.append(0, np.cumsum(np.bincount(open_, minlength=len(rows))))
    return (
        np.insert(kinds, open_ + 1, LINE),
        np.insert(rows, open_ + 1, bridges, axis=0),
        rings + shift[rings],
    )


def without_points(kinds: NDArray[np.uint8], rows: Floats, rings: Ints) -> Outline:
    """The outline without the segments that shrank to a point; its neighbours meet there."""
    size = np.abs(rows - rows[:, :1]).max(axis=(1, 2), initial=0.0)
    arc = kinds == ARC
    size[arc] = np.abs(np.prod(rows[arc, 2], axis=1))
    kept = size > SAME_PLACE_MM
    rings = np.unique(np.append(0, np.cumsum(kept))[rings])
    kinds, rows = kinds[kept], rows[kept]
    rows[:, 3] = rows[ring_successors(rings), 0]
    line = kinds == LINE
    rows[line, 2] = rows[line, 3]
    return Outline(kinds, rows, rings)
