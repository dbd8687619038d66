"""What is said before printing: each kind of finding on a herald that has it, and none on one that has not."""

from __future__ import annotations

from pathlib import Path

import pytest

import heraldry
from heraldry.resolve.limits import PrinterLimits

FILE = """kind = "herald"
{page}
on = "{paint}"
film = "{film}"
[ink.ink]
colour = "{ink}"
opaque = {opaque}
[ink.white]
colour = "#ffffff"
opaque = true
[shape.bar]
box = 10
height = 4
[shape.slit]
box = "{slit}"
height = 8
[shape.hair]
box = 12
height = "{hair}"
[shape.word]
text = "DRY"
cap_height = "{cap}"
at = [0, -8]
{plates}
"""
PLATES = '[plate.ink]\nink = "ink"\nart = "bar - slit + hair + word"'
OVER_WHITE = '[plate.white]\nink = "white"\nart = "bar + hair + word"\n' + PLATES
SOUND = {
    "page": "", "paint": "#d9d4c5", "film": "clear", "ink": "#202020", "opaque": "false",
    "slit": "1 mm", "hair": "1 mm", "cap": "3 mm", "plates": PLATES,
}  # fmt: skip


def found(folder: Path, printer: PrinterLimits | None = None, **changes: str) -> dict[str, heraldry.Finding]:
    path = folder / "one.toml"
    path.write_text(FILE.format(**{**SOUND, **changes}), encoding="utf-8")
    description = heraldry.load(path)
    artworks = heraldry.draw(description, printer=printer) if printer else heraldry.draw(description)
    return {finding.kind: finding for finding in artworks[0].findings}


def test_a_sound_herald_has_no_findings(tmp_path: Path) -> None:
    assert found(tmp_path) == {}


def test_a_fine_line_is_measured_where_it_is(tmp_path: Path) -> None:
    finding = found(tmp_path, hair="0.06 mm")["fine line"]
    assert finding.measured_mm == pytest.approx(0.06, abs=0.002)
    assert finding.plate == "ink"
    assert abs(finding.place.y) < 0.1


def test_a_narrow_gap_is_measured_where_it_is(tmp_path: Path) -> None:
    finding = found(tmp_path, slit="0.15 mm")["narrow gap"]
    assert finding.measured_mm == pytest.approx(0.15, abs=0.002)
    assert abs(finding.place.x) < 0.1


def test_a_finer_printer_lets_it_pass(tmp_path: Path) -> None:
    assert found(tmp_path, PrinterLimits("fine", 0.03, 0.05), hair="0.06 mm", slit="0.15 mm") == {}


@pytest.mark.parametrize(
    ("changes", "kinds"),
    [
        # Ochre on dark green, worked out in light: lost on clear film, kept on white, and over white ink.
        ({"paint": "#1f3b2d", "ink": "#e8b400"}, {"lost colour"}),
        ({"paint": "#1f3b2d", "ink": "#e8b400", "film": "white"}, set()),
        ({"paint": "#1f3b2d", "ink": "#e8b400", "plates": OVER_WHITE}, set()),
        ({"paint": "#1f3b2d", "ink": "#e8b400", "opaque": "true"}, set()),
        ({"paint": "#c9a06c", "ink": "#1e4ac0"}, {"changed colour"}),
        ({"ink": "#fefefe"}, {"white ink", "lost colour"}),
        ({"ink": "#fefefe", "opaque": "true", "paint": "#1f3b2d"}, set()),
        ({"cap": "0.3 mm"}, {"small lettering", "fine line", "narrow gap"}),
        ({"page": 'width = "20 mm"'}, {"size"}),
        ({"page": 'width = "12 mm"'}, set()),
    ],
)
def test_what_is_said_of_what(tmp_path: Path, changes: dict[str, str], kinds: set[str]) -> None:
    told = set(found(tmp_path, **changes))
    assert kinds <= told
    assert told <= kinds | {"fine line", "narrow gap"}


def test_lettering_that_lies_on_lettering_is_told(tmp_path: Path) -> None:
    second = '[shape.other]\ntext = "WET"\ncap_height = 3\nat = [1, -8]\n' + PLATES.replace("word", "word + other")
    finding = found(tmp_path, plates=second)["crowded lettering"]
    assert "word and other" in finding.message


def test_lettering_that_is_on_no_plate_is_not_judged(tmp_path: Path) -> None:
    without = '[plate.ink]\nink = "ink"\nart = "bar - slit + hair"'
    assert "small lettering" in found(tmp_path, cap="0.3 mm")
    assert "small lettering" not in found(tmp_path, cap="0.3 mm", plates=without)


def test_a_derived_form_is_judged_on_its_own_paint(tmp_path: Path) -> None:
    forms = PLATES + '\n[variant.night]\non = "#101010"\nform = "one ink"\nink = "ink"'
    path = tmp_path / "one.toml"
    path.write_text(FILE.format(**{**SOUND, "plates": forms}), encoding="utf-8")
    itself, night = heraldry.draw(heraldry.load(path))
    assert [finding.kind for finding in itself.findings] == []
    assert [finding.kind for finding in night.findings] == ["lost colour"]


def test_a_note_of_several_shapes_is_told_once(tmp_path: Path) -> None:
    (tmp_path / "old.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9"><text>A</text>'
        '<path fill="#f00" d="M0 0h4v9h-4z"/><path fill="#00f" d="M4 0h5v9h-5z"/></svg>',
        encoding="utf-8",
    )
    halves = "".join(f'[shape.{name}]\ndrawing = "old.svg"\ncolour = "{colour}"\n' for name, colour in HALVES.items())
    finding = found(tmp_path, plates=halves + PLATES.replace("hair", "left + right + hair"))["note"]
    assert finding.message.startswith("left, right: ")
    assert "text" in finding.message


MAP = """[shape.land]
region = "US-VT"
height = 8
place.town = {{ lat = 44.26, lon = {lon} }}
[shape.line]
route = ["land.town", {{ lat = 43.61, lon = {lon} }}]
width = 0.5
"""
"""A town of Vermont, and another south of it; both are west of Greenwich."""


def test_places_far_off_the_land_of_their_map_are_told(tmp_path: Path) -> None:
    plates = PLATES.replace("hair", "land + line + hair")
    assert "far place" not in found(tmp_path, plates=MAP.format(lon=-72.58) + plates)
    finding = found(tmp_path, plates=MAP.format(lon=72.58) + plates)["far place"]
    assert finding.severity == "note"
    assert finding.measured_mm > 100  # another continent, where Vermont is 8 mm high
    assert "north and east are above 0" in finding.message


HALVES = {"left": "#ff0000", "right": "#0000ff"}
