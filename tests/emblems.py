"""The emblems that the set operations are measured on: expressions of the kinds that heralds are made of.

Letters come from a font package (Source Serif, SIL Open Font License); everything else is drawn here.
"""

from __future__ import annotations

import functools
import math

import font_source_serif_pro
import numpy as np
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import Difference, Intersection, SetExpression, Union, clean
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment
from tests.strategies import box, circle, polygon, ring, star

CAP_HEIGHT_MM = 2.2


@functools.cache
def font() -> TTFont:
    return TTFont(font_source_serif_pro.font_files_otf["SourceSerifProBold"])


@functools.cache
def letter(character: str) -> tuple[Outline, float]:
    """A letter of CAP_HEIGHT_MM on the origin, and its advance in mm."""
    glyphs = font().getGlyphSet()
    name = font().getBestCmap()[ord(character)]
    pen = DecomposingRecordingPen(glyphs)
    glyphs[name].draw(pen)
    scale = CAP_HEIGHT_MM / font()["OS/2"].sCapHeight
    return clean(Outline.of(paths_of(pen.value, scale))), glyphs[name].width * scale


def paths_of(strokes: list[tuple[str, tuple[tuple[float, float], ...]]], scale: float) -> list[Path]:
    paths: list[Path] = []
    segments: list[Segment] = []
    for verb, points in strokes:
        to = [Point(round(x * scale, 6), round(y * scale, 6)) for x, y in points]
        if verb == "moveTo":
            first = at = to[0]
            segments = []
        elif verb == "lineTo" and to[0] != at:
            segments.append(Line(at, to[0]))
            at = to[0]
        elif verb == "curveTo":
            segments.append(Cubic(at, *to))
            at = to[2]
        elif verb == "closePath":
            if at != first:
                segments.append(Line(at, first))
            paths.append(Path(tuple(segments), closed=True))
    return paths


def straight_text(text: str, x: float = 0.0, y: float = 0.0) -> Outline:
    placed = []
    for character in text:
        outline, advance = letter(character)
        placed.append(outline.transformed(Affine.move(x, y)))
        x += advance
    return Outline.gather(placed)


def round_text(text: str, radius: float) -> Outline:
    placed = []
    for i, character in enumerate(text):
        outline, advance = letter(character)
        turn = Affine.turn(-360.0 * i / len(text))
        placed.append(outline.transformed(turn @ Affine.move(-advance / 2, radius)))
    return Outline.gather(placed)


def shield() -> Outline:
    low, right, left = Point(0, -12.5), Point(10, 0), Point(-10, 0)
    return Outline.of(
        [
            Path(
                (
                    Line(Point(10, 12), Point(-10, 12)),
                    Line(Point(-10, 12), left),
                    Cubic(left, Point(-10, -6), Point(-5, -10), low),
                    Cubic(low, Point(5, -10), Point(10, -6), right),
                    Line(right, Point(10, 12)),
                ),
                closed=True,
            )
        ]
    )


def keystone(scale: float, radius: float) -> Outline:
    """A keystone with round corners; corners counter-clockwise."""
    corners = [Point(x * scale, y * scale) for x, y in ((-12, -12), (12, -12), (8, 12), (-8, 12))]
    arcs = []
    for i, corner in enumerate(corners):
        back, on = (corners[i - 1] - corner).unit, (corners[(i + 1) % 4] - corner).unit
        half = math.acos(back.dot(on)) / 2
        reach = radius / math.tan(half)
        centre = corner + (back + on).unit * (radius / math.sin(half))
        arcs.append(Arc(corner + back * reach, corner + on * reach, centre, radius, math.pi - 2 * half))
    segments: list[Segment] = []
    for i, arc in enumerate(arcs):
        segments += [arc, Line(arc.end, arcs[(i + 1) % 4].start)]
    return Outline.of([Path(tuple(segments), closed=True)])


def stripes(count: int, width: float = 13.0, top: float = 12.5) -> Outline:
    pitch = 2 * top / count
    return Outline.gather([box(-width, -top + pitch * k, width, -top + pitch * (k + 0.5)) for k in range(count)])


def waves(count: int) -> Outline:
    bands = []
    for k in range(count):
        y = -12.0 + 24.0 * k / count
        crest = [
            Cubic(Point(x, y), Point(x + 1.4, y + lift), Point(x + 2.6, y + lift), Point(x + 4, y))
            for x, lift in zip(range(-14, 14, 4), (1.0, -1.0) * 4, strict=False)
        ]
        down = Point(0, -1.1)
        trough = [Cubic(c.start + down, c.control1 + down, c.control2 + down, c.end + down) for c in crest]
        segments: list[Segment] = [*trough, Line(trough[-1].end, crest[-1].end)]
        segments += [c.reversed() for c in reversed(crest)]
        segments.append(Line(crest[0].start, trough[0].start))
        bands.append(Outline.of([Path(tuple(segments), closed=True)]))
    return Outline.gather(bands)


def coast(count: int = 270) -> Outline:
    """A ragged outline like that of a state: a seeded random walk of the radius."""
    walk = np.cumsum(np.random.default_rng(3).normal(0, 0.15, count))
    radius = 9 + walk - np.linspace(0, walk[-1], count)
    angle = np.linspace(0, 2 * np.pi, count, endpoint=False)
    xy = np.round(np.stack((radius * np.cos(angle), radius * np.sin(angle)), axis=1), 6)
    return polygon(*xy.tolist())


@functools.cache
def emblems() -> dict[str, SetExpression]:
    """Expressions about 25 mm wide, by name."""
    return {
        "ring with letters cut out": Difference(ring(0, 0, 12.5, 8), (round_text("GREAT VALLEY & RIVER LINE", 9.2),)),
        "two overlapping rings": Union((ring(0, 0, 12.5, 10), ring(8, 0, 12.5, 10))),
        "shield minus star": Difference(shield(), (star(0, 1, 7, 2.8, 5),)),
        "letters and a bar together": Union((straight_text("RIVERS & BRIDGES"), box(-1, 0.9, 25, 1.3))),
        "keystone with a window": Difference(keystone(1, 1.5), (keystone(0.88, 1.2), box(-13, -3, 13, 3))),
        "stripes clipped by a circle": Intersection((stripes(12), circle(0, 0, 12.5))),
        "waves clipped by a circle": Intersection((waves(8), circle(0, 0, 12.5))),
        "coast minus five rings": Difference(
            coast(), tuple(ring(2 * i - 4, i * 1.3 - 2, 1.5 + 0.3 * i, 1.2 + 0.3 * i) for i in range(5))
        ),
    }


def scaled(expression: SetExpression, factor: float) -> SetExpression:
    """The expression with every outline scaled."""
    if isinstance(expression, Outline):
        return expression.transformed(Affine.scale(factor))
    if isinstance(expression, Difference):
        return Difference(scaled(expression.base, factor), tuple(scaled(cut, factor) for cut in expression.cuts))
    return type(expression)(tuple(scaled(part, factor) for part in expression.parts))
