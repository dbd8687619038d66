"""Places of lettering in the SVG, measured back by svgpathtools to a micrometre; heights of common practice.

Every expected place is worked out by hand from full-size feet and inches at 3.5 mm to the foot (HO, NMRA S-1.2).
"""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from pathlib import Path

import pytest
from svgpathtools import parse_path

from heraldry.describe.description import load
from heraldry.diagrams.class_of_cars import class_of_cars
from heraldry.diagrams.drawing import artworks
from heraldry.press import render

MICROMETRE_MM = 1e-3
DIAGRAM = """
kind = "diagram"
scale = "HO"
[road]
name = "Kennebago Northern"
mark = "KNR"
[ink.white]
colour = "#ffffff"
opaque = true
[ink.black]
colour = "#000000"
[ink.grey]
colour = "#808080"
[side.left]
width = "40 ft 6 in full"
height = "9 ft 4 in full"
[side.left.keepout.door]
width = "6 ft full"
[side.left.panel.A]
left = "door.right"
bottom = "2 ft full"
[series]
numbers = "117-118"
[item.mark]
text = "HHH"
cap_height = "9 in full"
x = "door.left - 12 in full"
anchor = "end"
y = "6 ft 3 in full"
ink = "white"
[item.number]
text = "H{car.number}H"
cap_height = "7 in full"
x = "mark.centre_x"
y = "mark.bottom - 3 in full"
level = "head"
ink = "black"
[item.box]
box = "3 ft full"
height = "18 in full"
panel = "A"
ink = "grey"
"""


@pytest.fixture
def boxes(tmp_path: Path) -> dict[str, tuple[float, float, float, float]]:
    """Left, right, bottom and top of each ink, mm from the lower left corner of the page, as svgpathtools sees it."""
    file = tmp_path / "car.toml"
    file.write_text(DIAGRAM)
    artwork = next(artworks(class_of_cars(load(file))))
    root = ElementTree.fromstring(render(artwork, "svg"))
    height = float(root.attrib["height"].removesuffix("mm"))
    assert (root.attrib["width"], height) == ("141.75mm", pytest.approx(32 + 2 / 3, abs=MICROMETRE_MM))
    seen = {}
    for group in root:
        path = parse_path(group[0].attrib["d"])
        left, right, upper, lower = path.bbox()
        seen[group.attrib["id"].removeprefix("plate-")] = (left, right, height - lower, height - upper)
    return seen


def test_a_mark_ends_a_foot_left_of_the_door(boxes: dict[str, tuple[float, float, float, float]]) -> None:
    _, right, bottom, top = boxes["white"]
    # The door begins at (40 ft 6 in − 6 ft) / 2 = 17 ft 3 in; 16 ft 3 in · 3.5 = 56.875 mm.
    assert right == pytest.approx(56.875, abs=MICROMETRE_MM)
    assert bottom == pytest.approx(6.25 * 3.5, abs=MICROMETRE_MM)  # 6 ft 3 in
    assert top - bottom == pytest.approx(2.625, abs=MICROMETRE_MM)  # 9 in


def test_a_number_stands_centred_under_the_mark(boxes: dict[str, tuple[float, float, float, float]]) -> None:
    mark_left, mark_right, mark_bottom, _ = boxes["white"]
    left, right, bottom, top = boxes["black"]
    assert top == pytest.approx(mark_bottom - 0.25 * 3.5, abs=MICROMETRE_MM)  # 3 in below
    assert top - bottom == pytest.approx(7 / 12 * 3.5, abs=MICROMETRE_MM)  # 7 in
    assert (left + right) / 2 == pytest.approx((mark_left + mark_right) / 2, abs=MICROMETRE_MM)


def test_a_box_stands_in_the_middle_of_its_panel(boxes: dict[str, tuple[float, float, float, float]]) -> None:
    # The panel is from 23 ft 3 in to 40 ft 6 in, from 2 ft to 9 ft 4 in; its middle at 31 ft 10 1/2 in, 5 ft 8 in.
    middle = 31.875 * 3.5, (5 + 8 / 12) * 3.5
    expected = (middle[0] - 5.25, middle[0] + 5.25, middle[1] - 2.625, middle[1] + 2.625)
    assert boxes["grey"] == pytest.approx(expected, abs=MICROMETRE_MM)


@pytest.mark.parametrize(
    ("inches", "ho_mm", "n_mm"), [(9, 2.625, 1.42875), (7, 2.0416667, 1.11125), (4, 1.1666667, 0.635)]
)
def test_heights_of_common_practice(tmp_path: Path, inches: int, ho_mm: float, n_mm: float) -> None:
    # Marks 9 in, numbers 7 in, ends 4 in: letter ballot in force from 1 March 1960 (steam-era freight car mailing
    # list, message 90553). Model heights by hand: inches / 12 · 3.5 in HO, inches · 25.4 / 160 in N.
    file = tmp_path / "car.toml"
    file.write_text(DIAGRAM.replace('"9 in full"', f'"{inches} in full"'))
    for scale, expected in ((None, ho_mm), ("N", n_mm)):
        import heraldry

        artwork = heraldry.draw(heraldry.load(file), scale=scale)[0]
        root = ElementTree.fromstring(render(artwork, "svg"))
        group = next(group for group in root if group.attrib["id"] == "plate-white")
        _, _, upper, lower = parse_path(group[0].attrib["d"]).bbox()
        assert lower - upper == pytest.approx(expected, abs=MICROMETRE_MM)
