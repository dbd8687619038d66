"""Set operations against the world: formulas of plane geometry, and another library on the same cubics."""

from __future__ import annotations

import math

import pytest

from heraldry.geometry.boolean import (
    Difference,
    Intersection,
    SetExpression,
    Union,
    combine,
    intersect,
    subtract,
    unite,
)
from heraldry.geometry.measure import area
from tests.emblems import emblems
from tests.reference import skia
from tests.strategies import box, circle, polygon, ring, star

FORMULA_MM2 = 1e-6
SKIA_SHARE = 1e-4
"""skia-pathops works in single precision, and on cubics in place of arcs."""


def segment_area(radius: float, height: float) -> float:
    """Circular segment of a height: r² acos((r - h)/r) - (r - h) √(2rh - h²) (MathWorld, Circular Segment)."""
    return radius**2 * math.acos((radius - height) / radius) - (radius - height) * math.sqrt(
        2 * radius * height - height**2
    )


def lens_area(r: float, s: float, d: float) -> float:
    """What two circles have in common (MathWorld, Circle-Circle Intersection, formula 14)."""
    return (
        r * r * math.acos((d * d + r * r - s * s) / (2 * d * r))
        + s * s * math.acos((d * d + s * s - r * r) / (2 * d * s))
        - math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2
    )


@pytest.mark.parametrize("outer, inner", ((12.5, 10.0), (5.0, 4.999), (1000.0, 3.0)))
def test_a_ring(outer: float, inner: float) -> None:
    cut = subtract(circle(1, 2, outer), circle(1, 2, inner))
    assert area(cut) == pytest.approx(math.pi * (outer**2 - inner**2), abs=FORMULA_MM2)


@pytest.mark.parametrize("height", (0.001, 1.0, 5.0, 9.99))
def test_a_circular_segment(height: float) -> None:
    cut = intersect(circle(0, 0, 5), box(-9, 5 - height, 9, 9))
    assert area(cut) == pytest.approx(segment_area(5, height), abs=FORMULA_MM2)


@pytest.mark.parametrize("r, s, d", ((5, 3, 4), (5, 5, 0.002), (12.5, 1, 12.5), (5, 3, 7.999)))
def test_a_lens(r: float, s: float, d: float) -> None:
    one, two = circle(0, 0, r), circle(d * 0.8, d * 0.6, s)
    assert area(intersect(one, two)) == pytest.approx(lens_area(r, s, d), abs=FORMULA_MM2)
    assert area(unite(one, two)) == pytest.approx(math.pi * (r * r + s * s) - lens_area(r, s, d), abs=FORMULA_MM2)


@pytest.mark.parametrize("corners", (3, 5, 12))
def test_a_regular_polygon_cut_from_its_circle(corners: int) -> None:
    """n/2 · r² · sin(2π/n) (MathWorld, Regular Polygon)."""
    angles = [math.tau * i / corners for i in range(corners)]
    inscribed = polygon(*((5 * math.cos(a), 5 * math.sin(a)) for a in angles))
    inside = corners / 2 * 25 * math.sin(math.tau / corners)
    assert area(intersect(circle(0, 0, 5), inscribed)) == pytest.approx(inside, abs=FORMULA_MM2)
    assert area(subtract(circle(0, 0, 5), inscribed)) == pytest.approx(25 * math.pi - inside, abs=FORMULA_MM2)


def test_two_squares_make_an_octagram() -> None:
    """A square of side a and the same turned by 45° share a regular octagon: 2(√2 - 1)a² (MathWorld, Octagon)."""
    half = math.sqrt(2)
    square, turned = box(-1, -1, 1, 1), polygon((half, 0), (0, half), (-half, 0), (0, -half))
    assert area(intersect(square, turned)) == pytest.approx(2 * (math.sqrt(2) - 1) * 4, abs=FORMULA_MM2)


@pytest.mark.parametrize("name", tuple(emblems()))
def test_emblems_have_the_area_that_another_library_finds(name: str) -> None:
    expression = emblems()[name]
    assert area(combine(expression).outline) == pytest.approx(skia(expression).area, rel=SKIA_SHARE)


@pytest.mark.parametrize(
    "expression",
    (
        Union((ring(0, 0, 5, 4), ring(3, 0, 5, 4), ring(1.5, 2.6, 5, 4))),
        Difference(star(0, 0, 6, 3, 9), (circle(0, 0, 3.2), box(-1, -7, 1, 7))),
        Intersection((star(0, 0, 6, 3, 9), ring(1, 0, 5, 2))),
    ),
)
def test_nests_have_the_area_that_another_library_finds(expression: SetExpression) -> None:
    assert area(combine(expression).outline) == pytest.approx(skia(expression).area, rel=SKIA_SHARE)
