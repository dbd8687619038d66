"""Result rings in, outline with its curves out: trace, gather, join, emit.

Millimetres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.outline import EMPTY, Outline
from heraldry.geometry.restore.chord_table import ChordTable
from heraldry.geometry.restore.curves import Floats
from heraldry.geometry.restore.emit import emit
from heraldry.geometry.restore.joints import RunEnds, solve_joints
from heraldry.geometry.restore.rejoin import rejoin_cubics
from heraldry.geometry.restore.spikes import without_spikes
from heraldry.geometry.restore.trace import Runs, gather_runs, trace, with_own_lines

STUMP_IN_TOLERANCES = 4.0
"""A run this short beside an unsolved joint is a stump: its length comes from flattening alone."""


@dataclass(frozen=True, eq=False)
class Recovered:
    """An outline with its curves, and how well they met."""

    outline: Outline
    rings: tuple[Floats, ...]
    """The rings given, with the vertices at joints where the outline has them, and without spikes."""
    kept_joints: int
    widest_gap_mm: float


def recover(
    rings: Sequence[Floats],
    table: ChordTable,
    tolerance_mm: float,
    as_lines: NDArray[np.bool_] | None = None,
) -> Recovered:
    """Put curves back into rings of a result; rings marked in ``as_lines`` stay polylines."""
    if not rings:
        return Recovered(EMPTY, (), 0, 0.0)
    edges = without_spikes(trace(rings, table))
    if as_lines is not None:
        edges = with_own_lines(edges, np.repeat(as_lines, np.diff(edges.rings)))
    if len(edges.curve) == 0:
        return Recovered(EMPTY, tuple(np.split(edges.start, edges.rings[1:-1])), 0, 0.0)
    runs, ends = _joined(gather_runs(edges), tolerance_mm)
    vertices = edges.start.copy()
    vertices[runs.vertex[runs.first]] = ends.start
    outline = rejoin_cubics(emit(runs, ends))
    gap = float(ends.gaps.max(initial=0.0))
    return Recovered(outline, tuple(np.split(vertices, edges.rings[1:-1])), int(np.sum(ends.kept)), gap)


def _joined(runs: Runs, tolerance_mm: float) -> tuple[Runs, RunEnds]:
    """Runs with their joints solved; short runs that only lie in the way of a joint are left out.

    Where a crossing lies within a micrometre of the end of a curve, the chords may cross on the wrong side of it,
    and leave a stump of a curve that the true crossing is not on.
    """
    ends = solve_joints(runs, tolerance_mm)
    while np.any(ends.kept):
        beside = ends.kept.copy()
        beside[ends.following[ends.kept]] = True
        shorter = runs.without(beside & (runs.spans <= STUMP_IN_TOLERANCES * tolerance_mm))
        fewer = solve_joints(shorter, tolerance_mm)
        if np.sum(fewer.kept) >= np.sum(ends.kept):
            break
        runs, ends = shorter, fewer
    return runs, ends
