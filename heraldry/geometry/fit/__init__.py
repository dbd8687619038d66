"""Curves through points: a polyline becomes the fewest lines, arcs and cubics within a tolerance of it.

For what has no curves to remember: maps that were smoothed, drawings that were read in as polylines.
Millimetres.

1. Corners are found and stay (``polyline``).
2. From corner to corner, the longest line, arc or cubic that stays within the tolerance is taken again and
   again (``search``); many spans are tried at once (``trial``), at their vertices and inside their chords,
   since a curve that meets every vertex may still stray between them.
3. Cubics leave and arrive along their neighbours (G1), and every curve is walked once more and measured
   from its own side; one that strayed farther than twice the tolerance gives way to its polyline.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from heraldry.errors import GeometryError
from heraldry.geometry.fit.joining import joined_smoothly, kept_near
from heraldry.geometry.fit.polyline import Polyline, circle_through
from heraldry.geometry.fit.search import longest_pieces
from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import Outline
from heraldry.geometry.segments import Path

__all__ = ["fit_outline", "fit_path"]

FLATTEN_SHARE = 0.1
"""An outline that has curves is flattened to this share of the tolerance, which is then lost in it."""


def fit_path(points: ArrayLike, tolerance_mm: float, closed: bool = False) -> Path:
    """Lines, arcs and cubics through points (n, 2), no farther from them than twice the tolerance.

    A closed one is a ring; its first point need not be repeated. Raises GeometryError for too few points or
    for a tolerance that is none.

    >>> turn = np.linspace(0, np.pi, 100)
    >>> half = fit_path(np.stack((np.cos(turn), np.sin(turn)), axis=1), tolerance_mm=0.001)
    >>> [type(segment).__name__ for segment in half]
    ['Arc']
    """
    if not tolerance_mm > 0.0:
        raise GeometryError(f"a fit within {tolerance_mm:g} mm is not possible, the tolerance must be more than 0")
    polyline = Polyline.through(np.asarray(points, dtype=np.float64), tolerance_mm, closed)
    circle = circle_through(polyline, tolerance_mm)
    if circle is not None:
        return Path((circle,), closed=True)
    pieces = joined_smoothly(polyline, longest_pieces(polyline, tolerance_mm), tolerance_mm)
    return kept_near(polyline, pieces, 2 * tolerance_mm)


def fit_outline(outline: Outline, tolerance_mm: float) -> Outline:
    """Every ring fitted; rings that came nearer than the tolerances to each other may touch afterwards."""
    rings = flatten(outline, FLATTEN_SHARE * tolerance_mm)
    return Outline.of(fit_path(ring, tolerance_mm, closed=True) for ring in rings)
