"""Many spans of a polyline tried at once: is it a line, an arc, or a cubic within the tolerance?

Every span is looked at in its own frame, its first vertex at 0 and its last at 1 (complex numbers), so that
one set of formulas serves all. The samples of all spans lie end to end in flat arrays; sums and maxima are
taken by span.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from heraldry.geometry.fit.polyline import Floats, Indices, Mask, Places, Polyline
from heraldry.geometry.outline import ARC, CUBIC, LINE

NONE = 255
"""The kind of a span that nothing fits."""

KINK_RAD = math.radians(2.0)
"""A line or an arc may leave the tangent of a smooth joint by this and by what the polyline itself turns there; a
cubic by nothing."""

STEEPEST_RAD = math.radians(100.0)
"""A cubic's ends may turn from its chord by this: beyond it, loops come in and the fit goes astray."""

ALONG = 0.1
"""What a gap along the curve counts after the first round of least squares. With 1 dozens of rounds are needed;
with 0 three suffice, but at rough coasts the handles run away; a tenth needed the fewest segments on both."""

REFINEMENTS = 3
"""Rounds of least squares after the first; a fourth spares one segment in fifty."""

SMALLEST_SPEED = 1e-9
"""In chords: a curve that stands still has no direction; equations that differ less than this have no solution."""

FULLEST_ARC_RAD = math.radians(350.0)
"""Fuller arcs start and end too near each other to be told from their areas."""

# Area between a unit chord and an arc over it, against the arc's angle: (θ − sin θ) / (8 sin²(θ/2)). It grows
# steadily, so its inverse is read from a table; 8192 entries give the angle to 1e-6.
_ANGLES = np.linspace(0.0, FULLEST_ARC_RAD, 8192)[1:]
_BOW_AREAS = (_ANGLES - np.sin(_ANGLES)) / (8 * np.sin(_ANGLES / 2) ** 2)


@dataclass(frozen=True, eq=False)
class Tried:
    """What fits each span: its kind, or ``NONE``, and its row as in ``Outline``."""

    kinds: np.ndarray[tuple[int], np.dtype[np.uint8]]
    data: Floats

    def replaced(self, where: Indices, kind: int, rows: Floats) -> None:
        """Enter one kind's rows at places."""
        self.kinds[where] = kind
        self.data[where] = rows


@dataclass(frozen=True, eq=False)
class Spans:
    """Spans from vertex ``first`` to vertex ``last`` with their end tangents, and all their samples."""

    polyline: Polyline
    first: Indices
    last: Indices
    leaving: Places
    arriving: Places
    owner: Indices
    start: Indices
    """Where each span's samples begin in the flat arrays."""
    local: Places
    """The samples in their span's frame."""

    @staticmethod
    def of(
        polyline: Polyline,
        first: Indices,
        last: Indices,
        leaving: Places | None = None,
        arriving: Places | None = None,
    ) -> Spans:
        """Gather the samples; tangents are the polyline's where none are given."""
        low, high = polyline.sample_of[first], polyline.sample_of[last]
        counts = high - low + 1
        start = np.cumsum(counts) - counts
        owner = np.repeat(np.arange(len(first)), counts)
        index = np.arange(len(owner)) - start[owner] + low[owner]
        origin, chord = polyline.vertices[first], polyline.vertices[last] - polyline.vertices[first]
        local = (polyline.samples[index] - origin[owner]) / chord[owner]
        return Spans(
            polyline,
            first,
            last,
            polyline.leaving[first] if leaving is None else leaving,
            polyline.arriving[last] if arriving is None else arriving,
            owner,
            start,
            local,
        )

    @property
    def chord(self) -> Places:
        """From first to last vertex."""
        return np.asarray(self.polyline.vertices[self.last] - self.polyline.vertices[self.first])

    def chosen(self, which: Mask) -> Spans:
        """Only some of the spans."""
        polyline, first, last = self.polyline, self.first[which], self.last[which]
        return Spans.of(polyline, first, last, self.leaving[which], self.arriving[which])

    def total(self, values: Floats) -> Floats:
        """Sums by span."""
        return np.asarray(np.add.reduceat(values, self.start))

    def worst(self, values: Floats) -> Floats:
        """Maxima by span."""
        return np.asarray(np.maximum.reduceat(values, self.start))

    def row(self, one: Places, two: Places) -> Floats:
        """Rows whose inner places are given in the plane."""
        ends = self.polyline.vertices[self.first], self.polyline.vertices[self.last]
        places = np.stack((ends[0], one, two, ends[1]), axis=1)
        return np.stack((places.real, places.imag), axis=-1)

    def is_true_to_tangents(self, bow_rad: Floats) -> Mask:
        """Whether arcs of these signed angles (0: lines) keep to the tangents, except at corners."""
        start = np.angle(self.leaving / self.chord) + bow_rad / 2
        end = np.angle(self.arriving / self.chord) - bow_rad / 2
        allowed = np.where(self.polyline.is_corner, np.inf, self.polyline.turns_rad + KINK_RAD)
        at_start = np.abs(_wrapped(start)) <= allowed[self.first]
        return at_start & (np.abs(_wrapped(end)) <= allowed[self.last])


def try_spans(spans: Spans, tolerance_mm: float) -> Tried:
    """The simplest of line, arc and cubic that stays within the tolerance of each span."""
    tried = Tried(np.full(len(spans.first), NONE, dtype=np.uint8), np.zeros((len(spans.first), 4, 2)))
    left = np.arange(len(spans.first))
    for kind, attempt in ((LINE, try_lines), (ARC, try_arcs), (CUBIC, try_cubics)):
        if not len(left):
            break
        fits, rows = attempt(spans, tolerance_mm)
        tried.replaced(left[fits], kind, rows[fits])
        left, spans = left[~fits], spans.chosen(~fits) if not np.all(fits) else spans
    return tried


def try_lines(spans: Spans, tolerance_mm: float) -> tuple[Mask, Floats]:
    """Straight from end to end."""
    size = np.abs(spans.chord)
    beside = spans.worst(np.abs(spans.local.imag)) * size
    beyond = spans.worst(np.maximum(-spans.local.real, spans.local.real - 1)) * size
    fits = (beside <= tolerance_mm) & (beyond <= tolerance_mm)
    fits &= spans.is_true_to_tangents(np.zeros(len(size)))
    fits |= spans.last - spans.first == 1
    return fits, spans.row(spans.polyline.vertices[spans.first], spans.polyline.vertices[spans.last])


def try_arcs(spans: Spans, tolerance_mm: float) -> tuple[Mask, Floats]:
    """The arc over each chord that holds the same area as the span."""
    size = np.abs(spans.chord)
    area = spans.total(np.append((spans.local[:-1].conj() * spans.local[1:]).imag, 0.0) * _inside(spans)) / 2
    angle = np.copysign(np.interp(np.abs(area), _BOW_AREAS, _ANGLES), area)
    half = angle / 2
    centre, radius = 0.5 + 0.5j / np.tan(half), 0.5 / np.abs(np.sin(half))
    spoke = spans.local - centre[spans.owner]
    beside = spans.worst(np.abs(np.abs(spoke) - radius[spans.owner])) * size
    turned = np.angle(spoke / -centre[spans.owner] * np.exp(-1j * half[spans.owner]))
    beyond = (spans.worst(np.abs(turned)) - np.abs(half)) * radius * size
    fits = (beside <= tolerance_mm) & (beyond <= tolerance_mm) & (np.abs(area) < _BOW_AREAS[-1])
    fits &= (np.abs(area) > _BOW_AREAS[0]) & spans.is_true_to_tangents(angle)
    origin = spans.polyline.vertices[spans.first]
    return fits, spans.row(origin + centre * spans.chord, radius * size + 1j * angle)


def try_cubics(spans: Spans, tolerance_mm: float) -> tuple[Mask, Floats]:
    """The cubic with the given end tangents that comes nearest to each span by least squares."""
    size, owner = np.abs(spans.chord), spans.owner
    leave, arrive = spans.leaving / spans.chord * size, spans.arriving / spans.chord * size
    way = np.abs(np.diff(spans.local, prepend=0)) * np.append(False, _inside(spans)[:-1])
    run = np.cumsum(way)
    run -= run[spans.start][owner]
    long = spans.worst(run)
    t = run / long[owner]
    reach, pull = _handles(spans, t, leave, arrive, None)
    for _ in range(REFINEMENTS):
        one, two = reach * leave, 1 - pull * arrive
        t = _nearer(t, spans.local, one[owner], two[owner])
        reach, pull = _handles(spans, t, leave, arrive, 1j * _speed(t, one[owner], two[owner]))
    one, two = reach * leave, 1 - pull * arrive
    t = _nearer(t, spans.local, one[owner], two[owner])
    beside = spans.worst(np.abs(_on_cubic(t, one[owner], two[owner]) - spans.local)) * size
    steep = np.maximum(np.abs(np.angle(leave)), np.abs(np.angle(arrive)))
    sound = (reach > 0) & (pull > 0) & (np.maximum(reach, pull) <= long) & (steep <= STEEPEST_RAD)
    origin = spans.polyline.vertices[spans.first]
    return sound & (beside <= tolerance_mm), spans.row(origin + one * spans.chord, origin + two * spans.chord)


def _inside(spans: Spans) -> Mask:
    """Which samples have a successor in their own span."""
    inside = np.ones(len(spans.owner), dtype=bool)
    inside[spans.start[1:] - 1] = False
    inside[-1] = False
    return inside


def _handles(spans: Spans, t: Floats, leave: Places, arrive: Places, across: Places | None) -> tuple[Floats, Floats]:
    """Lengths of the two handles, in chords, by the normal equations of each span.

    At first the whole gap between sample and curve counts; once the parameters are near, only the gap
    ``across`` the curve does, since along it the parameter will move: that converges in few rounds where
    the first would need dozens.
    """
    s = 1 - t
    b1, b2 = 3 * s * s * t, 3 * s * t * t
    rest = spans.local - (b2 + t * t * t)
    one, two = b1 * leave[spans.owner], -b2 * arrive[spans.owner]
    if across is not None:
        aside = across.conj() / np.maximum(np.abs(across), SMALLEST_SPEED)
        one, two, rest = (_slackened(places * aside) for places in (one, two, rest))
    c00, c11 = spans.total(np.abs(one) ** 2), spans.total(np.abs(two) ** 2)
    c01 = spans.total((one * two.conj()).real)
    x0, x1 = spans.total((one * rest.conj()).real), spans.total((two * rest.conj()).real)
    det = c00 * c11 - c01 * c01
    safe = np.where(det > SMALLEST_SPEED * c00 * c11, det, np.inf)
    return (x0 * c11 - x1 * c01) / safe, (x1 * c00 - x0 * c01) / safe


def _slackened(turned: Places) -> Places:
    """Places in the curve's own directions, what lies along it scaled down."""
    return np.asarray(turned.real + 1j * ALONG * turned.imag)


def _speed(t: Floats, one: Places, two: Places) -> Places:
    s = 1 - t
    return np.asarray(3 * (s * s * one + 2 * s * t * (two - one) + t * t * (1 - two)))


def _on_cubic(t: Floats, one: Places, two: Places) -> Places:
    s = 1 - t
    return np.asarray(3 * s * s * t * one + 3 * s * t * t * two + t * t * t)


def _nearer(t: Floats, places: Places, one: Places, two: Places) -> Floats:
    """One Newton step of each parameter to the curve's closest point."""
    s = 1 - t
    gap = _on_cubic(t, one, two) - places
    speed = _speed(t, one, two)
    bend = 6 * (s * (two - 2 * one) + t * (1 - 2 * two + one))
    slope = (gap * speed.conj()).real
    curve = np.abs(speed) ** 2 + (gap * bend.conj()).real
    step = np.where(curve > 0, slope / np.where(curve > 0, curve, 1.0), 0.0)
    return np.clip(t - step, 0.0, 1.0)


def _wrapped(angle: Floats) -> Floats:
    return np.asarray((angle + math.pi) % math.tau - math.pi)
