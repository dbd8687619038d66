"""What an alphabet's table in a file comes to: fonts with their wishes, and ours."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from heraldry.describe.description import load
from heraldry.errors import DescriptionError
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.fonts import FontAlphabet
from heraldry.resolve.alphabets import alphabet_finder
from heraldry.resolve.yardstick import Yardstick
from heraldry.units import Ruler
from tests.box_font import built_font
from tests.faces import face_file

LATO = "Lato-Regular.ttf"

Find = Callable[[str], Alphabet]


@pytest.fixture
def find(tmp_path: Path) -> Find:
    def found(keys: str) -> Alphabet:
        built_font(tmp_path)
        shutil.copy(face_file("font_lato", LATO), tmp_path / LATO)
        path = tmp_path / "road.toml"
        path.write_text(f'kind = "road"\nname = "Fen"\n[alphabet.asked]\n{keys}\n')
        return alphabet_finder(load(path), Yardstick({}, Ruler("mm", None), 1.0))("asked")

    return found


def test_stem_and_width_of_a_variable_font_are_solved(find: Find) -> None:
    alphabet = find('file = "boxes.ttf"\nstem = 0.2\nwidth = 1.2')
    assert isinstance(alphabet, FontAlphabet)
    assert alphabet.stem == pytest.approx(0.2, abs=1e-5)
    assert alphabet.h_width == pytest.approx(1.2 * 600 / 700, abs=1e-5)


def test_a_font_is_spaced_by_its_own_kerning_or_by_white(find: Find) -> None:
    own, optical = (find(f'file = "{LATO}"{more}') for more in ("", "\noptical = true"))
    assert not own.optical
    assert optical.optical
    places = [[glyph.x_mm for glyph in one.set_line("LATVIA", 7.0).glyphs] for one in (own, optical)]
    assert places[0] != pytest.approx(places[1], abs=0.01)
    assert places[0] == pytest.approx(places[1], abs=0.12 * 7.0)


@pytest.mark.parametrize("key", ["optical = true", 'features = ["ss01"]', "axes = { wght = 4 }", "licensed = true"])
def test_what_is_a_matter_of_fonts_is_refused_to_ours(find: Find, key: str) -> None:
    with pytest.raises(DescriptionError, match=f"has {key.split()[0]}, which is a matter of fonts: leave it out"):
        find(f'style = "gothic"\n{key}')


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ('style = "gothic"\nslant = 89', "road.toml:5: alphabet.asked.slant: slant 89 was asked, its sound range is"),
        ('stem = 0.2\nstyle = "gothik"', "road.toml:5: alphabet.asked.style: no style is called 'gothik'"),
        ("stem = 0.2", "road.toml:3: alphabet.asked: alphabet 'asked' needs one of style, file or family"),
    ],
)
def test_a_fault_stands_at_the_key_of_the_table(find: Find, keys: str, told: str) -> None:
    with pytest.raises(DescriptionError, match=told):
        find(keys)
