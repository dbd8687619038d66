"""Letters laid over and under one another, as straps are woven; millimetres.

Where two letters overlap one goes over, and the other is cut back on both sides so that a gap is left. A
*crossing* is a connected part of the ground that both letters cover when each is grown by the gap. Who goes over
is settled once for all crossings:

* where one of the two ends in the other it goes under, for over it would merely notch the other. It ends there if the
  other cannot be cut in two by it; or if neither is cut, and its edge within the other, round its end, is the longer;
* else crossings that follow each other along a stroke alternate, the nearest first. A letter that is a tree or has
  holes cannot always alternate everywhere; then the farther crossing gives way.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from heraldry.geometry.boolean import Difference, Intersection, SetExpression, combine, intersect, pieces, subtract
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import area, centroid, perimeter
from heraldry.geometry.offset import offset
from heraldry.geometry.outline import Outline

TOUCHING_MM = 1e-3
"""Outlines nearer than this touch: they were cut along one line a moment ago, to 0.1 µm."""

ENDING = 1.2
"""A stroke ends in another where its edge within the other is so much longer than the other's within it."""

CRUMB_GAPS = 2.0
"""What interlacing leaves of a letter is at least a square of so many gaps; less is a crumb and left out."""


@dataclass(frozen=True, eq=False)
class Crossing:
    """Where two letters cross: their numbers, the ground between them, and who has to go over, if that is settled."""

    first: int
    second: int
    ground: Outline
    over: int | None


def interlaced(letters: Sequence[Outline], gap_mm: float) -> tuple[Outline, ...]:
    """The letters, each cut back by a gap where another one goes over it; they overlap nowhere."""
    grown = [offset(letter, gap_mm) for letter in letters]
    crossings = tuple(_crossings(letters, grown, gap_mm))
    over = _who_goes_over(letters, crossings)
    least = (CRUMB_GAPS * gap_mm) ** 2
    woven = []
    for number, letter in enumerate(letters):
        cuts: list[SetExpression] = [
            Intersection((grown[top], crossing.ground))
            for crossing, top in zip(crossings, over, strict=True)
            if number in (crossing.first, crossing.second) and top != number
        ]
        cut = combine(Difference(letter, tuple(cuts))).outline if cuts else letter
        woven.append(Outline.gather(piece for piece in pieces(cut) if area(piece) >= least))
    return tuple(woven)


def _crossings(letters: Sequence[Outline], grown: Sequence[Outline], gap_mm: float) -> Iterator[Crossing]:
    for first, second in combinations(range(len(letters)), 2):
        for ground in pieces(intersect(grown[first], grown[second])):
            if not intersect(letters[first], grown[second], ground).is_empty:
                near = offset(ground, gap_mm)
                yield Crossing(first, second, ground, _settled(first, second, letters, near))


def _settled(first: int, second: int, letters: Sequence[Outline], near: Outline) -> int | None:
    """The letter that has to go over, since the other one ends in it; None where they cross."""
    parts = {number: intersect(letters[number], near) for number in (first, second)}
    cut = {one: subtract(parts[one], letters[other]) for one, other in ((first, second), (second, first))}
    in_two = {number: len(pieces(cut[number])) > len(pieces(parts[number])) for number in parts}
    if in_two[first] != in_two[second]:
        return second if in_two[first] else first
    both = perimeter(intersect(parts[first], parts[second]))
    inside = {
        one: (both + perimeter(cut[other]) - perimeter(parts[other])) / 2
        for one, other in ((first, second), (second, first))
    }
    for one, other in ((first, second), (second, first)):
        if not in_two[first] and inside[one] > ENDING * inside[other]:
            return other
    return None


def _who_goes_over(letters: Sequence[Outline], crossings: Sequence[Crossing]) -> list[int]:
    """For each crossing the letter on top: links along strokes are satisfied in the order of their length."""
    weave = _Weave(crossings)
    for _, one, two, letter in sorted(_links(letters, crossings)):
        weave.alternate(one, two, letter)
    return weave.tops()


def _links(letters: Sequence[Outline], crossings: Sequence[Crossing]) -> Iterator[tuple[float, int, int, int]]:
    """Pairs of crossings with a stroke of one letter running between them: (how far, one, two, letter)."""
    places = [centroid(crossing.ground) for crossing in crossings]
    for number, letter in enumerate(letters):
        mine = [i for i, crossing in enumerate(crossings) if number in (crossing.first, crossing.second)]
        for stretch in pieces(subtract(letter, *(crossings[i].ground for i in mine))) if mine else ():
            touched = [i for i in mine if distance(stretch, crossings[i].ground) < TOUCHING_MM]
            for one, two in combinations(touched, 2):
                yield abs(places[one] - places[two]), one, two, number


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

    def tops(self) -> list[int]:
        """For each crossing the letter that goes over."""
        return [
            crossing.second if turned else crossing.first
            for crossing, turned in zip(self._crossings, self._turned, strict=False)
        ]

    def _is_first(self, crossing: int, letter: int) -> bool:
        return self._crossings[crossing].first == letter
