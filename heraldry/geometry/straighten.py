"""Cubics that are straight lines in truth, made lines.

A cubic whose control points lie on its chord may run out and back over itself; what it covers twice encloses nothing,
but its chords lie on one another to the last bit or all but that, and no overlay can tell such edges apart.
"""

from __future__ import annotations

import numpy as np

from heraldry.geometry.outline import CUBIC, LINE, Outline

STRAIGHT_SHARE = 1e-9
"""A cubic whose points are off one line by less than this share of its length is straight but for rounding."""


def straightened(outline: Outline) -> Outline:
    """The same region with straight cubics as lines from end to end, and none that ends where it starts.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Cubic, Line, Path
    >>> there_and_back = Cubic(Point(0, 0), Point(4, 0), Point(-1, 0), Point(2, 0))
    >>> ring = Path((there_and_back, Line(Point(2, 0), Point(2, 1)), Line(Point(2, 1), Point(0, 0))), closed=True)
    >>> straightened(Outline.of([ring])).kinds.tolist()
    [0, 0, 0]
    """
    straight = np.flatnonzero(outline.kinds == CUBIC)
    ways = outline.data[straight, 1:] - outline.data[straight, :1]
    lengths = np.linalg.norm(ways, axis=2)
    longest = np.take_along_axis(ways, np.argmax(lengths, axis=1)[:, None, None], axis=1)
    off = np.abs(ways[:, :, 0] * longest[:, :, 1] - ways[:, :, 1] * longest[:, :, 0])
    straight = straight[np.all(off <= STRAIGHT_SHARE * np.max(lengths, axis=1, keepdims=True) ** 2, axis=1)]
    if len(straight) == 0:
        return outline
    kinds, data = outline.kinds.copy(), outline.data.copy()
    kinds[straight] = LINE
    data[straight, 1], data[straight, 2] = data[straight, 0], data[straight, 3]
    kept = np.ones(len(kinds), dtype=bool)
    kept[straight] = np.any(data[straight, 0] != data[straight, 3], axis=1)
    rings = np.concatenate(([0], np.cumsum(kept)))[outline.rings]
    return Outline(kinds[kept], data[kept], rings[np.concatenate(([True], np.diff(rings) > 0))])
