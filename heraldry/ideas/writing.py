"""A sketch as an ordinary herald file: TOML as a modeller would write it, one table a shape, lengths by the width."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from heraldry.describe.toml_text import quoted
from heraldry.ideas.sketch import HEAVY, INKS, Sketch, Tone, plate_art


@dataclass(frozen=True)
class Sheet:
    """What every herald of one page says of itself, and the names of its inks."""

    road_file: str
    width: str
    scale: str
    on: str
    film: str
    inks: Mapping[Tone, str]
    ink_tables: Mapping[str, Mapping[str, Any]]
    """Inks that stand in the herald's own file, because no road has them."""


def herald_toml(sketch: Sketch, sheet: Sheet, title: str) -> str:
    """The whole file."""
    heads = [("kind", "herald"), ("road", sheet.road_file), ("scale", sheet.scale), ("width", sheet.width)]
    heads += [("on", sheet.on), ("film", sheet.film if sheet.film != "clear" else "")]
    blocks = [f"# {title}", *_aligned((key, value) for key, value in heads if value), ""]
    blocks += _table("let", {"fine": f"width * {sketch.fine:g}", "heavy": f"fine * {HEAVY:g}"})
    used = [tone for tone in INKS if plate_art(sketch.part.layers, tone)]
    for name, keys in sheet.ink_tables.items():
        if name in {sheet.inks[tone] for tone in used}:
            blocks += _table(f"ink.{name}", keys)
    for name, keys in sketch.part.alphabets.items():
        blocks += _table(f"alphabet.{name}", keys)
    for name, keys in sketch.part.shapes.items():
        blocks += _table(f"shape.{name}", keys)
    for tone in used:
        ink = sheet.inks[tone]
        blocks += _table(f"plate.{ink}", {"ink": ink, "art": plate_art(sketch.part.layers, tone)})
    return "\n".join(blocks)


def road_toml(name: str, initials: str, inks: Mapping[str, Mapping[str, Any]]) -> str:
    """The road file of a railroad that has none yet."""
    blocks = [*_aligned([("kind", "road"), ("name", name), ("initials", initials)]), ""]
    for ink, table in inks.items():
        blocks += _table(f"ink.{ink}", table)
    return "\n".join(blocks)


def _table(name: str, keys: Mapping[str, Any]) -> list[str]:
    return [f"[{name}]", *_aligned(keys.items()), ""]


def _aligned(pairs: Iterable[tuple[str, Any]]) -> list[str]:
    rows = list(pairs)
    wide = max(len(key) for key, _ in rows)
    return [f"{key.ljust(wide)} = {value_toml(value)}" for key, value in rows]


def value_toml(value: Any) -> str:
    """A value as TOML has it.

    >>> value_toml({"radius": "width / 2", "fit": 90.0}), value_toml([0.0, True])
    ('{ radius = "width / 2", fit = 90 }', '[0, true]')
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return f"{value:g}"
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{key} = {value_toml(inner)}" for key, inner in value.items()) + " }"
    return "[" + ", ".join(value_toml(inner) for inner in value) + "]"
