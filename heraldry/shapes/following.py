"""A frame that follows another shape at a distance, in easy curves: a map, lettering, a figure. Millimetres.

The shape is grown by the distance and an ease, and shrunk again by the ease: so bays narrower than twice the ease are
bridged, outer corners are as round as the distance and inner ones as the ease. Curves are then fitted to it.
"""

from __future__ import annotations

import math

import shapely

from heraldry.errors import GeometryError
from heraldry.geometry.boolean import clean, subtract, to_polygon
from heraldry.geometry.fit import fit_outline
from heraldry.geometry.offset import offset
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Length, ShapeRef, shape

FIT_MM = 0.01
"""How far the curves stray from the true distance; nobody sees a hundredth."""

CHORD_MM = 0.001
"""How far the chords of round corners are off before curves are fitted to them."""

EASE_SHARE = 4.0
"""The default ease, in distances."""


@shape
def follow(follow: ShapeRef, by: Length, width: Length | None = None, ease: Length | None = None) -> Outline:
    """A frame that follows a shape at the distance `by`; `follow` is that shape's name, holes do not matter.

    With a `width` it is a line that begins at the distance, else all within it. Bays narrower than twice the `ease`
    are bridged. Raises GeometryError.
    """
    ease = EASE_SHARE * positive("by", by) if ease is None else positive("ease", ease)
    if follow.outline.is_empty:
        raise GeometryError("the shape to follow is empty")
    frame = _followed(to_polygon(follow.outline), by, ease)
    if width is None:
        return frame
    return subtract(offset(frame, positive("width", width)), frame)


def _followed(area: shapely.Geometry, by_mm: float, ease_mm: float) -> Outline:
    """Curves round an area at a distance, a ring for each part that stays apart."""
    shells = [shapely.Polygon(part.exterior) for part in shapely.get_parts(area)]
    chords = max(4, math.ceil(math.pi / 4 / math.acos(1.0 - min(0.5, CHORD_MM / (by_mm + ease_mm)))))
    grown = shapely.union_all(shells).buffer(by_mm + ease_mm, quad_segs=chords)
    eased = grown.buffer(-ease_mm, quad_segs=chords).simplify(CHORD_MM)
    rings = [shapely.get_coordinates(part.exterior) for part in shapely.get_parts(eased)]
    paths = [Path.through([Point(x, y) for x, y in ring[-1:0:-1].tolist()], closed=True) for ring in rings]
    return clean(fit_outline(Outline.of(paths), FIT_MM), "nonzero")
