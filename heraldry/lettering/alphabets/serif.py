"""The measures of serifs; all zero in an alphabet that has none. Lengths in cap heights."""

from __future__ import annotations

from dataclasses import dataclass, replace

# Two serifs that point at one another leave at least this white between them.
LEAST_GAP = 0.065

# Balls of small letters in those of figures.
SMALL_BALL = 0.92

# A serif shorter than this would print as a blot: the stroke ends without.
LEAST_SERIF = 0.025


# How much of a widening of the letters their serifs follow; a narrowing they follow wholly.
WIDENED_SERIF = 0.3


def length_at(width: float, normal: float) -> float:
    """Length of a serif in letters of a width, from that in letters of normal width.

    >>> length_at(0.5, 0.12), length_at(2.0, 0.10)
    (0.06, 0.13)
    """
    return normal * min(width, 1.0 + WIDENED_SERIF * (width - 1.0))


@dataclass(frozen=True)
class Serif:
    """How the strokes of an alphabet end.

    ``natural``
        length beyond the stem that the widths of the letters count on: where their stems stand.
    ``reach``, ``thick``, ``bracket``
        length that was asked for, thickness, and reach of the curve between serif and stem.
    ``beak``, ``tip``, ``flare``
        the serif at the free end of an arm: its length from the arm's outer edge, its thickness at the end,
        and how much thicker it is where it leaves the arm.
    ``ball``
        diameter of the balls in which the hooks of small letters and figures end; 0 cuts them level.
    """

    natural: float = 0.0
    reach: float = 0.0
    thick: float = 0.0
    bracket: float = 0.0
    beak: float = 0.0
    tip: float = 0.0
    flare: float = 0.0
    ball: float = 0.0

    def scaled(self, factor: float) -> Serif:
        """Shorter serifs, as thick and as round as before, and smaller balls."""
        return replace(self, natural=self.natural * factor, reach=self.reach * factor, ball=self.ball * SMALL_BALL)

    def between(self, white: float) -> float:
        """Length of each of two serifs that share a white; none where there is no room."""
        fits = min(self.reach, (white - LEAST_GAP) / 2.0)
        return fits if fits >= LEAST_SERIF else 0.0


NO_SERIF = Serif()
