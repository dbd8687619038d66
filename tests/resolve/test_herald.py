"""Every word of a herald gets its value: lengths at a scale, names, texts, places, in one run for all faults."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heraldry.describe.description import load
from heraldry.errors import DescriptionError
from heraldry.geometry.point import Point
from heraldry.resolve.herald import resolve_herald
from heraldry.resolve.resolved import PlaceName, ResolvedHerald
from heraldry.units import SCALES, parse_scale

HEAD = """kind = "herald"
scale = "HO"
width = "48 in full"
"""
TAIL = """
[ink.black]
colour = "#101010"
[plate.black]
ink = "black"
art = "disc"
"""


def herald(folder: Path, middle: str, head: str = HEAD, scale: str | None = None) -> ResolvedHerald:
    path = folder / "one.toml"
    path.write_text(head + middle + TAIL, encoding="utf-8")
    return resolve_herald(load(path), parse_scale(scale) if scale else None)


def faults(folder: Path, middle: str, head: str = HEAD, scale: str | None = None) -> list[str]:
    with pytest.raises(DescriptionError) as caught:
        herald(folder, middle, head, scale)
    return [str(fault).partition("one.toml:")[2] for fault in caught.value.faults]


def argument(resolved: ResolvedHerald, shape: str, key: str) -> object:
    return next(one for one in resolved.shapes if one.name == shape).arguments[key]


def test_full_size_lengths_come_to_the_model(tmp_path: Path) -> None:
    # 48 in is 4 ft, at 3.5 mm to the foot 14 mm: worked by hand.
    assert herald(tmp_path, '[shape.disc]\ncircle = "width / 2"').width_mm == 14.0


@pytest.mark.parametrize("name", [scale.name for scale in SCALES])
def test_another_scale_multiplies_all_lengths_alike(tmp_path: Path, name: str) -> None:
    middle = '[shape.disc]\ncircle = "6 mm"\n[shape.b]\nbox = "9 in full"\nheight = 2'
    own, other = herald(tmp_path, middle), herald(tmp_path, middle, scale=name)
    factor = float(parse_scale("HO").ratio / parse_scale(name).ratio)
    for shape, key in (("disc", "circle"), ("b", "box"), ("b", "height")):
        # The model is the full size over the ratio; rounded to the nanometre.
        assert argument(other, shape, key) == pytest.approx(argument(own, shape, key) * factor, abs=1e-6)


@settings(derandomize=True, deadline=None, max_examples=25)
@given(inches=st.integers(1, 500), ratio=st.integers(8, 220))
def test_model_is_full_size_over_scale(tmp_path_factory: pytest.TempPathFactory, inches: int, ratio: int) -> None:
    folder = tmp_path_factory.mktemp("scale")
    resolved = herald(folder, f'[shape.disc]\ncircle = "{inches} in full"', HEAD.replace("HO", f"1:{ratio}"))
    assert argument(resolved, "disc", "circle") == pytest.approx(inches * 25.4 / ratio, abs=1e-6)


def test_named_lengths_may_use_one_another_and_the_page(tmp_path: Path) -> None:
    middle = '[let]\nhalf = "radius / 2"\nradius = "width / 2 - rim"\nrim = 1\n[shape.disc]\ncircle = "half"'
    assert argument(herald(tmp_path, middle), "disc", "circle") == 3.0


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    middle = """
[shape.disc]
circle = "width * width"
centre = "dusc.centre"
[shape.t]
text = "{road.nme}"
cap_height = "2 mn"
alphabet = "gothc"
"""
    told = faults(tmp_path, middle)
    assert [fault.partition(":")[0] for fault in told] == ["6", "7", "9", "10", "11"]
    assert "an area" in told[0]
    assert "did you mean 'disc'" in told[1]
    assert "unknown unit" in told[3]
    assert "did you mean 'gothic'" in told[4]


@pytest.mark.parametrize(
    ("middle", "told"),
    [
        ("[let]\na = 'b'\nb = 'a'\n[shape.disc]\ncircle = 1", "→"),
        (
            "[shape.disc]\ncircle = 1\ncentre = 'e.top'\n[shape.e]\ncircle = 1\ncentre = 'disc.top'",
            "shapes that need one another",
        ),
        ("[shape.disc]\nart = 'disc'", "shapes that need one another"),
        ("[shape.disc]\nart = 'dusc + 1'", "no shape is called 'dusc'"),
        ("[let]\ndisc = 1\n[shape.disc]\ncircle = 1", "a length already"),
        ("[shape.disc]\nregular = '11 / 2'\nradius = 1", "a whole number is wanted"),
        (
            "[shape.disc]\npath = 'M0 0'\n[shape.r]\nregion = []\nfile = 'no.geojson'\nheight = 5",
            "the file is not there",
        ),
    ],
)
def test_faults_between_keys(tmp_path: Path, middle: str, told: str) -> None:
    found = faults(tmp_path, middle)
    assert any(told in fault for fault in found), found


def test_another_scale_needs_a_scale_in_the_file(tmp_path: Path) -> None:
    told = faults(tmp_path, "[shape.disc]\ncircle = 1", 'kind = "herald"\n', scale="N")
    assert "which scale it is drawn for" in told[0]


def test_a_wrong_paint_ink_and_size(tmp_path: Path) -> None:
    head = HEAD.replace("48 in full", "0 mm") + 'on = "gren"\n[paint.green]\ncolour = "#1f3b2d"\n'
    told = faults(tmp_path, '[shape.disc]\ncircle = 1\n[plate.b]\nink = "blck"\nart = "disc"', head)
    assert any("no such paint, found 'gren', did you mean 'green'" in fault for fault in told)
    assert any("no such ink, found 'blck', did you mean 'black'" in fault for fault in told)
    assert any("more than 0" in fault for fault in told)


def test_shapes_stand_in_the_order_of_their_needs(tmp_path: Path) -> None:
    middle = "[shape.disc]\nart = 'b + c'\n[shape.b]\ncircle = 1\ncentre = 'c.top'\n[shape.c]\ncircle = 2"
    assert [shape.name for shape in herald(tmp_path, middle).shapes] == ["c", "b", "disc"]


def test_places_are_points_or_names(tmp_path: Path) -> None:
    middle = "[shape.disc]\ncircle = 1\ncentre = { x = '1 mm', y = -2 }\n[shape.b]\ncircle = 1\ncentre = 'disc'"
    resolved = herald(tmp_path, middle)
    assert argument(resolved, "disc", "centre") == Point(1.0, -2.0)
    assert argument(resolved, "b", "centre") == PlaceName("disc")
