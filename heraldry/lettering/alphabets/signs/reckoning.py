"""Signs of money, number and reckoning: € £ % # @ + = * °."""

from __future__ import annotations

import math
from dataclasses import replace

from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import polygon, rectangle
from heraldry.lettering.alphabets.ink import cut, join
from heraldry.lettering.alphabets.pen import Pen, slope_width
from heraldry.lettering.alphabets.signs.table import sign

FAR = 2.0

# Signs with many strokes are drawn lighter: their strokes in those of the letters, at the regular weight and what
# they lose with each stem more.
LIGHTER, LIGHTER_BY_STEM = 0.98, 1.6


def lighter(pen: Pen, factor: float = 1.0, by_stem: float = LIGHTER_BY_STEM) -> Pen:
    """The pen of the crowded signs."""
    thin = factor * (LIGHTER - by_stem * max(pen.stem - 0.10, 0.0))
    strokes = ("stem", "hair", "arm", "side", "crown", "fall", "climb")
    return replace(pen, **{name: getattr(pen, name) * thin for name in strokes})


@sign("€")
def draw_euro(pen: Pen) -> Outline:
    """C with two bars that reach out to the left."""
    thin, wide = lighter(pen), pen.wide("€")
    left, gap = wide * 0.12, max(thin.arm * 0.62, 0.075)
    low, high = 0.5 - pen.opening * 0.62, 0.5 + pen.opening * 0.64
    round_c = cut(thin.bowl(left, -pen.over, wide, 1.0 + pen.over), rectangle(wide * 0.60, low, FAR, high))
    thick = thin.dash
    bars = (
        thin.level(0.0, wide * 0.72, 0.5 + gap / 2.0, thick),
        thin.level(0.0, wide * 0.69, 0.5 - gap / 2.0 - thick, thick),
    )
    return join(round_c, *bars)


@sign("£")
def draw_pound(pen: Pen) -> Outline:
    """A stem bent over to the right, on a foot, with a bar."""
    thin, wide = lighter(pen), pen.wide("£") * 0.94
    left = wide * 0.17
    end = 0.5 + pen.opening * 0.55
    hook = thin.arch(left, 0.0, wide * 0.98, 1.0 + pen.over, (thin.stem, thin.side), ends=(None, end))
    return join(hook, thin.level(0.0, wide, 0.0), thin.level(0.0, wide * 0.80, 0.43 - thin.arm / 2.0))


@sign("%")
def draw_percent(pen: Pen) -> Outline:
    """Two small rings and a thin stroke between them."""
    wide = pen.wide("%")
    size, thin = wide * 0.405, lighter(pen, 0.88)
    thin = replace(thin, side=min(thin.side, size * 0.31))
    across = slope_width(wide * 0.58, 1.0, thin.stem * 0.78)
    rings = (
        thin.bowl(0.0, 1.0 - 0.50, size, 1.0 + pen.over),
        thin.bowl(wide - size, -pen.over, wide, 0.50),
    )
    return join(*rings, thin.slope(wide * 0.21, across, wide * 0.79 - across, across))


@sign("#")
def draw_hash(pen: Pen) -> Outline:
    """Two leaning strokes across two bars."""
    thin, wide = lighter(pen, 0.86), pen.wide("#")
    lean, gap = wide * 0.14, wide * 0.36
    across = slope_width(lean + thin.stem, 1.0, thin.stem)
    first = (wide - gap - across - lean) / 2.0
    strokes = [thin.slope(x, across, x + lean, across) for x in (first, first + gap)]
    bars = [
        thin.level(x, wide - (0.04 * wide - x), y - thin.dash / 2.0, thin.dash)
        for x, y in ((0.04 * wide, 0.665), (0.0, 0.335))
    ]
    return join(*strokes, *bars)


@sign("@")
def draw_at(pen: Pen) -> Outline:
    """A small bowl and its stem in a wide ring that does not close."""
    thin, wide = lighter(pen, 0.70), pen.wide("@")
    foot, top = -0.19, 0.95
    middle = (foot + top) / 2.0
    left, right, low, high = wide * 0.27, wide * 0.70, 0.13, 0.66
    opened = cut(thin.bowl(0.0, foot, wide, top), rectangle(wide * 0.66, -FAR, FAR, middle))
    stem = thin.upright(right - thin.stem, low + 0.08, high - 0.02)
    tail = thin.cup(right - thin.stem, low, wide, middle, (thin.stem, thin.side), thin.crown)
    return join(opened, thin.bowl(left, low, right, high), stem, tail)


@sign("+")
def draw_plus(pen: Pen) -> Outline:
    """Two bars crossed."""
    wide, thick = pen.wide("+"), pen.dash
    middle = 0.47
    reach = min(wide, 0.72) / 2.0
    upright = pen.upright((wide - thick) / 2.0, middle - reach, middle + reach, thick)
    return join(upright, pen.level(0.0, wide, middle - thick / 2.0, thick))


@sign("=")
def draw_equals(pen: Pen) -> Outline:
    """Two bars."""
    wide, thick = pen.wide("="), pen.dash
    half = max(thick * 0.85, 0.10) / 2.0
    return join(pen.level(0.0, wide, 0.47 + half, thick), pen.level(0.0, wide, 0.47 - half - thick, thick))


@sign("*")
def draw_star(pen: Pen) -> Outline:
    """Three short bars crossed."""
    radius, half = min(pen.wide("*") / 2.0, 0.27), pen.dash * 0.80 / 2.0
    centre = Point(radius * math.cos(math.pi / 6), 1.0 - radius)
    bar = polygon(
        (centre.x - half, centre.y - radius), (centre.x + half, centre.y - radius),
        (centre.x + half, centre.y + radius), (centre.x - half, centre.y + radius),
    )  # fmt: skip
    return join(*(bar.transformed(Affine.turn(angle, centre)) for angle in (0.0, 60.0, 120.0)))


@sign("°")
def draw_degree(pen: Pen) -> Outline:
    """A small ring under the cap line."""
    thin = lighter(pen, 0.62)
    size = min(pen.wide("°"), 0.42)
    return thin.bowl(0.0, 1.0 - 0.42, size, 1.0 + pen.over)
