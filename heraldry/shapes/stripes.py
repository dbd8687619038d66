"""Stripes side by side: speed stripes that taper and step, warning slants, sunbursts; millimetres."""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Path
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.table import Angle, Count, Length, Number, Place, shape


@shape
def stripes(
    stripes: Count,
    length: Length,
    width: Length,
    gap: Length,
    step: Length = 0.0,
    taper: Number = 1.0,
    slant: Angle = 0.0,
    toward: Literal["left", "right"] = "right",
    centre: Place = ORIGIN,
) -> Outline:
    """Stripes under one another, the longest on top; each next one `step` shorter and `taper` times as thick."""
    count = at_least("stripes", stripes, 1)
    if not 0 < taper <= 4 or not -80 <= slant <= 80:
        raise GeometryError(f"taper is {taper:g} and slant {slant:g}, they must be within 0 to 4 and -80 to 80")
    if positive("length", length) - abs(step) * (count - 1) <= 0:
        raise GeometryError(f"a step of {step:g} mm leaves nothing of the last of {count} stripes {length:g} mm long")
    widths = [positive("width", width) * taper**i for i in range(count)]
    total = sum(widths) + gap * (count - 1)
    lean = math.tan(math.radians(slant))
    top = total / 2
    paths = []
    for i, thick in enumerate(widths):
        paths.append(_stripe(length, step * i, top, top - thick, lean, toward))
        top -= thick + gap
    return Outline.of(paths).transformed(Affine.move(centre.x, centre.y))


@shape
def rays(
    rays: Count, inner: Length, outer: Length, share: Number = 0.5, centre: Place = ORIGIN, turn: Angle = 0.0
) -> Outline:
    """A sunburst of `rays` wedges from one radius to another; `share` is the inked part of each turn."""
    count = at_least("rays", rays, 2)
    if not 0 <= inner < outer or not 0 < share < 1:
        raise GeometryError(
            f"inner {inner:g} mm must be less than outer {outer:g} mm, and share {share:g} within 0 and 1"
        )
    wedges = [
        _ray(math.radians(90 + turn) + math.tau * i / count, math.pi * share / count, inner, outer)
        for i in range(count)
    ]
    return Outline.of(wedges).transformed(Affine.move(centre.x, centre.y))


def _stripe(length: float, cut: float, top: float, bottom: float, lean: float, toward: str) -> Path:
    """One stripe: its leading end keeps its place on the slant, its trailing end is cut shorter."""
    left, right = -length / 2, length / 2
    if toward == "right":
        left += cut
    else:
        right -= cut
    corners = [(left, bottom), (right, bottom), (right, top), (left, top)]
    return Path.through((Point(x + y * lean, y) for x, y in corners), closed=True)


def _ray(middle: float, half: float, inner: float, outer: float) -> Path:
    edges = [
        Point.polar(r, middle + side) for r, side in ((inner, -half), (outer, -half), (outer, half), (inner, half))
    ]
    return Path.through(edges, closed=True)
