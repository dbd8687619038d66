"""Hypothesis strategies for outlines: single shapes of every kind of segment, and random nests of them.

Numbers are drawn on a grid of a micrometre or coarser, for that is what descriptions hold, and a coarse grid
makes coincident edges, shared corners and touching circles common instead of never.
"""

from __future__ import annotations

import math

from hypothesis import strategies as st

from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment


def circle(x: float, y: float, radius: float, ccw: bool = True) -> Outline:
    return Outline.of([Path((Arc.about(Point(x, y), radius, 0.0, math.tau if ccw else -math.tau),), closed=True)])


def ring(x: float, y: float, outer: float, inner: float) -> Outline:
    return Outline.gather([circle(x, y, outer), circle(x, y, inner, ccw=False)])


def polygon(*corners: tuple[float, float]) -> Outline:
    return Outline.of([Path.through([Point(x, y) for x, y in corners], closed=True)])


def box(left: float, bottom: float, right: float, top: float) -> Outline:
    return polygon((left, bottom), (right, bottom), (right, top), (left, top))


def star(x: float, y: float, outer: float, inner: float, points: int) -> Outline:
    radii = [outer if i % 2 == 0 else inner for i in range(2 * points)]
    angles = [math.pi * (0.5 + i / points) for i in range(2 * points)]
    return polygon(*((x + r * math.cos(a), y + r * math.sin(a)) for r, a in zip(radii, angles, strict=True)))


def rounded_box(left: float, bottom: float, right: float, top: float, radius: float) -> Outline:
    centres = [
        Point(right - radius, bottom + radius),
        Point(right - radius, top - radius),
        Point(left + radius, top - radius),
        Point(left + radius, bottom + radius),
    ]
    spokes = [Point(0, -radius), Point(radius, 0), Point(0, radius), Point(-radius, 0), Point(0, -radius)]
    arcs = [
        Arc(centre + spokes[i], centre + spokes[i + 1], centre, radius, math.pi / 2) for i, centre in enumerate(centres)
    ]
    segments: list[Segment] = []
    for i, arc in enumerate(arcs):
        segments += [arc, Line(arc.end, arcs[(i + 1) % 4].start)]
    return Outline.of([Path(tuple(segment for segment in segments if segment.start != segment.end), closed=True)])


def blob(x: float, y: float, radii: list[float], fullness: float = 0.9) -> Outline:
    """A closed chain of cubics through points at the given radii, smooth at each of them."""
    count = len(radii)
    reach = 4 / 3 * math.tan(math.pi / 2 / count) * fullness
    nodes = [Point(x, y) + Point.polar(r, math.tau * i / count) for i, r in enumerate(radii)]
    legs = [Point.polar(r * reach, math.tau * i / count).left for i, r in enumerate(radii)]
    return Outline.of(
        [
            Path(
                tuple(
                    Cubic(
                        nodes[i],
                        nodes[i] + legs[i],
                        nodes[(i + 1) % count] - legs[(i + 1) % count],
                        nodes[(i + 1) % count],
                    )
                    for i in range(count)
                ),
                closed=True,
            )
        ]
    )


def steps(low: float, high: float, step: float) -> st.SearchStrategy[float]:
    """Numbers low, low + step, … up to high."""
    count = round((high - low) / step)
    return st.integers(0, count).map(lambda i: round(low + i * step, 6))


@st.composite
def shapes(draw: st.DrawFn, reach: float = 6.0, step: float = 0.25) -> Outline:
    """One shape near the origin: round, straight, mixed or free-form; turned now and then."""
    x, y, size = draw(steps(-reach, reach, step)), draw(steps(-reach, reach, step)), draw(steps(0.5, 5.0, step))
    kind = draw(st.sampled_from(("circle", "ring", "box", "rounded", "star", "blob")))
    if kind == "circle":
        return circle(x, y, size)
    if kind == "ring":
        return ring(x, y, size, size * draw(steps(0.25, 0.75, 0.25)))
    if kind == "box":
        return turned(draw, box(x - size, y - size / 2, x + size, y + size / 2))
    if kind == "rounded":
        return turned(draw, rounded_box(x - size, y - size / 2, x + size, y + size / 2, size / 4))
    if kind == "star":
        return star(x, y, size, size / 2, draw(st.integers(3, 7)))
    return blob(x, y, [size * share for share in draw(st.lists(steps(0.5, 1.25, 0.25), min_size=3, max_size=6))])


def turned(draw: st.DrawFn, outline: Outline) -> Outline:
    """The outline turned by one of a few angles, mostly not at all."""
    return outline.transformed(Affine.turn(draw(st.sampled_from((0.0, 0.0, 90.0, 30.0, 17.3)))))


def nests(max_size: int = 5) -> st.SearchStrategy[list[Outline]]:
    """A few shapes that overlap, touch, nest or repeat each other."""
    return st.lists(shapes(), min_size=1, max_size=max_size)
