"""Cubics that were cut in two and lie end to end again become one, as arcs of one circle and lines in line do.

Millimetres. If two cubics are the parts [0, s] and [s, 1] of one, their inner legs at the joint are as s to
1 − s, and their outer controls stretched by 1/s and 1/(1 − s) are the controls of the whole. The whole, cut at s
again, tells whether it was so.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.outline import CUBIC, Outline
from heraldry.geometry.restore.chord_table import ring_successors
from heraldry.geometry.restore.curves import Floats, Ints

SAME_CONTROL_MM = 1e-8
"""Controls of two parts may be this far from those of a cut whole: each part was welded and solved apart."""


def rejoin_cubics(outline: Outline) -> Outline:
    """The outline with every pair of parts of one cubic joined, until there is none."""
    while True:
        following = ring_successors(outline.rings)
        curved = outline.kinds == CUBIC
        first = np.flatnonzero(curved & curved[following] & (following != np.arange(len(following))))
        whole, fits = _wholes(outline.data[first], outline.data[following[first]])
        first, whole = first[fits], whole[fits]
        if len(first) == 0:
            return outline
        outline = _joined(outline, first, following[first], whole)


def _wholes(one: Floats, two: Floats) -> tuple[Floats, NDArray[np.bool_]]:
    """The cubic that each pair would be parts of, and whether they are."""
    leg_one, leg_two = one[:, 3] - one[:, 2], two[:, 1] - two[:, 0]
    size_one, size_two = np.hypot(*leg_one.T), np.hypot(*leg_two.T)
    s = np.clip(size_one / np.maximum(size_one + size_two, SAME_CONTROL_MM), 1e-3, 1 - 1e-3)[:, None]
    control1 = one[:, 0] + (one[:, 1] - one[:, 0]) / s
    control2 = two[:, 3] + (two[:, 2] - two[:, 3]) / (1 - s)
    middle = control1 + (control2 - control1) * s
    before, after = one[:, 1] + (middle - one[:, 1]) * s, middle + (two[:, 2] - middle) * s
    joint = before + (after - before) * s
    off = np.abs(np.stack((before - one[:, 2], after - two[:, 1], joint - one[:, 3]))).max(axis=(0, 2))
    return np.stack((one[:, 0], control1, control2, two[:, 3]), axis=1), off <= SAME_CONTROL_MM


def _joined(outline: Outline, first: Ints, second: Ints, whole: Floats) -> Outline:
    """One round of joining; a cubic that has just been joined waits for the next round."""
    data, kept, busy = outline.data.copy(), np.ones(len(outline.kinds), dtype=bool), set[int]()
    for i, j, row in zip(first.tolist(), second.tolist(), whole, strict=True):
        if i not in busy and j not in busy:
            busy |= {i, j}
            data[i], kept[j] = row, False
    rings = np.append(0, np.cumsum(kept))[outline.rings]
    return Outline(outline.kinds[kept], data[kept], rings)
