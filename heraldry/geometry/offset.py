"""Outlines made larger, smaller, or into an edge, and paths given a width, with true offset curves.

Millimetres. A core, buffered from flattened polygons to just short of the distance, fills the inside; thin bands
along the edges (``offsets.bands``) reach from there to the distance and bring the curves. Growing unites the
core with the bands, shrinking takes the bands from the core. So the edge of the result consists of offsets of
lines, arcs and cubics and of arcs about corners, within 0.2 µm, and not of the chords of a buffer.
"""

from __future__ import annotations

import math
from typing import Literal

import numpy as np
import shapely
from shapely.ops import substring

from heraldry.errors import GeometryError
from heraldry.geometry import boolean
from heraldry.geometry.flatten import FLATTEN_TOLERANCE_MM, flatten
from heraldry.geometry.offsets.bands import Corner, Reach, bands, flat_caps, round_caps
from heraldry.geometry.offsets.spine import spine_of
from heraldry.geometry.outline import ARC, EMPTY, LINE, Outline
from heraldry.geometry.polygons import nested
from heraldry.geometry.restore.curves import Floats
from heraldry.geometry.segments import Path

Ends = Literal["flat", "round", "square"]
Side = Literal["inside", "outside", "middle"]

MARGIN_MM = 0.02
"""How far the core stays short of the distance, and the unit of everything that must fit in between. Broad, so
that the core can be buffered from few chords: from very many, GEOS has been seen to fill holes that are there."""

MARGIN_SHARE = 1 / 8
"""For small distances the margin is this share of them."""

SMALLEST_MM = 1e-6
"""Offsets below this grid of the descriptions change nothing."""


def offset(outline: Outline, distance_mm: float, corner: Corner = "round") -> Outline:
    """The outline grown by a distance, or shrunk where it is negative, true to 0.2 µm.

    Convex corners become round, or stay sharp as far as four distances; a sharper one is rounded.

    >>> from heraldry.geometry.point import Point
    >>> box = Outline.of([Path.through([Point(0, 0), Point(4, 0), Point(4, 3), Point(0, 3)], closed=True)])
    >>> offset(box, 1.0).node_count, offset(box, 1.0, "sharp").node_count, offset(box, -2.0).node_count
    (8, 4, 0)
    """
    if abs(distance_mm) < SMALLEST_MM or outline.is_empty:
        return boolean.clean(outline, "evenodd")
    reach = _reach(abs(distance_mm), side=-1 if distance_mm > 0 else 1)
    rings = flatten(outline, reach.slack_mm)
    polygon = nested(rings)
    if polygon is None:  # rings that cross, or run the wrong way round: make them clean first
        outline = boolean.clean(outline, "evenodd")
        polygon = boolean.to_polygon(outline, reach.slack_mm)
    if outline.is_empty:  # it ran back over itself, and enclosed nothing
        return outline
    core = _buffered(polygon, reach, math.copysign(1.0, distance_mm))
    rims = bands(spine_of(outline), reach, corner)
    return boolean.with_rims(core, rims, _chord_tolerance(reach), taken_away=distance_mm < 0)


def inset(outline: Outline, distance_mm: float, corner: Corner = "round") -> Outline:
    """The outline shrunk by a distance."""
    return offset(outline, -distance_mm, corner)


def edge(outline: Outline, width_mm: float, side: Side = "inside", corner: Corner = "round") -> Outline:
    """A band of a width along the edge of an outline: inside it, outside it, or half and half."""
    if width_mm <= 0:
        raise GeometryError(f"an edge {width_mm:g} mm wide cannot be drawn; its width must be above 0")
    if side == "inside":
        return boolean.subtract(outline, inset(outline, width_mm, corner))
    if side == "outside":
        return boolean.subtract(offset(outline, width_mm, corner), outline)
    return boolean.subtract(offset(outline, width_mm / 2, corner), inset(outline, width_mm / 2, corner))


def stroke(path: Path, width_mm: float, ends: Ends = "flat", corner: Corner = "round") -> Outline:
    """A line of a width along an open or closed path, true to 0.2 µm; raises GeometryError for no width.

    ``flat`` ends stop at the path's, ``round`` and ``square`` ones reach half the width farther.

    >>> from heraldry.geometry.point import Point
    >>> stroke(Path.through([Point(0, 0), Point(5, 0)]), 1.0, ends="round").node_count
    4
    """
    if width_mm < 2 * SMALLEST_MM:
        raise GeometryError(f"a line {width_mm:g} mm wide cannot be drawn; its width must be above 0")
    chain = _chain(path)
    if chain.is_empty:
        return EMPTY
    is_open = not path.closed
    if is_open and ends == "square":
        chain = _lengthened(chain, width_mm / 2)
    spine = spine_of(chain, is_open)
    sides = [_reach(width_mm / 2, side) for side in (1, -1)]
    rims = [bands(spine, reach, corner) for reach in sides]
    way = np.concatenate((*flatten(chain, sides[0].slack_mm), chain.data[-1:, 3]))
    if is_open and ends != "round":
        depth = min(4 * _margin(width_mm / 2), shapely.LineString(way).length / 2)
        rims.append(flat_caps(spine, sides[0], depth))
        core = _buffered(_trimmed(way, depth / 2), sides[0], 1.0, cap_style="flat")
    else:
        rims.append(round_caps(spine, sides[0]) if is_open else EMPTY)
        core = _buffered(shapely.LineString(way) if is_open else shapely.LinearRing(way), sides[0], 1.0)
    return boolean.with_rims(core, Outline.gather(rims), _chord_tolerance(sides[0]))


def _margin(distance_mm: float) -> float:
    return min(MARGIN_MM, distance_mm * MARGIN_SHARE)


def _reach(distance_mm: float, side: int) -> Reach:
    margin = _margin(distance_mm)
    return Reach(distance_mm, distance_mm - 3 * margin, side, slack_mm=margin / 4)


def _chord_tolerance(reach: Reach) -> float:
    """The tolerance that the rims are flattened with."""
    return min(FLATTEN_TOLERANCE_MM, reach.slack_mm)


def _buffered(
    geometry: shapely.Geometry, reach: Reach, sign: float, cap_style: Literal["round", "flat"] = "round"
) -> shapely.Geometry:
    """The core: a buffer a margin short of the distance, with arcs fine enough to stay between the band's edges."""
    quarter = math.ceil(math.pi / 2 / reach.step_rad)
    short = reach.outer_mm - 4 * reach.slack_mm
    return geometry.buffer(sign * short, quad_segs=quarter, cap_style=cap_style)


def _chain(path: Path) -> Outline:
    """The segments of a path as rows, without those of no length."""
    rows = Outline.of([path])
    size = np.abs(rows.data - rows.data[:, :1]).max(axis=(1, 2), initial=0.0)
    kept = (size > SMALLEST_MM) | (rows.kinds == ARC)
    return Outline(rows.kinds[kept], rows.data[kept], np.array([0, int(kept.sum())])) if np.any(kept) else EMPTY


def _lengthened(chain: Outline, by_mm: float) -> Outline:
    """The chain with a straight piece more at both ends."""
    spine = spine_of(chain, is_open=True)
    first, last = spine.curves.data[0, 0], spine.curves.data[-1, 3]
    front, back = first - spine.leaving[0] * by_mm, last + spine.arriving[-1] * by_mm
    rows = np.array([[front, front, first, first], [last, last, back, back]])
    data = np.concatenate((rows[:1], chain.data, rows[1:]))
    return Outline(np.pad(chain.kinds, 1, constant_values=LINE), data, np.array([0, len(data)]))


def _trimmed(way: Floats, by_mm: float) -> shapely.Geometry:
    """The way without a piece at each end."""
    line = shapely.LineString(way)
    return substring(line, by_mm, line.length - by_mm)
