"""A folder with a small railroad, and a class of cars written in a few lines."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from heraldry.describe.description import load
from heraldry.diagrams.class_of_cars import ClassOfCars, class_of_cars
from heraldry.units import Scale

ROAD = """
kind = "road"
name = "Kennebago Northern"
mark = "KNR"
[paint.red]
colour = "#6b2f24"
[paint.grey]
colour = "#b9bcc0"
[ink.white]
colour = "#ffffff"
opaque = true
[ink.black]
colour = "#101010"
[ink.yellow]
colour = "#f2c200"
[ink.blue]
colour = "#1f4fa0"
[ink.red]
colour = "#c01818"
"""
HERALD = """
kind = "herald"
road = "road.toml"
scale = "HO"
[shape.arrow]
polygon = [[0, 0], [6, -3], [6, 3]]
[shape.letters]
text = "KN"
cap_height = 1.5
at = [7, -0.75]
anchor = "start"
[plate.black]
ink = "black"
art = "arrow + letters"
"""
SIDE = """
kind = "diagram"
road = "road.toml"
scale = "HO"
[side.left]
width = "40 ft full"
height = "10 ft full"
paint = "red"
[side.left.keepout.door]
width = "6 ft full"
[side.left.panel.A]
right = "door.left"
"""

AClass = Callable[..., ClassOfCars]


@pytest.fixture
def write_class(tmp_path: Path) -> Callable[..., Path]:
    """Writes the railroad and a diagram: the usual side, and what is given."""

    def write(text: str, head: str = SIDE, **files: str) -> Path:
        everything = {"road.toml": ROAD, "herald.toml": HERALD, "cars.toml": head + text}
        everything |= {name.replace("_", "."): content for name, content in files.items()}
        for name, content in everything.items():
            (tmp_path / name).write_text(content, encoding="utf-8")
        return tmp_path / "cars.toml"

    return write


@pytest.fixture
def a_class(write_class: Callable[..., Path]) -> AClass:
    """The class that such a file describes."""

    def read(text: str, head: str = SIDE, asked: Scale | None = None, **files: str) -> ClassOfCars:
        return class_of_cars(load(write_class(text, head, **files)), asked)

    return read
