"""Page sizes of the paper standards, measured in every file that is written.

ISO 216:2007: A4 is 210 × 297 mm, A5 148 × 210 mm. ANSI/ASME Y14.1: size A (letter) is 8.5 × 11 in, and
1 in = 25.4 mm exactly.
"""

import io
import re
import xml.etree.ElementTree as ET

import ezdxf
import pikepdf
import pytest
from PIL import Image

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point
from heraldry.geometry.segments import Path
from heraldry.press import render

PAPER_MM = {
    "ISO 216 A4": (210.0, 297.0),
    "ISO 216 A5": (148.0, 210.0),
    "US Letter": (8.5 * 25.4, 11 * 25.4),
    "US half letter": (5.5 * 25.4, 8.5 * 25.4),
}
TOLERANCE_MM = 0.01
POINT_MM = 25.4 / 72


@pytest.fixture(params=PAPER_MM)
def paper(request) -> tuple[float, float]:
    return PAPER_MM[request.param]


@pytest.fixture
def sheet(paper) -> Artwork:
    """A sheet whose page begins at neither 0 nor a whole number, with one bar on it."""
    left, bottom = -17.3, 4.9
    corners = [Point(left + x, bottom + y) for x, y in ((10, 10), (60, 10), (60, 12), (10, 12))]
    bar = Plate("bar", Ink("black", "#000000"), Outline.of([Path.through(corners, closed=True)]))
    return Artwork("sheet", Bounds(left, bottom, left + paper[0], bottom + paper[1]), (bar,))


def test_svg(sheet, paper):
    root = ET.fromstring(render(sheet, "svg"))
    size = tuple(float(root.get(side).removesuffix("mm")) for side in ("width", "height"))
    assert size == pytest.approx(paper, abs=1e-5)
    assert [float(number) for number in root.get("viewBox").split()] == pytest.approx([0, 0, *paper], abs=1e-5)


def test_pdf(sheet, paper):
    with pikepdf.open(io.BytesIO(render(sheet, "pdf"))) as pdf:
        for box in (pdf.pages[0].MediaBox, pdf.pages[0].TrimBox):
            assert [float(side) * POINT_MM for side in box] == pytest.approx([0, 0, *paper], abs=TOLERANCE_MM)


def test_eps(sheet, paper):
    (box,) = re.findall(rb"%%HiResBoundingBox: (.*)", render(sheet, "eps"))
    assert [float(side) * POINT_MM for side in box.split()] == pytest.approx([0, 0, *paper], abs=TOLERANCE_MM)


def test_dxf(sheet, paper):
    drawing = ezdxf.read(io.StringIO(render(sheet, "dxf").decode()))
    assert drawing.header["$INSUNITS"] == 4
    assert tuple(drawing.header["$EXTMAX"])[:2] == pytest.approx(paper, abs=1e-6)
    (bar,) = drawing.modelspace()
    assert [tuple(xy) for xy in bar.get_points("xy")] == [(10, 10), (60, 10), (60, 12), (10, 12)]


@pytest.mark.parametrize("dpi", [300, 600])
def test_png(sheet, paper, dpi):
    """Whole pixels hold the page: never smaller, and less than one pixel larger."""
    picture = Image.open(io.BytesIO(render(sheet, "png", dpi)))
    for pixels, side_mm in zip(picture.size, paper, strict=True):
        assert -1e-4 <= pixels / dpi * 25.4 - side_mm < 25.4 / dpi


def test_letter_at_600_dpi_is_5100_by_6600():
    page = Bounds(0.0, 0.0, 8.5 * 25.4, 11 * 25.4)
    corners = [Point(25.4, 25.4), Point(50.8, 25.4), Point(50.8, 50.8), Point(25.4, 50.8)]
    inch = Plate("inch", Ink("black", "#000000"), Outline.of([Path.through(corners, closed=True)]))
    picture = Image.open(io.BytesIO(render(Artwork("inch", page, (inch,)), "png", 600)))
    assert picture.size == (5100, 6600)
    assert picture.getbbox() == (600, 6600 - 1200, 1200, 6600 - 600)
