"""Signs of money, number and reckoning: $ € £ % № # @ + = * ° §."""

from __future__ import annotations

import math
from dataclasses import replace

from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabets.contour import polygon, rectangle
from heraldry.lettering.alphabets.gothic.letters import letter
from heraldry.lettering.alphabets.gothic.round import WAIST_OF_S, ring, s_shape
from heraldry.lettering.alphabets.ink import cut, join, moved
from heraldry.lettering.alphabets.pen import Pen, slope_width

FAR = 2.0

# Signs with many strokes are drawn lighter: their strokes in those of the letters, at the regular weight and what
# they lose with each stem more.
LIGHTER, LIGHTER_BY_STEM = 0.98, 1.6


def lighter(pen: Pen, factor: float = 1.0) -> Pen:
    """The pen of the crowded signs."""
    thin = factor * (LIGHTER - LIGHTER_BY_STEM * max(pen.stem - 0.10, 0.0))
    strokes = ("stem", "arm", "side", "crown", "fall", "climb")
    return replace(pen, **{name: getattr(pen, name) * thin for name in strokes})


@letter("$")
def draw_dollar(pen: Pen) -> Outline:
    """S with a stroke that shows above and below it."""
    thin, wide = lighter(pen), pen.wide("$") * 0.96
    stroke, middle = thin.stem * 0.9, wide / 2.0
    left = middle - stroke / 2.0
    below, above = (
        thin.upright(left, -0.115, thin.crown / 2.0, stroke),
        thin.upright(left, 1.0 - thin.crown / 2.0, 1.115, stroke),
    )
    return join(s_shape(thin, wide, 1.0, WAIST_OF_S, 1.0), below, above)


@letter("€")
def draw_euro(pen: Pen) -> Outline:
    """C with two bars that reach out to the left."""
    thin, wide = lighter(pen), pen.wide("€")
    left, gap = wide * 0.12, max(thin.arm * 0.62, 0.075)
    low, high = 0.5 - pen.opening * 0.62, 0.5 + pen.opening * 0.64
    round_c = cut(moved(ring(thin, wide - left), left), rectangle(wide * 0.60, low, FAR, high))
    bars = (thin.level(0.0, wide * 0.72, 0.5 + gap / 2.0), thin.level(0.0, wide * 0.69, 0.5 - gap / 2.0 - thin.arm))
    return join(round_c, *bars)


@letter("£")
def draw_pound(pen: Pen) -> Outline:
    """A stem bent over to the right, on a foot, with a bar."""
    thin, wide = lighter(pen), pen.wide("£") * 0.94
    left = wide * 0.17
    end = 0.5 + pen.opening * 0.55
    hook = thin.arch(left, 0.0, wide * 0.98, 1.0 + pen.over, (thin.stem, thin.side), ends=(None, end))
    return join(hook, thin.level(0.0, wide, 0.0), thin.level(0.0, wide * 0.80, 0.43 - thin.arm / 2.0))


@letter("%")
def draw_percent(pen: Pen) -> Outline:
    """Two small rings and a thin stroke between them."""
    thin, wide = lighter(pen, 0.88), pen.wide("%")
    size = wide * 0.405
    across = slope_width(wide * 0.58, 1.0, thin.stem * 0.78)
    rings = (
        thin.bowl(0.0, 1.0 - 0.50, size, 1.0 + pen.over),
        thin.bowl(wide - size, -pen.over, wide, 0.50),
    )
    return join(*rings, thin.slope(wide * 0.21, across, wide * 0.79 - across, across))


@letter("№")
def draw_numero(pen: Pen) -> Outline:
    """N and a small raised o over a bar."""
    wide, capital = pen.wide("№"), pen.wide("N")
    thin = lighter(pen, 0.84)
    left = capital + max(pen.stem * 0.55, 0.09)
    small = thin.bowl(left, 0.40, wide, 1.0 + pen.over)
    across = slope_width(capital, 1.0, pen.fall * 0.95)
    diagonal = pen.slope(capital - across, across, 0.0, across)
    under = rectangle(left, 0.17, wide, 0.17 + thin.crown)
    return join(pen.upright(0.0), pen.upright(capital - pen.stem), diagonal, small, under)


@letter("#")
def draw_hash(pen: Pen) -> Outline:
    """Two leaning strokes across two bars."""
    thin, wide = lighter(pen, 0.86), pen.wide("#")
    lean, gap = wide * 0.14, wide * 0.36
    across = slope_width(lean + thin.stem, 1.0, thin.stem)
    first = (wide - gap - across - lean) / 2.0
    strokes = [thin.slope(x, across, x + lean, across) for x in (first, first + gap)]
    bars = [
        thin.level(x, wide - (0.04 * wide - x), y - thin.arm / 2.0) for x, y in ((0.04 * wide, 0.665), (0.0, 0.335))
    ]
    return join(*strokes, *bars)


@letter("@")
def draw_at(pen: Pen) -> Outline:
    """A small bowl and its stem in a wide ring that does not close."""
    thin, wide = lighter(pen, 0.66), pen.wide("@")
    foot, top = -0.19, 0.95
    middle = (foot + top) / 2.0
    left, right, low, high = wide * 0.27, wide * 0.70, 0.13, 0.66
    opened = cut(thin.bowl(0.0, foot, wide, top), rectangle(wide * 0.66, -FAR, FAR, middle))
    stem = thin.upright(right - thin.stem, low + 0.08, high - 0.02)
    tail = thin.cup(right - thin.stem, low, wide, middle, (thin.stem, thin.side), thin.crown)
    return join(opened, thin.bowl(left, low, right, high), stem, tail)


@letter("+")
def draw_plus(pen: Pen) -> Outline:
    """Two bars crossed."""
    wide, thick = pen.wide("+"), pen.arm
    middle = 0.47
    reach = min(wide, 0.72) / 2.0
    upright = pen.upright((wide - thick) / 2.0, middle - reach, middle + reach, thick)
    return join(upright, pen.level(0.0, wide, middle - thick / 2.0))


@letter("=")
def draw_equals(pen: Pen) -> Outline:
    """Two bars."""
    wide, gap = pen.wide("="), max(pen.arm * 0.85, 0.10)
    return join(pen.level(0.0, wide, 0.47 + gap / 2.0), pen.level(0.0, wide, 0.47 - gap / 2.0 - pen.arm))


@letter("*")
def draw_star(pen: Pen) -> Outline:
    """Three short bars crossed."""
    radius, half = min(pen.wide("*") / 2.0, 0.27), pen.arm * 0.80 / 2.0
    centre = Point(radius * math.cos(math.pi / 6), 1.0 - radius)
    bar = polygon(
        (centre.x - half, centre.y - radius), (centre.x + half, centre.y - radius),
        (centre.x + half, centre.y + radius), (centre.x - half, centre.y + radius),
    )  # fmt: skip
    return join(*(bar.transformed(Affine.turn(angle, centre)) for angle in (0.0, 60.0, 120.0)))


@letter("°")
def draw_degree(pen: Pen) -> Outline:
    """A small ring under the cap line."""
    thin = lighter(pen, 0.62)
    size = min(pen.wide("°"), 0.42)
    return thin.bowl(0.0, 1.0 - 0.42, size, 1.0 + pen.over)
