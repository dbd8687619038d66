"""Faults of form and faults of meaning are told in one run, each once."""

from __future__ import annotations

from pathlib import Path

import pytest

import heraldry
from heraldry.errors import DescriptionError

FILE = """kind = "herald"
road = "road.toml"
scale = "H0O"
width = "width / 0"
flm = "clear"
[let]
rim = "rom / 2"
[ink.black]
colour = "blak"
[shape.disc]
circle = "rim * 2"
[shape.word]
txt = "A"
cap_height = 3
[shape.name]
text = "{road.nme}"
cap_hight = "2 mm"
[shape.ring]
ring = "5 mm"
width = "1 mn"
centre = "disk.top"
[plate.black]
ink = "blck"
art = "disc + word + name + rung"
"""
ROAD = """kind = "road"
name = "Long Pond"
mark = "lp"
"""


def told(folder: Path, text: str, road: str = ROAD) -> list[tuple[str, int]]:
    (folder / "road.toml").write_text(road, encoding="utf-8")
    path = folder / "one.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(DescriptionError) as caught:
        heraldry.load(path) and heraldry.draw(heraldry.load(path))
    return [(Path(fault.file).name, fault.line) for fault in caught.value.faults]


def test_every_fault_of_both_files_is_told_in_one_run(tmp_path: Path) -> None:
    assert told(tmp_path, FILE) == [
        ("one.toml", 3),  # no such scale
        ("one.toml", 4),  # division by zero
        ("one.toml", 5),  # unknown key
        ("one.toml", 7),  # unknown name in [let]
        ("one.toml", 9),  # no colour
        ("one.toml", 12),  # no kind of shape
        ("one.toml", 15),  # cap_height is missing
        ("one.toml", 16),  # unknown text
        ("one.toml", 17),  # unknown key
        ("one.toml", 20),  # unknown unit
        ("one.toml", 21),  # no such shape
        ("one.toml", 23),  # no such ink
        ("one.toml", 24),  # no such shape in the art
        ("road.toml", 3),  # a mark of small letters
    ]


def test_stand_ins_are_not_complained_of(tmp_path: Path) -> None:
    good = (
        FILE.replace("H0O", "HO").replace("width / 0", "20 mm").replace("blak", "#101010").replace("txt", "text")
        .replace("rom / 2", "1 mm").replace("nme", "name").replace("1 mn", "1 mm").replace("disk", "disc")
        .replace("blck", "black").replace("rung", "ring")
    )  # fmt: skip
    assert told(tmp_path, good, ROAD.replace("lp", "LP")) == [("one.toml", 5), ("one.toml", 15), ("one.toml", 17)]


def test_a_missing_road_is_told_with_the_faults_of_form(tmp_path: Path) -> None:
    assert told(tmp_path, FILE.replace("road.toml", "rod.toml"))[:2] == [("one.toml", 2), ("one.toml", 5)]
