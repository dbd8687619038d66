"""The examples of the README are drawn as a reader would: whole files, and pieces put into a herald.

What an example names and the README cannot hold (map files, an old drawing, a font) is laid beside it.
"""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

import heraldry
from heraldry.artwork import Artwork
from heraldry.cli.starting import templates_folder
from heraldry.shapes.drawing import shape as drawing_shape
from heraldry.shapes.region.examples import WATERS

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```toml\n(.*?)^```", README, re.MULTILINE | re.DOTALL)
PIECES = [block for block in BLOCKS if block.startswith("[shape.")]
"""Those that are pieces of a herald."""
FOUNDATION = """
kind = "herald"
road = "road.toml"
scale = "HO"
width = "40 mm"
[let]
radius = "width / 2"
[shape.field]
circle = "radius"
[shape.shield]
shield = "width"
[shape.disc]
circle = "radius"
"""
"""What the pieces stand on: the shapes and lengths that they name."""
LAND = """
[shape.land]
region = ["US-NH"]
height = "18 mm"
place.junction = { lat = 44.09, lon = -71.70 }
place.port     = { lat = 43.08, lon = -70.76 }
"""
OTHER_FILES = {
    'file   = "counties.shp"': 'region = ["US-NH"]',
    'where  = "state = NH and kind = county"': "",
    'where  = "kind = river and rank <= 4"': 'where = "kind = river"',
    'colour  = "#1a1816"': "",
    'part    = "front"': "",
}
"""Lines about files of the reader's own, and the same about files that we have."""


def blocks_with(text: str) -> list[str]:
    return [block for block in BLOCKS if text in block]


def the_block(text: str) -> str:
    (block,) = blocks_with(text)
    return block


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with a railroad, as ``heraldry new`` makes it, and the files that examples name."""
    shutil.copytree(templates_folder() / "umbagog", tmp_path / "mine")
    shutil.copy(WATERS, tmp_path / "mine" / "waters.geojson")
    shutil.copy(Path(drawing_shape.__file__).with_name("lantern.svg"), tmp_path / "mine" / "old.svg")
    return tmp_path / "mine"


def drawn(path: Path, text: str) -> list[Artwork]:
    for line, ours in OTHER_FILES.items():
        text = text.replace(line, ours)
    path.write_text(text, encoding="utf-8")
    return heraldry.draw(heraldry.load(path))


def with_plates(piece: str) -> str:
    """The piece in a herald, with a plate of all its shapes where it has none itself."""
    if "[plate." not in piece:
        names = re.findall(r"^\[shape\.(\w+)\]", piece, re.MULTILINE)
        piece += f'\n[plate.all]\nink = "black"\nart = "{" + ".join(names)}"\n'
    return FOUNDATION + piece


def test_the_road_and_the_herald(folder: Path) -> None:
    (folder / "road.toml").write_text(the_block('kind     = "road"'), encoding="utf-8")
    (artwork,) = drawn(folder / "example.toml", the_block('width = "66 in full"'))
    assert artwork.width_mm == pytest.approx(66 * 25.4 / 87.0857, rel=1e-3)
    assert [plate.name for plate in artwork.plates] == ["spruce"]


def test_the_family(folder: Path) -> None:
    herald = (folder / "rings.toml").read_text(encoding="utf-8").partition("# The same herald in other forms")[0]
    family = drawn(folder / "rings.toml", herald + the_block("[variant.one_ink]"))
    assert [artwork.variant for artwork in family] == ["", "one_ink", "reversed", "outline", "small", "film"]


def test_the_class_of_cars(folder: Path) -> None:
    data = the_block("[data]") + '[item.load]\ntext = "{data.load_limit}"\ncap_height = "4 in full"\nink = "white"\n'
    artworks = drawn(folder / "example.toml", the_block('kind  = "diagram"') + data)
    assert len({artwork.name for artwork in artworks}) == len(artworks) > 2 * 24


def test_the_printer(folder: Path) -> None:
    path = folder / "printer.toml"
    path.write_text(the_block('kind        = "printer"'), encoding="utf-8")
    assert heraldry.load(path).kind == "printer"


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: re.search(r"shape\.(\w+)", piece)[1])
def test_pieces_of_a_herald(folder: Path, piece: str) -> None:
    land = LAND if '"land"' in piece and "[shape.land]" not in piece else ""
    (artwork,) = drawn(folder / "piece.toml", with_plates(land + piece))
    assert all(not plate.outline.is_empty for plate in artwork.plates)


@pytest.mark.parametrize("keys", [line for block in blocks_with("along = {") for line in block.splitlines()])
def test_text_along_paths(folder: Path, keys: str) -> None:
    piece = f'[shape.line]\ntext = "FERN HOLLOW"\ncap_height = "1.4 mm"\n{keys}\n'
    (artwork,) = drawn(folder / "piece.toml", with_plates(piece))
    assert not artwork.plates[0].outline.is_empty


def test_text_round_a_circle(folder: Path) -> None:
    piece = f'[shape.line]\ntext = "FERN HOLLOW"\ncap_height = "1.4 mm"\n{the_block("degrees that it fills")}\n'
    (artwork,) = drawn(folder / "piece.toml", with_plates(piece))
    assert not artwork.plates[0].outline.is_empty


def test_every_block_is_tried() -> None:
    """The alphabets are tried where alphabets are; every other block is drawn above."""
    ways = ("[shape.", "kind ", "[variant.", "[data]", "along = {", "level = ")
    assert [block for block in BLOCKS if not block.startswith(ways)] == [the_block("[alphabet.side]")]


def test_the_alphabets(folder: Path) -> None:
    """All that need no font of the reader's own letter a line."""
    alphabets = the_block("[alphabet.side]").partition("[alphabet.poster]")[0]
    for name in re.findall(r"\[alphabet\.(\w+)\]", alphabets):
        piece = f'[shape.line]\ntext = "Fern Hollow"\ncap_height = "2 mm"\nalphabet = "{name}"\n'
        (artwork,) = drawn(folder / "piece.toml", with_plates(piece) + alphabets)
        assert not artwork.plates[0].outline.is_empty


def test_every_command_that_is_named_exists() -> None:
    from heraldry.cli.main import app

    known = {command.name for command in app.registered_commands}
    named = {one or other for one, other in re.findall(r"^heraldry (\w+)|`heraldry\s(\w+)", README, re.MULTILINE)}
    assert named <= known
    assert named >= known - {"schema", "scales", "regions", "templates", "demo"}


def test_every_picture_and_page_that_is_named_is_there() -> None:
    root = Path(__file__).parent.parent
    assert [name for name in re.findall(r"\]\((out/[^)]+)\)", README) if not (root / name).is_file()] == []
    anchors = {
        re.sub(r"[^\w -]", "", title.lower()).replace(" ", "-") for title in re.findall(r"^#+ (.+)$", README, re.M)
    }
    assert set(re.findall(r"\]\(#([^)]+)\)", README)) <= anchors
