"""What a field is, and what comes of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heraldry.ideas.fields.room import Room
from heraldry.ideas.kit import Kit
from heraldry.ideas.sketch import Part


@dataclass(frozen=True)
class Made:
    """A field in its room, and the shape of it that is the large thing."""

    part: Part
    subject: str

    @property
    def names(self) -> tuple[str, ...]:
        """Its shapes."""
        return tuple(self.part.shapes)


@dataclass(frozen=True)
class Field:
    """A field by its name: how it is called to a reader, how it is drawn (None where the room is wrong for it).

    ``eras`` is empty for one that suits them all; ``says_initials`` for one that shows the initials already.
    """

    name: str
    called: str
    draw: Callable[[Kit, Room], Made | None]
    eras: frozenset[str] = frozenset()
    says_initials: bool = False

    def suits(self, era: str) -> bool:
        """Whether an era would have it."""
        return not self.eras or era in self.eras
