"""An item of a diagram with all its values: what it shows, on which sides, and how it is placed there."""

from __future__ import annotations

from dataclasses import dataclass

from heraldry.describe.expression import Expression
from heraldry.diagrams.subjects import Subject
from heraldry.lettering.setting.lay import Anchor
from heraldry.shapes.text import Level


@dataclass(frozen=True, eq=False)
class Item:
    """Lengths in millimetres; ``x`` and ``y`` stay open until the edges that they name are known."""

    name: str
    subject: Subject
    sides: tuple[str, ...]
    x: Expression | None
    y: Expression | None
    anchor: Anchor
    level: Level
    panel: str | None = None
    faces_front: bool = False
    fitted: bool = False
    floor_mm: float | None = None
    clear_mm: float = 0.0
    over_ribs: bool = False
    longest_mm: float | None = None
    """Given for a stripe that is delivered by itself, in pieces of this length at most."""
    overlap_mm: float = 0.0
