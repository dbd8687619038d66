"""Which heralds are tried, and in what order: every kind of frame and field in turn, no two of a pair.

Chance orders the candidates; from them the next one is always that whose family, frame and field have been used
least, in view of how many of each family belong on a page.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from heraldry.ideas.eras import ERAS, Era
from heraldry.ideas.fields import FIELDS, Field
from heraldry.ideas.frames import ALL, Frame
from heraldry.ideas.frames.frame import WITHOUT

SHARES = {"round": 6.0, "shield": 5.0, "board": 2.0, "wings": 2.0, "ribbon": 2.0, "letters": 2.0}
"""How many of a family belong on a page of two dozen; of all others one."""
FIELD_SHARES = {"land": 2.5, "initials": 1.6, "land and initials": 1.3}
"""How often a field is welcome beside the others: the land most of all, since no other railroad has it."""
FAMILY_WEIGHT, FRAME_WEIGHT, FIELD_WEIGHT, GROUND_WEIGHT = 3.0, 4.0, 0.8, 0.3


@dataclass(frozen=True)
class Choice:
    """A frame, a field for it, and the era whose letters it takes."""

    frame: Frame
    field: Field
    era: Era

    @property
    def ground(self) -> str:
        """What is dark in its frame: the last word of its name."""
        return self.frame.name.rpartition(" ")[2]


def fields_of(frame: Frame) -> list[Field]:
    """What a frame can hold; a frame of lettering alone holds nothing."""
    return [FIELDS[name] for name in frame.fields] or [WITHOUT]


def choices(era: Era | None, chance: Random) -> list[Choice]:
    """All pairs of frame and field that an era (or any, each with one of its own) would have, by chance."""
    pairs = [(frame, field) for frame in ALL for field in fields_of(frame)]
    found = []
    for frame, field in pairs:
        eras = [one for one in ([era] if era else ERAS.values()) if frame.suits(one.name) and field.suits(one.name)]
        if eras:
            found.append(Choice(frame, field, chance.choice(eras)))
    chance.shuffle(found)
    return found


def traits(choice: Choice) -> tuple[tuple[str, str], ...]:
    """What of a choice is worn by use, each with its kind: family, frame, field, ground."""
    frame, field = choice.frame, choice.field
    return ("family", frame.family), ("frame", frame.name), ("field", field.name), ("ground", choice.ground)


def in_turn(found: list[Choice]) -> Iterator[Choice]:
    """The same, each next one of what has been used least."""
    used: Counter[tuple[str, str]] = Counter()
    left = list(found)

    def worn(choice: Choice) -> float:
        family, frame, field, ground = (used[trait] for trait in traits(choice))
        of_family = FAMILY_WEIGHT * (family / SHARES.get(choice.frame.family, 1.0))
        of_field = FIELD_WEIGHT * (field / FIELD_SHARES.get(choice.field.name, 1.0))
        has_field = 0.0 if choice.field is WITHOUT else of_field
        return of_family + FRAME_WEIGHT * frame + has_field + GROUND_WEIGHT * ground

    while left:
        best = min(range(len(left)), key=lambda i: (worn(left[i]), i))
        choice = left.pop(best)
        used.update(traits(choice))
        yield choice
