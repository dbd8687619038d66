"""From how far lettering can be read: millimetres, and minutes of arc.

A letter of height h at a distance d fills the angle α with h = 2 d tan(α/2).
"""

from __future__ import annotations

import math

from heraldry.errors import LengthError

SHARPEST_ARCMIN = 5.0
"""The smallest letter that normal eyes (20/20) make out: five times the 1′ that they resolve; ISO 8596, from
memory."""

COMFORTABLE_ARCMIN = 16.0
"""The least height of a letter that is read at ease: ISO 9241-3, second-hand."""


def letter_height_mm(distance_mm: float, angle_arcmin: float = SHARPEST_ARCMIN) -> float:
    """The height of a letter that fills an angle at a distance; raises LengthError for no distance.

    >>> round(letter_height_mm(300), 3)
    0.436
    >>> round(letter_height_mm(300, COMFORTABLE_ARCMIN), 2)
    1.4
    """
    _check("a viewing distance", distance_mm)
    return 2 * distance_mm * math.tan(math.radians(angle_arcmin / 60) / 2)


def reading_distance_mm(cap_height_mm: float, angle_arcmin: float = SHARPEST_ARCMIN) -> float:
    """The greatest distance at which a letter still fills an angle; raises LengthError for no height.

    >>> round(reading_distance_mm(2.625))
    1805
    """
    _check("a cap height", cap_height_mm)
    return cap_height_mm / (2 * math.tan(math.radians(angle_arcmin / 60) / 2))


def can_be_read(cap_height_mm: float, distance_mm: float) -> bool:
    """Whether normal eyes make out letters of a cap height at a distance.

    >>> can_be_read(0.29, distance_mm=300)
    False
    """
    _check("a cap height", cap_height_mm)
    return cap_height_mm >= letter_height_mm(distance_mm)


def reads_comfortably(cap_height_mm: float, distance_mm: float) -> bool:
    """Whether letters of a cap height are read at ease at a distance."""
    _check("a cap height", cap_height_mm)
    return cap_height_mm >= letter_height_mm(distance_mm, COMFORTABLE_ARCMIN)


def _check(what: str, length_mm: float) -> None:
    if not (length_mm > 0.0 and math.isfinite(length_mm)):
        raise LengthError(f"{what} is {length_mm:g} mm, it must be more than 0")
