"""What several shapes ask of their numbers."""

from __future__ import annotations

from typing import TypeVar

from heraldry.errors import GeometryError

Real = TypeVar("Real", int, float)


def positive(name: str, value: Real) -> Real:
    """The value itself; raises GeometryError unless it is more than zero."""
    if not value > 0:
        raise GeometryError(f"{name} is {value:g}, it must be more than 0")
    return value


def at_least(name: str, value: Real, least: Real) -> Real:
    """The value itself; raises GeometryError where it is less than the least."""
    if not value >= least:
        raise GeometryError(f"{name} is {value:g}, it must be at least {least:g}")
    return value
