"""Round shapes: circle, ring, a set of rings, ellipse, and a sector of a ring; millimetres."""

from __future__ import annotations

import math

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Path
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Angle, Count, Length, Place, shape


def circle_path(centre: Point, radius: float) -> Path:
    """A full circle, counter-clockwise, as two half turns from the right."""
    right, left = centre + Point(radius, 0.0), centre - Point(radius, 0.0)
    halves = (Arc(right, left, centre, radius, math.pi), Arc(left, right, centre, radius, math.pi))
    return Path(halves, closed=True)


def sector_path(inner: float, outer: float, start_rad: float, sweep_rad: float, centre: Point = ORIGIN) -> Path:
    """The piece between two circles and two radii, counter-clockwise; a wedge where the inner circle is a point."""
    rim = Arc.about(centre, outer, start_rad, sweep_rad)
    if inner == 0:
        return Path((Line(centre, rim.start), rim, Line(rim.end, centre)), closed=True)
    back = Arc.about(centre, inner, start_rad, sweep_rad).reversed()
    return Path((rim, Line(rim.end, back.start), back, Line(back.end, rim.start)), closed=True)


@shape
def circle(circle: Length, centre: Place = ORIGIN) -> Outline:
    """A filled circle; `circle` is its radius."""
    return Outline.of([circle_path(centre, circle)])


@shape
def ring(ring: Length, width: Length | None = None, centre: Place = ORIGIN) -> Outline:
    """A band round a circle; `ring` is its outer radius, `width` its thickness inward."""
    width = 0.1 * ring if width is None else width
    if not 0 < width < ring:
        raise GeometryError(f"width is {width:g} mm, it must be more than 0 and less than the radius {ring:g} mm")
    return Outline.of([circle_path(centre, ring), circle_path(centre, ring - width).reversed()])


@shape
def rings(
    rings: Length,
    width: Length | None = None,
    gap: Length | None = None,
    count: Count = 2,
    centre: Place = ORIGIN,
) -> Outline:
    """So many (`count`) bands of a `width`; `rings` is the outermost radius, each next one lies `gap` further in."""
    width = 0.12 * rings / positive("count", count) if width is None else positive("width", width)
    gap = 0.8 * width if gap is None else positive("gap", gap)
    innermost = rings - count * width - (count - 1) * gap
    if innermost <= 0:
        raise GeometryError(
            f"{count} rings of {width:g} mm with gaps of {gap:g} mm need more than the radius {rings:g} mm"
        )
    radii = [rings - i * (width + gap) for i in range(count)]
    paths = [(circle_path(centre, r), circle_path(centre, r - width).reversed()) for r in radii]
    return Outline.of(path for pair in paths for path in pair)


@shape
def ellipse(ellipse: Length, height: Length | None = None, centre: Place = ORIGIN, turn: Angle = 0.0) -> Outline:
    """A filled ellipse; `ellipse` is its width and `height` its height, before it is turned."""
    half_width = ellipse / 2
    across = Affine.scale(half_width, 0.62 * half_width if height is None else positive("height", height) / 2)
    unit = Outline.of([circle_path(ORIGIN, 1.0)])
    return unit.transformed(Affine.move(centre.x, centre.y) @ Affine.turn(turn) @ across)


@shape
def sector(
    sector: Length,
    width: Length | None = None,
    middle: Angle = 90.0,
    sweep: Angle = 90.0,
    centre: Place = ORIGIN,
) -> Outline:
    """A piece of a ring; `sector` is the outer radius, `middle` where it lies, `sweep` how far it reaches.

    `width` is its thickness inward; as wide as the radius it is a wedge.
    """
    width = 0.32 * sector if width is None else width
    if not 0 < width <= sector or not 0 < sweep < 360:
        raise GeometryError(
            f"width {width:g} mm must be within the radius {sector:g} mm, sweep {sweep:g} within 0 and 360"
        )
    path = sector_path(sector - width, sector, math.radians(middle - sweep / 2), math.radians(sweep), centre)
    return Outline.of([path])
