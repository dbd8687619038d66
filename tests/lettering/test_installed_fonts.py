"""The fonts of a computer: where they lie, how fontconfig tells of them, and one that is found by its family."""

from __future__ import annotations

from pathlib import Path

import pytest

from heraldry.errors import LetteringError
from heraldry.lettering.fonts import font_from_family, installed
from heraldry.lettering.fonts.installed import (
    InstalledFace,
    choose_face,
    faces_in_folders,
    font_folders,
    parse_fontconfig,
)
from tests.faces import face_file

FJALLA = face_file("font_fjallaone", "FjallaOne-Regular.ttf")
KNOWN = (
    InstalledFace("Dell Grotesk", "Bold", Path("/f/DellGrotesk-Bold.otf")),
    InstalledFace("Dell Grotesk", "Regular", Path("/f/DellGrotesk-Regular.otf")),
    InstalledFace("Quarry Slab", "Book", Path("/f/quarry.ttc"), 1),
)


def test_a_family_is_found_plain_unless_a_style_is_named():
    assert choose_face(KNOWN, "dell grotesk").style == "Regular"
    assert choose_face(KNOWN, "Dell Grotesk", "bold").path.name == "DellGrotesk-Bold.otf"
    assert choose_face(KNOWN, "Quarry Slab").number == 1


@pytest.mark.parametrize(
    ("family", "style", "said"),
    [
        ("Dell Grotesc", "", "did you mean 'Dell Grotesk'"),
        ("Zzz", "", "known: Dell Grotesk, Quarry Slab"),
        ("Dell Grotesk", "Bolt", "has no style 'Bolt', did you mean 'Bold'"),
    ],
)
def test_the_nearest_family_or_style_is_offered(family, style, said):
    with pytest.raises(LetteringError, match=said):
        choose_face(KNOWN, family, style)


def test_a_computer_without_fonts_says_so():
    with pytest.raises(LetteringError, match="this computer has no fonts"):
        choose_face((), "Dell Grotesk")


def test_fontconfig_is_read_without_instances_and_old_formats():
    listing = (
        "Dell Grotesk\tBold\t/f/DellGrotesk-Bold.otf\t0\tFalse\n"
        "Dell Flex\tLight\t/f/flex.ttf\t131072\tFalse\n"
        "Dell Flex\t\t/f/flex.ttf\t0\tTrue\n"
        "Old\tRoman\t/f/old.pfb\t0\tFalse\n"
    )
    found = list(parse_fontconfig(listing))
    assert [(face.family, face.variable) for face in found] == [("Dell Grotesk", False), ("Dell Flex", True)]


@pytest.mark.parametrize(
    ("platform", "folder"),
    [
        ("linux", "/usr/share/fonts"),
        ("darwin", "/System/Library/Fonts"),
        ("win32", "C:/Windows/Fonts"),
    ],
)
def test_each_system_has_its_folders(platform, folder):
    assert Path(folder) in font_folders(platform, {"HOME": "/home/somebody"})


def test_folders_are_read_and_strangers_in_them_passed_over(tmp_path):
    (tmp_path / "deep").mkdir()
    (tmp_path / "deep/one.ttf").write_bytes(FJALLA.read_bytes())
    (tmp_path / "broken.otf").write_bytes(b"OTTO")
    (tmp_path / "readme.txt").write_text("no font")
    found = list(faces_in_folders([tmp_path, tmp_path / "nowhere"]))
    assert [(face.family, face.style, face.path.name) for face in found] == [("Fjalla One", "Regular", "one.ttf")]


def test_an_installed_family_becomes_an_alphabet(monkeypatch):
    monkeypatch.setattr(installed, "_installed", lambda: (InstalledFace("Fjalla One", "Regular", FJALLA),))
    assert font_from_family("fjalla one").set_line("H", 2.0).glyphs
    with pytest.raises(LetteringError, match="did you mean 'Fjalla One'"):
        font_from_family("Fjala One")
