"""The balls in which the hooks of some alphabets end. Lengths in cap heights."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.geometry.outline import Outline
from heraldry.lettering.alphabets.contour import ball
from heraldry.lettering.alphabets.pen import Pen


@dataclass(frozen=True)
class HookEnd:
    """The end of a hook: its outer side, whether that is the right one, and its height."""

    side: float
    rightward: bool
    height: float


def balls(pen: Pen, *ends: HookEnd) -> list[Outline]:
    """A ball at each end, where the pen has them: a hook ends in the middle of its ball, where that is widest."""
    size = pen.serif.ball
    if size <= 0.0:
        return []
    return [ball(end.side - size * end.rightward, end.height - size / 2.0, size) for end in ends]
