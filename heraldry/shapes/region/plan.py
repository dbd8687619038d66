"""Land on the projection's plane: valid polygons in kilometres, north up, and the land they make together.

An edge of a map is straight in degrees, so long edges (a border along a parallel) are divided before they are
projected. Two pieces that share an edge divide it at the same points to the last bit, whichever way each
walks it, and so still share it on the plane. Cuts along the 180th meridian close by themselves there, since
both sides of the cut come to lie on one line. Pieces from two sources leave a seam of gaps and overlaps, which
is closed up to the width that such maps differ by.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.errors import RegionError
from heraldry.shapes.region.land import Land
from heraldry.shapes.region.meridian import with_cuts_alike
from heraldry.shapes.region.projection import Array, Projection

EDGE_MAX_DEG = 0.25
"""The longest edge that is projected undivided: along a parallel its middle is then off by 8 m at most."""

SEAM_KM = 2.5
"""How far apart two sources may have the same border: 1/4 mm on a map at 1:10,000,000.

Common practice, no source.
"""


def project(lands: Sequence[Land], projection: Projection) -> tuple[list[shapely.Geometry], list[bool]]:
    """Valid polygons of each land in kilometres, and which of them had to be mended for that.

    Raises RegionError when there is nothing left.
    """
    plans = [_on_plane(with_cuts_alike(land.polygons), projection) for land in lands]
    mended = [plan if plan.is_valid else _mended(plan) for plan in plans]
    if not any(plan.area > 0 for plan in mended):
        raise RegionError("the region holds no area")
    return mended, [before is not after for before, after in zip(plans, mended, strict=True)]


def dissolve(plans: Iterable[shapely.Geometry], sources: Sequence[str]) -> shapely.Geometry:
    """All pieces as one land without inner borders; seams between sources are closed."""
    land: shapely.Geometry = shapely.MultiPolygon()
    for source in sorted(set(sources)):
        own = [plan for plan, its in zip(plans, sources, strict=True) if its == source]
        joined = shapely.union_all(own) if len(own) > 1 else own[0]
        land = joined if land.is_empty else _sewn(land, joined)
    return land


def _sewn(one: shapely.Geometry, other: shapely.Geometry) -> shapely.Geometry:
    """Both together, with the gaps filled that touch both and are narrower than the seam."""
    both = shapely.union(one, other)
    near = _reach_of(one, other).intersection(_reach_of(other, one))
    if near.is_empty:
        return both
    rim = both.intersection(near)
    closed = rim.buffer(SEAM_KM / 2, join_style="mitre").buffer(-SEAM_KM / 2, join_style="mitre")
    gaps = shapely.get_parts(closed.difference(both))
    touch = SEAM_KM * 1e-6
    seam = gaps[shapely.dwithin(gaps, one, touch) & shapely.dwithin(gaps, other, touch)]
    return _mended(shapely.union_all([both, *(gap.buffer(touch) for gap in seam)]))


def _reach_of(land: shapely.Geometry, other: shapely.Geometry) -> shapely.Geometry:
    """What lies within the seam's reach of a land, as far as that can matter to the other."""
    left, bottom, right, top = other.bounds
    margin = 4 * SEAM_KM
    close = shapely.clip_by_rect(land, left - margin, bottom - margin, right + margin, top + margin)
    return close.buffer(2 * SEAM_KM, quad_segs=2)


def _mended(plan: shapely.Geometry) -> shapely.Geometry:
    """The area as valid polygons: what overlaps is land, what has no width is dropped."""
    parts = shapely.get_parts(plan)
    bad = ~shapely.is_valid(parts)
    valid = shapely.make_valid(parts[bad], method="structure", keep_collapsed=False)
    sound = [*parts[~bad], *_polygons(valid)]
    if not sound:
        return shapely.MultiPolygon()
    one, other = shapely.STRtree(sound).query(sound, predicate="intersects")
    meeting = np.isin(np.arange(len(sound)), one[one != other])
    joined = shapely.union_all(np.array(sound, dtype=object)[meeting])
    return shapely.MultiPolygon(
        [part for part, meets in zip(sound, meeting, strict=True) if not meets] + _polygons([joined])
    )


def _polygons(geometries: Iterable[shapely.Geometry]) -> list[shapely.Polygon]:
    """The parts that have an area."""
    parts = shapely.get_parts(shapely.get_parts(list(geometries)))
    return [part for part in parts if part.geom_type == "Polygon" and part.area > 0]


def _on_plane(polygons: shapely.MultiPolygon, projection: Projection) -> shapely.Geometry:
    kind, degrees, (ring_ends, *ends) = shapely.to_ragged_array([polygons])
    divided, sizes = _divided(degrees, ring_ends)
    plane = projection.forward(divided)
    if not np.isfinite(plane).all():
        raise RegionError("the region spans too much of the globe for one map")
    rings = np.concatenate(([0], np.cumsum(sizes)))
    return shapely.from_ragged_array(kind, plane, (rings, *ends))[0]


def _divided(degrees: Array, ring_ends: NDArray[np.int64]) -> tuple[Array, NDArray[np.int64]]:
    """Points of closed rings with long edges divided, and how many points each ring has now."""
    inner = np.ones(len(degrees), dtype=bool)
    inner[np.asarray(ring_ends[1:]) - 1] = False
    starts, ends = degrees[inner], np.roll(degrees, -1, axis=0)[inner]
    steps = ends - starts
    steps[:, 0] = (steps[:, 0] + 180.0) % 360.0 - 180.0
    counts = np.maximum(1, np.ceil(np.abs(steps).max(axis=1) / EDGE_MAX_DEG - 1e-9)).astype(np.int64)
    pieces = np.ones(len(degrees), dtype=np.int64)
    pieces[inner] = counts
    points = np.repeat(degrees, pieces, axis=0)
    local = np.arange(len(points)) - np.repeat(np.cumsum(pieces) - pieces, pieces)
    _place_between(points, local, np.repeat(inner.cumsum() - 1, pieces), starts, ends, counts)
    sizes = np.add.reduceat(pieces, np.asarray(ring_ends[:-1]))
    return points, sizes


def _place_between(
    points: Array,
    local: NDArray[np.int64],
    edge: NDArray[np.int64],
    starts: Array,
    ends: Array,
    counts: NDArray[np.int64],
) -> None:
    """Fill in the dividing points, each reckoned from the lesser end of its edge."""
    new = np.flatnonzero(local)
    edge, step = edge[new], local[new]
    one, two, count = starts[edge], ends[edge], counts[edge]
    turned = (one[:, 0] > two[:, 0]) | ((one[:, 0] == two[:, 0]) & (one[:, 1] > two[:, 1]))
    first, last = np.where(turned[:, None], two, one), np.where(turned[:, None], one, two)
    way = last - first
    way[:, 0] = (way[:, 0] + 180.0) % 360.0 - 180.0
    points[new] = first + way * (np.where(turned, count - step, step) / count)[:, None]
