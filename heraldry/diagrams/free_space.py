"""Where there is room left on a side, and how large a text would fit there; millimetres.

Taken are the boxes of keep-outs, of ribs that may not be crossed, and of items on any car of the class, each with
what it wants to stay clear. An empty rectangle that cannot grow is bounded by edges of these boxes or of the side: so
every one of them is found by trying the strips between two such edges.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from heraldry.artwork import Artwork, Ink, Plate
from heraldry.diagrams.class_of_cars import ClassOfCars
from heraldry.diagrams.layout import Layout
from heraldry.errors import HeraldryError, nearest
from heraldry.geometry.boolean import subtract
from heraldry.geometry.outline import Bounds
from heraldry.lettering.setting.lay import ink_width

FREE_HEX = "#3a9d5d"
"""A green, as of a signal, for what is free."""
TRIED_CAP_MM = 10.0
"""A text is set once at this height to know how wide it is for its height."""


@dataclass(frozen=True)
class Room:
    """An empty rectangle, and the largest capitals with which a text fits into it."""

    box: Bounds
    cap_height_mm: float


def layout_named(cars: ClassOfCars, side: str) -> Layout:
    """The layout of a side; raises HeraldryError for a side that is not there."""
    by_name = {layout.side.name: layout for layout in cars.layouts}
    if side not in by_name:
        raise HeraldryError(f"no side is called '{side}', {nearest(side, by_name)}")
    return by_name[side]


def largest_room(cars: ClassOfCars, side: str, text: str, alphabet: str, clear_mm: float = 0.0) -> Room:
    """The place on a side where a text can be largest; raises HeraldryError where there is none, or no such side.

    The text keeps ``clear_mm`` from everything.
    """
    if not text.strip():
        raise HeraldryError("a line of lettering has no letters; give the text that is to be placed")
    line = cars.reader.alphabet(alphabet).set_line(text, TRIED_CAP_MM)
    shape = ink_width(line) / TRIED_CAP_MM
    layout = layout_named(cars, side)
    rooms = [
        Room(box, min(box.height, box.width / shape))
        for box in empty_rectangles(layout.side.face.grown(-clear_mm), taken(layout, clear_mm))
    ]
    if not rooms:
        raise HeraldryError(f"nothing of side {side} is left free")
    return max(rooms, key=lambda room: room.cap_height_mm)


def mask(cars: ClassOfCars, side: str, clear_mm: float = 0.0) -> Artwork:
    """All that is left free of a side, as one region on a page of the side."""
    layout = layout_named(cars, side)
    cuts = [box.outline for box in taken(layout, clear_mm)]
    free = subtract(layout.side.face.grown(-clear_mm).outline, *cuts)
    plate = Plate("free", Ink("free", FREE_HEX), free)
    return Artwork(f"{cars.name} {side} free", layout.side.face, (plate,), cars.scale_name)


def taken(layout: Layout, clear_mm: float) -> list[Bounds]:
    """The boxes that nothing else may lie in."""
    side = layout.side
    strips = [strip for row in side.ribs if not row.may_be_crossed for strip in row.strips]
    keepouts = [side.boxes[name] for name in side.keepouts]
    items = [place.box.grown(max(place.item.clear_mm - clear_mm, 0.0)) for place in layout.places]
    return [box.grown(clear_mm) for box in (*strips, *keepouts, *items)]


def empty_rectangles(room: Bounds, obstacles: Sequence[Bounds]) -> Iterator[Bounds]:
    """Every empty rectangle of a room that reaches from obstacle to obstacle, across and upright.

    >>> [box.width for box in empty_rectangles(Bounds(0, 0, 10, 4), [Bounds(4, 0, 5, 4)])]
    [4, 5]
    """
    lefts = sorted({room.left, *(box.right for box in obstacles if room.left < box.right < room.right)})
    rights = sorted({room.right, *(box.left for box in obstacles if room.left < box.left < room.right)})
    for left in lefts:
        for right in (x for x in rights if x > left):
            between = [box for box in obstacles if box.left < right and box.right > left]
            yield from (Bounds(left, low, right, high) for low, high in _gaps(room, between))


def _gaps(room: Bounds, obstacles: Sequence[Bounds]) -> Iterator[tuple[float, float]]:
    """What is free between obstacles that each reach all across."""
    low = room.bottom
    for box in sorted(obstacles, key=lambda box: box.bottom):
        if box.bottom > low:
            yield low, min(box.bottom, room.top)
        low = max(low, box.top)
    if low < room.top:
        yield low, room.top
