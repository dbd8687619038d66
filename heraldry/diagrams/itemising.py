"""From the item tables of a diagram to items: texts keep their references, places their names, the rest is settled."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from heraldry.artwork import Ink
from heraldry.describe.description import load
from heraldry.describe.diagram_model import (
    HERALD,
    MARKING,
    PLACED_BY_ITEM,
    Data,
    HeraldItem,
    InkItem,
    ItemBase,
    MarkingItem,
    item_kind,
)
from heraldry.describe.expression import Expression, parse
from heraldry.describe.key_lines import KeyPath
from heraldry.describe.text_references import fill
from heraldry.diagrams.item import Item
from heraldry.diagrams.joints import USUAL_OVERLAP_MM
from heraldry.diagrams.markings import MARKINGS, MarkingSubject
from heraldry.diagrams.measuring import with_edges
from heraldry.diagrams.side import Side
from heraldry.diagrams.subjects import HeraldSubject, ShapeSubject, Subject
from heraldry.errors import ExpressionError, nearest
from heraldry.geometry.outline import QUANTUM_MM
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.resolve.herald import resolve_herald
from heraldry.shapes import SHAPES
from heraldry.shapes.table import value_kind
from heraldry.units import Scale


@dataclass(frozen=True)
class Itemising:
    """What items are read with: the file and its reader, its sides, and every text that some car gives."""

    file: DrawnFile
    reader: Reader
    sides: Mapping[str, Side]
    car_texts: Mapping[str, str]
    scale: Scale | None
    data: Data
    """What is known of all cars alike."""

    def items(self, tables: Mapping[str, ItemBase]) -> tuple[Item, ...]:
        """All items in the order written; what is wrong goes to the file's ledger."""
        made = (self._knowing_edges(name, table)._item(name, table) for name, table in tables.items())
        return tuple(item for item in made if item is not None)

    def _knowing_edges(self, name: str, table: ItemBase) -> Itemising:
        """With a reader that knows the edges which are the same on all sides of an item: its size may follow them."""
        sides = [self.sides[one].edges() for one in self._sides_of(("item", name), table)]
        first = sides[0] if sides else {}
        alike = {edge: mm for edge, mm in first.items() if all(_same(mm, other.get(edge)) for other in sides[1:])}
        reader = replace(self.reader, yardstick=with_edges(self.reader.yardstick, alike))
        return replace(self, reader=reader)

    def _item(self, name: str, table: ItemBase) -> Item | None:
        path: KeyPath = ("item", name)
        for side in self.sides.values():
            if name in side.boxes:
                what = f"the name is taken by a part of side {side.name}, give the item another"
                self.file.ledger.add(self.file.description, path, what)
                break
        subject = self._subject(path, table)
        if subject is None:
            return None
        overlap_mm = self._length(path, "overlap", table.overlap)
        item = Item(
            name=name,
            subject=subject,
            sides=tuple(one for one in (table.sides or self.sides) if one in self.sides),
            x=self._open(path, "x", table.x),
            y=self._open(path, "y", table.y),
            anchor=table.anchor or "middle",
            level=table.level or ("middle" if table.y is None else "foot"),
            panel=table.panel,
            faces_front=table.faces == "front",
            fitted=table.fit is True,
            floor_mm=self._length(path, "floor", table.floor),
            clear_mm=self._length(path, "clear", table.clear) or 0.0,
            over_ribs=table.over_ribs,
            longest_mm=self._length(path, "longest", table.longest),
            overlap_mm=USUAL_OVERLAP_MM if overlap_mm is None else overlap_mm,
        )
        self._check_panel(path, table, item)
        self._check_size(path, table, subject)
        return item

    def _sides_of(self, path: KeyPath, table: ItemBase) -> tuple[str, ...]:
        for i, name in enumerate(table.sides or ()):
            if name not in self.sides:
                known = nearest(name, self.sides) if self.sides else "no side is measured"
                self.file.ledger.add(self.file.description, (*path, "sides", i), "no such side", f"'{name}'", known)
        return tuple(name for name in (table.sides or self.sides) if name in self.sides)

    def _check_panel(self, path: KeyPath, table: ItemBase, item: Item) -> None:
        if table.panel is not None:
            for name in item.sides:
                panels = self.sides[name].panels
                if table.panel not in panels:
                    known = nearest(table.panel, panels) if panels else "it has none"
                    what = f"side {name} has no such panel"
                    self.file.ledger.add(self.file.description, (*path, "panel"), what, f"'{table.panel}'", known)

    def _check_size(self, path: KeyPath, table: ItemBase, subject: Subject) -> None:
        if table.floor is not None and table.fit is not True:
            what = "only an item that is fitted to its panel has a floor"
            self.file.ledger.add(self.file.description, (*path, "floor"), what, "", "add fit = true")
        if table.longest is not None and subject.depends_on_car:
            what = "an item that differs by car is not delivered in pieces"
            self.file.ledger.add(self.file.description, (*path, "longest"), what, "", "leave it out")
        is_width = table.fit is not None and not isinstance(table.fit, bool)
        if is_width and item_kind(table) != "text":
            what = "only a line of lettering is tracked to a width"
            self.file.ledger.add(self.file.description, (*path, "fit"), what, f"{table.fit}", "write fit = true")

    def _open(self, path: KeyPath, key: str, raw: int | float | str | None) -> Expression | None:
        if raw is None:
            return None
        with self.file.ledger.at(self.file.description, (*path, key)):
            return parse(raw if isinstance(raw, str) else repr(raw))
        return None

    def _length(self, path: KeyPath, key: str, raw: int | float | str | None) -> float | None:
        if raw is None:
            return None
        with self.file.ledger.at(self.file.description, (*path, key)):
            length_mm = self.reader.yardstick.length_mm(raw)
            if length_mm < 0:
                raise ExpressionError(f"a length of 0 or more is wanted, found {length_mm:g} mm")
            return length_mm
        return None

    def _subject(self, path: KeyPath, table: ItemBase) -> Subject | None:
        kind = item_kind(table)
        if isinstance(table, HeraldItem):
            with self.file.ledger.at(self.file.description, (*path, HERALD)):
                return self._herald(path, table)
            return None
        if isinstance(table, MarkingItem):
            with self.file.ledger.at(self.file.description, (*path, MARKING)):
                return self._marking(path, table)
            return None
        assert isinstance(table, InkItem)
        return self._shape(path, str(kind), table)

    def _herald(self, path: KeyPath, table: HeraldItem) -> HeraldSubject:
        file = self.file.description.folder / table.herald
        if not file.is_file():
            raise ExpressionError(f"the herald file is not there, found '{table.herald}', looked for {file}")
        description = load(file)
        if description.kind != "herald":
            raise ExpressionError(f"that file is no herald, found kind '{description.kind}' in {table.herald}")
        if table.variant is not None:
            description = description.variant(table.variant)
        says_scale = getattr(description.model, "scale", None) is not None
        herald = resolve_herald(description, self.scale if says_scale else None)
        enlarge = 1.0 if says_scale else self.reader.yardstick.factor
        return HeraldSubject(
            herald, self._length(path, "width", table.width), self._length(path, "height", table.height), enlarge
        )

    def _marking(self, path: KeyPath, table: MarkingItem) -> MarkingSubject:
        if self.scale is None:
            raise ExpressionError('a marking is as large as on the real thing, the file needs its scale = "HO"')
        colours = MARKINGS[table.marking].inks
        for colour in table.inks:
            if colour not in colours:
                what = "the marking has no such colour"
                self.file.ledger.add(
                    self.file.description, (*path, "inks", colour), what, f"'{colour}'", nearest(colour, colours)
                )
        inks = {colour: self._ink_of(path, colour, table.inks) for colour in colours}
        known = {colour: ink for colour, ink in inks.items() if ink is not None}
        return MarkingSubject(table.marking, known, self.scale, self.data.owner, self.data.equipment or 0)

    def _ink_of(self, path: KeyPath, colour: str, named: Mapping[str, str]) -> Ink | None:
        """The ink for a colour of a marking: the one named for it, else the one that bears its name."""
        if colour in named:
            return self.file.ink((*path, "inks", colour), named[colour])
        if colour not in self.file.description.store("ink"):
            wanted = f'write [ink.{colour}] with its colour, or inks = {{ {colour} = "…" }} here'
            self.file.ledger.add(
                self.file.description, (*path, MARKING), f"the marking needs an ink '{colour}'", "", wanted
            )
            return None
        return self.file.ink((*path, MARKING), colour)

    def _shape(self, path: KeyPath, name: str, table: InkItem) -> ShapeSubject | None:
        kind, ink = SHAPES[name], self.file.ink((*path, "ink"), table.ink)
        faults_before = len(self.file.ledger.faults)
        arguments: dict[str, Any] = {}
        templates: dict[str, str] = {}
        for key in kind.parameters:
            raw = None if key in PLACED_BY_ITEM and key != "fit" else getattr(table, key, None)
            if raw is None or (key == "fit" and isinstance(raw, bool)):
                continue
            with self.file.ledger.at(self.file.description, (*path, key)):
                if value_kind(kind.annotations[key])[0] == "text":
                    fill(raw, {**self.reader.texts, **self.car_texts})
                    templates[key] = raw
                else:
                    arguments[key] = self.reader.read(kind.annotations[key], raw)
        if ink is None or len(self.file.ledger.faults) > faults_before:
            return None
        return ShapeSubject(kind, ink, arguments, templates, self.reader.texts)


def _same(mm: float, other_mm: float | None) -> bool:
    """Whether two edges are at one place, but for the rounding of a mirrored one."""
    return other_mm is not None and abs(mm - other_mm) < QUANTUM_MM
