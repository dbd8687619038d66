"""Set arithmetic on the shapes of a real file: areas against closed forms, and faults in the user's words."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

import heraldry
from heraldry.errors import DescriptionError
from heraldry.geometry.measure import area, bounds

FILE = """kind = "herald"
[ink.black]
colour = "#101010"
[shape.disc]
circle = 10
[shape.hole]
circle = 4
[shape.bar]
box = 6
height = 2
centre = [20, 0]
[shape.land]
region = ["US-CO"]
height = 8
place.town = {{ lat = 39.0, lon = -105.5 }}
[shape.dot]
circle = 1
centre = {{ lat = 39.0, lon = -105.5 }}
[plate.black]
ink = "black"
art = "{art}"
"""
DISC, HOLE, BAR = 100 * math.pi, 16 * math.pi, 12.0


def drawn(folder: Path, art: str) -> heraldry.Artwork:
    path = folder / "one.toml"
    path.write_text(FILE.format(art=art), encoding="utf-8")
    return heraldry.draw(heraldry.load(path))[0]


@pytest.mark.parametrize(
    ("art", "expected"),
    [
        ("disc", DISC),
        ("disc - hole", DISC - HOLE),
        ("disc - hole + bar", DISC - HOLE + BAR),
        ("disc + hole + bar", DISC + BAR),
        ("(disc & hole) + bar", HOLE + BAR),
        ("filled(disc - hole)", DISC),
        ("disc - (disc - hole)", HOLE),
        ("move(bar, 3, 1 mm) & bar", 3.0),
        ("turn(bar, 90) & bar", 4.0),
        ("mirror(bar) + bar", BAR),
        ("around(bar, 4)", 4 * BAR),
        ("around(bar, 2, bar.right)", 2 * BAR),
        # Steiner's formula for a convex outline: A + P·r + π·r².
        ("offset(bar, 0.5)", BAR + 16 * 0.5 + math.pi * 0.25),
        ("inset(bar, 0.5)", 5.0),
        ("edge(disc, 1)", (100 - 81) * math.pi),
        ("edge(disc, 2 / 2)", (100 - 81) * math.pi),
    ],
)
def test_areas_of_set_arithmetic(tmp_path: Path, art: str, expected: float) -> None:
    assert area(drawn(tmp_path, art).plates[0].outline) == pytest.approx(expected, rel=1e-6)


def test_arcs_stay_arcs(tmp_path: Path) -> None:
    assert drawn(tmp_path, "disc - hole").plates[0].outline.node_count <= 4


@pytest.mark.parametrize(
    ("art", "told"),
    [
        ("disc - disc", "nothing is left of this plate"),
        ("offst(disc, 1)", "did you mean 'offset'"),
        ("offset(disc)", "write offset(art, by)"),
        ("disc * hole", "means nothing between shapes"),
        ("offset(3 mm, 1)", "is no art"),
        ("turn(disc, 10, bar.tip)", "has no point 'tip'"),
        ("turn(disc, 10, 3)", "a place is wanted"),
        ("around(disc, 1.5)", "a whole number"),
        ("around(disc, 100000)", "1 to 360 copies"),
        ("inset(disc, 11)", "nothing is left"),
        ("turn(disc, 2 mm)", "a number is wanted"),
    ],
)
def test_faults_are_told_with_their_line(tmp_path: Path, art: str, told: str) -> None:
    with pytest.raises(DescriptionError) as caught:
        drawn(tmp_path, art)
    assert [fault.line for fault in caught.value.faults] == [21]
    assert told in str(caught.value)


def test_a_shape_that_cannot_be_drawn_names_its_key(tmp_path: Path) -> None:
    path = tmp_path / "one.toml"
    path.write_text(FILE.format(art="disc").replace("circle = 4", "circle = -4"), encoding="utf-8")
    with pytest.raises(DescriptionError, match=r"one.toml:7: shape.hole: circle is -4, it must be more than 0"):
        heraldry.draw(heraldry.load(path))


def test_a_ring_centres_on_a_town_of_the_map(tmp_path: Path) -> None:
    dot = bounds(drawn(tmp_path, "dot").plates[0].outline)
    other = bounds(drawn(tmp_path, "move(dot, 1, 0)").plates[0].outline)
    assert dot.width == pytest.approx(2.0)
    # Colorado reaches from 37° to 41° north and 102.05° to 109.05° west: the town lies in its middle.
    assert abs(dot.centre.x) < 0.2
    assert abs(dot.centre.y) < 0.2
    assert other.centre.x - dot.centre.x == pytest.approx(1.0)


def test_what_is_too_large_for_any_sheet_is_refused(tmp_path: Path) -> None:
    with pytest.raises(DescriptionError, match="no herald is 3,046 mm wide"):
        drawn(tmp_path, "around(move(bar, 1500, 0), 4)")


def test_a_map_file_needs_no_code(tmp_path: Path) -> None:
    (tmp_path / "isle.geojson").write_text(
        '{"type": "Polygon", "coordinates": [[[10, 60], [10.2, 60], [10.2, 60.1], [10, 60.1], [10, 60]]]}'
    )
    path = tmp_path / "one.toml"
    isle = '[shape.isle]\nfile = "isle.geojson"\nheight = 6\n[plate.black]'
    path.write_text(FILE.format(art="isle").replace("[plate.black]", isle), encoding="utf-8")
    with pytest.raises(DescriptionError, match="need one map"):  # two maps now: the dot must name its own
        heraldry.draw(heraldry.load(path))
    path.write_text(
        path.read_text().replace("lon = -105.5 }\n[shape.isle]", 'lon = -105.5, on = "land" }\n[shape.isle]')
    )
    assert bounds(heraldry.draw(heraldry.load(path))[0].plates[0].outline).height == pytest.approx(6.0)


def test_all_shapes_that_cannot_be_drawn_are_told_and_those_that_need_them_are_not(tmp_path: Path) -> None:
    text = FILE.format(art="disc").replace("circle = 10", "circle = -10").replace("circle = 4", "circle = -4")
    path = tmp_path / "one.toml"
    path.write_text(text.replace("[plate.black]", '[shape.both]\nart = "disc + hole"\n[plate.black]'), encoding="utf-8")
    with pytest.raises(DescriptionError) as caught:
        heraldry.draw(heraldry.load(path))
    assert [fault.line for fault in caught.value.faults] == [5, 7]


def test_ink_larger_than_the_finished_size_is_a_fault_of_that_size(tmp_path: Path) -> None:
    path = tmp_path / "one.toml"
    with_size = FILE.format(art="disc").replace("[ink.black]", "width = 12\nheight = 20\n[ink.black]")
    path.write_text(with_size, encoding="utf-8")
    with pytest.raises(DescriptionError, match=r"one.toml:2: width: the ink is 20.000 mm wide") as refusal:
        heraldry.draw(heraldry.load(path))
    assert len(refusal.value.faults) == 1
