"""Ribbons with folded ends, straight or along an arc, for names and mottoes; millimetres.

A ribbon is laid out flat, the middle of its front at the origin, as three bands: the front, the fold behind
each end of it, and the tails. The front covers the fold and the fold the tail, each with a gap round it, so
that one ink shows all three. To follow an arc the layout is bent: level lines become arcs, all others stay
straight, and lengths are kept along the middle of the front.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Path, Segment
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import islands
from heraldry.shapes.table import Drawn, Length, Place, shape

Bends = Literal["up", "down"]
Bend = Callable[[Point, Point], Segment]
"""The stroke on the drawing for a straight stroke of the layout."""

WIDEST_BEND_RAD = math.radians(350.0)
"""A ribbon may not go so far round a circle that its tails meet."""


@dataclass(frozen=True)
class _Cut:
    """The measures of a ribbon in its layout, all more than zero but ``drop`` and ``notch``."""

    front: float
    height: float
    tail: float
    fold: float
    drop: float
    notch: float
    gap: float


@shape
def ribbon(
    ribbon: Length,
    height: Length | None = None,
    tail: Length | None = None,
    fold: Length | None = None,
    drop: Length | None = None,
    notch: Length | None = None,
    gap: Length | None = None,
    radius: Length | None = None,
    bends: Bends = "up",
    centre: Place = ORIGIN,
) -> Drawn:
    """A ribbon with folded ends; `ribbon` is its length from tip to tip, `gap` the line between its folds.

    `height` is that of its front. `tail` is how far the tails reach beyond the front, `fold` how far behind it they
    begin, `drop` how much lower they hang (higher where negative), `notch` the depth of their swallow-tail. With a
    `radius` the middle of its front follows a circle; it `bends` up, an arch, or down, and `centre` is that of the
    circle. Its places are `middle`, `start` and `end` of the front, and `centre`.
    """
    cut = _measures(ribbon, height, tail, fold, drop, notch, gap)
    if radius is None:
        lay, centre_of_arc = _straight(centre), centre
    else:
        lay, centre_of_arc = _bent(centre, _radius(radius, ribbon, cut), bends), centre
    outline = islands([_path(corners, lay) for corners in _layout(cut)])
    ends = Point(-cut.front / 2, 0.0), ORIGIN, Point(cut.front / 2, 0.0)
    start, middle, end = (lay(place, place).start for place in ends)
    return Drawn(outline, {"start": start, "middle": middle, "end": end, "centre": centre_of_arc})


def _measures(
    length: float,
    height: float | None,
    tail: float | None,
    fold: float | None,
    drop: float | None,
    notch: float | None,
    gap: float | None,
) -> _Cut:
    """What is given, and the rest in proportion to it; raises GeometryError where they do not go together."""
    height = 0.15 * positive("ribbon", length) if height is None else positive("height", height)
    tail = 0.14 * length if tail is None else positive("tail", tail)
    fold = 0.45 * tail if fold is None else positive("fold", fold)
    drop = 0.38 * height if drop is None else drop
    notch = 0.4 * tail if notch is None else at_least("notch", notch, 0.0)
    gap = 0.06 * height if gap is None else positive("gap", gap)
    front = length - 2 * tail
    if not 2 * (fold + gap) < front or not abs(drop) + 2 * gap < height or not notch + gap < tail:
        raise GeometryError(
            f"a ribbon {length:g} × {height:g} mm has no room for tails of {tail:g} mm with folds of {fold:g} mm, "
            f"a drop of {drop:g} mm, a notch of {notch:g} mm and gaps of {gap:g} mm"
        )
    return _Cut(front, height, tail, fold, drop, notch, gap)


def _radius(radius: float, length: float, cut: _Cut) -> float:
    least = max(length / WIDEST_BEND_RAD, cut.height / 2 + abs(cut.drop))
    if not radius > least:
        raise GeometryError(
            f"radius is {radius:g} mm, a ribbon {length:g} × {cut.height:g} mm bends round more than {least:.4g} mm"
        )
    bow = cut.fold**2 / (8 * radius)  # how far a level edge of the fold bends off a straight line
    if bow >= cut.gap:
        raise GeometryError(
            f"radius is {radius:g} mm, folds of {cut.fold:g} mm bend by {bow:.3g} mm on it, "
            f"which closes the gap of {cut.gap:.3g} mm"
        )
    return radius


def _layout(cut: _Cut) -> list[list[Point]]:
    """Corners of every band, counter-clockwise or not, drawn with the tails hanging and turned over if they rise."""
    x, y = cut.front / 2, cut.height / 2
    front = [Point(-x, -y), Point(x, -y), Point(x, y), Point(-x, y)]
    right = [_tail(cut, x, y), *_fold(cut, x, y)]
    up = -1.0 if cut.drop < 0 else 1.0
    bands = [front, *right, *([Point(-p.x, p.y) for p in band] for band in right)]
    return [[Point(p.x, up * p.y) for p in band] for band in bands]


def _fold(cut: _Cut, x: float, y: float) -> list[list[Point]]:
    """The back of the ribbon, seen below the end of the front where it turns in behind it."""
    drop = abs(cut.drop)
    if drop <= cut.gap:
        return []
    slope = cut.fold / drop
    return [
        [Point(x - cut.fold, -y - cut.gap), Point(x - cut.fold, -y - drop), Point(x - slope * cut.gap, -y - cut.gap)]
    ]


def _tail(cut: _Cut, x: float, y: float) -> list[Point]:
    """The tail, from its swallow-tailed end in to the gaps round the front and the fold."""
    drop, gap = abs(cut.drop), cut.gap
    end = [Point(x + cut.tail, -y - drop), Point(x + cut.tail - cut.notch, -drop), Point(x + cut.tail, y - drop)]
    if drop <= gap:
        return [Point(x + gap, -y - drop), *end, Point(x + gap, y - drop)]
    along_fold = math.hypot(cut.fold, drop) / drop * gap  # what a gap across the slanting fold is along a level line
    slope = cut.fold / drop
    inner = [
        Point(x + gap, y - drop),
        Point(x + gap, -y - gap),
        Point(x + along_fold - slope * gap, -y - gap),
        Point(x + along_fold - cut.fold, -y - drop),
    ]
    return [*end, *inner]


def _straight(centre: Point) -> Bend:
    return lambda start, end: Line(centre + start, centre + end)


def _bent(centre: Point, radius: float, bends: Bends) -> Bend:
    """Level strokes as arcs about the centre: x runs round the circle, y out from it, or in if it hangs."""
    way, quarter = (1.0, math.pi / 2) if bends == "up" else (-1.0, -math.pi / 2)

    def place(point: Point) -> Point:
        return centre + Point.polar(radius + way * point.y, quarter - way * point.x / radius)

    def stroke(start: Point, end: Point) -> Segment:
        if start.y != end.y:
            return Line(place(start), place(end))
        return Arc(place(start), place(end), centre, radius + way * start.y, way * (start.x - end.x) / radius)

    return stroke


def _path(corners: Sequence[Point], lay: Bend) -> Path:
    around = zip(corners, [*corners[1:], corners[0]], strict=True)
    return Path(tuple(lay(start, end) for start, end in around if start != end), closed=True)
