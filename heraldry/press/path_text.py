"""A ring spelled in the path words of a text format: SVG path data, or the operators of PDF and PostScript.

Every such format knows the same four moves and differs only in its words, which stand here side by side.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Segment
from heraldry.press.number_format import fixed
from heraldry.press.writer import Ring


@dataclass(frozen=True, slots=True)
class PathWords:
    """The four words of a path language, ``{}`` standing for the coordinates."""

    move: str
    line: str
    cubic: str
    close: str


SVG_WORDS = PathWords("M{}", "L{}", "C{}", "Z")
POSTFIX_WORDS = PathWords("{} m", "{} l", "{} c", "h")
"""PDF has these operators; our PostScript files define procedures of the same names."""


def spell(ring: Ring, words: PathWords, decimals: int) -> Iterator[str]:
    """The strokes of a closed ring, one text each.

    >>> a, b, c = Point(0, 0), Point(2, 0), Point(0, 1.5)
    >>> " ".join(spell((Line(a, b), Line(b, c), Line(c, a)), SVG_WORDS, 3))
    'M0 0 L2 0 L0 1.5 Z'
    """
    yield words.move.format(_coordinates((ring[0].start,), decimals))
    # Closing draws the last straight line by itself.
    for segment in ring[:-1] if isinstance(ring[-1], Line) else ring:
        yield _stroke(segment, words, decimals)
    yield words.close


def _stroke(segment: Segment, words: PathWords, decimals: int) -> str:
    match segment:
        case Line():
            return words.line.format(_coordinates((segment.end,), decimals))
        case Cubic():
            points = segment.control1, segment.control2, segment.end
            return words.cubic.format(_coordinates(points, decimals))
        case Arc():
            raise TypeError("a format without arcs was given an arc")


def _coordinates(points: tuple[Point, ...], decimals: int) -> str:
    return " ".join(fixed(value, decimals) for point in points for value in point)
