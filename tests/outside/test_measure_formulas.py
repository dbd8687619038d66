"""Measures against handbook formulas, and against two libraries that know nothing of ours."""

import math

import numpy as np
import pytest
import shapely
import svgpathtools

from heraldry.geometry.affine import Affine
from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import ArcLength, area, bounds, centroid, length, perimeter
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path

HANDBOOK = 1e-6
EXACT = 1e-12


def disc(radius, centre=ORIGIN):
    return Path((Arc.about(centre, radius, 0.7, math.tau),), closed=True)


def segment_of_circle(radius, angle):
    bow = Arc.about(ORIGIN, radius, -angle / 2, angle)
    return Outline.of([Path((bow, Line(bow.end, bow.start)), closed=True)])


# Annulus: A = π (R² − r²), edge 2π (R + r); elementary geometry (Archimedes, Measurement of a Circle).
@pytest.mark.parametrize(("outer", "inner"), [(12.5, 11.6), (3.0, 0.02), (1000.0, 999.9)])
def test_a_ring(outer, inner):
    ring = Outline.of([disc(outer, Point(7, -3)), disc(inner, Point(7, -3)).reversed()])
    assert area(ring) == pytest.approx(math.pi * (outer**2 - inner**2), rel=1e-11)
    assert perimeter(ring) == pytest.approx(2 * math.pi * (outer + inner), rel=EXACT)
    assert tuple(centroid(ring)) == pytest.approx((7, -3), abs=1e-8)


# Circular segment: A = r² (θ − sin θ)/2, its centroid 4 r sin³(θ/2) / (3 (θ − sin θ)) from the centre, chord
# 2 r sin(θ/2); elementary integrals, from memory as every handbook of mechanics prints them.
@pytest.mark.parametrize("angle", [0.01, 0.5, math.pi / 2, math.pi, 4.0, 6.2])
def test_a_circular_segment(angle):
    radius = 12.5
    found = segment_of_circle(radius, angle)
    assert area(found) == pytest.approx(radius**2 * (angle - math.sin(angle)) / 2, rel=HANDBOOK)
    assert perimeter(found) == pytest.approx(radius * angle + 2 * radius * math.sin(angle / 2), rel=EXACT)
    middle = 4 * radius * math.sin(angle / 2) ** 3 / (3 * (angle - math.sin(angle)))
    assert tuple(centroid(found)) == pytest.approx((middle, 0), rel=1e-6, abs=1e-9)
    assert bounds(found).right == pytest.approx(radius, rel=EXACT)


# Half disc: centroid 4 r / (3π) above its diameter (Pappus's theorem, from memory).
def test_a_half_disc():
    half = segment_of_circle(3.0, math.pi)
    assert centroid(half).x == pytest.approx(4 * 3.0 / (3 * math.pi), rel=EXACT)


# Ellipse: A = π a b; perimeter 4 a E(e) with the complete elliptic integral of the second kind, here by the
# arithmetic-geometric mean (Abramowitz and Stegun 17.6, from memory): E = π/(2 M) · (1 − Σ 2^(n−1) c_n²).
@pytest.mark.parametrize(("a", "b"), [(10.0, 6.0), (5.0, 5.0), (20.0, 1.0)])
def test_an_ellipse_of_cubics(a, b):
    fine = math.radians(5)
    circle = Outline.of([disc(1.0)]).with_arcs_as_cubics(fine)
    ellipse = circle.transformed(Affine.scale(a, b)).transformed(Affine.turn(31))
    assert area(ellipse) == pytest.approx(math.pi * a * b, rel=HANDBOOK)
    assert perimeter(ellipse) == pytest.approx(ellipse_perimeter(a, b), rel=HANDBOOK)
    c, s = math.cos(math.radians(31)), math.sin(math.radians(31))
    assert bounds(ellipse).right == pytest.approx(math.hypot(a * c, b * s), rel=HANDBOOK)


def ellipse_perimeter(a, b):
    mean, other, total, weight = a, b, 0.0, 0.5
    total = weight * (a * a - b * b)
    while abs(mean - other) > 1e-15 * a:
        mean, other, half = (mean + other) / 2, math.sqrt(mean * other), (mean - other) / 2
        weight *= 2
        total += weight * half * half
    return 2 * math.pi / mean * (a * a - total)


# Regular polygon: A = n s² / (4 tan(π/n)); perimeter n s (elementary trigonometry).
@pytest.mark.parametrize("count", [3, 4, 5, 6, 8, 100])
def test_a_regular_polygon(count):
    corners = [Point.polar(4.0, math.tau * i / count) + Point(50, 80) for i in range(count)]
    polygon = Outline.of([Path.through(corners, closed=True)])
    side = 2 * 4.0 * math.sin(math.pi / count)
    assert area(polygon) == pytest.approx(count * side**2 / (4 * math.tan(math.pi / count)), rel=1e-10)
    assert perimeter(polygon) == pytest.approx(count * side, rel=1e-11)
    assert tuple(centroid(polygon)) == pytest.approx((50, 80), rel=1e-12)


# Any polygon: the surveyor's (shoelace) formula, as shapely implements it.
def test_a_random_star_as_shapely_measures_it():
    chance = np.random.default_rng(7)
    radii = chance.uniform(1, 9, 400)
    turn = np.linspace(0, math.tau, 400, endpoint=False)
    xy = np.stack((radii * np.cos(turn), radii * np.sin(turn)), axis=1)
    ours = Outline.of([Path.through((Point(*p) for p in xy.tolist()), closed=True)])
    theirs = shapely.Polygon(xy)
    assert area(ours) == pytest.approx(theirs.area, rel=1e-12)
    assert perimeter(ours) == pytest.approx(theirs.length, rel=1e-12)
    assert tuple(centroid(ours)) == pytest.approx(theirs.centroid.coords[0], rel=1e-10)


def random_cubics(count):
    chance = np.random.default_rng(11)
    return [Cubic(*(Point(*p) for p in chance.uniform(-5, 5, (4, 2)).tolist())) for _ in range(count)]


def theirs(cubic):
    return svgpathtools.CubicBezier(*(complex(*p) for p in (cubic.start, cubic.control1, cubic.control2, cubic.end)))


# svgpathtools integrates with scipy's adaptive quad and finds extrema by polynomial roots: another way.
@pytest.mark.parametrize("cubic", random_cubics(12))
def test_cubics_as_svgpathtools_measures_them(cubic):
    path = Path((cubic,))
    assert length(path) == pytest.approx(theirs(cubic).length(error=1e-11), rel=1e-8)
    left, right, bottom, top = theirs(cubic).bbox()
    box = bounds(path)
    assert (box.left, box.right, box.bottom, box.top) == pytest.approx((left, right, bottom, top), abs=1e-9)
    half = ArcLength(path).at(length(path) / 3)
    t = theirs(cubic).ilength(length(path) / 3, s_tol=1e-11)
    assert complex(*half.points) == pytest.approx(theirs(cubic).point(t), abs=1e-8)
    assert complex(*half.tangents) == pytest.approx(theirs(cubic).unit_tangent(t), abs=1e-7)


# A leaf of two cubics, flattened to a nanometre and measured by shapely: the flattening loses at most
# perimeter × tolerance of the area.
def test_a_leaf_as_shapely_measures_its_flattening():
    up, down = Cubic(Point(0, 0), Point(1, 5), Point(6, 4), Point(9, 0)), Point(9, 0)
    leaf = Outline.of([Path((up, Cubic(down, Point(7, -3), Point(2, -1), Point(0, 0))), closed=True)])
    tolerance = 1e-6
    polygon = shapely.Polygon(flatten(leaf, tolerance)[0])
    assert area(leaf) == pytest.approx(polygon.area, abs=perimeter(leaf) * tolerance)
    assert perimeter(leaf) == pytest.approx(polygon.length, rel=1e-6)
    assert tuple(centroid(leaf)) == pytest.approx(polygon.centroid.coords[0], abs=1e-5)
    assert tuple(polygon.bounds) == pytest.approx(
        (bounds(leaf).left, bounds(leaf).bottom, bounds(leaf).right, bounds(leaf).top), abs=2 * tolerance
    )
