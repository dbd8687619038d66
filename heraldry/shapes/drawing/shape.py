"""The shape ``drawing``: an old drawing at its finished size, or what is of one colour in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from pathlib import Path

from heraldry.errors import GeometryError
from heraldry.geometry.affine import Affine
from heraldry.geometry.boolean import unite
from heraldry.geometry.outline import Outline
from heraldry.geometry.point import ORIGIN
from heraldry.shapes.checks import positive
from heraldry.shapes.drawing.opening import read_drawing
from heraldry.shapes.drawing.picture import WHITE, Picture
from heraldry.shapes.drawing.svg.paint import colour_of
from heraldry.shapes.drawing.tracing import Size, Tracing, traced
from heraldry.shapes.table import Angle, Drawn, File, Length, Place, Text, shape

LANTERN = Path(__file__).with_name("lantern.svg")
"""A drawing to show what can be read in."""


@shape
def drawing(
    drawing: File,
    width: Length | None = None,
    height: Length | None = None,
    colour: Text | None = None,
    part: Text | None = None,
    centre: Place = ORIGIN,
    turn: Angle = 0.0,
) -> Drawn:
    """A drawing read in from an SVG or DXF file, in `width` or `height` or its own size, its middle at `centre`.

    `part` takes a group, an element or a layer by its name. `colour` takes what is seen of one colour; the size is that
    of all colours, so that several colours of one drawing fit together. Without it all ink is taken, and white is left
    open. Raises GeometryError.
    """
    size = Size(
        None if width is None else positive("width", width), None if height is None else positive("height", height)
    )
    picture = read_drawing(drawing, part)
    areas = _traced(picture, size).areas
    outline, notes = _taken(areas, colour, drawing.name)
    home = Affine.move(centre.x, centre.y) @ Affine.turn(turn)
    return Drawn(outline.transformed(home), notes=(*picture.notes, *notes))


@lru_cache(maxsize=8)
def _traced(picture: Picture, size: Size) -> Tracing:
    """Kept for the next colour of the same drawing."""
    return traced(picture, size)


def traced_at_own_size(picture: Picture) -> Tracing:
    """The areas of a picture by colour, at the size that its file gives itself."""
    return _traced(picture, Size())


def _taken(areas: Mapping[str, Outline], colour: str | None, file: str) -> tuple[Outline, Sequence[str]]:
    """The area of one colour, or of all but white, and what is to be said of it."""
    if colour is not None:
        shown = colour_of(colour)
        if shown is None:
            raise GeometryError(f"'{colour}' is no colour, it is written like '#1e4a36' or 'black'")
        if shown.colour not in areas:
            raise GeometryError(f"{file} has nothing of the colour {shown.colour}, its colours: {', '.join(areas)}")
        return areas[shown.colour], ()
    inked = [name for name in areas if name != WHITE] or [WHITE]
    if len(areas) == 1:
        return areas[inked[0]], ()
    note = f"all colours are taken together: {', '.join(inked)}" + (", white is left open" if WHITE in areas else "")
    return unite(*(areas[name] for name in inked)), (note,)
