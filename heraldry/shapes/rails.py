"""Rails: their section, a track from above, a track that runs off to the horizon, bars that cross; millimetres."""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import subtract, unite
from heraldry.geometry.corners import polygon as cornered
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Line, Segment
from heraldry.shapes.checks import at_least, counted, positive
from heraldry.shapes.curves import bow, closed, corners, half_turned, islands, placed
from heraldry.shapes.table import Angle, Count, Length, Number, Place, shape

RAIL_CORNERS = (
    # height and corner radius of each corner from the foot up, as shares of the rail's height
    (0.0, 0.015),
    (0.075, 0.025),
    (0.180, 0.12),
    (0.715, 0.07),
    (0.775, 0.02),
    (1.0, 0.09),
)
"""A flat-bottomed rail, drawn after the look of the heavy ones: sloping foot, filleted web, rounded head."""


@shape
def rail_section(
    rail_section: Length,
    foot: Length | None = None,
    head: Length | None = None,
    web: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A rail cut across; `rail_section` is its height, `foot`, `head` and `web` are widths."""
    foot = 0.86 * rail_section if foot is None else positive("foot", foot)
    head = 0.44 * rail_section if head is None else positive("head", head)
    web = 0.13 * rail_section if web is None else positive("web", web)
    if not (web < 0.9 * head and web < 0.9 * foot):
        raise GeometryError(
            f"web is {web:g} mm, it must be well below the head {head:g} mm and the foot {foot:g} mm (nine tenths)"
        )
    widths = (foot, foot, web, web, head, head)
    room = min((head - web) / 2, (foot - web) / 2) / rail_section  # narrow rails get smaller fillets
    rounding = min(1.0, room / 0.155)
    right = [Point(width / 2, (h - 0.5) * rail_section) for width, (h, _) in zip(widths, RAIL_CORNERS, strict=True)]
    left = [Point(-p.x, p.y) for p in reversed(right)]
    radii = [r * rounding * rail_section for _, r in RAIL_CORNERS]
    return placed(Outline.of([cornered([*right, *left], "round", [*radii, *reversed(radii)])]), centre, turn)


@shape
def track(
    track: Length,
    gauge: Length | None = None,
    rail: Length | None = None,
    tie: Length | None = None,
    tie_length: Length | None = None,
    count: Count | None = None,
    gap: Length = 0.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A straight track from above; `track` is its length, `gauge` is between the rails, `rail` and `tie` are widths.

    There are `count` ties, each of a `tie_length`. A `gap` keeps the ties off the rails, so that the rails stand out.
    """
    gauge = 0.22 * track if gauge is None else positive("gauge", gauge)
    rail = 0.13 * gauge if rail is None else positive("rail", rail)
    if tie is None:
        tie = 0.24 * gauge if count is None else min(0.24 * gauge, 0.5 * track / at_least("count", count, 1))
    positive("tie", tie)
    tie_length = 1.95 * gauge if tie_length is None else positive("tie_length", tie_length)
    count = counted("count", max(1, round(track / (2.1 * tie))) if count is None else count, 1)
    at_least("gap", gap, 0.0)
    if not count * tie < track or not tie_length > gauge + 2 * (rail + gap) or not 2 * gap < gauge:
        raise GeometryError(
            f"{count} ties of {tie_length:g} × {tie:g} mm do not make a track {track:g} mm long "
            f"with a gauge of {gauge:g} mm, rails of {rail:g} mm and gaps of {gap:g} mm"
        )
    middle = (gauge + rail) / 2
    rails = [_box(0.0, side * middle, track, rail) for side in (1, -1)]
    ties = [_box(track * ((i + 0.5) / count - 0.5), 0.0, tie, tie_length) for i in range(count)]
    if gap:
        cuts = [_box(0.0, side * middle, track, rail + 2 * gap) for side in (1, -1)]
        return placed(Outline.gather([*rails, subtract(Outline.gather(ties), *cuts)]), centre, turn)
    return placed(unite(*rails, *ties), centre, turn)


@shape
def vanishing_track(
    vanishing_track: Length,
    height: Length | None = None,
    count: Count = 16,
    reach: Number = 0.78,
    gauge: Length | None = None,
    rail: Length | None = None,
    tie: Number = 0.42,
    centre: Place = ORIGIN,
) -> Outline:
    """A track that runs off to the horizon; `vanishing_track` is the length of its nearest tie.

    It has `count` ties. Its rails meet at `height` above that tie; `reach` is the share of the height that is drawn,
    `gauge` and `rail` are measured at the foot, `tie` is the inked part of the way from tie to tie. `centre` is the
    middle of its foot.
    """
    half = vanishing_track / 2
    height = 0.95 * vanishing_track if height is None else positive("height", height)
    gauge = 0.52 * vanishing_track if gauge is None else positive("gauge", gauge)
    rail = 0.09 * vanishing_track if rail is None else positive("rail", rail)
    if not 0 < reach < 1 or not 0 < tie < 1:
        raise GeometryError(f"reach is {reach:g} and tie {tie:g}, both must be within 0 and 1")
    if not gauge + 2 * rail < vanishing_track:
        raise GeometryError(f"a gauge of {gauge:g} mm with rails of {rail:g} mm needs ties longer than {2 * half:g} mm")
    nearness = _tie_nearness(at_least("count", count, 1), reach, tie)
    ties = [_bed(-half, half, near, far, height) for near, far in nearness]
    inner, outer = gauge / 2, gauge / 2 + rail
    rails = [_bed(inner, outer, 1.0, 1.0 - reach, height), _bed(-outer, -inner, 1.0, 1.0 - reach, height)]
    return placed(unite(*ties, *rails), centre)


@shape
def crossed(
    crossed: Length,
    width: Length | None = None,
    angle: Angle = 90.0,
    gap: Length | None = None,
    ends: Literal["flat", "round"] = "flat",
    over: Literal["rising", "falling"] = "rising",
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """Two bars that cross; `crossed` is the length of each, `gap` the line between the one `over` and the other.

    Each is `width` wide, its `ends` flat or round, and leans half of `angle` from level; the bar that rises to the
    right lies over, or the falling one.
    """
    width = 0.13 * crossed if width is None else positive("width", width)
    gap = 0.22 * width if gap is None else positive("gap", gap)
    if not 15 <= angle <= 165:
        raise GeometryError(f"angle is {angle:g} degrees, bars cross at 15 to 165 degrees")
    steep = math.radians(angle)
    cut = ((width / 2 + gap) + width / 2 * abs(math.cos(steep))) / math.sin(steep)
    if not cut + width / 2 < crossed / 2:
        raise GeometryError(f"bars {crossed:g} × {width:g} mm are too short to cross at {angle:g} degrees")
    upper, lower = (angle / 2, -angle / 2) if over == "rising" else (-angle / 2, angle / 2)
    whole = placed(_bar(crossed, width, ends), ORIGIN, upper)
    parts = placed(_under_bar(crossed, width, ends, math.radians(upper - lower), width / 2 + gap), ORIGIN, lower)
    return placed(Outline.gather([whole, parts]), centre, turn)


def _box(x: float, y: float, width: float, height: float) -> Outline:
    return Bounds(x - width / 2, y - height / 2, x + width / 2, y + height / 2).outline


def _tie_nearness(count: int, reach: float, tie: float) -> list[tuple[float, float]]:
    """The share of full size at the near and the far edge of each tie.

    Size is 1 / distance. The foot lies at distance 1 and the end of the drawing at 1 / (1 − reach); between them
    ties lie evenly, the last one just within.
    """
    way = (1.0 / (1.0 - reach) - 1.0) / (count - 1 + tie)
    return [(1.0 / (1.0 + i * way), 1.0 / (1.0 + (i + tie) * way)) for i in range(count)]


def _bed(left: float, right: float, near: float, far: float, height: float) -> Outline:
    """A piece of the ground between two lines that run to the vanishing point, from one distance to another."""
    low, high = height * (1.0 - near), height * (1.0 - far)
    return corners((left * near, low), (right * near, low), (right * far, high), (left * far, high))


def _bar(length: float, width: float, ends: str) -> Outline:
    right = _bar_end(length, width, ends)
    left = [half_turned(stroke) for stroke in right]
    return islands([closed([*right, *left])])


def _under_bar(length: float, width: float, ends: str, steep: float, off: float) -> Outline:
    """A level bar without what lies nearer than a distance to a line through the origin at an angle (radians).

    The line's edge at the distance d meets y at x = (d + y cos φ) / sin φ.
    """
    sine, cosine = abs(math.sin(steep)), math.cos(steep) * math.copysign(1.0, math.sin(steep))
    inner = [Point((off + y * cosine) / sine, y) for y in (width / 2, -width / 2)]
    right = [*_bar_end(length, width, ends), Line(*inner)]
    left = [half_turned(stroke) for stroke in right]
    return islands([closed(right), closed(left)])


def _bar_end(length: float, width: float, ends: str) -> list[Segment]:
    """The right end of a level bar, walked upward."""
    x = length / 2 - (width / 2 if ends == "round" else 0.0)
    return [bow(Point(x, -width / 2), Point(x, width / 2), width / 2 if ends == "round" else 0.0)]
