"""Drawings read in: what each part of SVG comes to, checked by areas and boxes that can be worked out by hand."""

from __future__ import annotations

import gzip
import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.errors import GeometryError
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import ARC, Outline
from heraldry.geometry.point import Point
from heraldry.shapes.catalogue import example
from heraldry.shapes.drawing import drawing
from heraldry.shapes.drawing.shape import LANTERN
from heraldry.shapes.table import Drawn
from tests.cleanness import assert_clean

PX = 25.4 / 96
"""Millimetres of a CSS pixel."""

quickly = settings(max_examples=25, deadline=None, derandomize=True)


@pytest.fixture
def read(tmp_path: Path):
    """Reads what stands inside an svg of 100 × 100 mm and as many units; further words are keys of the shape."""

    def drawn(inside: str, root: str = 'width="100mm" height="100mm" viewBox="0 0 100 100"', **keys: object) -> Drawn:
        file = tmp_path / "old.svg"
        links = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
        file.write_text(f"<svg {links} {root}>{inside}</svg>", encoding="utf-8")
        return drawing(file, **keys)

    return drawn


def size(outline: Outline) -> tuple[float, float]:
    box = bounds(outline)
    return box.width, box.height


# Basic shapes, worked out by hand: shape, width, height, area.
FORMS = {
    '<rect x="10" y="20" width="30" height="40"/>': (30, 40, 1200),
    '<rect width="30" height="40" rx="5"/>': (30, 40, 1200 - (4 - math.pi) * 25),
    '<rect width="30" height="40" rx="50" ry="4"/>': (30, 40, 1200 - (4 - math.pi) * 15 * 4),
    '<circle cx="50" cy="50" r="20"/>': (40, 40, math.pi * 400),
    '<ellipse cx="50" cy="50" rx="30" ry="10"/>': (60, 20, math.pi * 300),
    '<polygon points="0,0 40,0 40,30"/>': (40, 30, 600),
    '<polyline points="0,0 40,0 40,30"/>': (40, 30, 600),
    '<line x1="10" y1="50" x2="60" y2="50" stroke="black" stroke-width="4"/>': (50, 4, 200),
    '<path d="M10 10h30v30h-30z"/>': (30, 30, 900),
    '<path d="M50 50a20 10 0 1 0 40 0 20 10 0 1 0-40 0z"/>': (40, 20, math.pi * 200),
    '<path d="M0 0Q20 40 40 0z"/>': (40, 20, 40 * 20 * 2 / 3),  # two thirds of the box: Archimedes
    '<rect width="50%" height="10%"/>': (50, 10, 500),
    '<rect width="2cm" height="1mm"/>': (20 / PX, 1 / PX, 20 / PX**2),
}


@pytest.mark.parametrize("form", FORMS)
def test_basic_shapes(read, form):
    width, height, surface = FORMS[form]
    outline = read(form).outline
    assert size(outline) == (pytest.approx(width, abs=1e-4), pytest.approx(height, abs=1e-4))
    assert area(outline) == pytest.approx(surface, rel=1e-5)
    assert_clean(outline)


def test_circles_stay_circles_under_turning_and_scaling(read):
    drawn = read('<g transform="rotate(30) scale(2 -2)"><circle cx="9" cy="-12" r="4"/></g>', root="")
    assert set(drawn.outline.kinds.tolist()) == {ARC}
    assert area(drawn.outline) == pytest.approx(math.pi * (8 * PX) ** 2)


def test_transforms_are_nested_from_the_outside_in(read):
    one = read('<g transform="translate(50 50)"><g transform="rotate(90)"><path d="M0 0h20v5h-40z"/></g></g>').outline
    same = read('<path d="M50 50v20h-5v-40z"/>').outline
    assert size(one) == pytest.approx(size(same))
    assert area(one) == pytest.approx(area(same))


@pytest.mark.parametrize(("join", "corner"), [("miter", 25.0), ("bevel", 12.5), ("round", math.pi * 25 / 4)])
def test_corners_of_strokes(read, join, corner):
    """Two bars of 40 × 10 share a square of 5 × 5 inside the corner; outside of it lies what the join adds."""
    path = f'<path d="M10 60V20H50" fill="none" stroke="#000" stroke-width="10" stroke-linejoin="{join}"/>'
    assert area(read(path).outline) == pytest.approx(2 * 40 * 10 - 25 + corner, rel=1e-4)


@pytest.mark.parametrize(("limit", "is_pointed"), [(1.0, False), (5.7, False), (5.8, True), (12, True)])
def test_the_miter_limit_cuts_corners_off(read, limit, is_pointed):
    """A corner of 20° reaches 1 / sin 10° = 5.759 half widths (SVG 1.1, section 11.4)."""
    lean = 60 * math.tan(math.radians(10))
    point = f"M{50 - lean} 80 L50 20 L{50 + lean} 80"
    style = f'fill="none" stroke="#000" stroke-width="4" stroke-miterlimit="{limit}"'
    height = size(read(f'<path d="{point}" {style}/>').outline)[1]
    foot = 60 + 2 * math.sin(math.radians(10))
    wanted = foot + 2 / math.sin(math.radians(10)) if is_pointed else foot + 2 * math.sin(math.radians(10))
    assert height == pytest.approx(wanted, abs=1e-3)


@pytest.mark.parametrize(("cap", "more"), [("butt", 0.0), ("square", 10.0 * 10), ("round", math.pi * 25)])
def test_ends_of_strokes(read, cap, more):
    path = f'<path d="M20 50C40 50 60 50 80 50" stroke="#000" stroke-width="10" stroke-linecap="{cap}"/>'
    assert area(read(path).outline) == pytest.approx(600 + more, rel=1e-4)


def test_a_line_of_no_length_is_a_dot_with_round_ends_only(read):
    dot = '<path d="M50 50h0" stroke="#000" stroke-width="10" stroke-linecap="{}"/>'
    assert area(read(dot.format("round")).outline) == pytest.approx(math.pi * 25)
    assert area(read(dot.format("square")).outline) == pytest.approx(100)
    with pytest.raises(GeometryError, match="nothing"):
        read(dot.format("butt"))


def test_dashes(read):
    """60 long in dashes of 10 and gaps of 5, begun 5 before: 5 + 10 + 10 + 10 + 5 (the last one cut off)."""
    line = '<line x1="20" x2="80" y1="9" y2="9" stroke="#000" stroke-width="2" stroke-dasharray="10 5" {}/>'
    assert area(read(line.format("")).outline) == pytest.approx(2 * 40, rel=1e-6)
    assert area(read(line.format('stroke-dashoffset="5"')).outline) == pytest.approx(
        2 * (5 + 10 + 10 + 10 + 5), rel=1e-6
    )


def test_dashes_on_curves_have_their_length(read):
    """Eight dashes of a sixteenth of the way round a circle of radius 30, 2 wide: half the ring."""
    dash = 2 * math.pi * 30 / 16
    round_it = f'<circle cx="50" cy="50" r="30" fill="none" stroke="#000" stroke-width="2" stroke-dasharray="{dash}"/>'
    assert area(read(round_it).outline) == pytest.approx(math.pi * (31**2 - 29**2) / 2, rel=1e-4)


def test_a_stroke_leans_with_its_shape(read):
    """A ring 10 wide about radius 20, drawn half as high: its box has half the outer diameter."""
    ring = '<circle r="20" fill="none" stroke="#000" stroke-width="10" transform="translate(50 50) scale(1 .5)"/>'
    outline = read(ring).outline
    assert size(outline) == (pytest.approx(50, abs=1e-3), pytest.approx(25, abs=1e-3))
    assert area(outline) == pytest.approx(math.pi * (25**2 - 15**2) / 2, rel=1e-4)


def test_a_stroke_that_does_not_grow_keeps_the_width_it_has_on_the_page(read):
    """A circle of radius 20 drawn twice as large, its line 4 wide all the same."""
    style = 'fill="none" stroke="#000" stroke-width="4" vector-effect="non-scaling-stroke"'
    ring = read(f'<circle r="20" transform="translate(50 50) scale(2)" {style}/>', root='width="100" height="100"')
    assert area(ring.outline) == pytest.approx(math.pi * (42**2 - 38**2) * PX**2)


def test_fill_rules(read):
    nested = '<path d="M0 0h40v40h-40zM10 10h20v20h-20z" fill-rule="{}"/>'
    assert area(read(nested.format("nonzero")).outline) == pytest.approx(1600)
    assert area(read(nested.format("evenodd")).outline) == pytest.approx(1200)


STYLES = {
    '<style>rect { fill: red }</style><rect class="a" id="b" {}/>': "#ff0000",
    '<style>.a { fill: red } rect { fill: blue }</style><rect class="a" {}/>': "#ff0000",
    '<style>#b { fill: red } .a { fill: blue }</style><rect class="a" id="b" {}/>': "#ff0000",
    "<style>g rect { fill: red }</style><g><a><rect {}/></a></g>": "#ff0000",
    "<style>g > rect { fill: blue } rect { fill: red }</style><g><a><rect {}/></a></g>": "#ff0000",
    '<style>.a.c, .d { fill: red }</style><rect class="c a" {}/>': "#ff0000",
    '<style>/* .a { fill: blue } */ .a { fill: red }</style><rect class="a" fill="blue" {}/>': "#ff0000",
    '<style>.a { fill: blue }</style><rect class="a" style="fill: red" {}/>': "#ff0000",
    '<style>.a { fill: red !important }</style><rect class="a" style="fill: blue" {}/>': "#ff0000",
    '<g fill="red"><rect {}/></g>': "#ff0000",
    '<g color="red"><rect fill="currentColor" {}/></g>': "#ff0000",
    '<rect style="fill: rgb(100%, 0%, 0%)" {}/>': "#ff0000",
    '<rect fill="hsl(0 100% 50%)" {}/>': "#ff0000",
    "<rect {}/>": "#000000",
}


@pytest.mark.parametrize("inside", STYLES)
def test_styles_and_inheritance(read, inside):
    square = inside.replace("{}", 'width="10" height="10"')
    assert area(read(square, colour=STYLES[inside]).outline) == pytest.approx(100)


HIDDEN = (
    '<g display="none"><rect width="9" height="9"/></g>',
    '<g visibility="hidden"><rect width="9" height="9"/></g>',
    '<rect width="9" height="9" fill="none"/>',
    '<rect width="9" height="9" fill-opacity="0"/>',
    '<defs><rect width="9" height="9"/></defs>',
    '<symbol id="s"><rect width="9" height="9"/></symbol>',
    '<clipPath id="c"><rect width="9" height="9"/></clipPath>',
    '<rect width="0" height="9"/>',
)


@pytest.mark.parametrize("hidden", HIDDEN)
def test_what_is_not_seen_is_not_taken(read, hidden):
    assert area(read(f'<circle r="5" cx="50" cy="50"/>{hidden}').outline) == pytest.approx(math.pi * 25)


def test_a_visible_child_of_a_hidden_group_is_seen(read):
    inside = '<g visibility="hidden"><rect width="9" height="9" visibility="visible"/></g>'
    assert area(read(inside).outline) == pytest.approx(81)


def test_use_and_symbol(read):
    used = '<defs><rect id="r" width="10" height="10"/></defs><use xlink:href="#r"/><use href="#r" x="20" y="5"/>'
    assert size(read(used).outline) == pytest.approx((30, 15))
    symbol = (
        '<symbol id="s" viewBox="0 0 2 1"><rect width="2" height="1"/></symbol><use href="#s" width="40" height="40"/>'
    )
    assert size(read(symbol).outline) == pytest.approx((40, 20))


def test_an_inner_svg_cuts_at_its_edge(read):
    inside = '<svg x="10" y="10" width="20" height="20" viewBox="0 0 10 10"><circle r="10"/></svg>'
    assert area(read(inside).outline) == pytest.approx(math.pi * 400 / 4, rel=1e-4)


def test_what_lies_off_the_page_is_not_seen(read):
    assert size(read('<rect x="-50" y="40" width="100" height="10"/>').outline) == pytest.approx((50, 10))


def test_what_is_huge_behind_the_page_spoils_nothing(read):
    """A quarter of the page is covered by a square whose other corner is three hundred metres off."""
    outline = read('<rect x="50" y="50" width="300000" height="300000"/>', width=20.0).outline
    assert area(outline) == pytest.approx(400)


def test_a_straight_curve_that_runs_back_over_itself_bounds_nothing(read):
    """A half circle of radius 40 closed by a cubic along its diameter that overshoots on its way."""
    half = "M10 50A40 40 0 0 1 90 50C120 50 20 50 10 50z"
    assert area(read(f'<path d="{half}"/>').outline) == pytest.approx(math.pi * 800, rel=1e-6)


@pytest.mark.parametrize(
    ("how", "width", "height"),
    [("none", 60, 30), ("xMidYMid meet", 30, 30), ("xMinYMax slice", 60, 30), ("", 30, 30)],
)
def test_the_box_fits_its_frame(read, how, width, height):
    """A square of units in a frame of 60 × 30 mm."""
    root = f'width="60mm" height="30mm" viewBox="0 0 10 10" preserveAspectRatio="{how}"'
    assert size(read('<rect width="10" height="10"/>', root=root).outline) == pytest.approx((width, height))


def test_clip_paths_are_kept(read):
    inside = (
        '<clipPath id="c"><circle cx="50" cy="50" r="10"/></clipPath><rect width="50" height="99" clip-path="url(#c)"/>'
    )
    assert area(read(inside).outline) == pytest.approx(math.pi * 50, rel=1e-6)


def test_what_lies_on_top_hides_what_lies_below(read):
    inside = '<rect width="40" height="40"/><circle cx="20" cy="20" r="10" fill="#fff"/><circle cx="20" cy="20" r="5"/>'
    black, white = math.pi * 25 + 1600 - math.pi * 100, math.pi * 75
    assert area(read(inside, colour="black").outline) == pytest.approx(black, rel=1e-6)
    assert area(read(inside, colour="#ffffff").outline) == pytest.approx(white, rel=1e-6)
    assert bounds(read(inside, colour="#ffffff").outline).centre == Point(pytest.approx(0), pytest.approx(0))
    both = read(inside)
    assert area(both.outline) == pytest.approx(black, rel=1e-6)
    assert any("white is left open" in note for note in both.notes)


def test_all_colours_share_one_size_and_place(read):
    inside = '<rect width="60" height="20" fill="red"/><rect x="40" width="20" height="20" fill="blue"/>'
    blue = bounds(read(inside, colour="blue", width=30.0, centre=Point(5, 5)).outline)
    assert (blue.left, blue.right, blue.top) == pytest.approx((10, 20, 10))


def test_a_part_is_taken_by_its_name_and_measured_alone(read):
    inside = '<rect width="60" height="20"/><g id="wheel"><circle cx="50" cy="50" r="5"/></g>'
    assert area(read(inside, part="wheel", width=20.0).outline) == pytest.approx(math.pi * 100)
    with pytest.raises(GeometryError, match="did you mean 'wheel'"):
        read(inside, part="weel")


NOTES = {
    '<text x="1">A</text>': "text is left out",
    '<image href="a.png" width="9" height="9"/>': "made of dots",
    '<rect width="9" height="9" opacity=".5"/>': "transparency",
    '<rect width="9" height="9" filter="url(#f)"/>': "filter",
    '<rect width="9" height="9" mask="url(#m)"/>': "mask",
    "<script>x()</script>": "script",
    '<linearGradient id="g"><stop stop-color="red"/></linearGradient><rect fill="url(#g)" width="9" height="9"/>': "#ff0000",
    '<pattern id="g"/><rect fill="url(#g)" width="9" height="9"/>': "pattern",
    '<rect fill="rot" width="9" height="9"/>': "'rot'",
    '<path d="M0 0h9v9 L 5"/>': "breaks off",
    '<rect transform="spin(3)" width="9" height="9"/>': "spin",
    '<use href="#gone"/>': "gone",
    "<style>rect:hover { fill: red }</style>": "rect:hover",
    "<style>@media print { rect { fill: red } }</style>": "@media print",
}


@pytest.mark.parametrize("inside", NOTES)
def test_what_cannot_be_kept_is_said(read, inside):
    notes = read(f'<circle cx="50" cy="50" r="5"/>{inside}').notes
    assert any(NOTES[inside] in note for note in notes), notes


def test_sizes_and_places(read):
    box = '<rect x="10" y="10" width="40" height="10"/>'
    assert size(read(box, width=20.0).outline) == pytest.approx((20, 5))
    assert size(read(box, height=20.0).outline) == pytest.approx((80, 20))
    assert size(read(box, width=20.0, height=20.0).outline) == pytest.approx((20, 5))
    turned = read(box, width=20.0, centre=Point(3, 4), turn=90.0).outline
    assert size(turned) == pytest.approx((5, 20))
    assert tuple(bounds(turned).centre) == pytest.approx((3, 4))
    with pytest.raises(GeometryError, match="width is -1"):
        read(box, width=-1.0)


def test_a_colour_that_is_not_there_is_told_with_those_that_are(read):
    with pytest.raises(GeometryError, match="its colours: #000000"):
        read('<rect width="9" height="9"/>', colour="#ff0000")
    with pytest.raises(GeometryError, match="'rott' is no colour"):
        read('<rect width="9" height="9"/>', colour="rott")


def test_a_compressed_drawing_is_read(tmp_path):
    file = tmp_path / "old.svgz"
    file.write_bytes(gzip.compress(LANTERN.read_bytes()))
    assert area(drawing(file).outline) == pytest.approx(area(drawing(LANTERN).outline))


def test_the_example_is_clean_in_every_colour():
    for colour in ("#1a1816", "#a3242b", "#ffffff", "#e6a817"):
        assert_clean(example("drawing", colour=colour))


@quickly
@given(
    st.lists(
        st.tuples(*[st.floats(5, 95)] * 2, st.floats(1, 30), st.sampled_from(["red", "blue", "white", "black"])),
        min_size=1,
        max_size=6,
    )
)
def test_colours_never_overlap_and_lose_nothing(tmp_path_factory, circles):
    """The areas of all colours together are the area of what is covered."""
    body = "".join(f'<circle cx="{x}" cy="{y}" r="{r}" fill="{ink}"/>' for x, y, r, ink in circles)
    file = tmp_path_factory.mktemp("circles") / "old.svg"
    file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg">{body}</svg>')
    one_colour = file.with_name("one.svg")
    one_colour.write_text(file.read_text().replace("red", "black").replace("blue", "black").replace("white", "black"))
    covered = area(drawing(one_colour).outline)
    total = 0.0
    for ink in {ink for *_, ink in circles}:
        try:
            total += area(drawing(file, colour=ink).outline)
        except GeometryError as error:
            assert "nothing of the colour" in str(error)
    assert total == pytest.approx(covered, rel=1e-4)
