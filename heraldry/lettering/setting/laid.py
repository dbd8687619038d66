"""What laying a line gives: every letter in its place, and what has to be said about it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from heraldry.errors import LetteringError
from heraldry.geometry.boolean import unite
from heraldry.geometry.flatten import flatten
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import Point
from heraldry.lettering.alphabet import SetLine
from heraldry.lettering.setting.block import Block
from heraldry.lettering.setting.whites import any_touch


@dataclass(frozen=True, eq=False)
class Laid:
    """A laid line: its letters in place, the line as it was laid (tracking included), and notes."""

    block: Block
    line: SetLine
    notes: tuple[str, ...] = ()

    @property
    def letters(self) -> tuple[Outline, ...]:
        """One outline for each of ``line.glyphs``, empty for a space."""
        return self.block.letters

    @cached_property
    def outline(self) -> Outline:
        """All letters as one outline; letters that touch, as those of a script do, are united."""
        if any_touch(self.block):
            return unite(*(letter for letter in self.letters if not letter.is_empty))
        return self.block.outline


@dataclass(frozen=True)
class InkAngles:
    """The stretch of a circle that ink covers, degrees counter-clockwise from the right, in reading order.

    Text that reads clockwise has a start above its end. Angles go on beyond 360 rather than jump.
    """

    start_deg: float
    end_deg: float

    @property
    def middle_deg(self) -> float:
        """Half way between start and end."""
        return (self.start_deg + self.end_deg) / 2

    @property
    def span_deg(self) -> float:
        """How much is covered, never negative."""
        return abs(self.end_deg - self.start_deg)


def ink_angles(laid: Laid, centre: Point) -> InkAngles:
    """The angle that the ink of a laid line really covers, as seen from ``centre``.

    Raises LetteringError when there is no ink.
    """
    return angles_covered(laid.block, centre)


def angles_covered(block: Block, centre: Point) -> InkAngles:
    """The angle that the ink of letters covers; raises LetteringError when there is no ink."""
    if block.outline.is_empty:
        raise LetteringError("a line without ink covers no angle")
    rings = [ring - [centre.x, centre.y] for ring in flatten(block.outline)]
    xy = np.concatenate(rings)
    _, letter_of_ring = np.unique(block.letter_of_ring, return_inverse=True)
    letter = np.repeat(letter_of_ring, [len(ring) for ring in rings])
    middles = _mean_directions(xy, letter)
    swing = np.angle(np.exp(1j * (np.arctan2(xy[:, 1], xy[:, 0]) - middles[letter])))
    reached = np.unwrap(middles)[letter] + swing
    clockwise = np.unwrap(middles)[-1] < middles[0]
    ends = (reached.max(), reached.min()) if clockwise else (reached.min(), reached.max())
    return InkAngles(*np.degrees(ends).tolist())


def _mean_directions(xy: NDArray[np.float64], letter: NDArray[np.int64]) -> NDArray[np.float64]:
    """In which direction each letter lies, radians."""
    x, y = np.bincount(letter, xy[:, 0]), np.bincount(letter, xy[:, 1])
    return np.asarray(np.arctan2(y, x))
