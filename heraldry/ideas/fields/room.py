"""Rooms: the free areas of frames that fields fill; shares of the herald's width."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from heraldry.ideas.sketch import Tone


@dataclass(frozen=True)
class Room:
    """An area about a place; a round one is bounded by an ellipse. What lies in it is in ``ink``, over ``ground``."""

    x: float
    y: float
    width: float
    height: float
    is_round: bool = False
    ink: Tone = "first"
    ground: Tone = "bare"

    @property
    def over(self) -> tuple[Tone, ...]:
        """What is cut by what lies in the room."""
        return () if self.ground == "bare" else (self.ground,)

    def fitting(self, aspect: float, fill: float = 1.0) -> tuple[float, float]:
        """The largest width and height with height = width · aspect, times a fill."""
        if self.is_round:
            width = 1 / math.hypot(1 / self.width, aspect / self.height)
        else:
            width = min(self.width, self.height / aspect)
        return width * fill, width * aspect * fill

    def shrunk(self, by: float) -> Room:
        """The room with a margin."""
        return replace(self, width=self.width - 2 * by, height=self.height - 2 * by)
