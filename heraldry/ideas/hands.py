"""Hands: the letters that a sign painter of an era would take, and lines of them brought to a length.

A line is fitted by the width of its letters, within what looks natural, and then by its tracking; only where that
is not enough it is made lower. Lengths are shares of the herald's width.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from heraldry.geometry.measure import bounds
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.alphabets import LetterParameters
from heraldry.lettering.alphabets.contour import Corner
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting.lay import ink_width

WIDTH_STEP = 0.15
"""Widths are chosen in steps, so that many heralds share their letters; tracking fills what is between two."""
MEASURED_AT = (0.75, 1.05)
"""The length of a line grows evenly with the width of its letters, so that two measures tell all others."""
OVERSHOOT = 0.1
"""Round letters and short tails reach so far beyond the others, in cap heights; only more wants room of its own."""
EASY, MOST_TRACKING = 0.02, 0.22
"""Least tracking that a line is planned with, and the most, in cap heights."""


@dataclass(frozen=True)
class Hand:
    """One of our alphabets and how far it may be drawn out; or an alphabet of the road, by its name, as it is."""

    style: str = "gothic"
    stem: float | None = None
    corner: Corner | None = None
    slant: float = 0.0
    least: float = 0.6
    most: float = 1.2
    named: str = ""
    find: Callable[[str], Alphabet] | None = None

    @property
    def is_fixed(self) -> bool:
        """Whether it is an alphabet that cannot be drawn wider."""
        return bool(self.named)

    def alphabet(self, width: float) -> Alphabet:
        """Its letters at a width."""
        if self.find is not None:
            return self.find(self.named)
        return ours(self.style, LetterParameters(self.stem, width=width, corner=self.corner, slant_deg=self.slant))

    def table(self, width: float) -> dict[str, Any]:
        """The same as a file has it."""
        keys = {"style": self.style, "stem": self.stem, "corner": self.corner}
        numbers = {"slant": self.slant or None, "width": round(width, 3)}
        return {key: value for key, value in {**keys, **numbers}.items() if value is not None}


@dataclass(frozen=True)
class Fitted:
    """A line brought to a length: the width of its letters, cap height, tracking, and the length of its ink."""

    text: str
    hand: Hand
    width: float
    cap: float
    length: float

    @property
    def tracking(self) -> float:
        """White that is added between letters."""
        return (self.length - self.cap * caps_exactly(self.hand, self.text, self.width)) / gaps_in(self.text)


def gaps_in(text: str) -> int:
    """How many gaps there are between letters, at least one."""
    return max(len(text) - 1, 1)


@lru_cache(maxsize=4096)
def caps_exactly(hand: Hand, text: str, width: float) -> float:
    """How long the ink of a line is, in cap heights, without tracking; its letters are drawn for that."""
    return ink_width(hand.alphabet(width).set_line(text, 1.0))


@lru_cache(maxsize=4096)
def overhang(hand: Hand, text: str) -> tuple[float, float]:
    """How far accents stand over the capitals of a line and tails hang below them, in cap heights."""
    box = bounds(hand.alphabet(1.0 if hand.is_fixed else MEASURED_AT[0]).set_line(text, 1.0).outline)
    above, below = box.top - 1.0, -box.bottom
    return (above if above > OVERSHOOT else 0.0), (below if below > OVERSHOOT else 0.0)


def caps_long(hand: Hand, text: str, width: float) -> float:
    """The same, near enough to choose a width by, from two widths that all lines are measured at."""
    if hand.is_fixed:
        return caps_exactly(hand, text, 1.0)
    low, high = MEASURED_AT
    one, other = caps_exactly(hand, text, low), caps_exactly(hand, text, high)
    return one + (other - one) * (width - low) / (high - low)


def fitted(hand: Hand, text: str, cap: float, longest: float, wished: float | None = None) -> Fitted:
    """A line as near to a wished length as looks natural, never longer than the longest; lower if it must be."""
    aim = min(longest, longest if wished is None else wished)
    width = width_for(hand, text, aim / cap)
    return at_width(hand, text, width, cap, longest, aim)


def at_width(hand: Hand, text: str, width: float, cap: float, longest: float, aim: float) -> Fitted:
    """The same with letters of a given width."""
    natural = caps_exactly(hand, text, width) + EASY * gaps_in(text)
    cap = min(cap, longest / natural)
    loose = natural + (MOST_TRACKING - EASY) * gaps_in(text)
    return Fitted(text, hand, width, cap, cap * min(max(aim / cap, natural), loose))


def width_for(hand: Hand, text: str, length: float) -> float:
    """The widest letters of a step that make a line no longer than a length in cap heights."""
    if hand.is_fixed:
        return 1.0
    steps = int((hand.most - hand.least) / WIDTH_STEP + 1e-9)
    widths = [round(hand.least + i * WIDTH_STEP, 3) for i in range(steps, -1, -1)]
    easy = EASY * gaps_in(text)
    return next((width for width in widths if caps_long(hand, text, width) + easy <= length), hand.least)
