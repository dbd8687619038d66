"""A class of cars lettered alike, with all its values: its sides, its items laid out on them, and its cars."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, cast

from heraldry.artwork import Ink
from heraldry.describe.description import Description
from heraldry.describe.diagram_model import Data, DiagramBase, ItemBase, SideBase
from heraldry.diagrams.cars import Roster, roster_of
from heraldry.diagrams.item import Item
from heraldry.diagrams.itemising import Itemising
from heraldry.diagrams.layout import LayingOut, Layout
from heraldry.diagrams.measuring import measured_sides
from heraldry.diagrams.studio import Studio
from heraldry.errors import DescriptionError
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.units import Scale


@dataclass(frozen=True, eq=False)
class ClassOfCars:
    """Everything about a class that holds for all its cars."""

    name: str
    file: DrawnFile
    reader: Reader
    scale: Scale | None
    film: Literal["clear", "white"]
    roster: Roster
    layouts: tuple[Layout, ...]
    inks: tuple[Ink, ...]
    """In printing order: that in which items first use them."""
    studio: Studio

    @property
    def scale_name(self) -> str:
        """The scale of the models; nothing where the file names none."""
        return self.scale.name if self.scale else ""


def class_of_cars(description: Description, asked: Scale | None = None) -> ClassOfCars:
    """The class that a diagram file describes, at the scale asked for (or its own).

    Raises DescriptionError with every fault of the file; faults of single cars stay in the roster as long as there
    are others, for those can be looked at all the same.
    """
    model = cast(DiagramBase, description.model)
    file = DrawnFile(description, model, asked)
    own = file.own_scale()
    yardstick = file.yardstick(own, {})
    file.ledger.settle()
    reader = file.reader(yardstick)
    roster = roster_of(file, reader)
    sides = measured_sides(file, cast(Mapping[str, SideBase], vars(model)["side"]), reader)
    texts = roster.cars[0].texts if roster.cars else {}
    reading = Itemising(file, reader, sides, texts, asked or own, model.data or Data())
    items = reading.items(cast(Mapping[str, ItemBase], vars(model)["item"])) if roster.cars else ()
    _settle(file, roster)
    studio = Studio(roster.cars)
    laying_out = LayingOut(file, yardstick, studio, items)
    enlarged = laying_out.enlarged(sides)
    layouts = tuple(laying_out.layout(side, enlarged) for side in sides.values())
    _settle(file, roster)
    inks = tuple(_inks_in_order(file, items))
    _settle(file, roster)
    return ClassOfCars(file.named(reader), file, reader, asked or own, model.film, roster, layouts, inks, studio)


def _settle(file: DrawnFile, roster: Roster) -> None:
    """Raise what is wrong with the file, and with single cars too if nothing can be drawn anyway."""
    if file.ledger.faults or not roster.cars:
        raise DescriptionError([*file.ledger.faults, *roster.faults])


def _inks_in_order(file: DrawnFile, items: tuple[Item, ...]) -> Iterator[Ink]:
    known: dict[str, Ink] = {}
    for item in items:
        for ink in item.subject.inks:
            before = known.setdefault(ink.name, ink)
            if before is ink:
                yield ink
            elif before != ink:
                file.ledger.add(
                    file.description,
                    ("item", item.name),
                    f"ink '{ink.name}' is {ink.colour_hex} here and {before.colour_hex} before",
                    wanted="an ink has one colour on a sheet: give one of them another name",
                )
