"""Areas and lengths of shapes against the closed forms of handbooks of geometry and of machine elements."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.geometry.flatten import flatten
from heraldry.geometry.measure import area, bounds, perimeter
from heraldry.geometry.point import Point
from tests.cleanness import draw

EXACT = 1e-10
CUBIC = 1e-6
"""What circles and involutes may be off that had to become cubics, as a share."""

exactly = settings(max_examples=30, deadline=None, derandomize=True)
lengths = st.integers(200, 5000).map(lambda i: i / 100)


# Regular polygon of circumradius R: A = n R² sin(2π/n) / 2 (elementary trigonometry).
@exactly
@given(count=st.integers(3, 60), radius=lengths)
def test_regular_polygon(count, radius):
    found = draw("regular", regular=count, radius=radius, turn=11.0, centre=Point(3, 4))
    assert area(found) == pytest.approx(count * radius**2 * math.sin(math.tau / count) / 2, rel=EXACT)
    assert perimeter(found) == pytest.approx(2 * count * radius * math.sin(math.pi / count), rel=EXACT)


# Regular octagon from its width a across flats: A = 2 (√2 − 1) a², side a (√2 − 1) (handbook value, from memory).
@exactly
@given(width=lengths)
def test_regular_octagon(width):
    found = draw("octagon", octagon=width)
    assert area(found) == pytest.approx(2 * (math.sqrt(2) - 1) * width**2, rel=EXACT)
    assert perimeter(found) == pytest.approx(8 * (math.sqrt(2) - 1) * width, rel=EXACT)


# Box with four corners cut off, a × b each: A = w h − 2 a b (elementary).
def test_octagon_with_unequal_cuts():
    assert area(draw("octagon", octagon=20.0, height=12.0, cut=5.0, rise=3.0)) == pytest.approx(210.0, rel=EXACT)


# Star of n points: 2n triangles with two sides R, r and the angle π/n between them: A = n R r sin(π/n).
@exactly
@given(count=st.integers(3, 30), radius=lengths, share=st.integers(10, 90))
def test_star(count, radius, share):
    inner = radius * share / 100
    found = draw("star", star=count, radius=radius, inner=inner)
    assert area(found) == pytest.approx(count * radius * inner * math.sin(math.pi / count), rel=EXACT)


# The notched seal is a star with blunt valleys: the same formula with 2n triangles, R and r = R − depth.
@exactly
@given(count=st.integers(3, 90), radius=lengths)
def test_pointed_seal(count, radius):
    depth = radius * 0.07
    found = draw("seal", seal=radius, count=count, depth=depth)
    assert area(found) == pytest.approx(count * radius * (radius - depth) * math.sin(math.pi / count), rel=EXACT)


# The square-notched seal covers half of the annulus between root and tip: A = π (R² + r²) / 2.
def test_square_seal():
    assert area(draw("seal", seal=10.0, count=30, depth=1.0, notch="square")) == pytest.approx(
        math.pi * (100 + 81) / 2, rel=CUBIC
    )


# Five-pointed star drawn through: R / r = φ² with φ the golden ratio (Euclid, Elements XIII; from memory).
def test_pentagram():
    golden = (1 + math.sqrt(5)) / 2
    found = draw("star", star=5, radius=10.0)
    radii = sorted({round(abs(segment.start), 9) for segment in found.paths[0]})
    assert radii[1] / radii[0] == pytest.approx(golden**2, rel=1e-8)


# Sector of a ring: A = θ (R² − r²) / 2 (Archimedes, Measurement of a Circle).
@exactly
@given(radius=lengths, share=st.integers(5, 95), sweep=st.integers(5, 355))
def test_sector_of_a_ring(radius, share, sweep):
    width = radius * share / 100
    found = draw("sector", sector=radius, width=width, sweep=float(sweep))
    assert area(found) == pytest.approx(math.radians(sweep) * (radius**2 - (radius - width) ** 2) / 2, rel=1e-9)


# Ring in pieces: from the annulus, n gaps of a width g with parallel sides between two circles, each
# F(R) − F(r) with F(ρ) = (g/2) √(ρ² − g²/4) + ρ² arcsin(g / 2ρ): the integral of 2 √(ρ² − y²) over the gap, halved.
@exactly
@given(count=st.integers(1, 12), width=st.integers(2, 40), gap=st.integers(2, 20))
def test_ring_in_pieces(count, width, gap):
    outer, inner, gap = 10.0, 10.0 - width / 10, gap / 10

    def under(radius):
        return gap / 2 * math.sqrt(radius**2 - gap**2 / 4) + radius**2 * math.asin(gap / 2 / radius)

    found = draw("broken_ring", broken_ring=outer, width=width / 10, count=count, gap=gap)
    left = math.pi * (outer**2 - inner**2) - count * (under(outer) - under(inner))
    assert area(found) == pytest.approx(left, rel=1e-8)


# Beads: n discs, A = n π d² / 4.
def test_beads():
    assert area(draw("beads", beads=10.0, size=0.8, count=40)) == pytest.approx(40 * math.pi * 0.16, rel=1e-8)


# Scallop: the polygon of its cusps and n circular segments on its sides. Segment of chord c and rise h:
# R = c²/8h + h/2, θ = 2 arcsin(c / 2R) up to the half disc, A = R² (θ − sin θ) / 2 (any handbook, from memory).
@pytest.mark.parametrize("count", [8, 16, 24, 50])
def test_scallop(count):
    half = math.pi / count
    radius, depth = 10.0, 0.4
    corner = radius - depth
    chord, rise = 2 * corner * math.sin(half), radius - corner * math.cos(half)
    arc_radius = chord**2 / (8 * rise) + rise / 2
    angle = 2 * math.asin(chord / (2 * arc_radius))
    segment = arc_radius**2 * (angle - math.sin(angle)) / 2
    assert rise <= arc_radius
    found = draw("scallop", scallop=radius, count=count, depth=depth)
    assert area(found) == pytest.approx(count * (corner**2 * math.sin(2 * half) / 2 + segment), rel=1e-8)


# Ellipse: A = π a b.
@exactly
@given(width=lengths, height=lengths)
def test_ellipse(width, height):
    assert area(draw("ellipse", ellipse=width, height=height, turn=23.0)) == pytest.approx(
        math.pi * width * height / 4, rel=CUBIC
    )


# Four-centred oval: two sectors of each circle, less the rhombus between the four centres that they share:
# A = 2 λ r² + (π − 2λ) R² − 2 d e, with the centres d and e off the middle and λ = arctan(e/d).
# It stays within 2 % of the ellipse on the same axes down to a height of half the width.
@exactly
@given(width=st.integers(10, 60), share=st.integers(50, 98))
def test_oval(width, share):
    a, b = width / 2, width / 2 * share / 100
    chord, excess = math.hypot(a, b), a - b
    flank, crown = chord * (chord - excess) / (2 * a), chord * (chord + excess) / (2 * b)
    d, e = a - flank, crown - b
    lean = math.atan2(e, d)
    expected = 2 * lean * flank**2 + (math.pi - 2 * lean) * crown**2 - 2 * d * e
    found = draw("oval", oval=2 * a, height=2 * b)
    assert area(found) == pytest.approx(expected, rel=1e-7)
    assert area(found) == pytest.approx(math.pi * a * b, rel=0.02)
    assert math.hypot(d, e) == pytest.approx(crown - flank, rel=1e-7)  # circles that touch from inside


# Trapezoid: A = (a + b) h / 2.
def test_trapezoid():
    found = draw("trapezoid", trapezoid=20.0, height=6.0, left=30.0, right=-15.0)
    top = 20.0 - 6.0 * (math.tan(math.radians(30)) + math.tan(math.radians(15)))
    assert area(found) == pytest.approx((20.0 + top) * 6.0 / 2, rel=EXACT)


# Nameplates: hollow ends take four quarter discs from the rectangle; round ones make a stadium, π r² + 2 r s.
def test_cartouche():
    hollow = draw("cartouche", cartouche=20.0, height=8.0, ends="hollow", depth=2.0)
    assert area(hollow) == pytest.approx(160 - math.pi * 4, rel=1e-9)
    stadium = draw("cartouche", cartouche=20.0, height=8.0, ends="round")
    assert area(stadium) == pytest.approx(math.pi * 16 + 8 * 12, rel=1e-9)
    assert perimeter(stadium) == pytest.approx(8 * math.pi + 24, rel=EXACT)


# A cloth keeps its area when every upright line of it is lifted as a whole (Cavalieri's principle).
@exactly
@given(tip=st.integers(1, 12), notch=st.integers(0, 10), wave=st.integers(-20, 20), swings=st.integers(1, 30))
def test_a_waving_flag_keeps_its_area(tip, notch, wave, swings):
    flat = area(draw("flag", flag=20.0, tip=float(tip), notch=float(notch)))
    waving = draw("flag", flag=20.0, tip=float(tip), notch=float(notch), wave=wave / 10, swings=swings / 10)
    assert flat == pytest.approx(20.0 * (12.0 + tip) / 2 - notch * tip / 2, rel=EXACT)
    assert area(waving) == pytest.approx(flat, rel=2e-3)  # a cubic follows a quarter of a sine to 1.3 % of its height


# Chevrons: n parallelograms twice over, each span/2 × the upright thickness w √(1 + (2 rise/span)²).
@exactly
@given(rise=st.integers(1, 30), width=st.integers(1, 5), count=st.integers(1, 5))
def test_chevron(rise, width, count):
    found = draw("chevron", chevron=20.0, rise=float(rise), width=float(width), count=count)
    assert area(found) == pytest.approx(count * 20.0 * width * math.hypot(1.0, rise / 10.0), rel=EXACT)


# Arrow: shaft w × (l − p) and head h × p / 2, less a notch of w × n / 2 (elementary).
def test_arrow():
    found = draw("arrow", arrow=20.0, width=3.0, head=8.0, point=6.0, notch=2.0)
    assert area(found) == pytest.approx(3.0 * 14.0 + 8.0 * 6.0 / 2 - 3.0 * 2.0 / 2, rel=EXACT)


# Sun over the horizon: half a disc, and n sectors that fill a share of the half annulus.
@exactly
@given(count=st.integers(2, 25), share=st.integers(10, 90))
def test_sunrise(count, share):
    found = draw("sunrise", sunrise=10.0, disc=4.0, gap=1.0, count=count, share=share / 100)
    assert area(found) == pytest.approx(math.pi * 8 + share / 100 * math.pi * (100 - 25) / 2, rel=1e-7)


# A band between parallel curves has the area width × length of its middle line (Steiner; Pappus and Guldin).
@exactly
@given(count=st.integers(1, 6), rise=st.integers(2, 16), width=st.integers(1, 10))
def test_rolling_waves(count, rise, width):
    height, width = rise / 10, width / 10
    half_wave = 20.0 / (2 * count)
    radius = half_wave**2 / (4 * height) + height / 4
    sweep = 4 * math.atan(height / half_wave)
    found = draw("waves", waves=20.0, rows=1, count=count, height=height, width=width)
    assert area(found) == pytest.approx(width * radius * sweep * 2 * count, rel=1e-7)
    assert bounds(found).height == pytest.approx(height + width)


# A gear has its teeth half a pitch wide on the pitch circle, π m / 2, tip and root circles at z/2 + 1 and z/2 − 1.25
# modules (ISO 53, ISO 54; from memory), and flanks whose normals touch the base circle r cos α (definition of the
# involute; Euler).
@pytest.mark.parametrize("teeth", [12, 17, 24, 48, 100])
@pytest.mark.parametrize("pressure", [14.5, 20.0, 25.0])
def test_gear(teeth, pressure):
    module = 2.0
    tip, pitch, root = module * (teeth / 2 + 1), module * teeth / 2, module * (teeth / 2 - 1.25)
    found = draw("gear", gear=tip, teeth=teeth, bore=0.0, pressure=pressure)
    ring = shapely.Polygon(flatten(found)[0])
    radii = np.hypot(*flatten(found)[0].T)
    assert radii.min() == pytest.approx(root, rel=1e-6)
    assert radii.max() == pytest.approx(tip, rel=1e-9)
    inked = shapely.Point(0, 0).buffer(pitch, quad_segs=20_000).exterior.intersection(ring).length
    assert inked / teeth == pytest.approx(math.pi * module / 2, rel=1e-5)
    assert math.pi * root**2 < area(found) < math.pi * tip**2


@pytest.mark.parametrize("teeth", [12, 24, 60, 120])
def test_normals_of_a_gear_flank_touch_the_base_circle(teeth):
    radius = 30.0
    base = radius / (teeth / 2 + 1) * teeth / 2 * math.cos(math.radians(20))
    flanks = [stroke for stroke in draw("gear", gear=radius, teeth=teeth).paths[0] if hasattr(stroke, "control1")]
    assert len(flanks) == 4 * teeth
    for stroke in flanks[:4]:
        for t in (0.3, 0.5, 0.7, 0.95):
            tangent = (stroke.at(t + 1e-6) - stroke.at(t - 1e-6)).unit
            normal_off_axle = abs(stroke.at(t).dot(tangent))  # distance of the normal from the axle
            assert normal_off_axle == pytest.approx(base, rel=2e-3)


# Compass rose without lines: each of n points a dark triangle of reach R and hips r at 45°: A = R r sin 45° / 2.
def test_compass_rose_of_four():
    found = draw("compass_rose", compass_rose=10.0, points=4, waist=3.0, line=0.0)
    assert area(found) == pytest.approx(4 * 10 * 3 * math.sin(math.pi / 4) / 2, rel=EXACT)


# Shields: a half-round foot is half a disc below a rectangle; straight edges make a rectangle and a triangle.
def test_crests():
    assert area(draw("crest", crest=20.0, height=24.0, outline="round")) == pytest.approx(
        math.pi * 50 + 20 * 14, rel=1e-9
    )
    assert area(draw("crest", crest=20.0, height=24.0, outline="pointed")) == pytest.approx(
        20 * 13.2 + 20 * 10.8 / 2, rel=EXACT
    )


# Ties and rails from above: the area of a union is the sum less what they share (inclusion and exclusion).
def test_track():
    found = draw("track", track=40.0, gauge=8.0, rail=1.0, tie=2.0, tie_length=16.0, count=8)
    assert area(found) == pytest.approx(2 * 40.0 * 1.0 + 8 * 2.0 * 16.0 - 2 * 8 * 2.0 * 1.0, rel=EXACT)


# In central projection the cross-ratio of four places is kept: for ties at equal distances on the ground it is
# that of four equidistant points, 4/3 (projective geometry; from memory).
def test_ties_recede_in_perspective():
    found = draw("vanishing_track", vanishing_track=20.0, height=15.0, count=7, reach=0.8, tie=0.4)
    half = {round(float(y), 9) for ring in flatten(found) for x, y in ring if abs(abs(x) - 10 * (1 - y / 15)) < 1e-9}
    near = sorted(half)[0::2]
    assert len(near) == 7
    for a, b, c, d in zip(near, near[1:], near[2:], near[3:], strict=False):
        assert (c - a) * (d - b) / ((c - b) * (d - a)) == pytest.approx(4 / 3, rel=1e-6)
