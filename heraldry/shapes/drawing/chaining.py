"""Loose chains joined end to end until they close.

Ends lie on a grid of cells as wide as they may miss each other, so that each is compared with its neighbours only.
The gap at a joint is closed by moving the later end onto the earlier one.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path, Segment

Cell = tuple[int, int]


def joined(chains: Iterable[Path], reach: float) -> tuple[list[Path], list[Path]]:
    """The rings that chains make where their ends meet within a reach, and the chains that stay open.

    >>> from heraldry.geometry.segments import Line
    >>> sides = [Path((Line(Point(0, 0), Point(4, 0)),)), Path((Line(Point(0, 3), Point(4, 0.001)),)),
    ...          Path((Line(Point(0, 3), Point(0, 0)),)), Path((Line(Point(9, 9), Point(8, 8)),))]
    >>> rings, loose = joined(sides, 0.01)
    >>> [len(ring.segments) for ring in rings], len(loose)
    ([3], 1)
    """
    rings: list[Path] = []
    loose: list[Path] = []
    open_chains: list[Path] = []
    for chain in chains:
        if chain.closed:
            rings.append(chain)
        elif len(chain.segments) > 1 and _meet(chain.segments[-1].end, chain.segments[0].start, reach):
            rings.append(_closed(list(chain.segments)))
        else:
            open_chains.append(chain)
    desk = _Desk(open_chains, reach)
    for i in range(len(open_chains)):
        if desk.take(i):
            segments = desk.grown(list(open_chains[i].segments))
            is_ring = len(segments) > 1 and _meet(segments[-1].end, segments[0].start, reach)
            (rings if is_ring else loose).append(_closed(segments) if is_ring else Path(tuple(segments)))
    return rings, loose


class _Desk:
    """Chains that are not used yet, found by the places of their ends."""

    def __init__(self, chains: Sequence[Path], reach: float) -> None:
        self.chains, self.reach = chains, reach
        self.unused = set(range(len(chains)))
        self.ends: dict[Cell, list[tuple[int, bool]]] = defaultdict(list)
        for i, chain in enumerate(chains):
            self.ends[self._cell(chain.segments[0].start)].append((i, True))
            self.ends[self._cell(chain.segments[-1].end)].append((i, False))

    def take(self, i: int) -> bool:
        """Take a chain off the desk; whether it was still there."""
        if i not in self.unused:
            return False
        self.unused.remove(i)
        return True

    def grown(self, segments: list[Segment]) -> list[Segment]:
        """A chain with others added to its end until it closes or nothing fits; then to its start, turned round."""
        self._grow(segments)
        if not _meet(segments[-1].end, segments[0].start, self.reach):
            segments[:] = [segment.reversed() for segment in reversed(segments)]
            self._grow(segments)
        return segments

    def _grow(self, segments: list[Segment]) -> None:
        while len(segments) < 2 or not _meet(segments[-1].end, segments[0].start, self.reach):
            found = next(self._at(segments[-1].end), None)
            if found is None:
                return
            i, is_start = found
            self.unused.remove(i)
            chain = self.chains[i] if is_start else self.chains[i].reversed()
            segments.append(replace(chain.segments[0], start=segments[-1].end))
            segments.extend(chain.segments[1:])

    def _at(self, place: Point) -> Iterator[tuple[int, bool]]:
        """Unused chains with an end at a place, and whether that end is their start; the nearest first."""
        x, y = self._cell(place)
        near = [end for dx in (-1, 0, 1) for dy in (-1, 0, 1) for end in self.ends.get((x + dx, y + dy), ())]
        fitting = [(abs(self._end(*end) - place), end) for end in near if end[0] in self.unused]
        yield from (end for distance, end in sorted(fitting) if distance <= self.reach)

    def _end(self, i: int, is_start: bool) -> Point:
        segments = self.chains[i].segments
        return segments[0].start if is_start else segments[-1].end

    def _cell(self, place: Point) -> Cell:
        return math.floor(place.x / self.reach), math.floor(place.y / self.reach)


def _meet(one: Point, two: Point, reach: float) -> bool:
    return abs(one - two) <= reach


def _closed(segments: list[Segment]) -> Path:
    """A ring of segments whose last end is moved onto the first start."""
    segments[-1] = replace(segments[-1], end=segments[0].start)
    return Path(tuple(segments), closed=True)
