"""A description is loaded whole, or every fault of it is told with its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from heraldry.describe.description import load
from heraldry.describe.schema import json_schema
from heraldry.errors import DescriptionError, HeraldryError
from heraldry.resolve.herald import resolve_herald

GOOD = """kind = "herald"
width = "24 mm"

[ink.black]
colour = "#101010"

[shape.disc]
circle = "width / 2"

[plate.black]
ink = "black"
art = "disc"
"""


def written(folder: Path, text: str, name: str = "one.toml") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def faults(folder: Path, text: str) -> list[str]:
    """The faults of a text, without the folder they stand in."""
    with pytest.raises(DescriptionError) as caught:
        load(written(folder, text))
    return [str(fault).replace(f"{folder}/", "") for fault in caught.value.faults]


def test_a_good_file_is_loaded_with_its_lines(tmp_path: Path) -> None:
    description = load(written(tmp_path, GOOD))
    assert (description.kind, description.stem, description.folder) == ("herald", "one", tmp_path)
    assert description.fault(("shape", "disc", "circle"), "x").line == 8


def test_all_faults_of_a_file_are_told_at_once_in_order(tmp_path: Path) -> None:
    text = GOOD.replace("circle =", "cirle =").replace('ink = "black"', 'inc = "black"').replace("#101010", "black")
    assert faults(tmp_path, text) == [
        "one.toml:5: 'ink.black.colour' cannot be read, found 'black', it may be of the form #rrggbb, six hexadecimal digits",
        "one.toml:7: 'shape.disc' names no kind of shape, found {'cirle': 'width / 2'}, "
        "one of its keys must be a kind; did you mean 'circle' or 'crest'?",
        "one.toml:10: 'plate.black.ink' is missing, every table of this kind needs it",
        "one.toml:11: unknown key 'inc', did you mean 'ink'?",
    ]


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (("width =", "widht ="), "one.toml:2: unknown key 'widht', did you mean 'width'?"),
        (('"24 mm"', "true"), "one.toml:2: 'width' cannot be read, found True, it may be"),
        (("[shape.disc]", "[shape.9disc]"), "one.toml:7: 'shape.9disc' cannot be read"),
        (
            ('circle = "width / 2"', 'circle = "width / 2"\ncenter = "origin"'),
            "unknown key 'center', did you mean 'centre'?",
        ),
        (('circle = "width / 2"', "circle = 1\ncentre = { x = 1 }"), "one.toml:9: 'shape.disc.centre.y' is missing"),
        (
            ('circle = "width / 2"', "circle = 1\ncentre = [1]"),
            "one.toml:9: 'shape.disc.centre' cannot be read, found [1]",
        ),
        (
            ('kind = "herald"', 'kind = "herold"'),
            "one.toml:1: unknown kind, found 'herold', did you mean 'herald' or 'road'?",
        ),
        (
            ('kind = "herald"', 'kind = "herald"\nroad = "no.toml"'),
            "one.toml:2: the road file is not there, found 'no.toml'",
        ),
        (('kind = "herald"', 'kind = "herald"\nroad = "one.toml"'), "it must say kind"),
        (
            ('kind = "herald"', 'kind = "herald"\nfilm = "clr"'),
            "one.toml:2: 'film' cannot be read, found 'clr', it may be one of",
        ),
        (('art = "disc"', 'art = ""'), "found '', it may be text that is not empty"),
        (("circle =", "radius ="), "one of its keys must be a kind; did you mean 'circle' or 'ring'?"),
        (('circle = "width / 2"', "circle = 1\ncentre = { lat = 91, lon = 0 }"), "it may be a number of at most 90"),
    ],
)
def test_a_fault_says_where_what_and_what_would_be_right(tmp_path: Path, change: tuple[str, str], told: str) -> None:
    found = faults(tmp_path, GOOD.replace(*change))
    assert any(told in fault for fault in found), found


@pytest.mark.parametrize("scale", ["48", "48.0", '"1:48"'])
def test_a_scale_may_be_a_bare_number(tmp_path: Path, scale: str) -> None:
    text = GOOD.replace('"24 mm"', f'"66 in full"\nscale = {scale}')
    herald = resolve_herald(load(written(tmp_path, text)))
    assert herald.width_mm == pytest.approx(66 * 25.4 / 48)


def test_one_code_of_a_region_needs_no_brackets(tmp_path: Path) -> None:
    text = GOOD.replace('circle = "width / 2"', 'region = "US-VT"')
    assert resolve_herald(load(written(tmp_path, text))).shapes[0].arguments["region"] == ("US-VT",)


def test_a_forgotten_full_is_a_fault_of_its_key(tmp_path: Path) -> None:
    description = load(written(tmp_path, GOOD.replace('"24 mm"', '"20 mm"\nheight = "66 in"\nscale = "HO"')))
    with pytest.raises(DescriptionError, match=r"one\.toml:3: height: no herald is 1,676 mm high, 146 m on the real"):
        resolve_herald(description)


def test_a_file_gives_the_road_and_may_put_texts_over_it(tmp_path: Path) -> None:
    written(tmp_path, 'kind = "road"\nname = "Long Pond"\nmark = "LP"\n[word]\na = "1"\nb = "2"\n', "road.toml")
    text = '[road]\nfile = "road.toml"\nname = "Long Pond & Western"\n[road.word]\nb = "3"\n'
    identity = load(written(tmp_path, GOOD + text)).identity
    assert (identity.name, identity.mark, identity.word) == ("Long Pond & Western", "LP", {"a": "1", "b": "3"})


def test_own_inks_win_over_those_of_the_road(tmp_path: Path) -> None:
    written(
        tmp_path,
        'kind = "road"\nname = "X"\n[ink.black]\ncolour = "#000000"\n[ink.red]\ncolour = "#ff0000"\n',
        "road.toml",
    )
    inks = load(written(tmp_path, GOOD.replace("width", 'road = "road.toml"\nwidth', 1))).store("ink")
    assert {name: ink.colour for name, (_, ink) in inks.items()} == {"black": "#101010", "red": "#ff0000"}


def test_an_unknown_kind_has_no_schema() -> None:
    with pytest.raises(HeraldryError, match="did you mean 'herald'"):
        json_schema("heralds")
