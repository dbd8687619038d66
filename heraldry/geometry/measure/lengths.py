"""Lengths of outlines and paths, mm: lines and arcs exactly, cubics to ``CUBIC_LENGTH_ACCURACY_MM``.

A cubic's length has no closed form. Each is halved until Gauss–Legendre sums of 8 and 16 nodes agree; the
finer sum of a piece is then far better than their difference. Cusps need the most halvings, some twenty.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry import bezier
from heraldry.geometry.bezier import Floats
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.segments import Path

# A nanometre is a thousandth of what any press can place; 8 against 16 nodes reaches it in 1 to 3 halvings.
CUBIC_LENGTH_ACCURACY_MM = 1e-9
# At a cusp the speed has a kink and each halving quarters the error: 24 halvings leave 4e-15 of the length.
MAX_HALVINGS = 24

_COARSE = np.polynomial.legendre.leggauss(8)
_FINE = np.polynomial.legendre.leggauss(16)


@dataclass(frozen=True, eq=False)
class Pieces:
    """Segments in order, cubics cut so that a 16-node sum gives their length: rows as in ``Outline``."""

    kinds: NDArray[np.uint8]
    data: Floats
    lengths: Floats


def perimeter(outline: Outline) -> float:
    """The length of all rings together, mm, holes included."""
    return float(pieces(outline).lengths.sum())


def length(path: Path) -> float:
    """The length of a path from its first to its last point, mm.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Line
    >>> length(Path((Line(Point(0, 0), Point(3, 4)),)))
    5.0
    """
    return perimeter(Outline.of((path,)))


def pieces(outline: Outline) -> Pieces:
    """The segments in their order, every cubic cut until its length is sure."""
    order = np.arange(outline.node_count, dtype=np.float64)
    kinds, data = outline.kinds, outline.data
    span = data[:, 3] - data[:, 0]
    lengths = np.hypot(span[:, 0], span[:, 1])
    lengths = np.where(kinds == ARC, np.abs(data[:, 2, 0] * data[:, 2, 1]), lengths)
    cubic = kinds == CUBIC
    if not np.any(cubic):
        return Pieces(kinds, data, lengths)
    cut, cut_lengths, cut_order = _cut_cubics(data[cubic], order[cubic])
    all_order = np.concatenate((order[~cubic], cut_order))
    sequence = np.argsort(all_order, kind="stable")
    return Pieces(
        np.concatenate((kinds[~cubic], np.full(len(cut), CUBIC, dtype=np.uint8)))[sequence],
        np.concatenate((data[~cubic], cut))[sequence],
        np.concatenate((lengths[~cubic], cut_lengths))[sequence],
    )


def lengths_until(cubics: Floats, t: Floats) -> Floats:
    """The length of each cubic (n, 4, 2) from 0 to its t (n,), by the 16-node sum."""
    nodes, weights = _FINE
    at = t[:, None] * (nodes + 1) / 2
    speed = bezier.velocities(cubics[:, None], at)
    return np.asarray((np.hypot(speed[..., 0], speed[..., 1]) * weights).sum(axis=1) * t / 2)


def _cut_cubics(cubics: Floats, order: Floats) -> tuple[Floats, Floats, Floats]:
    """Pieces, their lengths and their sort keys: a cubic's key plus the start of the piece in [0, 1)."""
    done: list[tuple[Floats, Floats, Floats]] = []
    share = 1.0
    for _ in range(MAX_HALVINGS):
        coarse, fine = _summed(cubics, _COARSE), _summed(cubics, _FINE)
        sure = np.abs(fine - coarse) <= CUBIC_LENGTH_ACCURACY_MM
        done.append((cubics[sure], fine[sure], order[sure]))
        cubics, order, share = cubics[~sure], order[~sure], share / 2
        if not len(cubics):
            break
        first, second = bezier.halves(cubics)
        cubics, order = np.concatenate((first, second)), np.concatenate((order, order + share))
    done.append((cubics, _summed(cubics, _FINE), order))
    parts, lengths, keys = (np.concatenate(column) for column in zip(*done, strict=True))
    return parts, lengths, keys


def _summed(cubics: Floats, rule: tuple[Floats, Floats]) -> Floats:
    nodes, weights = rule
    speed = bezier.velocities(cubics[:, None], (nodes + 1) / 2)
    return np.asarray((np.hypot(speed[..., 0], speed[..., 1]) * weights).sum(axis=1) / 2)
