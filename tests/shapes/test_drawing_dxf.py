"""DXF drawings read in: written by ezdxf here, measured against areas worked out by hand."""

from __future__ import annotations

import math
import time
from pathlib import Path

import ezdxf
import pytest

from heraldry.errors import GeometryError
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import ARC, CUBIC, LINE
from heraldry.shapes.drawing import drawing
from tests.cleanness import assert_clean

MILLIMETRES, INCHES = 4, 1


@pytest.fixture
def sheet(tmp_path: Path):
    """A new DXF drawing in millimetres, and what reads it in."""
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = MILLIMETRES
    file = tmp_path / "cut.dxf"

    def read(**keys: object):
        document.saveas(file)
        return drawing(file, **keys)

    return document, document.modelspace(), read


def test_bulges_become_arcs(sheet):
    """A box of 40 × 20 with half a circle at its right end."""
    _, space, read = sheet
    space.add_lwpolyline([(0, 0, 0), (40, 0, 1), (40, 20, 0), (0, 20, 0)], format="xyb", close=True)
    outline = read().outline
    assert area(outline) == pytest.approx(800 + math.pi * 100 / 2)
    assert set(outline.kinds.tolist()) == {LINE, ARC}
    assert_clean(outline)


def test_lines_and_arcs_are_joined_whatever_their_order_and_direction(sheet):
    _, space, read = sheet
    space.add_line((12, 0), (10, 0))
    space.add_line((10, 2), (10, 0))
    space.add_arc((11, 2), 1, 0, 180)
    space.add_line((12.004, 0), (12, 2))  # within the hundredth of a millimetre that ends may miss each other by
    assert area(read().outline) == pytest.approx(4 + math.pi / 2, rel=2e-3)


def test_rings_within_rings_are_holes(sheet):
    _, space, read = sheet
    space.add_circle((5, 5), 4)
    space.add_circle((5, 5), 3)
    outline = read().outline
    assert area(outline) == pytest.approx(math.pi * 7)
    assert set(outline.kinds.tolist()) == {ARC}


def test_ellipses_and_splines_become_cubics(sheet):
    _, space, read = sheet
    space.add_ellipse((0, 0), (4, 0), 0.5)
    assert area(read().outline) == pytest.approx(math.pi * 8, rel=1e-5)
    space.add_spline().control_points = [(10, 0), (16, 0), (16, 6), (10, 6)]
    space.query("SPLINE").first.dxf.degree = 3
    space.query("SPLINE").first.knots = [0, 0, 0, 0, 1, 1, 1, 1]
    space.add_line((10, 6), (10, 0))
    # x = 18 t(1 − t) and dy = 36 t(1 − t) dt from the chord on: ∫ x dy = 648 ∫ t²(1 − t)² dt = 648 / 30 = 21.6
    both = read().outline
    assert area(both) == pytest.approx(math.pi * 8 + 21.6, rel=1e-5)
    assert set(both.kinds.tolist()) == {LINE, CUBIC}


def test_blocks_are_taken_where_they_are_inserted(sheet):
    document, space, read = sheet
    document.blocks.new("WHEEL").add_circle((0, 0), 3)
    for x in (0, 10, 20):
        space.add_blockref("WHEEL", (x, 0))
    space.add_blockref("WHEEL", (40, 0), dxfattribs={"xscale": 2, "yscale": 1, "rotation": 90})
    assert area(read().outline) == pytest.approx(math.pi * 9 * 3 + math.pi * 18, rel=1e-5)


def test_layers_are_parts_and_units_are_kept(sheet):
    document, space, read = sheet
    document.header["$INSUNITS"] = INCHES
    document.blocks.new("DOT").add_circle((0, 0), 0.5)
    space.add_circle((0, 0), 2, dxfattribs={"layer": "FRAME"})
    space.add_blockref("DOT", (0, 0), dxfattribs={"layer": "HOLES"})
    assert bounds(read(part="frame").outline).width == pytest.approx(4 * 25.4)
    assert bounds(read(part="HOLES").outline).width == pytest.approx(25.4)
    assert bounds(read(width=30.0).outline).width == pytest.approx(30.0)
    with pytest.raises(GeometryError, match="did you mean 'FRAME'"):
        read(part="FRAM")


def test_what_cannot_be_kept_is_said(sheet):
    document, space, read = sheet
    document.header["$INSUNITS"] = 0
    space.add_circle((0, 0), 2)
    space.add_line((9, 9), (12, 12))
    space.add_text("NORTH")
    document.layers.add("OLD").off()
    space.add_circle((0, 0), 1, dxfattribs={"layer": "OLD"})
    drawn = read()
    assert area(drawn.outline) == pytest.approx(math.pi * 4)
    told = " ".join(drawn.notes)
    assert all(word in told for word in ("do not close", "TEXT", "switched off", "millimetres"))


@pytest.mark.parametrize("radius", [0, -3])
def test_circles_without_a_radius_enclose_nothing(sheet, radius):
    _, space, read = sheet
    space.add_circle((0, 0), radius)
    space.add_arc((0, 0), radius, 0, 90)
    with pytest.raises(GeometryError, match="has no closed outline"):
        read()
    space.add_circle((5, 5), 4)
    assert area(read().outline) == pytest.approx(math.pi * 16)


def test_open_lines_alone_are_refused(sheet):
    _, space, read = sheet
    space.add_line((0, 0), (5, 0))
    with pytest.raises(GeometryError, match=r"no closed outline: ends must meet within 0\.01 mm"):
        read()


def blocks_in_blocks(document: ezdxf.document.Drawing) -> None:
    """Ten of ten of ten …, a thousand million circles."""
    document.blocks.new("B0").add_circle((0, 0), 1)
    for i in range(9):
        block = document.blocks.new(f"B{i + 1}")
        for x in range(10):
            block.add_blockref(f"B{i}", (x, 0))
    document.modelspace().add_blockref("B9", (0, 0))


def block_in_itself(document: ezdxf.document.Drawing) -> None:
    document.blocks.new("A").add_blockref("A", (0, 0))
    document.modelspace().add_blockref("A", (0, 0))


def far_away(document: ezdxf.document.Drawing) -> None:
    document.modelspace().add_circle((1e15, 0), 1e15)


@pytest.mark.parametrize("spoil", [blocks_in_blocks, block_in_itself, far_away])
def test_harmful_drawings_are_refused_in_words(sheet, spoil):
    document, _, read = sheet
    spoil(document)
    with pytest.raises(GeometryError) as caught:
        read()
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    "content", [b"0\nSECTION\n2\nENTITIES\n0\nLINE\n10\nxyz\n", b"0\nSECTION\n", b"Drawing Binary DXF\r\n\x1a\x00"]
)
def test_broken_files_are_refused_in_words_and_at_once(tmp_path, content):
    file = tmp_path / "cut.dxf"
    file.write_bytes(content)
    begun = time.process_time()
    with pytest.raises(GeometryError, match=r"cut\.dxf"):
        drawing(file)
    assert time.process_time() - begun < 3.0  # the library alone takes most of a second to be imported
