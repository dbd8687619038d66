"""Initials: in a line, as a monogram with one letter large, stacked, interlaced."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heraldry.ideas.eras import OLD
from heraldry.ideas.fields.made import Field, Made
from heraldry.ideas.fields.room import Room
from heraldry.ideas.hands import Hand, caps_exactly, caps_long, fitted
from heraldry.ideas.kit import Kit, level_line
from heraldry.ideas.sketch import at, one, share
from heraldry.lettering.monogram.arrangements import SMALL_BESIDE

LETTER_WIDTH = 1.0
"""Initials are drawn at their natural width where the room does not ask for another."""
AIR_CAPS = 0.06
"""Tracking of initials, in cap heights."""
FILL = 0.86
MONOGRAM_GAP = 0.13
"""White between the letters of a monogram, in cap heights: somewhat more than it is at most."""


def letters_wide(kit: Kit, text: str) -> float:
    """How long initials are, in cap heights, at their natural width."""
    width = min(LETTER_WIDTH, kit.letters.most)
    return caps_long(kit.letters, text, width) + AIR_CAPS * max(len(text) - 1, 0)


def initials(kit: Kit, room: Room) -> Made | None:
    """The initials in a line, as large as fits."""
    text = kit.words.initials
    wide = letters_wide(kit, text)
    width, cap = room.fitting(1 / wide, FILL if room.is_round else 1.0)
    cap = min(cap, room.height * (0.62 if room.is_round else 0.9))
    line = fitted(kit.letters, text, cap, width, cap * wide if room.is_round else width)
    return Made(level_line("initials", line, room.ink, room.over, room.x, room.y), "initials")


@dataclass(frozen=True)
class Arrangement:
    """A style of monogram: for how many letters, how high it is for its width, how far it fills its room.

    ``stem`` is the thickness of its uprights in heights of the whole.
    """

    style: str
    fewest: int
    most: int
    aspect: Callable[[Hand, str], float]
    stem: Callable[[int], float]
    fill: float = 0.94


def _large_aspect(hand: Hand, text: str) -> float:
    """One large letter between two small ones."""
    sides = sum(caps_exactly(hand, sign, 1.0) for sign in (text[0], text[-1]))
    return 1 / (caps_exactly(hand, text[1:-1], 1.0) + SMALL_BESIDE * sides + 2 * MONOGRAM_GAP)


def _stacked_aspect(hand: Hand, text: str) -> float:
    """Letters one over another."""
    return (len(text) + MONOGRAM_GAP * (len(text) - 1)) / max(caps_exactly(hand, sign, 1.0) for sign in text)


LARGE = Arrangement("large", 3, 3, _large_aspect, lambda count: 0.16, 0.88)  # noqa: ARG005
STACKED = Arrangement("stacked", 2, 3, _stacked_aspect, lambda count: 0.19 / (count + MONOGRAM_GAP * (count - 1)), 0.86)
INTERLACED = Arrangement("interlaced", 2, 2, lambda hand, text: 1.0, lambda count: 0.1)  # noqa: ARG005


def _monogram(kind: Arrangement) -> Callable[[Kit, Room], Made | None]:
    """The field of a monogram of one arrangement; letters alone, for no joiner stands well in one."""

    def draw(kit: Kit, room: Room) -> Made | None:
        text = kit.words.initials
        if kit.letters.is_fixed or not text.isalnum() or not kind.fewest <= len(text) <= kind.most:
            return None
        _, tall = room.fitting(kind.aspect(Hand(kit.letters.style), text), kind.fill)
        part = one(
            "monogram",
            room.ink,
            room.over,
            monogram=text,
            height=share(tall),
            style=kind.style,
            alphabet=kit.letters.style,
            stem=share(tall * kind.stem(len(text))),
            centre=at(room.x, room.y),
        )
        return Made(part, "monogram")

    return draw


FIELDS = (
    Field("initials", "initials", initials, says_initials=True),
    Field("one large", "one initial large", _monogram(LARGE), says_initials=True),
    Field("stacked", "initials stacked", _monogram(STACKED), says_initials=True),
    Field("interlaced", "initials interlaced", _monogram(INTERLACED), OLD, says_initials=True),
)
