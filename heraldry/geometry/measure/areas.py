"""Areas and centroids by Green's theorem, exact on lines, arcs and cubics; mm², mm.

Each segment sweeps a region as seen from its ring's first point: the triangle under its chord, and what lies
between chord and curve. Summed with their signs the regions are the ring, and far-away rings lose no digits.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import GeometryError
from heraldry.geometry import bezier
from heraldry.geometry.bezier import Floats
from heraldry.geometry.outline import ARC, CUBIC, Outline
from heraldry.geometry.point import Point

# The area of a cubic integrates a polynomial of degree 4, its first moment one of degree 7 in t; five Gauss
# nodes are exact up to degree 9, so this quadrature is a closed form.
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(5)
_T, _DT = (_NODES + 1) / 2, _WEIGHTS / 2

# A region thinner than this share of its box's square has no centre to speak of, only rounding.
NO_AREA = 1e-12


def area(outline: Outline) -> float:
    """The area of a clean outline, mm²: never negative, whichever way round its rings run.

    >>> from heraldry.geometry.segments import Path
    >>> area(Outline.of([Path.through([Point(0, 0), Point(4, 0), Point(4, 3)], closed=True)]))
    6.0
    """
    return abs(float(ring_areas(outline).sum()))


def ring_areas(outline: Outline) -> Floats:
    """The signed area of each ring, mm², shape (rings,): counter-clockwise positive, clockwise negative."""
    return _by_ring(outline, _swept(outline)[0])


def centroid(outline: Outline) -> Point:
    """The centre of area of a clean outline; raises GeometryError where there is no area.

    >>> from heraldry.geometry.segments import Path
    >>> centroid(Outline.of([Path.through([Point(0, 0), Point(3, 0), Point(0, 3)], closed=True)]))
    Point(x=1.0, y=1.0)
    """
    if outline.is_empty:
        raise GeometryError("an empty outline has no centre")
    areas, moments = _swept(outline)
    total = float(areas.sum())
    reach = float(np.abs(outline.data[:, [0, 3]] - outline.data[0, 0]).max())
    if abs(total) <= NO_AREA * reach * reach:
        raise GeometryError(f"an outline of {total:g} mm² is too thin to have a centre of area")
    anchors = _anchors(outline)
    x, y = (moments + anchors * areas[:, None]).sum(axis=0) / total
    return Point(float(x), float(y))


def _by_ring(outline: Outline, values: Floats) -> Floats:
    if outline.is_empty:
        return np.zeros(0)
    return np.asarray(np.add.reduceat(values, outline.rings[:-1]), dtype=np.float64)


def _anchors(outline: Outline) -> Floats:
    """The first point of each segment's ring, shape (n, 2)."""
    return np.asarray(np.repeat(outline.data[outline.rings[:-1], 0], np.diff(outline.rings), axis=0))


def _swept(outline: Outline) -> tuple[Floats, Floats]:
    """Signed area (n,) and first moment (n, 2) swept by each segment as seen from its ring's anchor."""
    anchors = _anchors(outline)
    start, end = outline.data[:, 0] - anchors, outline.data[:, 3] - anchors
    areas = _cross(start, end) / 2
    moments = areas[:, None] * (start + end) / 3
    for kind, bulge in ((ARC, _arc_bulge), (CUBIC, _cubic_bulge)):
        chosen = outline.kinds == kind
        between, centre_moment = bulge(outline.data[chosen])
        areas[chosen] += between
        moments[chosen] += centre_moment - anchors[chosen] * between[:, None]
    return areas, moments


def _arc_bulge(data: Floats) -> tuple[Floats, Floats]:
    """Area and moment between arc and chord: r²(θ − sin θ)/2, and 2r³ sin³(θ/2)/3 outward from the centre."""
    centre, radius, sweep = data[:, 1], data[:, 2, 0], data[:, 2, 1]
    from_centre = data[:, 0] - centre
    middle = np.arctan2(from_centre[:, 1], from_centre[:, 0]) + sweep / 2
    between = radius**2 * (sweep - np.sin(sweep)) / 2
    outward = 2 / 3 * radius**3 * np.sin(sweep / 2) ** 3
    direction = np.stack((np.cos(middle), np.sin(middle)), axis=-1)
    return between, centre * between[:, None] + direction * outward[:, None]


def _cubic_bulge(data: Floats) -> tuple[Floats, Floats]:
    """Area and moment between cubic and chord, seen from its start: ½∫ w×w′ dt and ⅓∫ w (w×w′) dt."""
    start = data[:, None, 0]
    swing = bezier.points(data[:, None], _T) - start
    rate = _cross(swing, bezier.velocities(data[:, None], _T)) * _DT
    between = rate.sum(axis=1) / 2
    moment = (swing * rate[..., None]).sum(axis=1) / 3
    return between, moment + data[:, 0] * between[:, None]


def _cross(a: NDArray[np.float64], b: NDArray[np.float64]) -> Floats:
    return np.asarray(a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0])
