"""An outline: a region of the plane bounded by closed rings of lines, arcs and cubics.

Its segments lie in three arrays, so that a thousand letters are moved or flattened in one numpy call:

=========  =============  ===================================================================
array      shape, type    holds
=========  =============  ===================================================================
``kinds``  (n,) uint8     ``LINE``, ``ARC`` or ``CUBIC``
``data``   (n, 4, 2)      line:  start, start, end, end
                          arc:   start, centre, (radius, sweep in radians), end
                          cubic: start, control, control, end
``rings``  (m + 1,)       ring i is segments ``rings[i]:rings[i + 1]``
=========  =============  ===================================================================

The region is what the even-odd rule fills. A clean outline (every result of the set operations) has rings
that neither cross nor overlap, outer ones counter-clockwise and holes clockwise. Millimetres, y up.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.affine import Affine
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment

LINE, ARC, CUBIC = 0, 1, 2

QUANTUM_MM = 1e-6  # a nanometre: far below any printer, far above the noise of the last bit

# An arc becomes cubics of at most this angle where arcs cannot be kept: a 30° cubic is off by 3.7e-7
# of its radius, nine nanometres on a 25 mm circle; a 45° one by 4.2e-6.
ARC_AS_CUBIC_MAX_RAD = math.radians(30.0)


@dataclass(frozen=True, slots=True)
class Bounds:
    """The upright box round something, in millimetres."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Right minus left."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Top minus bottom."""
        return self.top - self.bottom

    @property
    def centre(self) -> Point:
        """The middle of the box."""
        return Point((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    @property
    def outline(self) -> Outline:
        """All that lies in the box."""
        corners = [(self.left, self.bottom), (self.right, self.bottom), (self.right, self.top), (self.left, self.top)]
        return Outline.of([Path.through([Point(x, y) for x, y in corners], closed=True)])

    @staticmethod
    def round(boxes: Iterable[Bounds]) -> Bounds:
        """The box round several, of which there is one at least.

        >>> Bounds.round([Bounds(0, 0, 1, 1), Bounds(4, -1, 5, 0)])
        Bounds(left=0, bottom=-1, right=5, top=1)
        """
        known = list(boxes)
        left, bottom = min(box.left for box in known), min(box.bottom for box in known)
        return Bounds(left, bottom, max(box.right for box in known), max(box.top for box in known))

    def grown(self, by_mm: float) -> Bounds:
        """The box with a margin on all sides; a smaller one where that is negative."""
        return Bounds(self.left - by_mm, self.bottom - by_mm, self.right + by_mm, self.top + by_mm)

    def reach_over(self, room: Bounds) -> float:
        """How far the box reaches out of a room, mm; negative when it is inside."""
        return max(room.left - self.left, room.bottom - self.bottom, self.right - room.right, self.top - room.top)


@dataclass(frozen=True, eq=False)
class Outline:
    """An immutable region with curved edges; see the module for its arrays."""

    kinds: NDArray[np.uint8]
    data: NDArray[np.float64]
    rings: NDArray[np.int64]

    @staticmethod
    def of(paths: Iterable[Path]) -> Outline:
        """The region inside closed paths, by the even-odd rule."""
        kinds: list[int] = []
        data: list[tuple[float, ...]] = []
        rings = [0]
        for path in paths:
            for segment in path.segments:
                kind, row = _row(segment)
                kinds.append(kind)
                data.append(row)
            if len(kinds) > rings[-1]:
                rings.append(len(kinds))
        table = np.array(data, dtype=np.float64).reshape(-1, 4, 2)
        return Outline(np.array(kinds, dtype=np.uint8), table, np.array(rings, dtype=np.int64))

    @staticmethod
    def gather(outlines: Iterable[Outline]) -> Outline:
        """All rings of several outlines in one, unmixed: no set operation is made."""
        parts = [outline for outline in outlines if not outline.is_empty]
        if not parts:
            return EMPTY
        shifts = np.cumsum([0, *(len(part.kinds) for part in parts)])
        rings = [part.rings[:-1] + shift for part, shift in zip(parts, shifts[:-1], strict=True)]
        return Outline(
            np.concatenate([part.kinds for part in parts]),
            np.concatenate([part.data for part in parts]),
            np.concatenate([*rings, shifts[-1:]]).astype(np.int64),
        )

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing in it."""
        return len(self.kinds) == 0

    @property
    def node_count(self) -> int:
        """How many segments bound the region."""
        return len(self.kinds)

    @property
    def paths(self) -> tuple[Path, ...]:
        """The rings as chains of segment values, for writers and for reading."""
        segments = [segment_of(kind, row) for kind, row in zip(self.kinds, self.data.tolist(), strict=True)]
        bounds = self.rings.tolist()
        return tuple(
            Path(tuple(segments[first:last]), closed=True) for first, last in zip(bounds[:-1], bounds[1:], strict=True)
        )

    def transformed(self, affine: Affine) -> Outline:
        """The outline under an affine map; arcs stay arcs under similarities, else become cubics."""
        source = self
        if not affine.is_similarity and np.any(self.kinds == ARC):
            source = self.with_arcs_as_cubics()
        data = affine.on_array(source.data)
        arcs = source.kinds == ARC
        if np.any(arcs):
            turned = -1.0 if affine.determinant < 0 else 1.0
            data[arcs, 2, 0] = source.data[arcs, 2, 0] * affine.ratio
            data[arcs, 2, 1] = source.data[arcs, 2, 1] * turned
        return Outline(source.kinds, data, source.rings)

    def reversed(self) -> Outline:
        """Every ring walked the other way, as a mirrored outline needs to be clean again."""
        if self.is_empty:
            return self
        ends = zip(self.rings[:-1].tolist(), self.rings[1:].tolist(), strict=True)
        order = np.concatenate([np.arange(last - 1, first - 1, -1) for first, last in ends])
        kinds, forward = self.kinds[order], self.data[order]
        data = forward[:, ::-1].copy()
        arcs = kinds == ARC
        data[arcs, 1:3] = forward[arcs, 1:3]
        data[arcs, 2, 1] *= -1.0
        return Outline(kinds, data, self.rings)

    def flipped(self, about: Point = ORIGIN) -> Outline:
        """Left and right exchanged about an upright line, rings walked the right way again."""
        return self.transformed(Affine.mirror(about=about)).reversed()

    def quantised(self) -> Outline:
        """Every point and radius on the ``QUANTUM_MM`` grid, so that equal things are equal to the bit."""
        data = np.round(self.data / QUANTUM_MM) * QUANTUM_MM
        arcs = self.kinds == ARC
        data[arcs, 2, 1] = self.data[arcs, 2, 1]
        return Outline(self.kinds, data, self.rings)

    def with_arcs_as_cubics(self, max_angle_rad: float = ARC_AS_CUBIC_MAX_RAD) -> Outline:
        """Every arc replaced by cubics of at most an angle (radians)."""
        paths = []
        for path in self.paths:
            pieces: list[Segment] = []
            for segment in path.segments:
                pieces.extend(arc_as_cubics(segment, max_angle_rad) if isinstance(segment, Arc) else [segment])
            paths.append(Path(tuple(pieces), closed=True))
        return Outline.of(paths)


EMPTY = Outline(np.zeros(0, np.uint8), np.zeros((0, 4, 2)), np.zeros(1, np.int64))


def arc_as_cubics(arc: Arc, max_angle_rad: float = ARC_AS_CUBIC_MAX_RAD) -> list[Cubic]:
    """Cubics that follow an arc, each over at most an angle (radians).

    The controls lie on the end tangents at 4/3·tan(angle/4) radii, the usual choice that meets the circle
    at both ends and in the middle.
    """
    count = max(1, math.ceil(abs(arc.sweep_rad) / max_angle_rad - 1e-9))
    step = arc.sweep_rad / count
    reach = 4.0 / 3.0 * math.tan(step / 4.0) * arc.radius
    nodes = [arc.start, *(arc.at(i / count) for i in range(1, count)), arc.end]
    cubics = []
    for i, (start, end) in enumerate(zip(nodes[:-1], nodes[1:], strict=True)):
        angle = arc.start_rad + i * step
        tangent0 = Point(-math.sin(angle), math.cos(angle))
        tangent1 = Point(-math.sin(angle + step), math.cos(angle + step))
        cubics.append(Cubic(start, start + tangent0 * reach, end - tangent1 * reach, end))
    return cubics


def _row(segment: Segment) -> tuple[int, tuple[float, ...]]:
    s, e = segment.start, segment.end
    if isinstance(segment, Line):
        return LINE, (s.x, s.y, s.x, s.y, e.x, e.y, e.x, e.y)
    if isinstance(segment, Arc):
        c = segment.centre
        return ARC, (s.x, s.y, c.x, c.y, segment.radius, segment.sweep_rad, e.x, e.y)
    c1, c2 = segment.control1, segment.control2
    return CUBIC, (s.x, s.y, c1.x, c1.y, c2.x, c2.y, e.x, e.y)


def segment_of(kind: int, row: list[list[float]]) -> Segment:
    """The segment that a row of ``kinds`` and ``data`` holds."""
    (sx, sy), one, two, (ex, ey) = row
    start, end = Point(sx, sy), Point(ex, ey)
    if kind == LINE:
        return Line(start, end)
    if kind == ARC:
        return Arc(start, end, Point(*one), two[0], two[1])
    return Cubic(start, Point(*one), Point(*two), end)
