"""Frames, rings, stars and stripes against the closed forms of geometry, and against worked examples in print."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ellipe

from heraldry.geometry.measure import area, perimeter
from heraldry.geometry.point import Point
from tests.cleanness import draw

EXACT = 1e-9
CUBIC = 1e-6
"""What an ellipse may be off that had to become cubics, as a share."""
PRINTED = 1e-7
"""Half a unit of the last place of the values in print, as a share."""

exactly = settings(max_examples=30, deadline=None, derandomize=True)
lengths = st.integers(200, 5000).map(lambda i: i / 100)
percent = st.integers(5, 95)


# ---- rings


# Circle and annulus: A = π (R² − r²), circumference 2 π r (Archimedes, Measurement of a Circle).
@exactly
@given(radius=lengths, share=percent)
def test_ring(radius, share):
    width = radius * share / 100
    inner = radius - width
    found = draw("ring", ring=radius, width=width, centre=Point(-3, 8))
    assert area(found) == pytest.approx(math.pi * (radius**2 - inner**2), rel=EXACT)
    assert perimeter(found) == pytest.approx(math.tau * (radius + inner), rel=EXACT)
    assert area(draw("circle", circle=radius)) == pytest.approx(math.pi * radius**2, rel=EXACT)


# Rings of a width w in steps of w + g: the sum of their annuli, each 2 π ρ w on its middle line (Pappus).
@exactly
@given(count=st.integers(1, 6), width=st.integers(1, 12), gap=st.integers(1, 6))
def test_rings(count, width, gap):
    width, gap = width / 10, gap / 10
    middles = [14.0 - width / 2 - i * (width + gap) for i in range(count)]
    found = draw("rings", rings=14.0, width=width, gap=gap, count=count)
    assert area(found) == pytest.approx(sum(math.tau * middle * width for middle in middles), rel=EXACT)


# Sector of a ring: boundary θ (R + r) + 2 (R − r) (elementary).
@exactly
@given(radius=lengths, share=percent, sweep=st.integers(5, 355))
def test_boundary_of_a_sector(radius, share, sweep):
    width = radius * share / 100
    found = draw("sector", sector=radius, width=width, sweep=float(sweep))
    assert perimeter(found) == pytest.approx(math.radians(sweep) * (2 * radius - width) + 2 * width, rel=EXACT)


# Rays of a sunburst fill their share of the annulus, every second one of a shorter annulus.
@exactly
@given(count=st.integers(1, 30), share=percent, short=st.integers(20, 100))
def test_rays(count, share, short):
    outer, inner = 10.0, 4.0
    reach = inner + short / 100 * (outer - inner)
    found = draw("rays", rays=2 * count, outer=outer, inner=inner, share=share / 100, short=short / 100)
    expected = share / 100 * math.pi * ((outer**2 - inner**2) + (reach**2 - inner**2)) / 2
    assert area(found) == pytest.approx(expected, rel=EXACT)


# ---- ellipses and segments


# Perimeter of an ellipse: 4 a E(1 − b²/a²), with E the complete elliptic integral of the second kind (Abramowitz and
# Stegun, Handbook of Mathematical Functions, 17.2, and the manual of scipy.special.ellipe, which works the example
# of the half axes 3.5 and 2.1: 17.868899204378693).
def test_perimeter_of_the_printed_ellipse():
    assert perimeter(draw("ellipse", ellipse=7.0, height=4.2)) == pytest.approx(17.868899204378693, rel=CUBIC)


@exactly
@given(width=lengths, share=st.integers(20, 100))
def test_perimeter_of_an_ellipse(width, share):
    a, b = width / 2, width / 2 * share / 100
    found = perimeter(draw("ellipse", ellipse=width, height=2 * b, turn=31.0))
    assert found == pytest.approx(4 * a * ellipe(1 - (b / a) ** 2), rel=2 * CUBIC)
    lean = ((a - b) / (a + b)) ** 2  # Ramanujan's second approximation (1914; from memory), within 1e-5 down to 1 : 5
    ramanujan = math.pi * (a + b) * (1 + 3 * lean / (10 + math.sqrt(4 - 3 * lean)))
    assert found == pytest.approx(ramanujan, rel=2e-5)


# Circular segment: A = R² (θ − sin θ) / 2 with R = c²/8h + h/2 and c = 2 R sin(θ/2)
# (Beyer 1987, as given at https://archive.lib.msu.edu/crcmath/math/math/s/s141.htm).
@exactly
@given(height=st.integers(40, 200), share=st.integers(5, 100))
def test_round_ends_are_segments(height, share):
    chord, rise = height / 10, height / 20 * share / 100
    radius = chord**2 / (8 * rise) + rise / 2
    angle = 2 * math.asin(min(1.0, chord / (2 * radius)))
    found = draw("cartouche", cartouche=60.0, height=chord, ends="round", depth=rise)
    expected = (60.0 - 2 * rise) * chord + radius**2 * (angle - math.sin(angle))
    assert area(found) == pytest.approx(expected, rel=1e-8)


# A worked example in print: chord 21, height 6 give the arc 25.308373 and the segment 89.254148
# (https://help.matheass.eu/en/CircularSections.html).
def test_the_printed_segment():
    found = draw("cartouche", cartouche=60.0, height=21.0, ends="round", depth=6.0)
    assert area(found) == pytest.approx(48.0 * 21.0 + 2 * 89.254148, rel=PRINTED)
    assert perimeter(found) == pytest.approx(2 * 48.0 + 2 * 25.308373, rel=PRINTED)


# Shield: a rectangle down to the shoulders, below it twice a sector less a triangle: an arc of radius R about a
# centre on the line of the shoulders, R = (a² + d²) / 2a, φ = arcsin(d/R): A = R² φ − (R − a) d (elementary).
@exactly
@given(height=st.integers(110, 200), shoulder=st.integers(0, 40))
def test_shield(height, shoulder):
    half, shoulder = 10.0, shoulder / 10
    drop = height / 10 * 2 - shoulder
    radius = (half**2 + drop**2) / (2 * half)
    foot = radius**2 * math.asin(min(1.0, drop / radius)) - (radius - half) * drop
    flat = draw("shield", shield=20.0, height=shoulder + drop, shoulder=shoulder)
    assert area(flat) == pytest.approx(20.0 * shoulder + foot, rel=1e-8)


# The arched top adds a segment of the printed example; the body below it is that of a flat shield as much lower.
def test_arched_shield():
    arched = draw("shield", shield=21.0, height=36.0, top="arched", rise=6.0, shoulder=5.0)
    flat = draw("shield", shield=21.0, height=30.0, shoulder=5.0)
    assert area(arched) - area(flat) == pytest.approx(89.254148, rel=PRINTED)


# ---- straight sides


# A hexagon of circumradius 1 has the sides 1, the area 2.5980762 and the inradius 0.8660254
# (https://help.matheass.eu/en/E205-Regular_Polygons.html).
def test_the_printed_hexagon():
    found = draw("regular", regular=6, radius=1.0)
    assert area(found) == pytest.approx(2.5980762, rel=PRINTED)
    assert perimeter(found) == pytest.approx(6.0, rel=EXACT)
    assert 2 * area(found) / perimeter(found) == pytest.approx(0.8660254, rel=PRINTED)


# A rounded corner of the interior angle φ loses r² (cot(φ/2) − (π − φ)/2): the kite of its tangents less a sector.
@exactly
@given(count=st.integers(3, 20), size=st.integers(1, 20))
def test_rounded_polygon(count, size):
    size = size / 10
    sharp = draw("regular", regular=count, radius=20.0)
    found = draw("regular", regular=count, radius=20.0, corner="round", corner_radius=size)
    inside = math.pi * (1 - 2 / count)
    lost = size**2 * (1 / math.tan(inside / 2) - (math.pi - inside) / 2)
    assert area(sharp) - area(found) == pytest.approx(count * lost, rel=1e-6, abs=1e-9)


# Rectangle with round corners: A = w h − (4 − π) r², boundary 2 (w + h) − (8 − 2π) r; with corners cut: w h − 2 c².
@exactly
@given(width=lengths, height=lengths, share=percent)
def test_box_with_finished_corners(width, height, share):
    size = min(width, height) / 2 * share / 100
    rounded = draw("box", box=width, height=height, corner="round", radius=size)
    assert area(rounded) == pytest.approx(width * height - (4 - math.pi) * size**2, rel=EXACT)
    assert perimeter(rounded) == pytest.approx(2 * (width + height) - (8 - math.tau) * size, rel=EXACT)
    cut = draw("box", box=width, height=height, corner="cut", radius=size)
    assert area(cut) == pytest.approx(width * height - 2 * size**2, rel=EXACT)


# Parallelogram: A = base × height whatever it leans (Euclid I.35), sides h / cos(lean).
@exactly
@given(width=lengths, height=lengths, slant=st.integers(-60, 60))
def test_slanted_box(width, height, slant):
    found = draw("box", box=width, height=height, slant=float(slant))
    assert area(found) == pytest.approx(width * height, rel=EXACT)
    assert perimeter(found) == pytest.approx(2 * width + 2 * height / math.cos(math.radians(slant)), rel=EXACT)


# Rhombus: A = d e / 2, sides √(d² + e²) / 2.
@exactly
@given(width=lengths, height=lengths)
def test_diamond(width, height):
    found = draw("diamond", diamond=width, height=height, turn=17.0)
    assert area(found) == pytest.approx(width * height / 2, rel=EXACT)
    assert perimeter(found) == pytest.approx(2 * math.hypot(width, height), rel=EXACT)


# Keystone: a trapezoid (a + b) h / 2 and a rectangle on it.
@exactly
@given(foot=st.integers(40, 160), shoulder=st.integers(5, 40), lip=st.integers(1, 15))
def test_keystone(foot, shoulder, lip):
    foot, shoulder, lip = foot / 10, shoulder / 10, lip / 10
    found = draw("keystone", keystone=20.0, height=18.0, foot=foot, shoulder=shoulder, lip=lip)
    wedge = (foot + 20.0 - 2 * lip) / 2 * (18.0 - shoulder)
    assert area(found) == pytest.approx(wedge + 20.0 * shoulder, rel=EXACT)


# Star: 2n sides, each by the law of cosines √(R² + r² − 2 R r cos(π/n)).
@exactly
@given(count=st.integers(3, 30), radius=lengths, share=st.integers(10, 90))
def test_boundary_of_a_star(count, radius, share):
    inner = radius * share / 100
    side = math.sqrt(radius**2 + inner**2 - 2 * radius * inner * math.cos(math.pi / count))
    assert perimeter(draw("star", star=count, radius=radius, inner=inner)) == pytest.approx(2 * count * side, rel=EXACT)


# Any polygon: A = ½ |Σ (x_i y_{i+1} − x_{i+1} y_i)| (Gauss). Corners in the order of their angles never cross.
@exactly
@given(radii=st.lists(st.integers(20, 200), min_size=3, max_size=12))
def test_polygon(radii):
    places = tuple(Point.polar(r / 10, math.tau * i / len(radii)) for i, r in enumerate(radii))
    around = zip(places, [*places[1:], places[0]], strict=True)
    expected = abs(sum(a.x * b.y - b.x * a.y for a, b in around)) / 2
    assert area(draw("polygon", polygon=places)) == pytest.approx(expected, rel=1e-8)


# Stripes: trapezoids of the mean width (1 + tip) / 2, their widths a geometric series, their lengths an arithmetic one.
@exactly
@given(count=st.integers(1, 7), taper=st.integers(60, 130), tip=st.integers(0, 100), slant=st.integers(-50, 50))
def test_stripes(count, taper, tip, slant):
    taper, tip = taper / 100, tip / 100
    found = draw(
        "stripes", stripes=count, length=20.0, width=1.2, gap=0.5, step=1.5, taper=taper, tip=tip, slant=float(slant)
    )
    expected = sum(1.2 * taper**i * (1 + tip) / 2 * (20.0 - 1.5 * i) for i in range(count))
    assert area(found) == pytest.approx(expected, rel=EXACT)
