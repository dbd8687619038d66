"""Shields: the name in the chief along the top, a field under it. Lengths are shares of the width."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heraldry.ideas.eras import LATE, OLD
from heraldry.ideas.fields import Field, Room
from heraldry.ideas.frames.frame import Composer, Frame
from heraldry.ideas.kit import Kit, stack
from heraldry.ideas.sketch import Part, Sketch, Tone, art, at, hidden, share

SHIELD_FIELDS = (
    "land", "land and initials", "initials", "one large", "stacked", "star", "compass", "pines", "pine", "mountains",
    "mountains and water", "sunrise", "wheel", "track", "interlaced",
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Blank:
    """A shield's outline: its keys, its height, and the rooms for name and field, measured down from its top."""

    called: str
    keys: dict[str, Any]
    height: float
    foot: float
    """How far down the chief ends."""
    name_box: tuple[float, float, float]
    """How far down the name's middle is, how wide and how high the name may be."""
    field_box: tuple[float, float, float]
    """How far down the field's middle is, how wide and how high it may be."""
    eras: frozenset[str] = frozenset()


BLANKS = {
    "flat": Blank(
        called="shield",
        keys={"shield": "width", "top": "flat"},
        height=1.16,
        foot=0.345,
        name_box=(0.205, 0.74, 0.2),
        field_box=(0.68, 0.9, 0.64),
    ),
    "arched": Blank(
        called="arched shield",
        keys={"shield": "width", "top": "arched", "rise": share(0.1)},
        height=1.16,
        foot=0.4,
        name_box=(0.262, 0.74, 0.19),
        field_box=(0.71, 0.88, 0.6),
        eras=frozenset({"1920s", "1950s", "1970s"}),
    ),
    "hollow": Blank(
        called="hollow shield",
        keys={"shield": "width", "top": "hollow", "rise": share(0.09)},
        height=1.18,
        foot=0.4,
        name_box=(0.268, 0.74, 0.18),
        field_box=(0.725, 0.88, 0.61),
        eras=OLD,
    ),
    "round": Blank(
        called="round shield",
        keys={"crest": "width", "outline": "round"},
        height=1.12,
        foot=0.34,
        name_box=(0.2, 0.74, 0.2),
        field_box=(0.69, 0.94, 0.68),
        eras=frozenset({"1920s", "1950s", "1970s"}),
    ),
    "scooped": Blank(
        called="scooped shield",
        keys={"crest": "width", "outline": "scooped"},
        height=1.16,
        foot=0.44,
        name_box=(0.28, 0.62, 0.19),
        field_box=(0.745, 0.92, 0.58),
        eras=OLD,
    ),
    "pointed": Blank(
        called="pointed shield",
        keys={"crest": "width", "outline": "pointed"},
        height=1.1,
        foot=0.33,
        name_box=(0.195, 0.74, 0.19),
        field_box=(0.63, 0.88, 0.56),
        eras=LATE,
    ),
    "square": Blank(
        called="square shield",
        keys={"crest": "width", "outline": "square"},
        height=1.12,
        foot=0.34,
        name_box=(0.2, 0.74, 0.2),
        field_box=(0.68, 1.0, 0.67),
        eras=OLD,
    ),
}


def shield_frame(blank_name: str, is_dark: bool) -> Composer:
    """The composer of shields of one outline: dark with a coloured chief, or light with a heavy line round it."""
    blank = BLANKS[blank_name]

    def compose(kit: Kit, field: Field) -> Sketch | None:
        top = blank.height / 2
        body = _dark_body(blank, top) if is_dark else _light_body(blank, top)
        name, lines = _name(kit, blank, top, "bare", "second" if is_dark else "first")
        down, wide, tall = blank.field_box
        ink: Tone = "bare" if is_dark else "second"
        room = Room(0.0, top - down, wide, tall, is_round=True, ink=ink, ground="first" if is_dark else "bare")
        made = field.draw(kit, room)
        if made is None or lines == 0:
            return None
        manner = "dark" if is_dark else "light"
        return Sketch(
            f"{blank_name} shield {manner}",
            field.name,
            f"chief of {lines}",
            f"{blank.called}, {field.called}",
            body + name + made.part,
            made.subject,
            kit.fine,
            inside=made.names,
        )

    return compose


def _outline(blank: Blank) -> Part:
    return hidden("shield", **blank.keys, height=share(blank.height))


def _below(blank: Blank, top: float) -> Part:
    """Everything under the chief."""
    return hidden("below", box="width * 2", height="width * 2", centre=at(0.0, top - blank.foot - 1.0))


def _dark_body(blank: Blank, top: float) -> Part:
    """A line round it, the chief in the second ink, all else in the first."""
    inner = "inset(shield, fine * 2)"
    return (
        _outline(blank)
        + _below(blank, top)
        + art("edge(shield, fine)", "first")
        + art(f"({inner} & below)", "first")
        + art(f"({inner} - offset(below, fine))", "second")
    )


def _light_body(blank: Blank, top: float) -> Part:
    """A heavy line round it and the chief in the first ink."""
    return (
        _outline(blank)
        + _below(blank, top)
        + art("edge(shield, heavy)", "first")
        + art("(inset(shield, heavy + fine) - below)", "first")
    )


def _name(kit: Kit, blank: Blank, top: float, tone: Tone, over: Tone) -> tuple[Part, int]:
    """The name in the chief: on one line where that stands high enough, else on two."""
    down, wide, tall = blank.name_box
    words = kit.words
    if words.body == words.initials:
        return Part(), 0
    part, lines = stack("name", (words.body,), kit.title, tone, over, (0.0, top - down, wide, tall * 0.8))
    if lines[0].cap < tall * 0.52:
        part, lines = stack("name", words.lines(2), kit.title, tone, over, (0.0, top - down, wide, tall))
    return part, len(lines)


FRAMES = tuple(
    Frame(
        f"{name} shield {'dark' if is_dark else 'light'}",
        "shield",
        shield_frame(name, is_dark),
        SHIELD_FIELDS,
        blank.eras,
    )
    for name, blank in BLANKS.items()
    for is_dark in (True, False)
)
