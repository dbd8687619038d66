"""The upright box round an outline or a path, from the true extrema of its arcs and cubics; mm."""

from __future__ import annotations

import numpy as np

from heraldry.errors import GeometryError
from heraldry.geometry import bezier
from heraldry.geometry.bezier import Floats
from heraldry.geometry.outline import ARC, CUBIC, Bounds, Outline
from heraldry.geometry.segments import Path

_QUARTERS = np.array([[1.0, 0.0], [0.0, 1.0], [-1.0, 0.0], [0.0, -1.0]])


def bounds(drawn: Outline | Path) -> Bounds:
    """The smallest upright box that holds everything; raises GeometryError when there is nothing.

    >>> from heraldry.geometry.point import Point
    >>> from heraldry.geometry.segments import Arc
    >>> bounds(Path((Arc.about(Point(0, 0), 2, 0, 3.2),))).top
    2.0
    """
    table = drawn if isinstance(drawn, Outline) else Outline.of((drawn,))
    if table.is_empty:
        raise GeometryError("an empty outline has no bounds")
    arcs, cubics = table.data[table.kinds == ARC], table.data[table.kinds == CUBIC]
    reached = [table.data[:, 0], table.data[:, 3], _arc_extrema(arcs), _cubic_extrema(cubics)]
    corners = np.concatenate(reached)
    left, bottom = corners.min(axis=0).tolist()
    right, top = corners.max(axis=0).tolist()
    return Bounds(left, bottom, right, top)


def _arc_extrema(arcs: Floats) -> Floats:
    """The quarter points that lie on the arcs."""
    from_centre = arcs[:, 0] - arcs[:, 1]
    sweep = arcs[:, 2, 1, None]
    start = np.arctan2(from_centre[:, 1], from_centre[:, 0])[:, None]
    turned = (np.arange(4) * (np.pi / 2) - start) * np.sign(sweep) % (2 * np.pi)
    quarters = arcs[:, None, 1] + arcs[:, None, 2, :1] * _QUARTERS
    return np.asarray(quarters[turned < np.abs(sweep)])


def _cubic_extrema(cubics: Floats) -> Floats:
    """The points of the cubics where x or y stands still."""
    t = _stationary(cubics)
    inside = (t > 0.0) & (t < 1.0)
    reached = bezier.points(cubics[:, None, None], np.where(inside, t, 0.0))
    return np.asarray(reached[inside])


def _stationary(cubics: Floats) -> Floats:
    """Roots of each coordinate's derivative, shape (n, 2 axes, 2 roots), nan or infinite where there is none.

    a t² + b t + c = 0 as −2c / (b ± √(b² − 4ac)) and its twin, the pair that does not cancel.
    """
    d0, d1, d2 = (cubics[:, i + 1] - cubics[:, i] for i in range(3))
    a, b, c = d0 - 2 * d1 + d2, 2 * (d1 - d0), d0
    with np.errstate(divide="ignore", invalid="ignore"):
        q = -0.5 * (b + np.copysign(np.sqrt(b * b - 4 * a * c), b))
        return np.stack((q / a, c / q), axis=-1)
