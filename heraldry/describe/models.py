"""The kinds of file a user writes, as models: every key, what it may hold, and what it is for.

The published JSON Schemas are made from these models; so are the faults of a file that does not fit them.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, Any, Literal

from pydantic import Field, create_model

from heraldry.describe.shape_models import any_shape
from heraldry.describe.values import RawColour, RawLength, RawNumber, RawText, Strict

Name = Annotated[str, Field(pattern=r"^[A-Za-z_][A-Za-z0-9_]*$", max_length=60)]
Unit = Literal["mm", "cm", "in", "ft"]
Form = Literal["one ink", "reversed", "outline"]

MOST_VARIANTS = 50
"""Of one herald: a handful is usual; each is drawn like a file of its own."""


class Ink(Strict):
    """An ink: its colour on white paper, and whether it hides what is under it."""

    colour: RawColour
    opaque: bool = False


class Paint(Strict):
    """A paint on the model."""

    colour: RawColour


class AlphabetTable(Strict):
    """An alphabet: one of ours by `style` and its numbers, or a font by `file` or `family`."""

    style: str | None = None
    file: str | None = None
    family: str | None = None
    face: Annotated[int | str | None, Field(description="number in a collection, or style in a family")] = None
    axes: dict[str, int | float] | None = None
    features: Annotated[list[str] | None, Field(description="OpenType features on ('ss01') or off ('-kern')")] = None
    optical: Annotated[bool | None, Field(description="letters of a font spaced by the white between them")] = None
    licensed: Annotated[bool | None, Field(description="you hold a licence for a font that restricts embedding")] = None
    stem: Annotated[RawNumber | None, Field(description="thickness of an upright stroke, in cap heights")] = None
    width: Annotated[RawNumber | None, Field(description="1 is the usual width")] = None
    bar: Annotated[RawNumber | None, Field(description="thickness of a crossbar, in cap heights")] = None
    contrast: Annotated[RawNumber | None, Field(description="thin strokes in thick ones, 1 is even")] = None
    corner: Literal["round", "cut", "square"] | None = None
    slant: Annotated[RawNumber | None, Field(description="degrees from upright, to the right")] = None
    aperture: Annotated[RawNumber | None, Field(description="how far open letters stand open, 1 is usual")] = None
    serif: Annotated[RawNumber | None, Field(description="length of a serif beyond its stem, in cap heights")] = None
    bracket: Annotated[RawNumber | None, Field(description="reach of a serif's curve, in cap heights")] = None
    stencil: Annotated[bool | None, Field(description="bridges across the counters, for cut masks")] = None
    letter_gap: Annotated[RawNumber | None, Field(description="white between two H, in cap heights")] = None
    word_gap: Annotated[RawNumber | None, Field(description="white between two words, in cap heights")] = None


class Identity(Strict):
    """What a railroad is called."""

    name: RawText | None = None
    initials: RawText | None = None
    mark: Annotated[str | None, Field(pattern=r"^[A-Z]{2,4}$", description="reporting mark, 2 to 4 letters")] = None
    founded: int | None = None
    motto: RawText | None = None
    word: Annotated[dict[Name, RawText], Field(description="any other texts, as {road.word.NAME}")] = {}


class Stores(Strict):
    """What artwork is made with: paints, inks and alphabets by name."""

    paint: dict[Name, Paint] = {}
    ink: dict[Name, Ink] = {}
    alphabet: dict[Name, AlphabetTable] = {}


class Road(Identity, Stores):
    """A railroad: its name, initials, mark, texts, paints, inks and alphabets."""

    kind: Literal["road"]
    name: RawText


class RoadHere(Identity):
    """A railroad as one drawing sees it: the road of a file, if one is named, with what is said here put over it."""

    file: str | None = None


class Printer(Strict):
    """What one printer can do."""

    kind: Literal["printer"]
    name: RawText
    unit: Unit = "mm"
    finest_line: Annotated[RawLength, Field(description="the thinnest line that it prints whole")]
    finest_gap: Annotated[RawLength, Field(description="the thinnest white that it keeps open between ink")]


class Plate(Strict):
    """One ink's artwork."""

    ink: Annotated[str, Field(description="an ink of this file or its road")]
    art: Annotated[str, Field(min_length=1, description="set arithmetic: 'disc - title + (land - line)'")]


class VariantTable(Strict):
    """Another form of the same herald: what is said here goes over what the file says."""

    width: RawLength | None = None
    height: RawLength | None = None
    on: Annotated[str | None, Field(description="the paint that this form lies on")] = None
    film: Literal["clear", "white"] | None = None
    let: Annotated[dict[Name, RawNumber], Field(description="named lengths and numbers that are others here")] = {}
    leave_out: Annotated[list[Name], Field(max_length=1_000, description="shapes that this form does not have")] = []
    shape: Annotated[
        dict[Name, dict[str, Any]],
        Field(description="keys of shapes that are others here; shapes of another kind, and further ones, whole"),
    ] = {}
    plate: Annotated[dict[Name, Plate], Field(description="the plates of this form, in place of the file's")] = {}
    form: Annotated[Form | None, Field(description="a form that is derived from the plates")] = None
    ink: Annotated[str | None, Field(description="the one ink of a derived form")] = None
    line: Annotated[RawLength | None, Field(description="outline: thickness; reversed: of a line round the herald")] = (
        None
    )
    gap: Annotated[RawLength | None, Field(description="what keeps two inks apart that become one")] = None
    bare: Annotated[list[Name] | None, Field(description="plates that become bare; left out: those like the paint")] = (
        None
    )
    field: Annotated[str | None, Field(min_length=1, description="art that a reversed herald stands on")] = None


class DrawnBase(Stores):
    """What every file says that something is drawn from."""

    name: RawText | None = None
    road: Annotated[str | RoadHere | None, Field(description="a road file, or a table of its own")] = None
    unit: Unit = "mm"
    scale: Annotated[
        int | float | str | None, Field(description="the scale that model lengths are drawn for: 'HO', '1:48', 48")
    ] = None
    film: Literal["clear", "white"] = "clear"
    let: Annotated[dict[Name, RawNumber], Field(description="named lengths and numbers")] = {}


class HeraldBase(DrawnBase):
    """An emblem."""

    kind: Literal["herald"]
    width: Annotated[RawLength | None, Field(description="finished width")] = None
    height: Annotated[RawLength | None, Field(description="finished height")] = None
    on: Annotated[str | None, Field(description="the paint it lies on: a paint of the road, or #rrggbb")] = None
    plate: Annotated[dict[Name, Plate], Field(min_length=1)]
    variant: Annotated[
        dict[Name, VariantTable],
        Field(max_length=MOST_VARIANTS, description="other forms of the same herald"),
    ] = {}


@cache
def herald_model() -> type[HeraldBase]:
    """The model of a herald file; made late, since it holds every shape of the table."""
    shape: Any = (Annotated[dict[Name, any_shape()], Field(min_length=1)], ...)  # type: ignore[misc]
    return create_model("Herald", __base__=HeraldBase, __doc__=HeraldBase.__doc__, shape=shape)
