"""Many cubic Béziers at once: points, derivatives, halves and closest points, as numpy arrays.

``cubics`` has shape (..., 4, 2): start, control, control, end, in millimetres. ``t`` in [0, 1] has a shape
that broadcasts against the leading axes. Everything is written in Bernstein form, which keeps the ends exact.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

# Below this share of the control polygon's size a derivative counts as none: its direction is rounding only.
STANDSTILL = 1e-9
# Newton on a distance doubles its digits each step; from a sample 1/8 away five steps reach the last bit.
CLOSEST_STEPS = 6
CLOSEST_SAMPLES = 9


def points(cubics: Floats, t: Floats) -> Floats:
    """The points at t, shape (..., 2).

    >>> points(np.array([[0, 0], [0, 1], [1, 1], [1, 0]], float), np.array(0.5)).tolist()
    [0.5, 0.75]
    """
    t = np.asarray(t)[..., None]
    s = 1.0 - t
    p0, p1, p2, p3 = (cubics[..., i, :] for i in range(4))
    return p0 * (s * s * s) + p1 * (3 * s * s * t) + p2 * (3 * s * t * t) + p3 * (t * t * t)


def velocities(cubics: Floats, t: Floats) -> Floats:
    """The first derivatives by t, shape (..., 2), millimetres."""
    t = np.asarray(t)[..., None]
    s = 1.0 - t
    d0, d1, d2 = (cubics[..., i + 1, :] - cubics[..., i, :] for i in range(3))
    return 3.0 * (d0 * (s * s) + d1 * (2 * s * t) + d2 * (t * t))


def accelerations(cubics: Floats, t: Floats) -> Floats:
    """The second derivatives by t, shape (..., 2), millimetres."""
    t = np.asarray(t)[..., None]
    p0, p1, p2, p3 = (cubics[..., i, :] for i in range(4))
    return 6.0 * ((p0 - 2 * p1 + p2) * (1.0 - t) + (p1 - 2 * p2 + p3) * t)


def directions(cubics: Floats, t: Floats) -> Floats:
    """Unit tangents at t; where the curve stands still, the way it leaves (at its end: the way it came)."""
    size = np.abs(cubics - cubics[..., :1, :]).max(axis=(-2, -1))
    tangent = velocities(cubics, t)
    onward = np.where(np.asarray(t) < 0.5, 1.0, -1.0)[..., None]
    chord = np.broadcast_to(cubics[..., 3, :] - cubics[..., 0, :], tangent.shape)
    for fallback in (accelerations(cubics, t) * onward, chord):
        still = np.hypot(tangent[..., 0], tangent[..., 1]) <= STANDSTILL * size
        tangent = np.where(still[..., None], fallback, tangent)
    return unit(tangent)


def unit(vectors: Floats) -> Floats:
    """Vectors at length 1; the zero vector becomes (1, 0), so that no direction is ever missing."""
    norm = np.hypot(vectors[..., 0], vectors[..., 1])[..., None]
    return np.where(norm > 0, vectors / np.where(norm > 0, norm, 1.0), np.array([1.0, 0.0]))


def halves(cubics: Floats) -> tuple[Floats, Floats]:
    """Each cubic cut at t = 1/2 (de Casteljau): first halves and second halves."""
    p0, p1, p2, p3 = (cubics[..., i, :] for i in range(4))
    q0, q1, q2 = (p0 + p1) / 2, (p1 + p2) / 2, (p2 + p3) / 2
    r0, r1 = (q0 + q1) / 2, (q1 + q2) / 2
    middle = (r0 + r1) / 2
    return np.stack((p0, q0, r0, middle), axis=-2), np.stack((middle, r1, q2, p3), axis=-2)


def closest(cubics: Floats, targets: Floats) -> Floats:
    """Parameters of the points of ``cubics`` (..., 4, 2) closest to ``targets`` (..., 2).

    The best of a few samples is improved by Newton on ½|p(t) − target|²; exact for curves that turn by less
    than a half turn, which is what pieces made by ``measure.lengths`` do.
    """
    grid = np.linspace(0.0, 1.0, CLOSEST_SAMPLES)
    sampled = points(cubics[..., None, :, :], grid) - targets[..., None, :]
    t = grid[np.argmin((sampled**2).sum(axis=-1), axis=-1)]
    low, high = np.maximum(t - grid[1], 0.0), np.minimum(t + grid[1], 1.0)
    for _ in range(CLOSEST_STEPS):
        gap, speed = points(cubics, t) - targets, velocities(cubics, t)
        slope = (gap * speed).sum(axis=-1)
        bend = (speed**2).sum(axis=-1) + (gap * accelerations(cubics, t)).sum(axis=-1)
        step = np.where(bend > 0, slope / np.where(bend > 0, bend, 1.0), 0.0)
        t = np.clip(t - step, low, high)
    return np.asarray(t, dtype=np.float64)
