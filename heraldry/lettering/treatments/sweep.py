"""What an outline leaves behind where it is moved along a straight way: the sides of a block shade.

The swept region of A along a vector v is the Minkowski sum A ⊕ [0, v]. A point of it outside A was reached by
some point of A, and on its way it left A last through the edge, at a place where the edge faces the way it
went. So the sweep is A together with one *face* for each run of edge that faces v: the region between the run,
the run moved by v, and the two straight sides that its ends draw. Edges are first parted where they run along v;
between those places a run meets every line along v once at most, and its face cannot cross itself.
Curves stay curves: a face has the run itself on one side and its copy on the other. Millimetres.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, groupby

import numpy as np

from heraldry.geometry.affine import Affine
from heraldry.geometry.bezier import Floats
from heraldry.geometry.boolean import Union, combine, unite
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.restore.curves import Curves
from heraldry.geometry.segments import Line, Path, Segment

ALONG_MM = 1e-9
"""An edge that a way of sweeping widens by less than this runs along it: a millionth of the finest line there is."""

AT_END_T = 1e-7
"""A curve is not parted this near to its ends (in t): the piece would be shorter than the grid of a description,
and between the parting and the end the curve leaves its tangent by some 1e-14 of its size."""


Pair = tuple[Segment, Segment]
"""A segment of the edge, and the same one moved by the way."""


@dataclass(frozen=True, eq=False)
class Face:
    """One run of edge that faces the way, and the region it sweeps; ``label`` is what the run was sorted by."""

    run: Path
    outline: Outline
    label: bool


def swept(outline: Outline, way: Point) -> Outline:
    """The region that a clean outline passes over when it is moved by ``way``: the Minkowski sum with it.

    >>> from heraldry.geometry.measure import area
    >>> square = Outline.of([Path.through([Point(0, 0), Point(2, 0), Point(2, 2), Point(0, 2)], closed=True)])
    >>> area(swept(square, Point(1, 1)))
    8.0
    """
    edges = parted(unite(outline), (way,))
    return combine(Union((edges, *(face.outline for face in faces(edges, way))))).outline


def faces(edges: Outline, way: Point, label: Callable[[Segment], bool] = lambda _: True) -> tuple[Face, ...]:
    """The faces of a clean outline that was parted along the way (and wherever ``label`` changes)."""

    def sorted_by(pair: Pair) -> bool | None:
        return label(pair[0]) if _faces_way(pair[0], way) else None

    moved = edges.transformed(Affine.move(way.x, way.y))
    rings = (list(zip(*pair, strict=True)) for pair in zip(edges.paths, moved.paths, strict=True))
    return tuple(_face(run, found) for ring in rings for found, run in _runs(ring, sorted_by) if found is not None)


def _faces_way(segment: Segment, way: Point) -> bool:
    """Whether a parted segment, its region on the left, has its outside toward the way."""
    return (segment.end - segment.start).cross(way) < -ALONG_MM * abs(way)


def _runs(
    ring: Sequence[Pair], sorted_by: Callable[[Pair], bool | None]
) -> Iterator[tuple[bool | None, tuple[Pair, ...]]]:
    """Neighbours on a ring that are sorted alike; the ring begins where that changes."""
    keys = [sorted_by(pair) for pair in ring]
    first = next((i for i in range(len(keys)) if keys[i] != keys[i - 1]), 0)
    for found, group in groupby([*ring[first:], *ring[:first]], key=sorted_by):
        yield found, tuple(group)


def _face(run: Sequence[Pair], label: bool) -> Face:
    edge, moved = Path(tuple(segment for segment, _ in run)), [segment for _, segment in run]
    first, last = edge.segments[0].start, edge.segments[-1].end
    around = (*edge.reversed(), Line(first, moved[0].start), *moved, Line(moved[-1].end, last))
    return Face(edge, Outline.of([Path(around, closed=True)]), label)


def parted(outline: Outline, directions: Sequence[Point]) -> Outline:
    """The same region, its curves parted wherever they run along one of the directions."""
    found = (along(outline, direction) for direction in directions for along in (_along_on_cubics, _along_on_arcs))
    cuts: list[tuple[int, float]] = []
    for row, t in sorted(chain.from_iterable(found)):
        clear = AT_END_T < t < 1 - AT_END_T
        if clear and not (cuts and cuts[-1][0] == row and t - cuts[-1][1] < AT_END_T):
            cuts.append((row, t))
    return _cut(outline, cuts) if cuts else outline


def _along_on_cubics(outline: Outline, direction: Point) -> Iterator[tuple[int, float]]:
    """Where p′(t) × w is 0: a quadratic in t whose Bernstein coefficients are the legs' own products with w."""
    rows = np.flatnonzero(outline.kinds == CUBIC)
    legs = np.diff(outline.data[rows], axis=1)
    c0, c1, c2 = (legs[..., 0] * direction.y - legs[..., 1] * direction.x).T
    a, half_b, c = c0 - 2 * c1 + c2, c1 - c0, c0
    with np.errstate(divide="ignore", invalid="ignore"):
        q = -(half_b + np.copysign(np.sqrt(half_b**2 - a * c), half_b))
        roots = np.stack((q / a, c / q), axis=1)
    for row, pair in zip(rows.tolist(), roots.tolist(), strict=True):
        yield from ((row, t) for t in pair if 0 < t < 1)


def _along_on_arcs(outline: Outline, direction: Point) -> Iterator[tuple[int, float]]:
    """Where the spoke stands across the direction: two places on a circle, those of them that the arc reaches."""
    rows = np.flatnonzero(outline.kinds == ARC)
    data = outline.data[rows]
    spoke, sweep = data[:, 0] - data[:, 1], data[:, 2, 1]
    start = np.arctan2(spoke[:, 1], spoke[:, 0])
    for quarter in (direction.left, -direction.left):
        onward = (quarter.direction_rad - start) * np.sign(sweep) % (2 * np.pi)
        yield from ((row, t) for row, t in zip(rows.tolist(), (onward / np.abs(sweep)).tolist(), strict=True) if t < 1)


def _cut(outline: Outline, cuts: Sequence[tuple[int, float]]) -> Outline:
    """Segments cut at (segment, t), in order; the parts meet to the last bit."""
    at_row, at_t = np.array([row for row, _ in cuts]), np.array([t for _, t in cuts])
    pieces = np.bincount(at_row, minlength=len(outline.kinds)) + 1
    owner = np.repeat(np.arange(len(pieces)), pieces)
    first = np.cumsum(pieces) - pieces
    t0, t1 = np.zeros(len(owner)), np.ones(len(owner))
    inner = np.setdiff1d(np.arange(len(owner)), first)
    t0[inner], t1[inner - 1] = at_t, at_t
    data = _sub_curves(Curves(outline.kinds[owner], outline.data[owner]), t0, t1)
    data[inner, 0] = data[inner - 1, 3]
    return Outline(outline.kinds[owner], data, np.append(first, len(owner))[outline.rings])


def _sub_curves(curves: Curves, t0: Floats, t1: Floats) -> Floats:
    """Rows of the parts from t0 to t1; whole ones as they were."""
    data = curves.data.copy()
    part = (t0 > 0) | (t1 < 1)
    data[part, 0] = np.where((t0 > 0)[part, None], curves.points(t0)[part], data[part, 0])
    data[part, 3] = np.where((t1 < 1)[part, None], curves.points(t1)[part], data[part, 3])
    cubic = part & (curves.kinds == CUBIC)
    data[cubic, 1:3] = curves[cubic].cubic_between(t0[cubic], t1[cubic])[:, 1:3]
    arc = part & (curves.kinds == ARC)
    data[arc, 2, 1] = curves.data[arc, 2, 1] * (t1 - t0)[arc]
    return data
