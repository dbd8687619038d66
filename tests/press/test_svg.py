"""The SVG, opened again by an XML parser, by svgpathtools, and by the renderer resvg."""

import io
import xml.etree.ElementTree as ET

import numpy as np
import pytest
import resvg_py
from PIL import Image
from svgpathtools import parse_path

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.press import render
from heraldry.press.number_format import SVG_DECIMALS

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def root(artwork):
    return ET.fromstring(render(artwork, "svg"))


def path_of(root, plate: str):
    (group,) = (g for g in root if g.get("id") == f"plate-{plate}")
    (path,) = group
    return path


def test_millimetres_outside_and_inside(root):
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("24mm", "20mm", "0 0 24 20")


def test_one_group_a_plate_in_printing_order(root):
    assert [group.get("id") for group in root] == ["plate-under", "plate-ring", "plate-title"]


def test_nothing_but_filled_paths(root):
    assert {element.tag for element in root.iter()} == {SVG + "svg", SVG + "g", SVG + "path"}
    for path in root.iter(SVG + "path"):
        assert set(path.keys()) == {"fill", "fill-rule", "d"}
        assert path.get("fill-rule") == "evenodd"
    for group in root.iter(SVG + "g"):
        assert set(group.keys()) == {"id"}


def test_paths_have_the_colours_of_their_inks(root):
    assert [path.get("fill") for path in root.iter(SVG + "path")] == ["#ffffff", "#c8102e", "#10306b"]


def test_areas_are_those_of_the_shapes(root, areas):
    for name, area in areas.items():
        rings = parse_path(path_of(root, name).get("d")).continuous_subpaths()
        assert abs(sum(ring.area() for ring in rings)) == pytest.approx(area, rel=2e-6)


def test_circles_are_round_to_a_twentieth_of_a_micrometre(root):
    for segment in parse_path(path_of(root, "under").get("d")):
        radii = [abs(segment.point(t) - complex(12, 10)) for t in np.linspace(0, 1, 33)]
        assert np.abs(np.array(radii) - 9.5).max() < 5e-5


def test_y_points_down_and_letters_stand_upright(root, artwork):
    rings = parse_path(path_of(root, "title").get("d"))
    tops = [min(segment.start.imag, segment.end.imag) for segment in rings]
    outline = next(plate.outline for plate in artwork.plates if plate.name == "title")
    assert min(tops) == pytest.approx(10.0 - outline.data[:, [0, 3], 1].max(), abs=1e-5)


@pytest.mark.parametrize("plate", ["under", "ring", "title"])
def test_a_renderer_covers_the_computed_area(artwork, areas, alone, plate):
    svg = render(alone(artwork, plate), "svg").decode()
    picture = Image.open(io.BytesIO(bytes(resvg_py.svg_to_bytes(svg_string=svg, dpi=1200))))
    alpha = np.asarray(picture, dtype=float)[..., 3]
    assert picture.size == (1134, 945)
    assert alpha.sum() / 255 * (25.4 / 1200) ** 2 == pytest.approx(areas[plate], rel=1e-3)


def test_numbers_are_short(root):
    numbers = path_of(root, "under").get("d").translate(str.maketrans("MLCZ", "    ")).split()
    assert max(len(number.partition(".")[2]) for number in numbers) == SVG_DECIMALS
    assert not any("e" in number or (number.endswith("0") and "." in number) for number in numbers)


def test_names_are_escaped(artwork):
    disc = artwork.plates[0].outline
    odd = Artwork("a", artwork.page, (Plate('a<b>&"c" d', Ink("x", "#000000"), disc),))
    (group,) = ET.fromstring(render(odd, "svg"))
    assert group.get("id") == 'plate-a<b>&"c"_d'
