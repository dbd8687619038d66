"""Boards: the name on a plate of some outline. Lengths are shares of the width."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

from heraldry.ideas.eras import EARLY, LATE, OLD
from heraldry.ideas.fields import Field, Room
from heraldry.ideas.frames.frame import Composer, Frame, of_initials
from heraldry.ideas.frames.pieces import NAME_CAP, lined, lines_for, second_line
from heraldry.ideas.hands import fitted, overhang
from heraldry.ideas.kit import Kit, leading_of, level_line, stack
from heraldry.ideas.sketch import Part, Sketch, art, at, hidden, one, share

SMALL_OF_LARGE = 0.46
"""Cap height of the small line in that of the large ones."""
WHITE_BELOW = 0.52
"""White over the small line, in cap heights of the large ones."""
LOW = 0.36
"""One line lower than this share of the room is better broken into two."""


def _plate(keys: dict[str, Any]) -> Part:
    """A dark plate with a light line let into it, a little way from its edge."""
    body = hidden("board", **keys) + art("board", "first")
    return body + art("edge(inset(board, fine * 1.5), fine)", "bare", "first")


def _name_lines(kit: Kit, wide: float, tall: float) -> tuple[Part, int]:
    """The body, on two lines where one would be low, with the kind small under it, all about the middle."""
    words, hand = kit.words, kit.title
    one_is_low = fitted(hand, words.body, tall, wide).cap < tall * LOW
    texts = words.lines(2 if one_is_low else 1)
    block = 1 + leading_of(hand, texts) * (len(texts) - 1)
    below = WHITE_BELOW + SMALL_OF_LARGE if words.kind else 0.0
    height = tall / (block + below)
    cap = stack("name", texts, hand, "bare", "first", (0.0, 0.0, wide, height * block))[1][0].cap
    top = cap * (block + below) / 2
    name, _ = stack("name", texts, hand, "bare", "first", (0.0, top - cap * block / 2, wide, cap * block))
    if not words.kind:
        return name, len(texts)
    line = fitted(kit.title, words.kind, cap * SMALL_OF_LARGE, wide * 0.8, wide * 0.62)
    return name + level_line("kind", line, "bare", "first", 0.0, line.cap / 2 - top), len(texts)


@dataclass(frozen=True)
class Board:
    """An outline: its keys, its height, and the width and height of the room for lettering."""

    called: str
    keys: dict[str, Any]
    height: float
    wide: float
    tall: float
    eras: frozenset[str] = frozenset()


BOARDS = {
    "stepped": Board(
        "stepped nameplate", {"cartouche": "width", "height": share(0.44), "ends": "stepped"}, 0.44, 0.66, 0.25,
        OLD,
    ),
    "hollow": Board(
        "hollow nameplate", {"cartouche": "width", "height": share(0.46), "ends": "hollow"}, 0.46, 0.66, 0.26,
        EARLY,
    ),
    "oval": Board("oval", {"oval": "width", "height": share(0.6)}, 0.6, 0.72, 0.28),
    "octagon": Board(
        "octagon", {"octagon": "width", "height": share(0.52), "cut": share(0.13), "rise": share(0.13)},
        0.52, 0.78, 0.3, frozenset({"1920s", "1950s"}),
    ),
    "rounded": Board(
        "rounded plate", {"box": "width", "height": share(0.42), "corner": "round", "radius": share(0.08)}, 0.42, 0.82,
        0.26, LATE,
    ),
    "pointed": Board(
        "pointed plate", {"cartouche": "width", "height": share(0.44), "ends": "pointed"}, 0.44, 0.62, 0.26,
        frozenset({"1920s", "1950s", "1970s"}),
    ),
}  # fmt: skip


def board_frame(name: str) -> Composer:
    """The composer of lettered plates of one outline."""
    board = BOARDS[name]

    def compose(kit: Kit, _field: Field) -> Sketch | None:
        letters, count = _name_lines(kit, board.wide, board.tall)
        return Sketch(
            f"{name} board",
            "none",
            f"{count} lines",
            board.called,
            _plate(board.keys) + letters,
            "name",
            kit.fine,
        )

    return compose


@of_initials
def slanted(kit: Kit, _field: Field) -> Sketch | None:
    """A leaning box with the initials large and the name on a bar beneath it."""
    tall, lean = 0.36, 16.0
    leaning = kit.letters if kit.letters.is_fixed else replace(kit.letters, slant=lean)
    wide = 1.0 - tall * math.tan(math.radians(lean))
    box = one("board", "first", box=share(wide), height=share(tall), slant=lean, centre=at(0.0, 0.11))
    line = fitted(leaning, kit.words.initials, tall * 0.6, 0.66)
    letters = level_line("initials", line, "bare", "first", 0.0, 0.11)
    under = fitted(kit.title, kit.words.body, 0.105, 0.92, 0.9)
    gap = kit.fine * 2 + overhang(kit.title, kit.words.body)[0] * under.cap
    name = level_line("name", under, "second", (), -0.03, 0.11 - tall / 2 - gap - under.cap / 2)
    return Sketch(
        "slanted box", "initials", "line under", "leaning box, initials", box + letters + name, "initials", kit.fine,
    )  # fmt: skip


def keystone(kit: Kit, field: Field) -> Sketch | None:
    """A wedge with the name across its head and a field under it."""
    tall, head_tall = 0.98, 0.31
    foot_tall = tall - head_tall - kit.fine
    head = hidden("head", box="width", height=share(head_tall), centre=at(0.0, (tall - head_tall) / 2))
    wedge = hidden(
        "wedge", keystone=share(0.93), height=share(foot_tall), foot=share(0.6), centre=at(0.0, (foot_tall - tall) / 2)
    )
    lines = head + wedge + lined("head", "second") + lined("wedge", "first")
    name, _ = stack("name", kit.words.lines(2), kit.title, "bare", "second", (0.0, (tall - head_tall) / 2, 0.8, 0.17))
    room = Room(0.0, -0.16, 0.56, 0.5, ink="bare", ground="first")
    made = field.draw(kit, room)
    if made is None:
        return None
    return Sketch(
        "keystone", field.name, "chief of 2", f"keystone, {field.called}", lines + name + made.part, made.subject,
        kit.fine, inside=made.names,
    )  # fmt: skip


def diamond(kit: Kit, field: Field) -> Sketch | None:
    """A diamond with the name on a band across it, an emblem above and the kind of company below."""
    tall = 0.86
    stone = hidden("stone", diamond="width", height=share(tall))
    body = stone + lined("stone", "first")
    band = hidden("band", box="width", height=share(0.2)) + art("(offset(band, fine) & stone)", "bare", "first")
    band = band + art("(band & stone)", "second")
    name = fitted(kit.title, kit.words.body, NAME_CAP, 0.72)
    letters = level_line("name", name, "bare", "second")
    room = Room(0.0, 0.205, 0.3, 0.16, ink="bare", ground="first")
    made = field.draw(kit, room)
    if made is None:
        return None
    low = second_line(kit, field, 0.06, 0.36, 0.36, -0.175)
    return Sketch(
        "diamond", field.name, "band", f"diamond, {field.called}", body + band + letters + made.part + low, "name",
        kit.fine, inside=made.names,
    )  # fmt: skip


def picture(kit: Kit, field: Field) -> Sketch | None:
    """A field over the name, both on one panel with round corners."""
    tall, bar = 0.88, 0.27
    panel = hidden("panel", box="width", height=share(tall), corner="round", radius=share(0.07))
    under = hidden("under", box="width * 2", height=share(bar), centre=at(0.0, -tall / 2 + bar / 2))
    body = panel + under + art("edge(panel, heavy)", "first") + art("(panel & under)", "first")
    count = lines_for(kit, 0.84, 0.075)
    box = (0.0, -tall / 2 + bar / 2 + kit.fine / 2, 0.84, 0.15)
    name, _ = stack("name", kit.words.lines(count), kit.title, "bare", "first", box)
    room = Room(0.0, bar / 2 - kit.heavy / 4, 0.78, tall - bar - kit.heavy - 0.11, ink="second")
    made = field.draw(kit, room)
    if made is None:
        return None
    return Sketch(
        "picture", field.name, f"{count} lines", f"panel, {field.called}", body + name + made.part, made.subject,
        kit.fine, inside=made.names,
    )  # fmt: skip


STONE_FIELDS = ("land", "initials", "one large", "stacked", "star", "pine", "pines", "wheel", "track")
FRAMES = (
    *(Frame(f"{name} board", "board", board_frame(name), (), board.eras) for name, board in BOARDS.items()),
    Frame("slanted box", "slanted", slanted, (), LATE),
    Frame("keystone", "keystone", keystone, STONE_FIELDS, EARLY),
    Frame("diamond", "diamond", diamond, ("star", "pines", "mountains", "initials", "arrow")),
    Frame("picture", "picture", picture, ("land", "pines", "mountains", "mountains and water", "sunrise", "track")),
)
