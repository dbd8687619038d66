"""The segments along which an offset is drawn, their tangents, and the corners between them.

Millimetres, radians. Arcs of more than half a turn and closed cubics are cut in two first, so that the band
along a segment never closes on itself; a straight cubic counts as a line.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry import bezier
from heraldry.geometry.outline import ARC, CUBIC, LINE, Outline
from heraldry.geometry.restore.chord_table import SAME_PLACE_MM, ring_successors
from heraldry.geometry.restore.curves import Curves, Floats, Ints

REVERSAL_RAD = 1e-6
"""A corner this near to half a turn is a turn back, which has an outside on both sides."""

CUSP_SAMPLES = 32
"""Where the bend of a cubic is compared with the distance; it bends through a given radius four times at most."""

CUSP_HALVINGS = 40
"""Halvings of an interval of t down to rounding."""

CUSP_CLEARANCE = 1e-6
"""A cusp this near to an end of t is at the end."""


@dataclass(frozen=True, eq=False)
class Spine:
    """Segments with the unit tangents at their ends; corner k lies between ``before[k]`` and ``after[k]``."""

    curves: Curves
    leaving: Floats
    """Tangents at the starts of segments."""
    arriving: Floats
    """Tangents at their ends."""
    before: Ints
    after: Ints
    rings: Ints
    """Ring i is segments ``rings[i]:rings[i + 1]``."""
    is_open: bool

    @property
    def turns(self) -> Floats:
        """How far the way turns at each corner, counter-clockwise, in (-pi, pi]."""
        one, two = self.arriving[self.before], self.leaving[self.after]
        cross = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
        return np.asarray(np.arctan2(cross, np.sum(one * two, axis=1)))

    def outer_on(self, side: int) -> NDArray[np.bool_]:
        """The corners that are convex as seen from the left (+1) or the right (-1)."""
        turns = self.turns
        return (turns * side < 0) | (np.abs(turns) >= np.pi - REVERSAL_RAD)


def spine_of(outline: Outline, is_open: bool = False) -> Spine:
    """The spine of all rings of an outline, or of the one open path whose segments it holds."""
    return _spine(_halved(_straightened(outline)), is_open)


def cut_at_cusps(spine: Spine, distance_mm: float, side: int) -> Spine:
    """The spine with cubics cut where their offset to the left (+1) or right (-1) turns back.

    There the radius of curvature is the distance. What the offset sweeps before and after the cusp it sweeps the
    other way round, and would take away in one band what it adds.
    """
    cubic = np.flatnonzero(spine.curves.kinds == CUBIC)
    row, t = _cusps(spine.curves.data[cubic], distance_mm * side)
    if len(row) == 0:
        return spine
    outline = Outline(spine.curves.kinds, spine.curves.data, spine.rings)
    return _spine(_cut(outline, cubic[row], t), spine.is_open)


def _cusps(cubics: Floats, left_mm: float) -> tuple[Ints, Floats]:
    """Where |v|³ - d (v × a) changes its sign: rows and parameters, in order."""

    def ahead(data: Floats, t: Floats) -> NDArray[np.bool_]:
        v, a = bezier.velocities(data, t), bezier.accelerations(data, t)
        cross = v[..., 0] * a[..., 1] - v[..., 1] * a[..., 0]
        return np.asarray(np.hypot(v[..., 0], v[..., 1]) ** 3 > left_mm * cross)

    at = np.linspace(0.0, 1.0, CUSP_SAMPLES + 1)
    signs = ahead(cubics[:, None], at[None])
    row, step = np.nonzero(signs[:, 1:] != signs[:, :-1])
    low, high, before = at[step], at[step + 1], signs[row, step]
    for _ in range(CUSP_HALVINGS):
        middle = (low + high) / 2
        same = ahead(cubics[row], middle) == before
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    t = (low + high) / 2
    inside = (t > CUSP_CLEARANCE) & (t < 1 - CUSP_CLEARANCE)
    return row[inside], t[inside]


def _cut(outline: Outline, rows: Ints, t: Floats) -> Outline:
    """The outline with cubics cut at parameters; rows ascending, parameters ascending within a row."""
    pieces = 1 + np.bincount(rows, minlength=len(outline.kinds))
    owner = np.repeat(np.arange(len(outline.kinds)), pieces)
    first = np.cumsum(pieces) - pieces
    start, end = np.zeros(len(owner)), np.ones(len(owner))
    place = rows + np.arange(len(rows)) + 1  # one piece more for every cut before
    start[place], end[place - 1] = t, t
    data = outline.data[owner].copy()
    many = pieces[owner] > 1
    data[many] = Curves(outline.kinds[owner[many]], data[many]).cubic_between(start[many], end[many])
    data[first, 0], data[first + pieces - 1, 3] = outline.data[:, 0], outline.data[:, 3]
    data[place, 0] = data[place - 1, 3]
    return Outline(outline.kinds[owner], data, np.append(0, np.cumsum(pieces))[outline.rings])


def _spine(outline: Outline, is_open: bool) -> Spine:
    following = ring_successors(outline.rings)
    before = np.arange(len(following))[: -1 if is_open else None]
    leaving, arriving = _tangents(outline)
    return Spine(
        Curves(outline.kinds, outline.data), leaving, arriving, before, following[before], outline.rings, is_open
    )


def _straightened(outline: Outline) -> Outline:
    """Cubics whose controls lie on their chord become lines."""
    along = outline.data[:, 3] - outline.data[:, 0]
    length = np.maximum(np.hypot(along[:, 0], along[:, 1]), SAME_PLACE_MM)[:, None]
    there = outline.data[:, 1:3] - outline.data[:, :1]
    off = np.abs(along[:, None, 0] * there[..., 1] - along[:, None, 1] * there[..., 0]) / length
    straight = (outline.kinds == CUBIC) & (off.max(axis=1) <= SAME_PLACE_MM) & (length[:, 0] > SAME_PLACE_MM)
    data = outline.data.copy()
    data[straight, 1], data[straight, 2] = data[straight, 0], data[straight, 3]
    return Outline(np.where(straight, LINE, outline.kinds).astype(np.uint8), data, outline.rings)


def _halved(outline: Outline) -> Outline:
    """Arcs of more than half a turn and closed cubics in two halves."""
    kinds, data = outline.kinds, outline.data
    closed = (kinds == CUBIC) & np.all(data[:, 0] == data[:, 3], axis=1)
    wide = (kinds == ARC) & (np.abs(data[:, 2, 1]) > np.pi + REVERSAL_RAD)
    cut = np.flatnonzero(closed | wide)
    if len(cut) == 0:
        return outline
    first, second = data[cut].copy(), data[cut].copy()
    middle = Curves(kinds[cut], data[cut]).points(np.full(len(cut), 0.5))
    arc = kinds[cut] == ARC
    first[arc, 2, 1] /= 2
    second[arc, 2, 1] /= 2
    first[~arc], second[~arc] = bezier.halves(data[cut][~arc])
    first[:, 3] = second[:, 0] = middle
    data = np.insert(data, cut + 1, second, axis=0)
    kinds = np.insert(kinds, cut + 1, kinds[cut])
    shift = np.append(0, np.cumsum(closed | wide))
    data[cut + shift[cut]] = first
    return Outline(kinds, data, outline.rings + shift[outline.rings])


def _tangents(outline: Outline) -> tuple[Floats, Floats]:
    """Unit tangents at the starts and at the ends of segments."""
    data, kinds = outline.data, outline.kinds
    leaving = bezier.unit(data[:, 3] - data[:, 0])
    arriving = leaving.copy()
    arc, cubic = kinds == ARC, kinds == CUBIC
    for tangents, end, t in ((leaving, 0, 0.0), (arriving, 3, 1.0)):
        spoke = bezier.unit(data[arc, end] - data[arc, 1]) * np.sign(data[arc, 2, 1:])
        tangents[arc] = np.stack((-spoke[:, 1], spoke[:, 0]), axis=-1)
        tangents[cubic] = bezier.directions(data[cubic], np.full(int(cubic.sum()), t))
    return leaving, arriving
