"""Turns a file's lengths and numbers into values at the scale that is asked for.

The file is evaluated with its own ruler. Asked for another scale, every model length is multiplied by old
ratio over new, and a full-size length follows the new ratio: both come to the same factor, so that the
drawing stays one drawing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from heraldry.describe.arithmetic import Quantity, Raw, evaluate_length, evaluate_number
from heraldry.errors import ExpressionError
from heraldry.geometry.outline import QUANTUM_MM
from heraldry.units import Ruler

WHOLE = 1e-9
"""How far a count may be from a whole number: the rounding of a division, and no more."""


@dataclass(frozen=True)
class Yardstick:
    """The names a file may use, the ruler it is written with, and the factor to the scale asked for."""

    names: Mapping[str, Quantity]
    ruler: Ruler
    factor: float = 1.0

    def length_mm(self, raw: Raw) -> float:
        """A length in millimetres at the scale asked for, on the nanometre grid."""
        mm = evaluate_length(raw, self.names, self.ruler).value * self.factor
        return round(mm / QUANTUM_MM) * QUANTUM_MM

    def number(self, raw: Raw) -> float:
        """A plain number, or an angle in degrees."""
        return evaluate_number(raw, self.names, self.ruler)

    def count(self, raw: Raw) -> int:
        """A whole number; raises ExpressionError for any other."""
        value = self.number(raw)
        if abs(value - round(value)) > WHOLE:
            raise ExpressionError(f"a whole number is wanted, found {value:g}")
        return round(value)
