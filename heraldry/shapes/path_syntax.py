"""The one reader of path data in the syntax of SVG 1.1, chapter 8: commands and numbers to chains of segments.

Points stay as they are written, y down; whoever draws them turns them over. A chain is closed where the data says
``z``, open where it does not, though its ends may meet: a stroke is joined in the one and capped in the other. Arcs
of circles stay arcs, those of ellipses become cubics. Reading stops at the first error, and what went before is kept,
as chapter 8 wants it; the error is handed out with it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import arc_as_cubics
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment

ROUND_SHARE = 1e-9
"""Radii that differ by less than this share of themselves are those of a circle."""

LARGEST_NUMBER = 1e12
"""Greater numbers are no measure of anything; their squares would lose what is drawn beside them."""

_NUMBER = re.compile(r"[\s,]*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)")
_FLAG = re.compile(r"[\s,]*([01])")
_COMMAND = re.compile(r"[\s,]*([MmZzLlHhVvCcSsQqTtAa])")
_CURVES = ("C", "S", "Q", "T")
_BLANK = re.compile(r"[\s,]*")


@dataclass(frozen=True)
class ReadPath:
    """The chains of a path, and what stopped its reading; an empty text where nothing did."""

    paths: tuple[Path, ...]
    error: str = ""


class _MistakeError(Exception):
    """Where path data stops to make sense."""


def read_path(data: str) -> ReadPath:
    """The chains that path data describes, in its own units, y down.

    >>> read_path("M0 0h4v3z").paths[0].closed, len(read_path("M0 0h4v3z").paths[0].segments)
    (True, 3)
    >>> read_path("M0 0h4v3 L 5").error
    'a number is wanted at character 13'
    """
    pen = _Pen()
    try:
        _Reading(data, pen).all()
    except _MistakeError as mistake:
        return ReadPath(pen.finished(), str(mistake))
    return ReadPath(pen.finished())


def elliptic_arc(
    start: Point, end: Point, radius_x: float, radius_y: float, turn_deg: float, large: bool, sweep: bool
) -> list[Segment]:
    """An arc of an ellipse between two points: from end points to centre as in SVG 1.1, appendix F.6.5 and F.6.6."""
    radius_x, radius_y = abs(radius_x), abs(radius_y)
    if start == end:
        return []
    if radius_x == 0.0 or radius_y == 0.0:
        return [Line(start, end)]
    round_plane = Affine.scale(1 / radius_x, 1 / radius_y) @ Affine.turn(-turn_deg)
    one, two = round_plane(start), round_plane(end)
    chord, middle = two - one, (one + two) / 2
    half = abs(chord) / 2
    grown = max(1.0, half)
    rise = math.sqrt(max(grown * grown - half * half, 0.0)) * (1 if large != sweep else -1)
    centre = middle + chord.unit.left * rise if half else middle
    sweep_rad = _swept(one - centre, two - centre, sweep)
    back = Affine.turn(turn_deg) @ Affine.scale(radius_x * grown, radius_y * grown)
    unit_arc = Arc.about(ORIGIN, 1.0, (one - centre).direction_rad, sweep_rad)
    onto = Affine.move(*_of_plane(centre, radius_x, radius_y, turn_deg)) @ back
    if math.isclose(radius_x, radius_y, rel_tol=ROUND_SHARE):
        return [Arc(start, end, onto(ORIGIN), radius_x * grown, sweep_rad)]
    return _joined(start, end, [_mapped(cubic, onto) for cubic in arc_as_cubics(unit_arc)])


def _swept(one: Point, two: Point, positive: bool) -> float:
    """The angle from one spoke to another, in the direction asked for."""
    turned = math.atan2(one.cross(two), one.dot(two)) % math.tau
    return turned if positive else turned - math.tau


def _of_plane(point: Point, radius_x: float, radius_y: float, turn_deg: float) -> Point:
    return (Affine.turn(turn_deg) @ Affine.scale(radius_x, radius_y))(point)


def _mapped(cubic: Cubic, onto: Affine) -> Cubic:
    return Cubic(onto(cubic.start), onto(cubic.control1), onto(cubic.control2), onto(cubic.end))


def _joined(start: Point, end: Point, cubics: Sequence[Cubic]) -> list[Segment]:
    """Cubics whose outer ends are the points as written."""
    nodes = [start, *(cubic.start for cubic in cubics[1:]), end]
    return [Cubic(nodes[i], cubic.control1, cubic.control2, nodes[i + 1]) for i, cubic in enumerate(cubics)]


@dataclass
class _Pen:
    """What has been drawn so far: finished chains, the open one, and the points that the next command needs."""

    paths: list[Path] = field(default_factory=list)
    segments: list[Segment] = field(default_factory=list)
    at: Point = ORIGIN
    first: Point = ORIGIN
    control: Point | None = None
    control_kind: str = ""

    def move(self, to: Point) -> None:
        self.lift()
        self.at = self.first = to

    def line(self, to: Point) -> None:
        self.segments.append(Line(self.at, to))
        self.at = to

    def cubic(self, control1: Point, control2: Point, to: Point) -> None:
        self.segments.append(Cubic(self.at, control1, control2, to))
        self.control, self.control_kind, self.at = control2, "C", to

    def quadratic(self, control: Point, to: Point) -> None:
        third = Cubic(self.at, self.at + (control - self.at) * (2 / 3), to + (control - to) * (2 / 3), to)
        self.segments.append(third)
        self.control, self.control_kind, self.at = control, "Q", to

    def reflected(self, kind: str) -> Point:
        """The last control point seen from the other side, if the command before was of the same kind."""
        if self.control is None or self.control_kind != kind:
            return self.at
        return self.at * 2 - self.control

    def arc(self, radii: Point, turn_deg: float, large: bool, sweep: bool, to: Point) -> None:
        self.segments.extend(elliptic_arc(self.at, to, radii.x, radii.y, turn_deg, large, sweep))
        self.at = to

    def close(self) -> None:
        if self.at != self.first or not self.segments:
            self.line(self.first)
        self.paths.append(Path(tuple(self.segments), closed=True))
        self.segments, self.at = [], self.first

    def lift(self) -> None:
        if self.segments:
            self.paths.append(Path(tuple(self.segments)))
            self.segments = []

    def finished(self) -> tuple[Path, ...]:
        self.lift()
        return tuple(self.paths)


@dataclass
class _Reading:
    """Walks over path data from command to command."""

    data: str
    pen: _Pen
    place: int = 0
    base: Point = ORIGIN
    """What the points of a command are counted from."""

    def all(self) -> None:
        """Read every command."""
        command = ""
        while not self._at_end():
            command = self._command(command)
            kind = command.upper()
            self.base = self.pen.at if command.islower() else ORIGIN
            _COMMANDS[kind](self)
            if kind not in _CURVES:
                self.pen.control = None

    def _command(self, before: str) -> str:
        """The next command; further numbers repeat the one before, those after M and m are lines."""
        found = _COMMAND.match(self.data, self.place)
        if found and (before or found.group(1) in "Mm"):
            self.place = found.end()
            return found.group(1)
        if found or not before:
            raise self._mistake("path data begins with M; it is wanted")
        if before in "Zz":
            raise self._mistake("a command such as M or L is wanted")
        return {"M": "L", "m": "l"}.get(before, before)

    def _at_end(self) -> bool:
        blank = _BLANK.match(self.data, self.place)
        return blank is not None and blank.end() == len(self.data)

    def _mistake(self, wanted: str) -> _MistakeError:
        return _MistakeError(f"{wanted} at character {self.place + 1}")

    def number(self) -> float:
        found = _NUMBER.match(self.data, self.place)
        if not found:
            raise self._mistake("a number is wanted")
        value = float(found.group(1))
        if not abs(value) <= LARGEST_NUMBER:
            raise self._mistake(f"a number up to {LARGEST_NUMBER:g} is wanted")
        self.place = found.end()
        return value

    def flag(self) -> bool:
        found = _FLAG.match(self.data, self.place)
        if not found:
            raise self._mistake("0 or 1 is wanted")
        self.place = found.end()
        return found.group(1) == "1"

    def point(self) -> Point:
        x = self.number()
        return Point(x, self.number()) + self.base

    def level(self) -> Point:
        return Point(self.number() + self.base.x, self.pen.at.y)

    def upright(self) -> Point:
        return Point(self.pen.at.x, self.number() + self.base.y)

    def arc(self) -> None:
        radii = Point(self.number(), self.number())
        turn, large, sweep = self.number(), self.flag(), self.flag()
        self.pen.arc(radii, turn, large, sweep, self.point())


_COMMANDS: dict[str, Callable[[_Reading], None]] = {
    "M": lambda here: here.pen.move(here.point()),
    "Z": lambda here: here.pen.close(),
    "L": lambda here: here.pen.line(here.point()),
    "H": lambda here: here.pen.line(here.level()),
    "V": lambda here: here.pen.line(here.upright()),
    "C": lambda here: here.pen.cubic(here.point(), here.point(), here.point()),
    "S": lambda here: here.pen.cubic(here.pen.reflected("C"), here.point(), here.point()),
    "Q": lambda here: here.pen.quadratic(here.point(), here.point()),
    "T": lambda here: here.pen.quadratic(here.pen.reflected("Q"), here.point()),
    "A": _Reading.arc,
}
"""What each command draws (SVG 1.1, section 8.3)."""
