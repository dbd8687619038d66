"""Outlines from path data in the syntax of SVG 1.1 chapter 8; the field's y points down there, ours up.

``path_syntax`` reads the data; circular arcs stay arcs, elliptical ones become cubics.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import clean
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN
from heraldry.geometry.segments import Cubic, Line, Path, Segment
from heraldry.shapes.checks import positive
from heraldry.shapes.curves import moved
from heraldry.shapes.path_syntax import read_path
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
    outline = clean(_rings(path), rule=fill)
    if outline.is_empty:
        raise GeometryError("the path data encloses nothing")
    box = bounds(outline)
    factor = _factor(box.width, box.height, width, height)
    middle = box.centre
    to_origin = Affine.scale(factor) @ Affine.move(-middle.x, -middle.y)
    return outline.transformed(Affine.move(centre.x, centre.y) @ Affine.turn(turn) @ to_origin)


def line_of(data: str) -> Path:
    """The one line that path data draw, its units millimetres, y up; closed where it ends where it began."""
    paths = _parsed(data)
    if len(paths) != 1:
        raise GeometryError(f"the path data draw {len(paths)} lines apart, one is wanted")
    up = Affine.scale(1.0, -1.0)
    segments = tuple(moved(segment, up) for segment in paths[0] if not _is_nothing(segment))
    if not segments:
        raise GeometryError("the path data draw no line")
    return Path(segments, closed=len(segments) > 1 and segments[0].start == segments[-1].end)


def _factor(drawn_width: float, drawn_height: float, width: float | None, height: float | None) -> float:
    factors = []
    if width is not None:
        factors.append(positive("width", width) / drawn_width)
    if height is not None:
        factors.append(positive("height", height) / drawn_height)
    return min(factors, default=1.0)


def _rings(data: str) -> Outline:
    """Every chain as a ring with y up; an open one is closed by a straight line, as filling does."""
    return Outline.of(filled(_parsed(data))).transformed(Affine.scale(1.0, -1.0))


def filled(paths: Iterable[Path]) -> Iterable[Path]:
    """Chains as the rings that are filled: closed by a straight line where they are open, none of nothing."""
    for path in paths:
        segments = [segment for segment in path if not _is_nothing(segment)]
        if segments and segments[-1].end != segments[0].start:
            segments.append(Line(segments[-1].end, segments[0].start))
        if len(segments) > 1 or any(isinstance(segment, Cubic) for segment in segments):
            yield Path(tuple(segments), closed=True)


def _parsed(data: str) -> tuple[Path, ...]:
    if len(data) > LONGEST_PATH_DATA:
        raise GeometryError(f"the path data is {len(data):,} characters long, at most {LONGEST_PATH_DATA:,} are read")
    found = read_path(data)
    if found.error:
        raise GeometryError(f"this is no SVG path data ({found.error}), it looks like 'M 0 0 L 10 0 L 5 8 Z'")
    count = sum(len(path.segments) for path in found.paths)
    if not 0 < count <= MOST_SEGMENTS:
        raise GeometryError(f"the path data has {count} segments, it needs 1 to {MOST_SEGMENTS:,}")
    return found.paths


def _is_nothing(segment: Segment) -> bool:
    return isinstance(segment, Line) and segment.start == segment.end
