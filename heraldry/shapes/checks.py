"""What several shapes ask of their numbers."""

from __future__ import annotations

import math
from typing import Any, TypeVar

from heraldry.errors import GeometryError
from heraldry.geometry.point import Point

Real = TypeVar("Real", int, float)

NOTHING_MM = 1e-4
"""A length below a tenth of a micrometre is what rounding left of none."""
LARGEST = 10_000.0
"""Of any number: ten metres in millimetres, longer than any model of a car."""
MOST_PIECES = 1_000
"""Of anything that a shape repeats; more on one emblem is a slip of the pen, and would take minutes to draw."""
MOST_PLACES = 5_000
"""Of points that a shape runs through; more is a map, and belongs in a file."""


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


def counted(name: str, value: int, least: int) -> int:
    """The value itself; raises GeometryError where it is less than the least, or more than can be drawn."""
    if value > MOST_PIECES:
        raise GeometryError(f"{name} is {value}, at most {MOST_PIECES} are drawn")
    return at_least(name, value, least)


def drawable(name: str, value: Any, kind: str) -> Any:
    """A value as it is drawn: a length that is next to nothing becomes 0.

    Raises GeometryError for what no shape can be drawn with: no number, far too large a one, too many of them.
    """
    if kind == "count" and isinstance(value, int) and value > MOST_PIECES:
        raise GeometryError(f"{name} is {value}, at most {MOST_PIECES} are drawn")
    if kind in ("places", "map points") and len(value) > MOST_PLACES:
        raise GeometryError(f"{name} has {len(value)} places, at most {MOST_PLACES} are drawn")
    for number in _numbers(value):
        if not math.isfinite(number):
            raise GeometryError(f"{name} is {number:g}, it must be a number")
        if abs(number) > LARGEST:
            raise GeometryError(f"{name} is {number:g}, at most {LARGEST:g} can be drawn")
    return 0.0 if kind == "length" and value is not None and abs(value) < NOTHING_MM else value


def _numbers(value: Any) -> tuple[float, ...]:
    """The numbers of a number, a point or points."""
    if isinstance(value, float | int):
        return (value,)
    if isinstance(value, Point):
        return (value.x, value.y)
    if isinstance(value, tuple):
        return tuple(number for one in value if isinstance(one, Point) for number in one)
    return ()
