"""A line of lettering as a shape: straight, round a circle, or along a path; millimetres.

The alphabet sets the line, the setting lays it; this shape only joins the two and names what came of it.
"""

from __future__ import annotations

import math
import re
from dataclasses import replace
from typing import Literal

from heraldry.errors import LetteringError
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.alphabet import Figures, SetLine
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting import straight
from heraldry.lettering.setting.lay import SHARE, Anchor, ink_reach
from heraldry.lettering.stack import Fractions
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Angle, Drawn, Flag, Length, Lettering, Place, Text, shape
from heraldry.shapes.text_fitting import Initials, Wording, fitted, manner_of
from heraldry.shapes.text_on_curves import Along, Round, laid_along, laid_round

Level = Literal["foot", "middle", "head"]

LONGEST_LINE = 200
"""Letters of one line; more is a text, and no lettering."""
STRAIGHT_UP_DEG = 90.0
SHARE_UP: dict[Level, float] = {"foot": 0.0, "middle": 0.5, "head": 1.0}
"""How high up its capitals a line is held."""
_FIGURE = re.compile("[0-9]")


@shape
def text(
    text: Text,
    cap_height: Length,
    alphabet: Lettering | None = None,
    stem: Length | None = None,
    tracking: Length = 0.0,
    figures: Figures = "proportional",
    fractions: Fractions = "signs",
    superior_bar: Flag = True,
    initials: Initials | None = None,
    fit: Length | None = None,
    floor: Length | None = None,
    at: Place = ORIGIN,
    anchor: Anchor = "middle",
    level: Level = "foot",
    turn: Angle = 0.0,
    round: Round | None = None,
    along: Along | None = None,
) -> Drawn:
    """A line of lettering, straight, round a circle or along a path; `at` is where it is held, or the circle's centre.

    `level` is which of its feet, its middle and its heads lies on the base line; `fit` is how long its ink becomes, by
    tracking as far as that looks well, then by the width of its letters, and if there is a `floor`, by its size.
    """
    if not text.strip():
        raise LetteringError("a line of lettering has no letters")
    if "\n" in text or "\r" in text:
        raise LetteringError('text is one line and has no line break in it; several lines are a shape with lines = "…"')
    if len(text) > LONGEST_LINE:
        raise LetteringError(f"a line of lettering has {len(text)} letters, at most {LONGEST_LINE} are set")
    if round is not None and along is not None:
        raise LetteringError("a line goes round a circle or along a path, found both")
    thick = None if stem is None else positive("stem", stem)
    manner = manner_of(initials, fractions, superior_bar, figures)
    wording = Wording(text, alphabet or ours("gothic"), thick, manner, tracking)
    fit_line = fitted(wording, positive("cap_height", cap_height), fit, round, floor)
    line, lift = fit_line.line, -SHARE_UP[level] * fit_line.cap_mm
    if round is not None or along is not None:
        drawn = _on_curve(line, round, along, at, anchor, lift, turn)
        return replace(drawn, notes=(*fit_line.notes, *drawn.notes))
    foot = at + Point.polar(lift, math.radians(turn + STRAIGHT_UP_DEG))
    if figures == "tabular" and fit is None:
        foot += Point.polar(_shift(line, _with_noughts(wording, cap_height), anchor), math.radians(turn))
    return Drawn(straight(line, foot, anchor, turn).outline, notes=fit_line.notes)


def _on_curve(
    line: SetLine, circle: Round | None, way: Along | None, at: Point, anchor: Anchor, lift: float, turn: float
) -> Drawn:
    if turn:
        raise LetteringError("turn is for straight lines: round.middle or along.hold says where text on a curve stands")
    if circle is not None:
        return laid_round(line, circle, at, anchor, lift)
    return laid_along(line, way or Along(), at, anchor, lift)


def _with_noughts(wording: Wording, cap_height: float) -> SetLine:
    noughts = replace(wording, text=_FIGURE.sub("0", wording.text))
    return noughts.line(noughts.at(cap_height), cap_height)


def _shift(line: SetLine, zeros: SetLine, anchor: Anchor) -> float:
    """How far a line's ink is held off its anchor, so that it stands as if all its figures were noughts.

    Tabular figures stand in columns. Held by their own ink, 311 and 308 would have theirs in different places.
    """
    (begin, end), (begin_of_zeros, end_of_zeros) = ink_reach(line), ink_reach(zeros)
    return (begin - begin_of_zeros) * (1 - SHARE[anchor]) + (end - end_of_zeros) * SHARE[anchor]
