"""What ``new --drawing`` writes: a railroad and a herald begun with an old drawing, one ink for each of its colours."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from heraldry.describe.toml_text import quoted
from heraldry.errors import HeraldryError

ROAD_FILE, HERALD_FILE = "road.toml", "herald.toml"

COLOUR_WORDS = {
    "black": "#000000",
    "white": "#ffffff",
    "grey": "#808080",
    "red": "#c0202a",
    "orange": "#e07b20",
    "yellow": "#f2c500",
    "cream": "#efe3c2",
    "brown": "#6b3f24",
    "green": "#1f6b3a",
    "blue": "#1f4fa0",
    "purple": "#6a2c85",
    "pink": "#e58aa5",
}
"""Words for inks, each with a colour that it usually means; an ink is called by the nearest."""

USUAL_MM = 25.0
NARROWEST_MM, WIDEST_MM = 2.0, 1000.0
"""A drawing that gives itself another width than between these means pixels or metres, and begins at the usual one."""

MANY_COLOURS = 8
"""Railroads painted with few; a drawing with more was shaded, or made of tints."""

WIDTH_DECIMALS = 2
"""Of the finished width in millimetres, as a person would write it."""


@dataclass(frozen=True)
class Begun:
    """The files of a railroad begun with a drawing, and what of the drawing could not be kept."""

    files: dict[str, bytes]
    inks: tuple[str, ...]
    notes: tuple[str, ...]


def begun_with(drawing: Path) -> Begun:
    """Read a drawing and write down a road and a herald for it; raises HeraldryError where it cannot be read."""
    from heraldry.shapes.drawing import read_drawing, traced_at_own_size  # imported where used: start-up time

    if drawing.name in (ROAD_FILE, HERALD_FILE):
        raise HeraldryError(f"{drawing.name} is what one of the new files will be called: rename the drawing first")
    picture = read_drawing(drawing)
    traced = traced_at_own_size(picture)
    colours = tuple(traced.areas)
    inks = _named(colours)
    files = {
        ROAD_FILE: _road(drawing, inks, colours).encode(),
        HERALD_FILE: _herald(drawing, inks, colours, _sensible(traced.width_mm)).encode(),
        drawing.name: drawing.read_bytes(),
    }
    return Begun(files, inks, (*picture.notes, *_too_many(colours)))


def _too_many(colours: Sequence[str]) -> tuple[str, ...]:
    if len(colours) <= MANY_COLOURS:
        return ()
    return (f"it has {len(colours)} colours, and each is a plate of its own: make fewer of them in the drawing",)


def _sensible(width_mm: float) -> float:
    return width_mm if NARROWEST_MM <= width_mm <= WIDEST_MM else USUAL_MM


def _road(drawing: Path, inks: Sequence[str], colours: Sequence[str]) -> str:
    name = drawing.stem.replace("_", " ").replace("-", " ").strip() or "My Railroad"
    lines = [
        "# A railroad of your own: what all its drawings share",
        'kind = "road"',
        f"name = {quoted(name.title())}             # call it what you like",
    ]
    for ink, colour in zip(inks, colours, strict=True):
        lines += ["", f"[ink.{ink}]", f'colour = "{colour}"']
        if ink == "white":
            lines.append("opaque = true                  # white hides what is under it")
    return "\n".join(lines) + "\n"


def _herald(drawing: Path, inks: Sequence[str], colours: Sequence[str], width_mm: float) -> str:
    lines = [
        f"# Drawn after {quoted(drawing.name)}: a shape and a plate for each of its colours",
        'kind  = "herald"',
        f'road  = "{ROAD_FILE}"',
        'scale = "HO"                # the scale that this width is meant for',
        f'width = "{round(width_mm, WIDTH_DECIMALS):g} mm"           # the finished width; every shape follows it',
    ]
    for ink, colour in zip(inks, colours, strict=True):
        lines += [
            "",
            f"[shape.{ink}]",
            f"drawing = {quoted(drawing.name)}",
            f'colour  = "{colour}"',
            'width   = "width"',
        ]
    for ink in inks:
        lines += ["", f"[plate.{ink}]", f'ink = "{ink}"', f'art = "{ink}"']
    return "\n".join(lines) + "\n"


def _named(colours: Sequence[str]) -> tuple[str, ...]:
    """A word for each colour, with a number from the second of a kind on."""
    names: list[str] = []
    for colour in colours:
        word = _word(colour)
        number = sum(name.partition("_")[0] == word for name in names) + 1
        names.append(word if number == 1 else f"{word}_{number}")
    return tuple(names)


def _word(colour: str) -> str:
    from coloraide import Color  # imported where used: start-up time

    asked = Color(colour)
    return min(COLOUR_WORDS, key=lambda word: asked.distance(COLOUR_WORDS[word], space="oklab"))
