"""Drawings that would take minutes are refused beforehand: too many shapes over one another, too many crossings.

Both are counted by boxes alone, which is quick, and generous to any drawing that a person has made.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from heraldry.errors import GeometryError
from heraldry.geometry.outline import ARC, Bounds, Outline

MOST_OVERLAPS = 20_000
"""Pairs of marks of different colours that overlap; beyond it, the drawing is a picture and no herald."""

MOST_CROSSINGS = 100_000
"""Pairs of segments of one mark that may cross; a page of lettering in one path has a tenth of it."""

TANGLE_FROM = 300
"""Segments of a mark from which on crossings are counted; fewer cannot cross too often."""


def refuse_crowd(boxes: Sequence[Bounds], colours: Sequence[str]) -> None:
    """Refuse a drawing in which too many marks hide one another."""
    corners = np.array([(box.left, box.bottom, box.right, box.top) for box in boxes])
    number = np.unique(np.array(colours), return_inverse=True)[1]
    overlaps = 0
    for i in range(len(corners) - 1):
        above = corners[i + 1 :]
        meet = np.all((above[:, :2] < corners[i, 2:]) & (above[:, 2:] > corners[i, :2]), axis=1)
        overlaps += int(np.sum(meet & (number[i + 1 :] != number[i])))
        if overlaps > MOST_OVERLAPS:
            raise GeometryError(
                "too many shapes of different colours lie over one another: this is a picture, no herald"
            )


def refuse_tangle(rows: Outline) -> None:
    """Refuse chains whose segments cross too often, as far as the boxes of their control points tell."""
    if rows.node_count < TANGLE_FROM:
        return
    points = np.where((rows.kinds == ARC)[:, None, None], rows.data[:, [0, 0, 3, 3]], rows.data)
    boxes = shapely.box(*points.min(axis=1).T, *points.max(axis=1).T)
    tree, met = shapely.STRtree(boxes), 0
    for some in np.array_split(boxes, len(boxes) // TANGLE_FROM + 1):
        met += len(tree.query(some)[0])
        if met > MOST_CROSSINGS:
            raise GeometryError("a shape of the drawing crosses itself too often to be an outline")
