"""Tracking that fills a width or an angle with ink; letters are never squeezed, nor set until they touch."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from heraldry.errors import LetteringError
from heraldry.geometry.point import ORIGIN
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.setting.block import Block
from heraldry.lettering.setting.laid import angles_covered
from heraldry.lettering.setting.lay import Reads, ink_width
from heraldry.lettering.setting.placing import put
from heraldry.lettering.setting.tracks import CircleTrack
from heraldry.lettering.setting.whites import Lay, least_tracking, wanted_whites

LOOSE_CAPS = 1.0
"""Tracking above a cap height: a word falls apart into letters, and it is said."""


@dataclass(frozen=True, eq=False)
class Fitted:
    """A line tracked to fill a place; ``reached`` is its ink then, in the unit that was asked in."""

    line: SetLine
    tracking_mm: float
    reached: float
    notes: tuple[str, ...] = ()


def fit_to_width(line: SetLine, width_mm: float) -> Fitted:
    """The line tracked so that its ink is ``width_mm`` wide, or as near to that as its letters allow.

    Raises LetteringError for a width that is not above zero.
    """
    if not width_mm > 0:
        raise LetteringError(f"a line is fitted to a width above zero, found {width_mm:g} mm")
    return _fitted(line, width_mm - ink_width(line), Block.straight, ink_width, width_mm, "mm")


def fit_to_angle(line: SetLine, radius_mm: float, angle_deg: float, reads: Reads = "outside") -> Fitted:
    """The line tracked so that its ink covers an angle on a circle, or as near to that as its letters allow.

    Letters turned on a circle are rigid, so that the covered angle grows by tracking ÷ radius for each gap,
    exactly. Raises LetteringError for an angle that is not between 0 and 360.
    """
    if not 0 < angle_deg <= 360:
        raise LetteringError(f"a line is fitted to an angle above 0° and up to 360°, found {angle_deg:g}°")
    if not radius_mm > 0:
        raise LetteringError(f"text goes round a circle of a radius above zero, found {radius_mm:g} mm")
    track = CircleTrack(ORIGIN, radius_mm, 0.0, reads == "outside")

    def lay(tracked: SetLine) -> Block:
        return put(tracked, track, 0.0, "turned")

    def covered(tracked: SetLine) -> float:
        return angles_covered(lay(tracked), ORIGIN).span_deg

    missing_mm = math.radians(angle_deg - covered(line)) * radius_mm
    return _fitted(line, missing_mm, lay, covered, angle_deg, "°")


def _fitted(
    line: SetLine,
    missing_mm: float,
    lay: Lay,
    measure: Callable[[SetLine], float],
    asked: float,
    unit: str,
) -> Fitted:
    gaps = len(line.glyphs) - 1
    if gaps < 1:
        reached = measure(line)
        return Fitted(line, 0.0, reached, (f"a single letter has no white to track, it stays {reached:.4g} {unit}",))
    wished = missing_mm / gaps
    tracking = least_tracking(line, lay, wanted_whites(line), wished, 0.0) if wished < 0 else wished
    tracked = line.tracked(tracking)
    reached = measure(tracked)
    return Fitted(tracked, tracking, reached, _remarks(line, wished, tracking, reached, asked, unit))


def _remarks(line: SetLine, wished: float, tracking: float, reached: float, asked: float, unit: str) -> tuple[str, ...]:
    if tracking > wished:
        return (f"the letters would touch at {asked:.4g} {unit}: tracked to {reached:.4g} {unit}, no nearer",)
    if tracking > LOOSE_CAPS * line.cap_height_mm:
        return (f"tracked by {tracking:.3g} mm, more than the letters are high: they hardly read as a word",)
    return ()
