"""Resolves the shape tables of a file, and puts the shapes in an order in which each finds what it needs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from graphlib import CycleError, TopologicalSorter
from typing import Any

from pydantic import BaseModel

from heraldry.describe.description import Description
from heraldry.describe.expression import Expression, names_in, parse
from heraldry.describe.shape_models import COMPOSED, kind_of
from heraldry.describe.variants import VARIANT
from heraldry.errors import ExpressionError, nearest
from heraldry.resolve.argument import Reader
from heraldry.resolve.ledger import Ledger
from heraldry.resolve.resolved import MapSpot, PlaceName, ResolvedShape, ShapeName
from heraldry.shapes import SHAPES


def resolve_shapes(
    description: Description, tables: Mapping[str, BaseModel], reader: Reader, ledger: Ledger
) -> tuple[ResolvedShape, ...]:
    """All shapes with their arguments, those that others need first; faults go to the ledger."""
    left_out = _left_out(description, tables, ledger)
    regions = tuple(sorted(name for name, table in tables.items() if kind_of(table) == "region"))
    resolved = {}
    for name, table in tables.items():
        if name in left_out:
            resolved[name] = ResolvedShape(name, None, {}, None, ())
        elif kind_of(table) == COMPOSED:
            with ledger.at(description, ("shape", name, COMPOSED)):
                resolved[name] = _composed(name, vars(table)[COMPOSED], reader)
        else:
            resolved[name] = _drawn(description, name, table, reader, regions, ledger)
    return _in_order(description, resolved, ledger)


def needed_shapes(art: Expression, reader: Reader) -> tuple[str, ...]:
    """The shapes that an expression names, itself or by a point of them; sorted.

    Raises ExpressionError for a name that is neither a shape nor a length of the file.
    """
    needed = set()
    for name in names_in(art):
        owner = name.name.partition(".")[0]
        if owner in reader.shapes:
            needed.add(owner)
        elif owner != "origin" and name.name not in reader.yardstick.names:
            raise ExpressionError(f"no shape is called '{name.name}', {nearest(owner, reader.shapes)}", name.position)
    return tuple(sorted(needed))


def _left_out(description: Description, tables: Mapping[str, BaseModel], ledger: Ledger) -> frozenset[str]:
    """The shapes that a variant does not have."""
    variation = description.variation
    if variation is None:
        return frozenset()
    for i, name in enumerate(variation.table.leave_out):
        if name not in tables:
            path = (VARIANT, variation.name, "leave_out", i)
            ledger.add(description, path, "no such shape", f"'{name}'", nearest(name, tables))
    return frozenset(variation.table.leave_out)


def _composed(name: str, art: str, reader: Reader) -> ResolvedShape:
    expression = parse(art)
    return ResolvedShape(name, None, {}, expression, needed_shapes(expression, reader))


def _drawn(
    description: Description,
    name: str,
    table: BaseModel,
    reader: Reader,
    regions: tuple[str, ...],
    ledger: Ledger,
) -> ResolvedShape:
    kind = SHAPES[str(kind_of(table))]
    arguments = {}
    for key in type(table).model_fields:
        raw = getattr(table, key)
        if raw is not None:
            with ledger.at(description, ("shape", name, key)):
                arguments[key] = reader.read(kind.annotations[key], raw)
    needs = sorted({need for value in arguments.values() for need in _needs(value, regions)})
    return ResolvedShape(name, kind, arguments, None, tuple(needs))


def _needs(value: Any, regions: tuple[str, ...]) -> Iterable[str]:
    """The shapes that must be drawn before an argument has its value."""
    if isinstance(value, PlaceName):
        return () if value.name == "origin" else (value.shape,)
    if isinstance(value, MapSpot):
        return (value.on,) if value.on else regions
    if isinstance(value, ShapeName):
        return (value.name,)
    if isinstance(value, tuple):
        return [need for part in value for need in _needs(part, regions)]
    if is_dataclass(value) and not isinstance(value, type):
        return [need for one in fields(value) for need in _needs(getattr(value, one.name), regions)]
    return ()


def _in_order(
    description: Description, shapes: Mapping[str, ResolvedShape], ledger: Ledger
) -> tuple[ResolvedShape, ...]:
    graph = {name: shape.needs for name, shape in shapes.items()}
    try:
        order = list(TopologicalSorter(graph).static_order())
    except CycleError as error:
        cycle = error.args[1]
        ledger.add(description, ("shape", cycle[0]), "shapes that need one another", " → ".join(reversed(cycle)))
        return ()
    return tuple(shapes[name] for name in order if name in shapes)
