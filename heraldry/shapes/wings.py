"""Wings: spread ones in rows of feathers, and straight ones for speed; millimetres.

A spread wing is a sheaf of curves from its root to its tips, the control points of each lying evenly between
those of its upper and its lower edge. A lane between two neighbours is a feather, cut off where its length
ends, and its tip is drawn from the one curve over to the other. So feathers never meet, and the gap between
them is the same from root to tip.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Cubic, Line, Path
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import closed, corners, islands, placed
from heraldry.shapes.table import Count, Length, Number, Place, shape

UPPER = (Point(0.0, 0.58), Point(0.22, 1.10), Point(0.54, 0.66), Point(1.0, 1.0))
"""The leading edge of a wing one long and one high: over the shoulder, a dip, and up into the tip."""
LOWER = (Point(0.0, 0.08), Point(0.22, 0.16), Point(0.56, -0.34), Point(1.0, -0.62))
"""The trailing edge as it would be at full length; the lowest feathers are cut long before its end."""
SHORTEST = 0.36
"""The lowest feather, as a share of its full lane; each one above it is longer by an even step."""
ROWS_END = (1.0, 0.50, 0.24)
"""Where rows of feathers end, from the lowest to the topmost, as shares of a feather."""

LEAST_UPRIGHT, MOST_UPRIGHT = 0.1, 2.0
"""Height over length: beyond these the curves of the sheaf run into one another."""

TIP_SLANT = 1.5
"""How much sooner a feather leaves its lower edge than its upper one, in its own widths."""
TIP_STARTS = 0.55
"""The share of its length at which a feather may begin to narrow, be it ever so short and wide."""
TIP_FULLNESS = 0.5
"""How round a tip is, as the reach of its handles in lengths of its chord."""
BAR_LEAN = 0.5
"""How far the tip of a bar leans out, in its own thickness there."""

Curve = tuple[Point, Point, Point, Point]


@shape
def wings(
    wings: Length,
    height: Length | None = None,
    feathers: Count = 7,
    rows: Count = 2,
    apart: Length | None = None,
    gap: Length | None = None,
    centre: Place = ORIGIN,
) -> Outline:
    """A pair of spread wings; `wings` is their span, `apart` leaves room between them for what is winged.

    `height` is that of a wing, `feathers` how many there are one under another, in so many `rows`, `gap` parts them.
    """
    apart = 0.16 * wings if apart is None else at_least("apart", apart, 0.0)
    if not apart < wings:
        raise GeometryError(f"apart is {apart:g} mm, it must be less than the span {wings:g} mm")
    right = _wing((wings - apart) / 2, height, feathers, rows, gap)
    right = right.transformed(Affine.move(apart / 2, 0.0))
    return placed(Outline.gather([right, right.flipped()]), centre)


@shape
def wing(
    wing: Length,
    height: Length | None = None,
    feathers: Count = 7,
    rows: Count = 2,
    gap: Length | None = None,
    toward: Literal["left", "right"] = "right",
    centre: Place = ORIGIN,
) -> Outline:
    """One spread wing; `wing` is its length from root to tip, `toward` where its tip points.

    `height` is that of the wing, `feathers` how many there are one under another, in so many `rows`, `gap` parts them.
    """
    drawn = _wing(wing, height, feathers, rows, gap).transformed(Affine.move(-wing / 2, 0.0))
    return placed(drawn if toward == "right" else drawn.flipped(), centre)


@shape
def speed_wings(
    speed_wings: Length,
    height: Length | None = None,
    count: Count = 4,
    apart: Length | None = None,
    step: Length | None = None,
    gap: Length | None = None,
    taper: Number = 0.4,
    centre: Place = ORIGIN,
) -> Outline:
    """Straight wings of bars; `speed_wings` is the span of the topmost, each lower one is `step` shorter at its tip.

    There are `count` bars with a `gap` between two, together of a `height`, and `apart` leaves room in the middle for
    what is winged. Bars narrow toward their tips by `taper`, the share of their thickness that is left there.
    """
    count = at_least("count", count, 1)
    height = 0.26 * speed_wings if height is None else positive("height", height)
    apart = 0.16 * speed_wings if apart is None else at_least("apart", apart, 0.0)
    gap = 0.26 * height / count if gap is None else positive("gap", gap)
    reach = (speed_wings - apart) / 2
    step = 0.62 * reach / count if step is None else at_least("step", step, 0.0)
    thick = (height - gap * (count - 1)) / count
    if not 0 <= taper <= 1 or thick <= 0 or reach - step * (count - 1) <= thick:
        raise GeometryError(
            f"{count} bars with gaps of {gap:g} mm and steps of {step:g} mm do not make a wing "
            f"{reach:g} × {height:g} mm with a taper of {taper:g} (0 to 1): make it longer or less of them"
        )
    tops = [height / 2 - i * (thick + gap) for i in range(count)]
    bars = [_bar(apart / 2, apart / 2 + reach - step * i, top, thick, taper) for i, top in enumerate(tops)]
    right = Outline.gather(bars)
    return placed(Outline.gather([right, right.flipped()]), centre)


@dataclass(frozen=True)
class _Sheaf:
    """The curves of a wing: lane k of so many lies between curves k and k + 1.

    At the steep root lanes are narrower than the way from curve to curve, so a gap is measured across them.
    """

    upper: Curve
    lower: Curve
    lanes: int

    def curve(self, k: int, lowered_mm: float = 0.0) -> Cubic:
        """The k-th curve from the top, lowered toward the next by a length, measured across the feathers."""
        moved = [
            point + way * (lowered_mm / (self.lanes * wide))
            for point, way, wide in zip(self._points(k), self._ways(), self._widths(k), strict=True)
        ]
        return Cubic(*moved)

    @property
    def narrowest(self) -> float:
        """The least width of a lane, by its control points."""
        return min(wide for k in range(self.lanes + 1) for wide in self._widths(k))

    def _ways(self) -> list[Point]:
        """From each control point of the upper curve to that of the lower one."""
        return [below - above for above, below in zip(self.upper, self.lower, strict=True)]

    def _points(self, k: int) -> list[Point]:
        return [above + way * (k / self.lanes) for above, way in zip(self.upper, self._ways(), strict=True)]

    def _widths(self, k: int) -> list[float]:
        """How wide a lane is at each control point of the k-th curve, across the curve's direction there."""
        a, b, c, d = self._points(k)
        along = b - a, c - a, d - b, d - c
        return [abs(way.cross(one.unit)) / self.lanes for way, one in zip(self._ways(), along, strict=True)]


def _wing(length: float, height: float | None, feathers: int, rows: int, gap: float | None) -> Outline:
    """A wing from its root at x = 0 to its tip at x = length, half its height above the x axis."""
    height = 0.56 * length if height is None else positive("height", height)
    if not LEAST_UPRIGHT <= height / length <= MOST_UPRIGHT:
        raise GeometryError(
            f"height is {height:g} mm, a wing {length:g} mm long is {LEAST_UPRIGHT * length:g} to "
            f"{MOST_UPRIGHT * length:g} mm high"
        )
    feathers = at_least("feathers", feathers, 2)
    if not 1 <= rows <= len(ROWS_END):
        raise GeometryError(f"rows is {rows}, a wing has 1 to {len(ROWS_END)} rows of feathers")
    to_size = Affine.move(0.0, -height / 2) @ Affine.scale(length, height)
    sheaf = _Sheaf(_sized(UPPER, to_size), _sized(LOWER, to_size), feathers)
    gap = min(0.02 * length, 0.3 * sheaf.narrowest) if gap is None else positive("gap", gap)
    if not gap < 0.7 * sheaf.narrowest:
        raise GeometryError(
            f"gaps of {gap:g} mm leave nothing of {feathers} feathers, the narrowest is {sheaf.narrowest:.3g} mm wide"
        )
    drawn = islands(quill for k in range(feathers) for quill in _feather(sheaf, k, rows, gap))
    box = bounds(drawn)  # the round of a tip swells a little past where its curve ends
    fit = Affine.scale(length / box.width, height / box.height)
    return drawn.transformed(fit @ Affine.move(-box.left, -box.centre.y))


def _feather(sheaf: _Sheaf, k: int, rows: int, gap: float) -> list[Path]:
    """One feather and those that lie over its root: each begins a gap beyond the tip of the one over it."""
    lane = _Lane(sheaf.curve(k, gap / 2 if k else 0.0), sheaf.curve(k + 1, -gap / 2 if k + 1 < sheaf.lanes else 0.0))
    reach = 1.0 - (1.0 - SHORTEST) * k / (sheaf.lanes - 1)
    ends = [reach * share for share in reversed(ROWS_END[:rows])]
    starts: list[float | None] = [None, *(lane.beyond(end, gap) for end in ends[:-1])]
    return [lane.quill(start, end, gap) for start, end in zip(starts, ends, strict=True)]


@dataclass(frozen=True)
class _Lane:
    """The room of one feather, between two curves."""

    upper: Cubic
    lower: Cubic

    def beyond(self, t: float, by_mm: float) -> float:
        """The parameter that lies so many millimetres nearer to the tip."""
        return t + by_mm / (100.0 * abs(self.upper.at(t) - self.upper.at(t - 0.01)))

    def quill(self, start: float | None, end: float, clear: float) -> Path:
        """The feather from the root, or from clear of the tip of one that lies over it, to its own tip."""
        tip = self.tip(end)
        if start is None:
            root = Line(self.upper.start, self.lower.start)
            return closed([root, part(self.lower, 0.0, tip.t), tip.curve, part(self.upper, end, 0.0)])
        under = self.tip(start, clear)
        edges = part(self.lower, under.t, tip.t), part(self.upper, end, start)
        return closed([edges[0], tip.curve, edges[1], under.curve.reversed()])

    def tip(self, t: float, clear: float = 0.0) -> _Tip:
        """The tip that ends at t on the upper curve: it leaves the lower one sooner, and swings up round and full.

        To stay clear of a tip that leaves the lower curve as gently, it leaves it later: a tip rises from there by
        about a third of s² / thickness, so a gap is reached at s = √(3 · gap · thickness).
        """
        top = self.upper.at(t)
        thick = abs(top - self.lower.at(t))
        sooner = max(self.beyond(t, -TIP_SLANT * thick), TIP_STARTS * t)
        if clear:
            sooner = min(self.beyond(sooner, math.sqrt(3 * clear * thick)), (sooner + t) / 2)
        foot = self.lower.at(sooner)
        along = (foot - self.lower.at(sooner - 0.01)).unit
        across = (top - self.upper.at(t - 0.01)).unit.left
        reach = TIP_FULLNESS * abs(top - foot)
        return _Tip(sooner, Cubic(foot, foot + along * reach, top - across * (0.5 * reach), top))


@dataclass(frozen=True)
class _Tip:
    """The end of a feather: where it leaves the lower curve, and the stroke from there to the upper one."""

    t: float
    curve: Cubic


def part(curve: Cubic, t0: float, t1: float) -> Cubic:
    """The stretch of a cubic between two parameters, by its blossom; walked backwards where t1 < t0.

    >>> part(Cubic(Point(0, 0), Point(1, 0), Point(2, 0), Point(3, 0)), 1.0, 0.5).end
    Point(x=1.5, y=0.0)
    """
    return Cubic(*(_blossom(curve, *ts) for ts in ((t0, t0, t0), (t0, t0, t1), (t0, t1, t1), (t1, t1, t1))))


def _blossom(curve: Cubic, *ts: float) -> Point:
    """The polar form of a cubic: de Casteljau's steps, each with a parameter of its own."""
    points = [curve.start, curve.control1, curve.control2, curve.end]
    for t in ts:
        points = [one * (1.0 - t) + two * t for one, two in pairwise(points)]
    return points[0]


def _bar(root: float, tip: float, top: float, thick: float, taper: float) -> Outline:
    """One bar: its upper edge level, its lower edge rising to the tip, which leans outward."""
    end = taper * thick
    return corners((root, top - thick), (tip - BAR_LEAN * end, top - end), (tip, top), (root, top))


def _sized(curve: Curve, to_size: Affine) -> Curve:
    one, two, three, four = (to_size(point) for point in curve)
    return one, two, three, four
