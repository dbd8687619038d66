"""From the side tables of a diagram to measured sides: every edge gets its millimetres, every paint its colour.

A box is given by any two of left, right and width, and of bottom, top and height; by one of them, it reaches to
where the side ends (a width alone is centred); by none, it is as wide or high as the side. Boxes may be measured
from those that stand before them: keep-outs first, then panels, then areas.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, cast

from pydantic import BaseModel

from heraldry.describe.arithmetic import Quantity
from heraldry.describe.diagram_model import EDGES, Edges, Painted, Ribs, SideBase, area_kind
from heraldry.describe.key_lines import KeyPath
from heraldry.diagrams.side import BARE_HEX, EDGE_NAMES, Area, RibRow, Side, rectangle
from heraldry.errors import ExpressionError, GeometryError, nearest
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.resolve.argument import Reader
from heraldry.resolve.drawn_file import DrawnFile
from heraldry.resolve.yardstick import Yardstick
from heraldry.shapes import SHAPES
from heraldry.shapes.table import Drawn


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
        face = Bounds(0.0, 0.0, self.size("width"), self.size("height"))
        boxes: dict[str, Bounds] = {}
        keepouts: dict[str, Outline] = {}
        for name, table in self.tables("keepout").items():
            self.enter(("keepout", name), name, boxes, keepouts, face, table)
        panels: dict[str, Outline] = {}
        for name, table in self.table.panel.items():
            self.enter(("panel", name), name, boxes, panels, face, table)
        reader = self.reader_with(face, boxes)
        ribs = tuple(self.rib_row(name, ribs, reader, face) for name, ribs in self.table.ribs.items())
        areas = tuple(self.areas(boxes, face))
        paint = self.table.paint
        paint_hex = None if paint is None else self.file.paint_hex(("side", self.name, "paint"), paint)
        return Side(
            self.name,
            face.width,
            face.height,
            paint,
            paint_hex or BARE_HEX,
            self.table.front or "left",
            areas,
            {name: boxes[name] for name in panels},
            keepouts,
            ribs,
            boxes,
        )

    def size(self, key: str) -> float:
        raw = getattr(self.table, key)
        if raw is None:
            raise GeometryError(f"'{key}' is missing, a side is measured, or it mirrors one that is")
        with self.file.ledger.at(self.file.description, ("side", self.name, key)):
            length_mm = self.reader.yardstick.length_mm(raw)
            if length_mm <= 0:
                raise GeometryError(f"a side must be more than 0, found {length_mm:g} mm")
            return length_mm
        return 1.0  # the fault is written down; the rest of the side is still looked at

    def tables(self, key: str) -> Mapping[str, BaseModel]:
        """Tables whose models are made from those of the shapes, and added to the side's model late."""
        return cast(Mapping[str, BaseModel], vars(self.table)[key])

    def enter(
        self,
        path: KeyPath,
        name: str,
        boxes: dict[str, Bounds],
        outlines: dict[str, Outline],
        face: Bounds,
        table: BaseModel,
    ) -> None:
        """Measure one table, and let those after it know its edges."""
        with self.file.ledger.at(self.file.description, ("side", self.name, *path)):
            if name in boxes or name in EDGE_NAMES:
                raise ExpressionError(f"the name '{name}' is taken on this side, choose another")
            reader = self.reader_with(face, boxes)
            outlines[name] = self.outline(path, table, reader, face)
            boxes[name] = bounds(outlines[name])

    def areas(self, boxes: dict[str, Bounds], face: Bounds) -> list[Area]:
        areas = []
        outlines: dict[str, Outline] = {}
        for name, table in self.tables("area").items():
            self.enter(("area", name), name, boxes, outlines, face, table)
            paint = cast(Painted, table).paint
            paint_hex = self.file.paint_hex(("side", self.name, "area", name, "paint"), paint)
            if name in outlines and paint_hex:
                areas.append(Area(name, outlines[name], paint, paint_hex))
        return areas

    def reader_with(self, face: Bounds, boxes: Mapping[str, Bounds]) -> Reader:
        """The file's reader, knowing the edges of this side so far."""
        side = Side(self.name, face.width, face.height, boxes=boxes)
        return replace(self.reader, yardstick=with_edges(self.reader.yardstick, side.edges()))

    def outline(self, path: KeyPath, table: BaseModel, reader: Reader, face: Bounds) -> Outline:
        kind = area_kind(table)
        if kind == EDGES:
            return rectangle(box_of(cast(Edges, table), reader.yardstick, face))
        shape = SHAPES[str(kind)]
        arguments: dict[str, Any] = {}
        for key in shape.annotations:
            raw = getattr(table, key, None)
            if raw is not None:
                with self.file.ledger.at(self.file.description, ("side", self.name, *path, key)):
                    arguments[key] = reader.read(shape.annotations[key], raw)
        drawn = shape.draw(**arguments)
        return (drawn.outline if isinstance(drawn, Drawn) else drawn).quantised()

    def rib_row(self, name: str, ribs: Ribs, reader: Reader, face: Bounds) -> RibRow:
        strips: list[Bounds] = []
        with self.file.ledger.at(self.file.description, ("side", self.name, "ribs", name)):
            half = reader.yardstick.length_mm(ribs.width) / 2
            bottom = face.bottom if ribs.bottom is None else reader.yardstick.length_mm(ribs.bottom)
            top = face.top if ribs.top is None else reader.yardstick.length_mm(ribs.top)
            if half <= 0 or top <= bottom:
                raise GeometryError(f"a rib is {2 * half:g} × {top - bottom:g} mm, both must be more than 0")
            for raw in ribs.at:
                x = reader.yardstick.length_mm(raw)
                strips.append(Bounds(x - half, bottom, x + half, top))
        return RibRow(name, tuple(strips), ribs.may_be_crossed)


def with_edges(yardstick: Yardstick, edges: Mapping[str, float]) -> Yardstick:
    """The yardstick with edges (mm at the scale asked for) among its names, as the file's own scale has them."""
    names = {name: Quantity(value / yardstick.factor, 1) for name, value in edges.items()}
    return replace(yardstick, names={**yardstick.names, **names})


def box_of(edges: Edges, yardstick: Yardstick, face: Bounds) -> Bounds:
    """The box that edges give on a face; raises ExpressionError and GeometryError for edges that give none."""
    mm = {key: yardstick.length_mm(raw) for key in Edges.model_fields if (raw := getattr(edges, key)) is not None}
    left, right = _span(mm, ("left", "right", "width"), face.width)
    bottom, top = _span(mm, ("bottom", "top", "height"), face.height)
    return Bounds(left, bottom, right, top)


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
