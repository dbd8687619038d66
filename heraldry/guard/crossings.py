"""Straight looks across a region, from edge to edge: the raw material of every width.

The edge of a flattened region is a table of chords with the region on their left. From many places on it
one looks straight inward, and from a corner that points into the region in a fan of directions; where the
look meets the edge again, the region is as wide as the look is long. Seen from the same chords reversed,
the white around the ink is measured in the same way. Millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.int64]

# Chords of a flattened curve turn less than this at their joints; what turns more is looked at as a corner.
CORNER_RAD = np.radians(5.0)
# Directions in a corner's fan: 5° apart, one is within 2.5° of any edge's normal, and 0.1 % too long at most.
FAN_STEP_RAD = np.radians(5.0)
# A look that ends nearer than this has met its own starting point, give or take rounding.
OWN_EDGE_MM = 1e-7
# How far outside its ends a chord may be hit: rounding at a shared vertex must not let a look slip through.
SLIP = 1e-9


@dataclass(frozen=True, eq=False)
class Edge:
    """Chords in ring order with the region on their left: ``along_mm`` is where each starts on its ring."""

    start: Floats
    end: Floats
    ring: Indices
    along_mm: Floats
    ring_length_mm: Floats
    before: Indices
    """The chord that ends where this one starts."""

    @staticmethod
    def of(rings: list[Floats]) -> Edge:
        """The edge of closed rings of vertices (n, 2), the first one not repeated."""
        rings = [ring[np.any(ring != np.roll(ring, -1, axis=0), axis=1)] for ring in rings]
        counts = np.array([len(ring) for ring in rings], dtype=np.int64)
        first = np.cumsum(counts) - counts
        start = np.concatenate(rings)
        end = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])
        lengths = np.hypot(*(end - start).T)
        passed = np.cumsum(lengths) - lengths
        before = np.arange(len(start)) - 1
        before[first] = first + counts - 1
        return Edge(
            start,
            end,
            np.repeat(np.arange(len(rings)), counts),
            passed - np.repeat(passed[first], counts),
            np.add.reduceat(lengths, first),
            before,
        )

    @property
    def directions(self) -> Floats:
        """Unit vectors along the chords."""
        span = self.end - self.start
        return np.asarray(span / np.hypot(span[:, 0], span[:, 1])[:, None])

    def apart_mm(self, chord: Indices, along: Floats, other: Indices, other_along: Floats) -> Floats:
        """The way along the edge between two places of it, the shorter way round; infinite between rings."""
        total = self.ring_length_mm[self.ring[chord]]
        way = np.abs(along - other_along)
        return np.where(self.ring[chord] == self.ring[other], np.minimum(way, total - way), np.inf)

    def stretch(self, chord: int, along_mm: float, reach_mm: float) -> shapely.Geometry:
        """The edge from ``reach_mm`` before a place to as far behind it, as lines."""
        mine = np.flatnonzero(self.ring == self.ring[chord])
        total = self.ring_length_mm[self.ring[chord]]
        span = self.end[mine] - self.start[mine]
        half = np.hypot(span[:, 0], span[:, 1]) / 2
        middle = (self.along_mm[mine] + half - along_mm + total / 2) % total - total / 2
        low, high = np.maximum(middle - half, -reach_mm), np.minimum(middle + half, reach_mm)
        inside = low < high
        shares = np.stack((low - middle + half, high - middle + half), axis=1)[inside] / (2 * half[inside, None])
        ends = self.start[mine][inside, None] + span[inside, None] * shares[..., None]
        return shapely.multilinestrings(shapely.linestrings(ends))


@dataclass(frozen=True, eq=False)
class Looks:
    """Rays into a region: where they start (``chord``, ``along_mm`` on its ring), and unit directions."""

    origin: Floats
    direction: Floats
    chord: Indices
    along_mm: Floats

    @staticmethod
    def joined(some: Looks, others: Looks) -> Looks:
        """Both together."""
        return Looks(
            np.concatenate((some.origin, others.origin)),
            np.concatenate((some.direction, others.direction)),
            np.concatenate((some.chord, others.chord)),
            np.concatenate((some.along_mm, others.along_mm)),
        )


@dataclass(frozen=True, eq=False)
class Crossings:
    """Looks that met the edge again: both ends, and where those lie on their chords and rings."""

    near: Floats
    far: Floats
    near_chord: Indices
    far_chord: Indices
    near_along_mm: Floats
    far_along_mm: Floats
    width_mm: Floats

    @staticmethod
    def joined(some: Crossings, others: Crossings) -> Crossings:
        """Both together."""
        names = some.__dataclass_fields__
        return Crossings(*(np.concatenate((getattr(some, name), getattr(others, name))) for name in names))

    def chosen(self, which: NDArray[np.bool_] | Indices) -> Crossings:
        """Only those of a mask or of indices."""
        return Crossings(*(getattr(self, name)[which] for name in self.__dataclass_fields__))


def crossings(edge: Edge, spacing_mm: float, reach_mm: float, taper_rad: float) -> Crossings:
    """Looks across of at most ``reach_mm``, from places at most ``spacing_mm`` apart.

    Only those whose two sides run within ``taper_rad`` of parallel.
    """
    looks = Looks.joined(_straight_looks(edge, spacing_mm), _fans(edge))
    look, chord, width, along = _first_hits(edge, looks, reach_mm)
    sight = looks.direction[look]
    parallel = (sight * _left(edge.directions[chord])).sum(axis=1) <= -np.cos(taper_rad)
    look, chord, width, along, sight = (column[parallel] for column in (look, chord, width, along, sight))
    origin = looks.origin[look]
    return Crossings(
        origin, origin + sight * width[:, None], looks.chord[look], chord, looks.along_mm[look], along, width
    )


def corner_pairs(edge: Edge, reach_mm: float) -> Crossings:
    """Pairs of corners that point at each other, at most ``reach_mm`` apart, with nothing between them."""
    corner = np.flatnonzero(_turns(edge) < -CORNER_RAD)
    tips = shapely.points(edge.start[corner])
    one, other = shapely.STRtree(tips).query(tips, predicate="dwithin", distance=reach_mm)
    one, other = corner[one[one != other]], corner[other[one != other]]
    span = edge.start[other] - edge.start[one]
    width = np.hypot(span[:, 0], span[:, 1])
    apart = width > OWN_EDGE_MM
    one, other, width = one[apart], other[apart], width[apart]
    sight = span[apart] / width[:, None]
    open_ = _within_fan(edge, one, sight) & _within_fan(edge, other, -sight)
    one, other, width, sight = one[open_], other[open_], width[open_], sight[open_]
    looks = Looks(edge.start[one], sight, one, edge.along_mm[one])
    look, _, free, _ = _first_hits(edge, looks, reach_mm)
    seen = look[free >= width[look] - OWN_EDGE_MM]
    return Crossings(
        edge.start[one[seen]],
        edge.start[other[seen]],
        one[seen],
        other[seen],
        edge.along_mm[one[seen]],
        edge.along_mm[other[seen]],
        width[seen],
    )


def _left(vectors: Floats) -> Floats:
    return np.stack((-vectors[..., 1], vectors[..., 0]), axis=-1)


def _straight_looks(edge: Edge, spacing_mm: float) -> Looks:
    """From the middles of equal parts of every chord, at right angles to it."""
    span = edge.end - edge.start
    lengths = np.hypot(span[:, 0], span[:, 1])
    counts = np.maximum(np.ceil(lengths / spacing_mm), 1).astype(np.int64)
    chord = np.repeat(np.arange(len(counts)), counts)
    step = np.arange(len(chord)) - np.repeat(np.cumsum(counts) - counts, counts)
    share = (step + 0.5) / counts[chord]
    return Looks(
        edge.start[chord] + span[chord] * share[:, None],
        _left(edge.directions)[chord],
        chord,
        edge.along_mm[chord] + lengths[chord] * share,
    )


def _turns(edge: Edge) -> Floats:
    """How the edge turns at each chord's start, radians: negative where a corner points into the region."""
    arriving, leaving = edge.directions[edge.before], edge.directions
    cross = arriving[:, 0] * leaving[:, 1] - arriving[:, 1] * leaving[:, 0]
    return np.asarray(np.arctan2(cross, (arriving * leaving).sum(axis=1)))


def _fans(edge: Edge) -> Looks:
    """From corners that point into the region, in every direction between the normals of their two sides."""
    turns = _turns(edge)
    corner = np.flatnonzero(turns < -CORNER_RAD)
    counts = np.ceil(-turns[corner] / FAN_STEP_RAD).astype(np.int64) + 1
    chord = np.repeat(corner, counts)
    step = np.arange(len(chord)) - np.repeat(np.cumsum(counts) - counts, counts)
    share = step / np.repeat(counts - 1, counts)
    normal = _left(edge.directions[chord])
    angle = np.arctan2(normal[:, 1], normal[:, 0]) - turns[chord] * share
    return Looks(edge.start[chord], np.stack((np.cos(angle), np.sin(angle)), axis=-1), chord, edge.along_mm[chord])


def _within_fan(edge: Edge, corner: Indices, sight: Floats) -> NDArray[np.bool_]:
    """Whether a direction lies between the normals of a corner's two sides."""
    behind = (sight * edge.directions[edge.before[corner]]).sum(axis=1)
    ahead = (sight * edge.directions[corner]).sum(axis=1)
    return np.asarray((behind >= -SLIP) & (ahead <= SLIP))


def _first_hits(edge: Edge, looks: Looks, reach_mm: float) -> tuple[Indices, Indices, Floats, Floats]:
    """For each look that meets the edge: its index, the chord met first, how far, and where on the ring."""
    ends = looks.origin + looks.direction * reach_mm
    tree = shapely.STRtree(shapely.linestrings(np.stack((edge.start, edge.end), axis=1)))
    look, chord = tree.query(shapely.linestrings(np.stack((looks.origin, ends), axis=1)))
    span, sight = edge.end[chord] - edge.start[chord], looks.direction[look]
    gap = edge.start[chord] - looks.origin[look]
    with np.errstate(divide="ignore", invalid="ignore"):
        across = sight[:, 0] * span[:, 1] - sight[:, 1] * span[:, 0]
        far = (gap[:, 0] * span[:, 1] - gap[:, 1] * span[:, 0]) / across
        share = (gap[:, 0] * sight[:, 1] - gap[:, 1] * sight[:, 0]) / across
    met = (share >= -SLIP) & (share <= 1 + SLIP) & (far > OWN_EDGE_MM) & (far <= reach_mm)
    look, chord, far, share = look[met], chord[met], far[met], share[met]
    order = np.lexsort((chord, far, look))
    first = order[np.unique(look[order], return_index=True)[1]]
    along = edge.along_mm[chord] + share * np.hypot(*(edge.end - edge.start)[chord].T)
    return look[first], chord[first], far[first], along[first]
