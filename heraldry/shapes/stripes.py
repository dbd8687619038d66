"""Stripes side by side that step and taper for speed, and bursts of rays; millimetres."""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Path
from heraldry.shapes.checks import LARGEST, at_least, positive
from heraldry.shapes.curves import placed
from heraldry.shapes.rounds import sector_path
from heraldry.shapes.table import Angle, Count, Length, Number, Place, shape

LEAST_LAST_MM = 1e-3
"""The thinnest last stripe, far below anything that prints."""

Toward = Literal["left", "right"]


@shape
def stripes(
    stripes: Count,
    length: Length,
    width: Length | None = None,
    gap: Length | None = None,
    step: Length = 0.0,
    taper: Number = 1.0,
    tip: Number = 1.0,
    slant: Angle = 0.0,
    toward: Toward = "right",
    centre: Place = ORIGIN,
) -> Outline:
    """So many `stripes`, the longest on top; each next one is `step` shorter and `taper` times as thick.

    `length` is that of the longest, a `gap` parts them. They run `toward` one side and are cut at the other, where only
    a share `tip` of their `width` is left: at 0 they come to a point. `slant` leans their ends from upright, to the
    right.
    """
    count = at_least("stripes", stripes, 1)
    if not 0 < taper <= 4 or not 0 <= tip <= 1 or not -80 <= slant <= 80:
        raise GeometryError(
            f"taper is {taper:g}, tip {tip:g} and slant {slant:g}: they must be within 0 to 4, 0 to 1 and -80 to 80"
        )
    if positive("length", length) - abs(step) * (count - 1) <= 0:
        raise GeometryError(f"a step of {step:g} mm leaves nothing of the last of {count} stripes {length:g} mm long")
    width = 0.07 * length if width is None else positive("width", width)
    gap = 0.6 * width if gap is None else at_least("gap", gap, 0.0)
    _check_last(count, width, taper)
    widths = [width * taper**i for i in range(count)]
    lean = math.tan(math.radians(slant))
    middle = (sum(widths) + gap * (count - 1)) / 2
    paths = []
    for i, thick in enumerate(widths):
        middle -= thick / 2
        paths.append(_stripe(length, step * i, middle, thick / 2, tip, lean, toward))
        middle -= thick / 2 + gap
    return placed(Outline.of(paths), centre)


@shape
def rays(
    rays: Count,
    outer: Length,
    inner: Length | None = None,
    share: Number = 0.5,
    short: Number = 1.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A sunburst of `rays` from the radius `inner` to `outer`, one on top; `share` is the inked part of each turn.

    Every second ray is only `short` of the length of the others.
    """
    count = at_least("rays", rays, 2)
    inner = 0.4 * positive("outer", outer) if inner is None else inner
    if not 0 <= inner < outer or not 0 < share < 1 or not 0 < short <= 1:
        raise GeometryError(
            f"inner {inner:g} mm must be less than outer {outer:g} mm, share {share:g} and short {short:g} lie within "
            f"0 and 1"
        )
    wide, pitch = math.tau * share / count, math.tau / count
    reaches = (outer, inner + short * (outer - inner))
    starts = [math.pi / 2 - wide / 2 + pitch * i for i in range(count)]
    paths = [sector_path(inner, reaches[i % 2], start, wide) for i, start in enumerate(starts)]
    return placed(Outline.of(paths), centre, turn)


def _check_last(count: int, width: float, taper: float) -> None:
    """By logarithms, as a power of so many may be no number any more."""
    last = math.log10(width) + (count - 1) * math.log10(taper)
    if not LEAST_LAST_MM <= 10 ** min(max(last, -9), 9) <= LARGEST:
        raise GeometryError(
            f"the last of {count} stripes, {width:g} mm thick and each {taper:g} times the one before, would be "
            f"1e{last:.0f} mm thick: a taper nearer to 1 can be drawn"
        )


def _stripe(length: float, cut: float, middle: float, half: float, tip: float, lean: float, toward: Toward) -> Path:
    """One stripe about a level line; its leading end keeps its place on the slant, its trailing end is cut shorter."""
    left, right = (-length / 2 + cut, length / 2) if toward == "right" else (-length / 2, length / 2 - cut)
    left_half, right_half = (tip * half, half) if toward == "right" else (half, tip * half)
    corners = [
        (left, middle - left_half),
        (right, middle - right_half),
        (right, middle + right_half),
        (left, middle + left_half),
    ]
    places = dict.fromkeys(Point(x + y * lean, y) for x, y in corners)  # a point has both its corners in one place
    return Path.through(places, closed=True)
