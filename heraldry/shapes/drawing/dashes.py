"""Chains cut into dashes by their own length; any unit, so long as chain and pattern share it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from heraldry.errors import GeometryError
from heraldry.geometry.measure.lengths import Pieces, length, lengths_until, pieces
from heraldry.geometry.outline import CUBIC, Outline, segment_of
from heraldry.geometry.point import Point
from heraldry.geometry.restore.curves import Curves, Floats, Ints
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment

MOST_DASHES = 2_000
"""Dashes of one chain; finer ones are a tint, and no line that could be cut or printed."""

HALVINGS = 50
"""Halvings of a cubic's parameter on the way to a length: down to rounding."""


def dashed(path: Path, pattern: Sequence[float], offset: float) -> list[Path]:
    """The dashes of a chain: on and off by turns, ``offset`` into the pattern at its start.

    On a closed chain a dash that ends where it began goes on through the start. Raises GeometryError for too many.
    """
    total = length(path)
    period = sum(pattern)
    if not total > 0:
        return [path]
    if total / period * len(pattern) > 2 * MOST_DASHES:
        raise GeometryError(
            f"a line has {total / period * len(pattern) / 2:,.0f} dashes, at most {MOST_DASHES:,} are drawn"
        )
    spans = _spans(total, pattern, offset % period)
    if not spans:
        return []
    if spans == [(0.0, total)]:
        return [path]
    dashes = _cut(path, spans)
    if path.closed and len(dashes) > 1 and spans[0][0] == 0.0 and spans[-1][1] == total:
        first, last = dashes[0], dashes.pop()
        onward = replace(first.segments[0], start=last.segments[-1].end)
        dashes[0] = Path((*last.segments, onward, *first.segments[1:]))
    return dashes


def _spans(total: float, pattern: Sequence[float], start: float) -> list[tuple[float, float]]:
    """From where to where each dash goes; one of no length is a dot."""
    spans, at, number = [], -start, 0
    while at < total:
        end = at + pattern[number % len(pattern)]
        if number % 2 == 0 and end >= 0 and (end > 0 or at == end):
            spans.append((max(at, 0.0), min(end, total)))
        at, number = end, number + 1
    return spans


def _cut(path: Path, spans: Sequence[tuple[float, float]]) -> list[Path]:
    """The chain between pairs of lengths."""
    rows = pieces(Outline.of([path]))
    marks = np.concatenate(([0.0], np.cumsum(rows.lengths)))
    starts, ends = np.array(spans).T
    first = np.clip(np.searchsorted(marks, starts, side="right") - 1, 0, len(rows.kinds) - 1)
    last = np.clip(np.searchsorted(marks, ends, side="left") - 1, first, len(rows.kinds) - 1)
    t0, t1 = _parameters(rows, first, starts - marks[first]), _parameters(rows, last, ends - marks[last])
    chains = zip(first.tolist(), last.tolist(), t0.tolist(), t1.tolist(), strict=True)
    return [_chain(rows, *chain) for chain in chains]


def _parameters(rows: Pieces, at: Ints, lengths: Floats) -> Floats:
    """The parameters at which segments have run some of their length."""
    shares = np.clip(lengths / np.where(rows.lengths[at] > 0, rows.lengths[at], 1.0), 0.0, 1.0)
    cubic = (rows.kinds[at] == CUBIC) & (shares > 0.0) & (shares < 1.0)
    data = rows.data[at[cubic]]
    low, high = np.zeros(len(data)), np.ones(len(data))
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        short = lengths_until(data, middle) < lengths[cubic]
        low, high = np.where(short, middle, low), np.where(short, high, middle)
    shares[cubic] = (low + high) / 2
    return np.asarray(shares)


def _chain(rows: Pieces, first: int, last: int, t0: float, t1: float) -> Path:
    """The chain from a parameter of one segment to a parameter of another."""
    found: list[Segment] = []
    for i in range(first, last + 1):
        part = _part(_segment(rows, i), t0 if i == first else 0.0, t1 if i == last else 1.0)
        if part.start != part.end:
            found.append(replace(part, start=found[-1].end) if found else part)
    if not found:
        at = _segment(rows, first).at(t0)
        found.append(Line(at, at))
    return Path(tuple(found))


def _segment(rows: Pieces, i: int) -> Segment:
    return segment_of(int(rows.kinds[i]), rows.data[i].tolist())


def _part(segment: Segment, t0: float, t1: float) -> Segment:
    """A segment between two of its parameters."""
    if (t0, t1) == (0.0, 1.0):
        return segment
    match segment:
        case Arc():
            return Arc(segment.at(t0), segment.at(t1), segment.centre, segment.radius, segment.sweep_rad * (t1 - t0))
        case Cubic():
            controls = np.array(
                [[tuple(segment.start), tuple(segment.control1), tuple(segment.control2), tuple(segment.end)]]
            )
            cut = Curves(np.array([CUBIC], np.uint8), controls).cubic_between(np.array([t0]), np.array([t1]))
            return Cubic(*(Point(x, y) for x, y in cut[0].tolist()))
    return Line(segment.at(t0), segment.at(t1))
