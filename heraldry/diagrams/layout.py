"""Where every item of a class stands on one side, and how large it is: worked out once, the same for every car.

A place may name the edges of the side, of its panels and keep-outs, and of other items, so items are placed in an order
in which each finds those that it is placed by. The edges of an item are those of the box that holds it on every car of
the class. What leads toward the front is placed as on the side whose front is on the left, and turned over with the
place where the front is on the right.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from graphlib import CycleError, TopologicalSorter

from heraldry.describe.expression import Expression, names_in
from heraldry.diagrams.item import Item
from heraldry.diagrams.measuring import with_edges
from heraldry.diagrams.side import Side, edges_of
from heraldry.diagrams.sketch import Hold, moved_box
from heraldry.diagrams.studio import Studio
from heraldry.geometry.outline import Bounds
from heraldry.geometry.point import Point
from heraldry.lettering.setting.lay import SHARE
from heraldry.plates.turned_over import OTHER_ANCHOR
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes.text import SHARE_UP


@dataclass(frozen=True, eq=False)
class Place:
    """One item on one side: held ``at`` a point, enlarged by a factor, in a panel if it has one."""

    item: Item
    hold: Hold
    at: Point
    enlarge: float
    panel: Bounds | None
    studio: Studio

    @cached_property
    def box(self) -> Bounds:
        """The box that holds it on every car of the class; worked out when it is first asked for."""
        return moved_box(self.studio.extent(self.item, self.hold), self.enlarge, self.at.x, self.at.y)


@dataclass(frozen=True, eq=False)
class Layout:
    """A side with all its items in place, in the order in which they are printed."""

    side: Side
    places: tuple[Place, ...]


@dataclass(frozen=True)
class LayingOut:
    """What places are worked out with."""

    file: DrawnFile
    yardstick: Yardstick
    studio: Studio
    items: tuple[Item, ...]

    def layout(self, side: Side, enlarged: Mapping[str, float]) -> Layout:
        """All items of a side; what cannot be placed goes to the file's ledger."""
        here = {item.name: item for item in self.items if side.name in item.sides}
        places: dict[str, Place] = {}
        for name in self._in_turn(here):
            with self.file.ledger.at(self.file.description, ("item", name)):
                places[name] = self._place(here[name], side, places, enlarged.get(name, 1.0))
        return Layout(side, tuple(places[name] for name in here if name in places))

    def enlarged(self, sides: Mapping[str, Side]) -> dict[str, float]:
        """How much each fitted item is made smaller, so that the widest of the class fits all its panels."""
        factors = {}
        for item in self.items:
            if item.fitted:
                with self.file.ledger.at(self.file.description, ("item", item.name)):
                    factors[item.name] = self._fit(item, [sides[name] for name in item.sides])
        return factors

    def _fit(self, item: Item, sides: list[Side]) -> float:
        box = self.studio.extent(item, Hold(item.anchor, item.level))
        panels = [panel_of(item, side) or side.face for side in sides]
        room = [(panel.width - 2 * item.clear_mm, panel.height - 2 * item.clear_mm) for panel in panels]
        factor = min([1.0, *(min(width / box.width, height / box.height) for width, height in room)])
        return max(factor, min(1.0, item.floor_mm / box.height)) if item.floor_mm else factor

    def _in_turn(self, items: Mapping[str, Item]) -> list[str]:
        needs = {name: [need for need in _needed(item) if need in items] for name, item in items.items()}
        try:
            return list(TopologicalSorter(needs).static_order())
        except CycleError as error:
            circle = " → ".join(reversed(error.args[1]))
            self.file.ledger.add(
                self.file.description, ("item", error.args[1][0]), "items placed by one another", circle
            )
            return []

    def _place(self, item: Item, side: Side, placed: Mapping[str, Place], enlarge: float) -> Place:
        turned_over = item.faces_front and side.front == "right"
        seen = side.mirrored(side.name) if turned_over else side
        edges = seen.edges()
        for name in _needed(item):
            if name in placed:
                box = side.mirrored_box(placed[name].box) if turned_over else placed[name].box
                edges |= {f"{name}.{edge}": value for edge, value in edges_of(box)}
        panel = panel_of(item, seen)
        room = seen.face if panel is None else panel.grown(-item.clear_mm)
        at = self._held_at(item, room, with_edges(self.yardstick, edges))
        hold = Hold(item.anchor, item.level)
        if turned_over:
            hold = Hold(OTHER_ANCHOR[item.anchor], item.level, turned_over=True)
            at = Point(side.width_mm - at.x, at.y)
        if not self.studio.differs(item):
            self.studio.sketch(
                item, self.studio.cars[0], hold
            )  # what cannot be drawn on any car is a fault of the file
        return Place(item, hold, at, enlarge, panel_of(item, side), self.studio)

    def _held_at(self, item: Item, room: Bounds, yardstick: Yardstick) -> Point:
        x = room.left + SHARE[item.anchor] * room.width
        y = room.bottom + SHARE_UP[item.level] * room.height
        return Point(
            self._coordinate(item, "x", item.x, x, yardstick), self._coordinate(item, "y", item.y, y, yardstick)
        )

    def _coordinate(
        self, item: Item, key: str, expression: Expression | None, otherwise: float, yardstick: Yardstick
    ) -> float:
        if expression is None:
            return otherwise
        with self.file.ledger.at(self.file.description, ("item", item.name, key)):
            return yardstick.length_mm(expression)
        return otherwise  # the fault is written down


def panel_of(item: Item, side: Side) -> Bounds | None:
    """The panel that an item stands in on a side, if it stands in one."""
    return None if item.panel is None else side.panels[item.panel]


def _needed(item: Item) -> list[str]:
    """The names that the places of an item begin with."""
    return [
        name.name.partition(".")[0] for expression in (item.x, item.y) if expression for name in names_in(expression)
    ]
