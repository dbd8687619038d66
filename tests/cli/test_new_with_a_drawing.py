"""``heraldry new --drawing``: an old drawing becomes a railroad that draws as it lies."""

from __future__ import annotations

import json
import subprocess
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from heraldry.shapes.drawing.shape import LANTERN

Command = Callable[..., subprocess.CompletedProcess[str]]

SIGN = """<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20">
<rect width="30" height="20" fill="#123456"/><circle cx="15" cy="10" r="6" fill="#ffffff"/><text y="9">A</text></svg>"""


def test_each_colour_becomes_an_ink_a_shape_and_a_plate(heraldry_command: Command, tmp_path: Path) -> None:
    begun = heraldry_command("new", "mine", "--drawing", LANTERN)
    assert begun.returncode == 0, begun.stderr
    assert "inks: black, red, white, yellow" in begun.stdout
    assert "heraldry draw mine/herald.toml" in begun.stdout
    assert sorted(path.name for path in (tmp_path / "mine").iterdir()) == ["herald.toml", "lantern.svg", "road.toml"]
    herald = tomllib.loads((tmp_path / "mine" / "herald.toml").read_text())
    assert list(herald["shape"]) == list(herald["plate"]) == ["black", "red", "white", "yellow"]
    assert tomllib.loads((tmp_path / "mine" / "road.toml").read_text())["ink"]["white"]["opaque"]


def test_it_draws_as_it_lies_at_its_own_size_and_at_another(heraldry_command: Command, tmp_path: Path) -> None:
    (tmp_path / "sign.svg").write_text(SIGN)
    begun = heraldry_command("new", "mine", "--drawing", "sign.svg")
    assert "sign.svg: text is left out" in begun.stderr
    drawn = heraldry_command("draw", "mine/herald.toml", "--as", "svg", "--json")
    assert drawn.returncode == 0, drawn.stderr
    artwork = json.loads(drawn.stdout)["artworks"][0]
    assert (artwork["width_mm"], artwork["height_mm"]) == (30.0, 20.0)
    assert [plate["name"] for plate in artwork["plates"]] == ["blue", "white"]
    file = tmp_path / "mine" / "herald.toml"
    file.write_text(file.read_text().replace('"30 mm"', '"12 mm"'))
    again = json.loads(heraldry_command("draw", "mine/herald.toml", "--as", "svg", "--json").stdout)
    assert again["artworks"][0]["height_mm"] == pytest.approx(8.0)


def test_nothing_is_written_where_the_drawing_cannot_be_read(heraldry_command: Command, tmp_path: Path) -> None:
    (tmp_path / "old.png").write_bytes(b"\x89PNG\r\n\x1a\n")
    for arguments in (("--drawing", "gone.svg"), ("--drawing", "old.png"), ("--drawing", LANTERN, "--from", "hekla")):
        refused = heraldry_command("new", "mine", *arguments)
        assert refused.returncode == 2
        assert len(refused.stderr.splitlines()) == 1
        assert not (tmp_path / "mine").exists()


def test_a_drawing_that_cannot_be_read_is_a_fault_of_its_shape(heraldry_command: Command, tmp_path: Path) -> None:
    heraldry_command("new", "mine", "--drawing", LANTERN)
    file = tmp_path / "mine" / "herald.toml"
    file.write_text(file.read_text().replace('colour  = "#a3242b"', 'colour  = "#a3242c"'))
    wrong = heraldry_command("check", "mine/herald.toml")
    assert wrong.returncode == 2
    assert "shape.red: lantern.svg has nothing of the colour #a3242c, its colours: #1a1816, #a3242b" in wrong.stderr
