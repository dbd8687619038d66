"""The colour-bar plate as outlines at model size: one for each colour, apart from each other, the plate in all.

Full size (freightcars.nakina.net): lines 5 3/4 in wide and 1 in high, 3/8 in apart, on a black plate of
10 1/2 × 22 in. That the stack of 17 1/2 in stands in the middle of the plate, and that the two stripes of a line
are equally high, is taken from pictures.

White was a checkerboard of white and black on the real thing, to dim it to the other colours. A model shows
plain white unless asked: in HO a check of 1/4 in is 0.07 mm.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from heraldry.diagrams.colour_bars.code import Bar, Colour, Stripe
from heraldry.geometry.boolean import subtract, unite
from heraldry.geometry.outline import EMPTY, Bounds, Outline
from heraldry.units import MM_PER_INCH, Scale

BAR_WIDTH_IN = Fraction(23, 4)
BAR_HEIGHT_IN = Fraction(1)
GAP_IN = Fraction(3, 8)
PLATE_WIDTH_IN = Fraction(21, 2)
PLATE_HEIGHT_IN = Fraction(22)
CHECK_IN = Fraction(1, 4)
"""Ours: 23 × 2 checks fill a stripe without a rest; the size of the real ones was not found."""

White = Literal["plain", "checkered"]


@dataclass(frozen=True, slots=True)
class PlateArt:
    """A drawn plate: its box about the origin, and what each colour covers, in millimetres."""

    page: Bounds
    black: Outline
    blue: Outline
    red: Outline
    white: Outline


@dataclass(frozen=True, slots=True)
class _Box:
    """A rectangle at full size, in inches."""

    left: Fraction
    bottom: Fraction
    width: Fraction
    height: Fraction

    def outline(self, scale: Scale) -> Outline:
        left, right = self._mm(scale, self.left), self._mm(scale, self.left + self.width)
        bottom, top = self._mm(scale, self.bottom), self._mm(scale, self.bottom + self.height)
        return Bounds(left, bottom, right, top).outline.quantised()

    @staticmethod
    def _mm(scale: Scale, inches: Fraction) -> float:
        return scale.model_mm(inches * MM_PER_INCH)


_PLATE = _Box(-PLATE_WIDTH_IN / 2, -PLATE_HEIGHT_IN / 2, PLATE_WIDTH_IN, PLATE_HEIGHT_IN)


def draw_plate(lines: Sequence[Bar], scale: Scale, white: White = "plain") -> PlateArt:
    """Draw the lines of a plate, from the bottom up, at a scale; about the origin, y up."""
    stripes = [*_stripes(lines)]
    blue, red, plain = (_area(stripes, colour, scale) for colour in ("blue", "red", "white"))
    whites = _checked(stripes, scale) if white == "checkered" else plain
    plate = _PLATE.outline(scale)
    return PlateArt(_bounds(scale), subtract(plate, blue, red, whites), blue, red, whites)


def _stripes(lines: Sequence[Bar]) -> Iterator[tuple[Colour, _Box]]:
    """Every stripe as a rectangle on the plate."""
    pitch, half = BAR_HEIGHT_IN + GAP_IN, BAR_HEIGHT_IN / 2
    lowest = -(len(lines) * pitch - GAP_IN) / 2
    for i, bar in enumerate(lines):
        for stripes, bottom in ((bar.lower, lowest + i * pitch), (bar.upper, lowest + i * pitch + half)):
            yield from ((stripe.colour, _along(stripe, bottom, half)) for stripe in stripes)


def _along(stripe: Stripe, bottom: Fraction, height: Fraction) -> _Box:
    width = (stripe.end - stripe.start) * BAR_WIDTH_IN
    return _Box((stripe.start - Fraction(1, 2)) * BAR_WIDTH_IN, bottom, width, height)


def _area(stripes: Sequence[tuple[Colour, _Box]], colour: Colour, scale: Scale) -> Outline:
    """All stripes of a colour; those that touch are one."""
    boxes = [box.outline(scale) for named, box in stripes if named == colour]
    return unite(*boxes) if boxes else EMPTY


def _checked(stripes: Sequence[tuple[Colour, _Box]], scale: Scale) -> Outline:
    """Every second check of the white stripes."""
    checks = [check for named, box in stripes if named == "white" for check in _checks(box)]
    return Outline.gather(check.outline(scale) for check in checks)


def _checks(stripe: _Box) -> Iterator[_Box]:
    """The white checks of one stripe: the corner at the lower left is white."""
    for row in range(int(stripe.height / CHECK_IN)):
        for column in range(row % 2, int(stripe.width / CHECK_IN), 2):
            yield _Box(stripe.left + column * CHECK_IN, stripe.bottom + row * CHECK_IN, CHECK_IN, CHECK_IN)


def _bounds(scale: Scale) -> Bounds:
    half_width = scale.model_mm(PLATE_WIDTH_IN * MM_PER_INCH / 2)
    half_height = scale.model_mm(PLATE_HEIGHT_IN * MM_PER_INCH / 2)
    return Bounds(-half_width, -half_height, half_width, half_height)
