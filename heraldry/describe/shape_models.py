"""A model for every kind of shape, made from the table of shapes, so that a shape is described in one place only."""

from __future__ import annotations

import inspect
from collections.abc import Mapping
from dataclasses import MISSING, fields
from dataclasses import Field as DataField
from functools import cache
from typing import Annotated, Any, Union, get_type_hints

from pydantic import BaseModel, Discriminator, Field, Tag, create_model

from heraldry.describe.values import RAW, Strict
from heraldry.shapes import SHAPES
from heraldry.shapes.table import ShapeKind, value_kind

COMPOSED = "art"
"""The one shape kind that is not drawn by a function: set arithmetic on other shapes."""

MAP_KIND, MAP_FILE = "region", "file"


class ComposedShape(Strict):
    """A shape made of other shapes by set arithmetic."""

    art: Annotated[str, Field(description="set arithmetic: 'disc - title + (land - line)'")]


@cache
def shape_models() -> dict[str, type[BaseModel]]:
    """The model of each shape kind by its name."""
    made = {name: _model(kind) for name, kind in sorted(SHAPES.items())}
    return {COMPOSED: ComposedShape, **made}


@cache
def any_shape() -> Any:
    """One type for all shapes, told apart by the key that names the kind."""
    tagged = [Annotated[model, Tag(name)] for name, model in shape_models().items()]
    return Annotated[Union[tuple(tagged)], Discriminator(kind_of)]  # noqa: UP007 (made at run time)


def kind_of(table: Any) -> str | None:
    """The kind of a shape table: the one of its keys that is a kind; None when there is none.

    A table with a map `file` and no kind is a region: whoever brings a map of their own has no code to name.
    """
    if isinstance(table, BaseModel):
        return next(name for name, model in shape_models().items() if type(table) is model)
    if not isinstance(table, dict):
        return None
    kinds = [key for key in table if key in SHAPES or key == COMPOSED]
    return kinds[0] if kinds else MAP_KIND if MAP_FILE in table else None


def _model(kind: ShapeKind) -> type[BaseModel]:
    keys = {name: _field(kind.annotations[name], parameter.default) for name, parameter in kind.parameters.items()}
    return _made(f"Shape_{kind.name}", kind.summary, keys)


def _field(annotation: Any, default: Any) -> tuple[Any, Any]:
    raw = _raw(annotation)
    if default is inspect.Parameter.empty:
        return raw, ...
    return raw | None, None


@cache
def _table_model(group: type) -> type[BaseModel]:
    hints = get_type_hints(group, include_extras=True)
    keys = {one.name: _field(hints[one.name], _default(one)) for one in fields(group)}
    return _made(f"Table_{group.__name__}", inspect.getdoc(group) or "", keys)


def _made(name: str, about: str, keys: Mapping[str, Any]) -> type[BaseModel]:
    model: type[BaseModel] = create_model(name, __base__=Strict, __doc__=about, **keys)
    return model


def _default(one: DataField[Any]) -> Any:
    return inspect.Parameter.empty if one.default is MISSING else one.default


def _raw(annotation: Any) -> Any:
    kind, held = value_kind(annotation)
    if kind == "choice":
        return held
    if kind == "table":
        return _table_model(held)
    return RAW[kind]
