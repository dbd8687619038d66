"""Lengths, lists of numbers and transforms of SVG, read from their text; the unit is the CSS pixel, y down."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence

from heraldry.errors import GeometryError
from heraldry.geometry.affine import IDENTITY, Affine
from heraldry.geometry.point import Point

PIXEL_MM = 25.4 / 96
"""A CSS pixel is 1/96 inch (CSS Values and Units Level 3, section 5.2)."""

UNITS = {"": 1.0, "px": 1.0, "pt": 96 / 72, "pc": 16.0, "in": 96.0, "cm": 96 / 2.54, "mm": 96 / 25.4, "q": 24 / 25.4}
FONT_UNITS = {"em": 16.0, "rem": 16.0, "ex": 8.0, "ch": 8.0}
"""At the initial font size, 'medium', which programs take as 16 pixels; ex and ch as half of it (CSS, section 5.1)."""

LARGEST_NUMBER = 1e9
"""Pixels; greater numbers are no measure of a drawing."""

_NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_LENGTH = re.compile(rf"\s*({_NUMBER})\s*([a-zA-Z]*|%)\s*")
_LIST = re.compile(_NUMBER)
_STEP = re.compile(r"[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)")
_ARGUMENT = re.compile(rf"[\s,]*({_NUMBER})(px|deg|rad|grad|turn)?[\s,]*")
_DEGREES = {"rad": 180 / math.pi, "grad": 0.9, "turn": 360.0}


def length_px(text: str, whole_px: float) -> float | None:
    """A length in pixels, ``%`` of a whole; None for what is none, as ``auto``. Raises GeometryError for nonsense.

    >>> length_px("2.54cm", 0), length_px("50%", 30), length_px("auto", 1)
    (96.0, 15.0, None)
    """
    found = _LENGTH.fullmatch(text)
    if not found:
        return None
    unit = found.group(2).lower()
    if unit == "%":
        return sane(float(found.group(1))) / 100 * whole_px
    factor = UNITS.get(unit) or FONT_UNITS.get(unit)
    return None if factor is None else sane(float(found.group(1))) * factor


def sane(value: float) -> float:
    """The number itself; raises GeometryError where it is beyond all measure."""
    if not abs(value) <= LARGEST_NUMBER:
        raise GeometryError(f"the drawing has the number {value:g}, at most {LARGEST_NUMBER:g} is read")
    return value


def numbers(text: str) -> list[float]:
    """All numbers of a list such as ``0,0 10,5``."""
    return [sane(float(found)) for found in _LIST.findall(text)]


def points(text: str) -> list[Point]:
    """The points of a list; an odd number at its end is passed over, as SVG 1.1, section 9.7.1, wants it."""
    found = numbers(text)
    return [Point(x, y) for x, y in zip(found[::2], found[1::2], strict=False)]


def transform(text: str) -> Affine | None:
    """The map of a list of transforms, the last applied first; None where it cannot be read.

    >>> transform("translate(1 2) scale(3)")(Point(1, 1))
    Point(x=4.0, y=5.0)
    """
    place, whole = 0, IDENTITY
    for step in _STEP.finditer(text):
        arguments = _arguments(step.group(2))
        make = _STEPS.get(step.group(1))
        if text[place : step.start()].strip() or make is None or arguments is None:
            return None
        one = make(arguments)
        if one is None:
            return None
        whole, place = whole @ one, step.end()
    return None if text[place:].strip() not in ("", "none") else whole


def _arguments(text: str) -> list[float] | None:
    found: list[float] = []
    place = 0
    while place < len(text):
        argument = _ARGUMENT.match(text, place)
        if not argument:
            return found if not text[place:].strip() else None
        found.append(sane(float(argument.group(1))) * _DEGREES.get(argument.group(2) or "", 1.0))
        place = argument.end()
    return found


def _move(given: Sequence[float]) -> Affine | None:
    return Affine.move(given[0], given[1] if len(given) > 1 else 0.0) if 1 <= len(given) <= 2 else None


def _scale(given: Sequence[float]) -> Affine | None:
    return Affine.scale(given[0], given[-1]) if 1 <= len(given) <= 2 else None


def _turn(given: Sequence[float]) -> Affine | None:
    if len(given) not in (1, 3):
        return None
    return Affine.turn(given[0], Point(given[1], given[2])) if len(given) == 3 else Affine.turn(given[0])


def _lean_x(given: Sequence[float]) -> Affine | None:
    return Affine(c=math.tan(math.radians(given[0]))) if len(given) == 1 else None


def _lean_y(given: Sequence[float]) -> Affine | None:
    return Affine(b=math.tan(math.radians(given[0]))) if len(given) == 1 else None


_STEPS: dict[str, Callable[[Sequence[float]], Affine | None]] = {
    "matrix": lambda given: Affine(*given) if len(given) == 6 else None,
    "translate": _move,
    "translateX": lambda given: Affine.move(given[0], 0.0) if len(given) == 1 else None,
    "translateY": lambda given: Affine.move(0.0, given[0]) if len(given) == 1 else None,
    "scale": _scale,
    "rotate": _turn,
    "skewX": _lean_x,
    "skewY": _lean_y,
}
"""SVG 1.1, section 7.6; an angle is positive from x toward y, which with y down is clockwise."""
