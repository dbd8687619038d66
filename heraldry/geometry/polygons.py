"""Between rings of vertices and shapely's polygons, without any overlay: nothing is computed, only arranged.

Millimetres. A ring is an array of vertices (n, 2), the first not repeated; outer rings run counter-clockwise,
holes clockwise.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

Ring = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class RingsOfPolygons:
    """The rings of polygons; the first ring of each polygon is its outer one, the others are its holes."""

    rings: tuple[Ring, ...]
    polygon: NDArray[np.int64]
    """Which polygon each ring belongs to, ascending."""

    def picked(self, kept: NDArray[np.bool_]) -> RingsOfPolygons:
        """Only some rings, and no hole without its outer ring."""
        outer = np.unique(self.polygon, return_index=True)[1]
        kept = kept & np.isin(self.polygon, self.polygon[outer[kept[outer]]])
        return RingsOfPolygons(
            tuple(ring for ring, keep in zip(self.rings, kept, strict=True) if keep), self.polygon[kept]
        )

    def solid(self) -> RingsOfPolygons:
        """Without rings of less than three vertices."""
        return self.picked(np.array([len(ring) > 2 for ring in self.rings], dtype=bool))

    def polygons(self) -> NDArray[np.object_]:
        """The polygons, one for each number in ``polygon``."""
        if not self.rings:
            return np.zeros(0, dtype=object)
        _, number = np.unique(self.polygon, return_inverse=True)
        return np.asarray(shapely.polygons(linear_rings(self.rings), indices=number))


def rings_of(geometry: shapely.Geometry) -> RingsOfPolygons:
    """The rings of all polygons in a geometry; points and lines in it are passed over."""
    parts = shapely.get_parts(shapely.get_parts(geometry))
    parts = parts[(shapely.get_dimensions(parts) == 2) & ~shapely.is_empty(parts)]
    rings, polygon = shapely.get_rings(parts, return_index=True)
    xy, owner = shapely.get_coordinates(rings, return_index=True)
    is_outer = np.append(True, polygon[1:] != polygon[:-1])[: len(rings)]
    kept = tuple(
        vertices[:-1] if (signed_area(vertices) > 0) == outer else vertices[:0:-1]
        for vertices, outer in zip(np.split(xy, np.flatnonzero(np.diff(owner)) + 1), is_outer, strict=False)
    )
    return RingsOfPolygons(kept[: len(rings)], polygon)


def nested(rings: Sequence[Ring]) -> shapely.Geometry | None:
    """The polygons of rings that are clean already, or None where they are not."""
    if any(len(ring) < 3 for ring in rings):
        return None
    areas = np.array([signed_area(ring) for ring in rings])
    if np.any(areas == 0) or not np.any(areas > 0):
        return None
    flat = shapely.polygons(linear_rings(rings))
    shells, holes = np.flatnonzero(areas > 0), np.flatnonzero(areas < 0)
    around = _shells_around(flat, areas, shells, holes)
    if around is None:
        return None
    order = np.argsort(np.append(np.arange(len(shells)), around), kind="stable")
    boundary = shapely.get_exterior_ring(flat[np.append(shells, holes)[order]])
    parts = shapely.polygons(boundary, indices=np.sort(np.append(np.arange(len(shells)), around)))
    whole = parts[0] if len(parts) == 1 else shapely.multipolygons(parts)
    return whole if shapely.is_valid(whole) else None


def linear_rings(rings: Sequence[Ring]) -> NDArray[np.object_]:
    """Rings of at least three vertices as shapely's."""
    owner = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
    return np.asarray(shapely.linearrings(np.concatenate(rings), indices=owner))


def _shells_around(
    flat: NDArray[np.object_],
    areas: NDArray[np.float64],
    shells: NDArray[np.int64],
    holes: NDArray[np.int64],
) -> NDArray[np.int64] | None:
    """For each hole the number of the smallest shell that covers it, or None when one has no shell."""
    if len(shells) == 1:
        return np.zeros(len(holes), dtype=np.int64)
    hole, shell = shapely.STRtree(flat[shells]).query(flat[holes], predicate="covered_by")
    tightest = np.lexsort((areas[shells[shell]], hole))
    covered, first = np.unique(hole[tightest], return_index=True)
    return shell[tightest][first] if len(covered) == len(holes) else None


def signed_area(ring: Ring) -> float:
    """Area of a ring, mm², negative when it runs clockwise; the first vertex may be repeated.

    >>> signed_area(np.array([[0.0, 0.0], [2.0, 0.0], [2.0, 1.0], [0.0, 1.0]]))
    2.0
    """
    x, y = ring[:, 0] - ring[0, 0], ring[:, 1] - ring[0, 1]  # the closing edge adds nothing then
    return float(np.dot(x[:-1], y[1:]) - np.dot(x[1:], y[:-1])) / 2


def ring_length(ring: Ring) -> float:
    """Length of a ring, mm."""
    return float(np.sum(np.hypot(*(np.roll(ring, -1, axis=0) - ring).T)))
