"""``ideas`` as a user runs it: a page in files, and one idea as a herald to go on with."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

Command = Callable[..., subprocess.CompletedProcess[str]]
ASKED = ("ideas", "Fern Valley Railway", "--region", "US-VT", "--era", "1950s", "--seed", "3")


def test_a_page_in_files_with_a_manifest(heraldry_command: Command, tmp_path: Path) -> None:
    result = heraldry_command(*ASKED, "--paper", "letter", "--as", "svg,png", "--dpi", "100", "--json")
    assert result.returncode == 0, result.stderr
    manifest = json.loads(result.stdout)
    assert manifest == json.loads((tmp_path / "out" / "manifest.json").read_text())
    assert [(one["name"], one["width_mm"]) for one in manifest["artworks"]] == [("ideas", 215.9)]
    with Image.open(tmp_path / "out" / "ideas.png") as picture:
        assert picture.size == (850, 1100)


def test_an_idea_taken_is_drawn_as_any_herald(heraldry_command: Command, tmp_path: Path) -> None:
    result = heraldry_command(*ASKED, "--take", "7", "--out", "mine")
    assert result.returncode == 0, result.stderr
    assert "idea-7.toml is ready, now run: heraldry draw" in result.stdout
    drawn = heraldry_command("draw", "mine/idea-7.toml", "--as", "svg")
    assert drawn.returncode == 0, drawn.stderr
    assert 'width="20mm"' in (tmp_path / "out" / "idea-7.svg").read_text()


@pytest.mark.parametrize(
    ("arguments", "answer"),
    [
        ((), "ideas want the name of a railroad, or a road file that says it"),
        (("Fern", "--era", "long ago"), "an era is a year or a decade"),
        (("Fern", "--colour", "green"), "a colour is 'green'"),
        (("Fern", "--paper", "A9"), "no paper is called 'A9'"),
        (("Fern", "--road", "none.toml"), "none.toml"),
        (("Fern ひ",), "has no letter 'ひ'"),
    ],
)
def test_what_cannot_be_meant_is_told(heraldry_command: Command, arguments: tuple[str, ...], answer: str) -> None:
    result = heraldry_command("ideas", *arguments)
    assert result.returncode == 2
    assert answer in result.stderr
    assert "Traceback" not in result.stderr
