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
from heraldry.shapes.curves import arriving, both_sides, bow, closed, placed, setting_out
from heraldry.shapes.frames import oval_path
from heraldry.shapes.table import Length, Place, shape

CrestOutline = Literal["round", "square", "pointed", "kite", "oval", "eared", "scooped", "bellied"]

UP, OUT = Point(0.0, 1.0), Point(1.0, 0.0)
"""The ways in which arcs leave and arrive."""

LEAST_TALLNESS, MOST_TALLNESS = 1.05, 2.0
"""Height over width of a shield; outside these a foot or a top has no room, or the sides no bend."""
USUAL_TALLNESS = {"kite": 1.6, "oval": 1.3}
"""What height over width becomes an outline, where it is not 1.2."""


@shape
def crest(
    crest: Length, height: Length | None = None, outline: CrestOutline = "round", centre: Place = ORIGIN
) -> Outline:
    """A shield of one of many outlines; `crest` is its width, `outline` names its form.

    `height` is 1.05 to 2 times the width. `round` has a half-round foot, `square` a straight foot with a small point,
    `pointed` straight sides and edges, `kite` an arched top and a long point, `oval` stands upright, `eared` draws its
    upper corners out to ears, `scooped` has them hollowed away, `bellied` swells below a waist and has a peak on top.
    """
    tall = USUAL_TALLNESS.get(outline, 1.2) * crest if height is None else positive("height", height)
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
    return [arriving(point, bend, OUT), Line(bend, turn.start), turn, *_up_and_over(turn.end, x, y)]


def _pointed(x: float, y: float) -> list[Segment]:
    side = Point(x, -0.1 * y)
    return [Line(Point(0.0, -y), side), *_up_and_over(side, x, y)]


def _kite(x: float, y: float) -> list[Segment]:
    shoulder = Point(x, y - x)
    return [arriving(Point(0.0, -y), shoulder, UP), Arc.about(Point(0.0, y - x), x, 0.0, math.pi / 2)]


def _eared(x: float, y: float) -> list[Segment]:
    """The flank sweeps on from the belly out to the ear, the ear is hollowed off, the top sags between the ears."""
    belly, ear, tip, dip = Point(0.84 * x, 0.16 * y), Point(x, 0.8 * y), Point(0.72 * x, y), Point(0.0, 0.88 * y)
    flank = [arriving(Point(0.0, -y), belly, UP), setting_out(belly, UP, ear)]
    return [*flank, bow(ear, tip, -0.07 * x), arriving(tip, dip, -OUT)]


def _scooped(x: float, y: float) -> list[Segment]:
    bite = 0.36 * x
    shoulder = Point(x, 0.22 * y)
    scoop = Arc.about(Point(x, y), bite, -math.pi / 2, -math.pi / 2)
    foot = arriving(Point(0.0, -y), shoulder, UP)
    return [foot, Line(shoulder, scoop.start), scoop, Line(scoop.end, Point(0.0, y))]


def _bellied(x: float, y: float) -> list[Segment]:
    """A hollow foot, a quarter circle to the belly, a flank that swings in to a waist and out to the corner, a peak."""
    foot, waist, corner = Point(0.36 * x, 0.24 * x - y), Point(0.84 * x, 0.5 * y), Point(0.94 * x, 0.86 * y)
    belly = foot + Point(x - foot.x, x - foot.x)
    along = (waist - belly).unit
    swung = along * (2 * along.y) - UP  # the way in which the arc of the flank arrives: UP mirrored in its chord
    below = [arriving(Point(0.0, -y), foot, OUT), setting_out(foot, OUT, belly)]
    return [
        *below,
        setting_out(belly, UP, waist),
        setting_out(waist, swung, corner),
        bow(corner, Point(0.0, y), -0.09 * x),
    ]


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
