"""Long stripes in pieces that fit a sheet, overlapping where they join; millimetres.

A length L in n pieces that overlap by o: each is (L + (n − 1)·o) / n long, and n is the least for which that is no
more than the longest piece allowed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from heraldry.artwork import Artwork, Finding, Plate
from heraldry.diagrams.pieces import Piece
from heraldry.errors import GeometryError
from heraldry.geometry.boolean import intersect
from heraldry.geometry.measure import bounds
from heraldry.geometry.outline import Bounds, Outline

USUAL_OVERLAP_MM = 1.0
"""Enough to be laid by hand; common practice, no source."""
MOST_PIECES = 100


def piece_count(length_mm: float, longest_mm: float, overlap_mm: float) -> int:
    """How many pieces a length is divided into; raises GeometryError where no number of pieces would do.

    >>> piece_count(250.0, 200.0, 1.0), piece_count(400.0, 200.0, 1.0)
    (2, 3)
    """
    if longest_mm <= overlap_mm:
        raise GeometryError(f"pieces of {longest_mm:g} mm are used up by joints that overlap by {overlap_mm:g} mm")
    count = max(1, math.ceil((length_mm - overlap_mm) / (longest_mm - overlap_mm)))
    if count > MOST_PIECES:
        raise GeometryError(f"{length_mm:g} mm in pieces of {longest_mm:g} mm are {count}, at most {MOST_PIECES}")
    return count


def jointed(piece: Piece, name: str, scale_name: str, paint_hex: str) -> Iterator[Artwork]:
    """An artwork for each piece of a long item, from left to right, each on a page of its own size."""
    item = piece.place.item
    assert item.longest_mm is not None
    count = piece_count(piece.box.width, item.longest_mm, item.overlap_mm)
    each = (piece.box.width + (count - 1) * item.overlap_mm) / count
    note = (
        f"{item.name} is {piece.box.width:.1f} mm long: {count} pieces of {each:.1f} mm, overlap {item.overlap_mm:g} mm"
    )
    for i in range(count):
        left = piece.box.left + i * (each - item.overlap_mm)
        window = Bounds(left, piece.box.bottom, left + each, piece.box.top).outline
        plates = _cut(piece, window) if count > 1 else _whole(piece)
        yield Artwork(
            name=f"{name} {item.name} {i + 1} of {count}",
            page=Bounds.round(bounds(plate.outline) for plate in plates),
            plates=plates,
            scale_name=scale_name,
            paint_hex=paint_hex,
            findings=(Finding("joints", note, "note"),) if count > 1 and i == 0 else (),
        )


def _whole(piece: Piece) -> tuple[Plate, ...]:
    return tuple(layer.plate for layer in piece.layers)


def _cut(piece: Piece, window: Outline) -> tuple[Plate, ...]:
    cut = [replace(layer.plate, outline=intersect(layer.outline, window)) for layer in piece.layers]
    return tuple(plate for plate in cut if not plate.outline.is_empty)
