"""How far apart two outlines are; millimetres.

Both are flattened finely and the nearest pair of chords is looked up in a tree: the chords stray from their
curves by ``FLATTENED_MM`` each, so the distance is off by at most twice that.
"""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import to_polygon
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline

# A twentieth of a micrometre: together the two outlines stay within the promised tenth.
FLATTENED_MM = 0.00005


def distance(one: Outline, other: Outline) -> float:
    """The least distance between two outlines, mm, to 0.1 µm; 0 where they touch, overlap or nest.

    Raises GeometryError when one of them is empty.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Path
    >>> def box(x):
    ...     corners = [Point(x, 0), Point(x + 1, 0), Point(x + 1, 1), Point(x, 1)]
    ...     return Outline.of([Path.through(corners, closed=True)])
    >>> distance(box(0), box(3))
    2.0
    """
    if one.is_empty or other.is_empty:
        raise GeometryError("there is no distance to an empty outline")
    if shapely.intersects(to_polygon(one), to_polygon(other)):
        return 0.0
    tree = shapely.STRtree(_chords(one))
    _, apart = tree.query_nearest(_chords(other), return_distance=True, all_matches=False)
    return float(apart.min())


def come_near(one: Outline, other: Outline, limit_mm: float) -> bool:
    """Whether two outlines come within a limit of each other, touch or overlap; quick, and off by 2 µm at most.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Path
    >>> def box(x):
    ...     corners = [Point(x, 0), Point(x + 1, 0), Point(x + 1, 1), Point(x, 1)]
    ...     return Outline.of([Path.through(corners, closed=True)])
    >>> come_near(box(0), box(3), 1.9), come_near(box(0), box(3), 2.1)
    (False, True)
    """
    if one.is_empty or other.is_empty:
        return False
    a, b = bounds(one), bounds(other)
    sideways = max(a.left, b.left) - min(a.right, b.right)
    upright = max(a.bottom, b.bottom) - min(a.top, b.top)
    if max(sideways, upright) > limit_mm:
        return False
    return bool(shapely.dwithin(to_polygon(one), to_polygon(other), limit_mm))


def _chords(outline: Outline) -> NDArray[np.object_]:
    rings = flatten(outline, FLATTENED_MM)
    pairs = [np.stack((ring, np.roll(ring, -1, axis=0)), axis=1) for ring in rings]
    return np.asarray(shapely.linestrings(np.concatenate(pairs)))
