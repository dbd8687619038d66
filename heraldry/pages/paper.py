"""Sheets of paper, their type area, and the grid that all base lines of a specimen stand on; millimetres."""

from __future__ import annotations

import math
from dataclasses import dataclass

from heraldry.artwork import Ink
from heraldry.errors import HeraldryError, nearest

SIDE_MM, HEAD_MM, FOOT_MM = 19.0, 18.0, 17.0
"""Margins: wider than any printer's blank edge, and wide enough for a thumb."""
PAPER_INK = Ink("paper", "#ffffff", opaque=True, spot=False)
"""What a page is white with, so that a picture of it is not seen through."""
GRID_MM = 2.0
"""Base lines stand on whole steps of this, so that lines of neighbouring columns agree."""
CAPTION_COLUMN_MM = 46.0
"""Left column of captions and labels; samples begin at its right edge."""


@dataclass(frozen=True)
class Paper:
    """A sheet of paper, upright."""

    name: str
    width_mm: float
    height_mm: float

    @property
    def measure_mm(self) -> float:
        """Width of the type area."""
        return self.width_mm - 2 * SIDE_MM

    @property
    def depth_mm(self) -> float:
        """Height of the type area, whole steps of the grid."""
        return math.floor((self.height_mm - HEAD_MM - FOOT_MM) / GRID_MM) * GRID_MM


PAPERS = {"a4": Paper("A4", 210.0, 297.0), "letter": Paper("Letter", 215.9, 279.4)}
"""A4 by ISO 216; Letter is 8 1/2 by 11 inches."""


def paper_named(name: str) -> Paper:
    """A paper by its name in any case; raises HeraldryError for an unknown one.

    >>> paper_named("A4").measure_mm
    172.0
    """
    if name.strip().lower() not in PAPERS:
        known = [paper.name for paper in PAPERS.values()]
        raise HeraldryError(f"no paper is called '{name}', {nearest(name, known)}")
    return PAPERS[name.strip().lower()]


def up_to_grid(mm: float) -> float:
    """The next whole step of the grid.

    >>> up_to_grid(4.1), up_to_grid(4.0)
    (6.0, 4.0)
    """
    return math.ceil(mm / GRID_MM - 1e-9) * GRID_MM
