"""The longest piece, again and again: from each corner the farthest vertex that one segment reaches.

All stretches between corners are walked side by side, so that each round tries many spans in one batch:
first ever longer ones, then those between the longest that fits and the shortest that does not.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np

from heraldry.geometry.fit.polyline import Floats, Indices, Polyline
from heraldry.geometry.fit.trial import NONE, Spans, Tried, try_spans
from heraldry.geometry.outline import LINE

FIRST_GUESS = 8
"""Vertices in a piece, before any has been found."""

STRIDES = (0.5, 0.75, 1.0, 1.35, 2.0, 3.0, 5.0)
"""Lengths tried at once, in those of the piece before: neighbours are alike."""

BETWEEN = 7
"""Lengths tried at once between one that fits and one that does not: three rounds settle 512."""


@dataclass(frozen=True, eq=False)
class Pieces:
    """Segments in order along a polyline: kinds and rows as in ``Outline``, and the vertices they join."""

    kinds: np.ndarray[tuple[int], np.dtype[np.uint8]]
    data: Floats
    first: Indices
    last: Indices


@dataclass
class _Walk:
    """The way through one stretch: where it stands, and what is known about the next piece."""

    place: int
    stop: int
    guess: int = FIRST_GUESS
    fits: int = 1
    fails: int | None = None
    row: tuple[int, Floats] | None = None
    found: list[tuple[int, Floats, int, int]] = field(default_factory=list)

    def asks(self) -> list[int]:
        """The lengths to try next; none when the longest is known."""
        most = self.stop - self.place
        if self.fails is None:
            strides = (min(max(round(self.guess * stride), 2), most) for stride in STRIDES)
            return sorted({length for length in strides if length > self.fits})
        between = np.linspace(self.fits, self.fails, min(BETWEEN, self.fails - self.fits - 1) + 2)
        return sorted({round(length) for length in between[1:-1].tolist()})

    def learns(self, lengths: list[int], tried: Tried, at: int) -> None:
        """Take note of the rows from ``at`` on, which are those of the lengths."""
        for i, length in enumerate(lengths, start=at):
            if tried.kinds[i] != NONE:
                self.fits, self.row = length, (int(tried.kinds[i]), tried.data[i])
        longer = [length for i, length in enumerate(lengths, start=at) if tried.kinds[i] == NONE]
        known = [self.fails] if self.fails is not None else []
        self.fails = min((length for length in longer + known if length > self.fits), default=None)
        self.guess = max(self.guess, self.fits)

    def takes(self, polyline: Polyline) -> None:
        """The piece is settled: go on from its end."""
        end = self.place + self.fits
        kind, row = self.row or (LINE, _chord_row(polyline, self.place))
        self.found.append((kind, row, self.place, end))
        self.place, self.guess, self.fits, self.fails, self.row = end, self.fits, 1, None, None


def longest_pieces(polyline: Polyline, tolerance_mm: float) -> Pieces:
    """Pieces that stay within a tolerance of the polyline, as long as can be."""
    corners = np.flatnonzero(polyline.is_corner).tolist()
    stops = sorted({0, *corners, len(polyline.vertices) - 1})
    walks = [_Walk(first, last) for first, last in pairwise(stops)]
    active = walks
    while active:
        questions = [walk.asks() for walk in active]
        _answer(polyline, active, questions, tolerance_mm)
        for walk, lengths in zip(active, questions, strict=True):
            if not lengths:
                walk.takes(polyline)
        active = [walk for walk in active if walk.place < walk.stop]
    kinds, rows, first, last = zip(*(piece for walk in walks for piece in walk.found), strict=True)
    return Pieces(np.array(kinds, dtype=np.uint8), np.stack(rows), np.array(first), np.array(last))


def _answer(polyline: Polyline, walks: list[_Walk], questions: list[list[int]], tolerance_mm: float) -> None:
    """Try all spans in question in one batch."""
    asked = zip(walks, questions, strict=True)
    spans = [(walk.place, walk.place + length) for walk, lengths in asked for length in lengths]
    if not spans:
        return
    first, last = np.array(spans).T
    with np.errstate(divide="ignore", invalid="ignore"):  # a span that ends where it began has no frame
        tried = try_spans(Spans.of(polyline, first, last), tolerance_mm)
    at = 0
    for walk, lengths in zip(walks, questions, strict=True):
        if lengths:
            walk.learns(lengths, tried, at)
        at += len(lengths)


def _chord_row(polyline: Polyline, first: int) -> Floats:
    ends = polyline.vertices[[first, first, first + 1, first + 1]]
    return np.stack((ends.real, ends.imag), axis=1)
