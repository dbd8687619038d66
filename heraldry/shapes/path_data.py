"""Outlines from path data in the syntax of SVG 1.1 chapter 8; the field's y points down there, ours up.

svgpathtools reads the data; circular arcs stay arcs, elliptical ones become cubics.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterable
from typing import Any, Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import clean
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline, arc_as_cubics
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Angle, Length, Place, Text, shape

LONGEST_PATH_DATA = 200_000
"""Characters of path data: a drawing of some ten thousand nodes, beyond any herald."""
MOST_SEGMENTS = 20_000


@shape
def path(
    path: Text,
    width: Length | None = None,
    height: Length | None = None,
    fill: Literal["nonzero", "evenodd"] = "nonzero",
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """An outline from SVG path data, brought to a width or a height; without one, its units are millimetres."""
    outline = clean(Outline.of(_rings(path)), rule=fill)
    if outline.is_empty:
        raise GeometryError("the path data encloses nothing")
    box = bounds(outline)
    factor = _factor(box.width, box.height, width, height)
    middle = box.centre
    to_origin = Affine.scale(factor) @ Affine.move(-middle.x, -middle.y)
    return outline.transformed(Affine.move(centre.x, centre.y) @ Affine.turn(turn) @ to_origin)


def _factor(drawn_width: float, drawn_height: float, width: float | None, height: float | None) -> float:
    factors = []
    if width is not None:
        factors.append(positive("width", width) / drawn_width)
    if height is not None:
        factors.append(positive("height", height) / drawn_height)
    return min(factors, default=1.0)


def _rings(data: str) -> Iterable[Path]:
    """Each subpath as a closed ring; an open one is closed by a straight line, as filling does."""
    for subpath in _parsed(data).continuous_subpaths():
        segments = [segment for piece in subpath for segment in _segments(piece) if not _is_nothing(segment)]
        if segments and segments[-1].end != segments[0].start:
            segments.append(Line(segments[-1].end, segments[0].start))
        if len(segments) > 1:
            yield Path(tuple(segments), closed=True)


def _parsed(data: str) -> Any:
    if len(data) > LONGEST_PATH_DATA:
        raise GeometryError(f"the path data is {len(data):,} characters long, at most {LONGEST_PATH_DATA:,} are read")
    from svgpathtools import parse_path  # imported where used: start-up time

    try:
        parsed = parse_path(data)
    except Exception as error:  # the reader raises whatever its parsing stumbles over
        raise GeometryError(f"this is no SVG path data ({error}), it looks like 'M 0 0 L 10 0 L 5 8 Z'") from None
    if not 0 < len(parsed) <= MOST_SEGMENTS:
        raise GeometryError(f"the path data has {len(parsed)} segments, it needs 1 to {MOST_SEGMENTS:,}")
    if not all(cmath.isfinite(piece.start) and cmath.isfinite(piece.end) for piece in parsed):
        raise GeometryError("the path data has numbers without end")
    return parsed


def _is_nothing(segment: Segment) -> bool:
    return isinstance(segment, Line) and segment.start == segment.end


def _point(number: complex) -> Point:
    return Point(number.real, -number.imag)


def _segments(piece: Any) -> list[Segment]:
    kind, start, end = type(piece).__name__, _point(piece.start), _point(piece.end)
    if kind == "CubicBezier":
        return [Cubic(start, _point(piece.control1), _point(piece.control2), end)]
    if kind == "QuadraticBezier":
        control = _point(piece.control)
        return [Cubic(start, start + (control - start) * (2 / 3), end + (control - end) * (2 / 3), end)]
    if kind == "Arc":
        return _arc(piece, start, end)
    return [Line(start, end)]


def _arc(piece: Any, start: Point, end: Point) -> list[Segment]:
    """An arc of a circle, or the cubics of an arc of an ellipse.

    svgpathtools counts angles in degrees, clockwise on screen, which with y up is counter-clockwise negated.
    """
    radius_x, radius_y = piece.radius.real, piece.radius.imag
    centre, sweep = _point(piece.center), -math.radians(piece.delta)
    if math.isclose(radius_x, radius_y, rel_tol=1e-9):
        return [Arc(start, end, centre, radius_x, sweep)]
    place = Affine.move(centre.x, centre.y) @ Affine.turn(-piece.rotation) @ Affine.scale(radius_x, radius_y)
    cubics = arc_as_cubics(Arc.about(ORIGIN, 1.0, -math.radians(piece.theta), sweep))
    points = [start, *(place(cubic.start) for cubic in cubics[1:]), end]
    return [
        Cubic(points[i], place(cubic.control1), place(cubic.control2), points[i + 1]) for i, cubic in enumerate(cubics)
    ]
