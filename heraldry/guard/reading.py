"""From how far lettering can be read: millimetres, and minutes of arc.

A letter of height h at a distance d fills the angle α with h = 2 d tan(α/2).
"""

from __future__ import annotations

import math

from heraldry.errors import LengthError

SHARPEST_ARCMIN = 5.0
"""The smallest letter that normal eyes (20/20) make out: five times the 1′ that they resolve; ISO 8596, from
memory."""


def letter_height_mm(distance_mm: float) -> float:
    """The height of the smallest letter that is made out at a distance; raises LengthError for no distance.

    >>> round(letter_height_mm(300), 3)
    0.436
    """
    _check("a viewing distance", distance_mm)
    return 2 * distance_mm * math.tan(math.radians(SHARPEST_ARCMIN / 60) / 2)


def can_be_read(cap_height_mm: float, distance_mm: float) -> bool:
    """Whether normal eyes make out letters of a cap height at a distance.

    >>> can_be_read(0.29, distance_mm=300)
    False
    """
    _check("a cap height", cap_height_mm)
    return cap_height_mm >= letter_height_mm(distance_mm)


def _check(what: str, length_mm: float) -> None:
    if not (length_mm > 0.0 and math.isfinite(length_mm)):
        raise LengthError(f"{what} is {length_mm:g} mm, it must be more than 0")
