"""Straight-sided shapes: box, diamond, regular polygon, star, and what the user's own points bound; millimetres."""

from __future__ import annotations

import math

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import clean
from heraldry.geometry.corners import Corner
from heraldry.geometry.corners import polygon as cornered
from heraldry.geometry.offset import stroke
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Path
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import placed
from heraldry.shapes.table import Angle, Count, Flag, Length, Place, Places, shape


@shape
def box(
    box: Length,
    height: Length | None = None,
    corner: Corner = "square",
    radius: Length = 0.0,
    slant: Angle = 0.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A square, or with a `height` a rectangle; `box` is its width, `slant` leans its sides by so much from upright.

    `corner` and `radius` finish its corners.
    """
    half_width, half_height = box / 2, positive("height", box if height is None else height) / 2
    if not -80 <= slant <= 80:
        raise GeometryError(f"slant is {slant:g} degrees, it must be between -80 and 80")
    lean = half_height * math.tan(math.radians(slant))
    corners = [
        Point(-half_width - lean, -half_height),
        Point(half_width - lean, -half_height),
        Point(half_width + lean, half_height),
        Point(-half_width + lean, half_height),
    ]
    return placed(Outline.of([cornered(corners, corner, radius)]), centre, turn)


@shape
def diamond(
    diamond: Length,
    height: Length | None = None,
    corner: Corner = "square",
    radius: Length = 0.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A square on its corner, stretched at will; `diamond` is its width from corner to corner.

    `height` is measured likewise; `corner` and `radius` finish its corners.
    """
    half_width = diamond / 2
    half_height = positive("height", diamond if height is None else height) / 2
    corners = [Point(half_width, 0), Point(0, half_height), Point(-half_width, 0), Point(0, -half_height)]
    return placed(Outline.of([cornered(corners, corner, radius)]), centre, turn)


@shape
def regular(
    regular: Count,
    radius: Length,
    corner: Corner = "square",
    corner_radius: Length = 0.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A regular polygon with `regular` corners, one of them on top; `radius` reaches to the corners.

    `corner` and `corner_radius` finish them.
    """
    count = at_least("regular", regular, 3)
    corners = [Point.polar(positive("radius", radius), _clock_rad(i, count)) for i in range(count)]
    return placed(Outline.of([cornered(corners, corner, corner_radius)]), centre, turn)


@shape
def star(
    star: Count, radius: Length, inner: Length | None = None, centre: Place = ORIGIN, turn: Angle = 0.0
) -> Outline:
    """A star with `star` points, one on top; left alone, `inner` is where straight edges carry through.

    `radius` reaches to the points, `inner` to the corners between them.
    """
    count = at_least("star", star, 3)
    positive("radius", radius)
    if inner is None:
        inner = _inner_radius(count, radius)
    if not 0 < inner < radius:
        raise GeometryError(f"inner is {inner:g} mm, it must be more than 0 and less than the radius {radius:g} mm")
    reach = (radius, inner)
    corners = [Point.polar(reach[i % 2], _clock_rad(i, 2 * count)) for i in range(2 * count)]
    return placed(Outline.of([Path.through(corners, closed=True)]), centre, turn)


@shape
def polygon(polygon: Places, corner: Corner = "square", radius: Length = 0.0) -> Outline:
    """What lies inside your own corner points; `polygon` lists them in their order.

    `corner` and `radius` finish them.
    """
    if len(polygon) < 3:
        raise GeometryError(f"a polygon has {len(polygon)} points, it needs at least 3")
    return clean(Outline.of([cornered(polygon, corner, radius)]), rule="nonzero")


@shape
def polyline(polyline: Places, width: Length, closed: Flag = False, round_ends: Flag = False) -> Outline:
    """A line of a `width` through your own points; `polyline` lists them in their order.

    A `closed` one returns to its first point; an open one may have `round_ends`.
    """
    if len(set(polyline)) < 2:
        raise GeometryError("a polyline needs at least 2 different points")
    path = Path.through(polyline, closed=closed)
    return stroke(path, positive("width", width), ends="round" if round_ends else "flat", corner="sharp")


def _clock_rad(i: int, count: int) -> float:
    """The angle of the i-th of so many equal divisions, counted from the top, counter-clockwise."""
    return math.pi / 2 + math.tau * i / count


def _inner_radius(count: int, radius: float) -> float:
    """Where lines from each point to the next but one cross: R·cos(2π/n)/cos(π/n), for n of 5 or more."""
    if count < 5:
        return 0.4 * radius
    return radius * math.cos(math.tau / count) / math.cos(math.pi / count)
