"""Some dozens of spoiled diagrams: each is drawn or refused in words, whatever stands in it."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

import pytest

import heraldry
from heraldry.cli.starting import template_diagrams, templates_folder
from heraldry.errors import HeraldryError

FILES_PER_TEMPLATE = 8
WORDS = (
    *(
        '"',
        "'",
        "[",
        "]",
        "{",
        "=",
        "\n",
        "-1",
        "0",
        "1e308",
        "true",
        '"1 / 0"',
        '"left + right"',
        '"A"',
        "301-",
        "ribs",
    ),
    *('"{car.number}"', '"{car.}"', '"{data.capacity}"', '"herald.left"', '"number.left"', '"mark.left * mark.left"'),
    *('"door.left"', '"-3 in full"', '"40000 in full"', "fit = true\n", "floor = 3\n", "faces = 'front'\n", "area"),
    *('mirrors = "left"\n', "[data]\n", "[side.left]\n", "[item.number]\n", 'sides = ["up"]\n', 'panel = "Q"\n'),
    *("clear = -1\n", "longest = 1\n", "spares = 2\n", "marking = 'wheel dot'\n", 'herald = "boxcar.toml"\n'),
    *('herald = "none.toml"\n', 'x = "x"\n'),
)


def spoiled(text: str, dice: random.Random) -> str:
    """One to three random cuts, doublings, exchanges and insertions."""
    for _ in range(dice.randint(1, 3)):
        at, lines = dice.randrange(len(text)), text.splitlines(keepends=True)
        row = dice.randrange(len(lines))
        way = dice.randrange(4)
        if way == 0:
            text = text[:at] + text[at + dice.randint(1, 25) :]
        elif way == 1:
            text = text[:at] + dice.choice(WORDS) + text[at:]
        elif way == 2:
            text = "".join([*lines[: row + 1], dice.choice(lines), *lines[row + 1 :]])
        elif "=" in lines[row]:
            lines[row] = lines[row].partition("=")[0] + "= " + dice.choice(WORDS) + "\n"
            text = "".join(lines)
    return text


@pytest.mark.parametrize("path", template_diagrams(), ids=lambda path: f"{path.parent.name}-{path.stem}")
def test_spoiled_diagrams_are_drawn_or_refused_in_words(path: Path, tmp_path: Path) -> None:
    folder = Path(shutil.copytree(templates_folder() / path.parent.name, tmp_path / "road"))
    dice = random.Random(path.stem)
    refused = 0
    for _ in range(FILES_PER_TEMPLATE):
        text = spoiled(path.read_text(), dice)
        (folder / path.name).write_text(text.replace("301-325", "301-302"))
        try:
            heraldry.draw(heraldry.load(folder / path.name))
        except HeraldryError as refusal:
            refused += 1
            assert str(refusal).strip()
            assert "Traceback" not in str(refusal)
    assert refused > 0
