"""Land, water and sky: a sunrise, mountains, waves, pines, a compass rose; millimetres."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Literal

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import intersect, subtract, unite
from heraldry.geometry.measure import bounds
from heraldry.geometry.offset import inset, offset
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Line, Path, Segment
from heraldry.shapes.checks import at_least, counted, positive
from heraldry.shapes.curves import both_sides, bow, closed, corners, islands, moved, placed
from heraldry.shapes.rounds import sector_path
from heraldry.shapes.table import Angle, Count, Length, Number, Place, Places, shape

STAND = ((1.0, 0.0), (0.72, 0.92), (0.8, -0.97), (0.6, 1.64), (0.54, -1.7))
"""Size and place (in widths of the tallest) of the pines of a stand, so that no two are alike and none touch."""

USUAL_PEAKS = {
    1: ((0.0, 1.0),),
    2: ((-0.26, 1.0), (0.42, 0.66)),
    3: ((0.06, 1.0), (-0.50, 0.68), (0.58, 0.56)),
    4: ((-0.16, 1.0), (0.34, 0.80), (-0.62, 0.60), (0.70, 0.46)),
    5: ((0.0, 1.0), (-0.38, 0.80), (0.42, 0.72), (-0.72, 0.46), (0.76, 0.40)),
}
"""Peaks of a range as shares of half its width and of its height; set by eye, like a skyline."""

WIDEST_PINE = 1.5
"""Width over height: beyond it the branches of one storey reach into the next."""
MOST_PEAKS = 40
"""Each mountain is cut free of all those before it."""
FLANK_STEEPNESS = 1.15
"""Height of a mountain over half its foot, where the range leaves it room."""
FLANK_BEND = ((0.30, 0.50), (0.38, 0.48))
"""Where a steep and a gentle flank bend: share of the way out from the peak, share of the height that is left."""

SNOW_LINE = ((0.0, 0.0), (0.17, -0.34), (0.31, 0.16), (0.47, -0.62), (0.62, 0.10), (0.80, -0.42), (1.0, 0.0))
"""The edge of the snow: share of the way across, rise in heights of the snow cap."""


@shape
def sunrise(
    sunrise: Length,
    disc: Length | None = None,
    count: Count = 11,
    gap: Length | None = None,
    share: Number = 0.5,
    short: Number = 1.0,
    centre: Place = ORIGIN,
) -> Outline:
    """A half sun over the horizon; `sunrise` is the radius its rays reach, `disc` its own, `count` how many rays.

    `gap` parts the rays from the sun, `share` is the inked part of the sky, and every second ray is only `short` of the
    length of the others. `centre` is the middle of the horizon.
    """
    disc = 0.36 * sunrise if disc is None else positive("disc", disc)
    gap = 0.07 * sunrise if gap is None else at_least("gap", gap, 0.0)
    count = at_least("count", count, 2)
    if not disc + gap < sunrise or not 0 < share < 1 or not 0 < short <= 1:
        raise GeometryError(
            f"a sun of {disc:g} mm with a gap of {gap:g} mm must be smaller than {sunrise:g} mm, "
            f"share {share:g} and short {short:g} lie within 0 and 1"
        )
    wide = math.pi * share / count  # rays begin and end flush with the horizon
    pitch = (math.pi - wide) / (count - 1)
    sun = closed([Arc.about(ORIGIN, disc, 0.0, math.pi)])
    inner = disc + gap
    longs = [(min(i, count - 1 - i) - (count - 1) // 2) % 2 == 0 for i in range(count)]  # the topmost is long
    reaches = [sunrise if long else inner + short * (sunrise - inner) for long in longs]
    rays = [sector_path(inner, reach, pitch * i, wide) for i, reach in enumerate(reaches)]
    return placed(Outline.of([sun, *rays]), centre)


@shape
def compass_rose(
    compass_rose: Length,
    points: Count = 8,
    waist: Length | None = None,
    line: Length | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A compass rose of 4, 8 or 16 `points`; `compass_rose` is its radius; each point is half dark and half light.

    `waist` is the radius where the four main points meet; the light halves are bounded by a `line`, or stay open where
    it is 0.
    """
    if points not in (4, 8, 16):
        raise GeometryError(f"points is {points}, a compass rose has 4, 8 or 16")
    fine = points == 16
    usual_waist = (0.2 if fine else 0.24) * compass_rose
    waist = usual_waist if waist is None else positive("waist", waist)
    line = (0.014 if fine else 0.022) * compass_rose if line is None else at_least("line", line, 0.0)
    if not waist < 0.6 * compass_rose:
        raise GeometryError(
            f"waist is {waist:g} mm, it must be less than {0.6 * compass_rose:g} mm, well inside the points"
        )
    ranks = (
        (compass_rose, waist, 0.0, 45.0),
        (0.74 * compass_rose, waist, 45.0, 45.0),
        (0.64 * compass_rose, 1.5 * waist, 22.5, 22.5),
    )
    drawn: list[Outline] = []
    covered: list[Outline] = []
    for reach, hips, first, half in ranks[: {4: 1, 8: 2, 16: 3}[points]]:
        dark, whole = _rank(reach, hips, first, half, line)
        drawn.append(subtract(dark, *covered) if covered else dark)
        covered.append(whole)
    return placed(unite(*drawn), centre, turn)


@shape
def mountains(
    mountains: Length,
    height: Length | None = None,
    count: Count = 3,
    peaks: Places = (),
    snow: Number = 0.36,
    line: Length | None = None,
    centre: Place = ORIGIN,
) -> Outline:
    """A range of mountains; `mountains` is its width, `count` how many, or `peaks` are their tops above its foot.

    `height` is that of the highest. Lower mountains stand before higher ones, parted by a gap of `line`. `snow` is the
    share of each that is left light, with a `line` along its ridge; 0 leaves none. `centre` is the middle of the foot.
    """
    height = 0.52 * mountains if height is None else positive("height", height)
    line = 0.014 * mountains if line is None else positive("line", line)
    if not 0 <= snow < 0.9:
        raise GeometryError(f"snow is {snow:g}, it must be at least 0 and less than 0.9")
    tops = [*peaks] or _usual_peaks(count, mountains / 2, height)
    if len(tops) > MOST_PEAKS:
        raise GeometryError(f"a range has {len(tops)} peaks, at most {MOST_PEAKS} are drawn")
    for top in tops:
        if not (abs(top.x) < mountains / 2 - line and top.y > 4 * line):
            raise GeometryError(
                f"a peak at ({top.x:g}, {top.y:g}) mm, it must stand above a foot {mountains:g} mm wide, "
                f"and at least {4 * line:g} mm high"
            )
    before: list[Outline] = []
    drawn: list[Outline] = []
    for i, top in sorted(enumerate(tops), key=lambda one: (one[1].y, one[0])):
        body = _mountain(top, mountains / 2, steep_left=i % 2 == 0)
        capped = subtract(body, _snow(top, body, snow, line)) if snow else body
        drawn.append(subtract(capped, *before) if before else capped)
        before.append(offset(body, line, "sharp"))
    return placed(unite(*drawn), centre)


@shape
def waves(
    waves: Length,
    rows: Count = 3,
    count: Count = 4,
    height: Length | None = None,
    width: Length | None = None,
    gap: Length | None = None,
    form: Literal["rolling", "crested"] = "rolling",
    centre: Place = ORIGIN,
) -> Outline:
    """Rows of waves; `waves` is their length, `count` how many in a row, `height` from trough to crest.

    Bands are `width` thick with a `gap` between `rows`. Their `form`: rolling waves swing evenly, crested ones come to
    points.
    """
    pitch = waves / at_least("count", count, 1)
    height = (0.22 if form == "rolling" else 0.26) * pitch if height is None else positive("height", height)
    width = 0.2 * pitch if width is None else positive("width", width)
    gap = 0.75 * width if gap is None else positive("gap", gap)
    row = _rolling(waves, count, height, width) if form == "rolling" else _crested(waves, count, height, width)
    if height > pitch / 2:
        raise GeometryError(f"height is {height:g} mm, waves {pitch:g} mm long are at most {pitch / 2:g} mm high")
    if form == "rolling" and rows > 1:
        _check_rows(pitch, height, width, gap)
    step = width + gap
    counted("waves in all rows", at_least("rows", rows, 1) * count, 1)
    lowest = -step * (rows - 1) / 2
    return placed(Outline.gather(placed(row, Point(0.0, lowest + step * i)) for i in range(rows)), centre)


@shape
def pine(
    pine: Length,
    width: Length | None = None,
    tiers: Count = 4,
    trunk: Length | None = None,
    count: Count = 1,
    centre: Place = ORIGIN,
) -> Outline:
    """A pine; `pine` is its height, `width` that of its lowest branches, `trunk` the height of its bare foot.

    `tiers` are its storeys of branches. A `count` of more sets smaller ones beside it, right and left in turn.
    `centre` is the foot of the tallest.
    """
    width = 0.56 * pine if width is None else positive("width", width)
    trunk = 0.12 * pine if trunk is None else at_least("trunk", trunk, 0.0)
    if not 1 <= tiers <= 12 or not trunk < 0.8 * pine:
        raise GeometryError(
            f"a pine has 1 to 12 tiers, found {tiers}, and a trunk of less than {0.8 * pine:g} mm, found {trunk:g} mm"
        )
    if width > WIDEST_PINE * (pine - trunk):
        most = WIDEST_PINE * (pine - trunk)
        raise GeometryError(f"width is {width:g} mm, branches {pine - trunk:g} mm high are at most {most:g} mm wide")
    if not 1 <= count <= len(STAND):
        raise GeometryError(f"count is {count}, a stand has 1 to {len(STAND)} pines")
    tree = Outline.of([_pine(pine, width, trunk, tiers)])
    stand = [tree.transformed(Affine.move(shift * width, 0.0) @ Affine.scale(size)) for size, shift in STAND[:count]]
    return placed(Outline.gather(stand), centre)


def _rank(reach: float, hips: float, first_deg: float, half_deg: float, line: float) -> tuple[Outline, Outline]:
    """The points of one rank of a rose: what is inked of them, and all that they cover."""
    tip, hip = Point(0.0, reach), Point.polar(hips, math.radians(90 - half_deg))
    dark = corners(ORIGIN, hip, tip)
    light = corners(ORIGIN, tip, Point(-hip.x, hip.y))
    inked = unite(dark, subtract(light, _shrunk(light, line))) if line else dark
    turns = [first_deg + 360.0 * i / (4 if half_deg == 45.0 else 8) for i in range(4 if half_deg == 45.0 else 8)]
    return (
        unite(*(placed(inked, ORIGIN, turn) for turn in turns)),
        unite(*(placed(whole, ORIGIN, turn) for turn in turns for whole in (dark, light))),
    )


def _shrunk(triangle: Outline, by_mm: float) -> Outline:
    """A triangle with each side moved in by so much: scaled about the centre of its inscribed circle.

    The centre is the mean of the corners weighted by the opposite sides; the radius is 2·area / perimeter.
    """
    a, b, c = (segment.start for segment in triangle.paths[0])
    sides = abs(b - c), abs(c - a), abs(a - b)
    total = sum(sides)
    middle = (a * sides[0] + b * sides[1] + c * sides[2]) / total
    left = 1.0 - by_mm * total / (b - a).cross(c - a)
    if left <= 0:
        raise GeometryError(f"a line of {by_mm:g} mm leaves nothing light of the points, make it thinner")
    return triangle.transformed(Affine.scale(left, about=middle))


def _usual_peaks(count: int, half: float, height: float) -> list[Point]:
    if count not in USUAL_PEAKS:
        raise GeometryError(f"count is {count}, a range has 1 to {max(USUAL_PEAKS)} mountains; give peaks for others")
    return [Point(x * half, y * height) for x, y in USUAL_PEAKS[count]]


def _mountain(top: Point, half: float, steep_left: bool) -> Outline:
    """A mountain down to the foot of the range, each flank bent once, steeper above."""
    reach = top.y / FLANK_STEEPNESS
    left, right = min(reach, top.x + half), min(reach, half - top.x)
    bends = FLANK_BEND if steep_left else FLANK_BEND[::-1]
    (left_out, left_up), (right_out, right_up) = bends
    return corners(
        (top.x - left, 0.0),
        (top.x + right, 0.0),
        (top.x + right_out * right, right_up * top.y),
        (top.x, top.y),
        (top.x - left_out * left, left_up * top.y),
    )


def _snow(top: Point, body: Outline, share: float, line: float) -> Outline:
    """What is light of a peak: inside its ridge line, above a ragged edge."""
    level = top.y * (1.0 - share)
    foot, tall = bounds(body), top.y - level
    cap = bounds(intersect(body, corners((foot.left, level), (foot.right, level), (top.x, top.y + tall))))
    edge = [(cap.left + x * cap.width, level + y * tall) for x, y in SNOW_LINE]
    above = corners(*edge, (cap.right, top.y), (cap.left, top.y))
    return intersect(inset(body, line, "sharp"), above)


def _rolling(length: float, count: int, height: float, width: float) -> Outline:
    """A band between two chains of arcs about the same centres, from crest to crest, its ends upright."""
    half_wave, rise = length / (2 * count), height / 2
    radius, lean = half_wave**2 / (8 * rise) + rise / 2, 2 * math.atan(2 * rise / half_wave)
    if not width / 2 < radius:
        raise GeometryError(f"a band {width:g} mm thick cannot follow waves {2 * half_wave:g} × {height:g} mm")
    upper = _swing(length, count, rise, radius, lean, width / 2)
    lower = _swing(length, count, rise, radius, lean, -width / 2)
    return islands([closed([*upper, *(stroke.reversed() for stroke in reversed(lower))])])


def _check_rows(pitch: float, height: float, width: float, gap: float) -> None:
    """Rows lie above one another, so where waves are steep, the white between them is narrower than their gap."""
    steepest = math.cos(2 * math.atan(2 * height / pitch))
    least = width * (1 / steepest - 1) if steepest > 1e-6 else math.inf
    if gap <= least:
        raise GeometryError(
            f"rows of waves {pitch:g} × {height:g} mm with a gap of {gap:g} mm run into one another, "
            f"leave more than {least:.4g} mm"
        )


def _swing(length: float, count: int, rise: float, radius: float, lean: float, aside: float) -> list[Segment]:
    """The edge of a rolling band that lies so far above its middle line, walked to the right."""
    arcs: list[Segment] = []
    for i in range(2 * count + 1):
        up = 1.0 if i % 2 == 0 else -1.0  # crest, trough, crest…
        before, after = lean * (i > 0), lean * (i < 2 * count)
        middle = Point(length * (i / (2 * count) - 0.5), up * (rise - radius))
        arcs.append(Arc.about(middle, radius + up * aside, up * (math.pi / 2 + before), -up * (before + after)))
    return arcs


def _crested(length: float, count: int, height: float, width: float) -> Outline:
    """A band between hollow arcs that meet in points and the same arcs lower down."""
    crests = [Point(length * (i / count - 0.5), (height + width) / 2) for i in range(count + 1)]
    upper = [bow(left, right, height) for left, right in pairwise(crests)]
    lower = [moved(stroke, Affine.move(0.0, -width)) for stroke in upper]
    return islands([closed([*upper, *(stroke.reversed() for stroke in reversed(lower))])])


def _pine(height: float, width: float, trunk: float, tiers: int) -> Path:
    """A tree with its foot at the origin; each storey sweeps out to its tips and turns in again a little higher."""
    crown = height - trunk
    stem = 0.09 * width
    spread = [(i + 1) / tiers for i in range(tiers)]
    tips = [Point(width / 2 * s**0.9, height - crown * s) for s in spread]
    inner = [Point(0.44 * tip.x, tip.y + 0.16 * crown / tiers) for tip in tips]
    right: list[Segment] = []
    if trunk:
        right = [Line(Point(stem, 0.0), Point(stem, inner[-1].y))]
    for i in reversed(range(tiers)):
        start = Point(stem, inner[i].y) if i == tiers - 1 else inner[i]
        above = inner[i - 1] if i else Point(0.0, height)
        right += [Line(start, tips[i]), _sweep(tips[i], above)]
    return closed(both_sides(right))


def _sweep(tip: Point, above: Point) -> Segment:
    """The hollow upper edge of a storey, never so hollow that it bends over past upright at its top."""
    edge = above - tip
    lean = math.atan2(-edge.x, edge.y)
    return bow(tip, above, -abs(edge) * min(0.07, 0.36 * math.tan(lean / 2)))
