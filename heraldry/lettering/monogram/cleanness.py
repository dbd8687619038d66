"""How cleanly letters part where they cross; flattened letters, millimetres.

The *ground* of a crossing is a connected part of what both letters cover when each is grown by the gap. A letter goes
under cleanly where both are plain strokes and each would be parted in two by the other, at an angle that is not too
flat, away from every joint, with a good stub left over on either side. Elsewhere it is left with a notch, a spike or a
crumb, and the other one had better go under, or the letters stand elsewhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray

from heraldry.geometry.point import Point
from heraldry.lettering.monogram.clash import joints_of

Shapes = NDArray[np.object_]
Numbers = NDArray[np.float64]

ROUND_STEMS = 0.4
"""How much of the letters round the ground is looked at to see whether they are parted there."""

CLEAR_STEMS = 1.2
"""A joint so many stems away from the ground is out of the way."""

JOINT_ABOVE = 0.6
"""A joint of the letter that goes over, beside one of the letter that is cut: it makes the cut crooked."""

CORNER_CHORDS = 8
"""Chords to a quarter turn where letters are grown by the gap: half a hundredth of it off."""

ROUND_CHORDS = 2
"""The same round a ground, where it does not matter."""

ENDS, NOTCHED, NEITHER = 0.4, 1.6, 2.2
"""One that ends in the other and goes under is tidy enough; one that the other's end lies on is notched; where both end,
corner on corner, either is spoilt."""

OBLIQUE, FLAT = 1.3, 2.3
"""Ground in that of a crossing at a right angle: what is still fair, and what is all spikes."""

CRUMB_STEMS, STUB_STEMS = 2.0, 4.0
"""What is left over is a crumb below so many square stems, and a good stub from so many on."""

ROUNDING_STEMS = 0.02
"""A part of less than so many square stems is rounding."""


@dataclass(frozen=True, eq=False)
class Flat:
    """Letters to be looked at, each flattened, grown by the gap, and its joints; arrays of one shape."""

    ink: Shapes
    grown: Shapes
    joints: Shapes

    @classmethod
    def of(cls, letters: Sequence[shapely.Geometry], gap_mm: float) -> Flat:
        """Letters as they are given."""
        ink = np.array(letters, dtype=object)
        return cls(
            ink,
            np.asarray(shapely.buffer(ink, gap_mm, quad_segs=CORNER_CHORDS)),
            np.array([shapely.multipoints(joints_of(letter)) for letter in letters], dtype=object),
        )

    def at(self, places: Sequence[Point]) -> Flat:
        """One letter moved to each of several places."""
        return Flat(*(moved_to(shapes[0], places) for shapes in (self.ink, self.grown, self.joints)))

    def picked(self, which: NDArray[np.int64]) -> Flat:
        """Some of the letters, in the order and the shape of their numbers."""
        return Flat(self.ink[which], self.grown[which], self.joints[which])

    def over(self, other: Flat) -> Flat:
        """These and others as pairs: arrays (2, n)."""
        return Flat(
            np.stack([self.ink, other.ink]),
            np.stack([self.grown, other.grown]),
            np.stack([self.joints, other.joints]),
        )


def untidy(pairs: Flat, grounds: Shapes, stem_mm: float, gap_mm: float) -> Numbers:
    """How badly each of two letters goes under the other at each ground, 0 is clean; all arrays are (2, n)."""
    near = shapely.buffer(grounds, ROUND_STEMS * stem_mm, quad_segs=ROUND_CHORDS)
    strokes = shapely.intersection(pairs.ink, near)
    parted = _counted(shapely.difference(strokes, pairs.grown[::-1]), stem_mm) > _counted(strokes, stem_mm)
    ending = np.select([parted & parted[::-1], parted, parted[::-1]], [0.0, NOTCHED, ENDS], NEITHER)
    apart = np.nan_to_num(shapely.distance(pairs.joints, grounds), nan=np.inf)
    jointed = np.clip(1.0 - apart / (CLEAR_STEMS * stem_mm), 0.0, 1.0)
    spread = shapely.area(grounds) / (stem_mm + 2 * gap_mm) ** 2
    flat = np.clip((spread - OBLIQUE) / (FLAT - OBLIQUE), 0.0, 2.0)
    left = shapely.difference(pairs.ink, grounds)
    return np.asarray(ending + jointed + JOINT_ABOVE * jointed[::-1] + flat + _worst_stub(left, stem_mm))


def _counted(shapes: Shapes, stem_mm: float) -> NDArray[np.int64]:
    """How many parts each has, those that are mere rounding left out."""
    parts, owner = shapely.get_parts(shapes.ravel(), return_index=True)
    real = owner[shapely.area(parts) > ROUNDING_STEMS * stem_mm**2]
    return np.bincount(real, minlength=shapes.size).reshape(shapes.shape)


def _worst_stub(left: Shapes, stem_mm: float) -> Numbers:
    """How much too small the smallest piece of each is: 1 for a crumb, 0 for a good stub."""
    small, owner = _smallness(left, stem_mm)
    worst = np.zeros(left.size)
    np.maximum.at(worst, owner, small)
    return worst.reshape(left.shape)


def crumbs(left: Shapes, stem_mm: float) -> Numbers:
    """How much too small the pieces of each are, summed."""
    small, owner = _smallness(left, stem_mm)
    return _summed(owner, small, left.size).reshape(left.shape)


def _summed(owner: NDArray[np.int64], values: Numbers, count: int) -> Numbers:
    return np.bincount(owner, weights=values, minlength=count).astype(np.float64)


def _smallness(left: Shapes, stem_mm: float) -> tuple[Numbers, NDArray[np.int64]]:
    parts, owner = shapely.get_parts(left.ravel(), return_index=True)
    size = shapely.area(parts) / stem_mm**2
    small = np.clip((STUB_STEMS - size) / (STUB_STEMS - CRUMB_STEMS), 0.0, 1.0)
    return np.where(size > ROUNDING_STEMS, small, 0.0), owner


@dataclass(frozen=True, eq=False)
class Look:
    """What a pair of letters looks like in each of several places; each figure is an array, one number a place."""

    crossings: Numbers
    """Crossings at which one letter goes cleanly under the other."""
    apart: NDArray[np.bool_]
    """Whether the letters do not come together at all."""
    untidy: Numbers
    """How untidy crossings are, summed."""
    crumbs: Numbers
    """How much too small the pieces are that would be left of either letter, went it under everywhere."""
    lost: Numbers
    """Ink that lies on ink or within a gap of it, in square stems, both letters together."""


def looks(
    standing: shapely.Geometry, moving: shapely.Geometry, places: Sequence[Point], stem_mm: float, gap_mm: float
) -> Look:
    """Both letters have the middle of their ink at the origin; the second is moved to each place."""
    count = len(places)
    here = Flat.of([standing], gap_mm).picked(np.zeros(count, dtype=np.int64))
    there = Flat.of([moving], gap_mm).at(places)
    ground, owner = shapely.get_parts(shapely.intersection(here.grown, there.grown), return_index=True)
    real = shapely.area(ground) > ROUNDING_STEMS * stem_mm**2
    ground, owner = ground[real], owner[real]
    under = untidy(here.picked(owner).over(there.picked(owner)), ground, stem_mm, gap_mm).min(axis=0)
    left = [shapely.difference(here.ink, there.grown), shapely.difference(there.ink, here.grown)]
    whole = shapely.area(standing) + shapely.area(moving)
    return Look(
        crossings=_summed(owner, np.clip(1.0 - 2 * under, 0.0, 1.0), count),
        apart=np.bincount(owner, minlength=count) == 0,
        untidy=_summed(owner, under, count),
        crumbs=crumbs(left[0], stem_mm) + crumbs(left[1], stem_mm),
        lost=np.asarray(whole - shapely.area(left[0]) - shapely.area(left[1])) / stem_mm**2,
    )


def moved_to(shape: shapely.Geometry, places: Sequence[Point]) -> Shapes:
    """A shape at each of several places."""
    copies = np.repeat(np.asarray([shape], dtype=object), len(places))
    xy, owner = shapely.get_coordinates(copies, return_index=True)
    shifts = np.array([[place.x, place.y] for place in places])
    return np.asarray(shapely.set_coordinates(copies, xy + shifts[owner]))
