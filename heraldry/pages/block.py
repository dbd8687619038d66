"""A piece of a page: how high it is, and the ink on it; origin at its upper left, y up, millimetres."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from heraldry.artwork import Ink
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point

BLACK = Ink("black", "#111111", spot=False)
GREY = Ink("grey", "#6a6a6a", spot=False)
"""Captions are grey: they stand back behind the samples."""

RULE_MM, HAIRLINE_MM = 0.5, 0.12
"""Thickness of the rule under the head of a page, and of the one over an entry."""


@dataclass(frozen=True, eq=False)
class Mark:
    """What one ink covers."""

    ink: Ink
    outline: Outline


@dataclass(frozen=True, eq=False)
class Block:
    """Ink within a height, from y = 0 down to y = −height; ``base_mm`` is how far down its first base line is."""

    height_mm: float
    marks: tuple[Mark, ...] = ()
    base_mm: float | None = None

    def shifted(self, dx: float, dy: float) -> tuple[Mark, ...]:
        """The ink of the block somewhere else."""
        there = Affine.move(dx, dy)
        return tuple(Mark(mark.ink, mark.outline.transformed(there)) for mark in self.marks)


def stacked(blocks: Iterable[Block]) -> Block:
    """Blocks one under another."""
    marks: list[Mark] = []
    height, base = 0.0, None
    for block in blocks:
        marks.extend(block.shifted(0.0, -height))
        if base is None and block.base_mm is not None:
            base = height + block.base_mm
        height += block.height_mm
    return Block(height, tuple(marks), base)


def beside(*columns: tuple[float, Block]) -> Block:
    """Blocks side by side, each at a distance from the left; as high as the highest, with the base of the first."""
    marks = [mark for left, block in columns for mark in block.shifted(left, 0.0)]
    base = next((block.base_mm for _, block in columns if block.base_mm is not None), None)
    return Block(max((block.height_mm for _, block in columns), default=0.0), tuple(marks), base)


def rule(width_mm: float, thick_mm: float) -> Block:
    """A line across at the very top, which takes no height."""
    return Block(0.0, (Mark(BLACK, Bounds(0.0, -thick_mm, width_mm, 0.0).outline),))


def into_room(box: Bounds, wide_mm: float, high_mm: float, centre: Point) -> Affine:
    """What brings a box into a room as large as it allows, its middle at a place."""
    size = min(wide_mm / box.width, high_mm / box.height)
    return Affine.move(centre.x, centre.y) @ Affine.scale(size) @ Affine.move(-box.centre.x, -box.centre.y)


def gap(height_mm: float) -> Block:
    """White."""
    return Block(height_mm)
