"""Shades: what makes letters stand off the side of a car; millimetres, angles in degrees.

The angle is the way a shade falls, counter-clockwise from the right: 225 is the sign writer's usual lower left.
All letters are shaded together, so that no shade falls on the next letter, and a gap is kept clear round every
letter. With a gap the shade reaches further by it, so that as much is seen of it as without.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from heraldry.geometry.affine import Affine
from heraldry.geometry.bezier import Floats
from heraldry.geometry.boolean import Difference, Intersection, SetExpression, Union, combine, pieces, subtract, unite
from heraldry.geometry.flatten import flatten_path
from heraldry.geometry.measure import area, ring_areas
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Segment
from heraldry.lettering.treatments.lines import kept_off
from heraldry.lettering.treatments.measures import not_negative, positive
from heraldry.lettering.treatments.sweep import ALONG_MM, Face, faces, parted

MITRES = (Point(1.0, 1.0), Point(1.0, -1.0))
"""The edge directions at which a split shade changes ink: half way between upright and level."""


CRUMB_SHARE = 1 / 8
"""A piece of shade smaller than a square with this share of the shade's length is a crumb, which no sign writer
would paint: what is left of a face in a crotch, or beside a letter that all but covers it."""


@dataclass(frozen=True, eq=False)
class SplitShade:
    """A block shade in two inks: the faces of upright edges, and those of level ones; they share their mitres."""

    uprights: Outline
    levels: Outline


def drop_shade(letters: Outline, length_mm: float, angle_deg: float, gap_mm: float = 0.0) -> Outline:
    """A copy of the letters laid behind them, a length away at an angle; seen where the letters leave it free."""
    positive("the length of a shade", length_mm)
    away = Point.polar(length_mm, math.radians(angle_deg))
    shade = subtract(letters.transformed(Affine.move(away.x, away.y)), _covered(letters, gap_mm))
    return _without_crumbs(shade, length_mm)


def block_shade(letters: Outline, length_mm: float, angle_deg: float, gap_mm: float = 0.0) -> Outline:
    """The sides of the letters as if they were blocks ``length_mm`` deep, receding at an angle.

    Exact: the region the letters sweep over, without the letters and the gap round them.
    """
    way = _way(length_mm, angle_deg, gap_mm)
    letters = unite(letters)
    edges = parted(letters, (way,))
    covered = _covered(letters, gap_mm) if gap_mm > 0 else edges  # edges share every vertex with their faces
    sides = Union(tuple(face.outline for face in faces(edges, way)))
    return _without_crumbs(combine(Difference(sides, (covered,))).outline, length_mm)


def split_shade(letters: Outline, length_mm: float, angle_deg: float, gap_mm: float = 0.0) -> SplitShade:
    """A block shade divided between two inks by the direction of its edges: nearer upright, or nearer level.

    Where two faces lie one over the other the nearer one is seen, as on real blocks. A crumb of one ink that lies
    in the other is left to that one.
    """
    way = _way(length_mm, angle_deg, gap_mm)
    whole = block_shade(letters, length_mm, angle_deg, gap_mm)
    sides = faces(parted(unite(letters), (way, *MITRES)), way, _is_upright)
    uprights = _without_crumbs(combine(Intersection((whole, _seen(sides, way)))).outline, length_mm)
    levels = _without_crumbs(subtract(whole, uprights), length_mm)
    return SplitShade(subtract(whole, levels), levels)


def _way(length_mm: float, angle_deg: float, gap_mm: float) -> Point:
    """The vector that letters are swept along, a gap included."""
    reach = positive("the length of a shade", length_mm) + not_negative("the gap of a shade", gap_mm)
    return Affine.turn(angle_deg)(Point(reach, 0.0))


def _covered(letters: Outline, gap_mm: float) -> Outline:
    return kept_off(letters, not_negative("the gap of a shade", gap_mm), sharp=True)


def _without_crumbs(shade: Outline, length_mm: float) -> Outline:
    least = (CRUMB_SHARE * length_mm) ** 2
    areas = ring_areas(shade)
    if not np.any((areas > 0) & (areas < least)):
        return shade
    return Outline.gather(piece for piece in pieces(shade) if area(piece) >= least)


def _is_upright(segment: Segment) -> bool:
    chord = segment.end - segment.start
    return abs(chord.y) > abs(chord.x)


def _seen(sides: Sequence[Face], way: Point) -> SetExpression:
    """The upright faces without what level faces in front of them hide."""
    nearer = _in_front(sides, way)
    parts: list[SetExpression] = []
    for i, face in enumerate(sides):
        if face.label:
            hiding = tuple(sides[j].outline for j in np.flatnonzero(nearer[i]).tolist() if not sides[j].label)
            parts.append(Difference(face.outline, hiding) if hiding else face.outline)
    return Union(tuple(parts))


def _in_front(sides: Sequence[Face], way: Point) -> NDArray[np.bool_]:
    """[i, j]: whether face j lies over face i, as the run that comes later along a line of the way does.

    Runs do not cross and each meets such a line once, so that one line through both decides.
    """
    runs = [_across_and_along(face, way) for face in sides]
    nearer = np.zeros((len(runs), len(runs)), dtype=bool)
    for i, j, across in _side_by_side(runs):
        ahead = _along_at(runs[j], across) - _along_at(runs[i], across)
        nearer[i, j], nearer[j, i] = 0 < ahead < abs(way), -abs(way) < ahead < 0
    return nearer


def _across_and_along(face: Face, way: Point) -> Floats:
    """A run's vertices measured across the way and along it, (n, 2), mm; across ascends."""
    unit = way.unit
    frame = Affine(unit.y, unit.x, -unit.x, unit.y)
    vertices = frame.on_array(flatten_path(face.run))
    return vertices if vertices[-1, 0] > vertices[0, 0] else vertices[::-1]


def _along_at(run: Floats, across: float) -> float:
    return float(np.interp(across, run[:, 0], run[:, 1]))


def _side_by_side(runs: Sequence[Floats]) -> Iterator[tuple[int, int, float]]:
    """Pairs of runs that some line of the way meets both, and the middle of those lines."""
    low, high = np.array([run[0, 0] for run in runs]), np.array([run[-1, 0] for run in runs])
    least, most = np.maximum(low[:, None], low), np.minimum(high[:, None], high)
    for i, j in np.argwhere(np.triu(most - least > ALONG_MM, 1)).tolist():
        yield i, j, float(least[i, j] + most[i, j]) / 2
