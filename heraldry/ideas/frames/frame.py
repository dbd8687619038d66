"""What a frame is: it composes a whole herald round a field, or says that it cannot."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from heraldry.ideas.fields import Field
from heraldry.ideas.kit import Kit
from heraldry.ideas.sketch import Sketch

Composer = Callable[[Kit, Field], Sketch | None]

FEWEST_INITIALS = 2
"""One letter alone carries no herald that is made of initials."""
WITHOUT = Field("none", "", lambda _kit, _room: None)
"""Stands for the field of a frame that has none."""


@dataclass(frozen=True)
class Frame:
    """A frame by its name; ``fields`` are the names of what it can hold, none for a frame of lettering alone.

    ``family`` says which silhouette it has: a page shows a few of each.
    """

    name: str
    family: str
    compose: Composer
    fields: tuple[str, ...] = ()
    eras: frozenset[str] = frozenset()

    def suits(self, era: str) -> bool:
        """Whether an era would have it."""
        return not self.eras or era in self.eras


def of_initials(compose: Composer) -> Composer:
    """The composer of a frame that is made of initials."""

    def composed(kit: Kit, field: Field) -> Sketch | None:
        return None if len(kit.words.initials) < FEWEST_INITIALS else compose(kit, field)

    return composed
