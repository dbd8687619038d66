"""From the side tables of a diagram to measured sides: every edge gets its millimetres, every paint its colour.

A box is given by any two of left, right and width, and of bottom, top and height; by one of them, it reaches to
where the side ends (a width alone is centred); by none, it is as wide or high as the side. A part may be measured
from the edges of others, wherever they stand in the file; what leans on a fault is passed over, for the fault is told.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from graphlib import CycleError, TopologicalSorter
from typing import Any, cast

from pydantic import BaseModel

from heraldry.describe.arithmetic import Quantity
from heraldry.describe.diagram_model import EDGES, Edges, Painted, Ribs, SideBase, area_kind
from heraldry.describe.key_lines import KeyPath
from heraldry.diagrams.side import BARE_HEX, EDGE_NAMES, Area, RibRow, Side
from heraldry.errors import ExpressionError, GeometryError, nearest
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.resolve.largest import MODEL_SIZE
from heraldry.resolve.ledger import Ledger
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes import SHAPES
from heraldry.shapes.table import Length, as_drawn

EDGE_OF_PART = re.compile(rf"([A-Za-z_][A-Za-z0-9_]*)\.(?:{'|'.join(EDGE_NAMES)})\b")
LARGEST_SIDE_MM = {"width": 4_000.0, "height": 1_000.0}
"""Of models on which people ride, at 1:8, a passenger car of 85 ft is 3.2 m long, and an engine 0.6 m high."""
MOST_SIDES = 3
"""A panel or keep-out is no larger than so many sides: one that is has another unit than was meant."""
MOST_RIBS = 500
"""As many as a list of them may hold."""


def measured_sides(file: DrawnFile, tables: Mapping[str, SideBase], reader: Reader) -> dict[str, Side]:
    """All sides by name, in the order written; what is wrong goes to the file's ledger."""
    _refuse_taken_names(file, reader.yardstick)
    sides: dict[str, Side] = {}
    for name, table in tables.items():
        if table.mirrors is None and table.like is None:
            with file.ledger.at(file.description, ("side", name)):
                sides[name] = _Measuring(file, name, table, reader).side()
    for name, table in tables.items():
        if table.mirrors is not None or table.like is not None:
            _taken_over(file, name, table, sides)
    return {name: sides[name] for name in tables if name in sides}


def _refuse_taken_names(file: DrawnFile, yardstick: Yardstick) -> None:
    for name in EDGE_NAMES:
        if name in yardstick.names:
            file.ledger.add(file.description, ("let", name), "every side has an edge of that name, choose another")


def _taken_over(file: DrawnFile, name: str, table: SideBase, sides: dict[str, Side]) -> None:
    """A side that has everything from another one, as it is or as in a mirror."""
    key = "mirrors" if table.mirrors is not None else "like"
    given = [one for one in type(table).model_fields if one not in (key, "paint") and getattr(table, one)]
    other = str(getattr(table, key))
    if given:
        what = f"a side with '{key}' has everything from the other one"
        file.ledger.add(file.description, ("side", name, given[0]), what, f"'{given[0]}'", "leave it out")
    elif other not in sides:
        known = nearest(other, sides) if sides else "no side is measured"
        file.ledger.add(file.description, ("side", name, key), "no such side is measured", f"'{other}'", known)
    else:
        image = sides[other].mirrored(name) if key == "mirrors" else replace(sides[other], name=name)
        paint = file.paint_hex(("side", name, "paint"), table.paint) if table.paint else None
        sides[name] = replace(image, paint=table.paint, paint_hex=paint) if paint else image


@dataclass(frozen=True)
class _Measuring:
    """One side on its way from words to millimetres."""

    file: DrawnFile
    name: str
    table: SideBase
    reader: Reader

    def side(self) -> Side:
        faults_before = len(self.file.ledger.faults)
        face = Bounds(0.0, 0.0, self.size("width"), self.size("height"))
        is_sound = len(self.file.ledger.faults) == faults_before
        outlines = self.outlines(face, is_sound)
        boxes = {name: bounds(outline) for name, outline in outlines.items()}
        reader = self.reader_with(face, boxes)
        paint = self.table.paint
        paint_hex = None if paint is None else self.file.paint_hex(("side", self.name, "paint"), paint)
        return Side(
            self.name,
            face.width,
            face.height,
            paint,
            paint_hex or BARE_HEX,
            self.table.front or "left",
            tuple(self.areas(outlines)),
            {name: boxes[name] for name in self.table.panel if name in boxes},
            {name: outlines[name] for name in self.tables("keepout") if name in outlines},
            tuple(self.rib_row(name, ribs, reader, face) for name, ribs in self.table.ribs.items() if is_sound),
            boxes,
        )

    def size(self, key: str) -> float:
        raw = getattr(self.table, key)
        with self.file.ledger.at(self.file.description, ("side", self.name, key)):
            if raw is None:
                raise GeometryError(f"'{key}' is missing, a side is measured, or it mirrors one that is")
            length_mm = self.reader.yardstick.length_mm(raw)
            if length_mm <= 0:
                raise GeometryError(f"a side must be more than 0, found {length_mm:g} mm")
            if length_mm > LARGEST_SIDE_MM[key]:
                raise GeometryError(f"no model has a side of {length_mm:,.0f} mm, found {raw}, {MODEL_SIZE}")
            return length_mm
        return 1.0  # the fault is written down; the rest of the side is still looked at

    def tables(self, key: str) -> Mapping[str, BaseModel]:
        """Tables whose models are made from those of the shapes, and added to the side's model late."""
        return cast(Mapping[str, BaseModel], vars(self.table)[key])

    def outlines(self, face: Bounds, is_sound: bool) -> dict[str, Outline]:
        """Every part of the side by its name; one that cannot be measured is as large as the side."""
        parts = self.parts()
        measured: dict[str, Outline] = {}
        spoiled = set() if is_sound else set(parts)
        for name in self.in_turn(parts):
            path, table = parts[name]
            if not spoiled.intersection((name, *edges_named_in(table))):
                with self.file.ledger.at(self.file.description, path):
                    boxes = {other: bounds(outline) for other, outline in measured.items()}
                    outline = self.outline(path, table, self.reader_with(face, boxes), face)
                    if name not in self.tables("area"):
                        refuse_huge(bounds(outline), face)
                    measured[name] = outline
            if name not in measured:
                spoiled.add(name)
        return {**dict.fromkeys(parts, face.outline), **measured}

    def parts(self) -> dict[str, tuple[KeyPath, BaseModel]]:
        """Keep-outs, panels and areas by their names, of which a side has each but once."""
        parts: dict[str, tuple[KeyPath, BaseModel]] = {}
        for key in ("keepout", "panel", "area"):
            for name, table in self.tables(key).items():
                path: KeyPath = ("side", self.name, key, name)
                with self.file.ledger.at(self.file.description, path):
                    if name in parts or name in EDGE_NAMES:
                        raise ExpressionError(f"the name '{name}' is taken on this side, choose another")
                    parts[name] = path, table
        return parts

    def in_turn(self, parts: Mapping[str, tuple[KeyPath, BaseModel]]) -> list[str]:
        """The names of parts, each after those whose edges it names."""
        needs = {name: edges_named_in(table) & parts.keys() for name, (_, table) in parts.items()}
        try:
            return list(TopologicalSorter(needs).static_order())
        except CycleError as error:
            circle = list(reversed(error.args[1]))
            path = parts[circle[0]][0]
            self.file.ledger.add(self.file.description, path, "measured by one another", " → ".join(circle))
            return []

    def areas(self, outlines: Mapping[str, Outline]) -> Iterator[Area]:
        for name, table in self.tables("area").items():
            paint = cast(Painted, table).paint
            paint_hex = self.file.paint_hex(("side", self.name, "area", name, "paint"), paint)
            if name in outlines and paint_hex:
                yield Area(name, outlines[name], paint, paint_hex)

    def reader_with(self, face: Bounds, boxes: Mapping[str, Bounds]) -> Reader:
        """The file's reader, knowing the edges of this side so far."""
        side = Side(self.name, face.width, face.height, boxes=boxes)
        return replace(self.reader, yardstick=with_edges(self.reader.yardstick, side.edges()))

    def outline(self, path: KeyPath, table: BaseModel, reader: Reader, face: Bounds) -> Outline:
        """What a table draws; raises GeometryError, or DescriptionError with the faults of its keys."""
        kind = area_kind(table)
        shape = None if kind == EDGES else SHAPES[str(kind)]
        ledger = Ledger()
        values: dict[str, Any] = {}
        for key in Edges.model_fields if shape is None else shape.annotations:
            raw = getattr(table, key, None)
            if raw is not None:
                with ledger.at(self.file.description, (*path, key)):
                    annotation = Length if shape is None else shape.annotations[key]
                    values[key] = reader.read(annotation, raw)
        ledger.settle()
        if shape is None:
            return box_of(values, face).outline
        return as_drawn(shape.draw(**values)).outline.quantised()

    def rib_row(self, name: str, ribs: Ribs, reader: Reader, face: Bounds) -> RibRow:
        strips: list[Bounds] = []
        with self.file.ledger.at(self.file.description, ("side", self.name, "ribs", name)):
            half = reader.yardstick.length_mm(ribs.width) / 2
            bottom = face.bottom if ribs.bottom is None else reader.yardstick.length_mm(ribs.bottom)
            top = face.top if ribs.top is None else reader.yardstick.length_mm(ribs.top)
            if half <= 0 or top <= bottom:
                raise GeometryError(f"a rib is {2 * half:g} × {top - bottom:g} mm, both must be more than 0")
            strips += [Bounds(x - half, bottom, x + half, top) for x in _stands(ribs, reader.yardstick, face)]
        return RibRow(name, tuple(strips), ribs.may_be_crossed)


def _stands(ribs: Ribs, yardstick: Yardstick, face: Bounds) -> list[float]:
    """Where the ribs of a row stand; raises GeometryError for a row that says it twice or not at all."""
    if (ribs.at is None) == (ribs.every is None):
        raise GeometryError('say where they stand by one of the two: at = ["3 ft full"], or every = "46 in full"')
    if ribs.at is not None or ribs.every is None:
        return [yardstick.length_mm(raw) for raw in ribs.at or ()]
    every, first = yardstick.length_mm(ribs.every), yardstick.length_mm(ribs.first or 0)
    if every <= 0:
        raise GeometryError(f"from one to the next must be more than 0, found {every:g} mm")
    count = ribs.count or math.floor((face.right - first) / every) + 1
    if not 1 <= count <= MOST_RIBS:
        raise GeometryError(f"a row holds 1 to {MOST_RIBS} of them, found {count}")
    return [first + i * every for i in range(count)]


def with_edges(yardstick: Yardstick, edges: Mapping[str, float]) -> Yardstick:
    """The yardstick with edges (mm at the scale asked for) among its names, as the file's own scale has them."""
    names = {name: Quantity(value / yardstick.factor, 1) for name, value in edges.items()}
    return replace(yardstick, names={**yardstick.names, **names})


def edges_named_in(table: BaseModel) -> set[str]:
    """The parts of a side whose edges a table is measured by; only for their order, a name may turn out to be none."""
    written = str(table.model_dump(exclude_none=True))
    return {match[1] for match in EDGE_OF_PART.finditer(written)}


def box_of(mm: Mapping[str, float], face: Bounds) -> Bounds:
    """The box that edges (millimetres) give on a face; raises GeometryError for edges that give none."""
    left, right = _span(mm, ("left", "right", "width"), face.width)
    bottom, top = _span(mm, ("bottom", "top", "height"), face.height)
    return Bounds(left, bottom, right, top)


def refuse_huge(box: Bounds, face: Bounds) -> None:
    """Raises GeometryError for a part that is far larger than its side."""
    for what, size, most in (("wide", box.width, face.width), ("high", box.height, face.height)):
        if size > MOST_SIDES * most:
            raise GeometryError(f"it is {size:,.0f} mm {what} on a side of {most:,.1f} mm, {MODEL_SIZE}")


def _span(mm: Mapping[str, float], keys: tuple[str, str, str], whole: float) -> tuple[float, float]:
    low_key, high_key, size_key = keys
    low, high, size = (mm.get(key) for key in keys)
    if low is not None and high is not None and size is not None:
        raise GeometryError(f"{low_key}, {high_key} and {size_key} are one too many, give two of them")
    if size is not None:
        low = low if low is not None else (whole - size) / 2 if high is None else high - size
        high = low + size
    low, high = 0.0 if low is None else low, whole if high is None else high
    if high <= low:
        raise GeometryError(f"{low_key} is {low:g} mm and {high_key} {high:g} mm, nothing is between them")
    return low, high
