"""A line of lettering as a shape: straight, or round a circle; millimetres.

The alphabet sets the line, the setting lays it; this shape only joins the two and names what came of it.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Any, Literal

from heraldry.errors import LetteringError
from heraldry.geometry.point import ORIGIN, Point
from heraldry.lettering.alphabet import Figures, SetLine
from heraldry.lettering.alphabets.named import ours
from heraldry.lettering.setting import Fitted, fit_to_angle, fit_to_width, ink_angles, on_circle, straight
from heraldry.lettering.setting.lay import SHARE, Anchor, ink_reach
from heraldry.shapes.checks import positive
from heraldry.shapes.table import Angle, Direction, Drawn, Length, Lettering, Place, Text, shape

Level = Literal["foot", "middle", "head"]

LONGEST_LINE = 200
"""Letters of one line; more is a text, and no lettering."""
TOP_DEG = 90.0
SHARE_UP: dict[Level, float] = {"foot": 0.0, "middle": 0.5, "head": 1.0}
"""How high up its capitals a line is held."""
_FIGURE = re.compile("[0-9]")


@dataclass(frozen=True)
class Round:
    """How a line goes round a circle; `radius` is that of the base line, `middle` where the text's anchor lies."""

    radius: Length
    reads: Literal["outside", "inside"] = "outside"
    middle: Direction = TOP_DEG
    fit: Angle | None = None
    """The angle that the line is opened to, by tracking."""


@shape
def text(
    text: Text,
    cap_height: Length,
    alphabet: Lettering | None = None,
    stem: Length | None = None,
    tracking: Length = 0.0,
    figures: Figures = "proportional",
    fit: Length | None = None,
    at: Place = ORIGIN,
    anchor: Anchor = "middle",
    level: Level = "foot",
    turn: Angle = 0.0,
    round: Round | None = None,
) -> Drawn:
    """A line of lettering; `at` is where its base line is held, or the centre of the circle it goes round."""
    if not text.strip():
        raise LetteringError("a line of lettering has no letters")
    if len(text) > LONGEST_LINE:
        raise LetteringError(f"a line of lettering has {len(text)} letters, at most {LONGEST_LINE} are set")
    thick = None if stem is None else positive("stem", stem) / positive("cap_height", cap_height)
    letters = alphabet or ours("gothic")
    if thick is not None:
        letters = letters.with_stem(thick)
    line = letters.set_line(text, positive("cap_height", cap_height), figures).tracked(tracking)
    if round is not None:
        return _around(line, round, at, anchor)
    foot = _foot(at, level, cap_height, turn)
    if figures == "tabular" and fit is None:
        zeros = letters.set_line(_FIGURE.sub("0", text), cap_height, figures).tracked(tracking)
        foot += Point.polar(_shift(line, zeros, anchor), math.radians(turn))
    return _straight(line, fit, foot, anchor, turn)


def _shift(line: SetLine, zeros: SetLine, anchor: Anchor) -> float:
    """How far a line's ink is held off its anchor, so that it stands as if all its figures were noughts.

    Tabular figures stand in columns. Held by their own ink, 311 and 308 would have theirs in different places.
    """
    (begin, end), (begin_of_zeros, end_of_zeros) = ink_reach(line), ink_reach(zeros)
    return (begin - begin_of_zeros) * (1 - SHARE[anchor]) + (end - end_of_zeros) * SHARE[anchor]


def _straight(line: SetLine, fit: float | None, foot: Point, anchor: Anchor, turn: float) -> Drawn:
    fitted = Fitted(line, 0.0, 0.0) if fit is None else fit_to_width(line, positive("fit", fit))
    laid = straight(fitted.line, foot, anchor, turn)
    return Drawn(laid.outline, notes=(*fitted.notes, *laid.notes))


def _around(line: SetLine, circle: Round, centre: Point, anchor: Anchor) -> Drawn:
    radius = positive("radius", circle.radius)
    fitted = Fitted(line, 0.0, 0.0) if circle.fit is None else fit_to_angle(line, radius, circle.fit, circle.reads)
    held: dict[str, Any] = {anchor: circle.middle}
    laid = on_circle(fitted.line, centre, radius, circle.reads, **held)
    angles = ink_angles(laid, centre)
    places = {
        "start": centre + Point.polar(radius, math.radians(angles.start_deg)),
        "end": centre + Point.polar(radius, math.radians(angles.end_deg)),
    }
    return Drawn(laid.outline, places, (*fitted.notes, *laid.notes))


def _foot(at: Point, level: Level, cap_height: float, turn: float) -> Point:
    """Where the base line is held, when ``at`` is on it, half way up the capitals, or at their heads."""
    return at - Point.polar(SHARE_UP[level] * cap_height, math.radians(turn + 90.0))
