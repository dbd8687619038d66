"""Beaks at the open ends of C, G and S.

An open round is drawn longer than its letter and cut upright at the letter's side; the beak then grows from the cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import CIRCLE_TENSION, Knot, bent, rectangle
from heraldry.lettering.alphabets.ink import cut, join
from heraldry.lettering.alphabets.pen import Pen
from heraldry.lettering.alphabets.serif import LEAST_GAP, LEAST_SERIF
from heraldry.lettering.scan import ink_columns

# Past every letter's ink, in cap heights.
FAR = 2.0

# Chords along curves while the ink at a beak's root is looked for.
FLATTENED = 1e-4

# And no further than this, in widths of the letter.
REACH_OF_WIDTH = 0.16

# How far the root of a curved beak reaches into its round, in brackets.
ROOT_OF_BRACKET = 1.3

# Where a stroke measured upright is so many times as thick as at the beak, it has run into the next one.
MERGED = 1.7

# The curve of a beak's root: where its ruled corner lies on the reach, and how much of each side of it is bent.
CORNER_OF_ROOT, STRAIGHT_OF_BEAK, BENT_OF_ROOT = 0.22, 0.9, 0.72

# The cut end of a round is measured this far from the cut, and its nodes are that near to it.
JUST_INSIDE, ON_THE_CUT = 1e-4, 1e-7


@dataclass(frozen=True)
class BeakEnd:
    """Where a beak stands: its outer side, whether that is the right one, its point, and whether that hangs down."""

    side: float
    rightward: bool
    point: float
    hangs: bool


def beaked(pen: Pen, round_: Outline, end: BeakEnd) -> Outline:
    """A round with a beak at its cut end; without one where the next stroke leaves it no room."""
    out, up = (1.0 if end.rightward else -1.0), (1.0 if end.hangs else -1.0)
    inner = end.side - out * pen.serif.tip
    under, reach = innermost(round_, inner, up), _root_reach(pen, round_, inner, out, up)
    point = _clear(round_, end, up, [end.side - out * JUST_INSIDE, inner, inner - out * reach / 3.0])
    if (under - point) * up < LEAST_SERIF:
        return round_
    knots = [Knot(end.side, _corner(round_, end.side, up)), Knot(end.side, point), Knot(inner, point)]
    if reach > 0.0:
        before, after = abs(under - point) * STRAIGHT_OF_BEAK, reach * BENT_OF_ROOT
        knots.append(Knot(inner - out * reach * CORNER_OF_ROOT, under, before, after, CIRCLE_TENSION))
    inside = [inner - out * reach * part for part in (1.0, 2.0 / 3.0, 1.0 / 3.0, 0.0)[0 if reach > 0.0 else 3 :]]
    knots += [Knot(x, _middle(round_, x, up)) for x in inside]
    return join(round_, Outline.of([bent(knots, "round")]))


def _root_reach(pen: Pen, round_: Outline, inner: float, out: float, up: float) -> float:
    """How far the root of a curved beak reaches: not to where its stroke runs into the next one."""
    longest = max(pen.serif.bracket * ROOT_OF_BRACKET, pen.serif.flare)
    reach = min(longest, bounds(round_).width * REACH_OF_WIDTH)
    for part in (1.0, 0.5):
        if _thick(round_, inner - out * reach * part, up) < MERGED * _thick(round_, inner, up):
            return reach * part
    return 0.0


def _clear(outline: Outline, end: BeakEnd, up: float, places: Sequence[float]) -> float:
    """The point of a beak, drawn back from the next stroke."""
    points = [end.point * up]
    for x in places:
        others = ink_columns(outline, x, FLATTENED)
        following = others[:-1] if up > 0.0 else others[1:]
        points += [edge * up + LEAST_GAP for span in following for edge in span]
    return max(points) * up


def _corner(outline: Outline, side: float, up: float) -> float:
    """The outermost corner of the cut at ``side``: its very node, lest beak and round leave a trace between them."""
    nodes = outline.data[:, 0]
    return float((nodes[np.abs(nodes[:, 0] - side) < ON_THE_CUT, 1] * up).max() * up)


def _limb(outline: Outline, x: float, up: float) -> tuple[float, float]:
    return ink_columns(outline, x, FLATTENED)[-1 if up > 0.0 else 0]


def outermost(outline: Outline, x: float, up: float) -> float:
    """The outer edge of the uppermost (1) or lowest (−1) stroke on an upright line."""
    return _limb(outline, x, up)[1 if up > 0.0 else 0]


def innermost(outline: Outline, x: float, up: float) -> float:
    """The inner edge of that stroke."""
    return _limb(outline, x, up)[0 if up > 0.0 else 1]


def _thick(outline: Outline, x: float, up: float) -> float:
    low, high = _limb(outline, x, up)
    return high - low


def _middle(outline: Outline, x: float, up: float) -> float:
    return sum(_limb(outline, x, up)) / 2.0


def open_round(pen: Pen, right: float, bottom: float, top: float, further: float) -> Outline:
    """A round whose right side is thin, drawn ``further`` than its letter and cut upright at ``right``."""
    thin = pen.ending * pen.side
    whole = pen.bowl(0.0, bottom, right + thin + further, top, sides=(pen.side, thin))
    return cut(whole, rectangle(right, -FAR, FAR, FAR))
