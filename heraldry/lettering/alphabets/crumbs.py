"""Crumbs: edges a few nanometres long that set operations leave where two strokes all but coincide.

No printer shows them, but a cutter stops at each. A crumb is taken out and its neighbours are drawn together, which
moves an edge by less than the crumb was long. Lengths in cap heights.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.outline import CUBIC, Outline

# An edge shorter than this is a crumb: a third of a micrometre in letters 3 mm high.
CRUMB = 1e-4


def without_crumbs(outline: Outline) -> Outline:
    """The same outline with its crumbs taken out; an outline without any is returned as it is."""
    small = _is_crumb(outline)
    if not small.any():
        return outline
    data, kept = outline.data.copy(), ~small
    for first, last in zip(outline.rings[:-1].tolist(), outline.rings[1:].tolist(), strict=True):
        solid = np.flatnonzero(kept[first:last]) + first
        for before, after in zip(solid, np.roll(solid, -1), strict=True):
            _draw_together(outline.kinds, data, int(before), int(after))
    counts = np.add.reduceat(kept, outline.rings[:-1])
    return Outline(outline.kinds[kept], data[kept], np.concatenate(([0], np.cumsum(counts))))


def _is_crumb(outline: Outline) -> NDArray[np.bool_]:
    """Edges whose every point is near their start."""
    reach = outline.data - outline.data[:, :1]
    return np.asarray(np.hypot(reach[..., 0], reach[..., 1]).max(axis=1) < CRUMB)


def _draw_together(kinds: NDArray[np.uint8], data: NDArray[np.float64], before: int, after: int) -> None:
    """Let one edge end where the next begins: a curve follows a straight edge, that its direction may stay."""
    if kinds[after] == CUBIC and kinds[before] != CUBIC:
        data[after, 0] = data[before, 3]
    else:
        data[before, 3] = data[after, 0]
    for row, end, inner in ((after, 0, 1), (before, 3, 2)):
        if kinds[row] != CUBIC:
            data[row, inner] = data[row, end]
