"""Borders of round emblems: rope, beads, a ring in pieces, scalloped and notched edges; millimetres.

All are centred on a circle, repeat evenly round it, and never reach beyond the radius that names them.
"""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment
from heraldry.shapes.checks import at_least, counted, positive
from heraldry.shapes.curves import bored, bow, closed, moved, placed
from heraldry.shapes.rounds import circle_path
from heraldry.shapes.table import Angle, Count, Length, Place, shape

STRAND_LEAN = 1.05
"""How far round a strand of rope leans on its way across, in widths of the rope; drawn until it looked laid."""
STRAND_SWELL = 0.16
"""How far a strand bulges over its ends, in widths of the rope."""

WIDEST_ROPE = 0.7
"""Width of a rope over its radius: beyond it the strands meet at the inside."""

Notch = Literal["pointed", "square"]
Lobes = Literal["outward", "inward"]


@shape
def rope(
    rope: Length,
    width: Length | None = None,
    strands: Count | None = None,
    gap: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A ring of laid rope; `rope` is its outer radius, `width` its thickness, `gap` parts the `strands`."""
    width = 0.13 * rope if width is None else _band(rope, width)
    if width > WIDEST_ROPE * rope:
        raise GeometryError(
            f"width is {width:g} mm, a rope of the radius {rope:g} mm is at most {WIDEST_ROPE * rope:g} mm thick"
        )
    middle = rope - width / 2
    count = counted("strands", round(math.tau * middle / width) if strands is None else strands, 3)
    gap = 0.13 * width if gap is None else positive("gap", gap)
    pitch = math.tau / count
    strand = _strand(rope, width, pitch, gap)
    turned = [placed(Outline.of([strand]), ORIGIN, math.degrees(pitch * i)) for i in range(count)]
    return placed(Outline.gather(turned), centre, turn)


@shape
def beads(
    beads: Length,
    size: Length | None = None,
    count: Count | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A ring of beads; `beads` is its outer radius, `size` the width of a bead; left alone, `count` fills it."""
    size = 0.07 * beads if size is None else positive("size", size)
    track = beads - size / 2
    if track <= 0:
        raise GeometryError(f"beads {size:g} mm wide need a radius of more than {size / 2:g} mm, found {beads:g} mm")
    usual = max(3, int(math.tau * track / (1.45 * size)))
    count = counted("count", usual if count is None else count, 1)
    if count > 1 and 2 * track * math.sin(math.pi / count) <= size:
        most = int(math.pi / math.asin(min(1.0, size / (2 * track))))
        raise GeometryError(f"{count} beads of {size:g} mm run into one another, fewer than {most} stand free")
    places = [Point.polar(track, math.pi / 2 + math.tau * i / count) for i in range(count)]
    return placed(Outline.of(circle_path(place, size / 2) for place in places), centre, turn)


@shape
def broken_ring(
    broken_ring: Length,
    width: Length | None = None,
    count: Count = 4,
    gap: Length | None = None,
    ends: Literal["flat", "round"] = "flat",
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A ring in `count` pieces, a gap on top; `broken_ring` is its outer radius, `gap` the width of each gap.

    `width` is its thickness; its pieces have flat or round `ends`.
    """
    width = 0.11 * broken_ring if width is None else _band(broken_ring, width)
    gap = 1.5 * width if gap is None else positive("gap", gap)
    inner, pitch = broken_ring - width, math.tau / at_least("count", count, 1)
    reach = (gap + width) / 2 if ends == "round" else gap / 2
    nearest = broken_ring - width / 2 if ends == "round" else inner
    if reach >= nearest * math.sin(min(pitch, math.pi) / 2):
        raise GeometryError(f"{count} gaps of {gap:g} mm leave nothing of a ring with the radius {broken_ring:g} mm")
    piece = _blunt_piece(broken_ring, inner, gap, pitch) if ends == "flat" else _round_piece(nearest, width, gap, pitch)
    turned = [placed(Outline.of([piece]), ORIGIN, 90 + math.degrees(pitch * i)) for i in range(count)]
    return placed(Outline.gather(turned), centre, turn)


@shape
def scallop(
    scallop: Length,
    count: Count = 24,
    depth: Length | None = None,
    width: Length | None = None,
    lobes: Lobes = "outward",
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A disc with an edge of `count` arcs; `scallop` is its outer radius; a `width` makes it a ring.

    `lobes` name which way the arcs swell, `depth` is from their tops to their corners.
    """
    half = math.pi / at_least("count", count, 3)
    chord = 2 * scallop * math.sin(half)
    depth = 0.28 * chord if depth is None else positive("depth", depth)
    deepest = _deepest_lobes(scallop, half, lobes)
    if not depth < deepest:
        raise GeometryError(f"depth is {depth:g} mm, {count} arcs that do not meet are less than {deepest:.4g} mm deep")
    corner = (scallop - depth) if lobes == "outward" else scallop
    rise = (scallop if lobes == "outward" else scallop - depth) - corner * math.cos(half)
    ring = [Point.polar(corner, math.pi / 2 + half * (2 * i - 1)) for i in range(count)]
    edge = Path(tuple(bow(ring[i - 1], ring[i], rise) for i in range(count)), closed=True)
    return placed(bored(edge, ORIGIN, _bore(scallop, depth, width)), centre, turn)


@shape
def seal(
    seal: Length,
    count: Count = 48,
    depth: Length | None = None,
    notch: Notch = "pointed",
    width: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A disc with a notched edge; `seal` is its outer radius, `count` its teeth; a `width` makes it a ring.

    Its `notch` is pointed or square, `depth` is that of a tooth.
    """
    pitch = math.tau / at_least("count", count, 3)
    depth = min(0.08, 2.4 / count) * seal if depth is None else positive("depth", depth)
    if not depth < seal:
        raise GeometryError(f"depth is {depth:g} mm, it must be less than the radius {seal:g} mm")
    tooth = _pointed_tooth if notch == "pointed" else _square_tooth
    strokes = [stroke for i in range(count) for stroke in tooth(seal, seal - depth, math.pi / 2 + pitch * i, pitch)]
    return placed(bored(closed(strokes), ORIGIN, _bore(seal, depth, width)), centre, turn)


def _deepest_lobes(radius: float, half_rad: float, lobes: Lobes) -> float:
    """The depth at which neighbouring arcs would touch along the radius between them.

    An arc of rise h over a chord c leaves it at the angle 2·atan(2h/c); the radius at its end stands on the chord at
    a right angle more (outside) or less (inside) half the pitch.
    """
    if lobes == "outward":
        steep = math.tan((math.pi / 2 + half_rad) / 2)
        return radius * (1 - 1 / (math.cos(half_rad) + steep * math.sin(half_rad)))
    steep = math.tan((math.pi / 2 - half_rad) / 2)
    return radius * (1 - math.cos(half_rad) + steep * math.sin(half_rad))


def _band(radius: float, width: float) -> float:
    if not 0 < width < radius:
        raise GeometryError(f"width is {width:g} mm, it must be more than 0 and less than the radius {radius:g} mm")
    return width


def _bore(radius: float, depth: float, width: float | None) -> float:
    """The radius of the hole that leaves a ring of a width, counted from the outermost inward; 0 for none."""
    if width is None:
        return 0.0
    if not depth < width < radius:
        raise GeometryError(
            f"width is {width:g} mm, it must be more than the depth {depth:g} mm and less than the radius {radius:g} mm"
        )
    return radius - width


def _strand(outer: float, width: float, pitch: float, gap: float) -> Path:
    """One strand: two S-curves across the rope, as a helix looks from the side, and two swelling ends."""
    middle, swell = outer - width / 2, STRAND_SWELL * width
    low, high = outer - width + swell, outer - swell
    right = _across(low, high, middle, width)
    run, rise = right.at(0.51) - right.at(0.49), right.at(0.5)
    steepness = abs(run.cross(rise)) / (abs(run) * abs(rise))  # sine of the angle between strand and radius
    shift = pitch - gap / (middle * math.sqrt(1 - steepness * steepness))
    if shift <= 0:
        raise GeometryError(f"gaps of {gap:g} mm leave nothing of the strands of a rope {width:g} mm wide")
    leading = moved(right, Affine.turn(math.degrees(shift)))
    half = shift / 2
    top = bow(right.end, leading.end, outer - high * math.cos(half))
    bottom = bow(leading.start, right.start, low * math.cos(half) - (outer - width))
    return closed([right, top, leading.reversed(), bottom])


def _across(low: float, high: float, middle: float, width: float) -> Cubic:
    """The S-curve from one edge of the rope to the other: flatter at both, steeper between."""
    lean = STRAND_LEAN * width / middle
    return Cubic(
        Point.polar(low, -lean / 2),
        Point.polar(low + 0.2 * width, -0.1 * lean),
        Point.polar(high - 0.2 * width, 0.1 * lean),
        Point.polar(high, lean / 2),
    )


def _blunt_piece(outer: float, inner: float, gap: float, pitch: float) -> Path:
    """A piece from a gap on the x axis to the next, the sides of the gaps parallel."""
    out, in_ = math.asin(gap / 2 / outer), math.asin(gap / 2 / inner)
    rim = Arc.about(ORIGIN, outer, out, pitch - 2 * out)
    return closed([rim, Arc.about(ORIGIN, inner, in_, pitch - 2 * in_).reversed()])


def _round_piece(track: float, width: float, gap: float, pitch: float) -> Path:
    """The same with half discs for ends, their tips a gap apart."""
    trim = math.asin((gap + width) / 2 / track)
    rim = Arc.about(ORIGIN, track + width / 2, trim, pitch - 2 * trim)
    inner = Arc.about(ORIGIN, track - width / 2, trim, pitch - 2 * trim).reversed()
    return closed([rim, bow(rim.end, inner.start, width / 2), inner, bow(inner.end, rim.start, width / 2)])


def _pointed_tooth(outer: float, root: float, middle: float, pitch: float) -> list[Segment]:
    tip, foot = Point.polar(outer, middle), Point.polar(root, middle + pitch / 2)
    return [Line(Point.polar(root, middle - pitch / 2), tip), Line(tip, foot)]


def _square_tooth(outer: float, root: float, middle: float, pitch: float) -> list[Segment]:
    top = Arc.about(ORIGIN, outer, middle - pitch / 4, pitch / 2)
    return [top, Arc.about(ORIGIN, root, middle + pitch / 4, pitch / 2)]
