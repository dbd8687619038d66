"""Lettering fitted into a box: as large as it goes, never below a floor; millimetres.

Where the floor is reached and the letters are still too wide, they are drawn narrower, if their alphabet can; stems
stay as they are. Below the floor nothing is set: what cannot be read is said.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heraldry.errors import LetteringError
from heraldry.geometry.measure import bounds
from heraldry.lettering.adjusting import Widening, widened
from heraldry.lettering.alphabet import Alphabet
from heraldry.lettering.stack.stacking import Stacked

SIZE_ROUNDS = 6
"""All lengths of a stack grow in step but a tracking or leading in millimetres: each round leaves a tenth of the
error or less."""

NARROWING_ROUNDS = 12
"""How much letters are narrowed is found to 1/4000."""

NARROWEST = 0.3
"""No alphabet is asked for letters less than so many times as wide: their stems would touch."""

BOX_OVERRUN_MM = 1e-6
"""Ink may stick out of a box by rounding, and no more."""

SetStack = Callable[[Alphabet, float], Stacked]


@dataclass(frozen=True, eq=False)
class Boxed:
    """A stack that fits its box: at which cap height, and with letters how many times as wide as usual."""

    stack: Stacked
    cap_mm: float
    widened: float = 1.0


def fit_into(set_stack: SetStack, alphabet: Alphabet, width_mm: float, height_mm: float, floor_mm: float) -> Boxed:
    """The largest setting whose ink fits a box; ``set_stack`` sets it in an alphabet at a cap height.

    Raises LetteringError where it does not fit even at the floor.
    """
    for what, side in (("width", width_mm), ("height", height_mm), ("floor", floor_mm)):
        if not side > 0:
            raise LetteringError(f"a box's {what} is above zero, found {side:g} mm")
    cap = _largest(lambda cap: set_stack(alphabet, cap), width_mm, height_mm)
    if cap >= floor_mm:
        return Boxed(set_stack(alphabet, cap), cap)
    if isinstance(alphabet, Widening):
        narrowed = _narrowed(set_stack, alphabet, width_mm, height_mm, floor_mm)
        if narrowed is not None:
            return narrowed
    raise LetteringError(
        f"the lettering fits {width_mm:g} × {height_mm:g} mm only at a cap height of {cap:.3g} mm, "
        f"the floor is {floor_mm:g} mm; give it more room or fewer letters"
    )


def _largest(set_at: Callable[[float], Stacked], width_mm: float, height_mm: float) -> float:
    """The cap height at which ink just fits."""
    cap = height_mm
    for _ in range(SIZE_ROUNDS):
        ink = bounds(set_at(cap).outline)
        cap *= min(width_mm / ink.width, height_mm / ink.height)
    while not _fits(set_at(cap), width_mm, height_mm):
        cap *= 1.0 - BOX_OVERRUN_MM
    return cap


def _fits(stack: Stacked, width_mm: float, height_mm: float) -> bool:
    ink = bounds(stack.outline)
    return ink.width <= width_mm + BOX_OVERRUN_MM and ink.height <= height_mm + BOX_OVERRUN_MM


def _narrowed(
    set_stack: SetStack, alphabet: Alphabet, width_mm: float, height_mm: float, floor_mm: float
) -> Boxed | None:
    """The widest letters that fit at the floor; None where none do."""
    able: Boxed | None = None
    low, high = NARROWEST, 1.0
    for _ in range(NARROWING_ROUNDS):
        factor = (low + high) / 2
        try:
            stack = set_stack(widened(alphabet, factor), floor_mm)
        except LetteringError:
            low = factor
            continue
        if _fits(stack, width_mm, height_mm):
            able, low = Boxed(stack, floor_mm, factor), factor
        else:
            high = factor
    return able
