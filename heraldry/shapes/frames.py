"""Frames and fields: ovals, octagons, trapezoids, nameplates, flags and pennants; millimetres."""

from __future__ import annotations

import math
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.corners import Corner
from heraldry.geometry.corners import polygon as cornered
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Path, Segment
from heraldry.shapes.checks import positive
from heraldry.shapes.curves import both_sides, bow, closed, islands, placed, smooth_wave
from heraldry.shapes.table import Angle, Drawn, Length, Number, Place, shape

CartoucheEnds = Literal["hollow", "stepped", "round", "pointed", "bracket"]

PIECES_PER_WAVE = 4
"""A quarter of a sine wave as one cubic of Hermite form is off by 1.3 % of its height, which no eye sees."""


@shape
def oval(oval: Length, height: Length | None = None, width: Length | None = None, centre: Place = ORIGIN) -> Drawn:
    """An oval of four arcs, as compasses draw it; `oval` is its width; a `width` makes it an even band.

    `height` is less than its width. Its places `crown` and `keel` are the centres of its upper and its lower arc, for
    lettering that follows it.
    """
    height = 0.64 * oval if height is None else positive("height", height)
    if not height < oval:
        raise GeometryError(f"height is {height:g} mm, an oval lies: it must be less than its width {oval:g} mm")
    flank, crown = _oval_radii(oval / 2, height / 2)
    rings = [oval_path(oval / 2, height / 2)]
    if width is not None:
        if not 0 < width < flank:
            raise GeometryError(f"width is {width:g} mm, it must be more than 0 and less than {flank:g} mm")
        rings.append(oval_path(oval / 2, height / 2, width).reversed())
    depth = crown - height / 2
    places = {"crown": centre - Point(0, depth), "keel": centre + Point(0, depth)}
    return Drawn(placed(Outline.of(rings), centre), places)


@shape
def octagon(
    octagon: Length,
    height: Length | None = None,
    cut: Length | None = None,
    rise: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A box with cut corners, flat on top; `octagon` is its width, `cut` and `rise` what a corner loses.

    `height` is that of the box.
    """
    height = octagon if height is None else positive("height", height)
    cut = min(octagon, height) / (2 + math.sqrt(2)) if cut is None else positive("cut", cut)
    rise = cut if rise is None else positive("rise", rise)
    if not (2 * cut < octagon and 2 * rise < height):
        raise GeometryError(
            f"corners of {cut:g} × {rise:g} mm leave no side of a box {octagon:g} × {height:g} mm, cut less off"
        )
    x, y = octagon / 2, height / 2
    right = [Point(x - cut, -y), Point(x, -y + rise), Point(x, y - rise), Point(x - cut, y)]
    left = [Point(-point.x, point.y) for point in reversed(right)]
    return placed(Outline.of([Path.through([*right, *left], closed=True)]), centre, turn)


@shape
def trapezoid(
    trapezoid: Length,
    height: Length | None = None,
    left: Angle = 20.0,
    right: Angle = -20.0,
    corner: Corner = "square",
    radius: Length = 0.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A band whose ends lean each for itself; `trapezoid` is its width below, `left` and `right` lean to the right.

    The degrees of both are from upright, `height` is its height; `corner` and `radius` finish its corners.
    """
    half = trapezoid / 2
    tall = 0.4 * trapezoid if height is None else positive("height", height)
    if not (-80 <= left <= 80 and -80 <= right <= 80):
        raise GeometryError(f"the ends lean {left:g} and {right:g} degrees, they must be between -80 and 80")
    lean_left, lean_right = tall * math.tan(math.radians(left)), tall * math.tan(math.radians(right))
    if not lean_left - lean_right < trapezoid:
        raise GeometryError(f"ends that lean {left:g} and {right:g} degrees meet below the height {tall:g} mm")
    xs = (-half, half, half + lean_right, -half + lean_left)
    shift = (min(xs) + max(xs)) / 2
    places = [Point(x - shift, tall / 2 if i > 1 else -tall / 2) for i, x in enumerate(xs)]
    return placed(Outline.of([cornered(places, corner, radius)]), centre, turn)


@shape
def cartouche(
    cartouche: Length,
    height: Length | None = None,
    ends: CartoucheEnds = "stepped",
    depth: Length | None = None,
    centre: Place = ORIGIN,
) -> Outline:
    """A nameplate with shaped ends; `cartouche` is its width, `depth` how far the shape of its `ends` reaches in.

    `height` is that of the plate.
    """
    height = 0.4 * cartouche if height is None else positive("height", height)
    depth = _end_depth(ends, height) if depth is None else positive("depth", depth)
    deepest = height / 2 if ends in ("hollow", "stepped") else cartouche / 2
    if not depth < cartouche / 2 or depth > deepest:
        raise GeometryError(
            f"ends {depth:g} mm deep do not fit a {ends} nameplate {cartouche:g} × {height:g} mm, "
            f"at most {min(deepest, cartouche / 2):g} mm do"
        )
    end = END_STROKES[ends](cartouche / 2, height / 2, depth)
    return placed(Outline.of([closed(both_sides(end))]), centre)


@shape
def flag(
    flag: Length,
    height: Length | None = None,
    tip: Length | None = None,
    notch: Length = 0.0,
    wave: Length = 0.0,
    swings: Number = 1.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A flag; `flag` is its length, `tip` its height at the loose end, `notch` cuts a swallow-tail, `wave` lifts it.

    `height` is that at the staff; the cloth swings up and down `swings` times.
    """
    height = 0.6 * flag if height is None else positive("height", height)
    tip = height if tip is None else positive("tip", tip)
    return placed(_cloth(flag, height, tip, notch, wave, swings), centre, turn)


@shape
def pennant(
    pennant: Length,
    height: Length | None = None,
    tip: Length = 0.0,
    notch: Length = 0.0,
    wave: Length = 0.0,
    swings: Number = 1.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A flag that runs to a point; `pennant` is its length, a `tip` makes it blunt, a `notch` swallow-tailed.

    `height` is that at the staff; a `wave` lifts the cloth, which swings up and down `swings` times.
    """
    height = 0.42 * pennant if height is None else positive("height", height)
    if not 0 <= tip <= height:
        raise GeometryError(f"tip is {tip:g} mm, it must be between 0 and the height {height:g} mm")
    return placed(_cloth(pennant, height, tip, notch, wave, swings), centre, turn)


def _oval_radii(a: float, b: float) -> tuple[float, float]:
    """Radii of the flank and the crown of a four-centred oval with half axes a > b.

    The draughtsman's construction: from the chord h between the ends of the half axes take a − b, and halve the
    rest at a right angle. Similar triangles give r = h (h − (a − b)) / 2a and R = h (h + (a − b)) / 2b.
    """
    chord, excess = math.hypot(a, b), a - b
    return chord * (chord - excess) / (2 * a), chord * (chord + excess) / (2 * b)


def oval_path(a: float, b: float, inset: float = 0.0) -> Path:
    """The oval with half axes a > b, or the one an even distance inside it: the same centres, each radius less."""
    flank, crown = _oval_radii(a, b)
    side, deep = Point(a - flank, 0.0), Point(0.0, crown - b)
    lean = math.atan2(crown - b, a - flank)  # where flank and crown meet, seen from either centre
    arcs = [
        Arc.about(side, flank - inset, -lean, 2 * lean),
        Arc.about(-deep, crown - inset, lean, math.pi - 2 * lean),
        Arc.about(-side, flank - inset, math.pi - lean, 2 * lean),
        Arc.about(deep, crown - inset, math.pi + lean, math.pi - 2 * lean),
    ]
    return closed(arcs)


def _end_depth(ends: CartoucheEnds, height: float) -> float:
    return {"hollow": 0.3, "stepped": 0.3, "round": 0.5, "pointed": 0.4, "bracket": 0.5}[ends] * height


def _hollow_end(x: float, y: float, depth: float) -> list[Segment]:
    """Corners bitten off by quarter circles about them."""
    low = Arc.about(Point(x, -y), depth, math.pi, -math.pi / 2)
    return [low, Arc.about(Point(x, y), depth, -math.pi / 2, -math.pi / 2)]


def _stepped_end(x: float, y: float, depth: float) -> list[Segment]:
    """The same with a small step at either end of the bite."""
    step = 0.3 * depth
    low = Arc.about(Point(x - step, -y + step), depth - step, math.pi, -math.pi / 2)
    high = Arc.about(Point(x - step, y - step), depth - step, -math.pi / 2, -math.pi / 2)
    before, after = Line(Point(x - depth, -y), low.start), Line(low.end, Point(x, -y + depth))
    return [before, low, after, Line(Point(x, y - depth), high.start), high, Line(high.end, Point(x - depth, y))]


def _round_end(x: float, y: float, depth: float) -> list[Segment]:
    return [bow(Point(x - depth, -y), Point(x - depth, y), depth)]


def _pointed_end(x: float, y: float, depth: float) -> list[Segment]:
    return [Line(Point(x - depth, -y), Point(x, 0)), Line(Point(x, 0), Point(x - depth, y))]


def _bracket_end(x: float, y: float, depth: float) -> list[Segment]:
    """Each half an S of two like arcs, level where it leaves the plate and where it comes to the point."""
    corner, bend, point = Point(x - depth, -y), Point(x - depth / 2, -y / 2), Point(x, 0)
    rise = abs(bend - corner) / 2 * math.tan(math.atan2(y, depth) / 2)
    low = [bow(corner, bend, rise), bow(bend, point, -rise)]
    back = [Point(p.x, -p.y) for p in (point, bend, corner)]
    return [*low, bow(back[0], back[1], -rise), bow(back[1], back[2], rise)]


END_STROKES = {
    "hollow": _hollow_end,
    "stepped": _stepped_end,
    "round": _round_end,
    "pointed": _pointed_end,
    "bracket": _bracket_end,
}
"""The right end of a nameplate, walked upward, from half its width, half its height and a depth."""


def _cloth(length: float, height: float, tip: float, notch: float, wave: float, swings: float) -> Outline:
    """A cloth from the staff on the left; every upright line of it is lifted as a whole by the wave."""
    if not 0 <= notch < length:
        raise GeometryError(f"notch is {notch:g} mm, it must be at least 0 and less than the length {length:g} mm")
    if not abs(wave) < height or not 0 < swings <= 8:
        raise GeometryError(
            f"wave is {wave:g} mm, it must be less than the height {height:g} mm; swings is {swings:g}, within 0 and 8"
        )
    staff, loose = -length / 2, length / 2
    corners = [Point(staff, -height / 2), Point(loose, -tip / 2), Point(loose, tip / 2), Point(staff, height / 2)]
    if notch and tip:
        corners.insert(2, Point(loose - notch, 0.0))
    pitch = length / swings
    edges = zip(corners, [*corners[1:], corners[0]], strict=True)
    return islands(
        [closed(stroke for start, end in edges if start != end for stroke in _lifted(start, end, staff, wave, pitch))]
    )


def _lifted(start: Point, end: Point, staff: float, wave: float, pitch: float) -> list[Segment]:
    """A straight edge of the flat cloth, each point of it lifted by a sine that begins at the staff."""
    run = end - start
    if wave == 0 or run.x == 0:
        lift = Point(0.0, wave * math.sin(math.tau * (start.x - staff) / pitch))
        return [Line(start + lift, end + lift)]
    count = math.ceil(abs(run.x) / pitch * PIECES_PER_WAVE - 1e-9)
    flat = [start + run * (i / count) for i in range(count + 1)]
    angles = [math.tau * (place.x - staff) / pitch for place in flat]
    places = [place + Point(0.0, wave * math.sin(angle)) for place, angle in zip(flat, angles, strict=True)]
    slopes = [run.y / run.x + wave * math.tau / pitch * math.cos(angle) for angle in angles]
    return smooth_wave(places, slopes)
