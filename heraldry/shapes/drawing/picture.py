"""What every reader of drawings hands on: marks in the order in which they are painted, bottom first.

A mark is a set of chains with a colour, filled or drawn along with a line. Its points are as the file has them, in
the mark's own units, y down as in SVG; ``onto_page`` brings them to the page, whose unit is the file's as well. What
that unit is in millimetres is said once, by the picture.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import FillRule
from heraldry.geometry.segments import Path

Cap = Literal["butt", "round", "square"]
Join = Literal["miter", "round", "bevel"]

MOST_SEGMENTS = 30_000
"""Segments of all marks together; a herald has some hundred, a drawing traced by a machine some thousand."""

BLACK, WHITE = "#000000", "#ffffff"


@dataclass(frozen=True)
class Pen:
    """A line drawn along a chain, in the mark's own units."""

    width: float
    cap: Cap = "butt"
    join: Join = "miter"
    miter_limit: float = 4.0
    """How far a pointed corner may reach, in half widths; beyond it, it is cut off."""
    dashes: tuple[float, ...] = ()
    dash_offset: float = 0.0


@dataclass(frozen=True, eq=False)
class Mark:
    """One painting: chains filled by a rule, or drawn with a pen; seen only inside all its ``windows``."""

    paths: tuple[Path, ...]
    onto_page: Affine
    colour: str
    rule: FillRule = "nonzero"
    pen: Pen | None = None
    windows: tuple[Window, ...] = ()


@dataclass(frozen=True, eq=False)
class Window:
    """An area outside of which nothing is seen: what its marks fill together, within its own windows."""

    marks: tuple[Mark, ...]


@dataclass(frozen=True, eq=False)
class Picture:
    """A drawing as read: its marks, its parts that have a name, and what could not be read."""

    marks: tuple[Mark, ...]
    unit_mm: float
    """Millimetres of one unit of the page, at the size that the file gives itself."""
    parts: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def colours(self) -> tuple[str, ...]:
        """The colours in the order in which they are first painted."""
        return tuple(dict.fromkeys(mark.colour for mark in self.marks))
