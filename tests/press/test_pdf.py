"""The PDF, opened again by pikepdf, and separated by Ghostscript."""

import io
import re

import numpy as np
import pikepdf
import pytest

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.press import render

POINT_MM = 25.4 / 72
# At 1200 dpi with graphics smoothed, Ghostscript's edges lie a sixth of a pixel outside the true ones.
EDGE_MM = 0.0045


@pytest.fixture(scope="module")
def data(artwork) -> bytes:
    return render(artwork, "pdf")


@pytest.fixture(scope="module")
def page(data):
    with pikepdf.open(io.BytesIO(data)) as pdf:
        yield pdf.pages[0]


def layers_of(page):
    """Layer name -> (colour space or colour, signed areas of its rings in mm²), read from the operators."""
    layers, name = {}, ""
    for operands, operator in pikepdf.parse_content_stream(page):
        verb, values = str(operator), operands
        if verb == "BDC":
            name = str(page.Resources.Properties[values[1]].Name)
            layers[name] = {"ink": None, "area": 0.0}
        elif verb in ("cs", "rg"):
            layers[name]["ink"] = str(values[0]) if verb == "cs" else tuple(float(v) for v in values)
        elif verb == "m":
            first = here = np.array([float(v) for v in values])
        elif verb == "l":
            end = np.array([float(v) for v in values])
            layers[name]["area"] += area_under(here, here, end, end)
            here = end
        elif verb == "c":
            points = np.array([float(v) for v in values]).reshape(3, 2)
            layers[name]["area"] += area_under(here, *points)
            here = points[2]
        elif verb == "h":
            layers[name]["area"] += area_under(here, here, first, first)
    return layers


def area_under(p0, p1, p2, p3) -> float:
    """½∮ x dy − y dx along a cubic by its closed form, in mm²."""
    cross = lambda a, b: a[0] * b[1] - a[1] * b[0]  # noqa: E731
    twentieths = 6 * cross(p0, p1) + 3 * cross(p0, p2) + cross(p0, p3)
    twentieths += 3 * cross(p1, p2) + 3 * cross(p1, p3) + 6 * cross(p2, p3)
    return twentieths / 20 * POINT_MM**2


def test_one_page_of_exact_size(page):
    for box in (page.MediaBox, page.TrimBox):
        left, bottom, right, top = (float(side) * POINT_MM for side in box)
        assert (left, bottom) == (0.0, 0.0)
        assert (right, top) == pytest.approx((24.0, 20.0), abs=1e-4)


def test_curves_and_areas_are_kept(page, areas):
    """Numbers are rounded to 0.018 µm, which moves an area by that much of its edge at the very most."""
    layers = layers_of(page)
    for name, area in areas.items():
        assert abs(layers[name]["area"]) == pytest.approx(area, abs=60 * 0.018e-3)


def test_one_visible_layer_a_plate(data):
    with pikepdf.open(io.BytesIO(data)) as pdf:
        panel = pdf.Root.OCProperties
        assert [str(layer.Name) for layer in panel.D.Order] == ["under", "ring", "title"]
        assert [str(layer.Name) for layer in panel.D.ON] == ["under", "ring", "title"]
        assert len(panel.OCGs) == 3


def test_every_spot_ink_is_a_separation_with_its_screen_colour(page):
    spaces = {str(key): value for key, value in page.Resources.ColorSpace.items()}
    inks = {str(space[1]): space for space in spaces.values()}
    assert list(inks) == ["/white", "/signal red", "/navy"]
    for name, rgb in (("/white", (1, 1, 1)), ("/signal red", (200 / 255, 16 / 255, 46 / 255))):
        kind, _, alternate, tint = inks[name]
        assert (str(kind), str(alternate)) == ("/Separation", "/DeviceRGB")
        assert [float(v) for v in tint.C0] == [1, 1, 1]
        assert [float(v) for v in tint.C1] == pytest.approx(rgb, abs=1e-5)


def test_a_process_ink_is_plain_colour(artwork, areas):
    ink = Ink("dark blue", "#10306b", spot=False)
    mixed = Artwork("x", artwork.page, (Plate("under", ink, artwork.plates[0].outline),))
    with pikepdf.open(io.BytesIO(render(mixed, "pdf"))) as pdf:
        assert len(pdf.pages[0].Resources.ColorSpace) == 0
        assert layers_of(pdf.pages[0])["under"]["ink"] == pytest.approx((16 / 255, 48 / 255, 107 / 255), abs=1e-5)


def test_printed_as_large_as_it_is(data):
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert str(pdf.Root.ViewerPreferences.PrintScaling) == "/None"
        assert pdf.pdf_version == "1.6"


def test_no_date_in_it(data):
    assert not re.search(rb"CreationDate|ModDate|D:\d{4}", data)


def test_separations_are_the_plates(data, areas, separations, artwork, tmp_path):
    """Edges may lie up to ``EDGE_MM`` outside; a plate knocked out by another would miss whole regions."""
    file = tmp_path / "herald.pdf"
    file.write_bytes(data)
    inked = separations(file)
    edges = {"white": 2 * np.pi * 9.5, "signal red": 2 * np.pi * 15.0, "navy": 40.0}
    for plate in artwork.plates:
        area = areas[plate.name]
        assert area * 0.999 <= inked[plate.ink.name] <= area + edges[plate.ink.name] * EDGE_MM
    for process in ("Cyan", "Magenta", "Yellow", "Black"):
        assert inked[process] == 0.0


def test_without_overprint_the_white_plate_is_knocked_out(data, areas, separations, tmp_path):
    """The counter-proof: the check above sees it when the colours clear the white below them."""
    file = tmp_path / "knocked out.pdf"
    with pikepdf.open(io.BytesIO(data)) as pdf:
        pdf.pages[0].Resources.ExtGState["/overprint"] = pikepdf.Dictionary(OP=False, op=False, OPM=0)
        pdf.save(file)
    assert separations(file)["white"] < areas["under"] - 0.95 * areas["ring"]


def test_a_name_of_any_letters_survives(artwork):
    ink = Ink("Grün #3 (matt)/neu", "#00aa00")
    odd = Artwork("Ü & <b>", artwork.page, (Plate("schräg / eins", ink, artwork.plates[0].outline),))
    with pikepdf.open(io.BytesIO(render(odd, "pdf"))) as pdf:
        assert str(pdf.pages[0].Resources.ColorSpace["/ink0"][1]) == "/Grün #3 (matt)/neu"
        assert str(pdf.Root.OCProperties.OCGs[0].Name) == "schräg / eins"
        assert str(pdf.docinfo["/Title"]) == "Ü & <b>"
