"""Whether every item lies where it may: on its side, in its panel, off keep-outs, ribs and its neighbours; millimetres.

Boxes are compared first, and true outlines only where boxes come near. What lies wholly on another item of other ink,
as a number on a stripe does, is meant to lie there.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

from heraldry.artwork import Finding
from heraldry.diagrams.pieces import Piece, meet
from heraldry.diagrams.side import Side
from heraldry.geometry.boolean import intersect
from heraldry.geometry.distance import distance
from heraldry.geometry.measure import area, bounds
from heraldry.geometry.outline import Bounds, Outline
from heraldry.geometry.point import Point

OVER_MM = 1e-3
"""What an item may reach over an edge by the swing of a round letter, and the sum of rounded lengths: a micrometre."""
WHOLLY = 0.999
"""The share of an item that must lie on another one for it to be meant so."""


def clearances(side: Side, pieces: Sequence[Piece], others: Sequence[Piece]) -> tuple[Finding, ...]:
    """What is wrong with where ``pieces`` are, among themselves and beside ``others``, which were looked at before."""
    found: list[Finding] = []
    for i, piece in enumerate(pieces):
        found += _of_edges(side, piece)
        found += _of_keepouts(side, piece)
        if not piece.place.item.over_ribs:
            found += _of_ribs(side, piece)
        for other in chain(pieces[:i], others):
            found += _of_neighbour(piece, other)
    return tuple(found)


def _of_edges(side: Side, piece: Piece) -> Iterator[Finding]:
    over = piece.box.reach_over(side.face)
    if over > OVER_MM:
        is_huge = over > max(side.width_mm, side.height_mm)
        meant = ": is it meant full size? A length is one on the model unless it says full" if is_huge else ""
        message = f"{piece.name} reaches {over:.2f} mm over the edge of side {side.name}{meant}"
        yield Finding("off the side", message, "fault", piece.box.centre, measured_mm=over, limit_mm=0.0)
    panel, item = piece.place.panel, piece.place.item
    if panel is not None:
        wanted = f", {item.clear_mm:.2f} mm are to stay clear" if item.clear_mm else ""
        over = piece.measured.reach_over(panel) + item.clear_mm
        if over > OVER_MM:
            reach = (
                f"{over - item.clear_mm:.2f} mm over"
                if over > item.clear_mm
                else f"to {item.clear_mm - over:.2f} mm from"
            )
            message = f"{piece.name} reaches {reach} the edge of panel {item.panel}{wanted}"
            yield Finding("off the panel", message, place=piece.box.centre, measured_mm=over, limit_mm=0.0)


def _of_keepouts(side: Side, piece: Piece) -> Iterator[Finding]:
    for name, keepout in side.keepouts.items():
        yield from _of_nearness(piece, keepout, side.boxes[name], name, "keep-out")


def _of_neighbour(piece: Piece, other: Piece) -> Iterator[Finding]:
    if meet(piece.box, other.box, _clear_mm(piece)) and not _lies_on(piece, other):
        yield from _of_nearness(piece, other.outline, other.box, other.name, "neighbour")


def _lies_on(piece: Piece, other: Piece) -> bool:
    """Whether one of two items of different inks lies wholly on the other."""
    inks, other_inks = ({layer.ink.name for layer in one.layers} for one in (piece, other))
    if inks & other_inks:
        return False
    shared = intersect(piece.outline, other.outline)
    smaller = min(area(piece.outline), area(other.outline))
    return not shared.is_empty and area(shared) >= WHOLLY * smaller


def _of_nearness(piece: Piece, outline: Outline, box: Bounds, name: str, what: str) -> Iterator[Finding]:
    clear_mm = _clear_mm(piece)
    if not meet(piece.box, box, clear_mm):
        return
    shared = intersect(piece.outline, outline)
    if not shared.is_empty:
        common = bounds(shared)
        depth = min(common.width, common.height)
        message = f"{piece.name} lies on {name} by {depth:.2f} mm"
        yield Finding(what, message, place=common.centre, measured_mm=-depth, limit_mm=clear_mm)
        return
    apart = distance(piece.outline, outline)
    if apart < clear_mm or apart == 0.0:
        message = f"{piece.name} is {apart:.2f} mm from {name}, {clear_mm:.2f} mm are to stay clear"
        yield Finding(what, message, place=piece.box.centre, measured_mm=apart, limit_mm=clear_mm)


def _of_ribs(side: Side, piece: Piece) -> Iterator[Finding]:
    for row in (row for row in side.ribs if not row.may_be_crossed):
        crossed = [strip for strip in row.strips if meet(piece.box, strip) and _inks(piece, strip)]
        if crossed:
            message = f"{piece.name} crosses {len(crossed)} of the {row.name}: move it, or say over_ribs = true"
            yield Finding("rib", message, place=Point(crossed[0].centre.x, piece.box.centre.y))


def _inks(piece: Piece, strip: Bounds) -> bool:
    return not intersect(piece.outline, strip.outline).is_empty


def _clear_mm(piece: Piece) -> float:
    return piece.place.item.clear_mm
