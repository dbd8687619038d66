"""DXF drawings: closed outlines from what cutters and drafting programs write, by ezdxf.

Lines, arcs, circles, ellipses, splines and polylines with their bulges are chains, blocks are taken where they are
inserted. Chains whose ends meet are joined until they close, by ``chaining``; rings within rings are holes. A layer is
a part. Points are in the file's unit, which ``$INSUNITS`` names, y up; the map of the mark turns them over.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from io import BytesIO
from typing import TYPE_CHECKING, Any

from heraldry.errors import GeometryError, nearest
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import arc_as_cubics
from heraldry.geometry.point import ORIGIN, Point
from heraldry.geometry.segments import Arc, Cubic, Line, Path, Segment
from heraldry.shapes.curves import moved
from heraldry.shapes.drawing.chaining import joined
from heraldry.shapes.drawing.notes import Notes
from heraldry.shapes.drawing.picture import BLACK, Mark, Picture
from heraldry.shapes.rounds import circle_path

if TYPE_CHECKING:
    from ezdxf.document import Drawing

LARGEST_BYTES = 6 * 2**20
"""Some fifty thousand entities, which take seconds to read."""

MOST_ENTITIES = 10_000
DEEPEST_BLOCK = 16

JOINT_MM = 0.01
"""Ends this near to each other are meant to meet: a tenth of what a cutter can place."""

LARGEST_NUMBER = 1e9

SPLINE_LEVEL = 4
"""How finely a spline of another degree than 3 is cut into cubics: 16 a span, off by far less than a micrometre."""

UNIT_MM = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 8: 25.4e-6, 9: 0.0254, 10: 914.4, 13: 0.001, 14: 100.0}
"""Millimetres of the units of $INSUNITS (DXF reference, HEADER section)."""

QUIET = ("POINT", "VIEWPORT", "ATTDEF", "ATTRIB")


def read_dxf(content: bytes, file: str, part: str | None) -> Picture:
    """The closed outlines of a DXF file, or of its layer ``part``; raises GeometryError."""
    if len(content) > LARGEST_BYTES:
        raise GeometryError(
            f"{file} has {len(content) / 2**20:.0f} MB, a DXF drawing may have {LARGEST_BYTES >> 20} MB"
        )
    notes = Notes()
    document = _document(content, file)
    try:
        found = _Layers(notes, _hidden(document)).of(document.modelspace())
    except GeometryError:
        raise
    except (RecursionError, ValueError, TypeError, LookupError, AttributeError, ArithmeticError):
        raise GeometryError(
            f"{file} has entities that are broken: save it anew from the program that drew it"
        ) from None
    unit_mm = _unit_mm(document, notes)
    chains = _of_part(found, part, file)
    rings, loose = joined(chains, JOINT_MM / unit_mm)
    if loose:
        notes.add(f"lines that do not close are left out, since they enclose nothing: {len(loose)}")
    if not rings:
        raise GeometryError(f"{file} has no closed outline: ends must meet within {JOINT_MM:g} mm")
    mark = Mark(tuple(rings), Affine.scale(1.0, -1.0), BLACK, "evenodd")
    return Picture((mark,), unit_mm, tuple(found), notes.sentences)


def _document(content: bytes, file: str) -> Drawing:
    if b"\x00" in content:
        raise GeometryError(f"{file} is a binary DXF file: save it as DXF in text form")
    from ezdxf import recover  # imported where used: start-up time

    try:
        document, _ = recover.read(BytesIO(content))
    except Exception as error:  # the reader raises whatever its parsing stumbles over
        raise GeometryError(f"{file} is no sound DXF file: {error}") from None
    return document


def _hidden(document: Drawing) -> frozenset[str]:
    """The layers that are switched off or frozen."""
    return frozenset(layer.dxf.name.lower() for layer in document.layers if layer.is_off() or layer.is_frozen())


def _unit_mm(document: Drawing, notes: Notes) -> float:
    number = document.header.get("$INSUNITS", 0)
    if number not in UNIT_MM:
        notes.add("the DXF file names no unit that is known here, so its numbers are taken as millimetres")
    return UNIT_MM.get(number, 1.0)


def _of_part(found: dict[str, list[Path]], part: str | None, file: str) -> list[Path]:
    if part is None:
        return [chain for chains in found.values() for chain in chains]
    named = {name.lower(): chains for name, chains in found.items()}
    if part.lower() not in named:
        raise GeometryError(
            f"{file} has no layer '{part}' with outlines, {nearest(part, found) if found else 'it is empty'}"
        )
    return named[part.lower()]


@dataclass
class _Layers:
    """Collects the chains of a drawing by layer."""

    notes: Notes
    hidden: frozenset[str]
    chains: dict[str, list[Path]] = field(default_factory=dict)
    count: int = 0

    def of(self, entities: Iterable[Any]) -> dict[str, list[Path]]:
        for entity, layer in self._flat(entities, None, 0):
            kind = entity.dxftype()
            if kind in CHAINS:
                self.chains.setdefault(layer, []).extend(_checked(CHAINS[kind](entity)))
            elif kind not in QUIET:
                self.notes.add(f"{kind} is left out: it is no line")
        return self.chains

    def _flat(self, entities: Iterable[Any], layer: str | None, depth: int) -> Iterator[tuple[Any, str]]:
        """Entities with their layers, blocks resolved; layer 0 of a block is the layer of its insert."""
        for entity in entities:
            self.count += 1
            if self.count > MOST_ENTITIES:
                raise GeometryError(
                    f"the DXF drawing has more than {MOST_ENTITIES:,} entities, those in blocks counted"
                )
            own = str(entity.dxf.get("layer", "0"))
            own = layer if own == "0" and layer is not None else own
            if own.lower() in self.hidden or entity.dxf.get("invisible", 0):
                self.notes.add("what is switched off or frozen is left out")
            elif entity.dxftype() == "INSERT":
                if depth == DEEPEST_BLOCK:
                    raise GeometryError(f"blocks lie more than {DEEPEST_BLOCK} deep in each other")
                for one in entity.multi_insert():
                    yield from self._flat(one.virtual_entities(), own, depth + 1)
            else:
                yield entity, own


def _checked(paths: Iterable[Path]) -> Iterator[Path]:
    for path in paths:
        for segment in path:
            if not all(abs(value) <= LARGEST_NUMBER for point in (segment.start, segment.end) for value in point):
                raise GeometryError(f"the DXF drawing has points farther away than {LARGEST_NUMBER:g}")
        yield path


def _point(vector: Any) -> Point:
    return Point(float(vector[0]), float(vector[1]))


def _line(entity: Any) -> list[Path]:
    start, end = _point(entity.dxf.start), _point(entity.dxf.end)
    return [Path((Line(start, end),))] if start != end else []


def _arc(entity: Any) -> list[Path]:
    if not entity.dxf.radius > 0:
        return []
    sweep = math.radians((entity.dxf.end_angle - entity.dxf.start_angle) % 360.0) or math.tau
    arc = Arc.about(_point(entity.dxf.center), float(entity.dxf.radius), math.radians(entity.dxf.start_angle), sweep)
    return [Path((_facing(entity, arc),), closed=arc.start == arc.end)]


def _circle(entity: Any) -> list[Path]:
    if not entity.dxf.radius > 0:
        return []
    ring = circle_path(_point(entity.dxf.center), float(entity.dxf.radius))
    return [Path(tuple(_facing(entity, half) for half in ring), closed=True)]


def _facing(entity: Any, segment: Segment) -> Segment:
    """A segment of a plane that is seen from behind has x turned over (the arbitrary axis algorithm for −z)."""
    return moved(segment, Affine.scale(-1.0, 1.0)) if entity.dxf.extrusion.z < 0 else segment


def _ellipse(entity: Any) -> list[Path]:
    """The cubics of an ellipse: an arc of the unit circle, laid on its two axes."""
    centre, major = _point(entity.dxf.center), _point(entity.dxf.major_axis)
    minor = major.left * float(entity.dxf.ratio) * (-1.0 if entity.dxf.extrusion.z < 0 else 1.0)
    sweep = (entity.dxf.end_param - entity.dxf.start_param) % math.tau or math.tau
    unit_arc = Arc.about(ORIGIN, 1.0, entity.dxf.start_param, sweep)
    axes = Affine(major.x, major.y, minor.x, minor.y, centre.x, centre.y)
    cubics = tuple(moved(cubic, axes) for cubic in arc_as_cubics(unit_arc))
    return [Path(cubics, closed=cubics[0].start == cubics[-1].end)]


def _spline(entity: Any) -> list[Path]:
    curve = entity.construction_tool()
    if curve.degree == 3 and not curve.is_rational and curve.is_clamped:
        pieces = [tuple(_point(control) for control in controls) for controls in curve.bezier_decomposition()]
    else:
        pieces = [
            tuple(_point(control) for control in bezier.control_points)
            for bezier in curve.cubic_bezier_approximation(level=SPLINE_LEVEL)
        ]
    nodes = [pieces[0][0], *(piece[3] for piece in pieces)]
    cubics = [Cubic(nodes[i], piece[1], piece[2], nodes[i + 1]) for i, piece in enumerate(pieces)]
    return [Path(tuple(cubics), closed=cubics[0].start == cubics[-1].end)]


def _polyline(entity: Any) -> list[Path]:
    """The lines and arcs of a polyline, one after another."""
    pieces = [piece for piece in entity.virtual_entities() if piece.dxftype() in CHAINS]
    return [path for piece in pieces for path in CHAINS[piece.dxftype()](piece)]


CHAINS: dict[str, Callable[[Any], list[Path]]] = {
    "LINE": _line,
    "ARC": _arc,
    "CIRCLE": _circle,
    "ELLIPSE": _ellipse,
    "SPLINE": _spline,
    "LWPOLYLINE": _polyline,
    "POLYLINE": _polyline,
}
"""The chains of each kind of entity."""
