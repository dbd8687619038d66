"""How thick the strokes of letters are, read off their outlines: the upright ones and the level ones; millimetres.

From places all along the edge one looks straight across the ink to the edge on the other side. Where
that edge runs back alongside, and is nearer than this side is long, there is a stroke between the two, and not
an end seen lengthwise. The thickness of the strokes is the median of what is seen, by length of edge.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import GeometryError
from heraldry.geometry.bezier import Floats
from heraldry.geometry.boolean import unite
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline

FLATTENED_SHARE = 1 / 500
"""Chords stray from curves by this share of the letters' height: a stroke is measured to a few per cent."""

SAME_WAY = float(np.cos(np.radians(20.0)))
"""Edges within 20° of upright, of level, or of each other count as such: wider than the taper of any stroke,
narrower than the lean of a diagonal."""

LOOKS_TO_THE_HEIGHT = 24
"""Looks along an edge as long as the letters are high: one for each third of a bar's thickness or so."""

LOOKS_AT_ONCE = 256
"""Places that look across at the same time: keeps the table of looks and edges within some megabytes."""


@dataclass(frozen=True)
class Strokes:
    """Thickness of upright and of level strokes; letters that lack one kind are given that of the other."""

    upright_mm: float
    level_mm: float


@dataclass(frozen=True, eq=False)
class _Edges:
    """Chords of all rings, the ink on their left, and how long the edge runs on in about the same direction."""

    start: Floats
    along: Floats
    length: Floats
    is_upright: NDArray[np.bool_]
    is_level: NDArray[np.bool_]
    run: Floats


@dataclass(frozen=True, eq=False)
class _Looks:
    """Places from which one looks across: each on an edge, and for so much of its length."""

    edge: NDArray[np.int64]
    place: Floats
    weight: Floats


def strokes(letters: Outline) -> Strokes:
    """Measure letters; raises GeometryError where they have no strokes, or no ink.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Path
    >>> corners = [(0, 0), (1, 0), (1, 2), (4, 2), (4, 2.5), (0, 2.5)]
    >>> strokes(Outline.of([Path.through([Point(x, y) for x, y in corners], closed=True)]))
    Strokes(upright_mm=1.0, level_mm=0.5)
    """
    height = bounds(letters).height
    edges = _edges(unite(letters), height * FLATTENED_SHARE)
    looks = _looks(edges, height / LOOKS_TO_THE_HEIGHT)
    thickness = _across(edges, looks)
    is_stroke = thickness < edges.run[looks.edge]
    upright = _median(thickness, looks.weight, is_stroke & edges.is_upright[looks.edge])
    level = _median(thickness, looks.weight, is_stroke & edges.is_level[looks.edge])
    any_way = _median(thickness, looks.weight, is_stroke)
    if any_way is None:
        raise GeometryError("there are no strokes here: nowhere do two edges run side by side")
    return Strokes(upright or level or any_way, level or upright or any_way)


def _edges(letters: Outline, tolerance_mm: float) -> _Edges:
    rings = flatten(letters, tolerance_mm)
    start = np.concatenate(rings)
    span = np.concatenate([np.roll(ring, -1, axis=0) - ring for ring in rings])
    length = np.hypot(span[:, 0], span[:, 1])
    along = span / length[:, None]
    is_upright, is_level = np.abs(along[:, 1]) > SAME_WAY, np.abs(along[:, 0]) > SAME_WAY
    return _Edges(start, along, length, is_upright, is_level, _runs(rings, along, length))


def _runs(rings: tuple[Floats, ...], along: Floats, length: Floats) -> Floats:
    """For each chord the length of edge that goes on without a corner, its own ring's seam excepted."""
    ring_starts = np.cumsum([0, *(len(ring) for ring in rings)])[:-1]
    turns = np.sum(along * np.roll(along, 1, axis=0), axis=1) < SAME_WAY
    turns[ring_starts] = True
    run = np.cumsum(turns) - 1
    return np.asarray(np.bincount(run, length)[run])


def _looks(edges: _Edges, step_mm: float) -> _Looks:
    """Places in the middle of equal parts of each chord, none longer than a step."""
    count = np.ceil(edges.length / step_mm).astype(np.int64)
    edge = np.repeat(np.arange(len(count)), count)
    part = np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count)
    weight = (edges.length / count)[edge]
    return _Looks(edge, edges.start[edge] + edges.along[edge] * ((part + 0.5) * weight)[:, None], weight)


def _across(edges: _Edges, looks: _Looks) -> Floats:
    """What each place sees straight across the ink: the distance, or inf where that edge runs elsewhere."""
    along = edges.along[looks.edge]
    blocks = (slice(i, i + LOOKS_AT_ONCE) for i in range(0, len(looks.edge), LOOKS_AT_ONCE))
    return np.concatenate([_look(looks.place[block], along[block], edges) for block in blocks])


def _look(place: Floats, along: Floats, edges: _Edges) -> Floats:
    inward = np.stack((-along[:, 1], along[:, 0]), axis=1)
    offset = edges.start[None] - place[:, None]
    facing = _cross(inward[:, None], edges.along[None])
    with np.errstate(divide="ignore", invalid="ignore"):
        distance = _cross(offset, edges.along[None]) / facing
        there = _cross(offset, inward[:, None]) / facing
    hit = (facing > 0) & (distance > 0) & (there >= 0) & (there <= edges.length[None])
    distance = np.where(hit, distance, np.inf)
    nearest = np.argmin(distance, axis=1)
    back = np.sum(along * edges.along[nearest], axis=1) < -SAME_WAY
    return np.where(back, distance[np.arange(len(place)), nearest], np.inf)


def _cross(a: Floats, b: Floats) -> Floats:
    return np.asarray(a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0])


def _median(values: Floats, weights: Floats, chosen: NDArray[np.bool_]) -> float | None:
    """The weighted median of the chosen values; None where none is chosen."""
    if not np.any(chosen):
        return None
    order = np.argsort(values[chosen], kind="stable")
    reached = np.cumsum(weights[chosen][order])
    return float(values[chosen][order][np.searchsorted(reached, reached[-1] / 2)])
