"""``specimen`` and ``alphabets`` as a user runs them."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

from heraldry.lettering.alphabets import STYLES

Command = Callable[..., subprocess.CompletedProcess[str]]


def test_pages_of_a_road_in_three_outputs(heraldry_command: Command, road_folder: Path) -> None:
    result = heraldry_command(
        "specimen", road_folder / "road.toml", "--scale", "O", "--paper", "Letter", "--dpi", "100", "--json"
    )
    assert result.returncode == 0, result.stderr
    out = road_folder.parent / "out"
    manifest = json.loads(result.stdout)
    assert manifest == json.loads((out / "manifest.json").read_text())
    assert {file["format"] for file in manifest["files"]} == {"svg", "pdf", "png"}
    assert all((out / file["file"]).stat().st_size > 1000 for file in manifest["files"])
    # Letter is 8 1/2 by 11 inches: 215.9 by 279.4 mm, and 850 by 1100 dots at 100 to the inch.
    assert {(one["width_mm"], one["height_mm"], one["scale"]) for one in manifest["artworks"]} == {(215.9, 279.4, "O")}
    with Image.open(out / "specimen-1.png") as picture:
        assert picture.size == (850, 1100)


def test_ours_alone_without_a_file(heraldry_command: Command, tmp_path: Path) -> None:
    result = heraldry_command("specimen", "--text", "Fern Hollow", "--as", "svg", "--out", "made")
    assert result.returncode == 0, result.stderr
    assert (tmp_path / "made" / "specimen-1.svg").is_file()
    assert "210.00 × 297.00 mm" in result.stdout


def test_a_missing_letter_is_a_finding_and_no_failure(heraldry_command: Command) -> None:
    result = heraldry_command("specimen", "--text", "Жeleznice", "--as", "svg")
    assert result.returncode == 0
    assert "has no U+0416 (Cyrillic capital letter zhe)" in result.stderr


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--scale", "HOO"), "unknown scale, found 'HOO', did you mean 'OO' or 'HO'?"),
        (("--text", ""), "letters a text, found none"),
        (("--text", "x" * 300), "found 300 letters, at most 200"),
        (("--paper", "foolscap"), "no paper is called 'foolscap', known: A4, Letter"),
        (("--as", "svgg"), "svgg"),
        (("rings.toml",), "this file is a herald"),
        (("lost.toml",), "lost.toml"),
    ],
    ids=lambda value: value[0] if isinstance(value, tuple) else None,
)
def test_wrong_input_is_told_in_one_line(
    heraldry_command: Command, road_folder: Path, arguments: tuple[str, ...], said: str
) -> None:
    result = heraldry_command("specimen", *arguments, cwd=road_folder)
    assert result.returncode == 2
    assert said in result.stderr
    assert result.stderr.count("\n") == 1
    assert not (road_folder / "out").exists()


def test_alphabets_are_listed_with_what_they_take(heraldry_command: Command) -> None:
    listed = heraldry_command("alphabets").stdout
    described = {one["style"]: one for one in json.loads(heraldry_command("alphabets", "--json").stdout)["styles"]}
    assert list(described) == list(STYLES)
    for name, style in STYLES.items():
        assert f"{name}: {style.summary}" in listed
        assert {one["key"] for one in described[name]["parameters"]} >= {"stem", "width", "slant", "letter_gap"}
        assert set(described[name]["letters"]) == set(style.letters)
    stem = described["gothic"]["parameters"][0]
    assert (stem["key"], stem["default"], stem["least"]) == ("stem", 0.17, 0.1)
    assert "thickness of an upright stroke, in cap heights" in listed
