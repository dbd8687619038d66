"""Arrows and chevrons; millimetres, centred on their box before they are turned."""

from __future__ import annotations

import math

from heraldry.errors import GeometryError
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Path
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import corners, placed
from heraldry.shapes.table import Angle, Count, Flag, Length, Place, shape


@shape
def arrow(
    arrow: Length,
    width: Length | None = None,
    head: Length | None = None,
    point: Length | None = None,
    barb: Length = 0.0,
    notch: Length = 0.0,
    double: Flag = False,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """An arrow to the right; `arrow` is its length, `width` that of its shaft, `head` that of its head.

    The head is `point` long, and its corners sweep back by `barb`; `notch` cuts into the tail; a `double` arrow has a
    head at either end.
    """
    head = 0.42 * arrow if head is None else positive("head", head)
    width = 0.38 * head if width is None else positive("width", width)
    room = (arrow - notch) / (2 if double else 1) - barb
    point = min(0.85 * head, 0.7 * room) if point is None else positive("point", point)
    _check_arrow(arrow, width, head, point, barb, notch, double)
    half, tip = width / 2, arrow / 2
    neck = tip - point + barb * width / head if barb else tip - point
    below = (
        [Point(neck, -half), Point(tip - point - barb, -head / 2)]
        if barb
        else [
            Point(tip - point, -half),
            Point(tip - point, -head / 2),
        ]
    )
    if double:
        right = [*below, Point(tip, 0.0), *(Point(p.x, -p.y) for p in reversed(below))]
        ring = [*right, *(-p for p in right)]
    else:
        tail = [Point(-tip, half), Point(notch - tip, 0.0), Point(-tip, -half)]
        ring = [*below, Point(tip, 0.0), *(Point(p.x, -p.y) for p in reversed(below)), *tail]
    return placed(Outline.of([Path.through(ring, closed=True)]), centre, turn)


@shape
def chevron(
    chevron: Length,
    rise: Length | None = None,
    width: Length | None = None,
    count: Count = 1,
    gap: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """Bent stripes that point upward; `chevron` is their span, `rise` how far the point is above the ends.

    There are `count` of them, each `width` thick, a `gap` between two.
    """
    half = chevron / 2
    rise = 0.4 * chevron if rise is None else positive("rise", rise)
    width = 0.18 * chevron if width is None else positive("width", width)
    gap = 0.5 * width if gap is None else positive("gap", gap)
    count = at_least("count", count, 1)
    upright = math.hypot(half, rise) / half  # what a width across a slanting limb is on an upright line
    tall = rise + upright * (count * width + (count - 1) * gap)
    feet = [tall / 2 - rise - upright * (width + i * (width + gap)) for i in range(count)]
    limbs = [_chevron(half, foot, rise, upright * width) for foot in feet]
    return placed(Outline.gather(limbs), centre, turn)


def _chevron(half: float, foot: float, rise: float, thick: float) -> Outline:
    lower = [(-half, foot), (0.0, foot + rise), (half, foot)]
    return corners(*lower, *((x, y + thick) for x, y in reversed(lower)))


def _check_arrow(
    arrow: float, width: float, head: float, point: float, barb: float, notch: float, double: bool
) -> None:
    heads = 2 if double else 1
    if not width < head:
        raise GeometryError(f"head is {head:g} mm, it must be more than the width of the shaft {width:g} mm")
    if barb < 0 or notch < 0 or (double and notch):
        raise GeometryError(
            f"barb is {barb:g} mm and notch {notch:g} mm, they must be at least 0, and a double arrow has no notch"
        )
    if not point * (head - width) > 2 * barb * width:
        raise GeometryError(
            f"barb is {barb:g} mm, on a head {head:g} mm wide and {point:g} mm long it must be less than "
            f"{point * (head - width) / (2 * width):.4g} mm, or the shaft would reach through the head"
        )
    if not heads * (point + barb) + notch < arrow:
        raise GeometryError(
            f"{heads} head(s) {point:g} mm long with barbs of {barb:g} mm and a notch of {notch:g} mm leave no shaft "
            f"on an arrow {arrow:g} mm long"
        )
