"""The kit: what a herald is composed with, and the lines of lettering that frames and fields have in common."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from heraldry.ideas.hands import Fitted, Hand, at_width, caps_exactly, fitted, gaps_in, overhang
from heraldry.ideas.land import Land
from heraldry.ideas.sketch import HEAVY, Part, Tone, at, one, share
from heraldry.ideas.words import Words

LEADING = 1.38
"""From base line to base line of stacked lines, in cap heights."""
LOOSE = 0.05
"""Tracking of stacked lines, in cap heights."""
RING_FILLS = (0.6, 0.575, 0.555)
"""Cap heights of letters on a ring, in its band: in the middle of what fills it well, and less for a long text."""


@dataclass(frozen=True)
class Kit:
    """Words, letters, land, and measures of one herald that is being composed."""

    words: Words
    title: Hand
    letters: Hand
    """For the name with what stands beside it, and for initials."""
    land: Land | None
    era: str
    fine: float
    """The fine line, a share of the width; white gaps between ink are as wide."""

    @property
    def heavy(self) -> float:
        """The heavy line."""
        return self.fine * HEAVY


def held(name: str, line: Fitted, tone: Tone, over: Tone | tuple[Tone, ...], **keys: Any) -> Part:
    """A fitted line as a shape, with its alphabet."""
    alphabet = line.hand.named or f"{name}_letters"
    tables = {} if line.hand.named else {alphabet: line.hand.table(line.width)}
    part = one(
        name,
        tone,
        over,
        text=line.text,
        alphabet=alphabet,
        cap_height=share(line.cap),
        tracking=share(line.tracking),
        **keys,
    )
    return Part(part.shapes, part.layers, tables)


def level_line(
    name: str,
    line: Fitted,
    tone: Tone,
    over: Tone | tuple[Tone, ...],
    x: float = 0.0,
    y: float = 0.0,
) -> Part:
    """A line across, its capitals about a height."""
    return held(name, line, tone, over, at=at(x, y), level="middle")


def ring_line(
    name: str,
    text: str,
    hand: Hand,
    cap: float,
    middle: float,
    tone: Tone,
    over: Tone | tuple[Tone, ...],
    most_deg: float,
    wished_deg: float | None = None,
    low: bool = False,
) -> tuple[Part, float]:
    """A line round a circle whose ``middle`` radius goes through the middle of its capitals, and its angle."""
    base = middle + cap / 2 if low else middle - cap / 2
    wished = None if wished_deg is None else math.radians(wished_deg) * base
    line = fitted(hand, text, cap, math.radians(most_deg) * base, wished)
    base = middle + line.cap / 2 if low else middle - line.cap / 2
    keys = {
        "radius": share(base),
        "reads": "inside" if low else "outside",
        "middle": "bottom" if low else "top",
    }
    return held(name, line, tone, over, round=keys), math.degrees(line.length / base)


def leading_of(hand: Hand, texts: tuple[str, ...]) -> float:
    """From base line to base line of stacked lines, in cap heights, with room for accents and tails between them."""
    if len(texts) < 2:
        return LEADING
    reach = [overhang(hand, text) for text in texts]
    return LEADING + max(above for above, _ in reach[1:]) + max(below for _, below in reach[:-1])


def stack(
    prefix: str,
    texts: tuple[str, ...],
    hand: Hand,
    tone: Tone,
    over: Tone | tuple[Tone, ...],
    box: tuple[float, float, float, float],
) -> tuple[Part, tuple[Fitted, ...]]:
    """Lines of one cap height within a box (x, y of its middle, width, height), as large as fits, alike in width."""
    x, y, wide, tall = box
    leading, last = leading_of(hand, texts), len(texts) - 1
    lines = [fitted(hand, text, tall / (1 + leading * last), wide) for text in texts]
    cap, width = min(line.cap for line in lines), min(line.width for line in lines)
    part = Part()
    alike: list[Fitted] = []
    for i, text in enumerate(texts):
        line = at_width(hand, text, width, cap, wide, cap * (caps_exactly(hand, text, width) + LOOSE * gaps_in(text)))
        height = y + (last / 2 - i) * leading * cap
        part = part + level_line(prefix if last == 0 else f"{prefix}_{i + 1}", line, tone, over, x, height)
        alike.append(line)
    return part, tuple(alike)
