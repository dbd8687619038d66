"""Lettering that is not seen as it was set: cut, covered, piled up, or too large; and none where all is well."""

from __future__ import annotations

from pathlib import Path

import pytest

import heraldry

FILE = """kind = "herald"
{page}
[ink.ink]
colour = "#202020"
[shape.disc]
circle = "20 mm"
[shape.stripe]
box = "60 mm"
height = "1 mm"
centre = [0, 4]
[shape.word]
text = "DRY"
cap_height = "{cap}"
tracking = "{tracking}"
at = ["{right}", 0]
[shape.both]
art = "word + stripe"
[plate.ink]
ink = "ink"
art = "{art}"
{more}
"""
SOUND = {"page": "", "cap": "8 mm", "tracking": "0 mm", "right": "0 mm", "art": "disc - word", "more": ""}
OTHER_PLATE = '[plate.other]\nink = "ink"\nart = "word - disc"'


def told(folder: Path, **changes: str) -> dict[str, heraldry.Finding]:
    path = folder / "one.toml"
    path.write_text(FILE.format(**{**SOUND, **changes}), encoding="utf-8")
    found = heraldry.draw(heraldry.load(path))[0].findings
    return {finding.kind: finding for finding in found if finding.kind.endswith("lettering")}


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"art": "word"},
        {"art": "word & disc"},
        {"art": "disc - offset(word, 1 mm) + word"},
        {"art": "stripe_through(word, 1, 30, 0.2)"},
        {"right": "14 mm", "more": OTHER_PLATE},  # half bare on the disc, half in ink beside it
    ],
)
def test_whole_lettering_is_not_judged(tmp_path: Path, changes: dict[str, str]) -> None:
    assert told(tmp_path, **changes) == {}


@pytest.mark.parametrize(
    ("changes", "place_x"),
    [
        ({"right": "14 mm"}, 21.0),  # knocked out, beyond the disc
        ({"right": "14 mm", "art": "word & disc"}, 21.0),
        ({"art": "word - stripe"}, 0.0),
        ({"art": "both"}, 0.0),
        ({"art": "disc + word"}, 0.0),
    ],
)
def test_cut_lettering_is_told_where_it_is(tmp_path: Path, changes: dict[str, str], place_x: float) -> None:
    found = told(tmp_path, **changes)
    assert set(found) == {"cut lettering"}
    assert found["cut lettering"].place.x == pytest.approx(place_x, abs=4.0)


def test_the_share_of_the_edge_that_is_cut_is_measured(tmp_path: Path) -> None:
    """An I is a plain upright of a stem's width w and height h; of its edge a stripe of 1 mm takes 2 mm; w is 1.36 mm."""
    path = tmp_path / "one.toml"
    text = FILE.format(**{**SOUND, "art": "word - stripe"}).replace("DRY", "I")
    path.write_text(text, encoding="utf-8")
    finding = next(one for one in heraldry.draw(heraldry.load(path))[0].findings if one.kind == "cut lettering")
    assert float(finding.message.partition("%")[0]) == pytest.approx(100 * 2 / (2 * (8 + 1.36)), abs=1)
    assert abs(finding.place.y - 4.0) <= 0.5


def test_letters_piled_up_by_their_tracking_are_told(tmp_path: Path) -> None:
    assert "too tight" in told(tmp_path, art="word", tracking="-3 mm")["crowded lettering"].message
    assert told(tmp_path, art="word", tracking="-0.2 mm") == {}


def test_lettering_larger_than_its_herald_is_told(tmp_path: Path) -> None:
    finding = told(tmp_path, page='width = "40 mm"', cap="30 mm")["large lettering"]
    assert "40.00 mm: a length is one on the model unless it says full" in finding.message
