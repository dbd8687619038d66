"""Horizontal scans through an outline: what ink a level meets, and how far ink reaches in bands of levels."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import FLATTEN_TOLERANCE_MM, flatten
from heraldry.geometry.outline import Outline

Floats = NDArray[np.float64]

UPRIGHT_AS_LEVEL = Affine(0.0, 1.0, 1.0, 0.0)
"""Exchanges x and y."""


def ink_spans(
    outline: Outline, level: float, tolerance: float = FLATTEN_TOLERANCE_MM
) -> tuple[tuple[float, float], ...]:
    """The stretches of ink along y = ``level``, from left to right.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Path
    >>> corners = [Point(0, 0), Point(3, 0), Point(3, 2), Point(0, 2)]
    >>> ink_spans(Outline.of([Path.through(corners, closed=True)]), 1.0)
    ((0.0, 3.0),)
    """
    start, end = _edges(outline, tolerance)
    crossing = (start[:, 1] <= level) != (end[:, 1] <= level)
    a, b = start[crossing], end[crossing]
    x = np.sort(a[:, 0] + (b[:, 0] - a[:, 0]) * (level - a[:, 1]) / (b[:, 1] - a[:, 1])).tolist()
    return tuple(zip(x[::2], x[1::2], strict=True))


def ink_columns(outline: Outline, x: float, tolerance: float = FLATTEN_TOLERANCE_MM) -> tuple[tuple[float, float], ...]:
    """The stretches of ink on the upright line at ``x``, from below."""
    return ink_spans(outline.transformed(UPRIGHT_AS_LEVEL), x, tolerance)


def band_reach(outline: Outline, levels: Floats, tolerance: float) -> tuple[Floats, Floats]:
    """The leftmost and rightmost ink in each band between two ``levels``; inf and -inf where none is."""
    start, end = _edges(outline, tolerance)
    lower = np.where((start[:, 1] <= end[:, 1])[:, None], start, end)
    upper = np.where((start[:, 1] <= end[:, 1])[:, None], end, start)
    bottom = np.maximum(lower[:, None, 1], levels[None, :-1])
    top = np.minimum(upper[:, None, 1], levels[None, 1:])
    rise = (upper[:, 1] - lower[:, 1])[:, None]
    lean = (upper[:, 0] - lower[:, 0])[:, None] / np.where(rise > 0, rise, 1.0)
    at_bottom = lower[:, None, 0] + (bottom - lower[:, None, 1]) * lean
    at_top = np.where(rise > 0, lower[:, None, 0] + (top - lower[:, None, 1]) * lean, upper[:, None, 0])
    outside = bottom > top
    left = np.where(outside, np.inf, np.minimum(at_bottom, at_top)).min(axis=0, initial=np.inf)
    right = np.where(outside, -np.inf, np.maximum(at_bottom, at_top)).max(axis=0, initial=-np.inf)
    return left, right


def _edges(outline: Outline, tolerance: float) -> tuple[Floats, Floats]:
    """Starts and ends (n, 2) of all chords."""
    rings = flatten(outline, tolerance)
    starts = np.concatenate([np.zeros((0, 2)), *rings])
    ends = np.concatenate([np.zeros((0, 2)), *(np.roll(ring, -1, axis=0) for ring in rings)])
    return starts, ends
