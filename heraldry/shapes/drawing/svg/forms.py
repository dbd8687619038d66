"""The basic shapes of SVG (1.1, chapter 9) and its paths, as chains in their own units, y down."""

from __future__ import annotations

import math
from collections.abc import Callable

from heraldry.errors import GeometryError
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Line, Path, Segment
from heraldry.shapes.drawing.notes import Notes
from heraldry.shapes.drawing.svg.numbers import length_px, points
from heraldry.shapes.drawing.svg.tree import Element
from heraldry.shapes.drawing.svg.viewport import Frame
from heraldry.shapes.path_data import LONGEST_PATH_DATA
from heraldry.shapes.path_syntax import ROUND_SHARE, elliptic_arc, read_path
from heraldry.shapes.rounds import circle_path


def chains(element: Element, frame: Frame, notes: Notes) -> tuple[Path, ...]:
    """The chains of a shape; none for one that is not drawn. ``frame`` is what ``%`` is counted from."""
    return FORMS[element.tag](_Measures(element, frame), notes)


class _Measures:
    """The lengths of one element."""

    def __init__(self, element: Element, frame: Frame) -> None:
        self.element, self.frame = element, frame

    def across(self, key: str) -> float:
        return self._length(key, self.frame.width) or 0.0

    def down(self, key: str) -> float:
        return self._length(key, self.frame.height) or 0.0

    def radius(self, key: str) -> float:
        """Counted from the frame's diagonal over √2 (SVG 1.1, section 7.10)."""
        return self._length(key, math.hypot(self.frame.width, self.frame.height) / math.sqrt(2)) or 0.0

    def radii(self) -> tuple[float, float]:
        """rx and ry, of which one that is missing is as the other."""
        rx, ry = self._length("rx", self.frame.width), self._length("ry", self.frame.height)
        return (rx if rx is not None else ry or 0.0), (ry if ry is not None else rx or 0.0)

    def text(self, key: str) -> str:
        return self.element.attributes.get(key, "")

    def _length(self, key: str, whole: float) -> float | None:
        return length_px(self.text(key), whole)


def _path(given: _Measures, notes: Notes) -> tuple[Path, ...]:
    data = given.text("d")
    if len(data) > LONGEST_PATH_DATA:
        raise GeometryError(f"a path has {len(data):,} characters, at most {LONGEST_PATH_DATA:,} are read")
    read = read_path(data)
    if read.error:
        name = given.element.id or "without a name"
        notes.add(f"a path {name[:40]} breaks off, {read.error}: it is kept up to there")
    return read.paths


def _rect(given: _Measures, _: Notes) -> tuple[Path, ...]:
    x, y, width, height = given.across("x"), given.down("y"), given.across("width"), given.down("height")
    if width <= 0 or height <= 0:
        return ()
    rx, ry = given.radii()
    rx, ry = min(rx, width / 2), min(ry, height / 2)
    if rx <= 0 or ry <= 0:
        return (Frame(x, y, width, height).ring,)
    return (_rounded(x, y, x + width, y + height, rx, ry),)


def _rounded(left: float, top: float, right: float, bottom: float, rx: float, ry: float) -> Path:
    """A box with rounded corners, from the left end of its upper edge on, as section 9.2 has it."""
    corners = (
        (Point(left + rx, top), Point(right - rx, top), Point(right, top + ry)),
        (Point(right, top + ry), Point(right, bottom - ry), Point(right - rx, bottom)),
        (Point(right - rx, bottom), Point(left + rx, bottom), Point(left, bottom - ry)),
        (Point(left, bottom - ry), Point(left, top + ry), Point(left + rx, top)),
    )
    segments: list[Segment] = []
    for start, bend, end in corners:
        if start != bend:
            segments.append(Line(start, bend))
        segments.extend(elliptic_arc(bend, end, rx, ry, 0.0, large=False, sweep=True))
    return Path(tuple(segments), closed=True)


def _circle(given: _Measures, _: Notes) -> tuple[Path, ...]:
    radius = given.radius("r")
    return (circle_path(Point(given.across("cx"), given.down("cy")), radius),) if radius > 0 else ()


def _ellipse(given: _Measures, _: Notes) -> tuple[Path, ...]:
    rx, ry = given.radii()
    centre = Point(given.across("cx"), given.down("cy"))
    if rx <= 0 or ry <= 0:
        return ()
    if math.isclose(rx, ry, rel_tol=ROUND_SHARE):
        return (circle_path(centre, rx),)
    right, left = centre + Point(rx, 0.0), centre - Point(rx, 0.0)
    halves = [elliptic_arc(*ends, rx, ry, 0.0, large=False, sweep=True) for ends in ((right, left), (left, right))]
    return (Path((*halves[0], *halves[1]), closed=True),)


def _line(given: _Measures, _: Notes) -> tuple[Path, ...]:
    start, end = Point(given.across("x1"), given.down("y1")), Point(given.across("x2"), given.down("y2"))
    return (Path((Line(start, end),)),)


def _polyline(given: _Measures, _: Notes) -> tuple[Path, ...]:
    chain = Path.through(points(given.text("points")))
    return (chain,) if chain.segments else ()


def _polygon(given: _Measures, _: Notes) -> tuple[Path, ...]:
    chain = Path.through(points(given.text("points")), closed=True)
    return (chain,) if chain.segments else ()


FORMS: dict[str, Callable[[_Measures, Notes], tuple[Path, ...]]] = {
    "path": _path,
    "rect": _rect,
    "circle": _circle,
    "ellipse": _ellipse,
    "line": _line,
    "polyline": _polyline,
    "polygon": _polygon,
}
"""Every element that is a shape."""
