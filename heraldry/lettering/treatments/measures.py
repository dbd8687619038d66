"""What all treatments ask of the lengths they are given, millimetres."""

from __future__ import annotations

from heraldry.errors import GeometryError


def positive(what: str, mm: float) -> float:
    """The length itself; raises GeometryError unless it is more than zero."""
    if not mm > 0:
        raise GeometryError(f"{what} is {mm:g} mm, it must be more than 0")
    return mm


def not_negative(what: str, mm: float) -> float:
    """The length itself; raises GeometryError where it is less than zero."""
    if not mm >= 0:
        raise GeometryError(f"{what} is {mm:g} mm, it cannot be less than 0")
    return mm
