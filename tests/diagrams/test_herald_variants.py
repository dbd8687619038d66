"""An item of a diagram may show a variant of a herald: in its inks, at its size."""

from __future__ import annotations

from pathlib import Path

import pytest

from heraldry.describe.description import load
from heraldry.diagrams.class_of_cars import class_of_cars
from heraldry.diagrams.drawing import artworks
from heraldry.errors import DescriptionError
from heraldry.geometry.measure import bounds

ROAD = """kind = "road"
name = "Kennebago Northern"
[paint.red]
colour = "#6b2f24"
[ink.white]
colour = "#ffffff"
opaque = true
[ink.black]
colour = "#101010"
"""
HERALD = """kind = "herald"
road = "road.toml"
scale = "HO"
[shape.disc]
circle = 4
[shape.hole]
circle = 3
[plate.black]
ink = "black"
art = "disc - hole"
[variant.white]
form = "reversed"
ink = "white"
[variant.small]
shape.disc = { circle = 3.5 }
"""
CAR = """kind = "diagram"
road = "road.toml"
scale = "HO"
[side.left]
width = "40 ft full"
height = "10 ft full"
paint = "red"
[item.herald]
herald = "herald.toml"
"""


def drawn(folder: Path, item: str) -> list[tuple[str, float]]:
    """The inks of the car and how wide each of them reaches."""
    for name, text in (("road", ROAD), ("herald", HERALD), ("car", CAR + item)):
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    (artwork,) = artworks(class_of_cars(load(folder / "car.toml")))
    return [(plate.ink.name, round(bounds(plate.outline).width, 6)) for plate in artwork.plates]


@pytest.mark.parametrize(
    ("item", "expected"),
    [("", ("black", 8.0)), ('variant = "white"', ("white", 6.0)), ('variant = "small"', ("black", 7.0))],
)
def test_an_item_shows_the_variant_that_it_names(tmp_path: Path, item: str, expected: tuple[str, float]) -> None:
    assert drawn(tmp_path, item) == [expected]


def test_a_variant_that_the_herald_has_not_is_told(tmp_path: Path) -> None:
    with pytest.raises(DescriptionError, match=r"car\.toml:9: .*no variant is called 'whit', did you mean 'white'"):
        drawn(tmp_path, 'variant = "whit"')
