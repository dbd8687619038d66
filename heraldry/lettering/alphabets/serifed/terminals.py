"""Beaks at the open ends of C, G and S.

An open round is drawn longer than its letter and cut upright at the letter's side; the beak then grows from the cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

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

# The cut end of a round is measured this far from the cut.
JUST_INSIDE = 1e-4


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
    inner, under = end.side - out * pen.serif.tip, innermost(round_, end.side - out * pen.serif.tip, up)
    reach = min(max(pen.serif.bracket * ROOT_OF_BRACKET, pen.serif.flare), bounds(round_).width * REACH_OF_WIDTH)
    point = _clear(round_, end, up, [end.side - out * JUST_INSIDE, inner, inner - out * reach / 3.0])
    if (under - point) * up < LEAST_SERIF:
        return round_
    top = outermost(round_, end.side - out * JUST_INSIDE, up)
    root = inner - out * reach
    knots = (
        Knot(end.side, top), Knot(end.side, point), Knot(inner, point),
        Knot(inner - out * reach * 0.22, under, abs(under - point) * 0.9, reach * 0.72, CIRCLE_TENSION),
        *(Knot(x, _middle(round_, x, up)) for x in (root, root + out * reach / 3, inner - out * reach / 3, inner)),
    )  # fmt: skip
    square = (Knot(end.side, top), Knot(end.side, point), Knot(inner, point), Knot(inner, _middle(round_, inner, up)))
    return join(round_, Outline.of([bent(knots if reach > 0.0 else square, "round")]))


def _clear(outline: Outline, end: BeakEnd, up: float, places: Sequence[float]) -> float:
    """The point of a beak, drawn back from the next stroke."""
    points = [end.point * up]
    for x in places:
        others = ink_columns(outline, x, FLATTENED)
        following = others[:-1] if up > 0.0 else others[1:]
        points += [edge * up + LEAST_GAP for span in following for edge in span]
    return max(points) * up


def _limb(outline: Outline, x: float, up: float) -> tuple[float, float]:
    return ink_columns(outline, x, FLATTENED)[-1 if up > 0.0 else 0]


def outermost(outline: Outline, x: float, up: float) -> float:
    """The outer edge of the uppermost (1) or lowest (−1) stroke on an upright line."""
    return _limb(outline, x, up)[1 if up > 0.0 else 0]


def innermost(outline: Outline, x: float, up: float) -> float:
    """The inner edge of that stroke."""
    return _limb(outline, x, up)[0 if up > 0.0 else 1]


def _middle(outline: Outline, x: float, up: float) -> float:
    return sum(_limb(outline, x, up)) / 2.0


def open_round(pen: Pen, right: float, bottom: float, top: float, further: float) -> Outline:
    """A round whose right side is thin, drawn ``further`` than its letter and cut upright at ``right``."""
    thin = pen.ending * pen.side
    whole = pen.bowl(0.0, bottom, right + thin + further, top, sides=(pen.side, thin))
    return cut(whole, rectangle(right, -FAR, FAR, FAR))
