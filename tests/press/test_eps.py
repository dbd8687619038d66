"""The EPS, read by Ghostscript: its box, its marks, its separations."""

import math
import re

import numpy as np
import pytest

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.press import render

POINT_MM = 25.4 / 72
EDGE_MM = 0.0045


@pytest.fixture
def file(artwork, tmp_path):
    path = tmp_path / "herald.eps"
    path.write_bytes(render(artwork, "eps"))
    return path


def box(text: str, comment: str) -> list[float]:
    (found,) = re.findall(rf"^%%{comment}: (.*)$", text, re.MULTILINE)
    return [float(number) for number in found.split()]


def test_the_boxes_are_the_page(file):
    text = file.read_text("ascii")
    assert np.array(box(text, "HiResBoundingBox")) * POINT_MM == pytest.approx([0, 0, 24, 20], abs=1e-4)
    assert box(text, "BoundingBox") == [0, 0, math.ceil(24 / POINT_MM), math.ceil(20 / POINT_MM)]


def test_marks_lie_where_they_should(file, ghostscript):
    """White leaves no mark there, so the ring is the outermost one; the device counts pixels of 6.35 µm."""
    marks = box(ghostscript("-sDEVICE=bbox", str(file)), "HiResBoundingBox")
    assert np.array(marks) * POINT_MM == pytest.approx([3.0, 1.0, 21.0, 19.0], abs=0.00635)


def test_separations_are_the_plates(file, areas, separations, artwork):
    inked = separations(file, "-dEPSCrop")
    edges = {"white": 2 * np.pi * 9.5, "signal red": 2 * np.pi * 15.0, "navy": 40.0}
    for plate in artwork.plates:
        area = areas[plate.name]
        assert area * 0.999 <= inked[plate.ink.name] <= area + edges[plate.ink.name] * EDGE_MM
    for process in ("Cyan", "Magenta", "Yellow", "Black"):
        assert inked[process] == 0.0


def test_without_overprint_the_white_plate_is_knocked_out(file, areas, separations):
    knocked_out = file.with_name("knocked out.eps")
    knocked_out.write_text(file.read_text().replace("true setoverprint", "false setoverprint"))
    assert separations(knocked_out, "-dEPSCrop")["white"] < areas["under"] - 0.95 * areas["ring"]


def test_on_a_screen_the_colours_are_those_of_the_inks(file, ghostscript, tmp_path):
    from PIL import Image

    picture = tmp_path / "screen.png"
    ghostscript("-dEPSCrop", "-sDEVICE=png16m", "-r300", "-o", str(picture), str(file))
    image = Image.open(picture)
    middle_of_ring = image.getpixel((round((12 + 7.5) * 300 / 25.4), image.height // 2))
    assert middle_of_ring == pytest.approx((200, 16, 46), abs=1)


def test_seven_bits_no_date_short_lines(file):
    text = file.read_bytes().decode("ascii")
    assert "Date" not in text
    assert text.startswith("%!PS-Adobe-3.0 EPSF-3.0\n")
    assert text.endswith("%%EOF\n")
    assert max(map(len, text.splitlines())) <= 255  # the conventions' limit, from memory


def test_names_cannot_break_out_of_the_program(artwork, separations, tmp_path):
    ink = Ink(r"a) showpage (b\c", "#00aa00")
    odd = Artwork("x\ny % z", artwork.page, (Plate("%%EOF", ink, artwork.plates[0].outline),))
    path = tmp_path / "odd.eps"
    path.write_bytes(render(odd, "eps"))
    green = {name: area for name, area in separations(path, "-dEPSCrop").items() if name.startswith("a")}
    assert list(green.values()) == [pytest.approx(math.pi * 9.5**2, rel=1e-3)]
