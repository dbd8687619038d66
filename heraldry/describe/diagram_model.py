"""The model of a diagram file: the sides of a class of cars, what is lettered on them, numbers and data.

Areas, keep-outs and items are shapes with a few keys more, so their models are made from those of the shapes.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, Any, Literal, Union

from pydantic import BaseModel, Discriminator, Field, Tag, create_model

from heraldry.describe.models import DrawnBase, Name
from heraldry.describe.shape_models import COMPOSED, kind_of, shape_models
from heraldry.describe.values import RawLength, RawText, Strict

EDGES, HERALD, MARKING = "edges", "herald", "marking"
"""What an area or an item can be besides a shape."""
PLACED_BY_ITEM = ("at", "centre", "anchor", "level", "fit")
"""Keys of shapes that an item has in its own way."""

RawDate = Annotated[str, Field(pattern=r"^[0-9]{4}-[0-9]{2}$", description="a month, as 1957-04 (ISO 8601)")]


class Edges(Strict):
    """A measured part of a side, from its edges; what is left out is where the side ends."""

    left: RawLength | None = None
    right: RawLength | None = None
    bottom: RawLength | None = None
    top: RawLength | None = None
    width: RawLength | None = None
    height: RawLength | None = None


class Painted(Strict):
    """Something in a paint."""

    paint: Annotated[str, Field(description="a paint of this file or its road, or #rrggbb")]


class PaintedEdges(Edges, Painted):
    """A part of a side in a paint of its own."""


class Ribs(Strict):
    """A row of ribs, seams or rivets that stand upright on a side."""

    at: Annotated[
        list[RawLength] | None, Field(min_length=1, max_length=500, description="where each of them stands")
    ] = None
    every: Annotated[RawLength | None, Field(description="from one to the next, for a row of them")] = None
    first: Annotated[RawLength | None, Field(description="where such a row begins; left out: at the left edge")] = None
    count: Annotated[int | None, Field(ge=1, le=500, description="how many of them; left out: to the right edge")] = (
        None
    )
    width: Annotated[RawLength, Field(description="how wide each of them is")]
    bottom: RawLength | None = None
    top: RawLength | None = None
    may_be_crossed: Annotated[bool, Field(description="flat seams and rivets, that lettering may run over")] = False


class SideBase(Strict):
    """One flat face, measured from its lower left corner as it is seen."""

    width: RawLength | None = None
    height: RawLength | None = None
    paint: Annotated[str | None, Field(description="a paint of this file or its road, or #rrggbb")] = None
    mirrors: Annotated[Name | None, Field(description="the side that this one is the mirror image of")] = None
    like: Annotated[Name | None, Field(description="the side that this one looks like")] = None
    front: Annotated[Literal["left", "right"] | None, Field(description="which of its ends leads")] = None
    panel: dict[Name, Edges] = {}
    ribs: dict[Name, Ribs] = {}


class Series(Strict):
    """The cars of the class: their numbers, or a table with a row for each."""

    numbers: Annotated[str | None, Field(description="'301-325 skip 313', '301, 305, 310-320'")] = None
    cars: Annotated[str | None, Field(description="a CSV file with a column 'number' and any others")] = None
    spares: Annotated[
        int, Field(ge=0, le=100, description="more sets of what all cars share, and of loose figures")
    ] = 0


class Record(Strict):
    """Work of a shop that is stencilled on a car."""

    work: str
    station: str
    date: RawDate


class Data(Strict):
    """What is known of each car; columns of the same names in the table of cars go before it."""

    year: Annotated[int | None, Field(description="the year that the cars are shown in")] = None
    built: RawDate | None = None
    journal: Annotated[str | None, Field(description="size of the axle journals: 'D' or '5 1/2 x 10'")] = None
    light_weight: Annotated[int | None, Field(description="pounds")] = None
    weighed: RawDate | None = None
    station: Annotated[str | None, Field(description="where it was weighed; none is the builder's")] = None
    load_limit: Annotated[int | None, Field(description="pounds, where it is not what the axles allow")] = None
    starred: Annotated[bool | None, Field(description="the owner set the load limit lower")] = None
    capacity: Annotated[int | None, Field(description="pounds")] = None
    gross_rail_load: Annotated[int | None, Field(description="pounds")] = None
    cubic_feet: int | None = None
    designation: str | None = None
    rebuilt: RawDate | None = None
    painted: RawDate | None = None
    body: Literal["steel", "wood"] | None = None
    dot: Literal["yellow", "white"] | None = None
    dimension: Annotated[dict[str, str], Field(description="full size by abbreviation: IL = '40 ft 6 in'")] = {}
    record: Annotated[list[Record], Field(max_length=50, description="shop work")] = []
    owner: Annotated[str | None, Field(pattern="^[0-9]{3}$", description="owner's code on the colour-bar plate")] = None
    equipment: Annotated[int | None, Field(ge=0, le=9, description="kind of car on the colour-bar plate")] = None
    wagon: Annotated[RawText | None, Field(description="UIC number, '21 81 2471 {car.number}'")] = None
    exchange: Annotated[str | None, Field(description="sign of exchange on a UIC wagon, 'RIV'")] = None
    country: Annotated[str | None, Field(description="country's letters on a UIC wagon")] = None
    keeper: Annotated[str | None, Field(description="keeper's letters on a UIC wagon")] = None
    tare: Annotated[int | None, Field(description="kilograms, for the load grid of a UIC wagon")] = None
    axles: Annotated[int | None, Field(description="of a UIC wagon")] = None
    carries: Annotated[int | None, Field(description="kilograms that a UIC wagon may carry at most")] = None
    engine: Annotated[RawText | None, Field(description="number of an engine, '118 {car.number}'")] = None
    container: Annotated[RawText | None, Field(description="ISO 6346 number, 'UMGU 305{car.number}'")] = None
    size_and_type: Annotated[str | None, Field(description="ISO 6346 code of a container, '22G1'")] = None


class ItemBase(Strict):
    """What every item has: where it goes on which sides, and how large it may become."""

    sides: Annotated[list[Name] | None, Field(min_length=1, description="on which sides; left out: all")] = None
    panel: Annotated[Name | None, Field(description="the panel that it stands in, and may not leave")] = None
    x: Annotated[RawLength | None, Field(description="where it is held, from the left edge of the side")] = None
    y: Annotated[RawLength | None, Field(description="where it is held, from the bottom edge of the side")] = None
    anchor: Annotated[Literal["start", "middle", "end"] | None, Field(description="which part of it is at x")] = None
    level: Annotated[Literal["foot", "middle", "head"] | None, Field(description="which part of it is at y")] = None
    faces: Annotated[Literal["front"] | None, Field(description="turned over where the front is on the right")] = None
    fit: Annotated[bool | RawLength | None, Field(description="true: not larger than its panel")] = None
    floor: Annotated[RawLength | None, Field(description="a fitted item becomes no lower than this")] = None
    clear: Annotated[RawLength | None, Field(description="how far keep-outs and other items stay away")] = None
    over_ribs: Annotated[bool, Field(description="it may cross ribs")] = False
    longest: Annotated[RawLength | None, Field(description="delivered by itself, in pieces up to this length")] = None
    overlap: Annotated[RawLength | None, Field(description="how far such pieces overlap where they join")] = None


class InkItem(ItemBase):
    """An item of one ink."""

    ink: Annotated[str, Field(description="an ink of this file or its road")]


class HeraldItem(ItemBase):
    """A herald in its own inks."""

    herald: Annotated[str, Field(min_length=1, description="a herald file, named from this file's folder")]
    variant: Annotated[Name | None, Field(description="one of the herald's variants")] = None
    width: RawLength | None = None
    height: RawLength | None = None


class MarkingItem(ItemBase):
    """A marking of fixed form and colours: panels of shop stencils, the wheel dot, the colour-bar plate."""

    marking: Literal["stencil panels", "wheel dot", "colour bars"]
    inks: Annotated[
        dict[str, str], Field(description="the ink for a colour: blue = 'navy'; else that of its name")
    ] = {}


class DiagramBase(DrawnBase):
    """The lettered sides of a class of cars or engines."""

    kind: Literal["diagram"]
    series: Series | None = None
    data: Data | None = None


def item_kind(table: Any) -> str | None:
    """What an item is: a herald, a marking, or a kind of shape; None where no key says it."""
    for kind, model in ((HERALD, HeraldItem), (MARKING, MarkingItem)):
        if isinstance(table, model) or (isinstance(table, dict) and kind in table):
            return kind
    return _shape_kind(table, item_models())


def area_kind(table: Any) -> str | None:
    """What an area or keep-out is: a kind of shape, else a box by its edges."""
    kind = _shape_kind(table, area_models()) or _shape_kind(table, keepout_models())
    return kind if kind in keepout_models() else EDGES


def _shape_kind(table: Any, models: dict[str, type[BaseModel]]) -> str | None:
    if isinstance(table, BaseModel):
        return next((name for name, model in models.items() if type(table) is model), None)
    kind = kind_of(table)
    return None if kind == COMPOSED else kind


@cache
def item_models() -> dict[str, type[BaseModel]]:
    """The model of each kind of item."""
    return {**_more_than_shapes("Item", InkItem, PLACED_BY_ITEM), HERALD: HeraldItem, MARKING: MarkingItem}


@cache
def area_models() -> dict[str, type[BaseModel]]:
    """The model of each kind of paint area."""
    return {**_more_than_shapes("Area", Painted, ()), EDGES: PaintedEdges}


def _says_its_kind(model: type[BaseModel]) -> bool:
    """Whether a shape has a key that it cannot do without; else a table of edges could be taken for it."""
    return any(info.is_required() for info in model.model_fields.values())


@cache
def keepout_models() -> dict[str, type[BaseModel]]:
    """The model of each kind of keep-out."""
    shapes = {name: model for name, model in shape_models().items() if name != COMPOSED and _says_its_kind(model)}
    return {**shapes, EDGES: Edges}


def _more_than_shapes(prefix: str, base: type[Strict], without: tuple[str, ...]) -> dict[str, type[BaseModel]]:
    """A model for each kind of shape, with the keys of ``base`` added and some of the shape's own left out."""
    made: dict[str, type[BaseModel]] = {}
    for name, model in shape_models().items():
        if name != COMPOSED and (base is InkItem or _says_its_kind(model)):
            keys: Any = {key: (info.annotation, info) for key, info in model.model_fields.items() if key not in without}
            made[name] = create_model(f"{prefix}_{name}", __base__=base, __doc__=model.__doc__, **keys)
    return made


def _one_of(models: dict[str, type[BaseModel]], kind: Any) -> Any:
    tagged = [Annotated[model, Tag(name)] for name, model in models.items()]
    return Annotated[Union[tuple(tagged)], Discriminator(kind)]  # noqa: UP007 (made at run time)


@cache
def diagram_model() -> type[DiagramBase]:
    """The model of a diagram file; made late, since it holds every shape of the table."""
    area: Any = (dict[Name, _one_of(area_models(), area_kind)], {})  # type: ignore[misc]
    keepout: Any = (dict[Name, _one_of(keepout_models(), area_kind)], {})  # type: ignore[misc]
    side = create_model("Side", __base__=SideBase, __doc__=SideBase.__doc__, area=area, keepout=keepout)
    sides: Any = (Annotated[dict[Name, side], Field(min_length=1)], ...)
    items: Any = (
        Annotated[dict[Name, _one_of(item_models(), item_kind)], Field(min_length=1)],  # type: ignore[misc]
        ...,
    )
    return create_model("Diagram", __base__=DiagramBase, __doc__=DiagramBase.__doc__, side=sides, item=items)
