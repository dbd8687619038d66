"""Treatments of laid letters: what each gives, that inks do not overlap, and what is refused."""

from __future__ import annotations

import math
from functools import cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import contains, intersect, pieces, subtract, unite
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import ARC, CUBIC, LINE, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Arc, Path
from heraldry.lettering.alphabets import STYLES, ParametricAlphabet
from heraldry.lettering.scan import ink_spans
from heraldry.lettering.treatments import (
    block_shade,
    double_outline,
    drop_shade,
    halo,
    in_band,
    inline,
    inline_line,
    outer_line,
    outline,
    split_shade,
    stripe_behind,
    stripe_through,
    swept,
)
from heraldry.lettering.treatments.strokes import strokes
from tests.faces import face

CAP = 6.0
SOURCE_SERIF = "font_source_serif_pro", "SourceSerifPro-Regular.otf"
SAME_AREA_MM2 = 2e-3
"""Set operations are off by at most 0.1 µm, and a word of these letters has some 200 mm of edge: 0.02 mm² would be
the sum of the worst everywhere; curves in fact come back far nearer."""

TREATMENTS = {
    "outline": lambda art: outline(art, 0.12),
    "outer line": lambda art: outer_line(art, 0.12, 0.2),
    "double outline": lambda art: double_outline(art, 0.12, 0.15),
    "inline": lambda art: inline(art, 0.2),
    "halo": lambda art: halo(art, 0.3),
    "drop shade": lambda art: drop_shade(art, 0.6, 225, 0.1),
    "block shade": lambda art: block_shade(art, 0.8, 225),
    "block shade with a gap": lambda art: block_shade(art, 0.8, -37, 0.12),
    "split shade, uprights": lambda art: split_shade(art, 0.8, 225).uprights,
    "split shade, levels": lambda art: split_shade(art, 0.8, 225).levels,
    "band": lambda art: in_band(art, 0.5),
    "stripe through": lambda art: stripe_through(art, 2.0, 0.4, 0.3, 1.0),
    "stripe behind": lambda art: stripe_behind(art, 2.0, 0.4, 0.3, 1.0),
}


@cache
def gothic(text: str = "HEKLA") -> Outline:
    return unite(ParametricAlphabet("gothic", STYLES["gothic"]).set_line(text, CAP).outline)


@cache
def serif(text: str = "Rga") -> Outline:
    return unite(face(*SOURCE_SERIF).set_line(text, CAP).outline)


def box(left: float, bottom: float, right: float, top: float) -> Outline:
    corners = (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
    return Outline.of([Path.through(corners, closed=True)])


def circle(radius: float, x: float = 0.0) -> Outline:
    return Outline.of([Path((Arc.about(Point(x, 0), radius, 0.0, math.tau),), closed=True)])


def same(one: Outline, other: Outline) -> bool:
    return area(subtract(one, other)) + area(subtract(other, one)) < SAME_AREA_MM2


@pytest.mark.parametrize("treat", TREATMENTS.values(), ids=TREATMENTS.keys())
@pytest.mark.parametrize("letters", [gothic, serif])
class TestEveryTreatment:
    def test_is_clean(self, treat, letters) -> None:
        """Cleaning the result changes nothing: its rings neither cross nor overlap."""
        result = treat(letters())
        assert area(result) > 1.0
        assert same(unite(result), result)

    def test_is_the_same_twice(self, treat, letters) -> None:
        one, two = treat(letters()), treat(letters())
        assert np.array_equal(one.data, two.data) and np.array_equal(one.rings, two.rings)

    def test_moves_with_its_letters(self, treat, letters) -> None:
        away = Affine.move(31.0, -7.0)
        assert same(treat(letters().transformed(away)), treat(letters()).transformed(away))


@pytest.mark.parametrize("letters", [gothic, serif])
def test_shades_lie_beside_the_letters_and_the_gap(letters) -> None:
    art = letters()
    for shade in (drop_shade(art, 0.6, 225), block_shade(art, 0.6, 225)):
        assert area(intersect(art, shade)) < SAME_AREA_MM2
    for shade in (drop_shade(art, 0.6, 225, 0.2), block_shade(art, 0.6, 225, 0.2)):
        assert distance(art, shade) == pytest.approx(0.2, abs=2e-3)


def test_drop_shade_of_a_box_is_an_angle() -> None:
    shade = drop_shade(box(0, 0, 4, 3), 1.0, 270)
    assert area(shade) == pytest.approx(4.0)
    assert bounds(shade).bottom == -1.0 and bounds(shade).top == 0.0


def test_block_shade_of_a_box_by_hand() -> None:
    """Two parallelograms, each as wide as its side and as deep as the shade's share across it."""
    depth = math.sqrt(0.5)
    shade = block_shade(box(0, 0, 4, 3), 1.0, 225)
    assert area(shade) == pytest.approx((4 + 3) * depth)
    assert shade.node_count == 6
    split = split_shade(box(0, 0, 4, 3), 1.0, 225)
    assert area(split.uprights) == pytest.approx(3 * depth)
    assert area(split.levels) == pytest.approx(4 * depth)


def test_block_shade_of_a_disc_keeps_its_arcs() -> None:
    """What a disc sweeps is a disc and a box of its width; two half circles bound the shade, and two lines."""
    shade = block_shade(circle(2.0), 1.5, 30)
    assert area(shade) == pytest.approx(2 * 2.0 * 1.5, rel=1e-9)
    assert sorted(shade.kinds.tolist()) == [LINE, LINE, ARC, ARC]
    assert set(np.round(shade.data[shade.kinds == ARC, 2, 0], 9)) == {2.0}


def test_letters_keep_their_curves_in_a_block_shade() -> None:
    """Each of the O's two rings shows half of itself and half of its copy: no more nodes than twice the letter's."""
    o = gothic("O")
    shade = block_shade(o, 0.8, 225)
    assert shade.node_count <= 2 * o.node_count + 8
    assert np.sum(shade.kinds == CUBIC) >= o.node_count


def test_a_gap_leaves_as_much_shade_as_there_is_without() -> None:
    shade = block_shade(box(0, 0, 4, 3), 1.0, 270, 0.25)
    assert bounds(shade).top == pytest.approx(-0.25)
    assert bounds(shade).bottom == pytest.approx(-1.25)


@settings(derandomize=True, deadline=None, max_examples=12)
@given(angle=st.integers(0, 359), length=st.integers(2, 12), gap=st.sampled_from((0.0, 0.1)))
def test_split_shade_parts_the_block_shade(angle: int, length: int, gap: float) -> None:
    art = gothic("RS2")
    whole, split = block_shade(art, length / 10, angle, gap), split_shade(art, length / 10, angle, gap)
    assert area(intersect(split.uprights, split.levels)) < SAME_AREA_MM2
    assert same(unite(split.uprights, split.levels), whole)


def test_split_shade_sorts_faces_by_their_edges() -> None:
    split = split_shade(gothic("H"), 0.8, 225)
    ink, bar = bounds(gothic("H")), ink_spans(gothic("H").transformed(Affine.turn(90)), bounds(gothic("H")).width / 2)
    assert contains(split.uprights, Point(ink.left - 0.1, CAP / 2))
    assert contains(split.levels, Point(ink.left + 0.1, -0.1))
    assert len(bar) == 1 and len(pieces(split.levels)) == 3  # under two feet and under the crossbar


def test_in_a_split_shade_the_nearer_face_hides_the_other() -> None:
    """Falling left, the shade of the right box's side runs over the left box's foot, were it not hidden there."""
    art = Outline.gather([box(0, 0, 1, 4), box(1.5, -0.3, 2.5, 4)])
    split = split_shade(art, 2.0, 225)
    seen_under_left_box = Point(0.5, -0.4)
    assert contains(split.levels, seen_under_left_box)
    assert not contains(split.uprights, seen_under_left_box)


def test_crumbs_are_not_painted() -> None:
    length = 1.0
    for letters in (gothic("R&K"), serif("Rga")):
        for shade in (block_shade(letters, length, 225, 0.1), drop_shade(letters, length, 225, 0.1)):
            assert min(area(piece) for piece in pieces(shade)) >= (length / 8) ** 2


def test_outline_is_a_line_of_its_width_inside_the_letter() -> None:
    line = outline(box(0, 0, 4, 3), 0.25)
    assert area(line) == pytest.approx(4 * 3 - 3.5 * 2.5)
    assert same(subtract(line, box(0, 0, 4, 3)), subtract(box(0, 0, 1, 1), box(0, 0, 1, 1)))
    spans = ink_spans(outline(gothic("I"), 0.12), CAP / 2)
    assert [round(right - left, 6) for left, right in spans] == [0.12, 0.12]


def test_outer_line_has_sharp_corners_and_its_gap() -> None:
    line = outer_line(box(0, 0, 4, 3), 0.25, 0.5)
    assert area(line) == pytest.approx(5.5 * 4.5 - 5 * 4)


def test_double_outline_is_two_lines() -> None:
    spans = ink_spans(double_outline(gothic("I"), 0.12, 0.15), CAP / 2)
    assert [round(right - left, 6) for left, right in spans] == [0.12] * 4
    assert round(spans[1][0] - spans[0][1], 6) == 0.15


def test_a_halo_is_equally_wide_all_round() -> None:
    around = halo(circle(2.0), 0.5)
    assert area(around) == pytest.approx(math.pi * (2.5**2 - 2.0**2), rel=1e-3)


def test_strokes_are_those_the_alphabet_was_asked_for() -> None:
    """The stem is a parameter of the alphabet; the crossbar of H is measured straight across it."""
    for text in ("HEKLA NORTHERN", "H", "ET", "IN"):
        found = strokes(gothic(text))
        stem = ink_spans(gothic("I"), CAP / 2)[0]
        assert found.upright_mm == pytest.approx(stem[1] - stem[0], rel=0.05)
        assert found.level_mm <= found.upright_mm
    bar = ink_spans(gothic("H").transformed(Affine.turn(90)), bounds(gothic("H")).width / 2)[0]
    assert strokes(gothic("H")).level_mm == pytest.approx(bar[1] - bar[0], rel=0.02)


def test_inline_is_as_wide_in_stems_as_in_bars_and_stays_inside() -> None:
    line = inline_line(gothic("H"), 0.2)
    stem_line = ink_spans(line, CAP * 0.25)[0]
    bar_line = ink_spans(line.transformed(Affine.turn(90)), bounds(gothic("H")).width / 2)[0]
    assert stem_line[1] - stem_line[0] == pytest.approx(0.2, rel=0.02)
    assert bar_line[1] - bar_line[0] == pytest.approx(0.2, rel=0.02)
    assert area(inline(gothic("H"), 0.2)) == pytest.approx(area(gothic("H")) - area(line), rel=1e-6)
    assert len(pieces(inline(gothic("H"), 0.2))) == 1


def test_in_band_is_a_box_without_the_letters() -> None:
    art = gothic("HE")
    band = in_band(art, 0.5, 1.0)
    ink = bounds(art)
    assert bounds(band).width == pytest.approx(ink.width + 2.0)
    assert area(band) == pytest.approx((ink.width + 2.0) * (ink.height + 1.0) - area(art), rel=1e-6)


def test_stripe_through_cuts_the_letters_and_runs_on() -> None:
    art = stripe_through(gothic("HIH"), 1.5, 0.4, 0.3, 2.0)
    ink = bounds(gothic("HIH"))
    assert np.allclose(ink_spans(art, 1.5), [(ink.left - 2.0, ink.right + 2.0)])
    assert ink_spans(art, 1.5 + 0.35) == () == ink_spans(art, 1.5 - 0.35)
    assert len(ink_spans(art, 1.5 + 0.55)) == 5


def test_stripe_behind_leaves_the_letters_whole() -> None:
    art = stripe_behind(gothic("HIH"), 1.5, 0.4, 0.3, 2.0)
    assert area(subtract(gothic("HIH"), art)) < SAME_AREA_MM2
    behind = subtract(art, gothic("HIH"))
    assert distance(behind, gothic("HIH")) == pytest.approx(0.3, abs=2e-3)
    assert all(bounds(piece).width >= 0.4 for piece in pieces(behind))


def test_a_shade_does_not_care_which_way_round_rings_run() -> None:
    art = gothic("B")
    mirrored = art.transformed(Affine.mirror(90.0))
    assert same(block_shade(mirrored, 0.8, -45), block_shade(art, 0.8, 225).transformed(Affine.mirror(90.0)))
    assert same(swept(mirrored, Point(1, 0)), swept(art, Point(-1, 0)).transformed(Affine.mirror(90.0)))


@pytest.mark.parametrize(
    ("treat", "says"),
    [
        (lambda art: outline(art, 0.0), "an outline's width is 0 mm, it must be more than 0"),
        (lambda art: outline(art, 3.0), "an outline of 3 mm fills the letters"),
        (lambda art: outer_line(art, 0.1, -0.1), "the gap before an outer line is -0.1 mm"),
        (lambda art: double_outline(art, 0.1, 0.0), "the gap of a double outline is 0 mm"),
        (lambda art: inline(art, 0.9), r"an inline of 0.9 mm is too wide for strokes of 0\.\d+ mm, at most 0\.\d+ mm"),
        (lambda art: halo(art, -1.0), "a halo's width is -1 mm"),
        (lambda art: drop_shade(art, 0.0, 225), "the length of a shade is 0 mm"),
        (lambda art: block_shade(art, 1.0, 225, -0.1), "the gap of a shade is -0.1 mm"),
        (lambda art: split_shade(art, -1.0, 225), "the length of a shade is -1 mm"),
        (lambda art: in_band(art, 0.0), "a band's margin is 0 mm"),
        (lambda art: stripe_through(art, 9.0, 0.4, 0.2), "a stripe at 9 mm misses the letters"),
        (lambda art: stripe_through(art, 2.0, 0.4, 0.0), "the gap of a stripe is 0 mm"),
        (lambda art: stripe_behind(art, 2.0, 0.4, 0.2, -1.0), "how far a stripe runs on is -1 mm"),
    ],
)
def test_what_cannot_be_done_is_said(treat, says: str) -> None:
    with pytest.raises(GeometryError, match=says):
        treat(gothic("HE"))


def test_a_disc_has_strokes_of_its_width_and_a_thin_triangle_none() -> None:
    assert strokes(circle(2.0)).upright_mm == pytest.approx(4.0, rel=0.02)
    triangle = Outline.of([Path.through([Point(0, 0), Point(4, 0), Point(0, 3)], closed=True)])
    with pytest.raises(GeometryError, match="no strokes here"):
        strokes(triangle)
