"""Spread heralds: a middle with something reaching out on both sides: wings, a ribbon, a board across."""

from __future__ import annotations

from heraldry.ideas.eras import EARLY, OLD
from heraldry.ideas.fields import Field, Room
from heraldry.ideas.frames.frame import Frame
from heraldry.ideas.frames.pieces import board_across, lined_disc, second_line
from heraldry.ideas.hands import fitted
from heraldry.ideas.kit import Kit, level_line
from heraldry.ideas.sketch import Part, Sketch, art, at, hidden, one, share

LEAST_LAND = 0.58
"""A land lower than this is lost behind a board."""
HIGH_BOARD, IN_HIGH_BOARD = 0.21, 0.112
"""How high a board across a land or a wheel is, and one line of a name on it."""


def disc_and_board(kit: Kit, field: Field) -> Sketch | None:
    """A disc, the name on a board across it that reaches beyond, a field above and the kind of company below."""
    radius, tall = 0.4, 0.2
    board, count = board_across(kit, tall, "second", "first", 0.118)
    middle = (radius - 2 * kit.fine + tall / 2 + kit.fine) / 2 + 0.002
    made = field.draw(kit, Room(0.0, middle, 0.42, 0.185, ink="bare", ground="first"))
    if made is None:
        return None
    low = second_line(kit, field, 0.08, 0.4, 0.36, -middle + 0.03)
    part = lined_disc(kit, radius) + board + made.part + low
    return Sketch(
        "disc and board", field.name, f"board of {count}", f"disc and board, {field.called}", part, "name", kit.fine,
    )  # fmt: skip


def land_and_board(kit: Kit, field: Field) -> Sketch | None:
    """The land itself, large, with the name on a board across it."""
    if kit.land is None or not kit.land.is_handy:
        return None
    tall = min(0.86, 0.8 / kit.land.wide)
    if tall < LEAST_LAND:
        return None
    made = field.draw(kit, Room(0.0, 0.0, 0.84, tall, ink="second"))
    if made is None:
        return None
    board, count = board_across(kit, HIGH_BOARD, "first", "second", IN_HIGH_BOARD)
    return Sketch(
        "land and board", field.name, f"board of {count}", "the land with a board", made.part + board,
        "land", kit.fine,
    )  # fmt: skip


def winged(kit: Kit, field: Field) -> Sketch | None:
    """Spread feathers on both sides of a disc, the name on a bar beneath."""
    radius = 0.15
    wings = one(
        "wings",
        "second",
        wings="width",
        height=share(0.34),
        feathers=5,
        rows=1,
        apart=share(2 * radius + 2 * kit.fine),
        centre=at(0.0, 0.03),
    )
    return _with_wings(kit, field, wings, radius, "winged disc", "disc with wings")


def speed_winged(kit: Kit, field: Field) -> Sketch | None:
    """Straight wings of bars on both sides of a disc, the name beneath."""
    radius = 0.15
    wings = one(
        "wings",
        "second",
        speed_wings="width",
        height=share(0.24),
        count=4,
        apart=share(2 * radius + 2 * kit.fine),
        step=share(0.055),
        gap="fine * 1.2",
        taper=0.5,
        centre=at(0.0, 0.0),
    )
    return _with_wings(kit, field, wings, radius, "speed wings", "disc with speed wings")


def _with_wings(kit: Kit, field: Field, wings: Part, radius: float, frame: str, called: str) -> Sketch | None:
    disc = lined_disc(kit, radius)
    inside = 2 * (radius - 3.2 * kit.fine)
    made = field.draw(kit, Room(0.0, 0.0, inside, inside, is_round=True, ink="bare", ground="first"))
    if made is None:
        return None
    line = fitted(kit.title, kit.words.body, 0.1, 0.94, 0.86)
    y = -radius - kit.fine * 2.2 - line.cap / 2
    name = level_line("name", line, "first", (), 0.0, y)
    return Sketch(
        frame, field.name, "line under", f"{called}, {field.called}", wings + disc + made.part + name, made.subject,
        kit.fine, inside=made.names,
    )  # fmt: skip


def ribbon_under(kit: Kit, field: Field) -> Sketch | None:
    """An emblem that stands free over a ribbon with the name."""
    tall = 0.19
    ribbon = one(
        "ribbon",
        "first",
        ribbon="width",
        height=share(tall),
        tail=share(0.11),
        fold=share(0.065),
        drop=share(0.06),
        gap="fine * 0.8",
        centre=at(0.0, -0.27),
    )
    line = fitted(kit.title, kit.words.body, tall * 0.54, 0.7)
    name = level_line("name", line, "bare", "first", 0.0, -0.27)
    high = 0.52
    made = field.draw(kit, Room(0.0, -0.27 + tall / 2 + 0.04 + high / 2, 0.72, high, ink="second"))
    if made is None:
        return None
    return Sketch(
        "ribbon", field.name, "ribbon", f"{field.called} over a ribbon", made.part + ribbon + name, made.subject,
        kit.fine, inside=made.names,
    )  # fmt: skip


def disc_and_ribbon(kit: Kit, field: Field) -> Sketch | None:
    """A disc with a field, and over its foot a ribbon that hangs with it and bears the name."""
    radius, tall = 0.4, 0.165
    disc = one("rim", "second", ring=share(radius), width="heavy", centre=at(0.0, 0.03)) + one(
        "disc", "second", circle=share(radius - kit.heavy - kit.fine), centre=at(0.0, 0.03)
    )
    ribbon = hidden(
        "ribbon",
        ribbon="width",
        height=share(tall),
        tail=share(0.1),
        fold=share(0.06),
        drop=share(0.06),
        gap="fine * 0.8",
        centre=at(0.0, -0.19),
    )
    margin = art("offset(filled(ribbon), fine)", "bare", "second")
    line = fitted(kit.title, kit.words.body, tall * 0.58, 0.71)
    name = level_line("name", line, "bare", "first", 0.0, -0.19)
    made = field.draw(kit, Room(0.0, 0.125, 0.5, 0.38, ink="bare", ground="second"))
    if made is None:
        return None
    part = disc + made.part + ribbon + margin + art("ribbon", "first") + name
    return Sketch(
        "disc and ribbon", field.name, "ribbon", f"disc and ribbon, {field.called}", part, made.subject, kit.fine,
        inside=made.names,
    )  # fmt: skip


def wheel_and_board(kit: Kit, _field: Field) -> Sketch | None:
    """A driving wheel with the name on a board across it."""
    wheel = one(
        "wheel",
        "second",
        wheel=share(0.4),
        spokes=14,
        rim=share(0.055),
        hub=share(0.13),
        bore=share(0.04),
        spoke=share(0.026),
    )
    board, count = board_across(kit, HIGH_BOARD, "first", "second", IN_HIGH_BOARD)
    return Sketch(
        "wheel and board", "wheel", f"board of {count}", "wheel and board", wheel + board,
        "wheel", kit.fine,
    )  # fmt: skip


OVER_RIBBON = ("land", "pines", "mountains", "compass", "wheel", "sunrise", "star", "mountains and water")
ON_BOARD = ("star", "pines", "mountains", "initials", "land", "track")
IN_DISC = ("initials", "star", "wheel", "land")
FRAMES = (
    Frame("disc and board", "disc and board", disc_and_board, ON_BOARD),
    Frame("land and board", "land and board", land_and_board, ("land",)),
    Frame("winged disc", "wings", winged, IN_DISC, EARLY),
    Frame("speed wings", "wings", speed_winged, IN_DISC, frozenset({"1920s", "1950s"})),
    Frame("ribbon", "ribbon", ribbon_under, OVER_RIBBON, EARLY),
    Frame("disc and ribbon", "ribbon", disc_and_ribbon, (*OVER_RIBBON, "initials", "one large"), EARLY),
    Frame("wheel and board", "disc and board", wheel_and_board, (), OLD),
)
