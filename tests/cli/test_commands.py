"""The real command, end to end, as a user runs it."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import jsonschema
import pytest

from heraldry.cli.starting import template_heralds, templates_folder

Command = Callable[..., subprocess.CompletedProcess[str]]

FORMS = ("", "-one_ink", "-reversed", "-outline", "-small")
"""The herald of ``rings.toml`` and its variants."""


def test_draw_writes_every_output_and_a_manifest(heraldry_command: Command, road_folder: Path) -> None:
    result = heraldry_command("draw", road_folder / "rings.toml", "--as", "svg,pdf,eps,png,dxf", "--out", "made")
    assert result.returncode == 0, result.stderr
    made = road_folder.parent / "made"
    assert sorted(path.name for path in made.iterdir()) == [
        "manifest.json",
        *sorted(f"rings{form}.{kind}" for form in FORMS for kind in ("dxf", "eps", "pdf", "png", "svg")),
    ]
    manifest = json.loads((made / "manifest.json").read_text())
    assert {file["format"] for file in manifest["files"]} == {"svg", "pdf", "eps", "png", "dxf"}
    assert [artwork.get("variant", "") for artwork in manifest["artworks"]] == [form[1:] for form in FORMS]
    # 66 in at 3.5 mm to the foot: 66 / 12 · 3.5 mm, worked by hand.
    assert manifest["artworks"][0]["width_mm"] == 19.25
    assert [plate["name"] for plate in manifest["artworks"][0]["plates"]] == ["spruce", "black"]


def test_other_scales_are_the_same_drawing(heraldry_command: Command, road_folder: Path) -> None:
    result = heraldry_command(
        "draw", road_folder / "rings.toml", "--scale", "N", "--scale", "1:48", "--as", "svg", "--json",
        "--variant", "herald",
    )  # fmt: skip
    manifest = json.loads(result.stdout)
    widths = {artwork["scale"]: artwork["width_mm"] for artwork in manifest["artworks"]}
    # 66 in full: 66 · 25.4 mm over the ratio, worked by hand.
    assert widths == {
        "N": pytest.approx(1676.4 / 160, abs=1e-6),
        "1:48": pytest.approx(1676.4 / 48, abs=1e-6),
    }


def test_json_on_standard_output_is_the_manifest(heraldry_command: Command, road_folder: Path) -> None:
    result = heraldry_command("draw", road_folder / "band.toml", "--as", "svg", "--json")
    assert json.loads(result.stdout) == json.loads((road_folder.parent / "out" / "manifest.json").read_text())


def test_check_exits_with_0_1_or_2_and_writes_nothing(heraldry_command: Command, road_folder: Path) -> None:
    band = road_folder / "band.toml"
    assert heraldry_command("check", band).returncode == 0
    band.write_text(band.read_text().replace('film  = "white"', 'film = "clear"'))
    noted = heraldry_command("check", band)
    assert "changed colour" in noted.stderr
    assert noted.returncode == 0  # a note is told, but nothing need be done about it
    band.write_text(band.read_text().replace('on    = "boxcar"', 'on = "evergreen"'))
    lost = heraldry_command("check", band)
    assert lost.returncode == 1
    assert "lost colour" in lost.stderr
    band.write_text(band.read_text().replace('ink = "spruce"', 'ink = "sprce"'))
    wrong = heraldry_command("check", band)
    assert wrong.returncode == 2
    assert wrong.stderr.count("\n") == 1
    assert "did you mean 'spruce'?" in wrong.stderr
    assert not (road_folder.parent / "out").exists()


def test_a_name_a_state_and_a_colour_are_changed(heraldry_command: Command, road_folder: Path) -> None:
    before = heraldry_command("draw", road_folder / "rings.toml", "--as", "svg", "--json")
    road, herald = road_folder / "road.toml", road_folder / "rings.toml"
    road.write_text(
        road.read_text().replace("UMBAGOG & MAGALLOWAY", "KENNEBAGO NORTHERN").replace("#1e4a36", "#7a1f1f")
    )
    herald.write_text(herald.read_text().replace('["US-NH", "US-ME"]', '["33007", "US-ME"]'))
    after = heraldry_command("draw", road_folder / "rings.toml", "--as", "svg", "--json")
    assert after.returncode == 0, after.stderr
    old, new = (json.loads(run.stdout)["artworks"][0]["plates"] for run in (before, after))
    assert new[0]["colour"] == "#7a1f1f"
    assert new[0]["area_mm2"] != old[0]["area_mm2"]
    assert new[1]["area_mm2"] != old[1]["area_mm2"]


def test_a_bad_file_leaves_the_good_one_before_it(heraldry_command: Command, road_folder: Path) -> None:
    rings = road_folder / "rings.toml"
    assert heraldry_command("draw", rings, "--as", "svg").returncode == 0
    good = (road_folder.parent / "out" / "rings.svg").read_bytes()
    rings.write_text(rings.read_text().replace('ring  = "radius"', 'ring = "radios"'))
    assert heraldry_command("draw", rings, "--as", "svg").returncode == 2
    assert (road_folder.parent / "out" / "rings.svg").read_bytes() == good


def test_a_road_is_not_drawn(heraldry_command: Command, road_folder: Path) -> None:
    result = heraldry_command("draw", road_folder / "road.toml")
    assert result.returncode == 2
    assert "referred to, not drawn" in result.stderr


def test_new_makes_a_folder_that_draws_as_it_lies(heraldry_command: Command, tmp_path: Path) -> None:
    made = heraldry_command("new", "mine", "--from", "hekla")
    assert made.returncode == 0, made.stderr
    assert heraldry_command("draw", "mine/shield.toml", "--as", "svg").returncode == 0
    again = heraldry_command("new", "mine")
    assert again.returncode == 2
    assert "not empty" in again.stderr
    assert heraldry_command("new", "other", "--from", "hekle").stderr.strip().endswith("did you mean 'hekla'?")
    assert "no template is called ''" in heraldry_command("new", "other", "--from", "").stderr
    assert "no paper is called ''" in heraldry_command("shapes", "--paper", "").stderr


def test_what_libraries_log_is_not_told() -> None:
    program = "import logging, heraldry.cli.main as door; door.app = logging.getLogger('ezdxf').warning; "
    loud = program + "door.app('loud')"
    quiet = program + "app, door.app = door.app, lambda: app('loud'); door.main()"
    said = [subprocess.run([sys.executable, "-c", one], capture_output=True, text=True).stderr for one in (loud, quiet)]
    assert [words.strip() for words in said] == ["loud", ""]


@pytest.mark.parametrize("kind", ["herald", "road", "printer"])
def test_schema_is_a_json_schema_that_the_templates_fit(heraldry_command: Command, kind: str) -> None:
    import tomllib

    schema = json.loads(heraldry_command("schema", kind).stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    files = [tomllib.loads(path.read_text()) for path in templates_folder().glob("*/*.toml")]
    of_kind = [data for data in files if data["kind"] == kind]
    assert all(validator.is_valid(data) for data in of_kind)
    assert not validator.is_valid({"kind": kind, "colour": "red"})


def test_lists_in_words_and_json(heraldry_command: Command) -> None:
    assert "1:87.086" in heraldry_command("scales").stdout
    names = [row["name"] for row in json.loads(heraldry_command("scales", "--json").stdout)]
    assert {"Z", "N", "British N", "TT", "HO", "OO", "S", "O", "O 1:45", "O 1:43.5", "Scale 1"} <= set(names)
    found = json.loads(heraldry_command("regions", "coos", "--json").stdout)
    assert {"33007", "41011"} <= {row["code"] for row in found}
    assert len(json.loads(heraldry_command("templates", "--json").stdout)) >= len(template_heralds())
    assert heraldry_command("regions", "qqqqq").returncode == 2


@pytest.mark.parametrize("output", ["svg", "pdf", "eps", "png", "dxf"])
def test_the_same_bytes_twice_in_any_folder_and_with_any_hash_seed(
    heraldry_command: Command, road_folder: Path, tmp_path: Path, output: str
) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    first = heraldry_command("draw", road_folder / "rings.toml", "--as", output, "--out", "one", PYTHONHASHSEED="1")
    second = heraldry_command(
        "draw", "../umbagog/rings.toml", "--as", output, "--out", "two", cwd=elsewhere, PYTHONHASHSEED="2"
    )
    assert (first.returncode, second.returncode) == (0, 0)
    one, two = tmp_path / "one", elsewhere / "two"
    assert (one / f"rings.{output}").read_bytes() == (two / f"rings.{output}").read_bytes()
    assert (one / "manifest.json").read_bytes() == (two / "manifest.json").read_bytes()


def test_only_some_variants_are_drawn_and_checked(heraldry_command: Command, road_folder: Path) -> None:
    rings = road_folder / "rings.toml"
    drawn = heraldry_command("draw", rings, "--as", "svg", "--variant", "small", "--variant", "herald", "--json")
    assert [artwork["name"] for artwork in json.loads(drawn.stdout)["artworks"]] == ["rings small", "rings"]
    checked = heraldry_command("check", rings, "--json", "--variant", "small")
    assert checked.returncode == 0
    assert [artwork["variant"] for artwork in json.loads(checked.stdout)["artworks"]] == ["small"]
    wrong = heraldry_command("check", rings, "--variant", "smal")
    assert wrong.returncode == 2
    assert "no variant is called 'smal', did you mean 'small'" in wrong.stderr
    none = heraldry_command("check", rings, road_folder / "band.toml", "--variant", "small")
    assert none.returncode == 2
    assert "band.toml has none" in none.stderr


def test_check_looks_at_every_variant(heraldry_command: Command, road_folder: Path) -> None:
    band = road_folder / "band.toml"
    assert heraldry_command("check", band).returncode == 0
    band.write_text(band.read_text() + '\n[variant.dark]\non = "evergreen"\nfilm = "clear"\n')
    lost = heraldry_command("check", band)
    assert lost.returncode == 1
    assert "band dark: lost colour" in lost.stderr
