"""Artworks on disk, and the manifest beside them."""

import json
from dataclasses import replace

import pytest

from heraldry.artwork import Artwork, Plate
from heraldry.errors import PressError
from heraldry.geometry.outline import EMPTY
from heraldry.press import OUTPUTS, render, write, write_all

MAGIC = {
    "svg": b"<?xml",
    "pdf": b"%PDF-1.6",
    "eps": b"%!PS-Adobe-3.0 EPSF-3.0",
    "png": b"\x89PNG",
    "dxf": b"  0\nSECTION",
}


@pytest.mark.parametrize("name", OUTPUTS)
def test_the_suffix_says_what_is_written(artwork, tmp_path, name):
    path = write(artwork, tmp_path / f"herald.{name.upper()}")
    assert path.read_bytes().startswith(MAGIC[name])
    assert path.read_bytes() == render(artwork, name)
    assert [path.name for path in tmp_path.iterdir()] == [f"herald.{name.upper()}"]


def test_a_text_is_a_path_as_well(artwork, tmp_path):
    assert write(artwork, f"{tmp_path}/new folder/a.svg").read_bytes().startswith(b"<?xml")


@pytest.mark.parametrize(
    ("file", "message"),
    [
        ("a.svgg", "an output 'svgg' is unknown, did you mean 'svg'?"),
        ("a.doc", "an output 'doc' is unknown, known: dxf, eps, pdf, png, svg"),
        ("herald", "a suffix says what to write: .svg, .pdf, .eps, .png, .dxf"),
    ],
)
def test_an_unknown_suffix_is_told_with_what_would_be_right(artwork, tmp_path, file, message):
    with pytest.raises(PressError) as caught:
        write(artwork, tmp_path / file)
    assert message in str(caught.value)
    assert list(tmp_path.iterdir()) == []


@pytest.fixture
def manifest(artwork, tmp_path):
    twin = replace(artwork, name="herald OF the road", findings=())
    made = write_all([artwork, twin], tmp_path / "out", ["svg", ".PDF", "png", "svg"], dpi=300)
    text = (tmp_path / "out" / "manifest.json").read_text("utf-8")
    assert text == made.to_json()
    return json.loads(text)


def test_the_manifest_names_every_file_and_no_other(manifest, tmp_path):
    named = [entry["file"] for entry in manifest["files"]]
    assert named == [
        "Herald-of-the-road.svg", "Herald-of-the-road.pdf", "Herald-of-the-road.png",
        "herald-OF-the-road-2.svg", "herald-OF-the-road-2.pdf", "herald-OF-the-road-2.png",
    ]  # fmt: skip
    there = {path.name for path in (tmp_path / "out").iterdir()}
    assert there == {*named, "manifest.json"}


def test_the_manifest_says_how_large_each_file_is(manifest):
    svg, pdf, png = manifest["files"][:3]
    assert (svg["format"], svg["artwork"]) == ("svg", "Herald of the road")
    assert (svg["width_mm"], svg["height_mm"]) == (pdf["width_mm"], pdf["height_mm"]) == (24.0, 20.0)
    assert "dpi" not in svg
    assert png["dpi"] == 300
    # 284 × 237 whole pixels of 25.4 / 300 mm
    assert (png["width_mm"], png["height_mm"]) == (24.0453, 20.066)


def test_the_manifest_says_what_each_artwork_is_made_of(manifest, artwork, areas):
    entry = manifest["artworks"][0]
    assert (entry["name"], entry["scale"], entry["paint"]) == ("Herald of the road", "HO", "#1f3b2d")
    assert [plate["name"] for plate in entry["plates"]] == ["under", "ring", "title"]
    for plate, told in zip(artwork.plates, entry["plates"], strict=True):
        assert told["area_mm2"] == pytest.approx(areas[plate.name], abs=1e-4)
        assert told["nodes"] == plate.outline.node_count
        assert (told["ink"], told["colour"]) == (plate.ink.name, plate.ink.colour_hex)
    assert [plate["opaque"] for plate in entry["plates"]] == [True, False, False]


def test_the_manifest_tells_the_findings(manifest):
    assert manifest["artworks"][0]["findings"] == [
        {
            "kind": "fine line", "severity": "warning", "message": "a line of 0.08 mm is finer than 0.1 mm",
            "plate": "title", "place_mm": [1.0, 2.0], "measured_mm": 0.08, "limit_mm": 0.1,
        }
    ]  # fmt: skip
    assert manifest["artworks"][1]["findings"] == []


def test_the_last_artwork_at_fault_leaves_the_folder_as_it_was(artwork, tmp_path):
    write_all([artwork], tmp_path, ["svg"])
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    changed = replace(artwork, plates=artwork.plates[:1])
    unsound = Artwork("unsound", artwork.page, (Plate("p", artwork.plates[0].ink, EMPTY),))
    with pytest.raises(PressError, match="unsound: plate 'p' is empty"):
        write_all([changed, unsound], tmp_path, ["svg", "pdf"])
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


def test_an_unknown_format_writes_nothing(artwork, tmp_path):
    with pytest.raises(PressError, match="did you mean 'pdf'"):
        write_all([artwork], tmp_path / "out", ["svg", "pfd"])
    assert not (tmp_path / "out").exists()


def test_no_artwork_is_a_manifest_of_nothing(tmp_path):
    assert write_all([], tmp_path, ["svg"]).as_dict() == {"files": [], "artworks": []}
