"""A class of cars by the real command: drawn, checked, proofed, spread over processes, refused in words."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from heraldry.cli.starting import template_diagrams

Command = Callable[..., subprocess.CompletedProcess[str]]


def test_draw_writes_every_side_of_the_cars_asked_for(heraldry_command: Command, road_folder: Path) -> None:
    boxcar = road_folder / "boxcar.toml"
    result = heraldry_command("draw", boxcar, "--cars", "301,305", "--as", "svg,pdf", "--out", "made")
    assert result.returncode == 0, result.stderr
    made = road_folder.parent / "made"
    stems = [f"boxcar-{number}-{side}" for number in (301, 305) for side in ("left", "right")]
    assert sorted(path.name for path in made.iterdir()) == sorted(
        ["manifest.json", *(f"{stem}.{kind}" for stem in stems for kind in ("svg", "pdf"))]
    )
    manifest = json.loads((made / "manifest.json").read_text())
    # 41 ft × 9 ft 8 in at 3.5 mm to the foot, worked by hand.
    assert {(one["width_mm"], one["height_mm"]) for one in manifest["artworks"]} == {(143.5, 33.8333)}
    assert [plate["ink"] for plate in manifest["artworks"][0]["plates"]] == ["white"]


def test_jobs_change_no_byte(heraldry_command: Command, road_folder: Path) -> None:
    boxcar = road_folder / "boxcar.toml"
    boxcar.write_text(boxcar.read_text().replace('"301-325"', '"301-307"'))
    for jobs, out in (("1", "one"), ("3", "three")):
        result = heraldry_command("draw", boxcar, "--as", "svg", "--jobs", jobs, "--out", out)
        assert result.returncode == 0, result.stderr
    one, three = (road_folder.parent / out for out in ("one", "three"))
    names = sorted(path.name for path in one.iterdir())
    assert len(names) == 15
    assert [(three / name).read_bytes() for name in names] == [(one / name).read_bytes() for name in names]


def test_check_tells_what_is_found_on_all_cars_once(heraldry_command: Command, road_folder: Path) -> None:
    boxcar = road_folder / "boxcar.toml"
    result = heraldry_command("check", boxcar)
    assert result.returncode == 1
    assert "boxcar 301 left and 49 more: " in result.stderr
    assert len(result.stderr.splitlines()) < 20
    boxcar.write_text(boxcar.read_text().replace('x      = "column + 20 in full"', 'x = "door.left"'))
    moved = heraldry_command("check", boxcar)
    assert "bar_over_mark lies on door by 0.29 mm" in moved.stderr


def test_a_broken_row_is_told_and_the_other_cars_are_checked(heraldry_command: Command, road_folder: Path) -> None:
    boxcar = road_folder / "boxcar.toml"
    boxcar.write_text(boxcar.read_text().replace('numbers = "301-325"', 'cars = "cars.csv"'))
    (road_folder / "cars.csv").write_text("number,light_weight\n301,44800\n302,much\n303,99900\n")
    checked = heraldry_command("check", boxcar)
    assert checked.returncode == 2
    assert "cars.csv:3: row 3: column light_weight: a whole number is wanted, found 'much'" in checked.stderr
    assert "boxcar 301 left and 3 more: " in checked.stderr
    assert "boxcar 303 left" in checked.stderr
    assert "Traceback" not in checked.stderr
    drawn = heraldry_command("draw", boxcar, "--as", "svg")
    assert drawn.returncode == 2
    assert not (road_folder.parent / "out").exists()


def test_proofs_of_cars_and_of_the_class(heraldry_command: Command, road_folder: Path) -> None:
    boxcar = road_folder / "boxcar.toml"
    contact = heraldry_command("proof", boxcar, "--contact", "--as", "svg,pdf,png", "--json")
    assert contact.returncode == 0, contact.stderr
    assert [file["file"] for file in json.loads(contact.stdout)["files"]] == [
        f"boxcar-contact.{kind}" for kind in ("svg", "pdf", "png")
    ]
    car = heraldry_command("proof", boxcar, "--cars", "309", "--dimensions", "--as", "svg", "--scale", "N", "--json")
    assert json.loads(car.stdout)["artworks"][0]["name"] == "boxcar 309 proof N"
    herald = heraldry_command("proof", road_folder / "rings.toml")
    assert herald.returncode == 2
    assert "this is about a class of cars, the file is a herald" in herald.stderr


def test_faults_of_a_diagram_are_told_all_at_once_with_their_lines(
    heraldry_command: Command, road_folder: Path
) -> None:
    boxcar = road_folder / "boxcar.toml"
    text = boxcar.read_text()
    for good, bad in (
        ('cap_height = "9 in full"', 'cap_hight = "9 in full"'),
        ('figures    = "tabular"', 'figures = "tabluar"'),
        ("[side.left.keepout.ladder]\nleft", "[side.left.keepout.ladder]\nlefft"),
    ):
        assert good in text
        text = text.replace(good, bad, 1)
    boxcar.write_text(text)
    result = heraldry_command("check", boxcar)
    assert result.returncode == 2
    lines = [line.partition("boxcar.toml:")[2] for line in result.stderr.splitlines()]
    assert len(lines) == 4
    assert any("unknown key 'cap_hight', did you mean 'cap_height'?" in line for line in lines)
    assert any("unknown key 'lefft', did you mean 'left'?" in line for line in lines)
    assert [int(line.partition(":")[0]) for line in lines] == sorted(int(line.partition(":")[0]) for line in lines)


def test_schema_of_a_diagram_fits_every_template(heraldry_command: Command) -> None:
    import tomllib

    import jsonschema

    schema = json.loads(heraldry_command("schema", "diagram").stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    for path in template_diagrams():
        assert validator.is_valid(tomllib.loads(path.read_text())), path
    assert not validator.is_valid({"kind": "diagram", "side": {}})


@pytest.mark.parametrize("path", template_diagrams(), ids=lambda path: f"{path.parent.name}-{path.stem}")
def test_every_template_is_drawn_as_it_lies_without_a_fault(path: Path) -> None:
    import heraldry
    from heraldry.press.proof_reading import proof_read

    artworks = heraldry.draw(heraldry.load(path))
    for artwork in artworks:
        proof_read(artwork)
    misplaced = {"off the side", "off the panel", "keep-out", "neighbour", "rib", "lost colour", "load limit"}
    assert [found for one in artworks for found in one.findings if found.kind in misplaced] == []


def test_the_largest_text_that_fits_is_told_and_the_free_space_drawn(
    heraldry_command: Command, road_folder: Path
) -> None:
    asked = ("space", road_folder / "boxcar.toml", "--text", "UMBAGOG", "--clear", "2 in full", "--mask", "free.svg")
    told = json.loads(heraldry_command(*asked, "--json").stdout)
    assert told["cap_height_mm"] > 5
    assert told["right_mm"] <= told["left_mm"] + 143.5
    assert (road_folder.parent / "free.svg").read_text().startswith("<?xml")
