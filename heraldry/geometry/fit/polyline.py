"""A polyline made ready for fitting: its corners, its tangents, and where on it a curve is tested.

Places are complex numbers here, x + iy in millimetres, since fitting turns and scales every span into its
own frame.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import GeometryError
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc

Floats = NDArray[np.float64]
Places = NDArray[np.complex128]
Indices = NDArray[np.int64]
Mask = NDArray[np.bool_]

CORNER_RAD = math.radians(35.0)
"""A joint that turns more is a corner: eleven even sides are still taken for a circle, ten are a decagon."""

SUPPORT = 4.0
"""In tolerances: how far before and behind a vertex its turn is taken, at the least. A shorter look takes what
the tolerance should hide for corners, a longer one small bays; of 4, 6 and 8, four needed the fewest segments
at most tolerances, on smooth and rough coasts alike."""

CHORD_SAMPLE = 20.0
"""In tolerances: chords are tested inside at least as often as this, and once at the least."""

MOST_SAMPLES = 7
"""Inside one chord a cubic turns back at most twice: seven tests meet both bulges."""


@dataclass(frozen=True, eq=False)
class Polyline:
    """Vertices with their tangents, and the samples between them at which fits are tested.

    A closed one begins at a corner, where it has one, and repeats its first vertex at the end.
    """

    vertices: Places
    closed: bool
    turns_rad: Floats
    """How much the direction changes at each vertex, 0 at open ends."""
    is_corner: Mask
    leaving: Places
    """Unit tangent with which a curve leaves each vertex; at smooth vertices it is ``arriving``."""
    arriving: Places
    samples: Places
    sample_of: Indices
    """The sample that each vertex is."""

    @staticmethod
    def through(points: Floats, tolerance_mm: float, closed: bool) -> Polyline:
        """Read points; raises GeometryError when too few of them differ."""
        vertices = _distinct(points, closed)
        reach = SUPPORT * tolerance_mm
        if closed:
            vertices = np.roll(vertices, -_best_start(np.append(vertices, vertices[0]), reach))
            vertices = np.append(vertices, vertices[0])
        turns = np.abs(_turns(vertices, reach, closed))
        is_corner = _corners(vertices, turns, reach, closed)
        leaving, arriving = _tangents(vertices, is_corner, reach, closed)
        samples, sample_of = _samples(vertices, CHORD_SAMPLE * tolerance_mm)
        return Polyline(vertices, closed, turns, is_corner, leaving, arriving, samples, sample_of)


def circle_through(polyline: Polyline, tolerance_mm: float) -> Arc | None:
    """The full circle that a closed polyline without corners is, if it is one.

    Least squares on x² + y² = 2ax + 2by + c (Kåsa 1976), which is exact where the points are.
    """
    if not polyline.closed or np.any(polyline.is_corner[1:-1]):
        return None
    z = polyline.samples[:-1] - polyline.samples.mean()
    system = np.stack((2 * z.real, 2 * z.imag, np.ones(len(z))), axis=1)
    (a, b, c), *_ = np.linalg.lstsq(system, np.abs(z) ** 2, rcond=None)
    radius = math.sqrt(max(c + a * a + b * b, 0.0))
    if np.abs(np.abs(z - complex(a, b)) - radius).max() > tolerance_mm:
        return None
    centre = complex(a, b) + polyline.samples.mean()
    from_centre = polyline.vertices[0] - centre
    way = math.copysign(math.tau, float((z.conj() * np.roll(z, -1)).imag.sum()))
    return Arc.about(Point(centre.real, centre.imag), radius, math.atan2(from_centre.imag, from_centre.real), way)


def _distinct(points: Floats, closed: bool) -> Places:
    """The points as complex numbers, without those that repeat their neighbour."""
    if points.ndim != 2 or points.shape[1] != 2:
        raise GeometryError(f"points to fit have the shape {points.shape}, it must be (n, 2)")
    if not np.all(np.isfinite(points)):
        raise GeometryError("a point to fit is not finite")
    z = points[:, 0] + 1j * points[:, 1]
    z = z[np.append(True, np.diff(z) != 0)] if len(z) else z
    if closed and len(z) > 1 and z[0] == z[-1]:
        z = z[:-1]
    least = 3 if closed else 2
    if len(z) < least:
        raise GeometryError(f"{len(z)} different points were found, a fit needs at least {least}")
    return z


def _looked_along(vertices: Places, reach_mm: float, closed: bool) -> tuple[Places, Places]:
    """For each vertex the places ``reach_mm`` before and behind it, at least one whole chord away."""
    run = np.concatenate(([0.0], np.cumsum(np.abs(np.diff(vertices)))))
    before, behind = run - reach_mm, run + reach_mm
    before[1:] = np.minimum(before[1:], run[:-1])
    behind[:-1] = np.maximum(behind[:-1], run[1:])
    if closed:
        total = run[-1]
        before[0], behind[-1] = min(before[0], run[-2] - total), max(behind[-1], total + run[1])
        run = np.concatenate((run[:-1] - total, run, run[1:] + total))
        vertices = np.concatenate((vertices[:-1], vertices, vertices[1:]))
    return np.interp(before, run, vertices), np.interp(behind, run, vertices)


def _turns(vertices: Places, reach_mm: float, closed: bool) -> Floats:
    """How the direction turns at each vertex, radians; 0 at open ends."""
    before, behind = _looked_along(vertices, reach_mm, closed)
    return np.angle((behind - vertices) * np.conj(vertices - before))


def _best_start(vertices: Places, reach_mm: float) -> int:
    """The sharpest corner of a ring, or the start of its longest chord, where a line may begin."""
    turns = np.abs(_turns(vertices, reach_mm, closed=True))
    sharpest = int(np.argmax(turns[:-1]))
    return sharpest if turns[sharpest] > CORNER_RAD else int(np.argmax(np.abs(np.diff(vertices))))


def _corners(vertices: Places, turns: Floats, reach_mm: float, closed: bool) -> Mask:
    """The sharpest turns, none within ``reach_mm`` of a sharper one, and the ends of an open polyline."""
    run = np.concatenate(([0.0], np.cumsum(np.abs(np.diff(vertices)))))
    chosen = np.zeros(len(vertices), dtype=bool)
    free = turns > CORNER_RAD
    if closed and free[0]:
        chosen[[0, -1]] = True
        free &= (run > reach_mm) & (run < run[-1] - reach_mm)
    for i in np.argsort(-turns, kind="stable"):
        if not free[i]:
            continue
        chosen[i] = True
        near = slice(np.searchsorted(run, run[i] - reach_mm), np.searchsorted(run, run[i] + reach_mm, "right"))
        free[near] = False
    if not closed:
        chosen[[0, -1]] = True
    return chosen


def _tangents(vertices: Places, is_corner: Mask, reach_mm: float, closed: bool) -> tuple[Places, Places]:
    """Unit tangents leaving and arriving.

    On a circle the tangent divides the angle between two chords as their lengths do; that is taken for the
    tangent here, from the chords that reach ``reach_mm`` to both sides, or beyond a corner's own side: from
    its two first.
    """
    before, behind = _looked_along(vertices, reach_mm, closed)
    back, ahead = vertices - before, behind - vertices
    turn = np.angle(ahead * np.conj(back))
    share = np.abs(back) / (np.abs(back) + np.abs(ahead))
    smooth = _unit(back) * np.exp(1j * turn * share)
    leaving, arriving = smooth.copy(), smooth
    corners = np.flatnonzero(is_corner)
    for side, tangents in ((1, leaving), (-1, arriving)):
        usable = corners[(corners + side >= 0) & (corners + side < len(vertices))]
        tangents[usable] = _one_sided(vertices, usable, side, reach_mm) * side
    return leaving, arriving


def _one_sided(vertices: Places, corners: Indices, side: int, reach_mm: float) -> Places:
    """The direction from corners into one side, bent by what the way bends over two looks along it."""
    run = np.concatenate(([0.0], np.cumsum(np.abs(np.diff(vertices)))))
    stops = np.unique(np.append(run[corners], run[-1 if side > 0 else 0]))
    here = run[corners]
    stop = stops[np.searchsorted(stops, here, "right") if side > 0 else np.searchsorted(stops, here) - 1]
    look = np.maximum(np.abs(run[corners + side] - here), reach_mm)
    farthest = np.abs(stop - here)
    first, second = (np.interp(here + side * np.minimum(times * look, farthest), run, vertices) for times in (1, 2))
    near, far = first - vertices[corners], second - first
    turn = np.angle(np.where(far != 0, far, near) * np.conj(near))
    share = np.abs(near) / (np.abs(near) + np.abs(far))
    bend = np.where(np.abs(turn) < CORNER_RAD, turn * share, 0.0)
    return _unit(near) * np.exp(-1j * bend)


def _samples(vertices: Places, spacing_mm: float) -> tuple[Places, Indices]:
    """The vertices and places inside every chord, evenly."""
    chords = np.diff(vertices)
    inner = np.clip(np.ceil(np.abs(chords) / spacing_mm), 1, MOST_SAMPLES).astype(np.int64)
    sample_of = np.concatenate(([0], np.cumsum(inner + 1)))
    owner = np.repeat(np.arange(len(chords)), inner + 1)
    step = np.arange(len(owner)) - sample_of[owner]
    inside = vertices[owner] + chords[owner] * (step / (inner[owner] + 1))
    return np.append(inside, vertices[-1]), sample_of


def _unit(vectors: Places) -> Places:
    size = np.abs(vectors)
    return np.asarray(vectors / np.where(size > 0, size, 1.0))
