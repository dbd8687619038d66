"""How large a finished herald may be, so that a forgotten `full` is told and not drawn; millimetres.

66 in at O is 35 mm when it is full size, and 1.7 m when it is not. The one is an emblem, the other no model's.
"""

from __future__ import annotations

from heraldry.errors import LengthError
from heraldry.units import Scale

LARGEST_MM = 500.0
"""Larger than any sheet of decal film, and as large as most cars."""
LONGEST_FULL_MM = 30_000.0
"""The longest passenger cars are 26 m; a slogan along the side of one at 1:20 may well be longer than 500 mm."""
LARGEST_EVER_MM = 2_000.0
"""Two metres, whatever the scale."""
MODEL_SIZE = "a length is one on the model unless it says full, as 6 ft full does"


def refuse_huge(what: str, length_mm: float, scale: Scale | None) -> None:
    """Raises LengthError for a length of a herald that no model has room for."""
    if length_mm <= LARGEST_MM:
        return
    full_mm = scale.full_mm(length_mm) if scale else None
    if full_mm is None or full_mm > LONGEST_FULL_MM or length_mm > LARGEST_EVER_MM:
        real = f", {full_mm / 1000:,.0f} m on the real thing" if full_mm else ""
        raise LengthError(f"no herald is {length_mm:,.0f} mm {what}{real}: {MODEL_SIZE}")
