"""Shields and keystones, from a few honest numbers; millimetres, centred on their box."""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.corners import polygon as cornered
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Segment
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import bow, closed, placed
from heraldry.shapes.table import Length, Place, shape

ShieldTop = Literal["flat", "arched", "hollow"]


@shape
def shield(
    shield: Length,
    height: Length | None = None,
    top: ShieldTop = "flat",
    rise: Length | None = None,
    shoulder: Length | None = None,
    centre: Place = ORIGIN,
) -> Outline:
    """A shield; `shield` is its width, `shoulder` how far its sides fall straight, `rise` the depth of its `top`.

    `height` is that of the whole.
    """
    half = shield / 2
    height = 1.18 * shield if height is None else positive("height", height)
    rise = _top_rise(top, shield, rise)
    shoulder = _default_shoulder(shield, height - rise) if shoulder is None else shoulder
    head, foot = height / 2, -height / 2
    springing = (head - rise if top == "arched" else head) - shoulder
    if shoulder < 0 or springing - foot < half - 1e-9:
        raise GeometryError(
            f"a shield {shield:g} mm wide needs at least {half:g} mm below its shoulders for its point, "
            f"found {springing - foot:g} mm: make it taller or the shoulder shorter"
        )
    sides = _point_of_shield(half, springing, foot)
    corner = head - rise if top == "arched" else head
    ring = closed([*sides, *_shield_top(top, half, corner, rise)])
    return placed(Outline.of([ring]), centre)


@shape
def keystone(
    keystone: Length,
    height: Length | None = None,
    foot: Length | None = None,
    shoulder: Length = 0.0,
    lip: Length = 0.0,
    radius: Length = 0.0,
    centre: Place = ORIGIN,
) -> Outline:
    """The wedge that closes an arch; `keystone` is its top width, `foot` its bottom one.

    `height` is that of the whole, a `radius` rounds its corners. A `shoulder` (height) and a `lip` (overhang) make a
    head block on top of the wedge.
    """
    half = keystone / 2
    tall = 0.96 * keystone if height is None else positive("height", height)
    foot_half = (0.62 * keystone if foot is None else positive("foot", foot)) / 2
    if not 0 <= shoulder < tall or not 0 <= lip < half or (lip > 0) != (shoulder > 0):
        raise GeometryError(
            "shoulder and lip go together, the shoulder less than the height, the lip less than half the width"
        )
    right = [Point(foot_half, -tall / 2)]
    if lip:
        right += [Point(half - lip, tall / 2 - shoulder), Point(half, tall / 2 - shoulder)]
    right.append(Point(half, tall / 2))
    left = [Point(-point.x, point.y) for point in reversed(right)]
    path = cornered([*right, *left], "round", radius)
    return placed(Outline.of([path]), centre)


def _top_rise(top: ShieldTop, width: float, rise: float | None) -> float:
    """How far the middle of a top is off its corners, at most half a circle's height."""
    if top == "flat":
        return 0.0
    most = width / 2 if top == "arched" else width / 4
    rise = 0.09 * width if rise is None else at_least("rise", rise, 0.0)
    if rise > most:
        raise GeometryError(f"rise is {rise:g} mm, a shield {width:g} mm wide can be {top} by at most {most:g} mm")
    return rise


def _default_shoulder(width: float, body: float) -> float:
    """Sides straight for a third of the body, but never so long that no point is left."""
    return max(0.0, min(body / 3, body - width / 2))


def _point_of_shield(half: float, springing: float, foot: float) -> list[Segment]:
    """Two arcs, upright where they leave the sides, that meet in the point.

    The radius follows from the chord: (R − half)² + drop² = R², so R = (half² + drop²) / (2·half).
    """
    drop = springing - foot
    radius = (half * half + drop * drop) / (2 * half)
    sweep = math.asin(min(1.0, drop / radius))
    point, left, right = Point(0, foot), Point(-half, springing), Point(half, springing)
    return [
        Arc(left, point, Point(radius - half, springing), radius, sweep),
        Arc(point, right, Point(half - radius, springing), radius, sweep),
    ]


def _shield_top(top: ShieldTop, half: float, corner: float, rise: float) -> list[Segment]:
    right, left = Point(half, corner), Point(-half, corner)
    if top == "flat":
        return [Line(right, left)]
    if top == "arched":
        return [bow(right, left, rise)]
    middle = Point(0, corner)
    return [bow(right, middle, -rise), bow(middle, left, -rise)]
