"""The last two looks at a fit: are its joints smooth, and does every curve keep near the polyline?"""

from __future__ import annotations

import numpy as np

from heraldry.geometry.fit.polyline import Floats, Places, Polyline
from heraldry.geometry.fit.search import Pieces
from heraldry.geometry.fit.trial import Spans, try_cubics
from heraldry.geometry.flatten import divide
from heraldry.geometry.outline import ARC, CUBIC, LINE, Outline
from heraldry.geometry.segments import Path

CHECK_SHARE = 0.05
"""A curve is checked at points this share of the tolerance off at most."""


def joined_smoothly(polyline: Polyline, pieces: Pieces, tolerance_mm: float) -> Pieces:
    """Let cubics leave and arrive along the lines and arcs beside them, where that keeps to the tolerance."""
    cubic = np.flatnonzero(pieces.kinds == CUBIC)
    if not len(cubic):
        return pieces
    leaving, arriving = _end_directions(pieces)
    before, behind = np.roll(arriving, 1)[cubic], np.roll(leaving, -1)[cubic]
    first, last = pieces.first[cubic], pieces.last[cubic]
    keep_start, keep_end = polyline.is_corner[first], polyline.is_corner[last]
    spans = Spans.of(
        polyline,
        first,
        last,
        np.where(keep_start, polyline.leaving[first], before),
        np.where(keep_end, polyline.arriving[last], behind),
    )
    fits, rows = try_cubics(spans, tolerance_mm)
    data = pieces.data.copy()
    data[cubic[fits]] = rows[fits]
    return Pieces(pieces.kinds, data, pieces.first, pieces.last)


def kept_near(polyline: Polyline, pieces: Pieces, limit_mm: float) -> Path:
    """The pieces as a path, those that stray farther than the limit replaced by their chords."""
    kinds: list[np.ndarray[tuple[int], np.dtype[np.uint8]]] = []
    data: list[Floats] = []
    strays = _strays(polyline, pieces, limit_mm)
    for i, stray in enumerate(strays.tolist()):
        ends = polyline.vertices[pieces.first[i] : pieces.last[i] + 1]
        chords = np.stack((ends[:-1], ends[:-1], ends[1:], ends[1:]), axis=1)
        kinds.append(np.full(len(chords), LINE, dtype=np.uint8) if stray else pieces.kinds[i : i + 1])
        data.append(np.stack((chords.real, chords.imag), axis=-1) if stray else pieces.data[i : i + 1])
    if not polyline.closed:
        kinds.append(np.array([LINE], dtype=np.uint8))
        data.append(np.array([[data[-1][-1, 3], data[-1][-1, 3], data[0][0, 0], data[0][0, 0]]]))
    table = np.concatenate(data)
    (ring,) = Outline(np.concatenate(kinds), table, np.array([0, len(table)], dtype=np.int64)).paths
    return ring if polyline.closed else Path(ring.segments[:-1])


def _end_directions(pieces: Pieces) -> tuple[Places, Places]:
    """Unit tangents with which the pieces leave and arrive."""
    places: Places = pieces.data[..., 0] + 1j * pieces.data[..., 1]
    chord = places[:, 3] - places[:, 0]
    leaving = np.where(pieces.kinds == CUBIC, places[:, 1] - places[:, 0], chord)
    arriving = np.where(pieces.kinds == CUBIC, places[:, 3] - places[:, 2], chord)
    half = np.where(pieces.kinds == ARC, pieces.data[:, 2, 1] / 2, 0.0)
    leaving, arriving = leaving * np.exp(-1j * half), arriving * np.exp(1j * half)
    return np.asarray(leaving / np.abs(leaving)), np.asarray(arriving / np.abs(arriving))


def _strays(polyline: Polyline, pieces: Pieces, limit_mm: float) -> np.ndarray[tuple[int], np.dtype[np.bool_]]:
    """Which pieces have a point farther from their part of the polyline than the limit."""
    walked = divide(pieces.kinds, pieces.data, CHECK_SHARE * limit_mm)
    places = walked.xy[:, 0] + 1j * walked.xy[:, 1]
    bounds = np.searchsorted(walked.owner, np.arange(len(pieces.kinds) + 1))
    strays = np.zeros(len(pieces.kinds), dtype=bool)
    for i in np.flatnonzero(pieces.kinds != LINE):
        chain = polyline.vertices[pieces.first[i] : pieces.last[i] + 1]
        strays[i] = _farthest(places[bounds[i] : bounds[i + 1]], chain) > limit_mm
    return strays


def _farthest(places: Places, chain: Places) -> float:
    """How far the farthest of some places is from a chain of chords."""
    start, chord = chain[:-1], np.diff(chain)
    along = np.clip(((places[:, None] - start) / chord).real, 0.0, 1.0)
    return float(np.abs(places[:, None] - start - along * chord).min(axis=1).max())
