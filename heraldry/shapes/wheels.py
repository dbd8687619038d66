"""Gears and spoked wheels; millimetres, centred on their axle.

Openings are holes in a disc, drawn as they are cast: every corner between a spoke and a rim is a fillet, an
arc that touches both.
"""

from __future__ import annotations

import math
from itertools import pairwise

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import unite
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment
from heraldry.shapes.checks import at_least, positive
from heraldry.shapes.curves import SAME_PLACE_MM, bored, closed, mirrored, moved, placed
from heraldry.shapes.rounds import circle_path
from heraldry.shapes.table import Angle, Count, Length, Place, shape

ADDENDUM, DEDENDUM = 1.0, 1.25
"""Height and depth of a tooth from the pitch circle in modules (ISO 53 basic rack A, from memory)."""
ROOT_FILLET = 0.38
"""Radius of the fillet at the foot of a tooth in modules (the same)."""
FEWEST_TEETH, MOST_TEETH = 6, 240
LEAST_PRESSURE_DEG, MOST_PRESSURE_DEG = 10, 30
"""Six teeth at 30 degrees still have a flat top, four would come to a point below it."""
MOST_SPOKES = 120
FILLET_SHARE = 0.45
"""Fillets of a wheel as a share of the width of a spoke where they sit."""


@shape
def gear(
    gear: Length,
    teeth: Count = 24,
    bore: Length | None = None,
    pressure: Angle = 20.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A gear wheel with involute teeth; `gear` is its outer radius, `bore` the radius of its hole.

    The module follows from its `teeth`: outer radius = module · (teeth / 2 + 1). `pressure` is the angle of its flanks.
    """
    if not FEWEST_TEETH <= teeth <= MOST_TEETH:
        raise GeometryError(f"teeth is {teeth}, a gear has {FEWEST_TEETH} to {MOST_TEETH} of them")
    if not LEAST_PRESSURE_DEG <= pressure <= MOST_PRESSURE_DEG:
        raise GeometryError(
            f"pressure is {pressure:g} degrees, it must be between {LEAST_PRESSURE_DEG} and {MOST_PRESSURE_DEG}"
        )
    module = gear / (teeth / 2 + ADDENDUM)
    root = gear - (ADDENDUM + DEDENDUM) * module
    bore = 0.3 * gear if bore is None else bore
    if not bore < root:
        raise GeometryError(f"bore is {bore:g} mm, it must be less than the radius at the roots {root:.4g} mm")
    tooth = _tooth(module, teeth, math.radians(pressure))
    turns = [Affine.turn(360 * i / teeth) for i in range(teeth)]
    ring = closed(moved(stroke, one) for one in turns for stroke in tooth)
    return placed(bored(ring, ORIGIN, bore), centre, turn)


@shape
def wheel(
    wheel: Length,
    spokes: Count = 12,
    rim: Length | None = None,
    hub: Length | None = None,
    bore: Length | None = None,
    spoke: Length | None = None,
    taper: Length | None = None,
    weight: Angle = 0.0,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Outline:
    """A spoked wheel; `wheel` is its outer radius, `rim` the thickness of its rim, `hub` and `bore` are radii.

    It has so many `spokes`; a `spoke` is so wide at the hub and `taper` wide at the rim. `weight` is how much of the
    turn, opposite the top, a driving wheel's counterweight fills.
    """
    rim = 0.13 * wheel if rim is None else positive("rim", rim)
    hub = 0.24 * wheel if hub is None else positive("hub", hub)
    bore = 0.45 * hub if bore is None else at_least("bore", bore, 0.0)
    inner = wheel - rim
    if not bore < hub < inner:
        raise GeometryError(
            f"bore {bore:g} mm, hub {hub:g} mm and the rim's inside {inner:g} mm must grow in this order"
        )
    if not 3 <= spokes <= MOST_SPOKES:
        raise GeometryError(f"spokes is {spokes}, a wheel has 3 to {MOST_SPOKES} of them")
    pitch = math.tau / spokes
    spoke = min(0.1 * wheel, 0.46 * pitch * hub) if spoke is None else positive("spoke", spoke)
    taper = 0.75 * spoke if taper is None else positive("taper", taper)
    window = Outline.of([_window(inner, hub, spoke, taper, pitch)])
    holes = [placed(window, ORIGIN, 180 / spokes + 360 * i / spokes) for i in range(spokes)]
    solid = Outline.gather([bored(circle_path(ORIGIN, wheel), ORIGIN, bore), *holes])
    return placed(_weighted(solid, inner + rim / 2, hub, weight), centre, turn)


def _tooth(module: float, teeth: int, pressure_rad: float) -> list[Segment]:
    """The tooth on top: its flanks, its flat top, and the floor from it to the next one on its left."""
    root, tip = module * (teeth / 2 - DEDENDUM), module * (teeth / 2 + ADDENDUM)
    right = _flank(module, teeth, root, tip, pressure_rad)
    half = math.pi / 2 - right[-1].end.direction_rad
    top = Arc.about(ORIGIN, tip, math.pi / 2 - half, 2 * half)
    left = [mirrored(stroke).reversed() for stroke in reversed(right)]
    foot = left[-1].end.direction_rad
    floor = Arc.about(ORIGIN, root, foot, math.tau / teeth - 2 * (foot - math.pi / 2))
    return [*right, top, *left, floor]


def _flank(module: float, teeth: int, root: float, tip: float, pressure_rad: float) -> list[Segment]:
    """The right flank of the tooth on top, walked from its root to its tip.

    An involute of the base circle r_b = r cos α, unrolled by t, has the radius r_b √(1 + t²) and the polar angle
    t − arctan t, which on the pitch circle, where a tooth is half a pitch wide, is tan α − α. Below the base
    circle a flank is radial, and a fillet leads down from it to the floor. The involute is cut in two on the
    pitch circle, so that the width of a tooth is exact there.
    """
    base = module * teeth / 2 * math.cos(pressure_rad)
    start_rad = math.pi / 2 - math.pi / (2 * teeth) - (math.tan(pressure_rad) - pressure_rad)
    steps = [_unrolled(max(root, base), base), math.tan(pressure_rad), _unrolled(tip, base)]
    involute = [_involute(base, start_rad, t0, t1) for t0, t1 in pairwise(steps)]
    if root >= base:
        return [*involute]
    fillet = _foot_fillet(Point.polar(1.0, start_rad), root, min(ROOT_FILLET * module, base - root))
    radial = Line(fillet.end, involute[0].start)
    return [fillet, radial, *involute] if abs(radial.end - radial.start) > SAME_PLACE_MM else [fillet, *involute]


def _foot_fillet(outward: Point, root: float, size: float) -> Arc:
    """The fillet in the corner right of a radial line, from the circle of the roots up to the line, clockwise."""
    reach = math.sqrt((root + size) ** 2 - size * size)
    centre = outward * reach - outward.left * size
    start, end = centre.unit * root, outward * reach
    sweep = (end - centre).direction_rad - (start - centre).direction_rad
    return Arc(start, end, centre, size, sweep % -math.tau)


def _unrolled(radius: float, base: float) -> float:
    return math.sqrt(max(0.0, (radius / base) ** 2 - 1.0))


def _involute(base: float, start_rad: float, t0: float, t1: float) -> Cubic:
    """The involute between two parameters as a cubic of Hermite form; its velocity is r_b t (cos t, sin t)."""

    def place(t: float) -> Point:
        return Point.polar(base, start_rad + t) - Point.polar(base * t, start_rad + t).left

    def handle(t: float) -> Point:
        return Point.polar(base * t * (t1 - t0) / 3, start_rad + t)

    start, end = place(t0), place(t1)
    return Cubic(start, start + handle(t0), end - handle(t1), end)


def _window(inner: float, hub: float, spoke: float, taper: float, pitch: float) -> Path:
    """The opening on top between two spokes, walked clockwise, as holes are.

    A fillet of radius f that touches a line at a distance p from the axle, and a circle of radius R about the
    axle, has its centre f beyond the line and R − f (or, outside the circle, R + f) from the axle.
    """
    along, across = _edge(inner, hub, spoke, taper, pitch)
    low = _fillet(along, across, hub, FILLET_SHARE * spoke)
    high = _fillet(along, across, inner, -FILLET_SHARE * taper)
    if min(low.start.x, high.end.x) <= 0 or (high.start - low.end).dot(along) <= 0:
        raise GeometryError(
            f"spokes {spoke:g} to {taper:g} mm wide leave no room between a hub of {hub:g} mm and a rim of {inner:g} mm"
        )
    right: list[Segment] = [low, Line(low.end, high.start), high]
    rim = _round(inner, high.end, math.pi - 2 * high.end.direction_rad)
    left = [mirrored(stroke).reversed() for stroke in reversed(right)]
    floor = _round(hub, left[-1].end, 2 * low.start.direction_rad - math.pi)
    return closed([*right, rim, *left, floor]).reversed()


def _edge(inner: float, hub: float, spoke: float, taper: float, pitch: float) -> tuple[Point, Point]:
    """The left edge of the spoke right of the window: its direction outward, and the foot of the axle on it."""
    back = Affine.turn(90 - math.degrees(pitch / 2))
    low, high = back(Point(hub, spoke / 2)), back(Point(inner, taper / 2))
    along = (high - low).unit
    return along, along.left * low.dot(along.left)


def _fillet(along: Point, foot: Point, radius: float, fillet: float) -> Arc:
    """The fillet between a spoke's edge and the hub, or with a negative radius between it and the rim."""
    size = abs(fillet)
    out = foot.dot(along.left) + size
    reach = (radius + fillet) ** 2 - out * out
    if reach <= 0:
        raise GeometryError(f"a spoke is too wide for a circle of {radius:g} mm: make it thinner")
    centre = along.left * out + along * math.sqrt(reach)
    on_edge, on_circle = centre - along.left * size, centre.unit * radius
    start, end = (on_circle, on_edge) if fillet > 0 else (on_edge, on_circle)
    turn = ((end - centre).direction_rad - (start - centre).direction_rad) % math.tau
    return Arc(start, end, centre, size, turn)


def _round(radius: float, start: Point, sweep: float) -> Arc:
    return Arc.about(ORIGIN, radius, start.direction_rad, sweep)


def _weighted(wheel: Outline, reach: float, hub: float, weight: float) -> Outline:
    """The wheel with the piece below a chord filled up to the rim."""
    if weight == 0:
        return wheel
    half = math.radians(weight) / 2
    if not 0 < weight < 180 or not reach * math.cos(half) > hub:
        most = 2 * math.degrees(math.acos(hub / reach))
        raise GeometryError(f"weight is {weight:g} degrees, it must be between 0 and {most:.4g} to clear the hub")
    bow = Arc.about(ORIGIN, reach, -math.pi / 2 - half, 2 * half)
    return unite(wheel, Outline.of([closed([bow])]))
