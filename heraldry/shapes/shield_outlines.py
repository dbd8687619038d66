"""Shields of many outlines, each from its width and height; millimetres, centred on their box.

An outline is its right half, walked from the foot up to the top on the axis; the left half is its mirror image.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Segment
from heraldry.shapes.checks import positive
from heraldry.shapes.curves import both_sides, bow, closed, placed
from heraldry.shapes.frames import oval_path
from heraldry.shapes.table import Length, Place, shape

CrestOutline = Literal["round", "square", "pointed", "kite", "oval", "eared", "scooped", "bellied"]

LEAST_TALLNESS, MOST_TALLNESS = 1.05, 2.0
"""Height over width of a shield; outside these a foot or a top has no room, or the sides no bend."""
USUAL_TALLNESS = {"kite": 1.6, "oval": 1.3}
"""What height over width becomes an outline, where it is not 1.2."""


@shape
def crest(
    crest: Length, height: Length | None = None, outline: CrestOutline = "round", centre: Place = ORIGIN
) -> Outline:
    """A shield of one of many outlines; `crest` is its width, `outline` names its form.

    `round` has a half-round foot, `square` a straight foot with a small point, `pointed` straight sides and edges,
    `kite` an arched top and a long point, `oval` stands upright, `eared` draws its upper corners out to ears,
    `scooped` has them hollowed away, `bellied` swells below a waist and has a peak on top.
    """
    tall = USUAL_TALLNESS.get(outline, 1.2) * positive("crest", crest) if height is None else positive("height", height)
    if not LEAST_TALLNESS <= tall / crest <= MOST_TALLNESS:
        raise GeometryError(
            f"height is {tall:g} mm, a shield {crest:g} mm wide is {LEAST_TALLNESS * crest:g} to "
            f"{MOST_TALLNESS * crest:g} mm tall"
        )
    if outline == "oval":
        return placed(Outline.of([oval_path(tall / 2, crest / 2)]), centre, 90.0)
    right = RIGHT_HALVES[outline](crest / 2, tall / 2)
    return placed(Outline.of([closed(both_sides(right))]), centre)


def _round(x: float, y: float) -> list[Segment]:
    foot = Arc.about(Point(0.0, x - y), x, -math.pi / 2, math.pi / 2)
    return [foot, Line(foot.end, Point(x, y)), Line(Point(x, y), Point(0.0, y))]


def _square(x: float, y: float) -> list[Segment]:
    """A round corner, then an ogee that is level at the corner and comes down to the point."""
    corner, lip = 0.22 * x, 0.16 * x
    point, bend = Point(0.0, -y), Point(0.44 * x, lip - y)
    turn = Arc.about(Point(x - corner, lip - y + corner), corner, -math.pi / 2, math.pi / 2)
    return [_level_at_end(point, bend), Line(bend, turn.start), turn, *_up_and_over(turn.end, x, y)]


def _pointed(x: float, y: float) -> list[Segment]:
    side = Point(x, -0.1 * y)
    return [Line(Point(0.0, -y), side), *_up_and_over(side, x, y)]


def _kite(x: float, y: float) -> list[Segment]:
    shoulder = Point(x, y - x)
    return [_upright_at_end(Point(0.0, -y), shoulder), Arc.about(Point(0.0, y - x), x, 0.0, math.pi / 2)]


def _eared(x: float, y: float) -> list[Segment]:
    """The flank sweeps on from the belly out to the ear, the ear is hollowed off, the top sags between the ears."""
    belly, ear, tip, dip = Point(0.85 * x, -0.2 * y), Point(x, 0.76 * y), Point(0.7 * x, y), Point(0.0, 0.9 * y)
    foot = _upright_at_end(Point(0.0, -y), belly)
    return [foot, _upright_at_start(belly, ear), bow(ear, tip, -0.07 * x), bow(tip, dip, -0.04 * x)]


def _scooped(x: float, y: float) -> list[Segment]:
    bite = 0.36 * x
    shoulder = Point(x, -0.05 * y)
    scoop = Arc.about(Point(x, y), bite, -math.pi / 2, -math.pi / 2)
    foot = _upright_at_end(Point(0.0, -y), shoulder)
    return [foot, Line(shoulder, scoop.start), scoop, Line(scoop.end, Point(0.0, y))]


def _bellied(x: float, y: float) -> list[Segment]:
    """A hollow foot, a round belly drawn in to a waist, corners standing out, and a top that rises to a peak."""
    foot, belly, waist = Point(0.4 * x, -0.78 * y), Point(x, -0.2 * y), Point(0.83 * x, 0.52 * y)
    corner, peak = Point(0.92 * x, 0.84 * y), Point(0.0, y)
    flank = [_upright_at_end(foot, belly), _upright_at_start(belly, waist)]
    return [_level_at_end(Point(0.0, -y), foot), *flank, bow(waist, corner, -0.05 * x), bow(corner, peak, -0.1 * x)]


RIGHT_HALVES: dict[str, Callable[[float, float], list[Segment]]] = {
    "round": _round,
    "square": _square,
    "pointed": _pointed,
    "kite": _kite,
    "eared": _eared,
    "scooped": _scooped,
    "bellied": _bellied,
}
"""The right half of each outline from half its width and half its height."""


def _up_and_over(start: Point, x: float, y: float) -> list[Segment]:
    return [Line(start, Point(x, y)), Line(Point(x, y), Point(0.0, y))]


def _upright_at_end(start: Point, end: Point) -> Segment:
    """The arc that swells outward and arrives straight upward: half its sweep lies between chord and upright."""
    chord = end - start
    return bow(start, end, abs(chord) / 2 * math.tan(math.atan2(chord.x, chord.y) / 2))


def _upright_at_start(start: Point, end: Point) -> Segment:
    """The arc that sets out straight upward and leans to the side where it ends."""
    chord = end - start
    return bow(start, end, -abs(chord) / 2 * math.tan(math.atan2(chord.x, chord.y) / 2))


def _level_at_end(start: Point, end: Point) -> Segment:
    """The arc that is hollow from below and arrives level."""
    chord = end - start
    return bow(start, end, -abs(chord) / 2 * math.tan(math.atan2(chord.y, chord.x) / 2))
