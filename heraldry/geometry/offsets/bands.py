"""Thin bands whose outer edges are the offset curves of segments, and of the corners between them.

Millimetres. A point at less than the distance from a region's edge lies on the normal of a segment that it is
nearest to, or beside a convex corner. So the bands swept by the ends of all normals, with a wedge at each convex
corner, have the exact offset curve among their edges: line to line, arc to concentric arc, cubic to cubics
within FIT_MM. The bands are only as broad as it takes to overlap the core, which fills the rest. Where a curve
is tighter than the distance the offset turns back; it is cut there, and both parts cover what is right.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry import bezier
from heraldry.geometry.offsets.spine import REVERSAL_RAD, Spine, cut_at_cusps
from heraldry.geometry.outline import ARC, CUBIC, EMPTY, LINE, Outline
from heraldry.geometry.restore.curves import Floats, Ints, distances

Corner = Literal["round", "sharp"]

FIT_MM = 0.00003
"""What the cubics of an offset may be off the true offset; where two meet at a flat angle it is several times that."""

SMOOTH_MM = 0.0002
"""Offset ends this near to each other are made one: they move along their curves, and off them a thousandth of that."""

SHARPEST = 4.0
"""A sharp corner reaches at most this many distances; a sharper one is rounded, so the edge is never thinner."""

TIGHTEST_CHORD = 0.2
"""An arc whose chord is below this share of its radius is not stretched to ends that moved by rounding."""

BEND_SAMPLES = 8
"""Where the bend of a cubic is looked at to find how many chords the inner edge of its band needs."""


@dataclass(frozen=True)
class Reach:
    """How far a band reaches: from ``inner_mm`` to ``outer_mm`` on the left (+1) or the right (-1)."""

    outer_mm: float
    inner_mm: float
    side: int
    slack_mm: float
    """What the inner edge may stray."""

    @property
    def step_rad(self) -> float:
        """The angle over which a chord at the outer distance strays by the slack."""
        return 2 * float(np.arccos(max(1 - self.slack_mm / self.outer_mm, 0.0)))


@dataclass(frozen=True, eq=False)
class Band:
    """The outer edge as rows of an ``Outline``, and the inner edge as points from its end back to its start."""

    kind: int
    outer: Floats
    inner: Floats


def bands(spine: Spine, reach: Reach, corner: Corner) -> Outline:
    """A ring for each segment and each convex corner: outer curves forward, inner chords back."""
    spine = cut_at_cusps(spine, reach.outer_mm, reach.side)
    smooth = _is_smooth(spine, reach)
    start, end = _ends_at(spine, reach.outer_mm, reach.side, smooth)
    outer = _outer_rows(spine, reach, start, end)
    inner = _inner_edges(spine, reach, *_ends_at(spine, reach.inner_mm, reach.side, smooth))
    along = [Band(kind, rows, edge) for kind, rows, edge in zip(spine.curves.kinds.tolist(), outer, inner, strict=True)]
    corners = np.flatnonzero(spine.outer_on(reach.side) & ~smooth)
    return _gathered(along + _wedges(spine, reach, corner, start, end, corners))


def normals(tangents: Floats, side: int) -> Floats:
    """Unit normals to the left (+1) or to the right (-1)."""
    return np.stack((-tangents[..., 1], tangents[..., 0]), axis=-1) * side


def _is_smooth(spine: Spine, reach: Reach) -> NDArray[np.bool_]:
    """Corners where the offsets of both segments end in nearly the same place."""
    return distances(spine.arriving[spine.before], spine.leaving[spine.after]) * reach.outer_mm <= SMOOTH_MM


def _ends_at(spine: Spine, distance_mm: float, side: int, smooth: NDArray[np.bool_]) -> tuple[Floats, Floats]:
    """Where the normals at the starts and ends of segments reach to; made one where the way is smooth."""
    start = spine.curves.data[:, 0] + normals(spine.leaving, side) * distance_mm
    end = spine.curves.data[:, 3] + normals(spine.arriving, side) * distance_mm
    before, after = spine.before[smooth], spine.after[smooth]
    middle = normals(bezier.unit(spine.arriving[before] + spine.leaving[after]), side)
    end[before] = start[after] = spine.curves.data[after, 0] + middle * distance_mm
    return start, end


def _outer_rows(spine: Spine, reach: Reach, start: Floats, end: Floats) -> list[Floats]:
    """The offset of each segment between its offset ends."""
    data, kinds = spine.curves.data.copy(), spine.curves.kinds
    arc = np.flatnonzero(kinds == ARC)
    data[arc] = _offset_arcs(data[arc], reach, start[arc], end[arc])
    data[:, 0], data[:, 3] = start, end
    line = kinds == LINE
    data[line, 1], data[line, 2] = start[line], end[line]
    rows = list(data[:, None])
    for i in np.flatnonzero(kinds == CUBIC).tolist():
        rows[i] = _offset_cubic(spine.curves.data[i], reach, start[i], end[i])
    return rows


def _offset_arcs(data: Floats, reach: Reach, start: Floats, end: Floats) -> Floats:
    """Concentric arcs, moved and scaled by as little as their ends were."""
    radius = data[:, 2, 0] - reach.side * np.sign(data[:, 2, 1]) * reach.outer_mm
    spoke = (data[:, [0, 3]] - data[:, 1:2]) / data[:, 2, None, :1] * radius[:, None, None]
    one, two = _complex(data[:, 1] + spoke[:, 0]), _complex(data[:, 1] + spoke[:, 1])
    stretchable = np.abs(two - one) > TIGHTEST_CHORD * np.abs(radius)
    scale = np.ones(len(data), dtype=complex)
    np.divide(_complex(end) - _complex(start), two - one, out=scale, where=stretchable)
    centre = np.where(stretchable, _complex(start) + scale * (_complex(data[:, 1]) - one), _complex(data[:, 1]))
    found = data.copy()
    found[:, 1, 0], found[:, 1, 1] = centre.real, centre.imag
    found[:, 2, 0] = np.abs(radius) * np.abs(scale)
    return found


def _complex(points: Floats) -> np.ndarray[tuple[int, ...], np.dtype[np.complex128]]:
    return np.asarray(points[:, 0] + 1j * points[:, 1])


def _offset_cubic(controls: Floats, reach: Reach, start: Floats, end: Floats) -> Floats:
    """Cubics along the offset of a cubic."""
    from kurbopy import CubicBez, Point, offset_cubic  # imported where used: start-up time

    curve = CubicBez(*(Point(x, y) for x, y in controls.tolist()))
    pieces = offset_cubic(curve, reach.side * reach.outer_mm, FIT_MM).segments()
    data = np.array([[[at.x, at.y] for at in (piece.p0, piece.p1, piece.p2, piece.p3)] for piece in pieces])
    data[0, 1] += start - data[0, 0]
    data[-1, 2] += end - data[-1, 3]
    data[0, 0], data[-1, 3] = start, end
    data[1:, 0] = data[:-1, 3]
    return data


def _inner_edges(spine: Spine, reach: Reach, start: Floats, end: Floats) -> list[Floats]:
    """The inner edges of bands as chords, from the end of each segment back to its start."""
    counts = _inner_counts(spine, reach) + 1
    last = np.cumsum(counts) - 1
    owner = np.repeat(np.arange(len(counts)), counts)
    step = np.arange(len(owner)) - np.repeat(last + 1 - counts, counts)
    t = 1.0 - step / (counts[owner] - 1)
    tangents = bezier.unit(spine.curves[owner].velocities(t))
    cubic = spine.curves.kinds[owner] == CUBIC
    tangents[cubic] = bezier.directions(spine.curves.data[owner[cubic]], t[cubic])
    points = spine.curves[owner].points(t) + normals(tangents, reach.side) * reach.inner_mm
    points[last + 1 - counts], points[last] = end, start
    return np.split(points, last[:-1] + 1)


def _inner_counts(spine: Spine, reach: Reach) -> Ints:
    """How many chords each inner edge needs: one for a line, else as its bend and its distance ask."""
    kinds, data = spine.curves.kinds, spine.curves.data
    counts = np.ones(len(kinds), dtype=np.int64)
    arc, cubic = np.flatnonzero(kinds == ARC), np.flatnonzero(kinds == CUBIC)
    radius = data[arc, 2, 0] + reach.outer_mm
    step = 2 * np.arccos(np.maximum(1 - reach.slack_mm / radius, 0.0))
    counts[arc] = np.ceil(np.abs(data[arc, 2, 1]) / step)
    at = np.linspace(0.0, 1.0, BEND_SAMPLES + 1)
    directions = bezier.directions(data[cubic, None], at[None])
    bend = np.arccos(np.clip(np.sum(directions[:, 1:] * directions[:, :-1], axis=-1), -1, 1)).max(axis=1, initial=0)
    legs = np.diff(data[cubic], axis=1)
    curl = np.hypot(*np.moveaxis(np.diff(legs, axis=1), -1, 0)).max(axis=1, initial=0.0)
    counts[cubic] = np.ceil(BEND_SAMPLES * bend / reach.step_rad) + np.ceil(np.sqrt(0.75 * curl / reach.slack_mm))
    return np.maximum(counts, 1)


def _wedges(spine: Spine, reach: Reach, corner: Corner, start: Floats, end: Floats, corners: Ints) -> list[Band]:
    """Bands about convex corners: an arc between the offset ends, or the two edges drawn on to their crossing."""
    turns = np.where(np.abs(spine.turns) >= np.pi - REVERSAL_RAD, -np.pi * reach.side, spine.turns)
    found = []
    for k in corners.tolist():
        at, turn = spine.curves.data[spine.after[k], 0], float(turns[k])
        one, two = end[spine.before[k]], start[spine.after[k]]
        if corner == "sharp" and np.cos(turn / 2) * SHARPEST >= 1:
            tip = at + bezier.unit(one + two - 2 * at) * (reach.outer_mm / np.cos(turn / 2))
            edges = np.array([[one, one, tip, tip], [tip, tip, two, two]])
            found.append(Band(LINE, edges, _inner_arc(at, one, reach, turn)))
        else:
            found.append(_about(at, one, two, reach, turn))
    return found


def _about(at: Floats, one: Floats, two: Floats, reach: Reach, turn: float) -> Band:
    """The band of an arc about a point."""
    arc = np.array([[one, at, (reach.outer_mm, turn), two]])
    return Band(ARC, arc, _inner_arc(at, one, reach, turn))


def _inner_arc(at: Floats, one: Floats, reach: Reach, turn: float) -> Floats:
    """Chords about a corner at the inner distance, from the far end back to the side of ``one``."""
    count = max(1, int(np.ceil(abs(turn) / reach.step_rad)))
    angle = np.arctan2(one[1] - at[1], one[0] - at[0]) + turn * np.linspace(1.0, 0.0, count + 1)
    return np.asarray(at + reach.inner_mm * np.stack((np.cos(angle), np.sin(angle)), axis=-1))


def round_caps(spine: Spine, reach: Reach) -> Outline:
    """Bands of half a turn about both ends of an open path, in two quarters each."""
    found = []
    for at, tangent in _path_ends(spine):
        left, tip, right = (at + way * reach.outer_mm for way in (normals(tangent, 1), tangent, normals(tangent, -1)))
        found += [_about(at, one, two, reach, -np.pi / 2) for one, two in ((left, tip), (tip, right))]
    return _gathered(found)


def flat_caps(spine: Spine, reach: Reach, depth_mm: float) -> Outline:
    """Bands behind the straight edges at both ends of an open path."""
    found = []
    for at, tangent in _path_ends(spine):
        across = normals(tangent, 1)
        left, right = at + across * reach.outer_mm, at - across * reach.outer_mm
        behind = at - tangent * depth_mm
        inner = np.array([behind - across * reach.inner_mm, behind + across * reach.inner_mm])
        found.append(Band(LINE, np.array([[left, left, right, right]]), inner))
    return _gathered(found)


def _path_ends(spine: Spine) -> list[tuple[Floats, Floats]]:
    """Both ends of an open path, each with the direction that leads out of it."""
    data = spine.curves.data
    return [(data[0, 0], -spine.leaving[0]), (data[-1, 3], spine.arriving[-1])]


def _gathered(found: Sequence[Band]) -> Outline:
    """The bands as rings: outer edges forward, and round by their inner edges."""
    if not found:
        return EMPTY
    outer = np.concatenate([band.outer for band in found])
    ways = [np.concatenate((band.outer[-1:, 3], band.inner, band.outer[:1, 0])) for band in found]
    way = np.concatenate(ways)
    counts = np.array([(len(band.outer), len(points) - 1) for band, points in zip(found, ways, strict=True)])
    starts = np.delete(np.arange(len(way)), np.cumsum(counts[:, 1] + 1) - 1)
    inner = np.stack((way[starts], way[starts], way[starts + 1], way[starts + 1]), axis=1)
    kinds = np.repeat(np.array([band.kind for band in found], dtype=np.uint8), counts[:, 0])
    ring = np.repeat(np.arange(len(found)), counts[:, 0]), np.repeat(np.arange(len(found)), counts[:, 1])
    order = np.argsort(np.concatenate(ring), kind="stable")  # in each ring the outer edge stays first
    return Outline(
        np.concatenate((kinds, np.full(len(inner), LINE, np.uint8)))[order],
        np.concatenate((outer, inner))[order],
        np.append(0, np.cumsum(counts.sum(axis=1))),
    )
