"""How an artwork reaches a file: the one protocol of all outputs, and the one walk over an artwork.

The walk goes plate by plate, ring by ring. It maps each ring into the writer's own units and, for formats
that have no arcs, turns arcs into cubics; a writer only spells what it is given, and hands over the finished
file at the end.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol

from heraldry.artwork import Artwork, Plate
from heraldry.geometry.affine import Affine
from heraldry.geometry.outline import Bounds, Outline, arc_as_cubics
from heraldry.geometry.segments import Arc, Segment

MM_PER_INCH = 25.4
POINTS_PER_MM = 72 / MM_PER_INCH
"""PDF and PostScript count in points of 1/72 in."""

Ring = tuple[Segment, ...]
"""A closed chain of segments, in the units of the output; its last end is its first start."""


class Writer(Protocol):
    """One file being written: told of every plate in printing order, then asked for its bytes."""

    @property
    def frame(self) -> Affine:
        """The map from the artwork's millimetres to the output's own coordinates."""
        ...

    @property
    def keeps_arcs(self) -> bool:
        """Whether the format has circular arcs; if not, they arrive as cubics."""
        ...

    def plate(self, plate: Plate, rings: Iterator[Ring]) -> None:
        """Take in one plate and all its rings."""
        ...

    def finish(self) -> bytes:
        """The whole file."""
        ...


def walk(artwork: Artwork, writer: Writer) -> bytes:
    """Tell a writer of every plate of an artwork, and return the file it made."""
    for plate in artwork.plates:
        writer.plate(plate, rings_of(plate.outline, writer.frame, writer.keeps_arcs))
    return writer.finish()


def rings_of(outline: Outline, frame: Affine, keeps_arcs: bool) -> Iterator[Ring]:
    """The rings of an outline in the coordinates of a frame."""
    for path in outline.transformed(frame).paths:
        yield path.segments if keeps_arcs else tuple(_without_arcs(path.segments))


def _without_arcs(ring: Ring) -> Iterator[Segment]:
    for segment in ring:
        if isinstance(segment, Arc):
            yield from arc_as_cubics(segment)
        else:
            yield segment


def frame_y_down(page: Bounds, units_per_mm: float = 1.0) -> Affine:
    """From the artwork to a page whose origin is at the top left and whose y points down."""
    return Affine.scale(units_per_mm, -units_per_mm) @ Affine.move(-page.left, -page.top)


def frame_y_up(page: Bounds, units_per_mm: float = 1.0) -> Affine:
    """From the artwork to a page whose origin is at the bottom left and whose y points up."""
    return Affine.scale(units_per_mm) @ Affine.move(-page.left, -page.bottom)
