"""Contours: polygons whose corners are bent, the one way every edge of our letters is drawn.

A letter's edge is written down as the polygon a sign writer would rule first; each corner then says how far
before and after it the edge leaves the ruled line. What happens in between is the alphabet's corner: a curve,
a chamfer, or the plain corner. Lengths in cap heights, y up, base line at 0.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Cubic, Line, Path, Segment

Corner = Literal["round", "cut", "square"]

# Two bends whose ends come nearer than this on their edge (cap heights) are drawn out until they meet: a straight
# piece a micrometre long in letters of 3 mm serves nobody. They are moved along the edge, so it stays where it is.
SAME_PLACE = 3e-4

# A height on a curve is found by halving: 2^-50 of a curve is below the rounding of its own points.
HALVINGS = 50

# Handles of a curved bend, in parts of the bend: 0.5523 draws an ellipse, more is squarer. Railroad gothics
# have shoulders, and their counters a little more than their outsides, so that the corners do not clot.
OUTER_TENSION = 0.62
INNER_TENSION = 0.67

# The same for a circle: (4/3)·(√2 − 1), the usual approximation by cubics.
CIRCLE_TENSION = 0.5523


@dataclass(frozen=True, slots=True)
class Bend:
    """How far a corner's bend reaches along the horizontal and the vertical edge that meet there."""

    across: float = 0.0
    along: float = 0.0
    tension: float = OUTER_TENSION


@dataclass(frozen=True, slots=True)
class Knot:
    """A corner of the ruled polygon, and how long before and after it the edge bends.

    ``cut_before`` and ``cut_after`` are heights: there the upright edge before or after the corner is cut level,
    be it still bending or not. So end the hooks of C, S and the figures.
    """

    x: float
    y: float
    before: float = 0.0
    after: float = 0.0
    tension: float = OUTER_TENSION
    cut_before: float | None = None
    cut_after: float | None = None

    @staticmethod
    def upright_first(x: float, y: float, bend: Bend, cut: float | None = None) -> Knot:
        """A corner that the edge reaches upright and leaves lying."""
        return Knot(x, y, bend.along, bend.across, bend.tension, cut_before=cut)

    @staticmethod
    def level_first(x: float, y: float, bend: Bend, cut: float | None = None) -> Knot:
        """A corner that the edge reaches lying and leaves upright."""
        return Knot(x, y, bend.across, bend.along, bend.tension, cut_after=cut)

    @property
    def turned(self) -> Knot:
        """The same corner walked the other way."""
        return Knot(self.x, self.y, self.after, self.before, self.tension, self.cut_after, self.cut_before)

    @property
    def point(self) -> Point:
        """Where the ruled lines meet."""
        return Point(self.x, self.y)


@dataclass(frozen=True, slots=True)
class _Turn:
    """The edge at one knot, from where its bend or its end begins; a plain corner is a start and no piece."""

    start: Point
    pieces: tuple[Segment, ...] = ()

    @property
    def end(self) -> Point:
        return self.pieces[-1].end if self.pieces else self.start

    @property
    def reversed(self) -> _Turn:
        return _Turn(self.end, tuple(piece.reversed() for piece in reversed(self.pieces)))


def bent(knots: Sequence[Knot], corner: Corner) -> Path:
    """The closed contour through bent corners, always counter-clockwise."""
    walk = list(knots) if _area(knots) > 0 else [knot.turned for knot in reversed(knots)]
    neighbours = zip([walk[-1], *walk[:-1]], walk, [*walk[1:], walk[0]], strict=True)
    turns = [_turn(before, knot, after, corner) for before, knot, after in neighbours]
    return Path(tuple(_chained(turns)), closed=True)


def _chained(turns: Sequence[_Turn]) -> list[Segment]:
    """The turns with the straight edges between them; ends within ``SAME_PLACE`` become one point."""
    home = place = turns[-1].end
    chain: list[Segment] = []
    for turn in turns:
        if not _same(place, turn.start):
            chain.append(Line(place, turn.start))
            place = turn.start
        for piece in turn.pieces:
            chain.append(replace(piece, start=place))
            place = piece.end
    return [*chain[:-1], replace(chain[-1], end=home)]


def _turn(before: Knot, knot: Knot, after: Knot, corner: Corner) -> _Turn:
    """The edge at one knot, cut ends included."""
    place = knot.point
    came = before.point if knot.cut_before is None else Point(knot.x, knot.cut_before)
    goes = after.point if knot.cut_after is None else Point(knot.x, knot.cut_after)
    turn = _corner(_toward(place, came, knot.before), place, _toward(place, goes, knot.after), corner, knot.tension)
    if knot.cut_before is not None:
        turn = _cut_after(turn.reversed, came).reversed
    return turn if knot.cut_after is None else _cut_after(turn, goes)


def _corner(entry: Point, knot: Point, leave: Point, corner: Corner, tension: float) -> _Turn:
    """The edge between the two ends of one bend."""
    if corner == "square" or _same(entry, leave):
        return _Turn(knot)
    if corner == "cut":
        return _Turn(entry, (Line(entry, leave),))
    return _Turn(entry, (Cubic(entry, entry + (knot - entry) * tension, leave + (knot - leave) * tension, leave),))


def _cut_after(turn: _Turn, end: Point) -> _Turn:
    """A turn that leaves upright, led on to an end or cut level there."""
    last = turn.pieces[-1] if turn.pieces else Line(turn.start, turn.start)
    if isinstance(last, Cubic) and (end.y - last.end.y) * (last.end.y - last.start.y) < 0.0:
        return _Turn(turn.start, (*turn.pieces[:-1], _first_part(last, end.y)))
    if _same(turn.end, end):
        return turn
    return _Turn(turn.start, (*turn.pieces, Line(turn.end, end)))


def _first_part(cubic: Cubic, height: float) -> Cubic:
    """What of a curve that only rises or only falls lies before a height (de Casteljau's cut)."""
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        t = (low + high) / 2.0
        before = (cubic.at(t).y - height) * (cubic.end.y - cubic.start.y) < 0.0
        low, high = (t, high) if before else (low, t)
    a = _part(cubic.start, cubic.control1, high)
    middle = _part(cubic.control1, cubic.control2, high)
    b = _part(a, middle, high)
    end = _part(b, _part(middle, _part(cubic.control2, cubic.end, high), high), high)
    return Cubic(cubic.start, a, b, Point(end.x, height))


def _part(start: Point, end: Point, t: float) -> Point:
    return start + (end - start) * t


def _toward(start: Point, end: Point, reach: float) -> Point:
    return start if reach <= 0.0 else start + (end - start) * (reach / abs(end - start))


def _same(one: Point, other: Point) -> bool:
    return abs(one - other) < SAME_PLACE


def _area(knots: Sequence[Knot]) -> float:
    """Twice the signed area of the ruled polygon."""
    return sum(one.point.cross(other.point) for one, other in zip(knots, [*knots[1:], knots[0]], strict=True))


def meet(one: Point, along: Point, other: Point, direction: Point) -> Point:
    """Where the line through ``one`` meets the line through ``other``.

    >>> meet(Point(0, 0), Point(1, 1), Point(4, 0), Point(-1, 1))
    Point(x=2.0, y=2.0)
    """
    return one + along * ((other - one).cross(direction) / along.cross(direction))


def polygon(*corners: tuple[float, float]) -> Outline:
    """The region inside straight edges."""
    return Outline.of([bent([Knot(x, y) for x, y in corners], "square")])


def ball(left: float, bottom: float, size: float) -> Outline:
    """A round as wide as high that stands in the corner it is given."""
    bend, right, top = Bend(size / 2.0, size / 2.0, CIRCLE_TENSION), left + size, bottom + size
    corners = ((right, bottom, False), (right, top, True), (left, top, False), (left, bottom, True))
    knots = [(Knot.upright_first if upright else Knot.level_first)(x, y, bend) for x, y, upright in corners]
    return Outline.of([bent(knots, "round")])


def rectangle(left: float, bottom: float, right: float, top: float) -> Outline:
    """An upright box."""
    return polygon((left, bottom), (right, bottom), (right, top), (left, top))
