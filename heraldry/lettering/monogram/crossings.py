"""Letters laid over and under one another, as straps are woven; millimetres.

Where two letters overlap one goes over, and the other is cut back on both sides so that a gap is left. A
*crossing* is a connected part of the ground that both letters cover when each is grown by the gap. Who goes over
is settled once for all crossings:

* where one of the two would go under much more untidily than the other (``cleanness``) it goes over: one that ends in
  the other would only notch it, one with a joint there would be broken at it;
* else crossings that follow each other along a stroke alternate, the nearest first. A letter that is a tree or has
  holes cannot always alternate everywhere; then the farther crossing gives way;
* and where all crossings that alternate could be turned over together, less ink is lost to the gaps, or if it is all
  the same the first letter goes over on top.

All this is settled on flattened letters, for it asks for no curves; only the cuts themselves are made with them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
import shapely

from heraldry.geometry.boolean import Difference, Intersection, SetExpression, combine, pieces, to_polygon
from heraldry.geometry.measure import area
from heraldry.geometry.offset import offset
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.polygons import rings_of
from heraldry.geometry.segments import Path
from heraldry.lettering.monogram.cleanness import Flat, Shapes, untidy

TOUCHING_MM = 1e-3
"""Polygons nearer than this touch: they were cut along one line a moment ago."""

SPARE_OF_GAP = 0.02
"""A cut is made within the ground and so much of a gap round it, which makes up for its chords."""

CRUMB_SHARE = 1e-4
"""A part of less than this share of the ground is rounding, and no part."""

ALIKE_SHARE = 1e-3
"""Losses of ink that differ by less are alike: letters of a symmetrical monogram differ by rounding."""

PLAINER = 0.25
"""A letter goes under where the other one would do so by so much more untidily."""

CRUMB_GAPS = 2.0
"""What interlacing leaves of a letter is at least a square of so many gaps; less is a crumb and left out."""


@dataclass(frozen=True, eq=False)
class Crossing:
    """Where two letters cross: their numbers, the ground that both need, who has to go over, if that is settled."""

    first: int
    second: int
    ground: shapely.Geometry
    over: int | None
    inked: tuple[float, float]
    """How much ground either letter covers, mm²: what is lost of the one that goes under."""


@dataclass(frozen=True, eq=False)
class Settled:
    """A crossing's ground, and the numbers of the letters that go over and under there."""

    ground: shapely.Geometry
    top: int
    under: int


def interlaced(letters: Sequence[Outline], gap_mm: float, stem_mm: float | None = None) -> tuple[Outline, ...]:
    """The letters, each cut back by a gap where another one goes over it; they overlap nowhere.

    A stem is taken to be two gaps thick unless it is told.
    """
    stem = 2 * gap_mm if stem_mm is None else stem_mm
    crossings = _settled([to_polygon(letter) for letter in letters], gap_mm, stem)
    wider = {top: offset(letters[top], gap_mm) for top in sorted({crossing.top for crossing in crossings})}
    least = max(CRUMB_GAPS * gap_mm, stem) ** 2
    apart = []
    for number, letter in enumerate(letters):
        cuts: list[SetExpression] = [
            Intersection((wider[crossing.top], _as_outline(crossing.ground, SPARE_OF_GAP * gap_mm)))
            for crossing in crossings
            if crossing.under == number
        ]
        cut = combine(Difference(letter, tuple(cuts))).outline if cuts else letter
        apart.append(Outline.gather(piece for piece in pieces(cut) if area(piece) >= least))
    return tuple(apart)


def woven(letters: Sequence[shapely.Geometry], gap_mm: float, stem_mm: float) -> Shapes:
    """The same of flattened letters, crumbs and all."""
    grown = Flat.of(letters, gap_mm).grown
    cut = np.array(letters, dtype=object)
    for crossing in _settled(letters, gap_mm, stem_mm):
        taken = shapely.intersection(grown[crossing.top], crossing.ground)
        cut[crossing.under] = shapely.difference(cut[crossing.under], taken)
    return cut


def _as_outline(ground: shapely.Geometry, spare_mm: float) -> Outline:
    rings = rings_of(shapely.buffer(ground, spare_mm, join_style="mitre")).rings
    return Outline.of(Path.through((Point(*xy) for xy in ring.tolist()), closed=True) for ring in rings)


def _settled(letters: Sequence[shapely.Geometry], gap_mm: float, stem_mm: float) -> tuple[Settled, ...]:
    """All crossings, and who goes over at each: links along strokes are satisfied in the order of their length."""
    crossings = tuple(_crossings(letters, gap_mm, stem_mm))
    weave = _Weave(crossings)
    for _, one, two, letter in sorted(_links(letters, crossings)):
        weave.alternate(one, two, letter)
    weave.turn_over()
    return tuple(
        Settled(crossing.ground, top, crossing.first + crossing.second - top)
        for crossing, top in zip(crossings, weave.tops(), strict=True)
    )


def _crossings(letters: Sequence[shapely.Geometry], gap_mm: float, stem_mm: float) -> Iterator[Crossing]:
    flat = Flat.of(letters, gap_mm)
    for first, second in combinations(range(len(letters)), 2):
        pair = np.array([[first], [second]])
        for ground in _downward(shapely.intersection(flat.grown[first], flat.grown[second])):
            inked = [float(shapely.area(shapely.intersection(flat.ink[one], ground))) for one in (first, second)]
            if inked[0] > CRUMB_SHARE * ground.area:
                under = untidy(flat.picked(pair), np.array([ground], dtype=object), stem_mm, gap_mm)
                top = _has_to_go_over(first, second, *under[:, 0].tolist())
                yield Crossing(first, second, ground, top, (inked[0], inked[1]))


def _downward(grounds: shapely.Geometry) -> list[shapely.Geometry]:
    """The connected parts, those higher up first."""
    parts = (part for part in shapely.get_parts(grounds) if part.area > 0)
    return sorted(parts, key=lambda part: (-part.centroid.y, part.centroid.x))


def _has_to_go_over(first: int, second: int, first_under: float, second_under: float) -> int | None:
    """The letter that would go under much more untidily than the other; None where both may."""
    if abs(first_under - second_under) < PLAINER:
        return None
    return first if first_under > second_under else second


def _links(letters: Sequence[shapely.Geometry], crossings: Sequence[Crossing]) -> Iterator[tuple[float, int, int, int]]:
    """Pairs of crossings with a stroke of one letter running between them: (how far, one, two, letter)."""
    places = [shapely.centroid(crossing.ground) for crossing in crossings]
    for number, letter in enumerate(letters):
        mine = [i for i, crossing in enumerate(crossings) if number in (crossing.first, crossing.second)]
        rest = shapely.difference(letter, shapely.union_all([crossings[i].ground for i in mine]))
        for stretch in shapely.get_parts(rest) if mine else ():
            touched = [i for i in mine if shapely.distance(stretch, crossings[i].ground) < TOUCHING_MM]
            for one, two in combinations(touched, 2):
                yield float(shapely.distance(places[one], places[two])), one, two, number


class _Weave:
    """Groups of crossings whose order is settled among themselves; each group can still be turned over as a whole.

    ``_turned`` says of a crossing whether its second letter is over. Crossings that are settled from the start are one
    group, which is never turned.
    """

    def __init__(self, crossings: Sequence[Crossing]) -> None:
        self._crossings = crossings
        settled = len(crossings)
        free = [crossing.over is None for crossing in crossings]
        self._group = [i if is_free else settled for i, is_free in enumerate(free)] + [settled]
        self._turned = [crossing.over == crossing.second for crossing in crossings] + [False]

    def alternate(self, one: int, two: int, letter: int) -> None:
        """Let a letter go over at one crossing and under at the other, unless both are settled together already."""
        if self._group[one] == self._group[two]:
            return
        alike = self._is_first(one, letter) == self._is_first(two, letter)
        turn = (self._turned[one] == self._turned[two]) == alike
        keep, join = sorted((self._group[one], self._group[two]), reverse=True)
        for i, group in enumerate(self._group):
            if group == join:
                self._group[i], self._turned[i] = keep, self._turned[i] != turn

    def turn_over(self) -> None:
        """Turn each group that is free to the side on which less ink is lost, else to where its first one is over."""
        settled = self._group[-1]
        for group in sorted(set(self._group) - {settled}):
            mine = [i for i, owner in enumerate(self._group) if owner == group]
            lost = [sum(self._crossings[i].inked[self._turned[i] == turn] for i in mine) for turn in (False, True)]
            alike = abs(lost[0] - lost[1]) <= ALIKE_SHARE * max(lost)
            if self._turned[mine[0]] if alike else lost[1] < lost[0]:
                for i in mine:
                    self._turned[i] = not self._turned[i]

    def tops(self) -> list[int]:
        """For each crossing the letter that goes over."""
        return [
            crossing.second if turned else crossing.first
            for crossing, turned in zip(self._crossings, self._turned, strict=False)
        ]

    def _is_first(self, crossing: int, letter: int) -> bool:
        return self._crossings[crossing].first == letter
