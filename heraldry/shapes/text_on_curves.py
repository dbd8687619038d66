"""A line of lettering round a circle or along a path: what a description says of it, how it is laid; millimetres."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any, Literal

from heraldry.errors import LetteringError
from heraldry.geometry.affine import Affine
from heraldry.geometry.measure import ArcLength, bounds
from heraldry.geometry.outline import Outline, arc_as_cubics
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Path, Segment
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.setting import Laid, along, ink_angles, on_circle
from heraldry.lettering.setting.base_lines import arc_through, edge_line, place_over, raised, read_along
from heraldry.lettering.setting.lay import SHARE, Anchor, ink_reach
from heraldry.lettering.setting.placing import Letters
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import mirrored, moved
from heraldry.shapes.path_data import line_of
from heraldry.shapes.table import Angle, Direction, Drawn, Length, Place, Places, ShapeRef, Text

TOP_DEG = 90.0


@dataclass(frozen=True)
class Round:
    """How a line goes round a circle of a `radius`; `middle` is where the text's anchor lies, `fit` an angle to fill.

    `letters` are turned as they are, stand upright, or are bent to the circle.
    """

    radius: Length
    reads: Literal["outside", "inside"] = "outside"
    middle: Direction = TOP_DEG
    fit: Angle | None = None
    letters: Letters = "turned"


@dataclass(frozen=True)
class Along:
    """The path that a line goes along: SVG `path` data, the edge of a `shape`, or an `arc` through three places.

    `width` brings path data to a width; `smooth` passes over what is narrower than such a radius in an edge; `lift`
    puts the base line off the path, to the side of the letters' heads; `hold` is near where the text's anchor lies.
    """

    path: Text | None = None
    shape: ShapeRef | None = None
    arc: Places | None = None
    width: Length | None = None
    smooth: Length = 0.0
    lift: Length = 0.0
    reads: Literal["outside", "inside"] | None = None
    letters: Letters = "turned"
    hold: Place | None = None

    def in_mirror(self) -> Along:
        """What describes the same path as seen in a mirror along the y axis, and read from its other end."""
        return replace(
            self,
            path=None if self.path is None else _data_of(_mirrored(line_of(self.path))),
            shape=None if self.shape is None else self.shape.with_outline(self.shape.outline.flipped()),
            arc=None if self.arc is None else tuple(Point(-one.x, one.y) for one in reversed(self.arc)),
            hold=None if self.hold is None else Point(-self.hold.x, self.hold.y),
        )


def laid_round(line: SetLine, circle: Round, centre: Point, anchor: Anchor, lift_mm: float) -> Drawn:
    """A line round a circle; its places are the start and the end of its ink on the base line."""
    radius = positive("radius", circle.radius) + (lift_mm if circle.reads == "outside" else -lift_mm)
    held: dict[str, Any] = {anchor: circle.middle}
    laid = on_circle(line, centre, radius, circle.reads, letters=circle.letters, **held)
    angles = ink_angles(laid, centre)
    places = {
        "start": centre + Point.polar(radius, math.radians(angles.start_deg)),
        "end": centre + Point.polar(radius, math.radians(angles.end_deg)),
    }
    return Drawn(laid.outline, places, laid.notes)


def laid_along(line: SetLine, way: Along, at: Point, anchor: Anchor, lift_mm: float) -> Drawn:
    """A line along a path; its places are the start and the end of its ink on the base line."""
    base = base_line(replace(way, lift=way.lift + lift_mm), at)
    held_mm = _held(base, way, anchor)
    laid = along(line, base, anchor, held_mm, way.letters)
    return Drawn(laid.outline, _ends(laid, base, held_mm, anchor), laid.notes)


def base_line(way: Along, at: Point) -> Path:
    """The base line that is described; path data have their own origin ``at`` a place.

    Raises LetteringError where none, or more than one, is described, or a key that the kind of line does not know.
    """
    given = [key for key in ("path", "shape", "arc") if getattr(way, key) is not None]
    if len(given) != 1:
        raise LetteringError(f"along has one of path, shape or arc, found {' and '.join(given) or 'none of them'}")
    at_least("smooth", way.smooth, 0.0)
    if way.path is None and (way.width is not None or at != ORIGIN):
        raise LetteringError("at and along.width say where path data lie and how wide they are, leave them out here")
    if way.shape is not None:
        return edge_line(way.shape.outline, way.smooth, way.lift, way.reads or "outside")
    line = _arc(way.arc) if way.arc is not None else _drawn(str(way.path), way.width, at)
    if line.closed:
        return edge_line(Outline.of([line]), way.smooth, way.lift, way.reads or "outside")
    if way.smooth:
        raise LetteringError("smooth is for the edge of a shape and for a closed path, leave it out here")
    return raised(read_along(line, way.reads) if way.reads else line, way.lift)


def _arc(places: Places | None) -> Path:
    if places is None or len(places) != 3:
        raise LetteringError(f"along.arc goes through three places, found {len(places or ())}")
    return arc_through(*places)


def _drawn(data: str, width: float | None, at: Point) -> Path:
    line = line_of(data)
    factor = 1.0 if width is None else positive("along.width", width) / _wide(line)
    home = Affine.move(at.x, at.y) @ Affine.scale(factor)
    return Path(tuple(moved(stroke, home) for stroke in line.segments), line.closed)


def _wide(line: Path) -> float:
    wide = bounds(line).width
    if not wide > 0:
        raise LetteringError("path data that run straight up and down have no width, leave along.width out")
    return wide


def _held(base: Path, way: Along, anchor: Anchor) -> float:
    """How far along the base line the anchor lies."""
    track = ArcLength(base)
    if way.hold is not None:
        return float(track.nearest([way.hold.x, way.hold.y]))
    return place_over(base, way.reads or "outside") if base.closed else track.total_mm * SHARE[anchor]


def _ends(laid: Laid, base: Path, held_mm: float, anchor: Anchor) -> dict[str, Point]:
    begin, end = ink_reach(laid.line)
    start = held_mm - (end - begin) * SHARE[anchor]
    points = ArcLength(base).at([start, start + end - begin]).points.tolist()
    return {"start": Point(*points[0]), "end": Point(*points[1])}


def _mirrored(line: Path) -> Path:
    return Path(tuple(mirrored(stroke) for stroke in line.segments), line.closed).reversed()


def _data_of(line: Path) -> str:
    """Path data of a line, its arcs as cubics."""
    strokes = [cubic for stroke in line for cubic in (arc_as_cubics(stroke) if isinstance(stroke, Arc) else [stroke])]
    return " ".join([f"M {_pair(line.segments[0].start)}", *map(_word, strokes)])


def _word(stroke: Segment) -> str:
    if isinstance(stroke, Cubic):
        return f"C {_pair(stroke.control1)} {_pair(stroke.control2)} {_pair(stroke.end)}"
    return f"L {_pair(stroke.end)}"


def _pair(point: Point) -> str:
    return f"{point.x!r} {-point.y!r}"
